"""Do many visitors on one process each get their own figures, quickly, and in steady memory? `python -m tests.load`

`python -m tests.load SESSIONS MINUTES`; 50 and 10 unless given. Loopback only. At half time the server is killed and
started again on its port, and every visitor comes back through the link alone.
"""

from __future__ import annotations

import sys
import time

import numpy as np

from estimator.units import Array
from tests.browser.harness import Server
from tests.load.cases import asked
from tests.load.visitors import Seen, all_at_once
from tests.load.watch import EVERY, Watch

SESSIONS, MINUTES = 50, 10.0
MOMENTS = 6


def main(sessions: int, minutes: float) -> int:
    """Run it, and say what came of it; 1 where anything was not as it must be."""
    print(f"{sessions} visitors, {minutes:g} minutes, {sessions * 3} cases; working out what each must be told")
    cases = [asked(number) for number in range(sessions)]
    if len({one.answer for own in cases for one in own}) < sessions:
        raise RuntimeError("the cases are too much alike for a figure of another's to be seen")
    server = Server()
    server.start()
    try:
        seen, threads = all_at_once(server.port, cases, seconds=60.0 * minutes)
        watched = [_watched(server, 30.0 * minutes)]
        server.kill()
        server.start()
        watched.append(_watched(server, 30.0 * minutes))
        for thread in threads:
            thread.join(180.0)
    finally:
        server.stop()
    print(told(seen, watched))
    return int(bool(seen.wrong) or seen.returned < sessions)


def _watched(server: Server, seconds: float) -> Watch:
    assert server.process is not None
    watch = Watch(server.process.pid)
    watch.start()
    time.sleep(seconds)
    watch.stop()
    return watch


def told(seen: Seen, watched: list[Watch]) -> str:
    """All of it in a few lines."""
    lines = [
        f"{len(seen.took)} answers, each looked at for the first time {_within(seen.first)}",
        f"and tried in all cases {_within(seen.took)}",
        f"{seen.lost} connections lost when the server was killed, {seen.returned} visitors back with their own answer",
        f"{len(seen.wrong)} not as they must be",
        *seen.wrong[:10],
    ]
    used = sum(watch.used for watch in watched) / max(len(seen.took), 1)
    lines.append(f"{used:.2f} s of one processor for each answer, the start of two servers included")
    for watch, name in zip(watched, ("before the kill", "after it"), strict=True):
        lines.append(f"memory {name}: {remembered(np.array(watch.sizes))}")
    return "\n".join(lines)


def _within(seconds: list[float]) -> str:
    took = np.array(seconds or [np.nan])
    half, most = np.quantile(took, (0.5, 0.95))
    return f"half within {half:.2f} s, 19 of 20 within {most:.2f} s, slowest {took.max():.2f} s"


def remembered(sizes: Array) -> str:
    """Memory at some moments, and how it rises once the first third, warming up, is over."""
    if sizes.size < 6:
        return "too short a time to say"
    minutes = np.arange(1, sizes.size + 1) * EVERY / 60.0
    shown = np.unique(np.linspace(0, sizes.size - 1, MOMENTS).astype(int))
    moments = ", ".join(f"{sizes[at]:.0f} MB at {minutes[at]:.1f} min" for at in shown)
    warm = sizes.size // 3
    slope = np.polyfit(minutes[warm:], sizes[warm:], 1)[0]
    return f"{moments}; after the first third {slope:+.1f} MB a minute"


if __name__ == "__main__":
    given = sys.argv[1:]
    sys.exit(main(int(given[0]) if given else SESSIONS, float(given[1]) if len(given) > 1 else MINUTES))
