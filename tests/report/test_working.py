"""Does every working come to the figure it explains, by hand and by the hour?"""

from __future__ import annotations

import math
import re
from dataclasses import replace
from math import isinf

import numpy as np
import pytest

from estimator.climate.sources import load_year
from estimator.compare import Result, run
from estimator.draws import ground
from estimator.inputs.case import Case
from estimator.report import hours, working_rows
from estimator.report.sure_words import tried
from estimator.report.working import workings
from estimator.sample import sample
from estimator.units import MONTH_DAYS, to_kwh

CASES = {
    "gas": Case(),
    "direct electric": replace(Case(), heating=replace(Case().heating, fuel="direct electric")),
    "fixed base": replace(Case(), heating=replace(Case().heating, mode="fixed base")),
}


@pytest.fixture(scope="module", params=CASES)
def done(request: pytest.FixtureRequest) -> Result:
    return run(CASES[request.param], load_year("Upland"))


def _reported(result: Result, comparison: object, key: str) -> float:
    name, _, option = key.partition(":")
    if not option:
        return float(getattr(comparison, name))
    year = result.estimate.options[option]
    if name == "air_delivered":
        return float(np.mean(year.air.delivered)) * 3600.0
    return float(getattr(year, name))


def test_every_working_comes_to_the_figure_reported(done: Result) -> None:
    for comparison in (*done.against_baseline.values(), *done.against_today.values()):
        for each in workings(done.estimate, comparison):
            wanted = _reported(done, comparison, each.key)
            if isinf(wanted):
                assert isinf(each.value), each.key
            else:
                assert each.value == pytest.approx(wanted, rel=1e-9, abs=1e-9), each.key


def test_a_headline_is_no_finer_than_its_range_while_its_working_stays_exact() -> None:
    result = run(Case(), year := load_year("Upland"))
    comparison = result.against_baseline["recovery"]
    sure = tried(sample(ground(Case(), year), count=60), option="recovery").against[0].sure
    groups = working_rows.grouped(workings(result.estimate, comparison))
    said = [working_rows.headline(group, sure, "£") for group in groups]
    assert not any(re.search(r"[.]\d\d", words) for words in said), said
    saving, heat = groups[0][0], groups[1][0]
    assert saving.result.endswith(f"{abs(comparison.net_saving):.2f}")
    spread = sure.heat_saved
    step = 10.0 ** (math.floor(math.log10(spread.high - spread.low)) - 1)
    told = float(re.search(r"about (−?[\d,]+)", said[1])[1].replace(",", "").replace("−", "-"))  # type: ignore[index]
    assert abs(told - heat.value) <= max(0.5 * step, 0.005 * abs(heat.value)) + 1e-9


def test_every_number_put_in_names_where_it_comes_from(done: Result) -> None:
    for each in workings(done.estimate, done.against_baseline["recovery"]):
        assert each.formula
        assert all(put.words and put.number and put.source for put in each.put), each.key


def test_heat_from_the_heating_adds_up_to_the_year(done: Result) -> None:
    comparison = done.against_baseline["recovery"]
    table = hours.table(done.estimate, comparison)
    for name in ("extract", "recovery"):
        option = done.estimate.options[name]
        if done.estimate.home.fixed_base is not None:
            continue
        column = table[f"{option.label}: heat from the heating [W]"]
        assert to_kwh(np.sum(column)) == pytest.approx(option.heating_demand, rel=1e-9)


def test_the_map_and_its_table_hold_the_heat_saved(done: Result) -> None:
    comparison = done.against_baseline["recovery"]
    drawn = hours.heat_saved_map(done.estimate, comparison)
    assert drawn.values.shape == (24, 365)
    assert np.sum(drawn.values) == pytest.approx(comparison.heat_saved, rel=1e-9)
    said = sum(float(row[-1].replace("−", "-").replace(",", "")) for row in hours.quarters(drawn).rows)
    assert said == pytest.approx(comparison.heat_saved, abs=12 * 0.05)


def test_stamps_follow_the_calendar() -> None:
    month, day, hour = hours.stamps(8760)
    assert [int(np.sum(month == number)) for number in range(1, 13)] == [24 * days for days in MONTH_DAYS]
    assert (int(month[0]), int(day[0]), int(hour[0])) == (1, 1, 0)
    assert (int(month[-1]), int(day[-1]), int(hour[-1])) == (12, 31, 23)
    assert (int(month[59 * 24]), int(day[59 * 24])) == (3, 1)


def test_one_hour_is_the_row_of_the_table(done: Result) -> None:
    comparison = done.against_baseline["recovery"]
    told = hours.told(done.estimate, comparison, month=2, day=3, hour=4)
    row = (31 + 2) * 24 + 4
    outside = {cells[0]: cells[1] for cells in told.rows}["outdoor temperature [°C]"]
    assert float(outside.replace("−", "-")) == pytest.approx(float(done.estimate.year.temp_air[row]), abs=0.05)


@pytest.mark.parametrize(("month", "day", "hour"), [(2, 29, 0), (13, 1, 0), (1, 1, 24), (0, 1, 1)])
def test_an_hour_that_no_year_has_is_refused(done: Result, month: int, day: int, hour: int) -> None:
    with pytest.raises(ValueError, match="no hour"):
        hours.told(done.estimate, done.against_baseline["recovery"], month=month, day=day, hour=hour)
