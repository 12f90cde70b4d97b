"""What does the first page say of a case and an option, whichever reader asks?

Apart from the page itself, since the same is said before the dashboard stands (`estimator.ui.at_sight`).
"""

from __future__ import annotations

from html import escape

from estimator.reach import reach
from estimator.report import leakage_said, ledger, reader_words
from estimator.report.answer import TODAY, carbon, reached, rests_on
from estimator.report.document import STATEMENT
from estimator.report.fresh_air import in_words
from estimator.report.method_words import method_error_in_words
from estimator.report.ribbon import TITLE, ribbon
from estimator.report.sentence import as_html, case_sentence
from estimator.sample import MANY, Outcomes
from estimator.ui import style
from estimator.ui.pictures import as_html as picture
from estimator.ui.results import Outcome

QUESTION = "Is it worth it here?"


def plain(who: str) -> bool:
    """Whether a reader is no one of the trade."""
    return who == "home"


def answer(found: Outcome, option: str, outcomes: Outcomes, *, who: str) -> tuple[str, str]:
    """The answer, and what follows from it, beginning with what this reader asks first: each as HTML."""
    case, currency = found.case, found.case.prices.currency
    lines = []
    for against, name, words in (("baseline", case.baseline, None), ("today", case.today, TODAY)):
        if name == option:
            continue
        comparison = found.comparison(option, against)
        far = reach(outcomes, option=option, baseline=name, years=comparison.life)
        said = reached(comparison, far, currency, baseline=words)
        lines += [[said.sentence, said.then, carbon(comparison, far, baseline=words)]]
        count = far.count
    (first, *others), *second = lines
    basis = rests_on(count, whole=MANY)
    rest = [*filter(None, [_lead(found, option, who)]), " ".join(others), *(" ".join(line) for line in second)]
    html = "".join(f'<p class="then spaced">{escape(words)}</p>' for words in rest)
    return style.as_answer(first), f'{html}<p class="small basis">{escape(basis)}</p>'


def _lead(found: Outcome, option: str, who: str) -> str:
    """What a reader asks first of the same case."""
    done = found.middle.estimate
    if plain(who):
        return reader_words.in_plain_words(ledger.fresh_air(done, found.comparison(option, "baseline")))
    if who == "fitting":
        return reader_words.of_the_trade(done, found.span, option=option)
    return reader_words.to_ask(done, found.span)


def fresh_air(found: Outcome, option: str, *, who: str) -> str:
    """The picture, and the case as a sentence below it, as HTML."""
    done = found.middle.estimate
    account = ledger.fresh_air(done, found.comparison(option, "baseline"))
    drawn = picture(desk=ribbon(account), phone=ribbon(account, form="phone"), alt=in_words(account))
    said = as_html(case_sentence(done, found.span, plain=plain(who)))
    return f'{style.as_finding(TITLE)}{drawn}<p class="sentence">{said}</p>'


def small_print(found: Outcome, option: str) -> str:
    """What the figures rest on, how far they may be wrong, and what they are not, as HTML."""
    done = found.middle.estimate
    return style.as_small(
        f"Prices: {done.case.prices.dated}. Weather: {done.year.name}, {done.year.source}.",
        f"Leakage: {leakage_said.words(found.span)}.",
        method_error_in_words(done, found.comparison(option, "baseline")),
        STATEMENT,
    )
