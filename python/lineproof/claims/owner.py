"""Owner: turns of phrase by which somebody has something, is given it or is left with it, and who that is.

A kind that says what a side has (doubled pawns, a majority, an outpost) writes the noun once: `having("[{no}|a|the] backward pawn")`.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from .board import side_of
from .here import Here, Unread, absent
from .patterns import targets
from .reference import Reference

NO: dict[str, bool] = dict.fromkeys(("no", "not a single", "not 1"), True)  # fmt: skip
WITHOUT: dict[str, bool] = dict.fromkeys(("without", "without any", "without a"), True)
SLOTS = {"no": NO, "without": WITHOUT}
HAVE = "<have/get/keep/enjoy/own/possess/retain/obtain/acquire/accept/end up with/finish with/emerge with/stay with>"
GIVE = "<leave/give/saddle/burden/land/hand/grant>"
GIVING = "<ing:leave/give/saddle/burden/land/hand/grant>"


def having(noun: str) -> tuple[str, ...]:
    """Phrases for a noun: who has it, who is given it, that there is one."""
    return (
        f"{{side}} {HAVE} [{{very}}] {noun}",
        f"{{side}} <be:leave/saddle/burden/stick/land> with [{{very}}] {noun}",
        f"[{{agent}}] {GIVE} {{side}} [with] [{{very}}] {noun}",
        f"{GIVING} {{side}} [with] [{{very}}] {noun}",
        f"there <be> [{{very}}] {noun} [for {{side}}|in {{whose}} (position|camp|structure|pawn structure|ranks)]",
        f"{noun} for {{side}}",
        f"(with|{{without}}) {noun} [for {{side}}]",
        f"{{whose}} (position|structure|pawn structure|camp) <have/contain/show> [{{very}}] {noun}",
    )


def owning(noun: str) -> tuple[str, ...]:
    """Frames for a thing: who has it, who is given it, that there is one.

    noun: the words of a frame, places behind it included: "outpost [(on|at) {squares}]".
    """
    return (
        f"{{side}} <have> {noun}",
        f"{{side}} <live with/put up with/cope with/contend with/accept> {noun} if modal=must|can|may",
        f"[{{agent}}] <give> {{side}} {noun}",
        f"[{{agent}}] <give> {{side}} with {noun}",
        f"(position|camp|structure) <have> {noun}",
        f"[{{agent}}] <make/win> {noun} [for {{side}}]",
        f"<~> {noun} [for {{side}}]",
        f"{noun} <be>",
        f"{noun} <belong to> {{side}}",
        f"{noun} <speak/count> for {{side}}",
    )


def owner(here: Here, slots: dict[str, Any]) -> str | None:
    """Whose the thing is: as named, else None when the clause is impersonal ("there is"), else whom it speaks of.

    :raises Unread: when it is not clear.
    """
    if slots.get("side") in NEITHER:
        return None
    for slot in ("side", "whose"):
        if slot in slots:
            return named_side(here, slots[slot])
    if "known" in slots or "impersonal" in slots or here.said.split()[0] in {"there", "here"}:
        return None
    if here.subject is None:
        raise Unread("it is not clear whose that is")
    return here.implied()


NEITHER = frozenset({"neither side", "neither player", "nobody", "no one"})
"""Sides of whom what is said is denied of both."""


def named_side(here: Here, text: str) -> str:
    """Whom a side word means, as `Here.side` has it, looking also at what the sentence says next.

    :raises Unread: when it is not clear: in "he is cramped, but Black isn't losing" he may be Black.
    """
    side = here.side(text)
    if text in _HE:
        rest = _SENTENCE_END.split(here.lesson.text[here.end :], maxsplit=1)[0].lower()
        if re.search(rf"\b{here.taught}\b", rest):
            raise Unread(f"{text!r} can mean either side here")
    return side


_HE = frozenset({"he", "she", "they", "him", "his", "her", "their"})
_SENTENCE_END = re.compile(r"[.!?}](?:\s|$)|}")


def agreeing(here: Here, count: int) -> None:
    """Refuses one thing with "are": the words before were another thing, and were not read.

    :raises Unread: in "the knight and d5 are weak", of which only "d5 are weak" was read.
    """
    if count == 1 and re.search(r"\bare(?:n['’]t)?\b", here.said):
        raise Unread("several things are spoken of, of which one was read")


def denied(slots: dict[str, Any]) -> bool:
    """Whether a "no" or "without" stands before the noun."""
    return "no" in slots or "without" in slots


def brings(here: Here, slots: dict[str, Any]) -> bool:
    """Whether the clause says that something brings it about, rather than that it is so."""
    words = set(here.said.split())
    return "agent" in slots or bool(
        words & {"leaving", "giving", "saddling", "burdening", "handing", "granting", "creating"}
    )


def named_after(here: Here, slots: dict[str, Any]) -> Here:
    """Here, after the move that the clause names as the one which brings it about.

    :raises Unread: when it is not clear which move that is.
    """
    text = slots.get("agent")
    if text is None:
        return here
    try:
        return here.at(here.agent(text).spot)
    except Unread:
        verb = slots.get("verb")
        if (verb is None or not verb.done) and text.split()[-1] not in _TRADES:
            raise
        return here  # "the exchange has isolated the pawn": it has been made some moves ago


_TRADES = frozenset({"exchange", "trade", "swap"})
"""What may be about to happen: looked for in the next moves shown."""


def only_side(test: Callable[[str], object]) -> str | None:
    """The side for which a test finds something, None when it is both or neither."""
    found = [side for side in ("white", "black") if test(side)]
    return found[0] if len(found) == 1 else None


def either(side: str | None) -> tuple[str, ...]:
    """The sides to look at: the one named, or both."""
    return ("white", "black") if side is None else (side,)


def pawns_meant(
    here: Here, text: str, fits: Callable[[str], bool] | None = None
) -> tuple[str, list[str]]:
    """The pawns that a reference or a list of them means, with their side; "it" is the piece spoken of.

    fits: whether what is said can be true of a pawn; of several the only one that fits is meant.

    :raises Unread: when it is not clear which pawns or whose, or when none stands there.
    """
    if text in {"it", "this", "that", "which"}:
        agent = here.agent(text, "p")
        at = agent.square
        if at is None or (here.board.piece_at(at) or "").lower() != "p":
            raise Unread("it is not clear which pawn is meant")
        return agent.side, [at]
    said = targets(text)
    found: list[str] = []
    for part in said:
        reference = Reference.read(part)
        side = here.owner(reference)
        meant = [at for at in reference.squares(here.board, side) if _is_pawn(here, at)]
        if not meant:
            raise absent(part)
        if len(meant) > 1 and not (reference.plural and side is not None):
            good = [at for at in meant if fits is not None and fits(at)]
            meant = good if len(good) == 1 else here.salient(meant)
        if len(meant) > 1 and not reference.plural:
            raise Unread(f"it is not clear which pawn {part!r} means")
        found.extend(meant)
    sides = {side_of(here.board.piece_at(at) or "P") for at in found}
    if len(sides) != 1:
        raise Unread(f"it is not clear whose {text!r} are")
    return sides.pop(), found


def _is_pawn(here: Here, at: str) -> bool:
    return (here.board.piece_at(at) or "").lower() == "p"
