"""Do page and terminal say of the evidence what is true of it, good and bad?"""

from __future__ import annotations

import dataclasses
import re
from collections import Counter

import pytest

from estimator.__main__ import main
from estimator.evidence.checks import SURENESS
from estimator.evidence.run import Result
from estimator.report import trust
from estimator.report.rows import Rows, as_text
from tests.checked import results


def spoilt(result: Result) -> Result:
    """The same with a value of ours that is wrong by four limits."""
    return dataclasses.replace(result, ours=result.printed + 4.0 * result.tolerance)


def test_first_line_counts_every_check_once() -> None:
    said = trust.answer(results())
    counts = Counter(result.check.sureness for result in results())
    numbers = [int(word) for word in re.findall(r"\d+", said)]
    assert numbers[0] == len(results()) == sum(numbers[1:])
    assert numbers[1:4] == [counts[kind] for kind in SURENESS[:3]]
    assert said.startswith("All ")
    assert "No metered home" in said


def test_a_single_wrong_value_leads_everywhere() -> None:
    some = [spoilt(results()[0]), *results()[1:]]
    assert trust.answer(some).startswith(f"1 of {len(results())} checks does not agree")
    (told,) = trust.failing(some)
    assert results()[0].check.title in told
    group = results()[0].check.group
    members = trust.groups(some)[group]
    assert trust.group_title(group, members) == f"{group}: {len(members) - 1} of {len(members)} agree"
    assert "NO" in [row[3] for table in trust.tables(members) for row in table.rows]


def test_a_function_that_fails_is_named_with_its_reason() -> None:
    broken = dataclasses.replace(results()[0], ours=float("nan"), fault="ValueError: too cold")
    assert "too cold" in trust.failing([broken])[0]
    assert "not known" in trust.failing([broken])[0]


def test_every_check_stands_in_one_table_with_its_source() -> None:
    tables = [table for members in trust.groups(results()).values() for table in trust.tables(members)]
    assert sum(len(table.rows) for table in tables) == len(results())
    for result in results():
        (table,) = [t for t in tables if t.caption == result.check.title and result.check.source in t.note]
        assert result.check.sureness[1:] in table.note
        assert table.head[3] == "Agrees"
    assert all(len({row[0] for row in table.rows}) == len(table.rows) for table in tables), "two lines look alike"


@pytest.mark.parametrize(
    ("printed", "ours", "shown"),
    [
        ("29.0 l/s", 29.04, "29.040"),
        ("1,758 GBP", 1757.5, "1,757.50"),
        ("-4 °C", -4.25, "−4.25"),
        ("1.20e3 Pa", 1198.0, "1,198.0"),
    ],
)
def test_ours_is_shown_finer_than_printed(printed: str, ours: float, shown: str) -> None:
    case = dataclasses.replace(results()[0].case, printed=printed, within=None)
    found = dataclasses.replace(results()[0], case=case, ours=ours, tolerance=case.tolerance)
    (table,) = trust.tables([found])
    assert table.rows[0][2] == shown


def test_the_few_at_first_sight_are_all_there_and_agree() -> None:
    rows = trust.few(results()).rows
    assert len(rows) == len(trust.FEW)
    for file in trust.FEW:
        (title,) = {result.check.title for result in results() if result.check.file == f"{file}.toml"}
        assert any(title in row[0] for row in rows)


def test_the_command_prints_all_of_it(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["evidence"]) == 0
    printed = capsys.readouterr().out
    assert printed.startswith("All ")
    assert all(result.check.title in printed for result in results())
    assert all(words in printed for words in trust.NOT_VERIFIED)


def test_the_command_ends_with_2_where_one_fails(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("estimator.evidence.run.run_all", lambda: [spoilt(results()[0]), *results()[1:]])
    assert main(["evidence"]) == 2
    assert "does not agree" in capsys.readouterr().out


def test_rows_refuse_a_line_of_another_width() -> None:
    assert as_text(Rows(caption="c", head=("a", "b"), rows=(("x", "10"),)))[2] == "x  10"
    with pytest.raises(ValueError, match="cells"):
        Rows(caption="c", head=("a", "b"), rows=(("x",),))
