"""How far from a real year is one made of its monthly means? `python -m tests.accuracy.monthly`

The real years are those in pvlib's own package. From monthly means alone the spread of daily means is inferred by a
law fitted on the other two years, never on the one it is tried on.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from estimator import load_year
from estimator.climate.monthly import FROST, frost_hours, monthly_year
from estimator.climate.monthly_means import Law, MonthlyMeans
from estimator.climate.raw import Place
from estimator.climate.year import ClimateYear
from estimator.corridor import heat_demand, home_year
from estimator.units import MONTH_DAYS, Array, to_kwh
from tests.accuracy.homes import Sample, sample

YEARS = ("Greensboro", "Sand Point", "Miami")
BASES = (20.0, 18.0, 15.5, 12.0)  # °C
WORTH = 20_000.0  # K h: a relative error of less says nothing
HOMES = 100
HOMES_DRAW = 2027
DRAWS = tuple(range(1, 21))
# What is known: twelve temperatures; wind and sun as well; the spread of daily means too; the daily swing too.
KNOWN = {
    "temperature alone": (),
    "with wind and sun": ("wind_speed", "ghi"),
    "with spread": ("wind_speed", "ghi", "daily_spread"),
    "with spread and swing": ("wind_speed", "ghi", "daily_spread", "daily_swing"),
}
_DAYS = np.split(np.arange(365), np.cumsum(MONTH_DAYS)[:-1])


@dataclass(frozen=True, kw_only=True, eq=False)
class Tried:
    """Relative errors of a synthetic year against the real one."""

    degree_hours: dict[float, float]  # by base
    heat_saved: Array  # by home, of the heat saved in the real year
    frost: float  # h below FROST
    frost_real: float


def months_of(values: Array) -> Array:
    """Twelve means of hourly values, each month by itself."""
    return np.array([values.reshape(365, 24)[days].mean() for days in _DAYS])


def spread_of_days(values: Array) -> Array:
    """Twelve standard deviations of daily means."""
    return np.array([values.reshape(365, 24)[days].mean(axis=1).std() for days in _DAYS])


def swing_of_days(values: Array) -> Array:
    """Twelve means of highest less lowest hour."""
    hours = values.reshape(365, 24)
    return np.array([(hours[days].max(axis=1) - hours[days].min(axis=1)).mean() for days in _DAYS])


@cache
def real(name: str) -> ClimateYear:
    """A real year, read once."""
    return load_year(name)


def means_of(name: str, known: str) -> MonthlyMeans:
    """What somebody knows of a real year who has its monthly figures only."""
    year = real(name)
    figures = {
        "wind_speed": months_of(year.wind_speed),
        "ghi": months_of(year.ghi),
        "daily_spread": spread_of_days(year.temp_air),
        "daily_swing": swing_of_days(year.temp_air),
    }
    place = Place(
        name=f"{name}, from its months",
        latitude=year.latitude,
        longitude=year.longitude,
        altitude=year.altitude,
        utc_offset=year.utc_offset,
        source="monthly figures of a real year",
        licence=year.licence,
    )
    chosen = {key: tuple(figures[key].tolist()) for key in KNOWN[known]}
    return MonthlyMeans(place=place, temp_air=tuple(months_of(year.temp_air).tolist()), **chosen)


@cache
def law_without(name: str) -> Law:
    """The law of spread fitted by least squares to all real years but one."""
    rows, wanted = [], []
    for other in YEARS:
        if other == name:
            continue
        temp = months_of(real(other).temp_air)
        width = np.ptp(temp)
        warmth = (temp - temp.min()) / width
        rows.append(np.sqrt(width) * np.stack([1.0 - warmth, warmth], axis=1))
        wanted.append(spread_of_days(real(other).temp_air))
    coldest, warmest = np.linalg.lstsq(np.concatenate(rows), np.concatenate(wanted), rcond=None)[0]
    return Law(coldest=float(coldest), warmest=float(warmest))


@cache
def homes() -> Sample:
    """The homes that heat is saved in."""
    return sample(HOMES, draw=HOMES_DRAW)


def heat_saved(year: ClimateYear) -> Array:
    """Heat [kWh] that recovery saves against plain extract, by home."""
    those = homes()
    shared = home_year(those.home, year)
    extract, recovery = (
        to_kwh(heat_demand(those.home, option, shared, step=year.weight, top_up=True))[:, 0]
        for option in (those.extract, those.recovery)
    )
    return np.asarray(extract - recovery)


@cache
def heat_saved_really(name: str) -> Array:
    """The same in the real year, worked out once."""
    return heat_saved(real(name))


def degree_hours(temp: Array, base: float) -> float:
    """K h below a base, summed by hand."""
    return float(np.where(temp < base, base - temp, 0.0).sum())


@cache
def tried(name: str, known: str, draw: int) -> Tried:
    """One synthetic year held against its real one."""
    made = monthly_year(means_of(name, known), draw=draw, law=law_without(name))
    truth = real(name).temp_air
    worth = [base for base in BASES if degree_hours(truth, base) > WORTH]
    return Tried(
        degree_hours={base: degree_hours(made.temp_air, base) / degree_hours(truth, base) - 1.0 for base in worth},
        heat_saved=heat_saved(made) / heat_saved_really(name) - 1.0,
        frost=float((made.temp_air < FROST).sum()),
        frost_real=float((truth < FROST).sum()),
    )


def row(name: str, known: str, draws: tuple[int, ...] = DRAWS) -> str:
    """One line of the table over the draws: mean and worst error by base, heat saved, frost hours."""
    found = [tried(name, known, draw) for draw in draws]
    cells = [name, known]
    for base in BASES:
        errors = np.array([one.degree_hours[base] for one in found if base in one.degree_hours])
        cells.append(f"{100 * errors.mean():+.1f} ({100 * np.abs(errors).max():.1f})" if errors.size else "–")
    saved = np.abs(np.array([one.heat_saved for one in found]))
    cells.append(f"{100 * np.median(saved):.1f}")
    cells.append(f"{100 * np.quantile(saved, 0.9, axis=1).mean():.1f} ({100 * np.quantile(saved, 0.9, axis=1).max():.1f})")
    cells.append(f"{100 * saved.max():.0f}")
    frost = np.array([one.frost for one in found])
    cells.append(f"{found[0].frost_real:.0f}: {frost.mean():.0f} ({frost.min():.0f}–{frost.max():.0f})")
    return f"| {' | '.join(cells)} |"


HEAD = (
    "| year | monthly figures known | 20 °C | 18 °C | 15.5 °C | 12 °C | heat saved: median | 90 of 100 | worst | frost |\n"
    "|---|---|---|---|---|---|---|---|---|---|"
)


def main() -> None:
    """Print the table."""
    print("Errors in %, mean of 20 draws (worst draw); frost hours below -3 °C, real: mean (least-greatest).")
    print(HEAD)
    for name in YEARS:
        for known in KNOWN:
            print(row(name, known))
    for name in YEARS:
        law = law_without(name)
        print(f"{name}: law fitted on the others {law.coldest:.2f} at the coldest month, {law.warmest:.2f} at the warmest")
        hours = frost_hours(means_of(name, "with wind and sun"), law=law)
        truth = (real(name).temp_air < FROST).sum()
        print(f"{name}: frost range {hours.min():.0f}-{hours.max():.0f} h over {hours.size} throws, real {truth}")


if __name__ == "__main__":
    main()
