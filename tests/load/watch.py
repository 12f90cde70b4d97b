"""How large is a process, and is it still growing?"""

from __future__ import annotations

import re
import threading
from dataclasses import dataclass, field
from pathlib import Path

EVERY = 5.0  # s
_SIZE = re.compile(r"VmRSS:\s+(\d+) kB")


def megabytes(process: int) -> float:
    """Memory of a process that is in use [MB]; Linux."""
    found = _SIZE.search(Path(f"/proc/{process}/status").read_text(encoding="ascii"))
    return float(found[1]) / 1000.0 if found else 0.0


@dataclass(slots=True)
class Watch:
    """A thread that notes the size of a process."""

    process: int
    sizes: list[float] = field(default_factory=list)
    _over: threading.Event = field(default_factory=threading.Event)

    def start(self) -> None:
        """Begin."""
        threading.Thread(target=self._look, daemon=True).start()

    def stop(self) -> list[float]:
        """End; the sizes [MB], one each `EVERY` seconds."""
        self._over.set()
        return self.sizes

    def _look(self) -> None:
        while not self._over.wait(EVERY):
            try:
                self.sizes.append(megabytes(self.process))
            except OSError:
                return
