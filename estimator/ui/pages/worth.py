"""Is it worth it here?"""

from __future__ import annotations

import streamlit as st

from estimator.report import charts, findings, ledger
from estimator.report.answer import TODAY, answer
from estimator.report.document import STATEMENT
from estimator.report.fresh_air import in_words
from estimator.report.method_words import method_error_in_words
from estimator.report.remarks import remarks
from estimator.report.ribbon import TITLE, ribbon
from estimator.report.sentence import as_html, case_sentence
from estimator.ui import style
from estimator.ui.before_money import before_money
from estimator.ui.decisive import inputs
from estimator.ui.fields import escaped
from estimator.ui.pictures import picture
from estimator.ui.results import Outcome, outcome, palette


def page() -> None:
    """From the answer down to what it rests on."""
    style.rules()
    found = outcome()
    option = _chosen(found)
    before_money(found.middle.estimate.case, place="worth")
    _answers(found, option)
    beside, right = st.columns([2.7, 1], gap="large")
    with beside:
        _ribbon(found, option)
        done = found.middle.estimate
        st.html(f'<p class="sentence">{as_html(case_sentence(done, found.span))}</p>')
    with right:
        inputs(found.middle.estimate, found.span)
    style.small(*(f"{words[:1].upper()}{words[1:]}" for words in remarks(found.middle)))
    _charts(found, option)
    _small_print(found, option)


def _chosen(found: Outcome) -> str:
    options = found.options()
    if len(options) == 1:
        return options[0]
    labels = {name: found.comparison(name, "baseline").option_label for name in options}
    return st.selectbox("Option", options, format_func=labels.__getitem__, key="worth:option", filter_mode=None)


def _answers(found: Outcome, option: str) -> None:
    currency = found.case.prices.currency
    why = f"the home's leakage, {found.span.words}"
    first = answer(found.comparison(option, "baseline"), found.ends(option, "baseline"), currency, why=why)
    other = answer(found.comparison(option, "today"), found.ends(option, "today"), currency, why=why, baseline=TODAY)
    style.question("Is it worth it here?")
    style.answer(first.sentence)
    style.then(first.then)
    style.then(f"{other.sentence} {other.then}")


def _ribbon(found: Outcome, option: str) -> None:
    account = ledger.fresh_air(found.middle.estimate, found.comparison(option, "baseline"))
    style.finding(TITLE)
    picture(desk=ribbon(account), phone=ribbon(account, form="phone"), alt=in_words(account))


def _charts(found: Outcome, option: str) -> None:
    comparison, ends = found.comparison(option, "baseline"), found.ends(option, "baseline")
    currency, colours = found.case.prices.currency, palette()
    sums, path = ledger.sums(comparison), ledger.payback_path(comparison, ends)
    carbon = ledger.carbon_pair(found.middle.estimate, comparison)
    saved = ledger.months_saved(found.middle, comparison)
    drawn = (
        (findings.saving(sums, currency), charts.saving(sums, currency=currency, palette=colours),
         findings.saving_in_words(sums, currency)),
        (findings.payback(comparison, currency), charts.payback(path, currency=currency, palette=colours),
         findings.payback_in_words(path, currency)),
        (findings.carbon(*carbon), charts.carbon(*carbon, palette=colours), findings.carbon_in_words(*carbon)),
        (findings.months(saved), charts.months(saved, palette=colours), findings.months_in_words(saved)),
    )  # fmt: skip
    for row in (drawn[:2], drawn[2:]):
        for column, (title, figure, words) in zip(st.columns(2, gap="large"), row, strict=True):
            with column:
                style.finding(title)
                st.plotly_chart(figure, theme=None, config=charts.CONFIG, alt=words)
                with st.expander("In numbers"):
                    st.markdown(escaped(words))


def _small_print(found: Outcome, option: str) -> None:
    done = found.middle.estimate
    style.small(
        f"Prices: {done.case.prices.dated}. Weather: {done.year.name}, {done.year.source}.",
        f"The range is that of the home's leakage alone: {found.span.words}.",
        method_error_in_words(done, found.comparison(option, "baseline")),
        STATEMENT,
    )


page()
