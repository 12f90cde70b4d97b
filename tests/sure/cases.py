"""Which cases come with the package, whatever they say?"""

import dataclasses

from estimator import Case, case_from_text
from estimator.inputs.case import Heating
from estimator.inputs.template import example_text

SHIPPED = {
    "gas": Case(),
    "direct electric": Case(heating=Heating(fuel="direct electric")),
    "heat pump": Case(heating=Heating(fuel="heat pump")),
    "fixed base": Case(heating=Heating(mode="fixed base")),
    "annual rule": dataclasses.replace(Case(), leakage=dataclasses.replace(Case().leakage, model="annual")),
    "example": case_from_text(example_text(), name="example.toml"),
}
