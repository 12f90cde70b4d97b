"""What do the ducts between unit and house give away?"""

from __future__ import annotations

from typing import Any

import numpy as np

from estimator.units import Numeric

# EN ISO 12241 form; surface coefficients as used for indoor air, from memory.
OUTER_FILM = 10.0  # W/(m² K)
INNER_FILM = 25.0  # W/(m² K), duct air at a few m/s


def linear_transmittance(
    *,
    bore: Numeric,
    insulation: Numeric,
    conductivity: Numeric,
    outer_film: Numeric = OUTER_FILM,
    inner_film: Numeric = INNER_FILM,
) -> Any:
    """Heat flow per metre and kelvin of an insulated round duct [W/(m K)].

    Conduction through a cylinder with a film on each side (EN ISO 12241 form): bore and insulation thickness [m],
    conductivity [W/(m K)], films [W/(m² K)] (an infinite inner film leaves it out). The duct wall itself is left out.
    """
    inner = np.asarray(bore, dtype=float)
    outer = inner + 2.0 * np.asarray(insulation)
    resistance = (
        1.0 / (np.asarray(inner_film) * np.pi * inner)
        + np.log(outer / inner) / (2.0 * np.pi * np.asarray(conductivity))
        + 1.0 / (np.asarray(outer_film) * np.pi * outer)
    )
    return 1.0 / resistance


def kept_share(*, conductance: Numeric, capacity_flow: Numeric) -> Any:
    """Share of the temperature difference to its surroundings that air still has at the end of a duct.

    dT/dx = -U'(T - T_room)/(c q) gives E = exp(-U' L/(c q)); conductance U' L [W/K], capacity_flow c q [W/K]. Without
    flow nothing arrives: 0 for a duct with any conductance, 1 for none.
    """
    flow = np.asarray(capacity_flow, dtype=float)
    loss = np.asarray(conductance, dtype=float)
    shape = np.broadcast(flow, loss).shape
    empty = np.where(loss > 0.0, np.inf, 0.0)
    return np.exp(-np.divide(loss, flow, out=np.array(np.broadcast_to(empty, shape)), where=flow > 0.0))
