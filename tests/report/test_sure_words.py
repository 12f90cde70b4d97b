"""Do the words about sureness say what the cases tried say, in the units people use, and promise nothing?

Expected words are written by hand for figures set by hand; the ends of ranges are held against scipy's triangular
distribution.
"""

from __future__ import annotations

import dataclasses
from typing import Any

import numpy as np
import pytest
from scipy.stats import triang

from estimator import Case, Leakage, load_year
from estimator.draws import ground
from estimator.inputs.heating import Heating
from estimator.report import charts_sure, first_page, lever_words, sure_words
from estimator.report.palette import LIGHT
from estimator.report.sure_ends import ends_said
from estimator.report.sure_words import Against, Tried, tried
from estimator.sample import sample
from estimator.sure import Spread

GAP = "\u00a0"
BOTH = (-1.0, 1.0)


def of(case: Case) -> Tried:
    return tried(sample(ground(case, load_year("Inland vale")), count=40), option="recovery")


@pytest.fixture(scope="module")
def found() -> Tried:
    return of(Case())


def with_figures(against: Against, low: float, high: float, payback: list[float]) -> Against:
    """The same with the range of saving and the cases' paybacks set by hand."""
    cases = dataclasses.replace(against.sure.cases, payback=np.array(payback))
    spread = Spread(low=low, middle=0.5 * (low + high), high=high)
    changed = dataclasses.replace(against.sure, net_saving=spread, cases=cases, count=len(payback), years=20.0)
    return dataclasses.replace(against, sure=changed)


@pytest.mark.parametrize(
    ("low", "high", "payback", "said"),
    [
        (
            92.0, 141.0, [10.0, 15.0, 19.0, *([30.0] * 7)],
            "Heat recovery here would save about £90 to £140 a year after its fans and filters, against new plain "
            "extract; in 3 of 10 cases tried with these ranges it pays back within its life of 20 years.",
        ),
        (
            -62.0, -21.0, [np.inf] * 10,
            "Heat recovery here would cost about £20 to £60 more a year after its fans and filters, against new plain "
            "extract; in none of 10 cases tried with these ranges it pays back within its life of 20 years.",
        ),
        (
            -38.0, 91.0, [10.0] * 10,
            "Whether heat recovery would save anything here cannot be told: between costing about £40 more and "
            "saving about £90 a year, against new plain extract; in all 10 cases tried with these ranges it pays back "
            "within its life of 20 years.",
        ),
    ],
)  # fmt: skip
def test_the_first_line(found: Tried, low: float, high: float, payback: list[float], said: str) -> None:
    assert sure_words.sentence(found, with_figures(found.against[0], low, high, payback)) == said


@pytest.mark.parametrize(
    ("within", "of_all", "often"),
    [(1, 20, "hardly any of the cases"), (19, 20, "almost all cases"), (2, 20, "1 of 10 cases"),
     (8, 20, "4 of 10 cases"), (18, 20, "9 of 10 cases"),
     (1, 2000, "hardly any of the cases"), (1999, 2000, "almost all cases")],
)  # fmt: skip
def test_a_share_never_rounds_to_none_or_all(found: Tried, within: int, of_all: int, often: str) -> None:
    payback = [1.0] * within + [np.inf] * (of_all - within)
    assert f"in {often} tried" in sure_words.paid_back(with_figures(found.against[0], 0.0, 1.0, payback).sure)


def test_both_comparisons_stand_and_one_where_today_is_the_baseline(found: Tried) -> None:
    assert [against.words for against in found.against] == ["new plain extract", "the house as it is aired today"]
    alone = of(dataclasses.replace(Case(), baseline="today"))
    assert [against.sure.baseline for against in alone.against] == ["today"]


def said(found: Tried, name: str, at: tuple[float, float] = BOTH) -> tuple[str, str]:
    item = next(each for each in found.place.inputs if each.name == name)
    return ends_said(found.place, item, option="recovery", at=at)


def test_an_input_is_said_in_its_own_unit(found: Tried) -> None:
    # The table of ranges: 2 K either way of 19.5 degrees as entered by default; a price of 7.33p by 0.75 and 1.35.
    assert said(found, "indoor_temperature") == (f"17.5{GAP}°C", f"21.5{GAP}°C")
    assert said(found, "price_of_heat") == ("5.5p/kWh", "9.9p/kWh")
    assert said(found, "weather") == (f"\u22121.2{GAP}K", f"+1.2{GAP}K")
    assert said(found, "switched_off") == ("75%", "100%")


def test_many_entries_and_what_was_moved_before_are_said_as_changes(found: Tried) -> None:
    assert said(found, "cost") == ("35% less", "60% more")
    assert said(found, "filters") == ("as it is", "30% more")
    assert said(found, "wind") == ("30% less", "30% more")


def test_a_tested_house_says_its_test() -> None:
    case = Case(leakage=Leakage(measure="q50", value=3.0, basis="measured"))
    assert said(of(case), "leakage") == (f"2.7{GAP}m³/(h{GAP}m²)", f"3.3{GAP}m³/(h{GAP}m²)")


def test_one_price_where_heat_is_electric() -> None:
    found = of(Case(heating=Heating(fuel="direct electric")))
    assert "price_of_heat" not in {item.name for item in found.place.inputs}
    assert said(found, "price_of_electricity")[0].endswith("p/kWh")
    assert "Price of the heating fuel" not in [row[0] for row in lever_words.levers(found).rows]


def test_a_swing_is_labelled_where_a_tenth_of_the_cases_lie_beyond(found: Tried) -> None:
    low, high = (float(triang.ppf(share, 0.5, loc=17.5, scale=4.0)) for share in (0.1, 0.9))
    line = next(each for each in sure_words.lines(found, found.against[0]) if each.words == "indoor temperature")
    assert (line.low, line.high) == (f"{low:.1f}{GAP}°C", f"{high:.1f}{GAP}°C")


def test_swings_are_ranked_and_drawn_with_their_labels(found: Tried) -> None:
    against = found.against[0]
    lines = sure_words.lines(found, against)
    widths = [abs(line.at_high - line.at_low) for line in lines]
    assert 2 < len(lines) <= 10
    assert widths == sorted(widths, reverse=True)
    figure: Any = charts_sure.swings(lines, best=float(against.sure.best.net_saving[0]), currency="£", palette=LIGHT)
    drawn = {note.text for note in figure.layout.annotations}
    for line in lines:
        assert {line.low, line.high, f"<b>{line.words}</b>"} <= drawn
        assert line.words in sure_words.swings_in_words(found, against)


def test_every_range_shows_its_reason_and_source(found: Tried) -> None:
    rows = sure_words.ranges(found).rows
    assert len(rows) == len(found.place.inputs)
    assert all(all(row) for row in rows)


def test_never_is_a_word_and_not_a_number(found: Tried) -> None:
    never = dataclasses.replace(found.against[0].sure, payback=Spread(low=12.4, middle=300.0, high=float("inf")))
    sheet = sure_words.spreads(found, dataclasses.replace(found.against[0], sure=never))
    assert ("Payback", "12 years", "more than 100 years", "never") in sheet.rows


def test_nothing_is_promised(found: Tried) -> None:
    every = [sure_words.sentence(found, each) + lever_words.measure_first(each) for each in found.against]
    every += [sure_words.middle(found, each) for each in found.against] + list(sure_words.rests_on(found))
    for words in (" ".join(every).lower(),):
        assert not any(word in words for word in ("chance", "probab", "likely", "guarantee", "certain "))


def test_what_it_would_take_is_worked_out_only_once_somebody_asks(monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[str] = []

    def noted(*_: object, baseline: str, **__: object) -> tuple[()]:
        asked.append(baseline)
        return ()

    monkeypatch.setattr(sure_words, "what_would_it_take", noted)
    found = of(Case())
    sure_words.sentence(found, found.against[0])
    first_page.levers(found, found.against[0], plain=True)
    assert asked == []
    assert found.against[0].needed == found.against[0].needed == ()
    assert asked == [found.against[0].sure.baseline]
