"""Timing: whether a verb speaks of the position as it stands, or of what may come or was."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from .here import Here, Unread
from .phrase import MOVE
from .verbs import Verb

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
