"""The king in words: whose king is meant, and where it stands."""

from __future__ import annotations

from .board import pieces
from .here import Here, Unread
from .patterns import SQUARE
from .reference import Reference

KING = (
    r"(?: white 's| black 's| our| your| my| his| her| their| the opponent 's| (?:the|our|your|his|her)(?: (?:white|black|enemy|poor|lonely|own))?| white| black)"
    rf" king(?: (?:on|at) {SQUARE})?"
)
"""A king in words, as a pattern for a slot {king}."""


def owner(here: Here, text: str) -> str:
    """Whose king the words mean; of "the king", the one that stands on the square named, or has just moved.

    :raises Unread: when it is not clear, or no king stands on the square named.
    """
    reference = Reference.read(text)
    side = here.owner(reference)
    words = text.split()
    if side is None and "opponent" in words:
        side = here.side("the opponent")
    if side is None and {"white", "black"} & set(words):
        side = "white" if "white" in words else "black"
    if side is None and "your" in words:
        side = here.taught
    found = [s for s in ("white", "black") if side in (None, s)]
    kings = {s: pieces(here.board, s, "k")[0] for s in found}
    if reference.square is not None:
        kings = {s: at for s, at in kings.items() if at == reference.square}
        if not kings:
            raise Unread(f"no such king stands on {reference.square}")
    if len(kings) > 1:
        last = here.spot.moves[-1][2:4] if here.spot.moves else None
        out = {s: at for s, at in kings.items() if at[1] not in "18"}
        checked = {here.board.turn: kings[here.board.turn]} if here.board.in_check else {}
        kings = {s: at for s, at in kings.items() if at == last} or checked or out
    if len(kings) != 1:
        raise Unread(f"it is not clear whose king {text!r} is")
    return next(iter(kings))
