"""Chapters: one for the beginning, and one for each line that a way back leads into."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from lineproof.order import Cue, RunningOrder
from lineproof.report.plain import plain
from lineproof.report.title import title_of

SHORTEST: Final = 10
"""Seconds of a chapter, at least: what players that show chapters ask for (common practice)."""


@dataclass(frozen=True)
class Chapter:
    """begins: in whole seconds. title: the lesson's, a game's, or the move that a line begins with."""

    begins: int
    title: str


def chapters(order: RunningOrder) -> tuple[Chapter, ...]:
    """The first begins at 0; a line that takes less than ten seconds belongs to the chapter before it."""
    found = [Chapter(0, plain(title_of(order.lesson)))]
    for number, cue in enumerate(order.cues):
        if cue.kind in ("go back to", "set up") and number:
            found.append(Chapter(int(cue.begins), _title(cue, order.cues[number + 1 :])))
    return tuple(_long_enough(found, order.seconds))


def chapter_list(chapters: Iterable[Chapter]) -> str:
    """A line each: "0:00 The Vienna Gambit"."""
    return "".join(f"{_clock(one.begins)} {one.title}\n" for one in chapters)


def _long_enough(chapters: Sequence[Chapter], end: float) -> list[Chapter]:
    """Without those that are too short; where the first is, the second goes."""
    kept = list(chapters)
    at = len(kept) - 1
    while len(kept) > 1 and at >= 0:
        until = kept[at + 1].begins if at + 1 < len(kept) else end
        if until - kept[at].begins < SHORTEST:
            del kept[max(at, 1)]
        at -= 1
    return kept


def _title(cue: Cue, after: Sequence[Cue]) -> str:
    """Where a way back leads: the first move that was not shown before, until the next way back."""
    if cue.kind == "set up" and (event := cue.place.game.tag("Event")) and event.strip("? "):
        return plain(event)
    for later in after:
        if later.kind in ("go back to", "set up"):
            break
        if later.kind == "play" and not later.again:
            return plain(f"{'Main line: ' if cue.main else ''}{later.place.label}")
    return plain(f"After {cue.place.label}" if cue.place.ply else "The start")


def _clock(seconds: int) -> str:
    """ "3:07", "1:03:07" """
    hours, rest = divmod(seconds, 3600)
    minutes = f"{rest // 60}:{rest % 60:02d}"
    return f"{hours}:{minutes:0>5}" if hours else minutes
