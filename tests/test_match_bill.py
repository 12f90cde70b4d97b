"""Does a bill give back the house it is the bill of, and is it refused where no house fits?"""

from __future__ import annotations

import dataclasses

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from estimator import Case, Home, InputFaults, Leakage, load_year, run
from estimator.climate.year import ClimateYear
from estimator.evidence.hourly import Homes, heating_need
from estimator.inputs.heating import Heating, Pump, Second
from estimator.inputs.places import with_value
from estimator.inputs.prices import Prices, Roof, Tariff
from estimator.match_bill import Unknown, match, plausible
from estimator.metered import Bill, metered, today_year
from estimator.survey.fill import filled

YEAR = load_year("Inland vale")
GAS = Case()
ELECTRIC = Case(heating=Heating(fuel="heat pump"))
HOURLY = Case(heating=Heating(fuel="heat pump", pump=Pump(mode="hourly")))
STOVE = Case(heating=Heating(second=Second(fuel="wood pellets", share=30.0)))


def metered_of(case: Case, year: ClimateYear = YEAR) -> float:
    """What the meter of the heating fuel would count by the estimate [kWh]."""
    whole = run(case, year).estimate
    option = whole.options[case.today]
    other = whole.case.prices.other_electricity + option.electricity if "heat pump" in case.heating.fuel else 0.0
    heat = option.bills.first_energy if case.heating.second.share else option.fuel_energy
    return float(np.squeeze(heat)) + option.hot_water_fuel + other


@settings(max_examples=5)
@given(
    fabric=st.floats(110.0, 420.0),
    leakage=st.floats(1.0, 12.0),
    indoors=st.floats(17.0, 22.0),
    case=st.sampled_from([GAS, ELECTRIC, HOURLY, STOVE]),
)
def test_the_bill_of_an_estimate_gives_its_house_back(
    fabric: float, leakage: float, indoors: float, case: Case
) -> None:
    given_case = dataclasses.replace(
        case, home=Home(indoor_temperature=indoors), leakage=Leakage(measure="q50", value=leakage)
    )
    bill = Bill(energy=metered_of(with_value(given_case, "home.fabric_loss", fabric)))
    found = match(given_case, YEAR, bill, own_year=YEAR)
    assert found.value == pytest.approx(fabric, rel=1e-6)
    assert found.low <= fabric <= found.high


@pytest.mark.parametrize("indoors", [16.0, 21.5])
def test_or_its_indoor_temperature(indoors: float) -> None:
    bill = Bill(energy=metered_of(Case(home=Home(indoor_temperature=indoors))))
    found = match(Case(), YEAR, bill, unknown="home.indoor_temperature")
    assert found.value == pytest.approx(indoors, rel=1e-6)
    assert found.now == 20.0 or found.now == filled(Case()).case.home.indoor_temperature


def test_a_published_bill_in_money_gives_its_energy() -> None:
    # Great Britain, January to March 2026, as published: 2,700 kWh of electricity at 27.69 p and 54.75 p a day and
    # 11,500 kWh of gas at 5.93 p and 35.09 p a day cost 1,758 a year (seen in a secondary text).
    gas = 1758.0 - 2700 * 0.2769 - 365 * 0.5475
    case = filled(Case(prices=Prices(fuel=5.93, fuel_standing=35.09))).case
    assert metered(case, YEAR, Bill(money=gas)).total == pytest.approx(11500.0, abs=1.0 / 0.0593)


@pytest.mark.parametrize("climate", ["Inland vale", "Upland"])
@pytest.mark.parametrize("fabric", [140.0, 260.0])
def test_a_bill_by_the_simple_hourly_method_of_iso_13790_gives_its_fabric(climate: str, fabric: float) -> None:
    # The standard puts 1/(15.5 W/K per m² of floor) in series with all fabric, so that its homes lose less than their
    # air-to-air sum: what a bill of such a home tells is the fabric with that in it.
    case, year = with_value(filled(Case()).case, "home.fabric_loss", fabric), load_year(climate)
    done = run(case, year).estimate
    home, option = done.case.home, done.options[case.today]
    need = heating_need(
        Homes(
            floor_area=np.array([home.floor_area]),
            opaque=np.array([0.7 * fabric]),
            window=np.array([0.3 * fabric]),
            mass_class=np.array([2]),
        ),
        temp_out=year.temp_air,
        temp_set=home.indoor_temperature,
        ventilation=done.shared.heat_capacity * option.air.delivered[None, :],
        internal_gains=home.internal_gains,
        solar_gains=np.ravel(done.shared.gain)[None, :] - float(home.internal_gains or 0.0),
    )
    bill = Bill(energy=float(need[0]) / 0.85 + option.hot_water_fuel)
    surfaces = 3.45 * 4.5 * home.floor_area
    in_series = surfaces * fabric / (surfaces + fabric)
    assert match(case, year, bill, own_year=year).value == pytest.approx(in_series, rel=0.05)


def test_a_degree_day_base_gives_the_slope_by_hand() -> None:
    # Degree-day practice: heat = W/K × 24 h × degree-days; from 7.5 °C all year below 15.5 °C, 8 K d a day, 16 in two
    # days as published. So 1 W/K takes 24 × 8 × 365 / 1000 = 70.08 kWh of heat a year.
    steady = dataclasses.replace(YEAR, temp_air=np.full(YEAR.rows, 7.5))
    case = Case(heating=Heating(mode="fixed base", efficiency=80.0))
    one, other = (match(case, steady, Bill(energy=energy), own_year=steady).value for energy in (20000.0, 24000.0))
    assert other - one == pytest.approx(4000.0 * 0.80 / 70.08, rel=1e-9)


def test_a_cold_year_is_brought_to_the_weather_year() -> None:
    bill = Bill(energy=20000.0)
    days = metered(filled(GAS).case, YEAR, bill).degree_days
    plain, colder = match(GAS, YEAR, bill), match(GAS, YEAR, Bill(energy=20000.0, degree_days=1.1 * days))
    assert not plain.metered.weather_known
    assert colder.metered.weather_known
    assert colder.metered.for_heating == pytest.approx(plain.metered.for_heating / 1.1)
    assert colder.value < plain.value
    assert "winter" not in " ".join(cause.words for cause in colder.causes)
    same = match(GAS, YEAR, Bill(energy=20000.0, degree_days=days))
    assert same.value == pytest.approx(plain.value)
    assert same.low >= plain.low
    assert same.high <= plain.high


def test_heat_from_elsewhere_is_heat_the_fuel_was_not_bought_for() -> None:
    efficiency = 0.85
    alone, stove = match(GAS, YEAR, Bill(energy=18000.0)), match(GAS, YEAR, Bill(energy=18000.0, other_heat=1700.0))
    more = match(GAS, YEAR, Bill(energy=18000.0 + 1700.0 / efficiency))
    assert alone.value < stove.value
    assert stove.value == pytest.approx(more.value, rel=1e-9)


def test_cooking_and_hot_water_are_taken_off_in_full() -> None:
    plain = match(GAS, YEAR, Bill(energy=18000.0)).metered
    cooking = match(GAS, YEAR, Bill(energy=18400.0, cooking=400.0)).metered
    assert cooking.left == pytest.approx(plain.left)
    # 500 kWh and 600 for each of three people, at 85 %.
    assert plain.total - plain.left == pytest.approx(2300.0 / 0.85)


@pytest.mark.parametrize(
    ("bill", "said"),
    [
        (Bill(energy=2500.0), "leave nothing for heating"),
        (Bill(energy=4000.0), "less than"),
        (Bill(energy=90000.0), "more than"),
        (Bill(money=100.0), "standing charge"),
        (Bill(), "neither was"),
        (Bill(energy=9000.0, money=900.0), "both were"),
        (Bill(energy=18000.0, degree_days=20.0), "outside the limits"),
        (Bill(energy=-1.0, cooking=-3.0), "outside the limits"),
    ],
)
def test_what_no_house_can_have_is_refused_with_the_reason(bill: Bill, said: str) -> None:
    with pytest.raises(InputFaults, match=said):
        match(GAS, YEAR, bill)


@pytest.mark.parametrize(
    ("case", "bill", "said"),
    [
        (dataclasses.replace(ELECTRIC, roof=Roof(size=4.0)), Bill(energy=9000.0), "share the meter"),
        (
            dataclasses.replace(ELECTRIC, prices=Prices(tariff=Tariff(kind="time of use", windows="9 at 0:30-5:30"))),
            Bill(money=2000.0),
            "several prices",
        ),
    ],
)
def test_a_count_that_tells_no_use_is_refused(case: Case, bill: Bill, said: str) -> None:
    with pytest.raises(InputFaults, match=said):
        match(case, YEAR, bill)


def test_all_faults_of_a_bill_come_at_once() -> None:
    with pytest.raises(InputFaults) as refused:
        match(GAS, YEAR, Bill(energy=-1.0, cooking=-3.0, other_heat=-1.0))
    assert len(refused.value.faults) == 3


@pytest.mark.parametrize("unknown", ["home.fabric_loss", "home.indoor_temperature"])
def test_a_bill_never_counts_as_a_measurement_of_one_entry(unknown: Unknown) -> None:
    whole = filled(GAS).case
    option = today_year(whole, YEAR)
    found = match(GAS, YEAR, Bill(energy=option.fuel_energy + option.hot_water_fuel), unknown=unknown)
    assert found.tag in ("typical", "assumed")
    low, high = plausible(whole, unknown)
    assert low <= found.low < found.value < found.high <= high
    assert found.causes
    assert found.estimated_now == pytest.approx(found.metered.total)


def test_a_tested_house_is_told_more_by_its_bill() -> None:
    bill = Bill(energy=18000.0)
    guessed = match(Case(leakage=Leakage(measure="q50", value=8.0, basis="assumed")), YEAR, bill)
    tested = match(Case(leakage=Leakage(measure="q50", value=8.0, basis="measured")), YEAR, bill)
    assert tested.value == pytest.approx(guessed.value)
    assert tested.high - tested.low < guessed.high - guessed.low
