"""How does a file become a year of 8,760 hours in order, mended only where a gap is short?"""

from __future__ import annotations

from dataclasses import asdict
from typing import Any

import numpy as np

from estimator.climate.check import clock_faults, place_faults, range_faults
from estimator.climate.raw import IRRADIANCES, TITLES, RawYear, Stamps, Whole, counted
from estimator.climate.solar import HOURS, Sun, facade_irradiance, station_pressure, sun_position
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault
from estimator.units import MONTH_DAYS, MONTH_NAMES, Array

LONGEST_GAP = 6  # h that interpolation may bridge: within it weather is still the neighbouring hours'
MOST_MENDED = 876  # h of a column, a tenth of the year; beyond it the year is more guess than record
_FAINT = 20.0  # W/m² outside the atmosphere; below it a share of it means nothing
_MONTH_START = np.concatenate([[0], np.cumsum(MONTH_DAYS)[:-1]])


def checked_year(raw: RawYear) -> ClimateYear:
    """A year in order, complete and plausible, with the sun on its façades; ClimateFault with all faults."""
    _refuse(place_faults(raw.place))
    slot, kept, dropped = _slots(raw.stamps)
    repairs = [*raw.notes, *dropped]
    place = raw.place
    sun = sun_position(
        latitude=place.latitude,
        longitude=place.longitude,
        altitude=place.altitude,
        utc_offset=place.utc_offset,
        moment=raw.moment,
    )
    row = np.zeros(HOURS, dtype=np.int64)
    row[slot] = raw.stamps.row[kept]
    columns: dict[str, Array] = {}
    absent = np.full(HOURS, np.nan)
    absent[slot] = 0.0
    faults = _gap_faults(absent, row)  # of all columns at once, said once
    given_hours = ~np.isnan(absent) if faults else np.ones(HOURS, dtype=bool)
    faults += range_faults(raw)
    for name, given in raw.columns.items():
        values = np.full(HOURS, np.nan)
        values[slot] = given[kept]
        if name == "pressure" and np.isnan(values).all():
            continue
        faults += _gap_faults(np.where(given_hours, values, 0.0), row, f"column {raw.label(name)}")
        columns[name] = values
    _refuse(faults)
    for name, values in columns.items():
        columns[name] = _mended(name, values, sun, repairs)
    if "pressure" not in columns:
        columns["pressure"] = np.full(HOURS, station_pressure(place.altitude))
        repairs.append("air pressure: not in the file, taken from the altitude")
    _refuse(clock_faults(sun, columns["ghi"]))
    facades = facade_irradiance(sun, ghi=columns["ghi"], dni=columns["dni"], dhi=columns["dhi"])
    fields: dict[str, Any] = asdict(place) | columns
    return ClimateYear(**fields, facades=facades, sun_moment=raw.moment, repairs=tuple(repairs))


def _refuse(faults: list[Fault]) -> None:
    if faults:
        raise ClimateFault(*faults)


def _slots(stamps: Stamps) -> tuple[Whole, Whole, list[str]]:
    """Hour of the year of each row kept, the rows kept, and what was dropped in words."""
    month, day, hour = stamps.month, stamps.day, stamps.hour
    leap = (month == 2) & (day == 29)
    kept = np.flatnonzero(~leap)
    slot = (_MONTH_START[month[kept] - 1] + day[kept] - 1) * 24 + hour[kept]
    order = np.argsort(slot, kind="stable")
    again = np.flatnonzero(np.diff(slot[order]) == 0)
    if again.size:
        one, two = kept[order[again[0]]], kept[order[again[0] + 1]]
        raise ClimateFault(
            Fault(
                f"row {stamps.row[two]}",
                f"{_hour_name(int(slot[order[again[0]]]))} was already given in row {stamps.row[one]} "
                f"({counted(again.size, 'hour')} given more than once); keep one row for each hour of one year.",
            )
        )
    dropped = int(leap.sum())
    return slot, kept, [f"29 February: {counted(dropped, 'hour')} left out"] if dropped else []


def _hour_name(hour_of_year: int) -> str:
    day, hour = divmod(hour_of_year, 24)
    month = int(np.searchsorted(_MONTH_START, day, side="right")) - 1
    return f"{day - _MONTH_START[month] + 1} {MONTH_NAMES[month]} {hour:02d}:00"


def _gaps(values: Array) -> list[tuple[int, int]]:
    """Start and length [h] of each run of missing hours; a run may pass New Year."""
    missing = np.isnan(values)
    if missing.all():
        return [(0, values.size)]
    starts = np.flatnonzero(missing & ~np.roll(missing, 1))
    ends = np.flatnonzero(missing & ~np.roll(missing, -1))
    if starts.size and ends[0] < starts[0]:
        ends = np.roll(ends, -1)
    return [(int(a), int((b - a) % values.size) + 1) for a, b in zip(starts, ends, strict=True)]


def _gap_faults(values: Array, row: Whole, column: str = "") -> list[Fault]:
    """Gaps of a column that are too long, or too many, to mend; without a column, of whole rows."""
    gaps = _gaps(values)
    missing = sum(length for _, length in gaps)
    long = [(start, length) for start, length in gaps if length > LONGEST_GAP]
    if missing == values.size:
        return [Fault(column, "there is not one usable value; the estimate needs this column.")]
    if long:
        start, length = long[0]
        before = int(row[(start - 1) % values.size])
        where = f"row {row[start]}" if row[start] else f"after row {before}" if before else _hour_name(start)
        return [
            Fault(
                f"{where}, {column}" if column else where,
                f"{length} hours are missing from {_hour_name(start)} on, and at most {LONGEST_GAP} can be "
                f"bridged ({len(long)} such gap{'s' if len(long) > 1 else ''}, {missing} hours missing in all); "
                "fill them or use another file.",
            )
        ]
    if missing > MOST_MENDED:
        what = f"{missing} hours are missing and at most {MOST_MENDED} can be mended; use another file."
        return [Fault(column, what)]
    return []


def _mended(name: str, values: Array, sun: Sun, repairs: list[str]) -> Array:
    """The column without gaps, and within what its kind can be; each mend is counted in `repairs`."""
    gaps = _gaps(values)
    if gaps:
        count, longest = sum(length for _, length in gaps), max(length for _, length in gaps)
        repairs.append(f"{TITLES[name]}: {counted(count, 'missing hour')} bridged, the longest gap {longest} h")
        values = _bridged_light(name, values, sun) if name in IRRADIANCES else _bridged(values)
    low, high = (0.0, 100.0) if name == "relative_humidity" else (0.0, np.inf)
    if name != "temp_air":
        outside = int(((values < low) | (values > high)).sum())
        if outside:
            repairs.append(f"{TITLES[name]}: {counted(outside, 'hour')} beyond {low:g} to {high:g} set to the limit")
            values = np.clip(values, low, high)
    return values


def _bridged(values: Array) -> Array:
    known = np.flatnonzero(~np.isnan(values))
    hours = np.arange(values.size)
    return np.asarray(np.interp(hours, known, values[known], period=values.size), dtype=float)


def _bridged_light(name: str, values: Array, sun: Sun) -> Array:
    """Gaps filled with a share of the light outside the atmosphere, so that noon stays brighter than morning."""
    outside = np.where(sun.height > 0.0, sun.normal_extra, 0.0) * (1.0 if name == "dni" else sun.height)
    day = outside > _FAINT
    share = np.full(values.size, np.nan)
    share[day] = values[day] / outside[day]
    if np.isnan(share).all():
        share[:] = 0.0
    return np.where(np.isnan(values), np.where(day, _bridged(share) * outside, 0.0), values)
