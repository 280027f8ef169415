"""Candidate openings side by side, in sentences and as JSON."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Any

from lineproof.claims.bands import spoken
from lineproof.claims.board import title
from lineproof.follow.weighing import MOVES, Weight

from .collected import interval
from .counted import counted, rare
from .plain import plain
from .studied import GUESSED

FORMAT = 1


def weighed(found: Sequence[Weight], rating: int, *, uncounted: str) -> str:
    """What `weigh` says. uncounted: why no games were counted, "" where some were."""
    return "\n".join(_weighed(found, rating, uncounted)) + "\n"


def _weighed(found: Sequence[Weight], rating: int, uncounted: str) -> Iterator[str]:
    yield from begun(rating, uncounted)
    for one in found:
        yield ""
        name, *rest = weight_said(one, uncounted)
        yield name
        yield from (f"  {line}" for line in rest)


def begun(rating: int, uncounted: str) -> Iterator[str]:
    """For whom candidates are weighed, and from what."""
    yield f"For players of about {rating}, to answer 80 of 100 games for {MOVES} moves."
    if uncounted:
        yield f"{GUESSED}: {uncounted}."


def weight_said(one: Weight, uncounted: str) -> Iterator[str]:
    """A candidate's name, then what it asks and gives."""
    side = one.candidate.side
    yield f"{plain(one.candidate.name)}{f': {one.opening}' if one.opening else ''}, for {title(side)}"
    yield f"comes up in about {rare(one.reach)} games in which {title(side)} plays for it"
    yield needs(one)
    yield f"{counted(one.by_heart, 'unnatural only move')} to know by heart"
    yield f"where it begins {spoken(side, one.points)}; at worst {spoken(side, one.worst)}"
    if one.score is not None or not uncounted:
        yield played_by(one)


def needs(one: Weight) -> str:
    """How much there is to learn."""
    text = f"{counted(one.positions, 'position')} to learn"
    if one.candidate.graph:
        text += f", {one.from_lesson} of them in the lesson"
    return text if one.whole else f"{text}; that answers only {one.answered:.0f} of 100 games"


def played_by(one: Weight) -> str:
    """How games of this audience ended that came to it."""
    if one.score is None:
        return "no game of this audience with a result comes to it"
    return (
        f"White scored {one.score.points:.0f} of 100 in {counted(one.score.games, 'game')}"
        f" (95 %: {interval(one.score.interval)})"
    )


def weighed_json(found: Sequence[Weight], rating: int) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "audience": rating,
        "moves": MOVES,
        "candidates": [
            {
                "name": one.candidate.name,
                "opening": str(one.opening) if one.opening else None,
                "side": one.candidate.side,
                "fen": one.candidate.spot.board.fen,
                "reach": round(one.reach, 3),
                "positions": one.positions,
                "whole": one.whole,
                "answered": round(one.answered, 3),
                "from_lesson": one.from_lesson,
                "by_heart": one.by_heart,
                "points": one.points,
                "worst": one.worst,
                "score": None
                if one.score is None
                else {
                    "games": one.score.games,
                    "white_points": round(one.score.points, 3),
                    "interval": {"low": one.score.interval.low, "high": one.score.interval.high},
                },
            }
            for one in found
        ],
    }
