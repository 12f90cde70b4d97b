"""Can another engine map the chunks, with the very lines that the guide shows?"""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pyarrow as pa
import pyarrow.parquet as pq
import pytest

from estimator import Case, load_year
from estimator.stock.demo import invented
from estimator.stock.reading import headings
from estimator.stock.run import screen, settings_for

GUIDE = Path(__file__).resolve().parents[2] / "DEVELOPERS.md"


def test_the_lines_in_the_guide_give_the_same_results(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    pytest.importorskip("joblib")
    found = re.findall(r"```python\n(from joblib.*?)```", GUIDE.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert len(found) == 1
    lines = found[0].strip().splitlines()
    assert len(lines) <= 10
    monkeypatch.chdir(tmp_path)
    source = Path("homes.parquet")
    pq.write_table(invented(300, start=2), source)
    known: dict[str, Any] = {"Path": Path, "Case": Case, "load_year": load_year}
    exec(compile("\n".join(lines), str(GUIDE), "exec"), known)
    settings = settings_for(headings(source), Case(), load_year("Upland"), recovery="recovery")
    screen(source, Path("results.parquet"), settings, workers=1)
    tables = [table.replace_schema_metadata(None) for table in known["tables"]]
    assert pa.concat_tables(tables).equals(pq.read_table("results.parquet"))
