"""Where the audience is asked: by the author's own words, or at a pause point that was found by search."""

from __future__ import annotations

import re
from dataclasses import dataclass

from lineproof.claims.sentence import Sentence
from lineproof.engine import Board

from .timing import ASK, ASKED, SHOW

_FIND = re.compile(
    r"\bpause (?:here|now|the|a)\b|\b(?:find|found|spot|guess|work out) the (?:\w+ )?(?:move|punishment|win|refutation|answer|reply|idea|mate)\b"
    r"|\bcan (?:you|anybody|anyone) (?:see|find|spot)\b|\bwhat (?:would|do|will) you (?:play|do)\b|\byour (?:turn|move)[:?.!]|\btake a (?:minute|moment)\b",
    re.I,
)
_HANDS = re.compile(r"\bhands up\b|\bwho would (?:have )?play(?:ed)?\b", re.I)


@dataclass(frozen=True)
class Point:
    """A pause point at a position, by its key. best: the move to find, in UCI. grade: 1 to 5."""

    key: int
    best: str
    grade: int


def asks(sentence: Sentence) -> float | None:
    """Seconds for which a sentence makes the audience think; None where it asks nothing."""
    if _HANDS.search(sentence.text):
        return SHOW
    return ASKED if _FIND.search(sentence.text) else None


def question(board: Board, point: Point) -> tuple[str, float]:
    """What is asked at a pause point, and for how long."""
    side = board.turn.capitalize()
    if board.in_check:
        ask = f"{side} is in check: how does {side} get out of it best?"
    else:
        ask = f"{side} to move: what would you play?"
    return ask, ASK[point.grade]


def gives_away(sentence: Sentence, san: str) -> bool:
    """Whether a sentence names the move that is to be found."""
    bare = re.sub(r"[x+#]", "", san)
    return any(word.san and re.sub(r"[x+#]", "", word.san) == bare for word in sentence.words)
