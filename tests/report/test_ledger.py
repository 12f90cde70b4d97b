"""Do picture, charts and sentences say the same as the comparison they are drawn from?

Energy and money must balance (first law; double entry), whatever the climate; nothing is retyped from the code.
"""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from estimator import Case, Leakage, load_year
from estimator.compare import Comparison, Result
from estimator.inputs.catalogue import option_kinds
from estimator.inputs.option import Option
from estimator.leak_range import over_leakage_range
from estimator.report import charts, findings, ledger
from estimator.report.answer import TODAY, Answer, answer
from estimator.report.figures import energy
from estimator.report.fresh_air import in_words
from estimator.report.palette import DARK, LIGHT

CLIMATES = ("Mild coast", "Inland vale", "Cold plain")


@pytest.fixture(scope="module", params=CLIMATES)
def results(request: pytest.FixtureRequest) -> tuple[Result, Result, Result]:
    return over_leakage_range(Case(), load_year(request.param))


def against(result: Result) -> Comparison:
    return result.against_baseline["recovery"]


def test_the_parts_of_the_fresh_airs_heat_add_up_and_the_money_left_is_the_net_saving(
    results: tuple[Result, Result, Result],
) -> None:
    for result in results:
        for comparison in (against(result), result.against_today["recovery"]):
            account = ledger.fresh_air(result.estimate, comparison)
            assert min(account.past, account.lost, account.kept) > 0
            assert account.left == pytest.approx(comparison.net_saving, abs=1e-6)
            assert account.saved == comparison.heat_saved
            option = result.estimate.options["recovery"]
            heated = option.heat.heat > 0
            carried = result.estimate.shared.heat_capacity * result.estimate.shared.temp_difference
            whole = np.sum((carried * option.air.delivered)[heated]) / 1000 * result.estimate.year.weight
            assert account.total == pytest.approx(whole, rel=1e-9)


@pytest.mark.parametrize("kind", sorted(option_kinds()))
def test_the_heat_of_every_way_of_airing_is_shared_out_whole(kind: str) -> None:
    """The balance of energy of the air in heated hours; what a heater of the unit adds is nobody's kept heat."""
    shipped = Case()
    case = replace(shipped, options={**shipped.options, "asked": Option(kind=kind)})
    result = over_leakage_range(case, load_year("Cold plain"))[1]
    done, comparison = result.estimate, result.against_baseline["asked"]
    account, option = ledger.fresh_air(done, comparison), done.options["asked"]
    heated = option.heat.heat > 0

    def summed(power: np.ndarray) -> float:
        return float(np.sum(power[heated]) / 1000 * done.year.weight)

    whole = summed(done.shared.heat_capacity * done.shared.temp_difference * option.air.delivered)
    assert account.past + account.lost + account.kept == pytest.approx(whole, rel=1e-9)
    assert min(account.past, account.lost, account.kept, account.heater) >= -1e-6
    assert account.heater == pytest.approx(summed(option.air.preheater), abs=1e-9)
    # What the room heating has to give the air is the whole less what is kept and what the heater gives.
    assert summed(option.heat.ventilation_load) == pytest.approx(whole - account.kept - account.heater, rel=1e-9)
    efficiency = float(np.squeeze(option.heat.effective_efficiency))
    if account.exchanger:
        assert account.kept / (account.kept + account.lost) == pytest.approx(efficiency, rel=1e-9)


def test_a_frost_heater_joins_the_ribbon_after_what_is_kept() -> None:
    result = over_leakage_range(Case(), load_year("Cold plain"))[1]
    account = ledger.fresh_air(result.estimate, result.against_baseline["recovery"])
    said = in_words(account)
    assert account.heater > 100.0
    assert f"To this comes {energy(account.heater)}: added by the unit's own heater." in said
    assert f"{energy(account.kept)}: kept." in said


def test_months_add_up_to_the_year(results: tuple[Result, Result, Result]) -> None:
    saved = ledger.months_saved(results[1], against(results[1]))
    assert saved.heat.sum() == pytest.approx(against(results[1]).heat_saved, abs=1e-6)
    assert saved.electricity.sum() == pytest.approx(against(results[1]).extra_electricity, abs=1e-6)


def test_carbon_of_both_differs_by_the_carbon_saved(results: tuple[Result, Result, Result]) -> None:
    base, option = ledger.carbon_pair(results[1].estimate, against(results[1]))
    assert base.total - option.total == pytest.approx(against(results[1]).carbon_saving, abs=1e-6)


def test_the_path_of_the_money_starts_at_the_cost_and_crosses_nil_at_the_payback(
    results: tuple[Result, Result, Result],
) -> None:
    low, middle, high = map(against, results)
    path = ledger.payback_path(middle, (low, high))
    assert path.middle[0] == path.low[0] == path.high[0] == -middle.net_capital
    assert np.all(path.low <= path.middle)
    assert np.all(path.middle <= path.high)
    if math.isfinite(middle.simple_payback):
        slope = (path.middle[-1] - path.middle[0]) / path.years[-1]
        assert path.middle[0] + slope * middle.simple_payback == pytest.approx(0.0, abs=1e-6)
    assert path.years[-1] > path.life


def test_charts_show_these_numbers_in_both_schemes(results: tuple[Result, Result, Result]) -> None:
    low, middle, high = map(against, results)
    saved = ledger.months_saved(results[1], middle)
    for palette in (LIGHT, DARK):
        bars = charts.months(saved, palette=palette).data
        assert np.allclose(bars[0].y, saved.heat)
        assert np.allclose(bars[1].y, -saved.electricity)
        steps = charts.saving(ledger.sums(middle), currency="£", palette=palette).data
        assert steps[0].x[0] + steps[1].x[0] + steps[2].x[0] == pytest.approx(middle.net_saving)
        assert steps[-1].x[0] == middle.net_saving
        stacked = charts.carbon(*ledger.carbon_pair(results[1].estimate, middle), palette=palette).data
        totals = np.add(stacked[0].x, stacked[1].x)
        assert totals[0] - totals[1] == pytest.approx(middle.carbon_saving)
        path = charts.payback(ledger.payback_path(middle, (low, high)), currency="£", palette=palette)
        assert path.data[1].y[0] == -middle.net_capital
        assert any("end of life" in note.text for note in path.layout.annotations)
        surfaces = {bar.marker.pattern.shape for bar in steps}
        assert {"", "/", "-"} <= surfaces  # told apart in a grey copy


def answers(case: Case, climate: str) -> tuple[Answer, Answer]:
    low, middle, high = over_leakage_range(case, load_year(climate))
    today = (result.against_today["recovery"] for result in (middle, low, high))
    return (
        answer(against(middle), (against(low), against(high)), "£", why="leakage"),
        answer(next(today), tuple(today), "£", why="leakage", baseline=TODAY),
    )


def test_each_of_the_three_answers_names_its_baseline_and_its_range() -> None:
    tight = Case(leakage=Leakage(measure="q50", value=1.0, basis="measured"))
    leaky = Case(leakage=Leakage(measure="q50", value=15.0, basis="measured"))
    seen = {}
    for case, climate in ((tight, "Cold plain"), (leaky, "Mild coast"), (Case(), "Inland vale")):
        first, other = answers(case, climate)
        seen[first.verdict] = first.sentence
        assert "against new plain extract" in first.sentence
        assert "against the house as it is aired today" in other.sentence
        assert "−" not in first.sentence + other.sentence
    assert "would save about" in seen["saves"]
    assert "would cost about" in seen["costs"]
    assert "more a year" in seen["costs"]
    assert "cannot be told: between" in seen["open"]


def test_findings_say_what_the_charts_show(results: tuple[Result, Result, Result]) -> None:
    middle = against(results[1])
    saved = ledger.months_saved(results[1], middle)
    assert findings.months(saved).startswith("Most heat is saved from ")
    winter = saved.heat[[0, 1, 11]].sum()
    assert winter > saved.heat[[5, 6, 7]].sum()  # northern half of the world, all three
    carbon = findings.carbon(*ledger.carbon_pair(results[1].estimate, middle))
    assert ("fall" in carbon) == (middle.carbon_saving > 0)
    if math.isinf(middle.simple_payback):
        assert "does not pay back" in findings.payback(middle, "£")
    told = findings.saving(ledger.sums(middle), "£")
    assert ("is left" in told) == (middle.net_saving > 0)


def test_the_run_of_most_heat_goes_round_the_turn_of_the_year() -> None:
    heat = np.array([30.0, 20.0, 10.0, 0, 0, 0, 0, 0, 0, 0, 10.0, 30.0])
    flat = np.zeros(12)
    found = ledger.MonthsSaved(heat=heat, electricity=flat, demand=heat)
    assert findings.months(found) == "Most heat is saved from December to February"
    assert findings.months(ledger.MonthsSaved(heat=flat, electricity=flat, demand=flat)).endswith("no heat is saved")
