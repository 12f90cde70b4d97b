"""What does an option cost to have fitted, to keep, and to renew?"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from estimator.inputs.quantity import STRICT, Quantity

_ROW = "the row of this kind in the catalogue"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Cost:
    """What it costs to have it fitted, and each year after. Money in whole units of the case's currency."""

    __pydantic_config__ = STRICT

    kit: Annotated[float | None, Quantity("money", 0, 200000, "unit, valves and controls", derived=_ROW)] = None
    ducts: Annotated[float | None, Quantity("money", 0, 200000, "ducts, insulation and terminals", derived=_ROW)] = None
    people: Annotated[float | None, Quantity("", 0, 20, "people fitting it", derived=_ROW)] = None
    days: Annotated[float | None, Quantity("days", 0, 60, "days they take", derived=_ROW)] = None
    day_rate: Annotated[float | None, Quantity("money", 0, 5000, "price of one person for one day", derived=_ROW)] = (
        None
    )
    electrical: Annotated[float | None, Quantity("money", 0, 50000, "electrical supply", derived=_ROW)] = None
    commissioning: Annotated[float | None, Quantity("money", 0, 20000, "commissioning visit", derived=_ROW)] = None
    making_good: Annotated[float | None, Quantity("money", 0, 100000, "making good and decoration", derived=_ROW)] = (
        None
    )
    vat: Annotated[float | None, Quantity("%", 0, 40, "value added tax on all parts", derived=_ROW)] = None
    grant: Annotated[float | None, Quantity("money", 0, 200000, "grant received", derived=_ROW)] = None
    filter_sets: Annotated[float | None, Quantity("1/year", 0, 12, "filter sets a year", derived=_ROW)] = None
    filter_price: Annotated[float | None, Quantity("money", 0, 500, "price of a filter set", derived=_ROW)] = None
    service: Annotated[float | None, Quantity("money/year", 0, 2000, "service a year", derived=_ROW)] = None
    kit_life: Annotated[
        float | None,
        Quantity("years", 1, 60, "years the kit serves before it is renewed", derived="the life under worth"),
    ] = None
    renewal: Annotated[
        float | None,
        Quantity(
            "money",
            0,
            200000,
            "renewing the kit by its like, fitted, tax included",
            derived="price of the kit and tax; for what stands already, that of the catalogue",
        ),
    ] = None
    renewal_year: Annotated[
        float | None,
        Quantity(
            "years",
            0,
            60,
            "years from today until its first renewal is due",
            derived="its life; half of it for what stands already",
        ),
    ] = None
    fans: Annotated[
        float | None, Quantity("money", 0, 5000, "replacing its fans once, fitted, tax included", derived=_ROW)
    ] = None
    fans_year: Annotated[
        float | None, Quantity("years", 1, 60, "years from today, and then again, that its fans last", derived=_ROW)
    ] = None
    embodied: Annotated[
        float | None, Quantity("kg", 0, 20000, "CO2 equivalent of making and fitting it", derived=_ROW)
    ] = None
