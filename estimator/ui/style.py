"""Which few rules of style does the dashboard need beyond its theme?

Only for what is its own: the question, the answer, the case as a sentence, small print. The framework's widgets keep
their own look, and colours follow the scheme of the page.
"""

from __future__ import annotations

from html import escape

import streamlit as st

from estimator.report.palette import DARK, LIGHT, SERIF_STACK
from estimator.ui import pictures, tables

_QUIET = f"color:{LIGHT.quiet};color:light-dark({LIGHT.quiet},{DARK.quiet})"
_PAPER = f"background:{LIGHT.ground};background:light-dark({LIGHT.ground},{DARK.ground})"
_RULE = f"border-color:{LIGHT.rule};border-color:light-dark({LIGHT.rule},{DARK.rule})"

RULES = f"""<style>
{pictures.RULES}
{tables.RULES}
.question{{font-size:1rem!important;font-weight:600!important;letter-spacing:.01em;padding:0!important;margin:0!important;
 {_QUIET}}}
.answer{{font-family:{SERIF_STACK};font-size:clamp(1.35rem,1rem + 1.5vw,2.1rem);line-height:1.24;font-weight:500;
 margin:0;max-width:32em;text-wrap:pretty}}
.then{{font-size:1rem;line-height:1.5;margin:0;max-width:46em;{_QUIET}}}
.spaced{{padding-bottom:.55rem}}
.basis{{font-style:italic}}
.finding{{font-size:1.15rem!important;line-height:1.3!important;font-weight:600!important;padding:0!important;
 margin:0!important;text-wrap:balance}}
.sentence{{font-family:{SERIF_STACK};font-size:1.12rem;line-height:1.6;max-width:44em;margin:.5rem 0 0}}
.sentence b{{font-weight:600}}
.small{{font-size:.875rem;line-height:1.5;max-width:60em;margin:0 0 .4rem;{_QUIET}}}
[data-testid=stLayoutWrapper]:has(>.st-key-answer){{position:sticky;top:0;z-index:90}}
[data-testid=stHeader]{{display:none}}
[data-testid=stMainBlockContainer]{{padding-top:1rem}}
.st-key-top{{border-bottom:1px solid;{_RULE};padding-bottom:1.5rem;row-gap:.25rem}}
/* The last change is named below the row, in a place kept for it: naming it moves nothing. */
.st-key-bar{{position:relative}}
.st-key-bar>[data-testid=stElementContainer]:has(.undone){{position:absolute;right:0;
 top:calc(100% + .15rem);width:auto!important}}
.st-key-top>[data-testid=stLayoutWrapper]:first-child{{flex:1 1 20rem;width:auto}}
.st-key-questions{{min-height:2.1rem}}
.st-key-elsewhere a{{padding-left:0}}
.st-key-elsewhere a p,[class*=st-key-onward] button p{{text-decoration:underline}}
[class*=st-key-onward] button{{justify-content:flex-start;text-align:left}}
.undone{{font-size:.875rem;line-height:1.3;margin:0;{_QUIET};
 max-width:min(26rem,calc(100vw - 2rem));white-space:nowrap;overflow:hidden;text-overflow:ellipsis}}
.st-key-answer{{{_PAPER};padding:.5rem 0;border-bottom:1px solid;{_RULE}}}
[role=tab][aria-selected=true] p{{color:{LIGHT.kept};color:light-dark({LIGHT.kept},{DARK.kept})}}
@media (max-width:640px){{.answer{{font-size:1.2rem;margin:0}}
 .then,.sentence{{line-height:1.42}} .spaced{{padding-bottom:.35rem}} .small{{line-height:1.4}}
 .rows{{margin-bottom:.8rem!important}} .rows th,.rows td{{padding-top:.2rem!important;padding-bottom:.2rem!important}}
 [data-testid=stMainBlockContainer]{{padding-bottom:1.5rem}}
 [data-testid=stNumberInputStepUp],[data-testid=stNumberInputStepDown]{{display:none}}}}
/* Columns that stand below each other on a phone keep no gap made for standing side by side, and an empty one none. */
@media (max-width:640px){{[data-testid=stHorizontalBlock]:has(>[data-testid=stColumn]){{row-gap:1.25rem!important}}
 [data-testid=stColumn]:not(:has([data-testid=stElementContainer])){{display:none}}}}
/* Fields side by side on a phone stand on one line, whether their names take one line or two. */
@media (max-width:640px){{.st-key-years-details [data-testid=stWidgetLabel]{{min-height:2.8125rem;
 align-items:flex-end}}}}
@media (max-width:640px){{.st-key-bar>[data-testid=stElementContainer]:has(.undone){{left:0;right:auto}}}}
/* Pictures side by side begin on one line, however many lines the heading of each takes. */
@media (min-width:641px){{.st-key-pairs [data-testid=stHorizontalBlock]:has(>[data-testid=stColumn]){{display:grid;
 grid-template-columns:1fr 1fr;grid-template-rows:auto auto auto}}
 .st-key-pairs [data-testid=stColumn],.st-key-pairs [data-testid=stColumn]>[data-testid=stVerticalBlock]{{display:grid;
 grid-row:span 3;grid-template:subgrid/minmax(0,1fr);width:100%!important;min-width:0}}
 .st-key-pairs [data-testid=stColumn]>*>*{{width:100%!important}}}}
[data-testid=stTextArea] textarea{{min-height:2.5rem!important;resize:none}}
.picture+style+.rows,.picture+.rows{{margin-top:1.2rem}}
[data-testid=stAlertContainer]{{background:none!important;color:inherit!important;border:1px solid;
 border-left:.35rem solid}}
[data-testid=InputInstructions]{{display:none}}
@media (prefers-reduced-motion:reduce){{*{{animation-duration:.01ms!important;transition:none!important}}}}
td,th,[data-testid=stMetricValue]{{font-variant-numeric:tabular-nums}}
.sheet+.finding{{margin:1.6rem 0 .6rem!important}}
.then+.then,.then+.sheet{{margin-top:.5rem}}
.sheet{{container-type:inline-size}}
.sheet table{{border-collapse:collapse;table-layout:fixed;width:100%;margin-top:.6rem;
 font-size:.95rem;line-height:1.4;font-variant-numeric:tabular-nums}}
.sheet caption{{text-align:left;font-weight:600;padding:.2rem 0 .4rem}}
.sheet th,.sheet td{{text-align:left;vertical-align:top;font-weight:400;padding:.4rem .9rem .4rem 0;border:0 solid;
 border-bottom-width:1px;{_RULE}}}
.sheet thead th{{font-size:.875rem;vertical-align:bottom;{_QUIET}}}
.sheet tbody th{{font-weight:600}}
@container (max-width:860px){{
 .sheet table,.sheet caption,.sheet tbody,.sheet tr,.sheet th,.sheet td{{display:block}}
 .sheet thead{{position:absolute;clip-path:inset(50%);width:1px;height:1px;overflow:hidden}}
 .sheet tr{{border:0 solid;border-bottom-width:1px;padding:.4rem 0;{_RULE}}}
 .sheet th,.sheet td{{border:0;padding:.1rem 0}}
 .sheet td{{display:grid;grid-template-columns:11em 1fr;gap:.6rem}}
 .sheet td::before{{content:attr(data-head);content:attr(data-head) / "";{_QUIET}}}
}}
</style>"""


def rules() -> None:
    """Once on every page, before anything else."""
    st.html(RULES)


def question(words: str) -> None:
    """The page's own title."""
    st.html(f'<h1 class="question">{escape(words)}</h1>')


def answer(sentence: str) -> None:
    """The answer, kept in sight while the page scrolls."""
    with st.container(key="answer"):
        sentence_alone(sentence)


def sentence_alone(sentence: str) -> None:
    """The answer in a place that was kept for it."""
    st.html(as_answer(sentence))


def as_answer(sentence: str) -> str:
    """The same, to be sent when it changes."""
    return f'<p class="answer">{escape(sentence)}</p>'


def then(*lines: str) -> None:
    """What follows from the answer, or makes it, one paragraph a line; nothing where there is none."""
    if lines:
        st.html(as_then(*lines))


def as_then(*lines: str) -> str:
    """The same, to be sent with more of its kind: each piece sent by itself costs the browser time."""
    return "".join(f'<p class="then">{escape(line)}</p>' for line in lines)


def finding(words: str) -> None:
    """Heading of a picture: what it shows."""
    st.html(as_finding(words))


def as_finding(words: str) -> str:
    """The same, to be sent with more of its kind."""
    return f'<h2 class="finding">{escape(words)}</h2>'


def aloud(words: str) -> None:
    """What has just been done, told at once to those who only hear the page."""
    st.html(f'<p class="then" role="alert">{escape(words)}</p>')


def small(*lines: str) -> st.delta_generator.DeltaGenerator:
    """Small print, one paragraph a line; comes back as its place, to be filled with something else later."""
    said = as_small(*lines)
    return st.html(said) if said else st.empty()


def as_small(*lines: str) -> str:
    """The same, to be sent with more of its kind."""
    return "".join(f'<p class="small">{escape(line)}</p>' for line in lines)
