"""How is a price, and a tariff of many prices, said in words, so that a slip of the decimal mark is seen at once?"""

from __future__ import annotations

from collections.abc import Iterable

from estimator.inputs.prices import Prices
from estimator.inputs.tariff_lines import HourPrice, block_prices, hour_prices
from estimator.report.figures import UNKNOWN, number
from estimator.units import from_hundredths, from_percent

_HUNDREDTHS = {"£": "pence", "GBP": "pence", "€": "cents", "EUR": "cents", "$": "cents", "USD": "cents"}
_ONE = {"pence": "penny", "cents": "cent"}
_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_EVERY, _WORKING, _WEEKEND = tuple(range(7)), tuple(range(5)), (5, 6)
_MINUTES = 60


def price_in_words(hundredths: float | None, currency: str, *, per: str = "kWh") -> str:
    """A price in hundredths of the currency, named in words.

    >>> price_in_words(28.0, "£"), price_in_words(1.0, "£", per="day"), price_in_words(28.5, "kr")
    ('28 pence a kWh', '1 penny a day', '0.285 kr a kWh')
    """
    if hundredths is None:
        return UNKNOWN
    name = _HUNDREDTHS.get(currency)
    if name is None:
        return f"{number(from_hundredths(hundredths))} {currency} a {per}"
    return f"{number(hundredths)} {_ONE[name] if hundredths == 1.0 else name} a {per}"


def tariff_in_words(prices: Prices) -> str:
    """The electricity tariff of a filled case in one sentence."""
    tariff, currency = prices.tariff, prices.currency
    base = _levelled(prices.electricity or 0.0, prices)
    if tariff.kind == "time of use":
        windows = "; ".join(_window(window, prices) for window in hour_prices(tariff.windows))
        said = f"Electricity costs {windows}; {price_in_words(base, currency)} at all other hours"
    elif tariff.kind == "block":
        blocks = block_prices(tariff.blocks)
        first = f"{price_in_words(base, currency)} up to {number(blocks[0].limit)} kWh a {tariff.billing}"
        rest = (
            f"{price_in_words(_levelled(block.price, prices), currency)} beyond {number(block.limit)} kWh"
            for block in blocks
        )
        said = f"Electricity costs {'; '.join((first, *rest))}"
    else:
        said = f"Electricity costs {price_in_words(base, currency)} at every hour"
    standing = price_in_words(prices.electricity_standing, currency, per="day")
    return f"{said}, and {standing} for the connection."


def _levelled(price: float, prices: Prices) -> float:
    return float(price * from_percent(prices.tariff.level))


def _window(window: HourPrice, prices: Prices) -> str:
    price = price_in_words(_levelled(window.price, prices), prices.currency)
    return f"{price} from {clock_time(window.start)} to {clock_time(window.stop)} {days_in_words(window.days)}"


def clock_time(hours: float) -> str:
    """A time of the day.

    >>> clock_time(0.5), clock_time(16.0), clock_time(24.0)
    ('0:30', '16:00', '24:00')
    """
    whole, part = divmod(round(hours * _MINUTES), _MINUTES)
    return f"{whole}:{part:02d}"


def days_in_words(days: Iterable[int]) -> str:
    """Weekdays, 0 for Monday.

    >>> days_in_words(range(7)), days_in_words((5, 6)), days_in_words((0, 2, 4))
    ('every day', 'on Saturday and Sunday', 'on Monday, Wednesday and Friday')
    """
    named = tuple(sorted(days))
    if named == _EVERY:
        return "every day"
    if named == _WORKING:
        return "from Monday to Friday"
    *first, last = (_DAYS[day] for day in named)
    return f"on {', '.join(first)} and {last}" if first else f"on {last}"
