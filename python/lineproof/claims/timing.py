"""Timing: whether a clause speaks of the position as it stands, or of what may come or was."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .here import Here, Unread
from .patterns import MOVE
from .sentence import sentences
from .verbs import Verb

_BEFORE_A_SQUARE = frozenset(
    {
        "prevents",
        "prevent",
        "preventing",
        "stops",
        "stop",
        "stopping",
        "against",
        "avoids",
        "of",
        "on",
        "at",
        "from",
        "to",
    }
)
_LATER = frozenset({"can", "will", "must", "shall"})


def as_it_stands(here: Here, slots: Mapping[str, Any]) -> None:
    """Lets a clause pass that speaks of the position here.

    "Nd5 will (or would) threaten the queen" does, for the move is played first; "White will threaten the queen" does not.

    :raises Unread: when the verb speaks of what may come, or of what was.
    """
    verb = slots.get("verb")
    if not isinstance(verb, Verb):
        return
    named = any(MOVE.fullmatch(str(slots.get(slot, ""))) for slot in ("agent", "by"))
    played = here.spot.moves != tuple(here.place.moves())
    if (verb.modal in _LATER or verb.supposed) and not (named or played):
        raise Unread("said of what may come, not of this position")
    if verb.past:
        raise Unread("said of an earlier moment")


def of_this_move(here: Here) -> None:
    """Lets a clause without a subject ("threatening mate", "with tempo") pass that speaks of the move just played.

    In "White prepares Nd5, threatening mate" it speaks of Nd5, which nobody has played.

    :raises Unread: when the sentence has named another move before it.
    """
    played = {_bare(b.san(uci)) for b, uci in zip(here.spot.boards, here.spot.moves, strict=False)}
    for comment in here.place.comments:
        for sentence in sentences(comment.text, comment.start):
            if not sentence.start <= here.start < sentence.end:
                continue
            for word, before in zip(
                sentence.words, ("", *(w.norm for w in sentence.words)), strict=False
            ):
                if sentence.start + word.start >= here.start:
                    return
                if (
                    word.san is not None
                    and _bare(word.san) not in played
                    and before not in _BEFORE_A_SQUARE
                ):
                    raise Unread(f"it may be said of {word.norm}, which is not on the board")


def _bare(san: str) -> str:
    return san.rstrip("+#")
