"""Waiting for a long computation outside Python, so that Ctrl-C still works."""

from __future__ import annotations

import threading
from collections.abc import Callable
from typing import TypeVar

_T = TypeVar("_T")


def wait_for(compute: Callable[[], _T]) -> _T:
    """What `compute` gives or raises; it runs in another thread, which does not outlive the program."""
    found: list[_T] = []
    failed: list[BaseException] = []

    def work() -> None:
        try:
            found.append(compute())
        except BaseException as error:
            failed.append(error)

    thread = threading.Thread(target=work, daemon=True)
    thread.start()
    while thread.is_alive():
        thread.join(0.1)
    if failed:
        raise failed[0]
    return found[0]
