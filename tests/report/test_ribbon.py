"""Is the ribbon drawn to scale, readable, and honest when nothing is left?

Widths are measured on the outlines themselves by the shoelace formula; nothing here is taken from the code that draws.
"""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from estimator.report.drawing import text_width, wrapped
from estimator.report.flow import Curve, Step, stream
from estimator.report.fresh_air import FreshAir, Take, in_words
from estimator.report.ribbon import Form, ribbon

SVG = "{http://www.w3.org/2000/svg}"
KWH = st.one_of(st.just(0.0), st.floats(0.5, 40_000.0))
COST = st.one_of(st.just(0.0), st.floats(-200.0, 900.0))


def account(**changes: object) -> FreshAir:
    """A middling home with numbers that can be followed by hand."""
    numbers: dict[str, object] = {
        "past": 1200.0,
        "lost": 400.0,
        "kept": 1800.0,
        "saved": 1300.0,
        "baseline": "new plain extract",
        "heat_price": 0.09,
        "takes": (Take(name="fans", cost=38.0), Take(name="filters and service", cost=40.0, meaning="upkeep")),
        "currency": "£",
    }
    return FreshAir(**{**numbers, **changes})  # type: ignore[arg-type]


ACCOUNTS = st.builds(
    account,
    past=KWH,
    lost=KWH,
    kept=KWH,
    heater=KWH,
    saved=st.floats(-5_000.0, 40_000.0),
    heat_price=st.one_of(st.just(0.0), st.floats(1e-4, 1.0)),
    takes=st.lists(st.builds(Take, name=st.just("frost heater"), cost=COST), max_size=4).map(tuple),
)


def corners(outline: tuple[Step, ...]) -> list[tuple[float, float]]:
    return [step.to if isinstance(step, Curve) else step for step in outline]


def boxes(svg: str) -> list[tuple[float, float, float, float]]:
    """Left, top, right, bottom of every line of text."""
    found = []
    for text in ElementTree.fromstring(svg).iter(f"{SVG}text"):
        x, y, size = float(text.attrib["x"]), float(text.attrib["y"]), float(text.attrib["font-size"])
        width = text_width(text.text or "", size=size, weight=700 if text.attrib["font-weight"] == "700" else 500)
        found.append((x, y - 0.72 * size, x + width, y + 0.2 * size))
    return found


def test_every_straight_piece_is_as_wide_as_its_number() -> None:
    shape = stream(
        100.0, [30.0, 20.0, -10.0], scale=2.0, lead=50, tail=40, bend=10, drop=20, room=lambda _, px: px + 40
    )
    assert [part.far - part.near for part in shape.parts] == [60.0, 40.0, 20.0]
    assert [part.level for part in shape.parts] == [140.0, 100.0, 120.0]
    assert all(part.unfed is None for part in shape.parts)
    assert [shape.parts[0].fed[index] for index in (2, 3)] == [(120.0, shape.depth), (60.0, shape.depth)]  # type: ignore[index]


def test_what_the_stream_cannot_feed_is_drawn_apart_from_what_it_can() -> None:
    shape = stream(10.0, [25.0, 5.0], scale=1.0, lead=0, tail=0, bend=10, drop=20, room=lambda _, px: px + 40)
    first, second = shape.parts
    assert first.fed is not None
    assert first.unfed is not None
    assert second.fed is None
    assert second.unfed is not None
    fed = max(along for along, _ in corners(first.fed)) - first.near
    unfed = max(along for along, _ in corners(first.unfed)) - min(along for along, _ in corners(first.unfed))
    assert (fed, unfed) == (10.0, 15.0)
    assert (first.level, second.level) == (-15.0, -20.0)


@pytest.mark.parametrize("form", ["desk", "phone"])
@given(air=ACCOUNTS)
@example(air=account(past=0.0, lost=0.0, saved=1800.0, takes=()))
@example(air=account(past=0.0, lost=0.0, kept=0.0, saved=0.0, takes=()))
@example(air=account(saved=-160.0))
@example(air=account(heat_price=0.0))
def test_labels_never_collide_and_never_leave_the_picture(air: FreshAir, form: Form) -> None:
    svg = ribbon(air, form=form, look="light", embed_font=False)
    root = ElementTree.fromstring(svg)
    _, _, width, height = map(float, root.attrib["viewBox"].split())
    found = boxes(svg)
    for number, (left, top, right, bottom) in enumerate(found):
        assert left >= -0.1
        assert top >= -0.1
        assert right <= width + 1.0
        assert bottom <= height + 1.0
        for other_left, other_top, other_right, other_bottom in found[number + 1 :]:
            beside = right <= other_left + 0.1 or other_right <= left + 0.1
            assert beside or bottom <= other_top + 0.1 or other_bottom <= top + 0.1
    for path in root.iter(f"{SVG}path"):
        places = [float(text) for text in re.findall(r"-?\d+\.?\d*", path.attrib["d"])]
        assert max(map(abs, places), default=0.0) <= 4.0 * max(width, height)


def test_the_picture_says_what_it_shows_to_those_who_do_not_see_it() -> None:
    root = ElementTree.fromstring(ribbon(account()))
    assert root.attrib["role"] == "img"
    named = root.attrib["aria-labelledby"].split()
    assert [root.find(f"{SVG}{tag}").attrib["id"] for tag in ("title", "desc")] == named  # type: ignore[union-attr]
    told = root.findtext(f"{SVG}desc") or ""
    for figure in ("3,400", "1,200", "400", "1,800", "500", "1,300", "£117", "£38", "£40", "£39 a year"):
        assert figure in told


def test_a_loss_is_shown_as_plainly_as_a_saving() -> None:
    told = in_words(account(saved=-100.0))
    assert "100\u00a0kWh: more heating, for £9" in told
    assert "£87 a year: short: it costs more than it saves" in told
    assert 'stroke-dasharray="4 3"' in ribbon(account(saved=-100.0), look="light")
    assert 'stroke-dasharray="4 3"' not in ribbon(account(), look="light")


def test_parts_that_are_nil_drop_out() -> None:
    told = in_words(account(past=0.0, saved=1800.0))
    assert "leaks past" not in told
    assert "air leaks in" not in told
    assert "£162" in told


def test_words_typed_by_a_person_stay_words() -> None:
    wicked = '<script>alert(1)</script> & "plain" \x00\x1b'
    svg = ribbon(account(baseline=wicked, takes=(Take(name=wicked, cost=3.0, detail=wicked),)))
    root = ElementTree.fromstring(svg)
    assert not list(root.iter(f"{SVG}script"))
    assert "<script" not in svg
    assert "alert(1)" in (root.findtext(f"{SVG}desc") or "")


def test_nothing_is_fetched_from_elsewhere_and_two_pictures_share_no_name() -> None:
    one, other = ribbon(account()), ribbon(account(past=900.0))
    assert set(re.findall(r"https?://[^\"']+", one)) == {"http://www.w3.org/2000/svg"}
    assert set(re.findall(r"url\(([^)]{1,5})", one)) <= {"data:", *re.findall(r"url\((#.{4})", one)}
    names = [set(re.findall(r' id="([^"]+)"', svg)) for svg in (one, other)]
    assert names[0].isdisjoint(names[1])
    assert set(re.findall(r"url\(#([^)]+)\)", one)) <= names[0]


def test_long_words_and_letters_outside_the_cut_are_measured_on_the_wide_side() -> None:
    assert wrapped("a bb ccc", width=text_width("a bb", size=14), size=14) == ["a bb", "ccc"]
    assert wrapped("unbreakable", width=1.0, size=14) == ["unbreakable"]
    assert text_width("漢", size=10) > text_width("a", size=10)
