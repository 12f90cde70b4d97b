"""Does the household's meter agree with a count hour by hour?"""

from __future__ import annotations

import math
from datetime import datetime, timedelta

import numpy as np
import pytest

from estimator.money import household
from estimator.money.clock import DAYLIGHT_SAVING, clock
from estimator.money.tariffs import Flat

DRAW = np.random.default_rng(11)
SUN = np.maximum(np.sin((np.arange(8760) % 24 - 6) * np.pi / 12), 0.0) * DRAW.uniform(0.0, 2.0, 8760)
OTHER = DRAW.gamma(1.0, 0.3, 8760)
FANS = np.full(8760, 0.04)
PLAIN = clock(first_weekday=3, daylight_saving=None)


@pytest.mark.parametrize("name", household.SHAPES)
def test_profile_by_brute_force(name: str) -> None:
    """2015 began on a Thursday."""
    shape = household.SHAPES[name]
    ours = household.load_profile(2700.0, shape=shape, clock=PLAIN)
    weights = []
    for h in range(8760):
        moment = datetime(2015, 1, 1) + timedelta(hours=h)
        day = {5: shape.saturday, 6: shape.sunday}.get(moment.weekday(), shape.working_day)
        weights.append(day[moment.hour] * shape.months[moment.month - 1])
    np.testing.assert_allclose(ours, 2700.0 * np.array(weights) / math.fsum(weights))
    assert ours.sum() == pytest.approx(2700.0)
    assert {len(shape.working_day), len(shape.saturday), len(shape.sunday)} == {24}
    assert len(shape.months) == 12


# VDEW 1999, profile H0 for 1,000 kWh a year, winter working day: mean W in the hours from 3:00 and from 19:00, and the
# seasonal curve at New Year; read from the table that the demandlib package republishes.
H0_NIGHT, H0_EVENING, H0_NEW_YEAR = 38.51, 187.08, 1.24


def test_measured_mean_like_its_publication() -> None:
    """Ours is a mean over the seasons' days, so that the shape of one season is met to a tenth."""
    ours = household.load_profile(1000.0, shape=household.SHAPES["measured mean of many homes"], clock=PLAIN)
    watts = ours[24:48] * 1000.0
    assert watts[3] == pytest.approx(H0_NIGHT * H0_NEW_YEAR, rel=0.1)
    assert watts[19] == pytest.approx(H0_EVENING * H0_NEW_YEAR, rel=0.1)


def test_summer_time_moves_habits_an_hour_ahead_of_the_sun() -> None:
    shape = household.SHAPES["out in the daytime"]
    moved = household.load_profile(
        1.0, shape=shape, clock=clock(first_weekday=3, daylight_saving=DAYLIGHT_SAVING["Europe"])
    )
    still = household.load_profile(1.0, shape=shape, clock=PLAIN)
    june = slice(160 * 24, 161 * 24)
    assert np.argmax(moved[june]) == np.argmax(still[june]) - 1


def test_meter_by_brute_force() -> None:
    """One bill with and one without the fans; the share of the fans the roof carries; nothing counted twice."""
    imported = exported = before_in = before_out = carried_by_sun = 0.0
    for other, fans, sun in zip(OTHER.tolist(), FANS.tolist(), SUN.tolist(), strict=True):
        left = sun - other
        if left > 0.0:
            before_out += left
            carried_by_sun += fans if left > fans else left
        else:
            before_in -= left
        left -= fans
        if left > 0.0:
            exported += left
        else:
            imported -= left
    net = household.net_load(OTHER, option=FANS, pv=SUN)
    assert household.bought(net).sum() == pytest.approx(imported, rel=1e-12)
    assert household.sold(net).sum() == pytest.approx(exported, rel=1e-12)
    split = household.carried(OTHER, option=FANS, pv=SUN)
    assert split.not_sold == pytest.approx(carried_by_sun, rel=1e-9)
    assert split.bought + split.not_sold == pytest.approx(0.04 * 8760)
    assert split.share == pytest.approx(carried_by_sun / (0.04 * 8760), rel=1e-9)
    assert 0.1 < split.share < 0.9

    tariff = Flat(price=0.26, export_price=0.10)
    without = household.net_load(OTHER, option=0.0, pv=SUN)
    extra = tariff.bill(household.bought(net), exported=household.sold(net)) - tariff.bill(
        household.bought(without), exported=household.sold(without)
    )
    by_hand = 0.26 * (imported - before_in) + 0.10 * (before_out - exported)
    assert extra == pytest.approx(by_hand, rel=1e-9)
    assert extra == pytest.approx(0.26 * split.bought + 0.10 * split.not_sold, rel=1e-9)


def test_no_roof_no_option() -> None:
    assert household.carried(OTHER, option=FANS, pv=0.0).share == 0.0
    assert math.isnan(household.carried(OTHER, option=np.zeros(8760), pv=SUN).share)


def test_homes_and_shorter_rows() -> None:
    sizes = np.array([[0.0], [1.0], [3.0]])
    split = household.carried(OTHER, option=FANS, pv=sizes * SUN)
    assert split.share.shape == (3,)
    assert np.all(np.diff(split.share) > 0.0)
    rows = household.row_sums(np.stack([OTHER, FANS]), rows=2190)
    np.testing.assert_allclose(rows[:, 1], [OTHER[4:8].sum(), 0.16])
