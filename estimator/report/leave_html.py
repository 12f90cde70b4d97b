"""How does a paper become one self-contained HTML page that asks nobody for anything?"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from estimator.report.leave import Paper
from estimator.report.leave_pdf import content


def html(paper: Paper) -> str:
    """The paper as HTML: pictures inside, typed words escaped, its own policy against loading anything."""
    return filled_in("leave.html", content(paper))


def filled_in(template: str, data: Mapping[str, Any]) -> str:
    """A paper of plain data in the HTML template named."""
    # Everything is escaped but the drawings, which are made here and escape their own words.
    loader = PackageLoader("estimator", "data")
    setting = Environment(loader=loader, autoescape=True, undefined=StrictUndefined, trim_blocks=True)
    return setting.get_template(template).render(data)
