"""Which columns does the table of results have, and what stands in each?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

import numpy as np
import pyarrow as pa
from numpy.typing import NDArray

from estimator.cautions import cautions, every_caution
from estimator.inputs.case import Case
from estimator.inputs.places import with_values
from estimator.report import stock_words
from estimator.routes import LABELS
from estimator.stock.outcome import ROUTES, Outcome
from estimator.stock.verdict import ANSWERS, REASONS, TIGHTNESS, Verdict

ROW, ID, STATUS, FAULTS = "row", "id", "status", "faults"
SOUND, FAULTY = "ok", "fault"
_WORDS = ("answer", "tightness", "best route", "reason", "look first at", "leakage rests on")
_CAUSES = ("home.open_flue", "home.radon_area", "home.age", "home.form")  # words that cautions hang on


def figures(currency: str) -> Mapping[str, str]:
    """Heading of each figure by its name in an outcome, in the order of the table."""
    return {
        "q50": "leakage [m³/(h m²) at 50 Pa]",
        "heat_saved": "heat saved [kWh/year]",
        "extra_electricity": "extra electricity [kWh/year]",
        "frost": "frost protection [kWh/year]",
        "bill_saving": f"bill saving [{currency}/year]",
        "net_saving": f"net saving after upkeep [{currency}/year]",
        "carbon_saving": "carbon saving [kg/year]",
        "net_capital": f"cost above the baseline [{currency}]",
        "payback": "payback [years]",
        "net_saving_today": f"net saving against today [{currency}/year]",
        "sealing_cost": f"cost of sealing [{currency}]",
        "net_saving_sealed": f"net saving once sealed [{currency}/year]",
        "payback_sealed": "payback once sealed [years]",
    }


def spreads(currency: str) -> Mapping[str, str]:
    """Heading of each end of a range, where ranges are asked for."""
    return {
        "net_saving_low": f"net saving, a tenth of cases below [{currency}/year]",
        "net_saving_high": f"net saving, a tenth of cases above [{currency}/year]",
        "carbon_low": "carbon saving, a tenth of cases below [kg/year]",
        "carbon_high": "carbon saving, a tenth of cases above [kg/year]",
        "payback_low": "payback, a tenth of cases below [years]",
        "payback_high": "payback, a tenth of cases above [years]",
        "paid_back": "cases that pay back within the life [%]",
    }


def schema(currency: str, *, named: bool, ranges: bool) -> pa.Schema:
    """Columns of the table of results in order; `named` with a column of names, `ranges` with the ends of ranges."""
    numbers = {**figures(currency), **(spreads(currency) if ranges else {})}
    return pa.schema(
        [
            pa.field(ROW, pa.int64()),
            *([pa.field(ID, pa.string())] if named else []),
            pa.field(STATUS, pa.string()),
            *(pa.field(name, pa.string()) for name in _WORDS),
            *(pa.field(name, pa.float64()) for name in numbers.values()),
            pa.field(FAULTS, pa.string()),
        ]
    )


class Sheet:
    """The rows of results of one chunk, filled group by group; what is never filled stays empty."""

    def __init__(self, rows: int, shape: pa.Schema) -> None:
        self._shape = shape
        self._numbers = {f.name: np.full(rows, np.nan) for f in shape if pa.types.is_floating(f.type)}
        self._texts = {f.name: np.full(rows, None, dtype=object) for f in shape if pa.types.is_string(f.type)}
        self._texts[STATUS][:] = SOUND

    def put(self, rows: Any, figures: Mapping[str, Any]) -> None:
        """Figures by heading; infinite ones (no payback) leave their cell empty."""
        for name, values in figures.items():
            self._numbers[name][rows] = np.where(np.isfinite(values), values, np.nan)

    def say(self, rows: Any, words: Mapping[str, Any]) -> None:
        """Texts by heading."""
        for name, values in words.items():
            self._texts[name][rows] = values

    def table(self, first_row: int, names: Any) -> pa.Table:
        """The chunk as an Arrow table; rows are counted from `first_row`."""
        columns: dict[str, Any] = {
            ROW: pa.array(np.arange(first_row, first_row + self._texts[STATUS].size)),
            **{name: pa.array(values, from_pandas=True) for name, values in self._numbers.items()},
            **{name: pa.array(values, pa.string()) for name, values in self._texts.items()},
        }
        if names is not None:
            columns[ID] = names
        return pa.table([columns[name] for name in self._shape.names], schema=self._shape)


def words_of(found: Outcome, said: Verdict) -> dict[str, Any]:
    """The words of every home of a group by their heading."""
    reasons = [stock_words.reason(key, found.basis) for key in REASONS]
    return {
        "answer": _taken([stock_words.ANSWERS[key] for key in ANSWERS], said.answer),
        "tightness": _taken([stock_words.TIGHTNESS[key] for key in TIGHTNESS], said.tightness),
        "best route": _taken([LABELS[name] for name in ROUTES], said.route),
        "reason": _taken(reasons, said.reason),
        "look first at": look_first(found.case, found.q50.size),
        "leakage rests on": found.basis,
    }


def look_first(case: Case, count: int) -> Any:
    """Titles of the cautions that not every home of the world shares, for each home of a filled group."""
    usual = {row.key for row in every_caution() if row.trigger == "always"}
    columns = [np.broadcast_to(np.asarray(_word(case, path), dtype=object), (count, 1))[:, 0] for path in _CAUSES]
    together = columns[0]
    for column in columns[1:]:
        together = together + "\n" + column
    found, place = np.unique(together.astype(str), return_inverse=True)
    titles = []
    for words in found:
        one = with_values(case, dict(zip(_CAUSES, words.split("\n"), strict=True)))
        titles.append("; ".join(row.title for row in cautions(one) if row.key not in usual))
    return _taken(titles, place)


def _word(case: Case, path: str) -> Any:
    section, name = path.split(".")
    return getattr(getattr(case, section), name)


def _taken(words: list[str], codes: NDArray[np.intp]) -> Any:
    return np.array(words, dtype=object)[codes]
