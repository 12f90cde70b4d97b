"""Can every colour be read, told apart in grey, and found again in the dashboard's own settings?"""

from __future__ import annotations

import itertools
import tomllib
from pathlib import Path

import pytest

from estimator.report import palette
from estimator.report.palette import DARK, LIGHT, Palette

SETTINGS = tomllib.loads(Path(__file__).parents[2].joinpath(".streamlit", "config.toml").read_text("utf-8"))
BOTH = pytest.mark.parametrize("scheme", [LIGHT, DARK], ids=lambda scheme: scheme.scheme)
CAPTION_OPACITY = 0.6  # of the text colour, as the dashboard's framework draws captions; seen in its pages


def test_contrast_is_that_of_the_accessibility_guidelines() -> None:
    """WCAG 2.2: black on white 21:1; #767676 is the darkest-known grey that just passes 4.5:1 on white (W3C, G18)."""
    assert palette.contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert palette.contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)
    assert palette.contrast("#ffffff", "#777777") == pytest.approx(4.48, abs=0.005)


@BOTH
def test_text_can_be_read_on_paper_and_in_fields(scheme: Palette) -> None:
    for text, ground in itertools.product(("ink", "quiet", "kept"), ("ground", "raised")):
        assert palette.contrast(getattr(scheme, text), getattr(scheme, ground)) >= palette.LEAST_TEXT_CONTRAST
    assert palette.contrast(scheme.electricity, scheme.ground) >= palette.LEAST_TEXT_CONTRAST
    assert palette.contrast("#ffffff", scheme.control) >= palette.LEAST_TEXT_CONTRAST


@BOTH
def test_captions_can_be_read(scheme: Palette) -> None:
    caption = palette.mixed(scheme.ink, scheme.ground, opacity=CAPTION_OPACITY)
    assert palette.contrast(caption, scheme.ground) >= palette.LEAST_TEXT_CONTRAST


@BOTH
def test_meanings_stand_out_from_the_paper_and_from_each_other_in_grey(scheme: Palette) -> None:
    """A colour-blind eye and a grey copy keep at least the luminance."""
    meanings = ("kept", "lost", "electricity")
    for meaning in (*meanings, "upkeep"):
        assert palette.contrast(getattr(scheme, meaning), scheme.ground) >= palette.LEAST_PART_CONTRAST
    for one, other in itertools.combinations(meanings, 2):
        assert palette.contrast(getattr(scheme, one), getattr(scheme, other)) >= 1.4
    surfaces = [palette.SURFACES[meaning] for meaning in (*meanings, "upkeep")]
    assert len(set(surfaces)) == len(surfaces)


def test_options_differ_in_more_than_colour() -> None:
    marks = (palette.BASELINE_MARK, *palette.OPTION_MARKS)
    assert len({mark.symbol for mark in marks}) == len(marks)
    assert all(hasattr(LIGHT, mark.colour) and hasattr(DARK, mark.colour) for mark in marks)


@BOTH
def test_the_dashboard_is_set_to_the_same_colours(scheme: Palette) -> None:
    theme = SETTINGS["theme"][scheme.scheme]
    assert theme["backgroundColor"] == scheme.ground
    assert theme["secondaryBackgroundColor"] == scheme.raised
    assert theme["textColor"] == scheme.ink
    assert theme["primaryColor"] == scheme.control
    assert theme["borderColor"] == scheme.rule
    assert theme["linkColor"] == scheme.kept
    assert theme["chartCategoricalColors"] == [scheme.kept, scheme.electricity, scheme.lost, scheme.upkeep]
    sidebar = theme["sidebar"]
    caption = palette.mixed(sidebar["textColor"], sidebar["backgroundColor"], opacity=CAPTION_OPACITY)
    assert palette.contrast(caption, sidebar["backgroundColor"]) >= palette.LEAST_TEXT_CONTRAST


def test_the_dashboard_is_set_in_the_letters_that_it_brings() -> None:
    static = Path(__file__).parents[2] / "estimator" / "ui" / "site" / "static"
    faces = {face["family"]: face for face in SETTINGS["theme"]["fontFaces"]}
    assert set(faces) == {palette.SERIF, palette.SANS}
    assert SETTINGS["theme"]["font"].split(",")[0].strip("'\" ") == palette.SANS
    assert SETTINGS["theme"]["headingFont"].split(",")[0].strip("'\" ") == palette.SERIF
    for face in faces.values():
        file = static / face["url"].removeprefix("app/static/")
        assert file.read_bytes()[:4] == b"wOF2"
        licence = (static / f"{file.stem}-OFL.txt").read_text("utf-8")
        assert "SIL Open Font License, Version 1.1" in licence
    assert sum(file.stat().st_size for file in static.glob("*.woff2")) < 80_000
