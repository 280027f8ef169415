"""Pointing: which piece, and which moment, the words of a clause point to."""

from __future__ import annotations

import re
from collections.abc import Callable

from .board import side_of
from .claim import Spot
from .here import Here, Unread, absent
from .reference import Reference
from .verbs import Verb

_POINTERS = frozenset({"it", "he", "she", "this", "that", "which", "who", "they"})


def meant(
    here: Here,
    text: str | None,
    letters: str = "qrbn",
    fits: Callable[[str], bool] | None = None,
    side: str | None = None,
    *,
    in_play: bool = True,
) -> list[str]:
    """Squares of the pieces of one side that words mean: one, or all of a plural.

    Of several that fit the words it is the one that has just moved, or else the only one that `fits`.
    in_play: whether it is the only one in play where neither helps. letters: the pieces that such a thing can be said of, as FEN letters. side: whose piece it must be.

    :raises Unread: when it is not clear which, or there is none.
    """
    if text is None or text in _POINTERS:
        text = here.topic
    if text is None:
        raise Unread("it is not clear which piece is meant")
    board = here.board
    reference = Reference.read(text)
    unclear = reference.whose == "theirs" and (
        here.third == here.taught or re.search(rf"\b{here.taught}\b", here.said) is not None
    )
    if unclear and side is not None:
        text = re.sub("^(?:his|their|her) ", "the ", text)  # the side decides whose it is
        reference = Reference.read(text)
    elif unclear:
        raise Unread(f"{text!r} can be of either side here")
    named = [at for at in here.find(text) if side is None or owner(here, at) == side]
    found = [at for at in named if (board.piece_at(at) or "").lower() in letters]
    if not found:
        raise Unread(f"it is not said of {text}") if named else absent(text)
    if reference.plural:
        if len({owner(here, at) for at in found}) > 1:
            raise Unread(f"it is not clear whose {text!r} are")
        return found
    if len(found) == 1:
        return found
    last = here.spot.moves[-1][2:4] if here.spot.moves else None
    good = found if fits is None else [at for at in found if fits(at)]
    if last in found and last in good:
        return [last]
    if fits is not None and len(good) == 1 and last not in found:
        return good
    if reference.letter == "k" and here.board.in_check:
        return [at for at in found if owner(here, at) == here.board.turn]
    if in_play and good and len(here.in_play(good)) == 1:
        return here.in_play(good)
    raise Unread(f"it is not clear which piece {text!r} means")


_GOES_ON = re.compile(
    r"\s*,?\s*(?:and|or|as well as)\s+(?:also\s+|both\s+)?(?:(?:the|an?|his|her|our|your|their|my|black['’]s|white['’]s)\s+)?(?:[a-h][1-8]-)?"
    r"(?:[a-h][1-8]\b|(?:king|queen|rook|bishop|knight|pawn)s?\b)(?:\s+(?:on|at)\s+[a-h][1-8])?\s*(?:[.,;:!?})]|$)",
    re.IGNORECASE,
)


def alone(here: Here) -> None:
    """Lets pass a clause whose last piece is not the first of several.

    :raises Unread: when the sentence goes on with "and the rook".
    """
    if _GOES_ON.match(here.lesson.text[here.end : here.end + 80]):
        raise Unread("more pieces are named than were read")


def owner(here: Here, at: str) -> str:
    """The side of the piece on a square."""
    return side_of(here.board.piece_at(at) or "K")


def present(verb: Verb | None, *modals: str) -> None:
    """Lets pass what is said of the position on the board.

    modals: "will", "can" ... that the kind knows how to weigh.

    :raises Unread: for a past, and for any other modal.
    """
    if verb is None:
        return
    if verb.past:
        raise Unread("said of an earlier position")
    if verb.modal not in {"", "almost", "would", "could", *modals}:
        raise Unread(f"{verb.modal!r}: said of what is still to come")


def moment(here: Here, side: str, verb: Verb | None = None) -> Spot:
    """The position after the move of `side` that a verb speaks of.

    It is the move just played; when the other side has answered already, the one before for a past, else the next of the line shown.

    :raises Unread: when that is no move.
    """
    future = verb is not None and verb.modal in {"will", "can"}
    if here.spot.moves and here.mover == side:
        if future:
            raise Unread("said of a move that is still to come")
        return here.spot
    if verb is not None and verb.done and len(here.spot.moves) >= 2:
        return here.spot.earlier(1)
    following = here.shown_next
    if here.board.turn != side or following is None:
        raise Unread(f"no move of {side} is shown that it can be said of")
    return here.spot.play(following)


def king(spot: Spot, side: str) -> str:
    """The square of a side's king."""
    return next(at for at, p in spot.board.pieces() if p == ("K" if side == "white" else "k"))


def checked_side(here: Here, text: str | None) -> str:
    """Whose king words such as "his king" or "the king on e8" mean; the king alone is that of the side in check, else of the mover.

    :raises Unread: when no king stands there.
    """
    if text is None:
        return here.board.turn
    reference = Reference.read(text)
    whose = here.owner(reference)
    if whose is None and reference.square is not None:
        at = here.board.piece_at(reference.square)
        if at is None or at.lower() != "k":
            raise absent(text)
        whose = side_of(at)
    return whose or here.board.turn


KING = (
    r"(?: the| his| her| our| your| their| my| black 's| white 's| the black| the white| black| white)"
    r" king(?: (?:on|at) [a-h][1-8])?"
)
"""A pattern for a king in words."""

__all__ = [
    "KING", "alone", "checked_side", "king", "meant", "moment", "owner", "present",
]  # fmt: skip
