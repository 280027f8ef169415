"""The options of `publish` for the video."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import CommandError

if TYPE_CHECKING:
    from lineproof.publish import Filming, Product

VIDEO = "video"


def add_filming(command: argparse.ArgumentParser) -> None:
    """Adds the options; `filming(given, products)` is what they choose."""
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
    group.add_argument("--codec", choices=("h264", "av1"), help="of the pictures (h264)")


def filming(given: argparse.Namespace, products: Sequence[Product]) -> Filming:
    """:raises CommandError: when an option is given and the video is not asked for."""
    from lineproof.publish import Filming

    asked = any(product.name == VIDEO for product in products)
    for option in ("voice", "vertical", "loop", "burn_captions", "codec"):
        if not asked and getattr(given, option) not in (None, False):
            name = option.replace("_", "-")
            raise CommandError(f"--{name} is for the video; ask for it with --only {VIDEO}")
    return Filming(
        given.voice, given.vertical, given.loop, given.burn_captions, given.codec or "h264"
    )
