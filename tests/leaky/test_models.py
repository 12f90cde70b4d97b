"""Does the house stand side by side under each model as a direct estimate has it, and each joining as published?"""

import dataclasses

import pytest

from estimator import Case, run
from estimator.climate.year import ClimateYear
from estimator.inputs.home import InfiltrationModel
from estimator.models import JOINS, QUADRATURE, STEADY, View, side_by_side


@pytest.fixture(scope="module")
def views(year: ClimateYear) -> tuple[View, ...]:
    return side_by_side(Case(), year, option="recovery", baseline="extract")


@pytest.mark.parametrize("model", ["basic", "enhanced", "annual"])
def test_each_model_by_quadrature_equals_a_direct_estimate(
    model: InfiltrationModel, views: tuple[View, ...], year: ClimateYear
) -> None:
    (view,) = [view for view in views if (view.model, view.joined) == (model, QUADRATURE)]
    leakage = dataclasses.replace(Case().leakage, model=model)
    direct = run(dataclasses.replace(Case(), leakage=leakage), year).against_baseline["recovery"]
    assert view.heat_saved == pytest.approx(direct.heat_saved, rel=1e-9)
    assert view.net_saving == pytest.approx(direct.net_saving, rel=1e-9, abs=1e-9)


def test_every_model_and_every_joining_is_there_once(views: tuple[View, ...]) -> None:
    seen = [(view.model, view.joined) for view in views]
    assert len(seen) == len(set(seen)) == 3 * (len(JOINS) - 1) + 1
    assert [model for model, joined in seen if joined == STEADY] == ["basic"]


def test_adding_fans_in_full_never_gives_less_air_than_quadrature(views: tuple[View, ...]) -> None:
    # Quadrature hypot(a, b) and the sub-additive rule b + a²/(a + b): for positive flows the second is the larger.
    by_key = {(view.model, view.joined): view for view in views}
    for model in ("basic", "enhanced", "annual"):
        sub = by_key[model, "sub-additive, ASHRAE 62.2"]
        assert sub.baseline_air > by_key[model, QUADRATURE].baseline_air


def test_the_steady_joining_gives_the_published_flow(year: ClimateYear) -> None:
    # EN ISO 13789 as retold: 300 m³, n50 of 3 1/h, imbalance 90 m³/h: 20.05 m³/h beyond the imbalance.
    home = dataclasses.replace(Case().home, volume=300.0)
    leakage = dataclasses.replace(Case().leakage, measure="n50", value=3.0, basis="measured")
    extract = Case().options["extract"]
    steady = dataclasses.replace(
        extract,
        flows=dataclasses.replace(extract.flows, extract=90.0, boost_share=0.0, ventilator_area=0.0),
    )
    case = dataclasses.replace(Case(), home=home, leakage=leakage, options={**Case().options, "extract": steady})
    (view,) = [
        view for view in side_by_side(case, year, option="recovery", baseline="extract") if view.joined == STEADY
    ]
    assert view.baseline_air == pytest.approx(110.05, abs=0.005)
