"""Is it worth it here?"""

from __future__ import annotations

import streamlit as st

from estimator.report import charts, findings, first_page, leakage_said, ledger, paper_charts, reader_words
from estimator.report.answer import TODAY
from estimator.report.charts_frame import CONFIG
from estimator.report.document import STATEMENT
from estimator.report.fresh_air import in_words
from estimator.report.method_words import method_error_in_words
from estimator.report.remarks import remarks
from estimator.report.ribbon import TITLE, ribbon
from estimator.report.sentence import as_html, case_sentence
from estimator.ui import drawer, live, style, sureness, tables
from estimator.ui.before_money import before_money, elsewhere
from estimator.ui.decisive import inputs
from estimator.ui.first_answer import FirstAnswer
from estimator.ui.onward import WHAT_IT_TAKES, onward
from estimator.ui.pictures import as_html as picture
from estimator.ui.readers import reader
from estimator.ui.results import Outcome, outcome, palette


def page() -> None:
    """From the answer down to what it rests on; all cases are tried last, so that nothing waits for them."""
    found = outcome()
    option = sureness.chosen("worth")
    before_money(found.middle.estimate.case, place="worth")
    style.question("Is it worth it here?")
    answer = FirstAnswer(option, lead=lambda found: _lead(found, option))
    beside, right = st.columns([2.4, 1], gap="large")
    with beside:
        live.part(lambda: _ribbon(outcome(), option))
    with right:
        inputs(found.middle.estimate, found.span)
    drawer.draw(found.middle.estimate)
    if not _plain():
        live.part(lambda: _remarks(outcome()))
    left, right = st.columns(2, gap="large")
    with left:
        live.part(lambda: _account(outcome(), option))
    with right:
        moves = st.empty()
        onward(WHAT_IT_TAKES, file="sure.py")
    live.step(lambda: moves.html(_moves(outcome(), option)))
    _more(found, option)
    live.part(lambda: _small_print(outcome(), option))
    answer.completed()
    live.step(lambda: moves.html(_moves(outcome(), option)), last=True)


def _plain() -> bool:
    """Whether the reader is no one of the trade."""
    return reader() == "home"


def _lead(found: Outcome, option: str) -> str:
    """What this reader asks first of the same case."""
    done = found.middle.estimate
    if _plain():
        return reader_words.in_plain_words(ledger.fresh_air(done, found.comparison(option, "baseline")))
    if reader() == "fitting":
        return reader_words.of_the_trade(done, found.span, option=option)
    return reader_words.to_ask(done, found.span)


def _comparisons(found: Outcome, option: str) -> list[tuple[str, object]]:
    first, today = found.comparison(option, "baseline"), found.comparison(option, "today")
    return [(first.baseline_label, first), (TODAY, today)]


def _ribbon(found: Outcome, option: str) -> str:
    """The picture, and the case as a sentence below it."""
    done = found.middle.estimate
    account = ledger.fresh_air(done, found.comparison(option, "baseline"))
    drawn = picture(desk=ribbon(account), phone=ribbon(account, form="phone"), alt=in_words(account))
    said = as_html(case_sentence(done, found.span, plain=_plain()))
    return f'{style.as_finding(TITLE)}{drawn}<p class="sentence">{said}</p>'


def _remarks(found: Outcome) -> str:
    said = [words for words in remarks(found.middle) if words not in elsewhere()]
    return style.as_small(*(f"{words[:1].upper()}{words[1:]}" for words in said))


def _account(found: Outcome, option: str) -> str:
    return tables.many_as_html(first_page.account(found.middle.estimate, _comparisons(found, option)))


def _moves(found: Outcome, option: str) -> str:
    """The range of each comparison on one scale, and the inputs that move the first most, once all cases are tried."""
    if not sureness.known():
        return style.as_small("What moves it most stands here once all cases have been tried.")
    tried = sureness.shown(option)
    desk, phone, words = first_page.spans(tried, [comparison for _, comparison in _comparisons(found, option)])
    drawn = picture(desk=desk, phone=phone, alt=words, widest=580)
    levers = first_page.levers(tried, tried.against[0], plain=_plain())
    return f"{style.as_finding(paper_charts.SPANS)}{drawn}{tables.many_as_html(levers)}"


def _more(found: Outcome, option: str) -> None:
    """Charts to be pointed at, only once somebody opens them: they cost a slow line more than all the rest."""
    with st.expander("More pictures: money by year, carbon, months", on_change="rerun", key="worth:more") as more:
        if more.open:
            live.whole()
            _charts(found, option)


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
                st.plotly_chart(figure, theme=None, config=CONFIG, alt=words)
                st.html(f'<p class="small">{words}</p>')
    style.small(f"The band of the money by year is that of the home's leakage alone: {leakage_said.words(found.span)}.")


def _small_print(found: Outcome, option: str) -> str:
    done = found.middle.estimate
    return style.as_small(
        f"Prices: {done.case.prices.dated}. Weather: {done.year.name}, {done.year.source}.",
        f"Leakage: {leakage_said.words(found.span)}.",
        method_error_in_words(done, found.comparison(option, "baseline")),
        STATEMENT,
    )


page()
