"""Which way to ventilate?"""

from __future__ import annotations

import streamlit as st

from estimator.report import leakage_said, paper_charts, variants
from estimator.report.document import STATEMENT
from estimator.ui import style, sureness, tables, variant_bar
from estimator.ui.before_money import before_money
from estimator.ui.pictures import picture
from estimator.ui.results import outcome


def page() -> None:
    """From the best way down to what each variant consists of."""
    done = outcome().middle.estimate
    currency = done.case.prices.currency
    before_money(done.case, place="worth")
    style.question(variants.QUESTION)
    place = st.container(key="answer")
    beside, right = st.columns([2.7, 1], gap="large")
    with right:
        baseline = variant_bar.counted_from(done)
    if not sureness.known():
        with st.spinner("Trying many cases"):
            sureness.whole()
    found = variants.ways(done, sureness.whole().cases, baseline=baseline)
    label = done.options[baseline].label
    with place:
        style.sentence_alone(variants.sentence(found, baseline=label, currency=currency))
    with beside:
        style.then(variants.then(found, baseline=label))
        style.finding(paper_charts.SPANS)
        desk, phone, words = variants.picture(found, currency=currency)
        picture(desk=desk, phone=phone, alt=words, widest=580)
    tables.show(variants.side_by_side(found, baseline=label, currency=currency))
    style.finding("In what they differ")
    style.small(*(variants.differences(done, name) for name in done.options))
    style.finding("Variants: save, change, compare")
    variant_bar.draw(done)
    style.small(
        f"Prices: {done.case.prices.dated}. Weather: {done.year.name}, {done.year.source}. "
        f"{found[0].reach.count:,} cases tried."
        if found
        else "",
        f"Leakage: {leakage_said.words(outcome().span)}.",
        STATEMENT,
    )


page()
