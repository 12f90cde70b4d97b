"""How does a paper become a tagged PDF with its own letters in it?"""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Callable, Mapping
from importlib.resources import as_file, files
from typing import Any, Final

from estimator.errors import Fault, InputFaults
from estimator.report.leave import Paper, visible

STANDARD: Final = "ua-1"  # PDF/UA-1, ISO 14289-1:2014: tagged, titled, with words for every picture


def pdf(paper: Paper) -> bytes:
    """The paper as a PDF of two pages. InputFaults where the typesetter is not at hand on this machine."""
    return typeset("leave.typ", content(paper))


def typeset(template: str, data: Mapping[str, Any]) -> bytes:
    """A paper of plain data in the template named. InputFaults where the typesetter is not at hand on this machine."""
    try:
        import typst  # a quarter of the install by size, and only this needs it
    except ImportError as error:
        what = "no PDF can be set on this machine; take the HTML page, which prints as well"
        raise InputFaults([Fault("PDF", what)]) from error
    fonts_of, templates_of = files("estimator.report") / "fonts", files("estimator") / "data"
    with as_file(fonts_of) as fonts, as_file(templates_of) as templates:
        compiled: Callable[..., bytes] = typst.compile
        given: dict[str, Any] = {
            "input": templates / template,
            "font_paths": [fonts],
            "sys_inputs": {"data": json.dumps(data, ensure_ascii=False, allow_nan=False)},
        }
        try:
            return compiled(**given, ignore_system_fonts=True, pdf_standards=[STANDARD])
        except typst.TypstError as error:
            if "could not be displayed" not in str(error):
                raise
            # A name in letters that our own fonts lack: some font of this machine may have them.
            return compiled(**given, ignore_system_fonts=False)


def content(paper: Paper) -> dict[str, Any]:
    """The paper as plain data, the same for every way of setting it."""
    found = as_data(paper)
    for one in found["workings"]:
        del one["value"]  # "never" is no number in JSON; the result says it in words
        one["put"] = "; ".join(f"{each['words']} {each['number']}" for each in one["put"])
    return found


def as_data(paper: Any) -> dict[str, Any]:
    """A paper, a dataclass of words and tables with `names`, as plain data that JSON can write."""
    found: dict[str, Any] = _listed(dataclasses.asdict(paper))
    return {**found, **found.pop("names")}


def _listed(part: Any) -> Any:
    """Sets, which JSON does not know, as lists in order, and words without marks that no paper can show."""
    if isinstance(part, dict):
        return {name: _listed(each) for name, each in part.items()}
    if isinstance(part, list | tuple):
        return [_listed(each) for each in part]
    if isinstance(part, str):
        return visible(part)
    return sorted(part) if isinstance(part, frozenset) else part
