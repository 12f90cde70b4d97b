"""Is a drawn case what a direct estimate of it gives, and is the sample spread as it should be?"""

import dataclasses

import numpy as np
import pytest
from scipy import stats
from scipy.stats import qmc

from estimator import Case, run
from estimator.climate.year import ClimateYear
from estimator.drawn import difference
from estimator.draws import Ground, ground, outcomes, outcomes_with
from estimator.inputs.catalogue import option_kinds
from estimator.inputs.option import Option
from estimator.inputs.places import value_at, with_values
from estimator.tries import place_of_rank, places
from estimator.units import Array
from tests.sure.cases import SHIPPED


def moved_by_hand(place: Ground, where: Array) -> tuple[dict[str, float], ClimateYear]:
    """Entries and weather of one drawn case as plain numbers, put together entry by entry."""
    entries: dict[str, float] = {}
    warmer, windier = 0.0, 1.0
    for item, at in zip(place.inputs, where, strict=True):
        for path in item.ends:
            if path == "weather.temp_air":
                warmer = float(item.drawn(path, 0.0, at))
            elif path == "weather.wind_speed":
                windier = float(item.drawn(path, 1.0, at))
            else:
                entries[path] = float(item.drawn(path, entries.get(path, value_at(place.case, path)), at))
    year = place.year
    return entries, dataclasses.replace(year, temp_air=year.temp_air + warmer, wind_speed=year.wind_speed * windier)


@pytest.mark.parametrize("name", SHIPPED)
def test_every_figure_of_a_drawn_case_equals_a_direct_estimate_of_it(name: str, grounds: dict[str, Ground]) -> None:
    place = grounds[name]
    where = places(len(place.inputs), count=3, start=5)
    found = outcomes(place, where, full_year=True)
    for number in range(3):
        entries, year = moved_by_hand(place, where[number])
        direct = run(with_values(place.case, entries), year)
        for option, compared in direct.against_baseline.items():
            ours = difference(found[option], baseline=found[place.case.baseline])
            for figure in ("heat_saved", "net_saving", "carbon_saving", "net_capital"):
                assert getattr(ours, figure)[number] == pytest.approx(getattr(compared, figure), rel=1e-9, abs=1e-7)
            assert ours.payback[number] == pytest.approx(compared.simple_payback, rel=1e-6)
            installed = direct.estimate.options[option].heat.effective_efficiency
            assert ours.efficiency[number] == pytest.approx(float(np.squeeze(installed)))


def test_every_kind_of_the_catalogue_can_be_drawn(year: ClimateYear) -> None:
    options = {kind: Option(kind=kind) for kind in option_kinds()}
    first, *_ = options
    case = Case(baseline=first, today=first, options=options)
    place = ground(case, year)
    found = outcomes(place, np.zeros((2, len(place.inputs))), full_year=True)
    for kind, direct in run(case, year).estimate.options.items():
        assert found[kind].heat == pytest.approx([direct.heating_demand] * 2)
        assert found[kind].electricity == pytest.approx([direct.electricity] * 2)
        assert found[kind].capital == pytest.approx([direct.capital] * 2)
    drawn = outcomes(place, places(len(place.inputs), count=30, start=1))
    assert all(np.all(np.isfinite(each.bill)) for each in drawn.values())


def test_it_does_not_matter_how_many_cases_go_at_once(grounds: dict[str, Ground]) -> None:
    place = grounds["gas"]
    where = places(len(place.inputs), count=70, start=2)
    together, alone = outcomes(place, where), outcomes(place, where[61:62])
    for name, figures in together.items():
        assert figures.heat[61] == pytest.approx(alone[name].heat[0])
        assert figures.bill[61] == pytest.approx(alone[name].bill[0])


def test_every_input_is_spread_evenly_over_its_likelihood() -> None:
    """A Latin hypercube by its definition: each of n equal shares of an input's likelihood holds one case."""
    where = places(5, count=200, start=3)
    # Half of a triangle on either side: the symmetric triangular distribution of any handbook of statistics.
    rank = stats.triang(c=0.5, loc=-1.0, scale=2.0).cdf(where)
    for column in rank.T:
        assert sorted(np.floor(column * 200).astype(int)) == list(range(200))
    assert np.all(np.abs(np.corrcoef(where, rowvar=False) - np.eye(5)) < 0.25)


@pytest.mark.parametrize(("inputs", "count", "start"), [(1, 7, 0), (19, 64, 7), (33, 2000, 1)])
def test_the_sample_is_the_latin_hypercube_of_a_general_library(inputs: int, count: int, start: int) -> None:
    theirs = qmc.LatinHypercube(d=inputs, rng=start).random(count)
    assert np.array_equal(places(inputs, count=count, start=start), place_of_rank(theirs))


def test_the_best_guess_is_the_middle_and_the_ends_are_the_ends() -> None:
    assert place_of_rank([0.0, 0.5, 1.0]).tolist() == [-1.0, 0.0, 1.0]


def test_the_same_seed_draws_the_same_and_another_does_not() -> None:
    first = places(19, count=64, start=7)
    assert np.array_equal(first, places(19, count=64, start=7))
    assert not np.array_equal(first, places(19, count=64, start=8))


def test_blocks_of_six_hours_err_by_no_more_than_was_found_elsewhere(grounds: dict[str, Ground]) -> None:
    # 600 random homes on three real years: saved heat within 0.8 to 2.1 % of the full year at the worst.
    place = grounds["gas"]
    where = places(len(place.inputs), count=24, start=4)
    saved = []
    for full_year in (False, True):
        found = outcomes(place, where, full_year=full_year)
        saved.append(difference(found["recovery"], baseline=found["extract"]).heat_saved)
    assert saved[0] == pytest.approx(saved[1], rel=0.021)
    assert not np.array_equal(saved[0], saved[1])


def test_a_lever_alone_stands_as_a_column(grounds: dict[str, Ground]) -> None:
    place = grounds["annual rule"]
    path = "options.recovery.unit.effectiveness"
    found = outcomes_with(place.case, place.year, {path: np.array([60.0, 75.0, 90.0])})
    assert np.all(np.diff(found["recovery"].heat) < 0.0)
    assert np.ptp(found["extract"].heat) == 0.0
    direct = run(with_values(place.case, {path: 75.0}), place.year).estimate.options["recovery"]
    assert found["recovery"].heat[1] == pytest.approx(direct.heating_demand)
