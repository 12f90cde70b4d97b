"""What does the PVGIS service answer, and what does it mean when it does not?

One row an hour of UTC. Temperature, wind and humidity are those of the full hour; irradiance is that of a moment
somewhat later, which depends on the satellite over the place and which the answer states ("irradiance time
offset"). The formats are those that pvlib reads. The header of the EPW form names the local time zone, but
its rows are in UTC like all others (seen in pvlib's recorded answers for 45° N, 8° E).
"""

from __future__ import annotations

import io
import json
from collections.abc import Callable
from dataclasses import dataclass
from queue import Empty, SimpleQueue
from threading import Thread
from typing import TYPE_CHECKING, Any, Literal
from urllib.parse import urlsplit

import numpy as np

from estimator.climate.raw import Column, Stamps, columns_of, from_code
from estimator.climate.solar import HOURS, sun_position
from estimator.errors import ClimateFault, Fault
from estimator.units import Array

if TYPE_CHECKING:
    import pandas as pd

Form = Literal["json", "csv", "epw"]
COLUMNS = ("temp_air", "relative_humidity", "ghi", "dni", "dhi", "wind_speed")
PRESSURES = ("pressure", "atmospheric_pressure")  # JSON and CSV, EPW
NO_VALUE, NO_PRESSURE = 9999.0, 999_999.0  # EPW data dictionary
FARTHEST = 0.1  # ° between the place asked for and the one answered
MOMENTS = np.arange(0.0, 1.0, 0.05)  # h, tried where the answer states none
_BRIGHT = 50.0  # W/m², below it closure says little
_TICK = 0.25  # s
_VERSION = 1  # of a packed answer


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Answer:
    """A year of PVGIS as answered: rows in UTC, `moment` [h] after the full hour that of the irradiance."""

    latitude: float
    longitude: float
    altitude: float
    moment: float
    made_from: str
    stamps: Stamps
    columns: dict[str, Array]

    def packed(self, **also: str) -> bytes:
        """The answer as bytes, with further words of the caller's."""
        head = {name: getattr(self, name) for name in ("latitude", "longitude", "altitude", "moment", "made_from")}
        file = io.BytesIO()
        stamps = {f"stamp_{name}": getattr(self.stamps, name) for name in Stamps.__slots__}
        head_bytes = np.frombuffer(json.dumps({**head, "version": _VERSION, "also": also}).encode(), dtype=np.uint8)
        arrays: dict[str, Any] = {"head": head_bytes, **stamps, **self.columns}
        np.savez_compressed(file, **arrays)
        return file.getvalue()


def unpacked(content: bytes) -> tuple[Answer, dict[str, str]] | None:
    """A packed answer and the words packed with it; None where the bytes are of another version, or damaged."""
    try:
        with np.load(io.BytesIO(content), allow_pickle=False) as file:
            arrays = {name: file[name] for name in file.files}
        # NumPy before 2.3 kept as a column what newer ones take as a setting, and an earlier version of ours gave it.
        arrays.pop("allow_pickle", None)
        head = json.loads(arrays.pop("head").tobytes())
        if head.pop("version") != _VERSION:
            return None
        also = head.pop("also")
        stamps = Stamps(**{name: arrays.pop(f"stamp_{name}") for name in Stamps.__slots__})
        return Answer(**head, stamps=stamps, columns=arrays), also
    except Exception:  # whatever lies there, a new request mends it
        return None


def answer_from(
    url: str,
    *,
    latitude: float,
    longitude: float,
    timeout: float,
    form: Form = "json",
    waiting: Callable[[float], None] | None = None,
) -> Answer:
    """The typical year that PVGIS has for a place, within `timeout` [s]; ClimateFault in plain words.

    waiting: told the seconds gone by, a few times each second, so that progress can be shown.
    """
    from pvlib.iotools import get_pvgis_tmy

    def call() -> Any:
        return get_pvgis_tmy(
            latitude, longitude, outputformat=form, url=url, timeout=timeout, coerce_year=None, map_variables=True
        )

    host = urlsplit(url).netloc or url
    try:
        frame, meta = _within(timeout, call, waiting)
    except Exception as error:  # pvlib hands on whatever a broken answer makes of its readers
        raise ClimateFault(Fault("", _reason(error, host, timeout))) from None
    return _answer(frame, meta, latitude=latitude, longitude=longitude, host=host)


def _within(seconds: float, call: Callable[[], Any], waiting: Callable[[float], None] | None) -> Any:
    """What a call returns or raises, TimeoutError after that time: a server may trickle for ever."""
    done: SimpleQueue[tuple[Any, Exception | None]] = SimpleQueue()

    def run() -> None:
        try:
            done.put((call(), None))
        except Exception as error:
            done.put((None, error))

    Thread(target=run, daemon=True).start()
    for tick in range(int(np.ceil(seconds / _TICK))):
        try:
            value, error = done.get(timeout=min(_TICK, seconds))
        except Empty:
            if waiting:
                waiting((tick + 1) * _TICK)
            continue
        if error is not None:
            raise error
        return value
    raise TimeoutError


_STATUS = {
    403: "refuses this machine",
    404: "has no such service at this address",
    429: "is asked too often from here; wait a minute",
    503: "is out of service for the moment",
    529: "is overloaded for the moment",
}


def _reason(error: Exception, host: str, timeout: float) -> str:
    import requests
    from requests import exceptions as wrong

    response = getattr(error, "response", None)
    match error:
        case TimeoutError() | requests.Timeout():
            return f"{host} gave no whole answer within {timeout:g} s."
        case requests.HTTPError() if response is not None:
            what = _STATUS.get(response.status_code, "failed with an error of its own")
            return f"{host} {what} (status {response.status_code})."
        case requests.HTTPError():
            return f"{host} has no year for this place; it says “{' '.join(str(error).split())[:150]}”."
        case wrong.ChunkedEncodingError() | wrong.ContentDecodingError():
            return f"the answer of {host} broke off."
        case wrong.SSLError():
            return f"no safe connection to {host}: the clock of this machine is wrong, or something stands between."
        case requests.ConnectionError():
            return f"{host} cannot be reached: there is no network, or it does not let the request through."
        case wrong.InvalidURL() | wrong.InvalidSchema() | wrong.MissingSchema():
            return f"“{host[:60]}” is no address of a service."
    return (
        f"what {host} answered is no weather year, or only a part of one; the sign-in page of a public network "
        "looks like that."
    )


def _answer(frame: pd.DataFrame, meta: dict[str, Any], *, latitude: float, longitude: float, host: str) -> Answer:
    import pandas as pd

    index = frame.index
    lost = [name for name in COLUMNS if name not in frame]
    if lost or not isinstance(index, pd.DatetimeIndex) or index.hasnans:
        what = f"lacks {', '.join(lost)}" if lost else "has rows without a time"
        raise ClimateFault(Fault("", f"the answer of {host} {what}."))
    if len(frame) < HOURS:
        raise ClimateFault(Fault("", f"the answer of {host} has {len(frame):,} hours where a year has {HOURS:,}."))
    place = meta.get("inputs", meta)
    place = place.get("location", place)
    try:
        there = float(place["latitude"]), float(place["longitude"])
        altitude = float(place.get("elevation", place.get("altitude")))
        offset = place.get("irradiance_time_offset", place.get("irradiance time offset"))
        moment = None if offset is None else float(offset)
    except (KeyError, TypeError, ValueError):
        raise ClimateFault(Fault("", f"the answer of {host} does not say which place it is for.")) from None
    if max(abs(there[0] - latitude), abs(there[1] - longitude)) > FARTHEST:
        raise ClimateFault(
            Fault("", f"{host} answered for {there[0]:g}, {there[1]:g} when asked for {latitude:g}, {longitude:g}.")
        )
    row = np.arange(1, len(frame) + 1)
    stamps = Stamps(
        month=index.month.to_numpy(dtype=np.int64),
        day=index.day.to_numpy(dtype=np.int64),
        hour=index.hour.to_numpy(dtype=np.int64),
        row=row,
    )
    wanted = [Column(name, name, from_code(NO_VALUE)) for name in COLUMNS]
    wanted += [Column("pressure", name, from_code(NO_PRESSURE)) for name in PRESSURES if name in frame]
    columns = columns_of(frame, wanted, row)
    if moment is None:
        moment = _moment_of_light(columns, latitude=there[0], longitude=there[1], altitude=altitude)
    return Answer(
        latitude=there[0],
        longitude=there[1],
        altitude=altitude,
        moment=moment,
        made_from=_made_from(meta),
        stamps=stamps,
        columns=columns,
    )


def _made_from(meta: dict[str, Any]) -> str:
    data = meta.get("inputs", {}).get("meteo_data", {})
    bases = " and ".join(str(data[name])[:40] for name in ("radiation_db", "meteo_db") if name in data)
    years = f"{data['year_min']} to {data['year_max']}" if "year_min" in data and "year_max" in data else ""
    return ", ".join(part for part in (bases, years) if part)


def _moment_of_light(columns: dict[str, Array], *, latitude: float, longitude: float, altitude: float) -> float:
    """The moment [h] after the full hour at which global is direct on the flat plus diffuse; rows in order."""
    ghi, dni, dhi = (columns[name][:HOURS] for name in ("ghi", "dni", "dhi"))
    bright = ghi > _BRIGHT

    def gap(moment: float) -> float:
        sun = sun_position(latitude=latitude, longitude=longitude, altitude=altitude, utc_offset=0.0, moment=moment)
        return float(np.nanmean(np.abs(ghi - dhi - dni * sun.height)[bright])) if bright.any() else abs(moment - 0.5)

    return float(min(MOMENTS, key=gap))
