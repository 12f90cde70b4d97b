"""How does a server on this machine answer as PVGIS would, well and badly?

The three forms are those of the answers recorded in pvlib's own tests (tmy_45.000_8.000_2005_2023 as .json,
.csv and .epw): names, order, digits, line ends, the `-0.0` of a dark direct beam, the EPW header that names a local
zone over rows in UTC. The weather in them is Greensboro, of pvlib's package, moved to UTC.
"""

from __future__ import annotations

import json
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pandas as pd

LATITUDE, LONGITUDE, ELEVATION, ZONE = 36.1, -79.95, 273.0, -5
OFFSET = 0.5  # h, as PVGIS 5.3 states where its irradiance is a mean over the hour
# Months of different years, as in every such answer.
YEARS = (2018, 2007, 2009, 2013, 2008, 2006, 2011, 2010, 2020, 2006, 2007, 2016)
SEA = {"message": "Location over the sea. Please, select another location", "status": 400}
BROKEN = {"message": "Internal Server Error", "status": 500}

Row = dict[str, Any]


def utc_rows(tmy3: pd.DataFrame) -> list[Row]:
    """Rows as PVGIS gives them, of a frame stamped at the end of hours of local standard time."""
    start = pd.date_range("2001-01-01", periods=8760, freq="h")
    cells = tmy3.to_dict("records")
    rows = []
    for hour, when in enumerate(start):
        cell = cells[(hour + ZONE) % 8760]  # 00:00 UTC is 19:00 of the day before at five hours west
        dark = cell["ghi"] == 0 and cell["dni"] == 0
        rows.append(
            {
                "time(UTC)": f"{YEARS[when.month - 1]}{when:%m%d:%H%M}",
                "T2m": round(float(cell["temp_air"]), 2),
                "RH": round(float(cell["relative_humidity"]), 2),
                "G(h)": float(cell["ghi"]),
                "Gb(n)": -0.0 if dark else float(cell["dni"]),
                "Gd(h)": float(cell["dhi"]),
                "IR(h)": 310.0,
                "WS10m": round(float(cell["wind_speed"]), 2),
                "WD10m": float(cell["wind_direction"]),
                "SP": float(cell["pressure"]) * 100.0,
            }
        )
    return rows


def as_json(rows: list[Row], *, offset: float | None = OFFSET) -> bytes:
    location = {"latitude": LATITUDE, "longitude": LONGITUDE, "elevation": ELEVATION}
    if offset is not None:
        location["irradiance_time_offset"] = offset
    meteo = {"radiation_db": "PVGIS-NSRDB", "meteo_db": "ERA5", "year_min": 2005, "year_max": 2023}
    horizon = {"use_horizon": True, "horizon_db": "DEM-calculated"}
    months = [{"month": month, "year": year} for month, year in enumerate(YEARS, start=1)]
    return json.dumps(
        {
            "inputs": {"location": location, "meteo_data": meteo | horizon},
            "outputs": {"months_selected": months, "tmy_hourly": rows},
            "meta": {"inputs": {"location": {"description": "Selected location"}}, "outputs": {}},
        }
    ).encode()


def as_csv(rows: list[Row]) -> bytes:
    head = [
        f"Latitude (decimal degrees): {LATITUDE:.3f}",
        f"Longitude (decimal degrees): {LONGITUDE:.3f}",
        f"Elevation (m): {ELEVATION}",
        f"Irradiance Time Offset (h): {OFFSET}",
        "month,year",
        *(f"{month},{year}" for month, year in enumerate(YEARS, start=1)),
        ",".join(rows[0]),
    ]
    foot = ["", "T2m: 2-m air temperature (degree Celsius)", "RH: relative humidity (%)", ""]
    foot += ["PVGIS (c) European Union, 2001-2026", ""]
    return "\r\n".join([*head, *(",".join(map(str, row.values())) for row in rows), *foot]).encode()


def as_epw(rows: list[Row]) -> bytes:
    head = [
        f"LOCATION,unknown,-,unknown,ECMWF/ERA,unknown,{LATITUDE:.6f},{LONGITUDE:.6f},{ZONE},{ELEVATION:.0f}",
        "DESIGN CONDITIONS,0",
        "TYPICAL/EXTREME PERIODS,0",
        "GROUND TEMPERATURES,0",
        "HOLIDAYS/DAYLIGHT SAVING,No,0,0,0",
        "COMMENTS 1,Weather Analytics - Sensor Point System data - based on the ECMWF-ERA",
        f"COMMENTS 2,Irradiance Time Offset (h):{OFFSET - 1.0:.4f}",
        "DATA PERIODS,1,1,Data,Thursday, 1/ 1,12/31",
    ]
    return "\n".join([*head, *map(_epw_row, rows), ""]).encode()


def _epw_row(row: Row) -> str:
    day, hour = str(row["time(UTC)"]).split(":")
    return (
        f"{day[:4]},{int(day[4:6])},{int(day[6:])},{int(hour[:2]) + 1},0,B8B8E8B8?1A1A1A1?0?0?0?0B8B8?0?0?0?0?0?0?0?0,"
        f"{row['T2m']:.2f},1.00,{row['RH']:.2f},{row['SP']:.2f},9999,9999,{row['IR(h)']:.2f},{row['G(h)']:.2f},"
        f"{row['Gb(n)']:.2f},{row['Gd(h)']:.2f},999999,999999,999999,9999,{row['WD10m']:.0f},{row['WS10m']:.1f},"
        "99,99,9999,99999,9,999999999,999,0.999,999,99,999,999,99"
    )


@dataclass
class Replay:
    """What the server answers next, and what it was asked."""

    status: int = 200
    body: bytes | Callable[[str], bytes] = b""
    stated_length: int | None = None  # more than is sent: the answer breaks off
    wait: float = 0.0  # s before the first byte
    trickle: float = 0.0  # s between bytes, each sooner than any one read would give up
    asked: list[dict[str, list[str]]] = field(default_factory=list)
    url: str = ""


@contextmanager
def replaying() -> Iterator[Replay]:
    """A server on this machine that answers as its `Replay` says."""
    replay, over = Replay(), threading.Event()

    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            query = parse_qs(urlsplit(self.path).query)
            replay.asked.append(query)
            over.wait(replay.wait)
            body = replay.body(query["outputformat"][0]) if callable(replay.body) else replay.body
            try:
                self.send_response(replay.status)
                self.send_header("Content-Length", str(replay.stated_length or len(body)))
                self.end_headers()
                for byte in body if replay.trickle else ():
                    if over.is_set():
                        return
                    self.wfile.write(bytes([byte]))
                    self.wfile.flush()
                    time.sleep(replay.trickle)
                if not replay.trickle:
                    self.wfile.write(body)
            except OSError:  # the asker has gone
                return

        def log_message(self, format: str, *args: Any) -> None:
            """Keep quiet."""

    server = ThreadingHTTPServer(("127.0.0.1", 0), Handler)
    server.daemon_threads = True
    replay.url = f"http://127.0.0.1:{server.server_port}/api/v5_3/"
    thread = threading.Thread(target=server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)
    thread.start()
    try:
        yield replay
    finally:
        over.set()
        server.shutdown()
        server.server_close()
        thread.join()
