"""Which downloaded years are kept on this machine, and how are they listed and thrown away?

Several processes may share a folder: a file is written beside its place and then moved there in one step, so
that nobody reads half of one. A file begins with the digest of what follows; one that does not agree is
thrown away. Where a folder cannot be written nothing is kept, and that is said.
"""

from __future__ import annotations

import hashlib
import os
import re
import tempfile
import time
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

LIMIT = 50_000_000  # bytes; some 150 years of hours
FOLDER_VARIABLE = "ESTIMATOR_CACHE"  # another folder; empty for none at all
_SUFFIX = ".year"
_UNFINISHED = ".part"
_OLD = 3600.0  # s after which a part belongs to a process that is no more
_DIGEST = 32  # bytes of SHA-256
_KEY = re.compile(r"[\w.+-]{1,120}")


class Kept(NamedTuple):
    """One kept year: its key, its size [bytes], and when it was last used [s], counted from 1970."""

    key: str
    size: int
    used: float


@dataclass(frozen=True, slots=True)
class Cache:
    """A folder of downloaded years; None for no folder, where nothing is found and nothing kept."""

    folder: Path | None
    limit: int = LIMIT  # bytes

    def get(self, key: str) -> bytes | None:
        """What was kept under a key, None where nothing whole is; using it makes it the newest."""
        path = self._path(key)
        if path is None:
            return None
        try:
            content = path.read_bytes()
        except OSError:
            return None
        digest, body = content[:_DIGEST], content[_DIGEST:]
        if hashlib.sha256(body).digest() != digest:
            _throw_away(path)
            return None
        with suppress(OSError):  # in a read-only folder it is found all the same
            os.utime(path)
        return body

    def put(self, key: str, body: bytes) -> str:
        """Keep a year; returns an empty string, or in words why it was not kept."""
        path = self._path(key)
        if path is None:
            return "no folder for downloaded years is in use, so this one is not kept."
        if len(body) + _DIGEST > self.limit:
            return f"{len(body) / 1e6:.1f} MB are more than the {self.limit / 1e6:.1f} MB that may be kept."
        part = None
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            handle, name = tempfile.mkstemp(dir=path.parent, prefix=path.stem, suffix=_UNFINISHED)
            part = Path(name)
            with os.fdopen(handle, "wb") as file:
                file.write(hashlib.sha256(body).digest() + body)
            part.replace(path)
        except OSError as error:
            if part is not None:
                _throw_away(part)
            return f"{path.parent} cannot be written ({error.strerror or error}), so this year is not kept."
        self._trim(spare=path)
        return ""

    def kept(self) -> list[Kept]:
        """All kept years, the newest used first."""
        found = []
        for path in self._files(_SUFFIX):
            with suppress(OSError):  # another process may have thrown it away
                state = path.stat()
                found.append(Kept(path.name.removesuffix(_SUFFIX), state.st_size, state.st_mtime))
        return sorted(found, key=lambda kept: kept.used, reverse=True)

    def clear(self, key: str | None = None) -> int:
        """Throw away one kept year, or all; returns how many went."""
        paths = self._files(_SUFFIX) if key is None else iter([path] if (path := self._path(key)) else [])
        return sum(_throw_away(path) for path in paths)

    def _path(self, key: str) -> Path | None:
        if not _KEY.fullmatch(key) or key.startswith("."):
            raise ValueError(f"{key!r} is no name for a kept year")
        return None if self.folder is None else self.folder / f"{key}{_SUFFIX}"

    def _files(self, suffix: str) -> Iterator[Path]:
        if self.folder is not None:
            with suppress(OSError):
                yield from sorted(self.folder.glob(f"*{suffix}"))

    def _trim(self, *, spare: Path) -> None:
        """Throw away the longest unused until the rest is within the limit, and parts nobody will finish."""
        for part in self._files(_UNFINISHED):
            with suppress(OSError):
                if time.time() - part.stat().st_mtime > _OLD:
                    _throw_away(part)
        kept = self.kept()
        total = sum(one.size for one in kept)
        for one in reversed(kept):
            path = self._path(one.key)
            if total <= self.limit or path is None or path == spare:
                continue
            _throw_away(path)
            total -= one.size


def standard_cache() -> Cache:
    """The cache in the folder that the system means for such files, or where `ESTIMATOR_CACHE` says."""
    from platformdirs import user_cache_path

    said = os.environ.get(FOLDER_VARIABLE)
    if said is not None:
        return Cache(Path(said).expanduser() if said.strip() else None)
    return Cache(user_cache_path("estimator", appauthor=False) / "climate")


def _throw_away(path: Path) -> bool:
    try:
        path.unlink()
    except OSError:  # gone already, in use, or in a read-only folder
        return False
    return True
