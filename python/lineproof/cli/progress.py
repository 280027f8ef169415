"""Progress on standard error, with an estimate of the time left; only on a terminal."""

from __future__ import annotations

import math
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager

Tell = Callable[[int, int], None]
"""Called with what is done and what there is in all."""


@contextmanager
def progress(name: str, doing: str = "Checking", noun: str = "claim") -> Iterator[Tell | None]:
    """A line that follows the work; None where nobody watches. It goes away at the end.

    It says at once that the lesson is read, which takes its time where the lesson is long, and from the first
    call on how many claims are checked. name: of the lesson, as it was given.
    doing, noun: what is done, to what.
    """
    if not sys.stderr.isatty():
        yield None
        return
    from rich.markup import escape
    from rich.progress import BarColumn, Progress, SpinnerColumn, TextColumn

    from lineproof.report.plain import plain

    from .width import error

    columns = (
        SpinnerColumn(),
        TextColumn("{task.description}"),
        BarColumn(),
        TextColumn("{task.fields[done]}"),
    )
    with Progress(*columns, console=error(), transient=True) as bar:
        task = bar.add_task(f"Reading {escape(plain(name))}", total=None, done="")

        def tell(done: int, total: int) -> None:
            # the estimate is brought up to the work before it is told
            bar.update(task, description=doing, completed=done, total=total)
            left = bar.tasks[0].time_remaining if done else None
            bar.update(task, done=status(done, total, left, noun))

        yield tell


def status(done: int, total: int, left: float | None, noun: str = "claim") -> str:
    """ "3 of 40 claims, about 12 s left". left: seconds, None where no estimate is known yet."""
    text = f"{done:,} of {total:,} {noun if total == 1 else noun + 's'}"
    if left is None or done == total:
        return text
    whole = round(left)
    if whole < 60:
        return f"{text}, about {max(whole, 1)} s left"
    return f"{text}, about {math.ceil(whole / 60)} min left"
