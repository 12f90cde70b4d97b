"""What of a table of homes does the page show, in arrays and words?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from estimator.report import charts_stock, stock_said
from estimator.report.stock_summary import paybacks, summary
from estimator.stock.chunk import PAYBACK_EDGES
from estimator.stock.held import Held
from estimator.stock.results import FAULTS, FAULTY, STATUS, figures


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Shown:
    """Counts, the homes on the map, and what else the page needs of one table."""

    counts: Mapping[str, int]
    errors: np.ndarray
    option: str
    baseline: str
    currency: str
    paybacks: list[tuple[str, int]]
    q50: np.ndarray
    saving: np.ndarray
    tightness: np.ndarray
    names: list[str]
    drawn: str
    dated: str
    weather: str
    summary: Callable[[], str]
    cells: Callable[[int], tuple[str, ...]]
    is_faulty: Callable[[int], bool]


def shown(found: Held) -> Shown:
    """The page's view of a screened table."""
    stock, settings = found.stock, found.stock.settings
    case, year, heads = settings.case, settings.hours, figures(found.stock.settings.case.prices.currency)
    option, baseline = (case.options[name].label or name for name in (settings.recovery, case.baseline))
    wanted = ("q50", "net_saving", "payback")
    held = found.columns([*(heads[name] for name in wanted), "answer", "tightness", "leakage rests on", STATUS, FAULTS])
    sound = np.flatnonzero(held[STATUS] != FAULTY)
    on_map = sound[charts_stock.drawn(len(sound))] if len(sound) else sound

    def cells(row: int) -> tuple[str, ...]:
        at, name = row - 1, found.name(row)
        if held[STATUS][at] == FAULTY:
            return name, str(held[FAULTS][at])
        entries: dict[str, Any] = {key: float(held[heads[key]][at]) for key in wanted}
        return stock_said.home(
            name,
            {**entries, "answer": held["answer"][at], "basis": held["leakage rests on"][at]},
            currency=case.prices.currency,
        )

    def in_words() -> str:
        return summary(
            stock.counts,
            stock.errors,
            option=option,
            baseline=baseline,
            climate=year.name + (" (invented)" if year.invented else ""),
            currency=case.prices.currency,
            edges=PAYBACK_EDGES,
            strangers=stock.strangers,
            left_out=stock.left_out,
        )

    return Shown(
        counts=stock.counts,
        errors=stock.errors,
        option=option,
        baseline=baseline,
        currency=case.prices.currency,
        paybacks=paybacks(stock.counts, PAYBACK_EDGES),
        q50=held[heads["q50"]][on_map],
        saving=held[heads["net_saving"]][on_map],
        tightness=held["tightness"][on_map],
        names=[found.name(int(place) + 1) for place in on_map],
        drawn="Every home is drawn." if len(on_map) == len(sound) else f"{len(on_map):,} of {len(sound):,} are drawn.",
        dated=case.prices.dated,
        weather=f"{year.name}, {year.source}",
        summary=in_words,
        cells=cells,
        is_faulty=lambda row: bool(held[STATUS][row - 1] == FAULTY),
    )
