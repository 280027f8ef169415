"""Progress on standard error, with an estimate of the time left; only on a terminal."""

from __future__ import annotations

import math
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Tell = Callable[[int, int], None]
"""Called with what is done and what there is in all."""


@contextmanager
def progress(what: str) -> Iterator[Tell | None]:
    """A line that follows the work on claims; None where nobody watches. It goes away at the end."""
    if not sys.stderr.isatty():
        yield None
        return
    from rich.progress import BarColumn, Progress, TextColumn

    from .width import error

    columns = (
        TextColumn(what),
        BarColumn(),
        TextColumn("{task.fields[done]}"),
    )
    with Progress(*columns, console=error(), transient=True) as bar:
        task = bar.add_task(what, total=None, done="")

        def tell(done: int, total: int) -> None:
            # the estimate is brought up to the work before it is told
            bar.update(task, completed=done, total=total)
            left = bar.tasks[0].time_remaining if done else None
            bar.update(task, done=status(done, total, left))

        yield tell


def status(done: int, total: int, left: float | None) -> str:
    """ "3 of 40 claims, about 12 s left". left: seconds, None where no estimate is known yet."""
    text = f"{done:,} of {total:,} {'claim' if total == 1 else 'claims'}"
    if left is None or done == total:
        return text
    whole = round(left)
    if whole < 60:
        return f"{text}, about {max(whole, 1)} s left"
    return f"{text}, about {math.ceil(whole / 60)} min left"
