"""What is worked out while a visitor's browser is still fetching the dashboard?

The answer that stands there before the scripts do, and of the home the dashboard opens with all cases. A browser takes
seconds over the fixed files, and both are done in that time.
"""

from __future__ import annotations

import logging
from collections.abc import Mapping
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


def said(asked: Mapping[str, str]) -> str:
    """The first page's answer as HTML, or nothing; asked: the words of an address by parameter."""
    from estimator.ui import at_sight

    try:
        return at_sight.at_sight(asked)
    except Exception as error:
        _LOG.error("an answer could not be given at sight: %s", type(error).__name__, exc_info=True)
        return ""  # the dashboard says what is wrong
