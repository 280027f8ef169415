"""Waiting for what another thread or process does, with an end."""

from __future__ import annotations

import time
from collections.abc import Callable
from typing import TypeVar

T = TypeVar("T")
MOST = 60.0
"""Seconds after which nothing more is expected, even on a busy machine."""


def until(ready: Callable[[], T], most: float = MOST) -> T:
    """The first value that is true.

    :raises AssertionError: when there was none in time.
    """
    end = time.monotonic() + most
    while not (value := ready()):
        assert time.monotonic() < end, "it did not come about in time"
        time.sleep(0.02)
    return value
