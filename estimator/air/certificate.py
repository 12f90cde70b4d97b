"""What do several points of a certificate say of a flow between them?

Ratio and specific fan power are interpolated in straight lines from point to point. Beyond the last point on either
side its own values go on by the scaling laws of `exchanger`, and `beyond` says that they do.
"""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np

from estimator.units import Array, Numeric

_ROUNDING = 1e-9


class Points(NamedTuple):
    """Points of a certificate, (k,) each, flows rising: flow, temperature ratio 0 to 1, specific fan power."""

    flows: Array
    ratios: Array
    powers: Array


class Reference(NamedTuple):
    """What the certificate says nearest to a flow: at which flow, and ratio and specific fan power there."""

    flow: Any
    ratio: Any
    power: Any


def reference_at(points: Points, *, flow: Numeric) -> Reference:
    """The certificate at a flow, or at the end of its points where the flow lies beyond; shape of `flow`."""
    near = np.clip(flow, points.flows[0], points.flows[-1])
    return Reference(
        flow=near,
        ratio=np.interp(near, points.flows, points.ratios),
        power=np.interp(near, points.flows, points.powers),
    )


def beyond(points: Points, *, flow: Numeric) -> Any:
    """Whether a flow lies outside the certificate's points, by more than rounding."""
    low, high = points.flows[0] * (1.0 - _ROUNDING), points.flows[-1] * (1.0 + _ROUNDING)
    return (np.asarray(flow) < low) | (np.asarray(flow) > high)
