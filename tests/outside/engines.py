"""Real programs for the tests: the invented engine Paper Boat, in one of its moods."""

from __future__ import annotations

import shlex
import sys
import time
from dataclasses import dataclass
from pathlib import Path

SOURCE = Path(__file__).with_name("paper_boat.py")


@dataclass(frozen=True)
class Made:
    """A program at `path`; `folder` holds what it was told."""

    path: Path
    folder: Path

    def told(self) -> list[str]:
        file = self.folder / "told"
        return file.read_text().splitlines() if file.exists() else []

    def asked(self) -> int:
        """How often it was told to search."""
        return sum(line.startswith("go ") for line in self.told())

    def processes(self) -> list[int]:
        """The numbers of all its processes, ended or not."""
        return sorted(int(file.name[4:]) for file in self.folder.glob("pid-*"))

    def alive(self) -> list[int]:
        """The processes that still run, after a moment for the system to notice the end of the others."""
        for _ in range(50):
            running = [pid for pid in self.processes() if _runs(pid)]
            if not running:
                return []
            time.sleep(0.05)
        return running


def _runs(pid: int) -> bool:
    try:
        state = Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()[0]
    except FileNotFoundError:
        return False
    return state != "Z"


def made(folder: Path, behaviour: str = "plays", name: str = "boat") -> Made:
    """Writes the program into a folder of its own."""
    home = folder / name
    home.mkdir()
    path = home / name
    words = (sys.executable, str(SOURCE), behaviour, str(home))
    path.write_text(f"#!/bin/sh\nexec {shlex.join(words)}\n")
    path.chmod(0o755)
    return Made(path, home)
