"""How long a caption must stand to be read, and what of that could not be kept.

All numbers are common practice.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

if TYPE_CHECKING:
    from .breaking import Caption

SPEED: Final = 17.0
"""Characters a second, at most."""
SHORTEST, LONGEST = 1.0, 7.0
"""Seconds of a caption."""


def unkept(captions: Sequence[Caption]) -> tuple[str, ...]:
    """What cannot be kept, since the words are said faster, in a sentence each."""
    fast = [caption for caption in captions if caption.speed > SPEED + 0.05]
    short = [caption for caption in captions if caption.seconds < SHORTEST]
    told = []
    if fast:
        most = max(caption.speed for caption in fast)
        told.append(
            f"{len(fast):,} of {_counted(captions)} must be read faster than {SPEED:.0f} characters a second (the fastest {most:.0f}):"
            " the words are said so fast"
        )
    if short:
        least = min(caption.seconds for caption in short)
        told.append(
            f"{len(short):,} of {_counted(captions)} stand for less than {SHORTEST:.0f} s (the shortest {least:.1f} s):"
            " what comes next is said too soon"
        )
    return tuple(told)


def _counted(captions: Sequence[Caption]) -> str:
    return f"{len(captions):,} caption{'' if len(captions) == 1 else 's'}"
