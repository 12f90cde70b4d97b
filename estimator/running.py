"""What do fans and exchanger of an option do in one running state?"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np

from estimator.air import certificate, ducts, exchanger, joining, recovery
from estimator.survey.numbers import HomeNumbers, OptionNumbers, State
from estimator.units import Array


def fan_power(option: OptionNumbers, state: State) -> Any:
    """Power of the fans in one running state [W], standby left out."""
    flow = np.maximum(state.supply, state.extract) / state.demand
    printed = _certificate(option, flow)
    specific = exchanger.specific_fan_power_at_duty(
        printed.power,
        reference_flow=np.where(np.asarray(printed.flow) > 0.0, printed.flow, 1.0),
        flow=flow,
        exponent=option.fan_exponent,
    )
    return specific * flow * np.asarray(state.demand) ** np.asarray(option.demand_exponent)


def _certificate(option: OptionNumbers, flow: Any) -> certificate.Reference:
    """What the certificate says nearest to a flow [m³/s]: its one reference, or a place among its points."""
    if option.points is None:
        return certificate.Reference(option.reference_flow, option.effectiveness, option.fan_power)
    return certificate.reference_at(option.points, flow=flow)


def recovered(
    home: HomeNumbers, option: OptionNumbers, state: State, temp_difference: Array, *, heat_capacity: Any
) -> recovery.Recovered | None:
    """What the unit returns in one running state, (…, rows); None for an option whose air comes in as it is outside.

    temp_difference: indoor minus outdoor [K]; heat_capacity: of air moved [J/(m³ K)].
    """
    unit = exchange(home, option, state, heat_capacity=heat_capacity)
    return None if unit is None else unit.at(temp_difference)


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Exchange:
    """What brings heat back in one running state, weather apart: floats or columns (n, 1) of homes."""

    form: Callable[..., recovery.Recovered]
    settings: Mapping[str, Any]
    capacity_supply: Any  # W/K
    post_heat_to: Any | None  # °C

    def at(self, temp_difference: Array) -> recovery.Recovered:
        """What it returns at these differences of indoor and outdoor temperature [K], (…, rows)."""
        back = self.form(temp_difference, capacity_supply=self.capacity_supply, **self.settings)
        if self.post_heat_to is None:
            return back
        return recovery.postheated(back, capacity_supply=self.capacity_supply, set_point=self.post_heat_to)

    def counted(self, share: Any) -> Exchange:
        """The same exchange with its heat and electricity counted by a share above nil; temperatures stay."""
        counted = {name: value * share for name, value in self.settings.items() if name == "capacity_balanced"}
        return replace(self, capacity_supply=self.capacity_supply * share, settings={**self.settings, **counted})


def exchange(home: HomeNumbers, option: OptionNumbers, state: State, *, heat_capacity: Any) -> Exchange | None:
    """The exchange of one running state; None for an option whose air comes in as it is outside.

    heat_capacity: of air moved [J/(m³ K)].
    """
    through = joining.balanced_flow(state.supply, state.extract)
    supply, extract = heat_capacity * state.supply, heat_capacity * state.extract
    form: Callable[..., recovery.Recovered]
    if option.supply_warmth is not None and np.any(state.supply > 0.0):
        form, settings = recovery.prewarmed, {"temp_in": home.temp_in, "warmth": option.supply_warmth}
    elif not np.any(option.effectiveness > 0.0) or not np.any(through > 0.0):
        return None
    else:
        printed = _certificate(option, through)
        form = recovery.inside_envelope
        settings = {
            "temp_in": home.temp_in,
            "effectiveness": exchanger.effectiveness_at_duty(
                printed.ratio, reference_flow=printed.flow, supply=state.supply, extract=state.extract
            ),
            "ducts": recovery.DuctShares(
                intake=ducts.kept_share(conductance=option.ducts.intake, capacity_flow=supply),
                exhaust=ducts.kept_share(conductance=option.ducts.exhaust, capacity_flow=extract),
                supply=ducts.kept_share(conductance=option.ducts.supply, capacity_flow=supply),
                extract=ducts.kept_share(conductance=option.ducts.extract, capacity_flow=extract),
            ),
            "capacity_balanced": heat_capacity * through,
            "preheat_to": option.preheat_to,
            "throttle_at": option.throttle_at,
            "flow_ratio": np.asarray(state.extract) / np.where(through > 0.0, through, 1.0),
        }
        if option.outside:
            form, settings = recovery.outside_envelope, {**settings, "zone_factor": option.zone_factor}
    return Exchange(form=form, settings=settings, capacity_supply=supply, post_heat_to=option.post_heat_to)
