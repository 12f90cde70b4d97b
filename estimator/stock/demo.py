"""Which invented homes show what a table of homes looks like?"""

from __future__ import annotations

import csv
import io
from typing import Any

import numpy as np
import pyarrow as pa

START = 1
EXAMPLES = 6

_AGES = ("before 1920", "1920 to 1975", "1976 to 1995", "1996 to 2010", "2011 or later", "very low energy")
_AGE_SHARES = (0.16, 0.34, 0.22, 0.15, 0.11, 0.02)
_MIDDLE_LEAKAGE = (11.0, 9.0, 7.0, 5.5, 3.6, 0.8)  # m³/(h m²) at 50 Pa, invented around what such homes leak
_FORMS = ("terraced", "semi-detached", "detached", "flat")
_FORM_SHARES = (0.34, 0.28, 0.16, 0.22)
_FUELS = ("natural gas", "heating oil", "direct electric", "heat pump")
_FUEL_SHARES = (0.74, 0.08, 0.1, 0.08)
_STREETS = ("Ash", "Brook", "Clover", "Dyer", "Elder", "Ferry", "Glebe", "Hazel")


def invented(count: int, *, start: int = START) -> Any:
    """An Arrow table of invented homes of an invented council; the same ones for every `start` of the random numbers.

    About two in five are tested; the rest leave their leakage to age. Nothing in it describes a real home.
    """
    rng = np.random.default_rng(start)
    age = rng.choice(len(_AGES), count, p=_AGE_SHARES)
    form = rng.choice(len(_FORMS), count, p=_FORM_SHARES)
    flat = form == _FORMS.index("flat")
    floor = np.clip(np.exp(rng.normal(np.log(np.where(flat, 58.0, 92.0)), 0.28)), 32.0, 260.0)
    bedrooms = np.clip(np.round(floor / 32.0), 1, 5).astype(int)
    tested = rng.random(count) < 0.4
    leakage = np.array(_MIDDLE_LEAKAGE)[age] * np.exp(rng.normal(0.0, 0.35, count))
    fuel = rng.choice(len(_FUELS), count, p=_FUEL_SHARES)
    flue = rng.choice(["no", "unknown", "yes"], count, p=[0.62, 0.28, 0.1])
    construction = np.where(
        age == 0, "solid masonry", np.where(rng.random(count) < 0.2, "timber frame", "cavity masonry")
    )
    return pa.table(
        {
            "id": [f"{_STREETS[n % len(_STREETS)]} {n // len(_STREETS) + 1}" for n in range(count)],
            "home.floor_area [m²]": np.round(floor, 1),
            "home.storeys": np.where(flat, 1, np.where(floor > 150.0, 3, 2)),
            "home.form": np.array(_FORMS)[form],
            "home.bedrooms": bedrooms,
            "home.people": np.clip(rng.poisson(bedrooms * 0.8), 1, 7).astype(float),
            "home.bathrooms": 1 + (bedrooms > 3),
            "home.age": np.array(_AGES)[age],
            "home.construction": construction,
            "home.indoor_temperature [°C]": np.round(rng.uniform(18.0, 21.0, count), 1),
            "home.open_flue": flue,
            "leakage.measure": np.where(tested, "q50", "estimate"),
            "leakage.value [as named]": pa.array(np.where(tested, np.round(leakage, 2), np.nan), from_pandas=True),
            "leakage.basis": pa.array([("measured" if known else None) for known in tested], pa.string()),
            "leakage.shelter": rng.choice(["few", "some", "much", "full"], count, p=[0.1, 0.35, 0.4, 0.15]),
            "heating.fuel": np.array(_FUELS)[fuel],
        }
    )


def template() -> str:
    """A table to fill in, as CSV: the columns most tables have, with a few invented homes as examples."""
    table = invented(EXAMPLES)
    page = io.StringIO()
    writer = csv.writer(page, lineterminator="\n")
    writer.writerow(table.column_names)
    writer.writerows([("" if cell is None else cell) for cell in row.values()] for row in table.to_pylist())
    return page.getvalue().rstrip("\n")
