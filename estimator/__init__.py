"""Is heat recovery worth it here? From a surveyed home and a weather year to savings, carbon and payback.

>>> from estimator import Case, run, load_year
>>> result = run(Case(), load_year("Inland vale"))
>>> result.against_baseline["recovery"].baseline
'extract'
"""

from estimator.climate.sources import load_year, names
from estimator.climate.year import ClimateYear
from estimator.compare import Comparison, Result, run
from estimator.errors import ClimateFault, ExtrapolationWarning, Fault, InputFaults
from estimator.estimate import Estimate, OptionYear, estimate
from estimator.inputs.case import Case
from estimator.inputs.casefile import case_from_dict, case_from_text, case_to_toml, read_case
from estimator.inputs.home import Home, Leakage
from estimator.inputs.option import Option

__all__ = [
    "Case",
    "ClimateFault",
    "ClimateYear",
    "Comparison",
    "Estimate",
    "ExtrapolationWarning",
    "Fault",
    "Home",
    "InputFaults",
    "Leakage",
    "Option",
    "OptionYear",
    "Result",
    "case_from_dict",
    "case_from_text",
    "case_to_toml",
    "estimate",
    "load_year",
    "names",
    "read_case",
    "run",
]
