"""Does a generated part of a document still say what the code says?

Such a part stands between two markers that carry its name: `<!-- cautions -->` and `<!-- /cautions -->`.
"""

from __future__ import annotations

import sys
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """A generated part: the document at the top level, its name in the markers, and the text it should have."""

    document: str
    name: str
    body: str

    @property
    def path(self) -> Path:
        """The document's file."""
        return ROOT / self.document

    @property
    def text(self) -> str:
        """The part as it should stand, markers included."""
        return f"<!-- {self.name} -->\n{self.body}\n<!-- /{self.name} -->"

    def written(self) -> str:
        """The part as it stands in the document; ValueError where it does not stand there exactly once."""
        return self._cut(self.path.read_text(encoding="utf-8"))

    def _cut(self, whole: str) -> str:
        start, end = f"<!-- {self.name} -->", f"<!-- /{self.name} -->"
        if whole.count(start) != 1 or whole.count(end) != 1:
            raise ValueError(f"{start} and {end} must each stand once in {self.document}")
        return whole[whole.index(start) : whole.index(end) + len(end)]

    def main(self) -> None:
        """Print the part, or put it in its place where the command says `--write`."""
        if "--write" in sys.argv[1:]:
            whole = self.path.read_text(encoding="utf-8")
            self.path.write_text(whole.replace(self._cut(whole), self.text), encoding="utf-8")
        else:
            print(self.text)
