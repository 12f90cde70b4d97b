"""How does the paper become one self-contained HTML page that asks nobody for anything?"""

from __future__ import annotations

from importlib.resources import files

from jinja2 import Environment, StrictUndefined

from estimator.report.leave import Paper
from estimator.report.leave_pdf import content


def html(paper: Paper) -> str:
    """The paper as HTML: pictures inside, typed words escaped, its own policy against loading anything."""
    # Everything is escaped but the drawings, which are made here and escape their own words.
    setting = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True)
    template = setting.from_string(files("estimator").joinpath("data", "leave.html").read_text(encoding="utf-8"))
    return template.render(content(paper))
