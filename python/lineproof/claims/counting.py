"""Counting: how often a square is attacked or protected, in words and on the board."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from typing import Any

from lineproof.engine import Board

from .board import layers, name, names, other, side_of, title, upper
from .claim import Claim, Judgement, Mark, Outcome
from .here import Here, Unread
from .noun import Noun
from .patterns import MOVE, targets
from .pointing import meant
from .reference import Reference

TIMES: dict[str, Any] = {
    "once": 1, "only once": 1, "just once": 1, "just the once": 1, "the once": 1, "exactly once": 1, "twice": 2, "only twice": 2, "just twice": 2, "exactly twice": 2, "twice over": 2, "thrice": 3, "doubly": 2,
    **{f"{n} times": n for n in range(2, 8)},
    **{f"only {n} times": n for n in range(2, 8)},
    **{f"{n} times over": n for n in range(2, 8)},
    "a second time": 2, "for the second time": 2, "for a second time": 2, "a third time": 3, "for the third time": 3, "for a third time": 3, "a fourth time": 4, "for the fourth time": 4,
}  # fmt: skip
"""How often, in words."""

_OFTEN: Mapping[str, Any] = {
    **dict.fromkeys(("more often than", "more times than", "once more than", "one time more than", "more than"), "more"),
    **dict.fromkeys(("as often as", "just as often as", "as many times as", "exactly as often as"), "as"),
    **dict.fromkeys(("less often than", "fewer times than", "once less than"), "less"),
}  # fmt: skip
OFTEN: Mapping[str, Any] = {
    f"{how} {so}{done}": value
    for how, value in _OFTEN.items()
    for so in ("", "it is ", "it 's ")
    for done in ("defended", "protected", "guarded", "covered", "attacked", "hit")
}
"""One count against the other."""


_AGAIN = re.compile(r"\bonce (?:again|and for all|more(?! than| often))\b")


def square_meant(here: Here, text: str | None, side: str | None = None) -> tuple[str, str | None]:
    """The square that is counted, and the owner of what stands there, None when it is empty. side: whose piece it must be.

    :raises Unread: when it is not clear.
    """
    if _AGAIN.search(here.said):
        raise Unread('"once again" is no count')
    if text is not None:
        reference = Reference.read(text)
        if reference.letter is None and reference.square is not None:
            letter = here.board.piece_at(reference.square)
            return reference.square, None if letter is None else side_of(letter)
    found = meant(
        here,
        text,
        "qrbnpk",
        fits=None if side is None else lambda at: _owner(here.board, at) == side,
    )
    if len(found) != 1:
        raise Unread(f"{text!r} are several")
    return found[0], _owner(here.board, found[0])


def among(here: Here, text: str, good: Collection[str], near: str = "") -> list[str]:
    """The squares of the pieces that a list names, one for each: the only one there is, or the only one of `good`.

    near: of several of which none is good, the one nearest to this square is said to be.

    :raises Unread: when it is not clear which is meant.
    """
    found: list[str] = []
    for words in targets(text):
        squares = [at for at in here.find(words) if at not in found]
        if len(squares) > 1:
            fitting = [at for at in squares if at in good]
            none = not fitting and near
            squares = [min(squares, key=lambda at: _apart(at, near))] if none else fitting
        if len(squares) != 1:
            raise Unread(f"it is not clear which piece {words!r} means")
        found.extend(squares)
    return found


def several(noun: Noun) -> str | None:
    """A list of pieces, or several."""
    return noun.text if noun.type == "piece" and len(noun.parts) > 1 else None


def _apart(one: str, two: str) -> int:
    """How many moves of a king lie between two squares."""
    return max(abs(ord(one[0]) - ord(two[0])), abs(int(one[1]) - int(two[1])))


def _owner(board: Board, at: str) -> str:
    return side_of(board.piece_at(at) or "K")


def attacking_side(holder: str | None, said: str | None) -> str:
    """The side that attacks a square on which `holder`'s piece stands. said: the side that the words name.

    :raises Unread: when that is not clear, or the words name the piece's own side.
    """
    if holder is None:
        if said is None:
            raise Unread("the square is empty, and it is not said who attacks it")
        return said
    if said == holder:
        raise Unread("a side does not attack its own piece")
    return other(holder)


def side_or_count(here: Here, agent: str, times: int | None) -> None:
    """Lets pass a side that attacks or protects so often; one piece does it once, and can only add to a count.

    :raises Unread: for "the bishop attacks f7 twice".
    """
    if (
        times is not None
        and (here.find(agent) or MOVE.fullmatch(agent))
        and not _ADDS.search(here.said)
    ):
        raise Unread("one piece is said to do it several times")


_ADDS = re.compile(r"\b(?:second|third|fourth) time\b")


def counted(board: Board, side: str, at: str) -> tuple[int, int]:
    """Attacks of a side on a square: without and with the pieces lined up behind."""
    direct, behind = layers(board, side, at)
    return len(direct), len(direct) + len(behind)


def judged(claim: Claim, doing: str, done: str) -> Judgement:
    """The answer to a count: n, or this count against the other side's, or pieces that are named.

    doing, done: "attacks" and "attacked", or "protects" and "protected".
    """
    board, side = claim.spot.board, claim.side or "white"
    at: str = claim.params["at"]
    direct, behind = layers(board, side, at)
    near, far = counted(board, side, at)
    who = upper(name(board, at)) if board.piece_at(at) else f"The square {at}"
    numbers: dict[str, int | float | str] = {done: near, f"{done} with those behind": far}
    extra = f", and {times(far)} counting {names(board, behind)} behind" if behind else ""
    by = f" by {names(board, direct)}" if direct else ""
    because = f"{who} is {done} {times(near)}{by}{extra}."
    if near == 0:
        because = f"Nothing of {title(side)}'s {doing} {name(board, at)}."
    compared, wanted = claim.params.get("compared"), claim.params.get("n")
    pieces = claim.params.get("by") or []
    if compared is not None:
        rival_near, rival_far = counted(board, other(side), at)
        holds = _compares(near, rival_near, compared) or _compares(far, rival_far, compared)
        against = "attacked" if done == "protected" else "protected"
        because = f"{who} is {done} {times(near)} and {against} {times(rival_near)}"
        because += (
            f"; with the pieces behind {far} and {rival_far}."
            if (far, rival_far) != (near, rival_near)
            else "."
        )
    else:
        holds = wanted is None or wanted in (near, far)
        if holds and wanted is not None and wanted != near:
            because = f"Counting the pieces lined up behind, {name(board, at)} is {done} {times(far)}: by {names(board, [*direct, *behind])}."
        if not set(pieces) <= {*direct, *behind}:
            holds = False
            missing = [p for p in pieces if p not in {*direct, *behind}]
            because = f"{because[:-1]}; not by {names(board, missing)}."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        numbers,
        instead=None if holds else because,
        marks=tuple(Mark("move", (s, at), side) for s in direct),
    )


def _compares(one: int, rival: int, how: str) -> bool:
    return {"more": one > rival, "as": one >= rival, "less": one < rival}[how]


def times(count: int) -> str:
    """ "once", "twice", "3 times"."""
    return {0: "by nothing", 1: "once", 2: "twice"}.get(count, f"{count} times")
