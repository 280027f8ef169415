"""An event loop in a thread of its own, on which the processes of an outside engine live."""

from __future__ import annotations

import asyncio
import threading
from collections.abc import Coroutine
from concurrent.futures import wait
from typing import Any, TypeVar

from lineproof._engine import Stop

_T = TypeVar("_T")

POLL = 0.05
"""Seconds between two looks at a stop."""
LAST = 10.0
"""Seconds that what still runs has to end at the close."""


class Stopped(Exception):  # noqa: N818 - a stop is no error
    """The stop was set while something was waited for."""


class Loop:
    """Runs coroutines for other threads."""

    def __init__(self) -> None:
        self._loop = asyncio.new_event_loop()
        self._closed = False
        # what a killed process leaves unread is no news
        self._loop.set_exception_handler(lambda _loop, _context: None)
        # the thread does not outlive the program
        self._thread = threading.Thread(target=self._run, name="outside engine", daemon=True)
        self._thread.start()

    def _run(self) -> None:
        asyncio.set_event_loop(self._loop)
        self._loop.run_forever()

    def run(self, doing: Coroutine[Any, Any, _T], stop: Stop | None = None) -> _T:
        """What the coroutine gives or raises, waited for by the calling thread.

        :raises Stopped: when the stop is set first, or the loop closed; the coroutine is cancelled then, and on Ctrl-C
        """
        if self._closed:
            doing.close()
            raise Stopped
        future = asyncio.run_coroutine_threadsafe(doing, self._loop)
        try:
            while not wait([future], timeout=POLL).done:
                if self._closed or (stop is not None and stop.is_set()):
                    raise Stopped
            return future.result()
        except BaseException:
            if not self._closed:
                future.cancel()
            raise

    def close(self) -> None:
        """Waits for what still runs, such as the ending of a process, and ends the thread."""
        self.run(_ended())
        self._closed = True
        self._loop.call_soon_threadsafe(self._loop.stop)
        self._thread.join()
        self._loop.close()


async def _ended() -> None:
    # all that may be left are processes being ended; each ends in its own time
    others = asyncio.all_tasks() - {asyncio.current_task()}
    if others:
        await asyncio.wait(others, timeout=LAST)
