"""How does the paper become a tagged PDF of two pages with its own letters in it?"""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Callable
from importlib.resources import as_file, files
from typing import Any, Final

from estimator.errors import Fault, InputFaults
from estimator.report.leave import Paper

STANDARD: Final = "ua-1"  # PDF/UA-1, ISO 14289-1:2014: tagged, titled, with words for every picture


def pdf(paper: Paper) -> bytes:
    """The paper as a PDF. InputFaults where the typesetter is not at hand on this machine."""
    try:
        import typst  # a quarter of the install by size, and only this needs it
    except ImportError as error:
        what = "no PDF can be set on this machine; take the HTML page, which prints on two sheets as well"
        raise InputFaults([Fault("PDF", what)]) from error
    template = files("estimator").joinpath("data", "leave.typ").read_bytes()
    with as_file(files("estimator.report") / "fonts") as fonts:
        compiled: Callable[..., bytes] = typst.compile
        return compiled(
            template,
            font_paths=[fonts],
            ignore_system_fonts=True,
            sys_inputs={"data": json.dumps(content(paper), ensure_ascii=False, allow_nan=False)},
            pdf_standards=[STANDARD],
        )


def content(paper: Paper) -> dict[str, Any]:
    """The paper as plain data, the same for every way of setting it."""
    plain = dataclasses.asdict(paper)
    for name in ("figures", "assumptions"):
        plain[name]["words"] = sorted(plain[name]["words"])
    for one in plain["workings"]:
        del one["value"]  # "never" is no number in JSON; the result says it in words
        one["put"] = "; ".join(f"{each['words']} {each['number']}" for each in one["put"])
    return {**plain, **plain.pop("names")}
