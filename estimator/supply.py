"""What does a home buy its energy with: sources of heat, tariff, other loads and the sun on its roof?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import Any

import numpy as np

from estimator.climate.photovoltaics import yield_per_kw
from estimator.climate.year import ClimateYear
from estimator.inputs.case import Case
from estimator.inputs.catalogue import is_electric
from estimator.inputs.prices import Prices
from estimator.inputs.tariff_lines import DAYS, HourPrice, block_prices, hour_prices
from estimator.money import energy, heatpump, household
from estimator.money.clock import DAYLIGHT_SAVING, Clock, clock
from estimator.money.tariffs import WHOLE_YEAR, Block, Flat, Tariff, TimeOfUse, Window, week_of_prices
from estimator.units import MONTH_DAYS, Array, from_hundredths, from_percent

_QUARTERS = tuple(sum(MONTH_DAYS[first : first + 3]) for first in range(0, len(MONTH_DAYS), 3))
PERIODS = {"month": MONTH_DAYS, "quarter": _QUARTERS, "year": WHOLE_YEAR}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Source:
    """A source of heat: what it gives per unit bought (by row where that changes), money/kWh, kg/kWh."""

    performance: Any
    price: Any
    carbon: Any
    electric: bool


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Supply:
    """Everything that turns heat and electricity of an option into bills, in one year.

    Numbers are floats or columns (n, 1) of homes. Series have shape (…, rows) in kWh per row; where yearly sums do,
    there is one row, the year.
    """

    rows: int
    step: float  # h per row of the year that the heat comes in
    first: Source
    second: Source
    second_share: Any
    capacity: Any  # kWh per row that the first source can give
    hot_water: Any  # kWh bought a year
    other: Array  # kWh of other electricity, electric hot water in it where one meter counts all
    sun: Array | None
    tariff: Tariff
    one_meter: bool  # heat is electric and priced with all other electricity
    standing_fuel: Any  # money/day
    carbon: Any  # kg/kWh of electricity

    @property
    def by_row(self) -> bool:
        """Whether money needs more than yearly sums."""
        return self.rows > 1

    @property
    def shared(self) -> bool:
        """Whether the second source may have anything to give."""
        return bool(np.any(self.second_share > 0.0) or np.any(np.isfinite(self.capacity)))


def needs_rows(case: Case) -> bool:
    """Whether the money of a case depends on when energy is bought."""
    pump = case.heating.pump
    return _by_clock(case) or pump.mode == "hourly" or bool(np.any(np.asarray(pump.capacity) > 0.0))


def _by_clock(case: Case) -> bool:
    """Whether electricity has no single price."""
    return case.prices.tariff.kind != "flat" or bool(np.any(np.asarray(case.roof.size) > 0.0))


def supply(case: Case, year: ClimateYear, *, hourly: ClimateYear | None = None, by_row: bool = False) -> Supply:
    """The supply of a filled case in a weather year.

    hourly: the year in hours, where `year` is a shortened one and there are cells on the roof. by_row: keep the rows
    even where yearly sums would do, for months.
    """
    prices, heating = case.prices, case.heating
    rows = year.rows if by_row or needs_rows(case) else 1
    first = Source(
        performance=_performance(case, year),
        price=_money(prices.fuel),
        carbon=_number(prices.fuel_carbon),
        electric=is_electric(heating.fuel),
    )
    one_meter = first.electric and (_by_clock(case) or bool(np.all(first.price == _money(prices.electricity))))
    hot_water = energy.fuel_energy(_number(prices.hot_water), efficiency=_share(heating.efficiency))
    hours = _clock(case, year) if needs_rows(case) else None
    yearly = _number(prices.other_electricity) + (hot_water if one_meter else 0.0)
    capacity = np.asarray(heating.pump.capacity, dtype=float)
    return Supply(
        rows=rows,
        step=year.weight,
        first=first,
        second=_second(case),
        second_share=_share(heating.second.share),
        capacity=np.where(capacity > 0.0, capacity * year.weight, np.inf) if np.any(capacity > 0.0) else np.inf,
        hot_water=hot_water,
        other=_other(case, yearly, rows, hours),
        sun=_sun(case, hourly or year, rows),
        tariff=electricity_tariff(prices, hours),
        one_meter=one_meter,
        standing_fuel=0.0 if first.electric else _money(prices.fuel_standing),
        carbon=_number(prices.electricity_carbon),
    )


def electricity_tariff(prices: Prices, hours: Clock | None) -> Tariff:
    """The tariff for electricity that filled prices describe; clock hours are needed for time of use alone."""
    entered = prices.tariff
    level = from_percent(_leading(entered.level))
    base = from_hundredths(_leading(prices.electricity)) * level
    common: dict[str, Any] = {
        "standing_per_day": from_hundredths(_leading(prices.electricity_standing)),
        "export_price": from_hundredths(_leading(prices.export)),
    }
    if entered.kind == "time of use" and hours is not None:
        # Linear in its prices: a base that may differ from home to home, and windows that do not.
        windows = hour_prices(entered.windows)
        share = week_of_prices(1.0, windows=[_window(w, price=0.0) for w in windows])
        fixed = week_of_prices(0.0, windows=[_window(w, price=from_hundredths(w.price)) for w in windows])
        week = base[..., None, None] * share + level[..., None, None] * fixed
        return TimeOfUse(week=week, clock=hours, **common)
    if entered.kind == "block":
        blocks = block_prices(entered.blocks)
        return Block(
            prices=(base, *(from_hundredths(block.price) * level for block in blocks)),
            limits=tuple(block.limit for block in blocks),
            period_days=PERIODS[entered.billing],
            **common,
        )
    return Flat(price=base, **common)


def _window(entered: HourPrice, *, price: float) -> Window:
    return Window(price=price, start=entered.start, stop=entered.stop, days=entered.days)


def roof_yield(year: ClimateYear, *, tilt: float, azimuth: float, losses: float) -> Array:
    """Electricity per kW of cells [kWh] of each hour of a year; kept for the years and roofs asked for last."""
    return _kept_yield(year, tilt, azimuth, losses)


@lru_cache(maxsize=8)
def _kept_yield(year: ClimateYear, tilt: float, azimuth: float, losses: float) -> Array:
    return yield_per_kw(year, tilt=tilt, azimuth=azimuth, losses=losses)


def _performance(case: Case, year: ClimateYear) -> Any:
    pump = case.heating.pump
    if pump.mode != "hourly":
        return _share(case.heating.efficiency)
    flow = heatpump.flow_temperature(
        year.temp_air,
        design_flow=pump.design_flow,
        design_temp_out=pump.design_outdoors,
        mild_flow=pump.mild_flow,
        mild_temp_out=pump.mild_outdoors,
    )
    return heatpump.performance(
        source_temp=year.temp_air if pump.source == "air" else pump.ground_temperature,
        flow_temp=flow,
        grade=_share(pump.grade),
        least_lift=pump.least_lift,
    )


def _second(case: Case) -> Source:
    second, prices = case.heating.second, case.prices
    electric = is_electric(second.fuel)
    return Source(
        performance=_share(second.efficiency),
        price=_money(prices.electricity if electric else second.price),
        carbon=_number(prices.electricity_carbon if electric else second.carbon),
        electric=electric,
    )


def _clock(case: Case, year: ClimateYear) -> Clock:
    entered = case.prices.tariff
    return _kept_clock(DAYS.index(entered.first_day[:3]), entered.daylight_saving, year.utc_offset)


@lru_cache(maxsize=32)
def _kept_clock(first_weekday: int, rule: str, utc_offset: float) -> Clock:
    return clock(first_weekday=first_weekday, daylight_saving=DAYLIGHT_SAVING[rule], utc_offset=utc_offset)


def _other(case: Case, yearly: Any, rows: int, hours: Clock | None) -> Array:
    """Other electricity by row: over the household's day where hours matter, else even."""
    whole = _leading(yearly)
    if rows == 1 or hours is None:
        return np.repeat(whole[..., None] / rows, rows, axis=-1)
    shape = household.SHAPES[case.prices.tariff.household]
    share = household.row_sums(household.load_profile(1.0, shape=shape, clock=hours), rows=rows)
    return np.asarray(whole[..., None] * share)


def _sun(case: Case, hourly: ClimateYear, rows: int) -> Array | None:
    roof = case.roof
    size = _leading(roof.size)
    if not np.any(size > 0.0):
        return None
    each = roof_yield(hourly, tilt=roof.tilt, azimuth=roof.azimuth, losses=roof.losses)
    return np.asarray(size[..., None] * household.row_sums(each, rows=rows))


def _number(value: Any) -> Any:
    if value is None:
        raise ValueError("an entry was left open: only a filled case can be billed")
    return np.asarray(value, dtype=float)


def _money(value: Any) -> Any:
    return from_hundredths(_number(value))


def _share(value: Any) -> Any:
    return from_percent(_number(value))


def _leading(value: Any) -> Array:
    """A number of each home without the axis of time: (n, 1) becomes (n,)."""
    number: Array = _number(value)
    return number[..., 0] if number.ndim else number
