"""What do the typical years in the formats TMY3 and TMY2 say?

Both mark the end of the hour, so that each row moves back by one. Missing codes, steps and limits: User's
Manuals of NREL (Wilcox and Marion 2008 for TMY3; Marion and Urban 1995 for TMY2). TMY2 has tenths of °C
and of m/s, and pvlib hands them on as they are; both have pressure in mbar.
"""

from __future__ import annotations

import io
import re
from pathlib import Path
from tempfile import TemporaryDirectory

from estimator.climate.raw import Column, Place, RawYear, columns_of, from_code, up_to_code
from estimator.climate.rows import Row, data_rows, fields_of, header_numbers, stamps_of, through
from estimator.errors import ClimateFault, Fault

MBAR_PER_PA = 0.01
TENTHS = 10.0
NREL_LICENCE = "free to use and share, with credit to NREL"
_NO_TMY3 = up_to_code(-9900.0)
TMY3_COLUMNS = (
    Column("temp_air", "temp_air", _NO_TMY3),
    Column("relative_humidity", "relative_humidity", _NO_TMY3),
    Column("pressure", "pressure", _NO_TMY3, MBAR_PER_PA),
    Column("ghi", "ghi", _NO_TMY3),
    Column("dni", "dni", _NO_TMY3),
    Column("dhi", "dhi", _NO_TMY3),
    Column("wind_speed", "wind_speed", _NO_TMY3),
)
TMY2_COLUMNS = (
    Column("temp_air", "DryBulb", from_code(9999.0), TENTHS),
    Column("relative_humidity", "RHum", from_code(999.0)),
    Column("pressure", "Pressure", from_code(9999.0), MBAR_PER_PA),
    Column("ghi", "GHI", from_code(9999.0)),
    Column("dni", "DNI", from_code(9999.0)),
    Column("dhi", "DHI", from_code(9999.0)),
    Column("wind_speed", "Wspd", from_code(999.0), TENTHS),
)
_TMY2_HEAD = re.compile(
    r"^\s?(?P<station>\d{5}) (?P<city>.{22}) (?P<state>..)\s+(?P<zone>-?\d+)"
    r" (?P<ns>[NS])\s+(?P<lat>\d+)\s+(?P<latmin>\d+) (?P<ew>[EW])\s+(?P<lon>\d+)\s+(?P<lonmin>\d+)\s+(?P<alt>-?\d+)"
)
TMY2_WIDTH = 142  # characters of a row
# First and last position of the fields used: User's Manual for TMY2, table 3-2.
TMY2_PLACES = {
    "GHI": (18, 21),
    "DNI": (24, 27),
    "DHI": (30, 33),
    "DryBulb": (68, 71),
    "RHum": (80, 82),
    "Pressure": (85, 88),
    "Wspd": (96, 98),
}


def is_tmy3(text: str) -> bool:
    """A TMY3 file has its column names in the second row."""
    return text[:2000].partition("\n")[2].startswith("Date (MM/DD/YYYY)")


def is_tmy2(text: str) -> bool:
    """A TMY2 file has station, place, time zone and position at fixed places of the first row."""
    return _TMY2_HEAD.match(text[:200]) is not None


def read_tmy3(text: str, path: Path) -> RawYear:
    """Rows of a TMY3 file through pvlib's reader; ClimateFault where it breaks the format."""
    from pvlib import iotools

    head, names, *_ = text.split("\n")
    width = len(names.split(","))

    last = (0, 0, 0)

    def stamp(row: Row) -> tuple[int, int, int]:
        nonlocal last
        fields = fields_of(row, fewest=width, most=width)
        month, day, hour = *(int(part) for part in fields[0].split("/")[:2]), int(fields[1].split(":")[0])
        last = (month, day, hour - 1) if hour else _ended_day(row, last, day)
        return last

    stamps = stamps_of(data_rows(text, after=2), stamp)
    *_, zone, lat, lon, alt = [*[""] * 7, *head.split(",")]
    utc_offset, latitude, longitude, altitude = header_numbers(
        (zone, lat, lon, alt), ("time zone", "latitude", "longitude", "altitude")
    )
    frame = through("TMY3", path, lambda: iotools.read_tmy3(io.StringIO(text))[0], rows=stamps.row.size)
    columns = [column for column in TMY3_COLUMNS if column.label in frame]
    if len(columns) < len(TMY3_COLUMNS):
        lost = sorted({column.name for column in TMY3_COLUMNS} - {column.name for column in columns})
        raise ClimateFault(Fault("row 2", f"columns are missing from the header: {', '.join(lost)}."))
    station, city, state = head.split(",")[:3]
    return RawYear(
        place=Place(
            name=f"{_title(city)}, {state.strip()}",
            latitude=latitude,
            longitude=longitude,
            altitude=altitude,
            utc_offset=utc_offset,
            source=f"NREL typical year TMY3, station {station.strip()}",
            licence=NREL_LICENCE,
        ),
        stamps=stamps,
        columns=columns_of(frame, columns, stamps.row),
        labels={column.name: column.label for column in TMY3_COLUMNS},
    )


def _ended_day(row: Row, before: tuple[int, int, int], day: int) -> tuple[int, int, int]:
    """The hour that ends at a stamp of 00:00, which some writers put for 24:00, under the old date or the new."""
    if before[2] != 22 or day not in (before[1], before[1] + 1, 1):
        what = (
            "00:00 does not follow 23:00 here, so that nobody can tell which hour it stands for; this format stamps "
            "the end of each hour, 01:00 to 24:00. A file that stamps beginnings, 00:00 to 23:00, can be given as a "
            "plain table."
        )
        raise ClimateFault(Fault(f"row {row.number}", what))
    return (*before[:2], 23)


def read_tmy2(text: str, path: Path) -> RawYear:
    """Rows of a TMY2 file through pvlib's reader; ClimateFault where it breaks the format."""
    from pvlib import iotools

    head = _TMY2_HEAD.match(text)
    assert head is not None, "read only what is_tmy2 has recognised"
    stamps = stamps_of(data_rows(text, after=1), _tmy2_stamp)
    # The reader takes nothing but a path, and splits the header at blanks, so that "SAN DIEGO" would break it.
    lines = [line for line in text.split("\n") if line.strip()]
    lines[0] = text[: head.start("city")] + f"{'PLACE':22}" + lines[0][head.end("city") :]
    with TemporaryDirectory() as folder:
        copy = Path(folder) / "year.tm2"
        copy.write_text("\n".join(lines), encoding="ascii", errors="replace")
        frame = through("TMY2", path, lambda: iotools.read_tmy2(copy)[0], rows=stamps.row.size)
    latitude = int(head["lat"]) + int(head["latmin"]) / 60.0
    longitude = int(head["lon"]) + int(head["lonmin"]) / 60.0
    return RawYear(
        place=Place(
            name=f"{_title(head['city'])}, {head['state']}",
            latitude=latitude if head["ns"] == "N" else -latitude,
            longitude=longitude if head["ew"] == "E" else -longitude,
            altitude=float(head["alt"]),
            utc_offset=float(head["zone"]),
            source=f"NREL typical year TMY2, station {head['station']}",
            licence=NREL_LICENCE,
        ),
        stamps=stamps,
        columns=columns_of(frame, TMY2_COLUMNS, stamps.row),
        labels={column.name: column.label for column in TMY2_COLUMNS},
    )


def _tmy2_stamp(row: Row) -> tuple[int, int, int]:
    text = row.text
    if len(text.rstrip()) < TMY2_WIDTH - 1:
        raise ClimateFault(
            Fault(f"row {row.number}", "the row is shorter than the format; the file seems cut or damaged there.")
        )
    for name, (start, end) in TMY2_PLACES.items():
        if not text[start - 1 : end].strip().lstrip("-").isdecimal():
            what = f"“{text[start - 1 : end]}” is no usable number; mend the file."
            raise ClimateFault(Fault(f"row {row.number}, column {name}", what))
    return int(text[3:5]), int(text[5:7]), int(text[7:9]) - 1


def _title(city: str) -> str:
    return city.strip().strip('"').strip().title()
