"""How is money said: sums, prices, savings with their range, and the years until they have paid?

A saving is positive where the option is cheaper. A range is always low to high, and rounded no finer than its own width
bears. What costs more says so in words; a minus sign is for tables only.
"""

from __future__ import annotations

import math

from estimator import units
from estimator.report.figures import GAP, UNKNOWN, borne, fixed, joined, number, years

_BEFORE = frozenset("£€$¥₤₩₹₺₪₫")
"""Currency signs that stand before the number; any other sign, and every code of letters, stands after it."""

_HUNDREDTH = {"£": "p", "GBP": "p", "€": "c", "EUR": "c", "$": "c", "USD": "c"}
"""What a hundredth of the currency is called beside a number."""

_STEPS_IN_WIDTH = 8
"""A range is rounded to a step that fits about eight times into it: 92 to 141 is said as 90 to 140."""

_FINEST = 0.025  # of a sum: no estimate bears a finer step
_BEYOND_TELLING = 100.0  # years; nobody can use a longer figure
_HALF = 0.5
"""Below this a sum keeps its hundredths, since nothing else would be left of it."""
_DEAR = 10.0
"""From here on a price loses its hundredths."""

Ends = tuple[float, float]


def money(amount: float | None, currency: str, *, within: Ends | None = None) -> str:
    """A sum of money fit for a sentence: whole units, or no finer than the range that it stands within.

    >>> money(1234.0, "£"), money(3.4, "€"), money(-61.7, "kr"), money(0.3, "£"), money(97.2, "£", within=(20.0, 160.0))
    ('£1,230', '€3', '−62\\xa0kr', '£0.30', '£100')
    """
    if amount is None or not math.isfinite(amount):
        return UNKNOWN
    if within is not None:
        amount = borne(amount, low=within[0], high=within[1])
    size = abs(amount)
    text = number(round(size)) if size >= _HALF else fixed(size, decimals=2).removesuffix(".00")
    return _signed(text, currency, minus=amount < 0 and text != "0")


def exact_money(amount: float | None, currency: str) -> str:
    """A sum of money for a table: whole units, every digit."""
    if amount is None or not math.isfinite(amount):
        return UNKNOWN
    text = fixed(abs(amount), decimals=0)
    return _signed(text, currency, minus=amount < 0 and text != "0")


def _signed(text: str, currency: str, *, minus: bool) -> str:
    sign = "\u2212" if minus else ""
    return f"{sign}{joined_money(text, currency)}"


def joined_money(text: str, currency: str) -> str:
    """A number without a sign and its currency, whichever of them stands first."""
    return f"{currency}{text}" if currency in _BEFORE else f"{text}{GAP}{currency}"


def unit_price(hundredths: float | None, currency: str, *, per: str = "kWh") -> str:
    """A price given in hundredths of the currency for one kWh, or one day.

    >>> unit_price(26.11, "£"), unit_price(57.19, "£", per="day"), unit_price(180.0, "kr")
    ('26.1p/kWh', '57.2p/day', '1.80\\xa0kr/kWh')
    """
    if hundredths is None or not math.isfinite(hundredths):
        return UNKNOWN
    if currency in _HUNDREDTH:
        return f"{number(hundredths)}{_HUNDREDTH[currency]}/{per}"
    price = float(units.from_hundredths(hundredths))
    text = number(round(price)) if abs(price) >= _DEAR else fixed(price, decimals=2).removesuffix(".00")
    return f"{joined_money(text, currency)}/{per}"


def price_unit(unit: str, currency: str) -> str:
    """A declared unit with money in it, as written in this currency.

    >>> price_unit("p/kWh", "€"), price_unit("money/year", "£"), price_unit("p/day", "kr"), price_unit("m", "£")
    ('c/kWh', '£/year', '1/100 kr/day', 'm')
    """
    head, slash, rest = unit.partition("/")
    if head == "p":
        return f"{_HUNDREDTH.get(currency, f'1/100 {currency}')}{slash}{rest}"
    return f"{currency}{slash}{rest}" if head == "money" else unit


def joined_price(text: str, unit: str, currency: str) -> str:
    """A number without a sign and a declared unit, with money in it or not, as sums and prices are written.

    >>> joined_price("1,900", "money", "£"), joined_price("15", "money/year", "kr"), joined_price("7.33", "p/kWh", "€")
    ('£1,900', '15\\xa0kr/year', '7.33c/kWh')
    >>> joined_price("733", "p/kWh", "kr"), joined_price("25", "mm", "£")
    ('733\\xa01/100\\xa0kr/kWh', '25\\xa0mm')
    """
    head, slash, rest = unit.partition("/")
    if head == "money":
        return f"{joined_money(text, currency)}{slash}{rest}"
    written = price_unit(unit, currency)
    return f"{text}{written}" if head == "p" and currency in _HUNDREDTH else joined(text, written)


def rounded_range(low: float, high: float) -> tuple[float, float]:
    """Low and high rounded to a step of 1, 2 or 5 that the width of the range and its size bear.

    >>> rounded_range(92.3, 141.0), rounded_range(-38.0, 91.0), rounded_range(438.2, 454.1)
    ((90.0, 140.0), (-40.0, 90.0), (440.0, 450.0))
    """
    width = high - low
    if not math.isfinite(width) or width <= 0:
        return low, high
    step = _step(max(width / _STEPS_IN_WIDTH, _FINEST * max(abs(low), abs(high))))
    return round(low / step) * step, round(high / step) * step


def _step(size: float) -> float:
    power = 10.0 ** math.floor(math.log10(size))
    return next((factor * power for factor in (5.0, 2.0, 1.0) if factor * power <= size * 1.0001), power)


def money_range(low: float, high: float, currency: str) -> str:
    """A range of sums of one sign, as people say it.

    >>> money_range(92.0, 141.0, "£"), money_range(100.2, 100.4, "£"), money_range(900.0, 1490.0, "kr")
    ('about £90 to £140', 'about £100', 'about 900\\xa0kr to 1,500\\xa0kr')
    """
    low, high = rounded_range(low, high)
    first, last = money(low, currency), money(high, currency)
    return f"about {first}" if first == last else f"about {first} to {last}"


def saving(low: float, high: float, currency: str) -> str:
    """What a range of yearly savings means, with its verb, in the three forms it can take.

    >>> saving(92.0, 141.0, "£")
    'would save about £90 to £140 a year'
    >>> saving(-62.0, -21.0, "£")
    'would cost about £20 to £60 more a year'
    >>> saving(-38.0, 91.0, "£")
    'cannot be told: between costing about £40 more and saving about £90 a year'
    """
    if not (math.isfinite(low) and math.isfinite(high)):
        return "cannot be worked out from these inputs"
    near_low, near_high = rounded_range(low, high)
    if near_low >= 0 and near_high > 0:
        return f"would save {money_range(low, high, currency)} a year"
    if near_high <= 0 and near_low < 0:
        return f"would cost {money_range(-high, -low, currency)} more a year"
    if near_low == near_high == 0:
        return "would neither save nor cost anything worth counting"
    more, less = money(-near_low, currency), money(near_high, currency)
    return f"cannot be told: between costing about {more} more and saving about {less} a year"


def change(amount: float, currency: str, *, of: str = "a year", within: Ends | None = None) -> str:
    """One saving as words, without a sign; within: the range that it stands in.

    >>> change(62.4, "£"), change(-41.0, "£"), change(0.2, "£"), change(62.4, "£", within=(-300.0, 400.0))
    ('saves £62 a year', 'costs £41 more a year', 'makes no difference', 'saves £60 a year')
    """
    if not math.isfinite(amount):
        return UNKNOWN
    if within is not None:
        amount = borne(amount, low=within[0], high=within[1])
    if abs(amount) < 0.5:
        return "makes no difference"
    return f"saves {money(amount, currency)} {of}" if amount > 0 else f"costs {money(-amount, currency)} more {of}"


def payback(span: float | None, *, life: float) -> str:
    """The years until the saving has returned the extra cost, in words.

    >>> payback(11.6, life=20), payback(0.0, life=20), payback(float("inf"), life=20)
    ('pays back in about 12 years', 'pays at once', 'does not pay back')
    >>> payback(34.2, life=20)
    'would take about 34 years, beyond its life of 20 years'
    """
    if span is None or math.isnan(span):
        return "cannot be worked out from these inputs"
    if math.isinf(span):
        return "does not pay back"
    if span <= 0:
        return "pays at once"
    if span > life and years(span) == years(life):
        return f"would take a little longer than its life of {years(life)}"
    if span > max(life, _BEYOND_TELLING):
        return f"would take more than {years(_BEYOND_TELLING)}, far beyond its life of {years(life)}"
    if span > life:
        return f"would take about {years(span)}, beyond its life of {years(life)}"
    return f"pays back in about {years(span)}" if span >= 1 else "pays back within a year"
