"""What do many visitors at once see, each with cases of its own?"""

from __future__ import annotations

import random
import threading
import time
from dataclasses import dataclass, field

from tests.load.cases import Asked
from tests.load.session import Session, answer_in

THINKING = (4.0, 12.0)  # s between two changes, as a person pauses; no source


@dataclass(slots=True)
class Seen:
    """What all visitors saw: seconds of each answer, and everything that was not as it must be."""

    took: list[float] = field(default_factory=list)
    first: list[float] = field(default_factory=list)  # s until the first look at each
    wrong: list[str] = field(default_factory=list)
    lost: int = 0  # connections that ended without having been closed: the server was killed
    returned: int = 0  # answers right at once after such an end, through the link alone


def visit(port: int, own: list[Asked], seen: Seen, *, until: float, number: int, thinking: tuple[float, float]) -> None:
    """One visitor's time: open one's own cases in turn, and read the answer each time."""
    chance = random.Random(number)
    session: Session | None = None
    was_lost, turn = False, number
    while time.monotonic() < until:
        asked = own[turn % len(own)]
        begun = time.monotonic()
        try:
            session = session or Session(port)
            said = answer_in(session.opened(asked.link))
        except (OSError, EOFError, TimeoutError) as error:
            seen.lost += not was_lost
            _gone(session)
            was_lost, session = True, None
            time.sleep(0.5)
            if isinstance(error, TimeoutError) and time.monotonic() < until:
                seen.wrong.append(f"visitor {number}: no answer in time")
            continue
        except Exception as error:
            if _is_end(error):
                seen.lost += not was_lost
                _gone(session)
                was_lost, session = True, None
                time.sleep(0.5)
                continue
            seen.wrong.append(f"visitor {number}: {type(error).__name__}: {error}")
            return
        seen.took.append(time.monotonic() - begun)
        seen.first.append(session.first)
        if said != asked.answer:
            seen.wrong.append(f"visitor {number} was told “{said}” in place of “{asked.answer}”")
        seen.returned += was_lost and said == asked.answer
        was_lost, turn = False, turn + 1
        time.sleep(chance.uniform(*thinking))
    _gone(session)


def _is_end(error: Exception) -> bool:
    return type(error).__module__.startswith("websockets")


def _gone(session: Session | None) -> None:
    if session is not None:
        session.close()


def all_at_once(
    port: int, cases: list[list[Asked]], *, seconds: float, thinking: tuple[float, float] = THINKING
) -> tuple[Seen, list[threading.Thread]]:
    """Let all visitors begin; join the threads to wait for them."""
    seen, until = Seen(), time.monotonic() + seconds
    threads = [
        threading.Thread(
            target=visit,
            args=(port, own, seen),
            kwargs={"until": until, "number": number, "thinking": thinking},
            daemon=True,
        )
        for number, own in enumerate(cases)
    ]
    for thread in threads:
        thread.start()
    return seen, threads
