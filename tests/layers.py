"""Which room may import what, and what else is a file of ours held to?

Each rule is a function from a source to what is wrong with it.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterator

from tests.sources import PACKAGE, Source

ORDER = (
    ("units", "errors"),
    ("inputs",),
    ("climate", "air", "heat", "money"),
    ("survey",),
    ("running",),
    ("corridor", "supply"),
    ("bills", "costs"),
    ("plan",),
    ("estimate",),
    ("compare",),
    ("leak_span",),
    ("leak_tests",),
    (
        "cautions",
        "monthly",
        "metered",
        "leak_range",
        "at_leakage",
        "evidence",
        "air_paths",
        "points_lost",
        "frost_ways",
        "line_costs",
        "room_plan",
        "drawn",
        "tries",
    ),
    ("installed", "as_commissioned", "leak_estimates", "models", "routes", "sweep", "draws"),
    ("sample", "levers", "match_bill"),
    ("sure",),
    (
        "claims",
        "reach",
    ),
    ("report",),
    ("stock",),
    ("ui",),
    ("__main__",),
)
"""Rooms and modules of the package: each imports from itself and from earlier lines, never from its own line."""

LAST_FOR_FRONT = "compare"  # the front, estimator/__init__.py, takes names from this line and the ones before
PHYSICS = ("air", "heat", "money")
PHYSICS_MAY_IMPORT = ("units", "errors")
LONGEST = 300  # lines
SCRIPTS = (f"{PACKAGE}/ui/site/", f"{PACKAGE}/ui/pages/")  # run, not read: a title is enough
TOP_LEVEL = {"README.md", "DEVELOPERS.md", "pyproject.toml", "app.py", "estimator", "tests", "climate_demo"}
HEAVY = ("streamlit", "plotly", "pvlib")
CONVERSIONS = (3600, 273.15)  # never outside units.py
FIGURES = (1000, 3.6)  # conversions, unless they stand in a named constant

PIECEMEAL = {
    *("add_scatter", "add_bar", "add_trace", "add_annotation", "add_shape", "add_hline", "add_vline", "add_hrect"),
    *("add_vrect", "update_layout", "update_xaxes", "update_yaxes", "update_traces"),
}

Place = tuple[str, ...]
LIBRARIES: dict[str, tuple[Place, ...]] = {
    "numpy": ((PACKAGE,),),
    "pandas": ((PACKAGE, "climate"), (PACKAGE, "report"), (PACKAGE, "ui"), (PACKAGE, "stock")),
    "pyarrow": ((PACKAGE, "stock"),),
    "pvlib": ((PACKAGE, "climate"),),
    "platformdirs": ((PACKAGE, "climate"),),
    "requests": ((PACKAGE, "climate"),),
    "plotly": ((PACKAGE, "report", "charts*"),),
    "jinja2": ((PACKAGE, "report", "leave_html"),),
    "typst": ((PACKAGE, "report", "leave_pdf"),),
    "streamlit": ((PACKAGE, "ui"), ("app",)),
    "starlette": ((PACKAGE, "ui"),),
    "google": ((PACKAGE, "ui"),),  # the wire format of streamlit
    "pydantic": ((PACKAGE, "inputs"),),
    "pydantic_core": ((PACKAGE, "inputs"),),
    "annotated_types": ((PACKAGE, "inputs"),),
}
"""Where each library may be imported: any module below one of the places; a star ends a beginning."""


def imports(source: Source) -> Iterator[tuple[int, str]]:
    """Line and dotted name of everything a file imports, inside functions and for types alone as well."""
    for node in ast.walk(source.tree):
        if isinstance(node, ast.Import):
            yield from ((node.lineno, alias.name) for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.level:
            yield node.lineno, f"{PACKAGE}.(relative)"
        elif isinstance(node, ast.ImportFrom) and node.module == PACKAGE:
            yield from ((node.lineno, f"{PACKAGE}.{alias.name}") for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield node.lineno, node.module or ""


RANKS = {room: rank for rank, rooms in enumerate(ORDER) for room in rooms}


def may_import(importer: str, imported: str) -> bool:
    """Whether one room may import from another; both stand in `ORDER`, or the importer is the front."""
    if importer == "__init__":
        return RANKS[imported] <= RANKS[LAST_FOR_FRONT]
    if importer in PHYSICS and imported != importer:
        return imported in PHYSICS_MAY_IMPORT
    return importer == imported or RANKS[imported] < RANKS[importer]


def direction_faults(source: Source) -> list[str]:
    """Imports of our own that run against the order, are relative, or are of a room that has no place in it."""
    if source.room not in (*RANKS, "__init__"):
        return [f"{source.path}: {source.room} stands nowhere in ORDER; say from which rooms it may import"]
    ours = [(line, name.split(".")) for line, name in imports(source) if name.split(".")[0] == PACKAGE]
    return [
        f"{source.path}:{line}: {source.room} must not import {'.'.join(parts)}"
        for line, parts in ours
        if len(parts) < 2 or parts[1] not in RANKS or not may_import(source.room, parts[1])
    ]


def library_faults(source: Source) -> list[str]:
    """Imports of libraries in rooms that are not theirs, and of libraries nobody has declared."""
    module = tuple(source.module.split("."))
    found = []
    for line, name in imports(source):
        library = name.split(".")[0]
        if library not in (PACKAGE, *sys.stdlib_module_names) and not any(
            is_within(module, place) for place in LIBRARIES.get(library, ())
        ):
            found.append(f"{source.path}:{line}: {library} has no place here")
    return found


def piecemeal_faults(source: Source) -> list[str]:
    """Changes of a chart that is put together already: each takes Plotly as long as the whole chart at once."""
    return [
        f"{source.path}:{node.lineno}: {node.attr} changes a chart piece by piece; gather it in a Drawing"
        for node in ast.walk(ast.parse(source.text))
        if isinstance(node, ast.Attribute) and node.attr in PIECEMEAL
    ]


def is_within(module: Place, place: Place) -> bool:
    """Whether a module stands at or below a place, or at one that begins alike where a star says so."""
    return len(module) >= len(place) and all(
        part.startswith(wanted[:-1]) if wanted.endswith("*") else part == wanted
        for part, wanted in zip(module, place, strict=False)
    )


def number_faults(source: Source) -> list[str]:
    """Bare conversion factors, which have their names in units.py."""
    tree = source.tree
    constants = {inner for statement in tree.body if defines_constant(statement) for inner in ast.walk(statement)}
    return [
        f"{source.path}:{node.lineno}: {node.value} is a conversion; use estimator.units"
        for node in ast.walk(tree)
        if isinstance(node, ast.Constant) and type(node.value) in (int, float)
        if node.value in CONVERSIONS or (node.value in FIGURES and node not in constants)
    ]


def defines_constant(statement: ast.stmt) -> bool:
    """Whether a statement gives a value to an upper-case name."""
    targets = statement.targets if isinstance(statement, ast.Assign) else []
    targets = [statement.target] if isinstance(statement, ast.AnnAssign) else targets
    return any(isinstance(target, ast.Name) and target.id.isupper() for target in targets)


ARITHMETIC = (ast.Add, ast.Sub, ast.Mult, ast.Div, ast.FloorDiv, ast.Mod, ast.Pow, ast.MatMult)


def arithmetic_faults(source: Source) -> list[str]:
    """Arithmetic in a page, which only shows what was worked out elsewhere."""
    return [
        f"{source.path}:{node.lineno}: a page does not calculate"
        for node in ast.walk(source.tree)
        if (isinstance(node, ast.BinOp | ast.AugAssign) and isinstance(node.op, ARITHMETIC))
        or (isinstance(node, ast.UnaryOp) and isinstance(node.op, ast.USub) and not is_number(node.operand))
    ]


def is_number(node: ast.expr) -> bool:
    """Whether an expression is a number written down."""
    return isinstance(node, ast.Constant) and isinstance(node.value, int | float)


def size_faults(source: Source) -> list[str]:
    """Files too long, and files that do not begin by saying what they are for."""
    lines = source.text.count("\n")
    title = (ast.get_docstring(source.tree) or "").split("\n")[0]
    asks = source.path.startswith(f"{PACKAGE}/") and not source.path.endswith("__init__.py")
    asks = asks and not source.path.startswith(SCRIPTS)
    return [
        *([f"{source.path}: {lines} lines are more than {LONGEST}"] if lines > LONGEST else []),
        *([f"{source.path}: no title line"] if len(title) < 2 else []),
        *([f"{source.path}: the title line is no question"] if asks and not title.endswith("?") else []),
    ]
