"""What does the first page say while the dashboard's scripts are still on their way?

What the dashboard itself says a moment later: cautions, answer, picture and what they rest on, in the same words. A
browser takes seconds over the scripts, on a phone many; the answer need not wait for them. Where a case, its link or
its weather cannot be used nothing is said here, since the dashboard says why.
"""

from __future__ import annotations

from collections.abc import Mapping
from html import escape
from urllib.parse import urlencode

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
from estimator.ui.readers import READERS, WHO
from estimator.ui.results import Outcome
from estimator.ui.shell import PAGES
from estimator.ui.tree import EMPTY

_QUESTIONS = 7  # two lines on a phone
_LABELS = {address: label for _, label, address in PAGES}
_RULES = f"""<style>
:host{{color-scheme:light dark;position:fixed;inset:0;z-index:1000000;overflow:auto;font:1rem/1.5 {SANS_STACK};
 background:{LIGHT.ground};background:light-dark({LIGHT.ground},{DARK.ground});
 color:{LIGHT.ink};color:light-dark({LIGHT.ink},{DARK.ink})}}
main{{display:grid;gap:1rem;padding:0 5rem 4rem}}
nav{{box-sizing:border-box;height:7.7rem;padding:1.15rem 5rem 0;display:flex;flex-wrap:wrap;align-content:start;
 gap:.1rem .2rem}}
nav a{{padding:.3rem .5rem;color:inherit;text-decoration:none;border-radius:3px}}
nav [aria-current]{{font-weight:600;background:{LIGHT.raised};background:light-dark({LIGHT.raised},{DARK.raised})}}
summary{{cursor:pointer}}
.ribbon{{width:calc((100% - 3rem)*2.4/3.4)}} /* as wide as beside the fields that come with the scripts */
@media (max-width:640px){{main{{padding:0 1rem 4rem}} nav{{height:11.65rem;padding:1.15rem 1rem 0}}
 .ribbon{{width:100%}}}}
</style>"""


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
        f'<div class="ribbon">{first_words.fresh_air(found, option, who=who)}</div>',
        f"<div>{first_words.small_print(found, option)}</div>",
    )
    return f"{style.RULES}{_RULES}{_questions(who, asked)}<main>{''.join(parts)}</main>"


def _questions(who: str, asked: Mapping[str, str]) -> str:
    """The first questions of a reader, as links where the row of all of them will stand."""
    case = {PARAMETER: asked[PARAMETER]} if asked.get(PARAMETER) else {}
    outside = {said.parameter: said.of(asked) for said in (WHO, UNITS) if said.of(asked) != said.usual}
    carried = f"?{urlencode({**case, **outside})}" if case or outside else ""
    links = []
    for address in READERS[who].pages[:_QUESTIONS]:
        here = "" if address else " aria-current=page"
        links.append(f'<a{here} href="./{escape(address + carried)}">{escape(_LABELS[address])}</a>')
    return f'<nav aria-label="Questions">{"".join(links)}</nav>'


def _before_money(case: Case) -> str:
    held = cautions(case, place="worth")
    if not held:
        return ""
    said = (f"<b>{escape(one.title)}.</b> {escape(one.words)} <i>Ask: {escape(one.ask)}.</i>" for one in held)
    lines = "".join(f"<p>{line}</p>" for line in (escape(preface()), *said))
    return f"<details><summary>{escape(headline(held))}</summary>{lines}</details>"
