"""How do fans and leakage join into one flow of outdoor air?

The estimator uses quadrature. The other published ways differ in principle and stand beside it for comparison.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

import numpy as np

from estimator.units import Numeric

# EN ISO 13789, shielding coefficients of a building with several exposed façades, moderate shielding.
SHIELDING_E = 0.07
SHIELDING_F = 15.0


def balanced_flow(supply: Numeric, extract: Numeric) -> Any:
    """The part of the fan flows that passes in and out in equal measure; same unit as the arguments."""
    return np.minimum(supply, extract)


def unbalanced_flow(supply: Numeric, extract: Numeric) -> Any:
    """The rest of the larger fan flow, which must pass through the envelope; same unit as the arguments."""
    return np.abs(np.asarray(supply) - np.asarray(extract))


def envelope_flow(infiltration: Numeric, *, unbalanced: Numeric) -> Any:
    """Outdoor air through the envelope: quadrature of infiltration and unbalanced fan flow, any one unit."""
    # Ten times as fast as hypot, whose care for huge numbers no flow of air needs.
    squares = np.asarray(np.square(infiltration) + np.square(unbalanced))
    return np.sqrt(squares, out=squares)[()]


def superposed_flow(infiltration: Numeric, *, supply: Numeric, extract: Numeric) -> Any:
    """All outdoor air: envelope flow by quadrature plus balanced flow, any one unit."""
    unbalanced = unbalanced_flow(supply, extract)
    return envelope_flow(infiltration, unbalanced=unbalanced) + balanced_flow(supply, extract)


def iso_13789_flow(leakage_at_50: Numeric, *, supply: Numeric, extract: Numeric) -> Any:
    """Air through leaks beyond the fans' own imbalance, EN ISO 13789; leakage at 50 Pa and fans in one unit."""
    test = np.asarray(leakage_at_50)
    ratio = unbalanced_flow(supply, extract) / test
    return test * SHIELDING_E / (1.0 + SHIELDING_F / SHIELDING_E * np.square(ratio))


def sub_additive_flow(infiltration: Numeric, *, supply: Numeric, extract: Numeric) -> Any:
    """All outdoor air by ASHRAE 62.2 (from memory): with unbalanced fans infiltration counts in the share Qi/Qtot.

    Qtot = Qu + Qi²/Qtot, whose positive root is (Qu + √(Qu² + 4 Qi²))/2; balanced flow adds. Any one unit.

    >>> float(sub_additive_flow(40.0, supply=0.0, extract=84.0))
    100.0
    """
    unbalanced = unbalanced_flow(supply, extract)
    through_envelope = (unbalanced + np.hypot(unbalanced, 2.0 * np.asarray(infiltration))) / 2.0
    return through_envelope + balanced_flow(supply, extract)


def effective_extract(infiltration: Numeric, *, fan: Numeric) -> Any:
    """Effective air change with whole-house extract of the UK Standard Assessment Procedure, one unit throughout."""
    qi, q = np.asarray(infiltration), np.asarray(fan)
    return np.where(qi < 0.5 * q, q, qi + 0.5 * q)


def effective_balanced(infiltration: Numeric, *, fan: Numeric, efficiency: Numeric = 0.0) -> Any:
    """Effective air change with balanced fans, recovered heat taken as air not supplied (UK Standard Assessment)."""
    return np.asarray(infiltration) + np.asarray(fan) * (1.0 - np.asarray(efficiency))


def effective_natural(infiltration: Numeric) -> Any:
    """Effective air change with natural ventilation or intermittent fans (UK Standard Assessment) [1/h]."""
    n = np.asarray(infiltration)
    return np.where(n >= 1.0, n, 0.5 + 0.5 * np.square(n))


JOININGS: Mapping[str, Callable[..., Any]] = MappingProxyType(
    {"quadrature": superposed_flow, "sub-additive": sub_additive_flow}
)
"""Ways of joining that take infiltration, supply and extract alike, for side-by-side comparison."""
