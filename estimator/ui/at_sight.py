"""What does the first page say while the dashboard's scripts are still on their way?

What the dashboard itself says a moment later: cautions, answer, picture and what they rest on, in the same words. A
browser takes seconds over the scripts, on a phone many; the answer need not wait for them. Where a case, its link or
its weather cannot be used nothing is said here, since the dashboard says why.
"""

from __future__ import annotations

from collections.abc import Mapping
from html import escape

from estimator.cautions import cautions, preface
from estimator.climate.chosen import can_travel
from estimator.compare import run
from estimator.errors import InputFaults
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict
from estimator.leak_range import leakage_span
from estimator.report import figures
from estimator.report.palette import DARK, LIGHT, SANS_STACK
from estimator.report.remarks import prices_of_elsewhere
from estimator.survey.fill import filled
from estimator.ui import at_hand, first_words, style, sureness
from estimator.ui.before_money import headline
from estimator.ui.link import PARAMETER, from_link
from estimator.ui.measure import UNITS
from estimator.ui.readers import WHO
from estimator.ui.results import Outcome
from estimator.ui.tree import EMPTY

_RULES = f"""<style>
:host{{color-scheme:light dark;position:fixed;inset:0;z-index:1000000;overflow:auto;font:1rem/1.5 {SANS_STACK};
 background:{LIGHT.ground};background:light-dark({LIGHT.ground},{DARK.ground});
 color:{LIGHT.ink};color:light-dark({LIGHT.ink},{DARK.ink})}}
main{{display:grid;gap:1rem;padding:7.7rem 5rem 4rem;max-width:62rem}}
summary{{cursor:pointer}}
@media (max-width:640px){{main{{padding:11.65rem 1rem 4rem}}}}
</style>"""
"""Room is left above for the row of questions, which comes with the scripts."""


def at_sight(asked: Mapping[str, str]) -> str:
    """A small page as HTML; empty where there is nothing to say. asked: the words of an address by parameter."""
    try:
        tree = from_link(asked[PARAMETER]) if asked.get(PARAMETER) else EMPTY
        case = case_from_dict(tree)
        if not can_travel(case.place.climate):
            return ""
        year = at_hand.shared(case)
    except InputFaults:
        return ""
    figures.THINKS_IMPERIAL.set(UNITS.of(asked) == "imperial")
    survey, who = filled(case), WHO.of(asked)
    found = Outcome(case, leakage_span(case, survey=survey), run(case, year))
    option = found.options()[0]
    answer, rest = first_words.answer(found, option, sureness.at_sight(tree, case, year), who=who)
    parts = (
        style.as_then(*prices_of_elsewhere(survey.case, survey.origins)),
        _before_money(found.middle.estimate.case),
        f'<h1 class="question">{escape(first_words.QUESTION)}</h1>{answer}',
        f"<div>{rest}</div>",
        f"<div>{first_words.fresh_air(found, option, who=who)}</div>",
        f"<div>{first_words.small_print(found, option)}</div>",
    )
    return f"{style.RULES}{_RULES}<main>{''.join(parts)}</main>"


def _before_money(case: Case) -> str:
    held = cautions(case, place="worth")
    if not held:
        return ""
    said = (f"<b>{escape(one.title)}.</b> {escape(one.words)} <i>Ask: {escape(one.ask)}.</i>" for one in held)
    lines = "".join(f"<p>{line}</p>" for line in (escape(preface()), *said))
    return f"<details><summary>{escape(headline(held))}</summary>{lines}</details>"
