"""What stands above a page's answer: cautions, and whether its money is that of another country?"""

from __future__ import annotations

from collections.abc import Sequence

import streamlit as st

from estimator.cautions import Caution, cautions, preface
from estimator.inputs.case import Case
from estimator.report.remarks import prices_of_elsewhere
from estimator.ui import live, state, style
from estimator.ui.fields import escaped


def elsewhere() -> list[str]:
    """Which sums of the case on screen are those of another country, not converted."""
    survey = state.survey()
    return prices_of_elsewhere(survey.case, survey.origins)


def before_money(case: Case, *, place: str, about: str = "for this home") -> None:
    """Every caution of a filled case that belongs to this place, folded below a line that cannot be hidden.

    Before them, in full, which sums are those of another country.
    """
    if said := elsewhere():
        style.then(*said)
    live.standing(elsewhere)
    live.standing(lambda: cautions(state.survey().case, place=place))
    held = cautions(case, place=place)
    if not held:
        return
    with st.expander(headline(held, about=about)):
        said = (f"**{escaped(one.title)}.** {escaped(one.words)} *Ask: {escaped(one.ask)}.*" for one in held)
        st.markdown("\n\n".join((escaped(preface()), *said)))


def headline(held: Sequence[Caution], *, about: str = "for this home") -> str:
    """The line that is never hidden; at least one caution."""
    return f"Before money: {len(held)} cautions {about}. First: {held[0].title}"
