"""What do the cautions look like in README.md?

`python -m tests.cautions_block` prints them, and writes them between their markers with `--write`.
"""

from __future__ import annotations

from estimator.cautions import every_caution, preface
from tests.marked import Block


def block() -> Block:
    """All cautions as a Markdown list below their preface."""
    rows = (f"* **{row.title}.** {row.words} **Ask:** {row.ask}. *Shown: {row.when}.*" for row in every_caution())
    return Block(document="README.md", name="cautions", body="\n".join((f"**{preface()}**", "", *rows)))


if __name__ == "__main__":
    block().main()
