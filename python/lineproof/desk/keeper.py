"""The keeper: saves an open lesson soon after each edit, and looks for what other programs did to its file."""

from __future__ import annotations

import threading
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from .opened import OpenLesson

GATHER = 0.3
"""Seconds from an edit to the save: the next keystrokes go into the same one."""
LOOK = 1.0
"""Seconds between two looks at the file."""


class Keeper:
    """A thread for one lesson, from `start` to `stop`."""

    def __init__(self, opened: OpenLesson) -> None:
        self._opened = opened
        self._ended = threading.Event()
        self._thread = threading.Thread(target=self._run, name="keeper", daemon=True)

    def start(self) -> None:
        self._thread.start()

    def stop(self) -> None:
        """Ends the thread; what is not saved is saved by `OpenLesson.close`."""
        self._ended.set()
        self._opened.wake.set()
        self._thread.join()

    def _run(self) -> None:
        opened = self._opened
        while not self._ended.is_set():
            woken = opened.wake.wait(LOOK)
            opened.wake.clear()
            if woken:
                self._ended.wait(GATHER)
            opened.look()
            if woken or opened.troubled:
                opened.save()
