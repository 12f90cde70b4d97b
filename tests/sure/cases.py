"""Which cases come with the package, whatever they say, and how are they drawn?"""

import dataclasses

from estimator import Case, case_from_text
from estimator.drawn import Difference, difference
from estimator.draws import Ground, outcomes
from estimator.inputs.heating import Heating
from estimator.inputs.template import example_text
from estimator.sample import MANY, sample
from estimator.sure import Sure, sure_of
from estimator.units import Array

SHIPPED = {
    "gas": Case(),
    "direct electric": Case(heating=Heating(fuel="direct electric")),
    "heat pump": Case(heating=Heating(fuel="heat pump")),
    "fixed base": Case(heating=Heating(mode="fixed base")),
    "annual rule": dataclasses.replace(Case(), leakage=dataclasses.replace(Case().leakage, model="annual")),
    "example": case_from_text(example_text(), name="example.toml"),
}


def differences(place: Ground, where: Array, *, option: str = "recovery", baseline: str) -> Difference:
    """One option against one baseline in the cases `where`."""
    found = outcomes(place, where, names=(option, baseline))
    return difference(found[option], baseline=found[baseline])


def recovery_of(place: Ground, *, count: int = MANY, start: int = 1) -> Sure:
    """How sure heat recovery is against plain extract."""
    drawn = sample(place, names=("recovery", "extract"), count=count, start=start)
    return sure_of(drawn, option="recovery", baseline="extract")
