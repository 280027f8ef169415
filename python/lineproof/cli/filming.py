"""The options of `publish` for captions and the video."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import CommandError

if TYPE_CHECKING:
    from lineproof.facade import Lesson
    from lineproof.order import RunningOrder
    from lineproof.publish import Filming, Product

    from .progress import Tell

CAPTIONS, VIDEO = "captions", "video"


def add_filming(command: argparse.ArgumentParser) -> None:
    """Adds the options; `filming(given, products)` and `told_order(given, lesson, tell)` are what they choose."""
    group = command.add_argument_group("of captions and the video, as of `lineproof order`")
    group.add_argument(
        "--minutes", type=float, metavar="N", help="leave out what does not fit into N minutes"
    )
    group.add_argument(
        "--study", action="store_true", help="ask at pause points found by search too"
    )
    group = command.add_argument_group("of the video, which is made only where --only names it")
    group.add_argument(
        "--voice",
        metavar="FILE",
        type=Path,
        help="a recording to lay under it: WAV, MP3, M4A, FLAC",
    )
    group.add_argument("--vertical", action="store_true", help="higher than wide: 1080x1920")
    group.add_argument(
        "--loop", type=int, metavar="LINE", help="one line alone, by its number, as a short loop"
    )
    group.add_argument(
        "--burn-captions",
        action="store_true",
        help="draw the captions into the pictures, below the board",
    )
    group.add_argument(
        "--constant-rate",
        action="store_true",
        help="all 30 frames a second, for programs that cut videos; takes several times as long",
    )
    group.add_argument("--codec", choices=("h264", "av1"), help="of the pictures (h264)")


def filming(given: argparse.Namespace, products: Sequence[Product]) -> Filming:
    """:raises CommandError: when an option is given and the product that it is for is not asked for."""
    from lineproof.publish import Filming

    names = {product.name for product in products}
    for option in ("minutes", "study"):
        if not names & {CAPTIONS, VIDEO} and getattr(given, option) not in (None, False):
            raise CommandError(
                f"--{option} is for captions and the video; ask for one of them with --only"
            )
    asked = VIDEO in names
    for option in ("voice", "vertical", "loop", "burn_captions", "constant_rate", "codec"):
        if not asked and getattr(given, option) not in (None, False):
            name = option.replace("_", "-")
            raise CommandError(f"--{name} is for the video; ask for it with --only {VIDEO}")
    return Filming(
        given.voice,
        given.vertical,
        given.loop,
        given.burn_captions,
        given.constant_rate,
        given.codec or "h264",
    )


def told_order(given: argparse.Namespace, lesson: Lesson, tell: Tell | None) -> RunningOrder | None:
    """The running order that captions and video follow; None for that of the whole lesson.

    :raises lineproof.order.OrderError: as `Lesson.order`.
    """
    if given.minutes is None and not given.study:
        return None
    return lesson.order(
        minutes=given.minutes, study=given.study, progress=tell, collection=given.collection
    )
