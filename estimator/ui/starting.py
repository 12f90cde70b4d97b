"""How is the dashboard started, from a checkout and from an installed package alike?"""

from __future__ import annotations

from pathlib import Path
from typing import NoReturn

_PACKAGE = Path(__file__).resolve().parents[1]
# In a checkout the script lies beside the package; an installed package carries it inside, its settings beside it.
_SCRIPTS = (_PACKAGE / "_app.py", _PACKAGE.parent / "app.py")


def start(port: int | None = None) -> NoReturn:
    """Serve the dashboard on a port of this machine, the usual one where none is named, until it is stopped."""
    from streamlit.web.cli import main  # it takes a second, and no other command needs it

    script = next(path for path in _SCRIPTS if path.exists())
    named = [] if port is None else [f"--server.port={port}"]
    raise SystemExit(main(["run", str(script), *named], prog_name="streamlit"))
