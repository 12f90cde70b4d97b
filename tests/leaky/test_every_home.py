"""Does every home in every kind of climate get a verdict, two borders and four routes, each figure a direct estimate's?

On the functions that the page itself uses. The year stands in blocks of a day here, so that all homes can meet all
kinds of climate, and the first of them every climate; the same figures over all hours of the year are held elsewhere,
one climate for each home.
"""

from __future__ import annotations

import datetime
import io
import re
import tomllib
from functools import cache
from pathlib import Path

import pytest
from pypdf import PdfReader

from estimator import Case, case_from_dict, load_year, names, run
from estimator.at_leakage import ground
from estimator.climate.shorten import shortened
from estimator.climate.year import ClimateYear
from estimator.compare import Comparison
from estimator.leak_range import leakage_span, with_q50
from estimator.report import tight_page
from estimator.report.leave import Names
from estimator.report.tight import Against, Tightness, reach, sealed, sweeps, tightness, verdict
from estimator.report.tight_paper import TightPaper, tight_paper
from estimator.routes import LABELS, LEAVE, RECOVER, SEAL
from estimator.survey.fill import filled
from estimator.sweep import HIGHEST, LOWEST, Threshold
from tests.climates import OF_EVERY_KIND

FOLDER = Path(__file__).parents[1] / "dwellings"
HOMES = ("untested", *(file.stem for file in sorted(FOLDER.glob("*.toml"))))
FORMS = ("one", "already", "not before", "several")
MET = [
    *((name, climate) for name in HOMES for climate in OF_EVERY_KIND),
    *(("untested", climate) for climate in names() if climate not in OF_EVERY_KIND),
]
NEAR = 1e-3  # m³/(h m²), to either side of a border


@cache
def home(name: str) -> Case:
    if name == "untested":
        return Case()
    written = tomllib.loads((FOLDER / f"{name}.toml").read_text(encoding="utf-8"))
    return case_from_dict({"version": 1, **written["case"]})


@cache
def days(climate: str) -> ClimateYear:
    return shortened(load_year(climate), hours_per_block=24)


def direct(case: Case, year: ClimateYear, q50: float, against: str) -> Comparison:
    result = run(with_q50(case, q50), year)
    option = next(name for name in case.options if name not in (case.baseline, case.today))
    return (result.against_baseline if against == "baseline" else result.against_today)[option]


def close(value: float) -> object:
    return pytest.approx(value, rel=1e-9, abs=1e-9)


def asked(case: Case, year: ClimateYear) -> Tightness:
    place = ground(case, year)
    option = next(each for each in case.options if each not in (case.baseline, case.today))
    return tightness(
        place, leakage_span(case), option=option, swept=sweeps(place, option=option), known=sealed(place, option=option)
    )


def papered(found: Tightness, case: Case) -> TightPaper:
    return tight_paper(found, filled(case), names=Names(), today=datetime.date(2026, 3, 1))


@pytest.mark.parametrize("climate", ["Mild coast", "Cold plain"])
@pytest.mark.parametrize("name", HOMES)
def test_the_verdict_of_every_home_is_one_sheet_of_a4(name: str, climate: str) -> None:
    case = home(name)
    read = PdfReader(io.BytesIO(tight_page.pdf(papered(asked(case, days(climate)), case))))
    assert len(read.pages) == 1
    # ISO 216: 210 mm by 297 mm, in points of 1/72 inch.
    assert [float(side) * 25.4 / 72 for side in read.pages[0].mediabox[2:]] == pytest.approx([210.0, 297.0], abs=0.1)


@pytest.mark.parametrize(("name", "climate"), MET)
def test_verdict_borders_and_routes_equal_direct_estimates(name: str, climate: str) -> None:
    case, year = home(name), days(climate)
    found = asked(case, year)
    _figures_of_the_house(found, case, year)
    for which, against in (("baseline", found.baseline), ("today", found.today)):
        _borders(against, case, year, which)
        _routes(against, found, case, year, which)
    text = " ".join(tight_page.text(papered(found, case)).split())
    said = verdict(found)
    for words in (said.sentence, said.then, said.today, *(reach(border) for border in _both(found.baseline))):
        assert " ".join(words.split()) in text
    for route in LABELS.values():
        rows = re.findall(rf"- {route[:1].upper()}{route[1:]}[.:] ", text)
        assert len(rows) == 2


def _both(against: Against) -> tuple[Threshold, Threshold]:
    return against.sweep.saving, against.sweep.payback


def _figures_of_the_house(found: Tightness, case: Case, year: ClimateYear) -> None:
    for at, q50 in enumerate((found.span.low, found.span.middle, found.span.high)):
        for which, against in (("baseline", found.baseline), ("today", found.today)):
            right, here = direct(case, year, q50, which), against.here
            assert here.net_saving[at] == close(right.net_saving)
            assert here.heat_saved[at] == close(right.heat_saved)
            assert here.carbon_saving[at] == close(right.carbon_saving)
            assert here.payback[at] == close(right.simple_payback)


def _borders(against: Against, case: Case, year: ClimateYear, which: str) -> None:
    """A condition changes exactly where it is said to, and holds where it is said to hold."""
    life = against.here.life
    for border, least in zip(_both(against), (0.0, max(against.here.net_capital, 0.0) / life), strict=True):
        assert border.form in FORMS
        for q50 in (LOWEST, HIGHEST, *(at + side for at in border.crossings for side in (-NEAR, NEAR))):
            holds = direct(case, year, q50, which).net_saving > least
            assert border.holds_at(q50) == holds
        for at in border.crossings:
            assert direct(case, year, at, which).net_saving == pytest.approx(least, abs=1e-6)


def _routes(against: Against, found: Tightness, case: Case, year: ClimateYear, which: str) -> None:
    start = case.baseline if which == "baseline" else case.today
    for end in against.routes:
        assert set(end.routes) == set(LABELS)
        here = run(with_q50(case, end.q50), year).estimate.options
        sealed = run(with_q50(case, min(case.sealing.target, end.q50)), year).estimate.options
        for name, route in end.routes.items():
            right = (here if name in (LEAVE, RECOVER) else sealed)[start if name in (LEAVE, SEAL) else found.option]
            left = here[start]
            saving = left.household_bill - right.household_bill - (right.upkeep - left.upkeep)
            assert route.net_saving == close(saving)
            assert route.carbon_saving == close(left.household_carbon - right.household_carbon)
            assert route.heat_saved == close(left.heating_demand - right.heating_demand)
            assert route.life_gain.middle + route.cost.middle == pytest.approx(
                saving * case.worth.life, rel=1e-9, abs=1e-6
            )
