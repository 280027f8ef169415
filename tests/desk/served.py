"""A desk that is served to real windows, in this process."""

from __future__ import annotations

import json
import queue
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import httpx

from lineproof.desk.lessons import Lessons
from lineproof.desk.serve import serve


@contextmanager
def served(lessons: Lessons) -> Iterator[str]:
    """The address, with the token of the run, while it is served."""
    from lineproof.desk import serve as module

    address: queue.Queue[str] = queue.Queue()
    servers: list[Any] = []
    real = module._Server

    class Server(real):  # type: ignore[misc, valid-type]
        def __init__(self, *given: Any) -> None:
            super().__init__(*given)
            servers.append(self)

    module._Server = Server  # type: ignore[misc]
    try:
        thread = threading.Thread(
            target=serve, args=(lessons,), kwargs={"browser": False, "started": address.put}
        )
        thread.start()
        yield address.get(timeout=60)
    finally:
        module._Server = real  # type: ignore[misc]
        servers[0].should_exit = True
        thread.join(60)
        assert not thread.is_alive()


def window(address: str) -> httpx.Client:
    """A window that was opened at the address."""
    base, token = address.split("/#token=")
    headers = {"Authorization": f"Bearer {token}", "Origin": base}
    return httpx.Client(base_url=base, headers=headers, timeout=60)


class Listening:
    """The events of a lesson as one window gets them."""

    def __init__(self, address: str, key: str = "1") -> None:
        self._news: queue.Queue[tuple[str, Any]] = queue.Queue()
        self._order: list[tuple[str, int | None]] = []
        self._passages: dict[str, Any] = {}
        self.news: list[Any] = []
        """The news of findings that were put together."""
        self._thread = threading.Thread(target=self._listen, args=(address, key), daemon=True)
        self._thread.start()

    def _listen(self, address: str, key: str) -> None:
        name = ""
        with (
            window(address) as client,
            client.stream("GET", f"/api/lessons/{key}/events", timeout=None) as stream,
        ):
            for line in stream.iter_lines():
                if line.startswith("event: "):
                    name = line.removeprefix("event: ")
                elif line.startswith("data: "):
                    self._news.put((name, json.loads(line.removeprefix("data: "))))

    def until(self, name: str, **values: Any) -> Any:
        """The next event of that name with these values."""
        while True:
            found, value = self._news.get(timeout=60)
            if found == "findings":
                self._take(value)
            if found == name and values.items() <= value.items():
                return value

    def findings(self, version: int) -> dict[str, Any]:
        """All that is found of a version, put together from the news of it once it is complete."""
        while True:
            news = self.until("findings", version=version, complete=True)
            if news["contradictions"] is not None:
                break
        parts: dict[str, list[Any]] = {"findings": [], "sentences": []}
        for key, comment in self._order:
            for name, found in parts.items():
                found += ({**each, "comment": comment} for each in self._passages[key][name])
        return {**{name: news[name] for name in news if name not in {"order", "passages"}}, **parts}

    def _take(self, news: dict[str, Any]) -> None:
        self.news.append(news)
        if news["order"] is not None:
            self._order = news["order"]
        fresh = {passage["key"]: passage for passage in news["passages"]}
        self._passages = {key: fresh.get(key) or self._passages[key] for key, _ in self._order}

    @property
    def ended(self) -> bool:
        self._thread.join(60)
        return not self._thread.is_alive()
