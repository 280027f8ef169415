"""The running order that captions and video follow."""

from __future__ import annotations

from lineproof.lesson import Lesson
from lineproof.order import OrderError, RunningOrder, running_order
from lineproof.order.timing import length

from .product import Found, PublishError


def told(lesson: Lesson, found: Found, product: str) -> RunningOrder:
    """:raises PublishError: when the lesson has no words."""
    if found.order is not None:
        return found.order
    try:
        return running_order(lesson)
    except OrderError as error:
        raise PublishError(
            str(error).removeprefix(f"{lesson.name}: "),
            path=lesson.name,
            hint=f"or leave {product} out with --only",
        ) from error


def left_out(order: RunningOrder) -> tuple[str, ...]:
    """What a cut order leaves out, for the author."""
    if order.minutes is None or not order.cuts:
        return ()
    lines = f"{len(order.cuts):,} line{'' if len(order.cuts) == 1 else 's'} left out"
    fits = "to fit into" if order.fits else "and still longer than the"
    minutes = f"{order.minutes:g} minute{'' if order.minutes == 1 else 's'}"
    return (
        f"{lines}, {fits} {minutes}: it lasts {length(order.seconds)} of {length(order.whole)}",
    )
