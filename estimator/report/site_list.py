"""What is looked at on site, and which cautions stand beside it?"""

from __future__ import annotations

from dataclasses import dataclass

from estimator.cautions import every_caution
from estimator.inputs.catalogue import table
from estimator.report.rows import Rows

SOURCE = "common practice, no source"


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """One thing to look at: its name, words, titles of the cautions beside it, who must be asked."""

    key: str
    words: str
    cautions: tuple[str, ...]
    ask: tuple[str, ...]


def site_list() -> tuple[Look, ...]:
    """Every row of the check-list, in the order in which it is gone through."""
    known = {caution.key: caution for caution in every_caution()}
    return tuple(
        Look(
            key=key,
            words=row["words"],
            cautions=tuple(known[name].title for name in row["cautions"]),
            ask=tuple(known[name].ask for name in row["cautions"]),
        )
        for key, row in table("checklist").items()
    )


def site_rows() -> Rows:
    """The check-list as a table, with room to tick it off on paper."""
    return Rows(
        caption="On site, one by one",
        head=("Look at", "Caution"),
        rows=tuple((look.words, ", ".join(look.cautions)) for look in site_list()),
        note=f"{SOURCE[:1].upper()}{SOURCE[1:]}. Local codes and licensed trades come first. The cautions stand in "
        "full at the top.",
        words=frozenset({0, 1}),
    )
