"""How large is a process, is it still growing, and how much of a processor has it used?"""

from __future__ import annotations

import os
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


def processor_seconds(process: int) -> float:
    """Time on a processor that a process has used so far [s]; Linux."""
    fields = Path(f"/proc/{process}/stat").read_text(encoding="utf-8").rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")  # user and system, proc(5)


@dataclass(slots=True)
class Watch:
    """A thread that notes the size of a process."""

    process: int
    sizes: list[float] = field(default_factory=list)
    used: float = 0.0  # s on a processor
    _over: threading.Event = field(default_factory=threading.Event)

    def start(self) -> None:
        """Begin."""
        threading.Thread(target=self._look, daemon=True).start()

    def stop(self) -> None:
        """End."""
        self._over.set()

    def _look(self) -> None:
        while not self._over.wait(EVERY):
            try:
                self.sizes.append(megabytes(self.process))
                self.used = processor_seconds(self.process)
            except OSError:
                return
