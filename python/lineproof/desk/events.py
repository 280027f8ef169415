"""Events for the windows that show a lesson, as server-sent events (HTML Living Standard, 9.2).

Threads publish, windows read. A window that reads too slowly gets the newest of each sort only, so that nothing piles up. Of what is large
a window gets what has changed since it was told last.
"""

from __future__ import annotations

import asyncio
import threading
from collections.abc import AsyncIterator, Callable, Sequence
from typing import Protocol, TypeVar

from pydantic import BaseModel

ALIVE = 15
"""Seconds after which a window without news gets a sign of life."""

T = TypeVar("T")


class Growing(Protocol):
    """What is told of by its changes. All events of a name have the same type."""

    def since(self: T, before: T | None) -> BaseModel:
        """What has changed since another was told; all, where none was."""


Value = BaseModel | Growing
News = tuple[str, Value]
"""An event and its name."""


class Events:
    """The events of one lesson."""

    def __init__(self) -> None:
        self._lock = threading.Lock()
        self._windows: set[_Window] = set()

    def publish(self, name: str, value: Value) -> None:
        """Sends an event to every window. From any thread."""
        with self._lock:
            windows = tuple(self._windows)
        for window in windows:
            window.put(name, value)

    def close(self) -> None:
        """Ends the streams of all windows."""
        with self._lock:
            windows = tuple(self._windows)
        for window in windows:
            window.put("", None)

    async def stream(self, standing: Callable[[], Sequence[News]]) -> AsyncIterator[str]:
        """The events from now on, for one window; first how it stands, as `standing` says."""
        window = _Window(asyncio.get_running_loop())
        with self._lock:
            self._windows.add(window)
        try:
            for name, value in await asyncio.to_thread(standing):
                yield window.spelled(name, value)
            while True:
                for name, news in await window.take():
                    if news is None:
                        return
                    yield await asyncio.to_thread(window.spelled, name, news)
                if window.quiet:
                    yield ": alive\n\n"
        finally:
            with self._lock:
                self._windows.discard(window)


class _Window:
    """What one window has not been sent yet, by the name of the event."""

    def __init__(self, loop: asyncio.AbstractEventLoop) -> None:
        self._loop = loop
        self._news = asyncio.Event()
        self._lock = threading.Lock()
        self._waiting: dict[str, Value | None] = {}
        self._told: dict[str, Growing] = {}
        self.quiet = False
        """Whether there was no news for a while."""

    def spelled(self, name: str, value: Value) -> str:
        """The text of an event, for the window to have."""
        if not isinstance(value, BaseModel):
            before, self._told[name] = self._told.get(name), value
            value = value.since(before)
        return f"event: {name}\ndata: {value.model_dump_json()}\n\n"

    def put(self, name: str, value: Value | None) -> None:
        """None: there is no more."""
        with self._lock:
            self._waiting.pop(name, None)
            self._waiting[name] = value
        try:
            self._loop.call_soon_threadsafe(self._news.set)
        except RuntimeError:  # the server is being stopped
            return

    async def take(self) -> list[tuple[str, Value | None]]:
        """The news; none after a while without any."""
        self.quiet = False
        try:
            await asyncio.wait_for(self._news.wait(), ALIVE)
        except TimeoutError:
            self.quiet = True
            return []
        self._news.clear()
        with self._lock:
            found, self._waiting = list(self._waiting.items()), {}
        return found
