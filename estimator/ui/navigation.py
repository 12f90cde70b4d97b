"""How does a reader get from one question to the next?

One row of links above every page, wrapped on a phone: nothing folds away, so that nothing has to be closed again.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import streamlit as st

from estimator.ui import live
from estimator.ui.readers import READERS, reader


def links(pages: Mapping[str, st.Page], *, now: str, carried: Callable[[], Mapping[str, str]]) -> None:
    """The links of this reader, and behind one word those of the others. now: address of the page that is shown."""
    first = READERS[reader()].pages
    near = [address for address in first if address in pages]
    near += [now] if now not in near else []
    far = [address for address in pages if address not in near]
    place = st.container()

    def drawn() -> None:
        """Every link carries the case as it is now, also into another window."""
        said = carried()
        with place, st.container(horizontal=True, gap="small", vertical_alignment="center", key="questions"):
            for address in near:
                _link(pages[address], said)
            if far:
                with st.popover("More", type="tertiary", key="questions:more"):
                    for address in far:
                        _link(pages[address], said)

    live.step(drawn, last=True)


def _link(page: st.Page, carried: Mapping[str, str]) -> None:
    st.page_link(page, label=page.title, query_params=dict(carried))
