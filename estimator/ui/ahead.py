"""What is worked out while the first visitor's browser is still fetching the dashboard?

The home it opens with. A browser takes seconds over the fixed files, and all cases are tried in that time.
"""

from __future__ import annotations

import logging
from functools import cache
from threading import Thread

_LOG = logging.getLogger(__name__)


@cache
def begin() -> None:
    """Begin in the background, once in the life of the server."""
    Thread(target=_work, name="ahead", daemon=True).start()


def _work() -> None:
    from estimator.ui import sureness  # heavy: the server answers before it is loaded

    try:
        sureness.ahead()
    except Exception:
        _LOG.exception("the home that the dashboard opens with could not be worked out ahead")
