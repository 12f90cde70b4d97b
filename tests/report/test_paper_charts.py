"""Does the line of nil stop for the words that stand across it?"""

from __future__ import annotations

import re

import pytest

from estimator.report.paper_charts import Span, spans

LINE = re.compile(r'x1="([\d.]+)" y1="([\d.]+)" x2="\1" y2="([\d.]+)" stroke-dasharray="2 3"')


def pieces(*rows: Span) -> list[tuple[float, float]]:
    drawn = spans(rows, "£", title="title", words="words", before="", width=360.0)
    return [(float(top), float(end)) for _, top, end in LINE.findall(drawn)]


@pytest.mark.parametrize(
    ("rows", "count"),
    [
        # Nil lies far to the right of a short name, and at the left end under a long one.
        ((Span(words="plain", low=-200.0, high=10.0, best=-90.0),), 1),
        ((Span(words="heat recovery in the loft", low=-5.0, high=200.0, best=90.0),) * 2, 2),
    ],
)
def test_no_line_through_words(rows: tuple[Span, ...], count: int) -> None:
    found = pieces(*rows)
    assert len(found) == count
    if count > 1:  # the baseline of each row's words, 58 px apart, keeps a line's height free
        assert not any(top < baseline - 2.0 < end for top, end in found for baseline in (18.0, 76.0))
