"""Ctrl-C ends a search, though the search itself knows nothing of Python."""

from __future__ import annotations

import signal
import subprocess
import sys
import time

import pytest

PROGRAM = """
from lineproof.engine import Stop, search
try:
    print("begun", flush=True)
    search("rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR w KQkq - 0 1", stop=Stop())
except KeyboardInterrupt:
    print("interrupted", flush=True)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="SIGINT cannot be sent to a child there")
def test_an_interrupt_ends_a_search_without_limits() -> None:
    child = subprocess.Popen(
        [sys.executable, "-c", PROGRAM], stdout=subprocess.PIPE, text=True, bufsize=1
    )
    try:
        assert child.stdout is not None
        assert child.stdout.readline() == "begun\n"
        time.sleep(0.5)  # until the search runs
        assert child.poll() is None
        child.send_signal(signal.SIGINT)
        rest, _ = child.communicate(timeout=20)
    finally:
        child.kill()
    assert rest == "interrupted\n"
