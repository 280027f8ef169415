"""A conversation with a UCI program, line by line."""

from __future__ import annotations

import queue
import subprocess
import threading
import time
from collections.abc import Sequence
from types import TracebackType
from typing import Self

PATIENCE = 30.0
"""Seconds; far more than any answer takes."""


class Talk:
    """A running program. Its lines are read as they come, with the time of each."""

    def __init__(self, command: Sequence[str]) -> None:
        self.process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        self._lines: queue.Queue[tuple[float, str] | None] = queue.Queue()
        threading.Thread(target=self._read, daemon=True).start()

    def _read(self) -> None:
        assert self.process.stdout is not None
        for line in self.process.stdout:
            self._lines.put((time.perf_counter(), line.decode("utf-8").rstrip("\r\n")))
        self._lines.put(None)

    def tell(self, *lines: str) -> float:
        """Sends lines; the time when they were sent."""
        return self.send("".join(f"{line}\n" for line in lines).encode())

    def send(self, data: bytes) -> float:
        assert self.process.stdin is not None
        sent = time.perf_counter()
        self.process.stdin.write(data)
        self.process.stdin.flush()
        return sent

    def until(self, beginning: str) -> list[str]:
        """Lines up to the first one that begins so."""
        return self.until_timed(beginning)[0]

    def until_timed(self, beginning: str) -> tuple[list[str], float]:
        lines: list[str] = []
        deadline = time.perf_counter() + PATIENCE
        while True:
            try:
                heard = self._lines.get(timeout=max(0.0, deadline - time.perf_counter()))
            except queue.Empty:
                raise AssertionError(f"no '{beginning}' after {lines[-5:]}") from None
            if heard is None:
                raise AssertionError(f"ended before '{beginning}', after {lines[-5:]}")
            at, line = heard
            lines.append(line)
            if line.startswith(beginning):
                return lines, at

    def said_within(self, seconds: float) -> list[str]:
        """What is said in so much time."""
        deadline = time.perf_counter() + seconds
        lines: list[str] = []
        while (left := deadline - time.perf_counter()) > 0:
            try:
                heard = self._lines.get(timeout=left)
            except queue.Empty:
                break
            if heard is None:
                break
            lines.append(heard[1])
        return lines

    def best(self, *commands: str) -> str:
        """The best move after commands."""
        self.tell(*commands)
        return self.until("bestmove")[-1].split()[1]

    def close_input(self) -> None:
        assert self.process.stdin is not None
        self.process.stdin.close()

    def end(self, seconds: float = PATIENCE) -> int:
        """The exit status, once the program has ended by itself."""
        return self.process.wait(timeout=seconds)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        where: TracebackType | None,
    ) -> None:
        self.process.kill()
        self.process.wait()
