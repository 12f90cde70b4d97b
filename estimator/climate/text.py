"""Is this file text that could hold weather?"""

from __future__ import annotations

from pathlib import Path

from estimator.errors import ClimateFault, Fault

LARGEST = 30_000_000  # bytes; a year of hours needs two million
_SIGNATURES = (
    (b"PK\x03\x04", "a zip archive or spreadsheet: unpack it, or save it as text, first"),
    (b"\x1f\x8b", "a compressed file: unpack it first"),
    (b"%PDF", "a PDF document, not hourly data"),
    (b"\x89PNG", "a picture, not hourly data"),
    (b"\xd0\xcf\x11\xe0", "a spreadsheet: save it as text (CSV) first"),
)


def file_text(path: Path) -> str:
    """The file's text, whatever its encoding; ClimateFault in plain words where there is none."""
    where = path.name
    try:
        folder, size = path.is_dir(), path.stat().st_size
        content = b"" if folder or size > LARGEST else path.read_bytes()
    except FileNotFoundError:
        raise ClimateFault(Fault(where, "there is no such file.")) from None
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or str(error)
        raise ClimateFault(Fault(where[:60], f"the file cannot be opened ({reason}).")) from None
    if folder:
        raise ClimateFault(Fault(where, "this is a folder; name a weather file in it."))
    if size > LARGEST:
        limit = LARGEST / 1e6
        raise ClimateFault(Fault(where, f"{size / 1e6:.0f} MB is too large, at most {limit:.0f}; a year has 2."))
    return text_of(content, where)


def text_of(content: bytes, where: str) -> str:
    """Text of a file's bytes, rows ended by line feeds; ClimateFault for what is empty, packed or no text."""
    if not content.strip():
        raise ClimateFault(Fault(where, "the file is empty."))
    for signature, what in _SIGNATURES:
        if content.startswith(signature):
            raise ClimateFault(Fault(where, f"this is {what}."))
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        text = content.decode("utf-16", errors="replace")
    else:
        try:
            text = content.decode("utf-8-sig")
        except UnicodeDecodeError:
            text = content.decode("latin-1")  # place names of older files
    if "\x00" in text:
        raise ClimateFault(Fault(where, "this is not a text file; the formats read are EPW, TMY3 and TMY2."))
    if text.lstrip()[:200].lower().startswith(("<!doctype", "<html", "<?xml")):
        raise ClimateFault(
            Fault(where, "this is a web page, not a weather file: the download went wrong; fetch the file itself.")
        )
    return text.replace("\r\n", "\n").replace("\r", "\n")
