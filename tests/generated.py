"""Which parts of the documents are written by the code?

`python -m tests.generated --write` brings all of them up to date.
"""

from __future__ import annotations

from tests import cautions_block, map_block, nomenclature, worked_block

BLOCKS = (cautions_block.block, map_block.block, nomenclature.block, worked_block.block)

if __name__ == "__main__":
    for block in BLOCKS:
        block().main()
