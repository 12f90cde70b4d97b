"""How does a whole case travel in the address of the page, and what of it stays at home?

A link is the version of its own form, a dot, and the case's changes as compressed JSON in URL-safe letters. Titles,
names of options and rooms somebody made up and paths of files never enter it. A link that cannot be read is refused
by name.
"""

from __future__ import annotations

import base64
import binascii
import json
import zlib
from typing import Any

from estimator.errors import Fault, InputFaults
from estimator.ui.private import without_private
from estimator.ui.tree import EMPTY, Tree

LINK_VERSION = 1
PARAMETER = "case"
LONGEST = 60_000  # letters of a link, and bytes of the case in it
_WHERE = "link"


def to_link(tree: Tree) -> str:
    """The case as link text, without what is private; empty for a case of nothing but defaults."""
    public = without_private(tree)
    if public == EMPTY:
        return ""
    text = json.dumps(public, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    packed = base64.urlsafe_b64encode(zlib.compress(text.encode(), level=9)).decode().rstrip("=")
    return f"{LINK_VERSION}.{packed}"


def from_link(text: str) -> Tree:
    """The case in a link, not yet validated; raises InputFaults with what is wrong with the link."""
    version, dot, packed = text.partition(".")
    if not dot or not version.isascii() or not version.isdigit():
        raise _refused("it does not begin with a version, as a link from this estimator does.")
    if int(version[:9]) > LINK_VERSION:
        raise _refused(
            f"it comes from a newer release: version {version[:9]}, and this one reads up to {LINK_VERSION}. "
            "Update the estimator, or ask for the case as a file."
        )
    if len(version) > 9 or int(version) < 1 or len(packed) > LONGEST:
        raise _refused("it has no form this estimator ever wrote.")
    tree = _unpacked(packed)
    if not isinstance(tree, dict) or "version" not in tree:
        raise _refused("what it holds is not a case.")
    return tree


def _unpacked(packed: str) -> Any:
    try:
        data = base64.b64decode(packed + "=" * (-len(packed) % 4), altchars=b"-_", validate=True)
        unpacker = zlib.decompressobj()
        raw = unpacker.decompress(data, LONGEST)
        if not unpacker.eof or unpacker.unused_data:
            raise _refused("it is cut short or too long. Copy it again, whole.")
        return json.loads(raw.decode("utf-8"), parse_constant=_no_constant)
    except (binascii.Error, zlib.error, ValueError, RecursionError) as error:
        if isinstance(error, InputFaults):
            raise
        raise _refused("it is damaged: a letter is missing or changed. Copy it again, whole.") from error


def _no_constant(name: str) -> Any:
    raise ValueError(name)


def _refused(why: str) -> InputFaults:
    return InputFaults([Fault(_WHERE, f"The case in this link was not used: {why} The demo home is shown instead.")])
