"""Is it worth it here?"""

from __future__ import annotations

import streamlit as st

from estimator.report import charts, findings, first_page, leakage_said, ledger, paper_charts
from estimator.report.answer import TODAY
from estimator.report.charts_frame import CONFIG
from estimator.report.remarks import remarks
from estimator.ui import drawer, first_words, live, style, sureness, tables
from estimator.ui.before_money import before_money, elsewhere
from estimator.ui.decisive import inputs
from estimator.ui.first_answer import FirstAnswer
from estimator.ui.onward import onward
from estimator.ui.pictures import as_html as picture
from estimator.ui.readers import reader
from estimator.ui.results import Outcome, outcome, palette


def page() -> None:
    """From the answer down to what it rests on; all cases are tried last, so that nothing waits for them."""
    found = outcome()
    option = sureness.chosen("worth")
    before_money(found.middle.estimate.case, place="worth")
    style.question(first_words.QUESTION)
    answer = FirstAnswer(option)
    beside, right = st.columns([2.4, 1], gap="large")
    with beside:
        live.part(lambda: first_words.fresh_air(outcome(), option, who=reader()))
    with right:
        inputs(found.middle.estimate, found.span)
    drawer.draw(found.middle.estimate)
    if not first_words.plain(reader()):
        live.part(lambda: _remarks(outcome()))
    left, right = st.columns(2, gap="large")
    with left:
        live.part(lambda: _account(outcome(), option))
    with right:
        moves = st.empty()
        onward()
    live.step(lambda: moves.html(_moves(outcome(), option)))
    _more(found, option)
    live.part(lambda: first_words.small_print(outcome(), option))
    answer.completed()
    live.step(lambda: moves.html(_moves(outcome(), option)), last=True)


def _comparisons(found: Outcome, option: str) -> list[tuple[str, object]]:
    first, today = found.comparison(option, "baseline"), found.comparison(option, "today")
    return [(first.baseline_label, first), (TODAY, today)]


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
    levers = first_page.levers(tried, tried.against[0], plain=first_words.plain(reader()))
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


page()
