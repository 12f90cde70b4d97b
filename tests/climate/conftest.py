"""Which years and which small files do the climate tests share?"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from pathlib import Path

import numpy as np
import pandas as pd
import pvlib
import pytest

from estimator.climate.cache import Cache
from estimator.climate.files import read_year
from estimator.climate.online import online_year
from estimator.climate.sources import load_year
from estimator.climate.year import ClimateYear
from tests.climate.replay import Replay, Row, as_json, replaying, utc_rows

PLACE = "36.1,-79.95"  # of Greensboro, as the service is asked
PVLIB_DATA = Path(pvlib.__file__).parent / "data"
EPW_HEADER = (
    "LOCATION,Fernby,XX,Nowhere,Test data,000000,36.1,-79.95,-5.0,273.0",
    "DESIGN CONDITIONS,0",
    "TYPICAL/EXTREME PERIODS,0",
    "GROUND TEMPERATURES,0",
    "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0",
    "COMMENTS 1,made by a test from a typical year of pvlib's own package",
    "COMMENTS 2,",
    "DATA PERIODS,1,1,Data,Sunday,1/1,12/31",
)
# Positions of fields in a row, by the EPW data dictionary (EnergyPlus, Auxiliary Programs).
EPW_FIELD = {
    "temp_air": 6,
    "relative_humidity": 8,
    "pressure": 9,
    "ghi": 13,
    "dni": 14,
    "dhi": 15,
    "wind_speed": 21,
}


@pytest.fixture(scope="session")
def included() -> Callable[[str], ClimateYear]:
    """Included years by name, each read once in a run of the tests."""
    return cache(load_year)


@pytest.fixture(scope="session")
def tmy3_frame() -> pd.DataFrame:
    """Greensboro as pvlib hands it over, stamped at the end of the hour."""
    frame: pd.DataFrame = pvlib.iotools.read_tmy3(PVLIB_DATA / "723170TYA.CSV")[0]
    return frame


@pytest.fixture(scope="session")
def _epw_rows(tmy3_frame: pd.DataFrame) -> tuple[str, ...]:
    start = pd.DatetimeIndex(tmy3_frame.index).tz_localize(None) - pd.Timedelta(hours=1)
    clock = pd.date_range("2001-01-01", periods=8760, freq="h")  # its days and hours, the file's own years
    rows = []
    for when, year, cell in zip(clock, start.year, tmy3_frame.to_dict("records"), strict=True):
        fields = ["0"] * 35
        fields[:6] = [str(year), str(when.month), str(when.day), str(when.hour + 1), "0", "?"]
        for name, position in EPW_FIELD.items():
            fields[position] = str(cell[name] * 100 if name == "pressure" else cell[name])
        rows.append(",".join(fields))
    return tuple(rows)


@pytest.fixture(scope="session")
def epw_lines(_epw_rows: tuple[str, ...]) -> list[str]:
    """The same for tests that do no harm."""
    return [*EPW_HEADER, *_epw_rows]


@pytest.fixture
def epw(_epw_rows: tuple[str, ...]) -> list[str]:
    """Lines of a valid EPW file: 8 of header, 8,760 of hours; a copy to do harm to."""
    return [*EPW_HEADER, *_epw_rows]


@pytest.fixture
def read_lines(tmp_path: Path) -> Callable[[list[str]], ClimateYear]:
    """Writes lines into a file and reads it as any weather file."""

    def read(lines: list[str]) -> ClimateYear:
        path = tmp_path / "year.epw"
        path.write_text("\n".join(lines) + "\n", encoding="utf-8")
        return read_year(path)

    return read


@pytest.fixture
def set_field() -> Callable[[list[str], int, str, str], None]:
    """Puts a text into one field of one EPW row; rows are numbered as an editor shows them."""

    def put(lines: list[str], row: int, name: str, text: str) -> None:
        fields = lines[row - 1].split(",")
        fields[EPW_FIELD[name]] = text
        lines[row - 1] = ",".join(fields)

    return put


@pytest.fixture(scope="session")
def best_shift() -> Callable[[ClimateYear], float]:
    """By how many hours the sun must be moved for a clear sky to match the irradiance best.

    Written with pvlib alone, apart from the package's own sun: Haurwitz' clear sky at the stamp plus half an
    hour plus the shift.
    """

    def shift_of(year: ClimateYear) -> float:
        start = pd.Timestamp("2019-01-01", tz="UTC") - pd.Timedelta(hours=year.utc_offset)
        half_hours = pd.date_range(start, periods=2 * 8760, freq="30min")
        sun = pvlib.solarposition.get_solarposition(half_hours, year.latitude, year.longitude)
        clear = pvlib.clearsky.haurwitz(sun["apparent_zenith"])["ghi"].to_numpy()

        def likeness(shift: float) -> float:
            return float(np.corrcoef(year.ghi, np.roll(clear, -1 - round(2 * shift))[::2])[0, 1])

        return max((-1.5, -1.0, -0.5, 0.0, 0.5, 1.0, 1.5), key=likeness)

    return shift_of


@pytest.fixture(scope="session")
def answered_rows(tmy3_frame: pd.DataFrame) -> list[Row]:
    """Greensboro as the service would give it."""
    return utc_rows(tmy3_frame)


@pytest.fixture(scope="session")
def good_answer(answered_rows: list[Row]) -> bytes:
    """The same as a whole answer."""
    return as_json(answered_rows)


@pytest.fixture
def server(monkeypatch: pytest.MonkeyPatch) -> Iterator[Replay]:
    """A service on this machine."""
    monkeypatch.setenv("NO_PROXY", "127.0.0.1")
    with replaying() as replay:
        yield replay


@pytest.fixture
def told() -> list[str]:
    """What was told before a request."""
    return []


@pytest.fixture
def ask(server: Replay, tmp_path: Path, told: list[str]) -> Callable[..., ClimateYear]:
    """Asks that service for a year, with a cache of the test's own."""

    def asked(reference: str = PLACE, **further: object) -> ClimateYear:
        settings = {"url": server.url, "cache": Cache(tmp_path / "kept"), "tell": told.append, "timeout": 20.0}
        return online_year(reference, **(settings | further))  # type: ignore[arg-type]

    return asked
