"""The running order that captions and video follow: the one that `lineproof order` prints without further options."""

from __future__ import annotations

from lineproof.lesson import Lesson
from lineproof.order import OrderError, RunningOrder, running_order

from .product import PublishError


def told(lesson: Lesson, product: str) -> RunningOrder:
    """:raises PublishError: when the lesson has no words."""
    try:
        return running_order(lesson)
    except OrderError as error:
        raise PublishError(
            str(error).removeprefix(f"{lesson.name}: "),
            path=lesson.name,
            hint=f"or leave {product} out with --only",
        ) from error
