"""How is a weather file of the user's own kept on this machine, so that a case can name it without telling of it?

A case says `kept:` and letters of a digest of what was read. The content stays in the folder of kept years; neither it
nor the file's name goes anywhere with the case, and on another machine the file has to be given again.
"""

from __future__ import annotations

import hashlib
import json
import re
import zlib
from dataclasses import asdict, dataclass
from pathlib import Path
from typing import Any

from estimator.climate.cache import Cache, standard_cache
from estimator.climate.clean import checked_year
from estimator.climate.columns import Layout
from estimator.climate.files import form_of
from estimator.climate.plain import is_plain, read_table
from estimator.climate.plausible import ReadReport, read_report
from estimator.climate.raw import Place
from estimator.climate.text import LARGEST, text_of
from estimator.climate.year import ClimateYear
from estimator.errors import ClimateFault, Fault

NAME = "your own file"  # in place of the file's name, which may name a person
_REFERENCE = re.compile(r"kept:([0-9a-f]{24})")
_DIGITS = 24
_KEY = "file_{}"


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class FileRead:
    """A weather file as read: how a case refers to it, the year, what became of the file, and what is to be kept."""

    reference: str
    year: ClimateYear
    report: ReadReport
    body: bytes


def is_kept_file(reference: str) -> bool:
    """Whether a reference is that of a file kept here."""
    return _REFERENCE.fullmatch(reference) is not None


def needs_layout(content: bytes, *, name: str) -> bool:
    """Whether a file is a table whose columns somebody has to name; ClimateFault for what is no text."""
    text = text_of(content, name)
    try:
        return is_plain(text) or form_of(text, Path(name)).recognised is is_plain
    except ClimateFault:
        return _looks_like_a_table(text)


def _looks_like_a_table(text: str) -> bool:
    """Rows of the same number of fields, more than one, below some line or other: headers may stand lower down."""
    lines = [line for line in text.split("\n", 60)[:60] if line.strip()][-20:]
    counts = {line.count(max(",;\t", key=line.count)) for line in lines}
    figures = sum(line.lstrip()[:1].isdigit() for line in lines)
    return len(counts) == 1 and counts != {0} and len(lines) > 1 and figures > len(lines) // 2


def file_read(content: bytes, *, name: str, layout: Layout | None = None) -> FileRead:
    """A weather file, read and checked; ClimateFault in plain words.

    name: of the file, for messages alone. layout: which column is what, for a table whose columns do not say so.
    """
    if len(content) > LARGEST:
        what = f"{len(content) / 1e6:.0f} MB is too large, at most {LARGEST / 1e6:.0f}; a year has 2."
        raise ClimateFault(Fault(name, what))
    text = text_of(content, name)
    if layout is None:
        form = form_of(text, Path(name))
        if form.recognised is is_plain:
            raise ClimateFault(Fault(name, "say which column of this table is what."))
        raw = form.read(text, Path(name))
    else:
        raw = read_table(text, layout, name=name)
    year = checked_year(raw)
    said = json.dumps(None if layout is None else asdict(layout), ensure_ascii=False, sort_keys=True)
    body = said.encode() + b"\n" + content
    reference = f"kept:{hashlib.sha256(body).hexdigest()[:_DIGITS]}"
    return FileRead(reference=reference, year=year, report=read_report(year, raw.labels), body=body)


def keep(read: FileRead, *, cache: Cache | None = None) -> str:
    """Keep a file; an empty string, or in words why it was not kept."""
    cache = standard_cache() if cache is None else cache
    return cache.put(_key(read.reference), zlib.compress(read.body, level=9))


def kept_file(reference: str, *, cache: Cache | None = None) -> FileRead:
    """A file kept here, read anew; ClimateFault where it is not at hand."""
    content = (standard_cache() if cache is None else cache).get(_key(reference))
    body = None if content is None else _unpacked(content)
    if body is None:
        raise ClimateFault(
            Fault(
                "place.climate",
                f"the weather of this case is a file that somebody gave on another machine or that was thrown away "
                f"({reference[:11]}…); it is not at hand here. Give the same file again, or choose other weather.",
            )
        )
    said, _, file = body.partition(b"\n")
    return file_read(file, name=NAME, layout=_layout(json.loads(said)))


def _unpacked(content: bytes) -> bytes | None:
    unpacker = zlib.decompressobj()
    try:
        body = unpacker.decompress(content, 2 * LARGEST)
    except zlib.error:
        return None
    return body if unpacker.eof else None


def _layout(said: dict[str, Any] | None) -> Layout | None:
    return None if said is None else Layout(**{**said, "place": Place(**said["place"])})


def _key(reference: str) -> str:
    found = _REFERENCE.fullmatch(reference)
    if found is None:
        raise ValueError(f"{reference!r} is no reference to a kept file")
    return _KEY.format(found[1])
