"""How is a whole result written as one JSON document?"""

from __future__ import annotations

import json
import math
from typing import Any

from estimator.cautions import cautions
from estimator.compare import Comparison, Result
from estimator.estimate import Estimate
from estimator.evidence.method import method_error
from estimator.leak_range import leakage_span
from estimator.monthly import Months, months
from estimator.report.cash import payback
from estimator.report.fit_document import fit_document
from estimator.report.method_words import method_error_in_words
from estimator.report.quantities import COMPARED, MONTHLY, YEARLY
from estimator.report.remarks import remarks

DOCUMENT_VERSION = 1
STATEMENT = (
    "An estimate for deciding, perhaps made by someone who sells the work: not an offer, a rating or a guarantee."
)


def document(result: Result, ends: tuple[Result, Result]) -> dict[str, Any]:
    """Every input used with its origin and every figure reported, as plain dicts, lists and numbers.

    `ends` are the same case at the low and the high end of its leakage: no figure of a saving stands without its range.

    A figure without a finite value (a payback that never comes) is null, and its words say why.
    """
    done = result.estimate
    return {
        "version": DOCUMENT_VERSION,
        "statement": STATEMENT,
        "currency": done.case.prices.currency,
        "prices_dated": done.case.prices.dated,
        "climate": _climate(result),
        "baseline": done.case.baseline,
        "today": done.case.today,
        "inputs": [
            {
                "path": origin.path,
                "value": origin.value,
                "unit": origin.unit,
                "meaning": origin.meaning,
                "tag": origin.tag,
                "source": origin.source,
            }
            for origin in done.origins.values()
        ],
        "options": {
            name: {
                "label": option.label,
                "kind": done.case.options[name].kind,
                "rests_on": leakage_span(done.case).rests_on,
                "yearly": {item.key: _figure(item.read(option), item.unit) for item in YEARLY},
                "monthly": _monthly(months(done, option)),
            }
            for name, option in done.options.items()
        },
        "leakage": _leakage(result),
        "comparisons": {
            which: {
                name: _comparison(result, found, [getattr(end, which)[name] for end in ends])
                for name, found in getattr(result, which).items()
            }
            for which in ("against_baseline", "against_today")
        },
        **fit_document(result, ends),
        "remarks": list(remarks(result)),
        "cautions": [
            {
                "key": caution.key,
                "title": caution.title,
                "when": caution.when,
                "words": caution.words,
                "ask": caution.ask,
            }
            for caution in cautions(done.case)
        ],
    }


def as_json(result: Result, ends: tuple[Result, Result]) -> str:
    """The document as text; refuses to write a number that is not one."""
    return json.dumps(document(result, ends), ensure_ascii=False, indent=1, allow_nan=False)


def _finite(value: float) -> float | None:
    return value if math.isfinite(value) else None


def _figure(value: float, unit: str) -> dict[str, Any]:
    return {"value": _finite(value), "unit": unit}


def _monthly(year: Months) -> dict[str, Any]:
    return {
        key: {"values": [_finite(float(value)) for value in getattr(year, key)], "unit": unit}
        for key, unit, _ in MONTHLY
    }


def _leakage(result: Result) -> dict[str, Any]:
    span = leakage_span(result.estimate.case)
    return {
        "q50": {"low": span.low, "middle": span.middle, "high": span.high, "unit": "m³/(h m²)"},
        "tag": span.tag,
        "source": span.source,
        "words": span.words,
    }


def _comparison(result: Result, comparison: Comparison, ends: list[Comparison]) -> dict[str, Any]:
    done = result.estimate
    base, option = (months(done, done.options[name]) for name in (comparison.baseline, comparison.option))
    return {
        "baseline": comparison.baseline,
        "baseline_label": comparison.baseline_label,
        "rests_on": leakage_span(done.case).rests_on,
        "yearly": {item.key: _figure(item.read(comparison), item.unit) for item in COMPARED},
        "over_leakage": {
            item.key: {
                "values": sorted_ends([item.read(found) for found in (comparison, *ends)]),
                "unit": item.unit,
            }
            for item in COMPARED
        },
        "method_error": _method_error(done, comparison),
        "payback": payback(comparison.simple_payback, life=comparison.life),
        "life": _figure(comparison.life, "years"),
        "by_year": _by_year(comparison),
        "monthly_saving": {
            key: {
                "values": [float(was - now) for was, now in zip(getattr(base, key), getattr(option, key), strict=True)],
                "unit": unit,
            }
            for key, unit in (
                ("heating_demand", "kWh"),
                ("electricity", "kWh"),
                ("fuel_energy", "kWh"),
                ("bill", "money"),
                ("carbon", "kg"),
            )
        },
    }


def _method_error(done: Estimate, comparison: Comparison) -> dict[str, Any]:
    found = method_error(done, comparison)
    return {
        "heat_saved": None if found is None else {"values": [found.low, found.high], "unit": "kWh"},
        "words": method_error_in_words(done, comparison),
    }


def _by_year(comparison: Comparison) -> dict[str, Any]:
    """Rows of years, today first."""
    plan = comparison.plan
    rows = (
        ("flows", plan.flows, "money"),
        ("cumulative", plan.cumulative, "money"),
        ("carbon_saved", plan.carbon_saved, "kg"),
        ("carbon_cumulative", plan.carbon_cumulative, "kg"),
    )
    return {key: {"values": [float(value) for value in row], "unit": unit} for key, row, unit in rows}


def sorted_ends(values: list[float]) -> list[float | None]:
    """Lowest and highest of some figures; one that is never reached is null."""
    known = [value for value in values if not math.isnan(value)]
    return [_finite(min(known)), _finite(max(known))] if known else [None, None]


def _climate(result: Result) -> dict[str, Any]:
    year = result.estimate.year
    return {
        "name": year.name,
        "source": year.source,
        "licence": year.licence,
        "invented": year.invented,
        "latitude": year.latitude,
        "longitude": year.longitude,
        "altitude": year.altitude,
        "repairs": list(year.repairs),
        "mean_temperature": {"value": float(year.temp_air.mean()), "unit": "°C"},
    }
