"""Do levers, what to measure first, and promised figures read as their numbers say? Expected words by hand."""

from __future__ import annotations

import dataclasses
import functools
from typing import Any

import numpy as np
import pytest

from estimator import Case, load_year
from estimator.claims import QUESTIONS, Judgement, Promise
from estimator.draws import ground
from estimator.levers import Needed
from estimator.report import claim_words, lever_words
from estimator.report.sure_words import Against, Tried, tried
from estimator.sample import sample
from estimator.sure import Knowing

NEEDED = Needed(
    name="price of heat", words="price", unit="p/kWh", now=7.33, values=(23.7,), holds_now=False, low=0.5, high=80.0
)
GAP = "\u00a0"


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({}, "would have to be 23.7p/kWh; now 7.33p/kWh"),
        ({"holds_now": True}, "pays back already, just so at 23.7p/kWh; now 7.33p/kWh"),
        ({"values": ()}, "alone, no value would do, from 0.5 to 80p/kWh; now 7.33p/kWh"),
        ({"values": (), "holds_now": True}, "pays back anywhere from 0.5 to 80p/kWh; now 7.33p/kWh"),
        ({"values": (4.0, 23.7)}, "would have to be 4p/kWh or 23.7p/kWh; now 7.33p/kWh"),
        ({"name": "cost", "unit": "£", "now": 4464.0, "values": (1300.0,)}, "would have to be £1,300; now £4,460"),
        ({"name": "cost", "unit": "£", "now": 4464.0, "values": ()},
         "no cost would do, since nothing is saved; now £4,460"),
        ({"unit": "years", "values": (34.2,), "now": 20.0}, "would have to be 34 years; now 20 years"),
        ({"unit": "%", "values": (91.6,), "now": 84.0}, "would have to be 92%; now 84%"),
    ],
)  # fmt: skip
def test_what_a_lever_would_have_to_be(changed: dict[str, Any], words: str) -> None:
    assert lever_words.needed_said(dataclasses.replace(NEEDED, **changed), "£") == words


def asking(against: Against, *needed: Needed, **changed: str) -> Against:
    """The same, with what it would take set by hand."""
    changed_one = dataclasses.replace(against, **changed)  # type: ignore[arg-type]
    vars(changed_one)["needed"] = needed
    return changed_one


def test_levers_that_never_would_do_are_told_in_one_sentence(against: Against) -> None:
    never = dataclasses.replace(
        NEEDED, name="fan power", words="fan power", unit="W/(l/s)", values=(), low=0.2, high=3.0
    )
    other = asking(against, NEEDED, never)
    found = dataclasses.replace(all_tried(), against=(other, asking(against, NEEDED, never, words="today")))
    table = lever_words.levers(found)
    assert [row[0] for row in table.rows] == ["Price"]
    said = lever_words.no_use(found).replace(GAP, " ")
    assert said == "Alone, none of these would do at any value, against either: fan power, from 0.2 to 3 W/(l/s)."
    both = dataclasses.replace(found, against=(asking(against, NEEDED),))
    assert lever_words.no_use(both) == ""


@functools.cache
def all_tried() -> Tried:
    return tried(sample(ground(Case(), load_year("Inland vale")), count=40), option="recovery")


@pytest.fixture(scope="module")
def against() -> Against:
    return all_tried().against[0]


def knowing(against: Against, **told: tuple[float, float]) -> Against:
    """The same with what knowing each input would bring (changes of 100, narrowing) set by hand."""
    inputs = {each.input.name: each.input for each in against.sure.knowing}
    rows = [Knowing(input=inputs[name], changes=told[name][0], narrowing=told[name][1]) for name in told]
    return dataclasses.replace(against, sure=dataclasses.replace(against.sure, knowing=tuple(rows), years=20.0))


def test_one_thing_settles_it_and_another_does_not(against: Against) -> None:
    said = lever_words.measure_first(knowing(against, leakage=(34.0, 0.25), price_of_heat=(0.0, 0.02)))
    assert said == (
        "Against new plain extract: a leakage test would settle most: it changes the verdict in 34 of 100 cases and "
        "narrows the range by 25%; the last fuel bill would not: it changes the verdict in none of 100 cases."
    )


def test_where_nothing_changes_the_verdict_that_is_said(against: Against) -> None:
    said = lever_words.measure_first(knowing(against, leakage=(0.0, 0.25), price_of_heat=(0.0, 0.02)))
    assert said == (
        "Against new plain extract: nothing that can be measured would change whether it pays back within 20 years; "
        "a leakage test would narrow the range of the saving most, by 25%."
    )


PROMISE = Promise(kind="saving", value=300.0)
JUDGED = Judgement(
    promise=PROMISE,
    low=-12.0,
    middle=40.0,
    high=88.0,
    reached=0.03,
    position="beyond the range",
    payback_of_saving=None,
    met_at_best_guess=False,
    needed=(),
)
AROUND = "eight of ten cases lie between costing £10 more and saving £90 a year"


@pytest.mark.parametrize(
    ("changed", "words"),
    [
        ({}, f"A saving of £300 a year, against new plain extract, lies beyond the range: only 3 of 100 cases tried do "
             f"as well; {AROUND}."),
        ({"reached": 0.0, "position": "beyond every case tried"},
         f"A saving of £300 a year, against new plain extract, was reached in none of the cases tried; {AROUND}."),
        ({"reached": 0.0004},
         f"A saving of £300 a year, against new plain extract, lies beyond the range: not 1 of 100 "
         f"cases tried does as well; {AROUND}."),
        ({"reached": 0.52, "position": "within the range"},
         f"A saving of £300 a year, against new plain extract, lies within what this estimate finds: 52 of 100 cases "
         f"tried do at least as well; {AROUND}."),
        ({"promise": Promise(kind="payback", value=9.0), "low": 24.0, "high": np.inf},
         "A payback of 9 years, against new plain extract, lies beyond the range: only 3 of 100 cases tried do as "
         "well; eight of ten cases lie between 24 years and never."),
        ({"promise": Promise(kind="efficiency", value=92.0), "low": 61.0, "high": 83.0},
         "Heat recovery in use of 92%, against new plain extract, lies beyond the range: only 3 of 100 cases tried "
         "do as well; eight of ten cases lie between 61% and 83%."),
    ],
)  # fmt: skip
def test_a_promise_is_put_where_it_lies(changed: dict[str, Any], words: str) -> None:
    said = claim_words.verdict(dataclasses.replace(JUDGED, **changed), "£", baseline="new plain extract")
    assert said == words


def test_what_would_have_to_be_true_or_that_nothing_would() -> None:
    assert claim_words.needs(JUDGED, "£") == (
        "Nothing plausible of any one entry alone would give it, all else at its best guess.",
    )
    with_price = dataclasses.replace(JUDGED, needed=(NEEDED,))
    assert claim_words.needs(with_price, "£") == ("Price would have to be 23.7p/kWh; it is taken to be 7.33p/kWh.",)
    assert "without changing" in claim_words.needs(dataclasses.replace(JUDGED, met_at_best_guess=True), "£")[0]


@pytest.mark.parametrize(("span", "end"), [(15.0, "15 years to return."), (np.inf, "more than 100 years.")])
def test_a_promised_saving_at_its_own_price(span: float, end: str) -> None:
    found = dataclasses.replace(
        JUDGED, promise=Promise(kind="saving", value=300.0, price=6400.0), payback_of_saving=span
    )
    assert claim_words.price_said(found, "£").endswith(end)
    assert claim_words.price_said(JUDGED, "£") == ""


def test_the_number_is_judged_and_nobody_else() -> None:
    said = [*claim_words.needs(JUDGED, "£"), claim_words.verdict(JUDGED, "£", baseline="x"), *QUESTIONS]
    words = " ".join(said).lower()
    assert not any(word in words for word in ("seller", "firm", "a lie", "false", "mislead", "honest", "cheat"))
