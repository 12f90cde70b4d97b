"""Which question does each module of the package answer?

`python -m tests.map_block` prints the map, and writes it between its markers in DEVELOPERS.md with `--write`.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

from tests.marked import ROOT, Block

PACKAGE = ROOT / "estimator"
FIRST = ("units", "errors", "inputs", "climate", "air", "heat", "money", "survey", "corridor", "estimate", "compare")
LAST = ("report", "cautions", "evidence", "__main__", "ui")
"""Reading order, which is that of the imports; whatever is not named stands between the two."""


def block() -> Block:
    """Rooms and modules in the order of their imports, each with its title line, as a Markdown list."""
    return Block(document="DEVELOPERS.md", name="map", body="\n".join(_lines()))


def title(module: Path) -> str:
    """First line of a module's docstring; nothing where it has none."""
    docstring = ast.get_docstring(ast.parse(module.read_text(encoding="utf-8"))) or ""
    return docstring.partition("\n")[0]


def _lines() -> Iterator[str]:
    places = {path.stem: path for path in PACKAGE.iterdir() if path.suffix == ".py" or (path / "__init__.py").is_file()}
    del places["__init__"]
    between = sorted(places.keys() - {*FIRST, *LAST})
    for name in (*FIRST, *between, *LAST):
        path = places[name]
        if path.is_dir():
            yield f"* **`{name}/`** {title(path / '__init__.py')}"
            for module in sorted(path.rglob("*.py")):
                if module.name != "__init__.py":
                    yield f"  * `{module.relative_to(path).with_suffix('')}` {title(module)}"
        else:
            yield f"* **`{name}`** {title(path)}"


if __name__ == "__main__":
    block().main()
