"""Events for the windows that show a lesson, as server-sent events (HTML Living Standard, 9.2).

Threads publish, windows read. A window that reads too slowly gets the newest of each sort only, so that nothing piles up.
"""

from __future__ import annotations

import asyncio
import threading
from collections.abc import AsyncIterator, Callable, Sequence

from pydantic import BaseModel

ALIVE = 15
"""Seconds after which a window without news gets a sign of life."""

News = tuple[str, BaseModel]
"""An event and its name."""


class Events:
    """The events of one lesson."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._windows: set[_Window] = set()

    def publish(self, name: str, value: BaseModel) -> None:
        """Sends an event to every window. From any thread."""
        text = _spelled(name, value)
        with self._lock:
            windows = tuple(self._windows)
        for window in windows:
            window.put(name, text)

    def close(self) -> None:
        """Ends the streams of all windows."""
        with self._lock:
            windows = tuple(self._windows)
        for window in windows:
            window.put("", "")

    async def stream(self, standing: Callable[[], Sequence[News]]) -> AsyncIterator[str]:
        """The events from now on, for one window; first how it stands, as `standing` says."""
        window = _Window(asyncio.get_running_loop())
        with self._lock:
            self._windows.add(window)
        try:
            for name, value in await asyncio.to_thread(standing):
                yield _spelled(name, value)
            while True:
                for name, text in await window.take():
                    if not name:
                        return
                    yield text
        finally:
            with self._lock:
                self._windows.discard(window)


def _spelled(name: str, value: BaseModel) -> str:
    return f"event: {name}\ndata: {value.model_dump_json()}\n\n"


class _Window:
    """What one window has not been sent yet, by the name of the event."""

    def __init__(self, loop: asyncio.AbstractEventLoop) -> None:
        self._loop = loop
        self._news = asyncio.Event()
        self._lock = threading.Lock()
        self._waiting: dict[str, str] = {}

    def put(self, name: str, text: str) -> None:
        with self._lock:
            self._waiting.pop(name, None)
            self._waiting[name] = text
        try:
            self._loop.call_soon_threadsafe(self._news.set)
        except RuntimeError:  # the server is being stopped
            return

    async def take(self) -> list[tuple[str, str]]:
        try:
            await asyncio.wait_for(self._news.wait(), ALIVE)
        except TimeoutError:
            return [("alive", ": alive\n\n")]
        self._news.clear()
        with self._lock:
            found, self._waiting = list(self._waiting.items()), {}
        return found
