"""What are later costs, the second heat source and the horizon taken to be where nobody has said?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.inputs.catalogue import Known, fuel_row, option_row
from estimator.inputs.cost import Cost
from estimator.inputs.heating import Second
from estimator.inputs.prices import Prices, Worth
from estimator.inputs.quantity import declared
from estimator.units import from_percent

_AGE_UNKNOWN = 0.5  # of its life: what stands already is taken to be half way through


def second_gaps(second: Second) -> dict[str, Known]:
    """Efficiency, price and carbon of the second heat source, from the row of its fuel."""
    row = fuel_row(second.fuel)
    return {name: row[name] for name in ("efficiency", "price", "carbon")}


def price_date(prices: Prices, fuel: str) -> dict[str, Known]:
    """What the prices are said to rest on, where somebody entered their own beside the date of the table of fuels."""
    usual = next(item.default for item in declared(Prices) if item.path == "dated")
    own = [name for name, price in (("electricity", prices.electricity), (fuel, prices.fuel)) if price is not None]
    if prices.tariff.kind != "flat":
        own = ["electricity", *(name for name in own if name != "electricity")]
    if prices.dated != usual or not own:
        return {}
    said = f"{' and '.join(dict.fromkeys(own))} as entered, without a date; all else {usual}"
    return {"dated": Known(said, "assumed", "prices entered without a date")}


def worth_gaps(worth: Worth) -> dict[str, Known]:
    """Whole years over which money is counted: the life of the kit, the longest of several homes."""
    return {"horizon": Known(max(1, round(float(np.max(worth.life)))), "assumed", "the life of the kit")}


def later_cost_gaps(cost: Cost, kind: str, worth: Worth, *, standing: bool) -> dict[str, Known]:
    """Life of the kit and its renewal by its like, of an option whose other costs are filled.

    standing: it is in place today, so that its first renewal is nearer than its life, and its kit is priced by the
    catalogue even where fitting it costs nothing now.
    """
    life: Any = worth.life if cost.kit_life is None else cost.kit_life
    kit: Any = option_row(kind)["cost.kit"].value if standing and not np.any(cost.kit) else cost.kit
    taxed = kit * (1.0 + from_percent(np.asarray(cost.vat, dtype=float)))
    how = "kit of the catalogue and tax" if standing else "price of the kit and tax"
    due = Known(_AGE_UNKNOWN * life, "assumed", "half of its life: age unknown") if standing else None
    return {
        "cost.kit_life": Known(life, "assumed", "the life under worth"),
        "cost.renewal": Known(taxed, "assumed", how),
        "cost.renewal_year": due or Known(life, "assumed", "the life of the kit"),
    }
