"""How does the installer's one page about a leaky house become text, PDF and HTML?"""

from __future__ import annotations

from collections.abc import Iterable
from textwrap import wrap

from estimator.report.leave import visible
from estimator.report.leave_html import filled_in
from estimator.report.leave_pdf import as_data, typeset
from estimator.report.rows import Rows
from estimator.report.tight_paper import TightPaper

_WIDTH = 96


def pdf(paper: TightPaper) -> bytes:
    """The page on A4. InputFaults where the typesetter is not at hand on this machine."""
    return typeset("tight.typ", as_data(paper))


def html(paper: TightPaper) -> str:
    """The page for a browser, as the paper of two pages is made."""
    return filled_in("tight.html", as_data(paper))


def text(paper: TightPaper) -> str:
    """The page as plain text, cautions before money."""
    typed = {"Prepared for": paper.names.prepared_for, "Prepared by": paper.names.prepared_by, "Note": paper.names.note}
    parts = [
        paper.question,
        "=" * len(paper.question),
        "",
        *_paragraphs(*(f"{words}: {name}" for words, name in typed.items() if name)),
        *_paragraphs(paper.answer),
        "",
        *_paragraphs(f"Before money. {paper.preface}"),
        *(line for one in paper.cautions for line in _item(f"{one.title}. {one.words} Ask: {one.ask}.")),
        "",
        *_paragraphs(*paper.then),
        "",
        *(line for sheet in (paper.house, *paper.routes, paper.targets) for line in _written(sheet)),
        paper.used.caption,
        *(line for name, words in paper.used.rows for line in _item(f"{name}: {words}")),
        "",
        *_paragraphs(*paper.rests_on, f"Made {paper.made}, use until {paper.valid}.", paper.statement),
    ]
    return visible("\n".join(parts)) + "\n"


def _written(sheet: Rows) -> Iterable[str]:
    """A table as lines, every figure with its heading."""
    yield sheet.caption
    for name, *entries in sheet.rows:
        said = "; ".join(f"{head}: {entry}" for head, entry in zip(sheet.head[1:], entries, strict=True))
        yield from _item(f"{name}. {said}.")
    yield ""


def _item(text: str) -> list[str]:
    return wrap(text, _WIDTH, initial_indent="- ", subsequent_indent="  ", break_long_words=False)


def _paragraphs(*texts: str) -> list[str]:
    return [line for text in texts for line in wrap(text, _WIDTH, break_long_words=False)]
