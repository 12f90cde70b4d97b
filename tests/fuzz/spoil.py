"""How are well-formed bytes spoilt, so that readers are reached deeper than by noise?

The same few edits serve both drivers: a list of (where, how many bytes go, what comes instead), where being a share of
the length, so that an edit found on one file means something on another.
"""

from __future__ import annotations

from collections.abc import Iterable

Edit = tuple[float, int, bytes]
PIECES = (
    *(
        b"",
        b"0",
        b"-1",
        b"1e309",
        b"nan",
        b"inf",
        b"-",
        b"=",
        b"[",
        b"]]",
        b"{",
        b"}",
        b'"',
        b"'''",
        b"\\",
        b"\n",
        b"\r",
    ),
    *(
        b",",
        b",,,,",
        b";",
        b"\t",
        b" ",
        b"#",
        b".",
        b"..",
        b"\x00",
        b"\xff",
        b"\xed\xa0\x80",
        b"\xe2\x80\xae",
        b"9" * 400,
    ),
    *(
        b"true",
        b"1979-05-27",
        b"[" * 300,
        b"a." * 300,
        b"version = 2\n",
        b"[home]\n",
        b"0" * 4000,
        b"99",
        b"-99.9",
        b"24:00",
    ),
    *(b"12/31/", b"<script>", b"\xef\xbb\xbf", b"\xff\xfe", b"PK\x03\x04", b"\x1f\x8b"),
)


def spoilt(whole: bytes, edits: Iterable[Edit]) -> bytes:
    """The bytes after all edits."""
    for where, gone, instead in edits:
        place = int(where * len(whole))
        whole = whole[:place] + instead + whole[place + gone :]
    return whole
