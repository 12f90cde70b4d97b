"""Does the picture over leakage show the sweep's own numbers, and can it be read whatever home stands in it?

A picture is read here as a person reads it: by the figures on its axes, the length of its bar and the words in it.
"""

from __future__ import annotations

import tomllib
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import get_args
from xml.etree import ElementTree

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from estimator import Case, case_from_dict, load_year
from estimator.at_leakage import ground
from estimator.climate.shorten import shortened
from estimator.inputs.quantity import Tag
from estimator.leak_range import leakage_span
from estimator.money.worth import simple_payback
from estimator.report import figures
from estimator.report.findings_tight import NAMES, in_words
from estimator.report.tight import Tightness, sealed, sweeps, tightness
from estimator.report.tight_picture import MEASURES, Form, picture
from estimator.report.tight_plan import BEYOND, border_words
from estimator.sweep import LEAKAGES, TOLD, Threshold
from estimator.units import Array
from tests.report.tight_reading import SVG, Read, assert_readable, level

FOLDER = Path(__file__).parents[1] / "dwellings"
HOMES = ("untested", *(file.stem for file in sorted(FOLDER.glob("*.toml"))))
CLIMATES = ("Mild coast", "Inland vale", "Upland", "Cold plain")
FORMS: tuple[Form, ...] = ("desk", "phone")
NEAR = 0.4  # px; places of words are written to a tenth
LETTERS = 12.0  # px
NARROWEST = {"desk": 601.0, "phone": 358.0}  # px, at which a form is shown: `ui/pictures.py`, and a screen of 390 px
LARGEST = 15_000  # bytes without letters


@cache
def found(home: str, climate: str) -> Tightness:
    """The year stands in blocks of a day, so that all homes can meet all climates."""
    written = {"case": {}} if home == "untested" else tomllib.loads((FOLDER / f"{home}.toml").read_text("utf-8"))
    case = case_from_dict({"version": 1, **written["case"]}) if home != "untested" else Case()
    place = ground(case, shortened(load_year(climate), hours_per_block=24))
    option = next(name for name in case.options if name not in (case.baseline, case.today))
    return tightness(
        place, leakage_span(case), option=option, swept=sweeps(place, option=option), known=sealed(place, option=option)
    )


ALL = [(home, climate) for home in HOMES for climate in CLIMATES]
EVERY = pytest.mark.parametrize(("home", "climate"), ALL, ids=[f"{home}-{climate}" for home, climate in ALL])


@EVERY
def test_the_curves_are_the_sweep(home: str, climate: str) -> None:
    shown = found(home, climate)
    most = BEYOND * shown.case.worth.life
    for what, form in ((what, form) for what in NAMES for form in FORMS):
        read = Read(picture(shown, what, form=form, look="light", embed_font=False))
        leak, step = read.pixel()
        for colour, against in (("kept", shown.baseline), ("quiet", shown.today)):
            swept = against.sweep.figures
            values = getattr(swept, what)
            drawn = read.curve(colour)
            seen = values <= most if what == "payback" else np.full(values.size, True)
            if what == "through_exchanger" and colour == "quiet":
                continue
            for q50, value in zip(swept.q50[seen], values[seen], strict=True):
                near = np.abs(np.log(drawn[:, 0] / q50)) <= NEAR * leak
                assert np.any(near & (np.abs(drawn[:, 1] - value) <= NEAR * step)), (what, form, q50, value)
            if what != "payback":
                assert len(drawn) == swept.q50.size


@EVERY
def test_words_never_collide_never_leave_the_picture_and_no_line_runs_through_them(home: str, climate: str) -> None:
    for what, form in ((what, form) for what in NAMES for form in FORMS):
        assert_readable(picture(found(home, climate), what, form=form, look="light", embed_font=False))


@EVERY
def test_house_and_borders_stand_where_they_are(home: str, climate: str) -> None:
    shown = found(home, climate)
    span, life = shown.span, figures.years(shown.case.worth.life)
    for what, form in ((what, form) for what in NAMES for form in FORMS):
        read = Read(picture(shown, what, form=form, look="light", embed_font=False))
        leak, _ = read.pixel()
        assert read.shade[1] * leak == pytest.approx(np.log(span.high / span.low), abs=3.5 * leak)
        assert ("not tested" in read.said()) == (not span.tested)
        hatched = [rect for rect in read.root.iter(f"{SVG}rect") if "untested" in rect.get("fill", "")]
        assert bool(hatched) == (not span.tested)
        for name, words, places in (
            ("saving", "a net saving", ("net_saving",)),
            ("payback", f"payback within {life}", ("net_saving", "payback")),
        ):
            border = getattr(shown.baseline.sweep, name)
            for _, told in border_words(border, words):
                assert (told in read.said()) == (what in places)
        ends = [float(line.attrib["x1"]) for line in read.lines("ink-line") if not level(line)]
        drawn = {"net_saving": ("saving", "payback"), "payback": ("payback",)}.get(what, ())
        crossings = [at for name in drawn for at in getattr(shown.baseline.sweep, name).crossings]
        (left, low), *_ = read.rows()[-3]
        expected = {round(left + np.log(at / low) / leak) for at in crossings}
        assert all(min(abs(x - end) for x in expected) <= 1.0 for end in ends)
        assert all(min(abs(x - end) for end in ends) <= 1.0 for x in expected)


def test_each_leakage_is_said_three_ways() -> None:
    shown = found("untested", "Inland vale")
    home = shown.case.home
    q50, n50, mean = Read(picture(shown, "net_saving", look="light")).rows()
    assert [figure for _, figure in q50] == list(TOLD)
    # The two measures of one test differ by envelope over volume (EN ISO 9972, definitions).
    ratio = float(home.envelope_area or 0) / float(home.volume or 0)
    assert [figure for _, figure in n50] == pytest.approx([ratio * at for at in TOLD], abs=0.0501)
    # The mean grows with the holes, in proportion; the rule of thumb n50 / 20 is common practice.
    assert [figure for _, figure in mean] == pytest.approx([mean[-1][1] * at / TOLD[-1] for at in TOLD], abs=0.011)
    assert mean[-1][1] == pytest.approx(n50[-1][1] / 20.0, rel=0.5)


@pytest.mark.parametrize("form", FORMS)
def test_who_thinks_in_feet_reads_feet(form: Form) -> None:
    shown = found("untested", "Inland vale")
    imperial = figures.THINKS_IMPERIAL.set(True)
    try:
        svg = picture(shown, "net_saving", form=form, look="light", embed_font=False)
    finally:
        figures.THINKS_IMPERIAL.reset(imperial)
    rows = Read(svg).rows()
    assert len(rows) == 3
    assert "cfm/ft² at 50 Pa".replace(" ", "") in "".join(words for words, _, _ in Read(svg).texts).replace(" ", "")
    # A cubic foot a minute through a square foot is a foot a minute: 0.3048 m times 60 in an hour (foot of 1959). The
    # measures of one test differ by envelope over volume (EN ISO 9972, definitions).
    ratio = float(shown.case.home.envelope_area or 0) / float(shown.case.home.volume or 0)
    for (_, feet), (_, n50) in zip(*rows[:2], strict=True):
        assert n50 == pytest.approx(feet * 0.3048 * 60.0 * ratio, abs=0.0501)
    ends = [f"{end / (0.3048 * 60.0):.2g}" for end in (shown.span.low, shown.span.high)]
    assert f"not tested: {ends[0]} to {ends[1]}" in Read(svg).said()
    assert_readable(svg)


WORDS = st.text("abcdefghij klmno ", min_size=1, max_size=80)
CROSSINGS = st.lists(st.floats(0.5, 20.0), max_size=3, unique=True)


ENDS = st.floats(-1.0, 1.0).map(lambda end: round(end, 3))
SIZES = st.sampled_from((0.0, 1.0, 300.0, 9_000.0))
TAGS: st.SearchStrategy[Tag] = st.sampled_from(get_args(Tag))


def savings(tight: float, leaky: float, size: float) -> Array:
    """Falling, rising or level, so that two of them may cross or lie on each other, from nothing to fortunes."""
    return size * np.linspace(tight, leaky, LEAKAGES.size)


@given(data=st.data())
def test_any_home_can_be_read(data: st.DataObject) -> None:
    shown = found("untested", "Inland vale")
    low = data.draw(st.floats(0.01, 60.0))
    span = replace(shown.span, low=low, high=low * data.draw(st.floats(1.0, 3.0)), tag=data.draw(TAGS))
    changed = {}
    for name in ("baseline", "today"):
        against = getattr(shown, name)
        saving = data.draw(st.builds(savings, ENDS, ENDS, SIZES))
        capital = data.draw(st.sampled_from((-100.0, 0.0, 2_000.0)))
        payback = np.asarray(simple_payback(capital, net_saving=saving))
        swept = replace(
            against.sweep.figures, net_saving=saving, heat_saved=saving, payback=payback, net_capital=capital
        )
        borders = {
            border: Threshold(what="x", crossings=tuple(sorted(data.draw(CROSSINGS))), holds_at_lowest=holds)
            for border, holds in (("saving", data.draw(st.booleans())), ("payback", data.draw(st.booleans())))
        }
        changed[name] = replace(against, words=data.draw(WORDS), sweep=replace(against.sweep, figures=swept, **borders))
    shown = replace(shown, span=span, **changed)
    for what, form in ((what, form) for what in NAMES for form in FORMS):
        assert_readable(picture(shown, what, form=form, look="light", embed_font=False))


@pytest.mark.parametrize("form", FORMS)
@pytest.mark.parametrize("what", NAMES)
def test_a_picture_is_small_told_in_words_and_lettered_large_enough(what: str, form: Form) -> None:
    shown = found("untested", "Inland vale")
    svg = picture(shown, what, form=form, embed_font=False)
    read = Read(svg)
    assert len(svg.encode()) <= LARGEST
    assert read.root.findtext(f"{SVG}desc") == in_words(shown, what)
    sizes = {float(look["font-size"]) for _, _, look in read.texts}
    assert min(sizes) * NARROWEST[form] / MEASURES[form].width >= LETTERS
    # The colours whose contrast on paper and on fields the tests of the palette hold.
    assert {look["class"] for _, _, look in read.texts} <= {"ink", "quiet", "kept"}


def test_what_somebody_called_an_option_stays_words() -> None:
    shown = found("untested", "Inland vale")
    wicked = '<script>alert(1)</script> & "plain"'
    svg = picture(replace(shown, baseline=replace(shown.baseline, words=wicked)), "net_saving")
    assert not list(ElementTree.fromstring(svg).iter(f"{SVG}script"))
    assert "<script" not in svg
