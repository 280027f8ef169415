"""The real command in a process of its own."""

from __future__ import annotations

import os
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

COMMAND = Path(sys.executable).with_name("lineproof")

HELD = ("setpriv", "--bounding-set", "-dac_override,-dac_read_search")
"""Begins a command that root runs without his right to pass over the permissions of files."""


@dataclass(frozen=True)
class Ran:
    status: int
    out: str
    err: str


def environment(home: Path, **more: str) -> dict[str, str]:
    """Without colours, widths and data of the user who runs the tests."""
    kept = {k: v for k, v in os.environ.items() if k in {"PATH", "LANG", "LC_ALL", "TMPDIR"}}
    return {**kept, "HOME": str(home), "LINEPROOF_DATA": str(home / "data"), **more}


def lineproof(home: Path, *arguments: str | Path, as_user: bool = False, **more: str) -> Ran:
    """Runs `lineproof` with arguments in the folder `home`.

    as_user: held to the permissions of files, even where root runs the tests.
    """
    bound = as_user and os.geteuid() == 0
    done = subprocess.run(
        [*(HELD if bound else ()), COMMAND, *arguments],
        cwd=home,
        env=environment(home, **more),
        capture_output=True,
        text=True,
        encoding="utf-8",
        timeout=120,
        check=False,
    )
    return Ran(done.returncode, done.stdout, done.stderr)
