"""Are downloaded years kept whole, within a limit, and by several processes at once?"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from estimator.climate.cache import Cache, standard_cache


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    return Cache(tmp_path / "deep" / "folder", limit=1000)


def used(cache: Cache, key: str, when: float) -> None:
    assert cache.folder is not None
    os.utime(cache.folder / f"{key}.year", (when, when))


def test_what_is_kept_is_found_listed_and_thrown_away(cache: Cache) -> None:
    assert cache.get("a") is None
    assert cache.kept() == []
    assert cache.put("a", b"one") == ""
    assert cache.put("b", b"") == ""
    assert (cache.get("a"), cache.get("b")) == (b"one", b"")
    assert {(kept.key, kept.size) for kept in cache.kept()} == {("a", 35), ("b", 32)}  # 32 bytes of SHA-256 each
    assert cache.clear("a") == 1
    assert cache.clear("a") == 0
    assert cache.get("a") is None
    assert cache.clear() == 1
    assert cache.kept() == []


def test_keeping_again_replaces(cache: Cache) -> None:
    cache.put("a", b"old")
    cache.put("a", b"new")
    assert cache.get("a") == b"new"
    assert len(cache.kept()) == 1


def test_the_longest_unused_goes_first(cache: Cache) -> None:
    for when, key in enumerate("abc"):
        cache.put(key, b"x" * 268)
        used(cache, key, 1000.0 + when)
    assert cache.get("a") is not None  # reading makes it the newest
    cache.put("d", b"x" * 268)
    assert {kept.key for kept in cache.kept()} == {"a", "c", "d"}
    assert sum(kept.size for kept in cache.kept()) <= 1000


def test_what_is_too_large_is_not_kept_and_nothing_makes_room_for_it(cache: Cache) -> None:
    cache.put("a", b"x")
    assert "more than" in cache.put("b", b"x" * 1000)
    assert [kept.key for kept in cache.kept()] == ["a"]


@pytest.mark.parametrize(
    "harm", [lambda body: body[:-1], lambda body: body[:10], lambda body: b"", lambda b: b"y" + b[1:]]
)
def test_what_is_damaged_is_not_found_and_goes(cache: Cache, harm) -> None:  # type: ignore[no-untyped-def]
    cache.put("a", b"x" * 100)
    assert cache.folder is not None
    path = cache.folder / "a.year"
    path.write_bytes(harm(path.read_bytes()))
    assert cache.get("a") is None
    assert not path.exists()


def test_a_read_only_folder_is_read_and_said_not_to_be_written(cache: Cache, monkeypatch: pytest.MonkeyPatch) -> None:
    """Refused by hand as well, since an administrator may write anywhere."""
    cache.put("a", b"one")
    assert cache.folder is not None

    def refused(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    cache.folder.chmod(0o500)
    monkeypatch.setattr("tempfile.mkstemp", refused)
    monkeypatch.setattr("os.utime", refused)
    try:
        assert "cannot be written (Permission denied)" in cache.put("b", b"two")
        assert cache.get("a") == b"one"
        assert [kept.key for kept in cache.kept()] == ["a"]
    finally:
        cache.folder.chmod(0o700)


def test_without_a_folder_nothing_is_kept_and_that_is_said() -> None:
    cache = Cache(None)
    assert "not kept" in cache.put("a", b"one")
    assert cache.get("a") is None
    assert cache.kept() == []
    assert cache.clear() == 0


def test_a_part_that_nobody_will_finish_goes(cache: Cache) -> None:
    cache.put("a", b"one")
    assert cache.folder is not None
    left, fresh = cache.folder / "left.part", cache.folder / "fresh.part"
    left.write_bytes(b"")
    fresh.write_bytes(b"")
    os.utime(left, (1000.0, 1000.0))
    cache.put("b", b"two")
    assert not left.exists()
    assert fresh.exists()


@pytest.mark.parametrize("key", ["", "../a", "a/b", ".hidden", "a b", "a" * 200, "a\x00"])
def test_a_key_cannot_leave_the_folder(cache: Cache, key: str) -> None:
    with pytest.raises(ValueError, match="no name"):
        cache.put(key, b"one")


CROWD = """
import sys
from pathlib import Path
from estimator.climate.cache import Cache
cache, mine = Cache(Path(sys.argv[1]), limit=30_000), sys.argv[2].encode()
wrong = 0
for turn in range(150):
    key = f"k{turn % 5}"
    assert cache.put(key, mine * 5_000) == ""
    found = cache.get(key)
    wrong += found is not None and (len(found) != 5_000 or len(set(found)) != 1)
    if turn % 40 == 39:
        cache.clear()
print(wrong)
"""


def test_processes_share_a_folder_and_never_see_half_a_year(tmp_path: Path) -> None:
    crowd = [
        subprocess.Popen([sys.executable, "-c", CROWD, str(tmp_path), letter], stdout=subprocess.PIPE, text=True)
        for letter in "ab"
    ]
    answers = [process.communicate(timeout=60)[0].strip() for process in crowd]
    assert [process.returncode for process in crowd] == [0, 0]
    assert answers == ["0", "0"]
    assert list(tmp_path.glob("*.part")) == []


def test_the_folder_is_the_systems_unless_another_is_said(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """On Linux the XDG base directory specification names it."""
    monkeypatch.delenv("ESTIMATOR_CACHE", raising=False)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    if sys.platform == "linux":
        assert standard_cache().folder == tmp_path / "estimator" / "climate"
    monkeypatch.setenv("ESTIMATOR_CACHE", str(tmp_path / "else"))
    assert standard_cache().folder == tmp_path / "else"
    monkeypatch.setenv("ESTIMATOR_CACHE", "")
    assert standard_cache().folder is None
