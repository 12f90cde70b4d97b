"""Does a machine with a full disk, a wrong clock or another country's settings change any figure, or bring it down?"""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

import pytest

from estimator.climate.cache import Cache
from tests.sources import ROOT

FULL = """
import resource, signal, sys
from pathlib import Path
from estimator.climate.cache import Cache
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (4096, 4096))  # the kernel refuses to write on, as on a full disk
print(Cache(Path(sys.argv[1])).put("large", b"x" * 100_000))
"""


def printed(**settings: str) -> bytes:
    """The document of the shipped example, made by another process under these settings."""
    done = subprocess.run(
        [sys.executable, "-m", "estimator", "estimate", "example", "--json"],
        cwd=ROOT,
        env={**os.environ, "PYTHONWARNINGS": "error", **settings},
        capture_output=True,
        check=True,
    )
    assert done.stderr == b""
    return done.stdout


@pytest.mark.slow
def test_no_figure_depends_on_country_or_time_zone() -> None:
    here = printed(LC_ALL="C.UTF-8", TZ="UTC")
    assert here.startswith(b"{")
    assert printed(LC_ALL="de_DE.UTF-8", LANG="de_DE.UTF-8", TZ="Pacific/Kiritimati") == here
    assert printed(LC_ALL="C", TZ="America/St_Johns", PYTHONIOENCODING="cp1252") == here


@pytest.mark.skipif(sys.platform == "win32", reason="the limit on files is one of Unix")
def test_a_full_disk_is_said_and_leaves_no_half_a_year(tmp_path: Path) -> None:
    cache = Cache(tmp_path)
    assert cache.put("kept", b"before") == ""
    told = subprocess.run(
        [sys.executable, "-c", FULL, str(tmp_path)], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert "cannot be written" in told.stdout
    assert "large" not in [path.stem for path in tmp_path.iterdir()]
    assert not list(tmp_path.glob("*.part"))
    assert cache.get("kept") == b"before"
    assert cache.get("large") is None


@pytest.mark.parametrize("years", [-40.0, 40.0])
def test_a_clock_that_jumps_loses_nothing_kept(tmp_path: Path, years: float) -> None:
    """What was kept under a clock far ahead or behind is found, listed, and goes like any other."""
    cache = Cache(tmp_path, limit=400)
    cache.put("first", b"1" * 100)
    then = time.time() + years * 365.25 * 86400.0
    os.utime(tmp_path / "first.year", (then, then))
    assert cache.put("second", b"2" * 100) == ""
    assert {kept.key for kept in cache.kept()} == {"first", "second"}
    assert cache.get("first") == b"1" * 100
    assert cache.put("third", b"3" * 250) == ""
    assert cache.get("third") == b"3" * 250
    assert sum(kept.size for kept in cache.kept()) <= 400
