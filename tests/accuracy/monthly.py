"""How far from a real year is one made of its monthly means? `python -m tests.accuracy.monthly`

The real years are those in pvlib's own package. From monthly means alone the spread of daily means is inferred by a
law fitted on the other two years, never on the one it is tried on.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np

from estimator import load_year
from estimator.climate.monthly import DRAW, FROST, frost_hours, monthly_year
from estimator.climate.monthly_means import Law, MonthlyMeans
from estimator.climate.raw import Place
from estimator.climate.year import ClimateYear
from estimator.corridor import heat_demand, home_year
from estimator.units import MONTH_DAYS, Array, to_kwh
from tests.accuracy.homes import Sample, sample

YEARS = ("Greensboro", "Sand Point", "Miami")
BASES = (20.0, 18.0, 15.5, 12.0)  # °C
WORTH = 20_000.0  # K h: a relative error of less says nothing
LEAST_SAVED = 100.0  # kWh: likewise
HOMES = 100
HOMES_DRAW = 2027
DRAWS = tuple(range(1, 21))
# What is known: twelve temperatures; wind and sun as well; the spread of daily means too; the daily swing too.
KNOWN = {
    "temperature alone": (),
    "wind, sun": ("wind_speed", "ghi"),
    "wind, sun, swing": ("wind_speed", "ghi", "daily_swing"),
    "wind, sun, spread": ("wind_speed", "ghi", "daily_spread"),
    "wind, sun, swing, spread": ("wind_speed", "ghi", "daily_swing", "daily_spread"),
}
_DAYS = np.split(np.arange(365), np.cumsum(MONTH_DAYS)[:-1])


@dataclass(frozen=True, kw_only=True, eq=False)
class Tried:
    """A synthetic year's temperatures against the real one's."""

    degree_hours: dict[float, float]  # relative error by base
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
        rise = (np.roll(temp, -1) - np.roll(temp, 1)) / 2.0
        # A month at rest has the spread of its rise alone: nothing is left then for the air masses.
        wanted.append(np.sqrt(np.maximum(spread_of_days(real(other).temp_air) ** 2 - rise**2 / 12.0, 0.0)))
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
def made_of(name: str, known: str, draw: int) -> ClimateYear:
    """The synthetic year from what is known of a real one."""
    return monthly_year(means_of(name, known), draw=draw, law=law_without(name))


@cache
def tried(name: str, known: str, draw: int) -> Tried:
    """One synthetic year's temperatures held against the real ones."""
    made, truth = made_of(name, known, draw).temp_air, real(name).temp_air
    worth = [base for base in BASES if degree_hours(truth, base) > WORTH]
    return Tried(
        degree_hours={base: degree_hours(made, base) / degree_hours(truth, base) - 1.0 for base in worth},
        frost=float((made < FROST).sum()),
        frost_real=float((truth < FROST).sum()),
    )


@cache
def heat_error(name: str, known: str, draw: int) -> Array:
    """Relative error of the heat saved, by home that saves more than a little in the real year."""
    truth = heat_saved_really(name)
    much = truth > LEAST_SAVED
    return np.asarray(heat_saved(made_of(name, known, draw))[much] / truth[much] - 1.0)


def row(name: str, known: str, draws: tuple[int, ...] = DRAWS) -> str:
    """One line of the table over the draws: mean and worst error by base, heat saved, frost hours."""
    found = [tried(name, known, draw) for draw in draws]
    cells = [name, known]
    for base in BASES:
        errors = np.array([one.degree_hours[base] for one in found if base in one.degree_hours])
        cells.append(f"{100 * errors.mean():+.1f} ({100 * np.abs(errors).max():.1f})" if errors.size else "–")
    saved = np.abs(np.array([heat_error(name, known, draw) for draw in draws]))
    cells.append(f"{100 * np.median(saved):.1f}")
    cells.append(
        f"{100 * np.quantile(saved, 0.9, axis=1).mean():.1f} ({100 * np.quantile(saved, 0.9, axis=1).max():.1f})"
    )
    cells.append(f"{100 * saved.max():.0f}")
    frost = np.array([one.frost for one in found])
    cells.append(f"{found[0].frost_real:.0f}: {frost.mean():.0f} ({frost.min():.0f}–{frost.max():.0f})")
    return f"| {' | '.join(cells)} |"


HEAD = (
    "| year | monthly figures known | 20 °C | 18 °C | 15.5 °C | 12 °C | heat: median | 90 of 100 | worst | frost |\n"
    "|---|---|---|---|---|---|---|---|---|---|"
)


def main() -> None:
    """Print the table."""
    print(f"Errors in %: mean of 20 throws (worst throw); frost hours below {FROST:g} °C, real: mean (least-greatest).")
    print(HEAD)
    for name in YEARS:
        for known in KNOWN:
            print(row(name, known), flush=True)
    for name in YEARS:
        law, hours = law_without(name), frost_range(name)
        print(
            f"{name}: law of spread fitted on the others {law.coldest:.2f} and {law.warmest:.2f}; default throw, 90 of "
            f"100 homes within {nine_in_ten(name, 'wind, sun'):.1f} %, with swing "
            f"{nine_in_ten(name, 'wind, sun, swing'):.1f} %; frost {hours.min():.0f}-{hours.max():.0f} h over "
            f"{hours.size} throws, real {(real(name).temp_air < FROST).sum()}"
        )


def nine_in_ten(name: str, known: str, draw: int = DRAW) -> float:
    """Error [%] of heat saved that 90 of 100 homes keep within; nil where no home saves much."""
    error = np.abs(heat_error(name, known, draw))
    return float(100.0 * np.quantile(error, 0.9)) if error.size else 0.0


@cache
def frost_range(name: str) -> Array:
    """Frost hours of a real year from its monthly means alone, over draws and spreads."""
    return frost_hours(means_of(name, "wind, sun"), law=law_without(name))


if __name__ == "__main__":
    main()
