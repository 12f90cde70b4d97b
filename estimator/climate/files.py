"""Which format is this weather file, whatever its name?"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from estimator.climate.clean import checked_year
from estimator.climate.epw import is_epw, read_epw
from estimator.climate.plain import is_plain, read_plain
from estimator.climate.raw import RawYear
from estimator.climate.text import file_text
from estimator.climate.tmy import is_tmy2, is_tmy3, read_tmy2, read_tmy3
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault


class Format(NamedTuple):
    """One row of `FORMATS`: a name, how its text is recognised, and how it is read."""

    name: str
    recognised: Callable[[str], bool]
    read: Callable[[str, Path], RawYear]


FORMATS = (
    Format("EPW", is_epw, read_epw),
    Format("TMY3", is_tmy3, read_tmy3),
    Format("TMY2", is_tmy2, read_tmy2),
    Format("a plain table (month, day, hour, temp_air …)", is_plain, read_plain),
)


def read_year(path: Path) -> ClimateYear:
    """The checked year of a weather file, its format told by content; ClimateFault in plain words."""
    return checked_year(form_of(text := file_text(path), path).read(text, path))


def form_of(text: str, path: Path) -> Format:
    """The format of a file's text; ClimateFault, by the path's name, where it has none that is known."""
    for form in FORMATS:
        if form.recognised(text):
            return form
    known = ", ".join(form.name for form in FORMATS)
    raise ClimateFault(Fault(path.name, f"this is no weather file of a known format; those read are {known}."))
