"""Which move the words mean: a move written out, "the knight move", or "this" for the one just played."""

from __future__ import annotations

import re
from collections.abc import Sequence
from contextlib import suppress
from typing import Any

from .board import LETTERS, other, side_of
from .claim import Spot
from .here import Agent, Here, Named, Unread, meant
from .patterns import DESCRIBED, MOVE
from .sentence import sentences
from .spoken import SPOKEN
from .verbs import forms
from .word import Word
from .worded import TAKING, Worded, fitting

PLAYED = rf"(?: {MOVE.pattern}| (?:this|that|it|which)|{DESCRIBED})"
"""A slot for words that mean a move. A kind takes it as its `agent`, so that "would" is weighed as of a move."""

_POINTERS = frozenset({"this", "that", "it", "which"})


def played(here: Here, text: str | None) -> Named:
    """The move that a `PLAYED` slot means; without words the one just played.

    :raises Unread: when it is not clear, or cannot be played.
    """
    if _rests_on_a_reply(here):
        raise Unread("the move after the reason is a reply, not the way there")
    if text is not None and MOVE.fullmatch(text):
        try:
            return here.named(text)
        except Unread:
            found = _instead(here, text) or _some_moves_ago(here, text)
            if found is None:
                raise
            return found
    if text is not None and text not in _POINTERS:
        return _worded(here, text)
    last = here.last()
    spoken = named_before(here)
    if spoken not in (None, last.uci[2:4]) and not _means(here, spoken or "", last):
        raise Unread(f"it is not clear whether {spoken} is meant or the move just played")
    topic = here.topic if text in {"it", "which"} else None
    if topic is not None and last.uci[2:4] not in here.find(topic):
        raise Unread(f"{text!r} may mean {topic}")
    return last


def _instead(here: Here, text: str) -> Named | None:
    """A move played instead of one that the sentence has named by its number: "4. Nxe5 was greedy; better was Nxd4"."""
    spoken = named_before(here)
    if spoken is None or "." not in spoken or "." in text:
        return None
    with suppress(Unread, ValueError):
        before = here.named(spoken).before
        return Named(before, meant(before, text), before.board.turn)
    return None


def _some_moves_ago(here: Here, text: str) -> Named | None:
    """The move of the line that was played last as it is written: "g6 was the mistake", a move or more ago."""
    san = _san(text)
    if _ALLOWED.search(here.said):
        return None
    for back in range(2, min(_WRITTEN, len(here.spot.moves)) + 1):
        before = here.spot.earlier(back)
        uci = here.spot.moves[len(before.moves)]
        if _san(before.board.san(uci)) == san:
            return Named(before, uci, before.board.turn)
    return None


def _means(here: Here, spoken: str, last: Named) -> bool:
    """Whether a move as it was named is the one just played: "queen takes" is Qxd4."""
    if _san(spoken) == _san(last.before.board.san(last.uci)):
        return True
    if not re.fullmatch(SPOKEN, spoken):
        return False
    with suppress(Unread):
        return here.named(spoken).uci == last.uci
    return False


def _worded(here: Here, text: str) -> Named:
    """The move that is said in words: the one just played, one to be played here, or one instead of the last; there may be but one."""
    words = text.split()
    written = [w for w in words if MOVE.fullmatch(w) and not re.fullmatch("[a-h][1-8]", w)]
    if len(written) == 1:
        return here.named(written[0])
    spot = here.spot
    said = Worded.read(text)
    if "last" in words or "previous" in words:
        return _last_of(here, words)
    if said is None or not said.telling:
        return here.described(text)
    if words[0] in TAKING and words[-1] == "it" and here.topic:
        text = f"{words[0]} {here.topic}"
        words = text.split()
    whose = here.side(words[0]) if words[0] in _WHOSE else None
    taken = next((w for w in words[1:] if w in _WHOSE), None) if words[0] in TAKING else None
    if taken is not None:
        whose = other(here.side(taken))  # "capturing our bishop"
    done = words[0] in {"this", "that"} or whose not in (None, spot.board.turn)
    if _NOW.search(here.said) and not done:
        coming = fitting(spot, text)
        if here.shown_next in coming:
            coming = [here.shown_next]
        if len(coming) == 1:
            return Named(spot, coming[0], spot.board.turn)
        if coming:
            raise Unread(f"it is not clear which move {text!r} means")
    spots = [spot.earlier(1), spot, spot.earlier(1)] if spot.moves else [spot]
    for number, at in enumerate(spots):
        if whose is not None and at.board.turn != whose:
            continue
        found = fitting(at, text)
        if number == 0 and len(spots) > 1:
            if spot.moves[-1] in found:
                return Named(at, spot.moves[-1], at.board.turn)
            if words[0] in {"this", "that"}:
                break
        elif len(found) == 1:
            return Named(at, found[0], at.board.turn)
        elif found and number == 1:
            break
    told = said.takes or said.to or said.castles
    for back in range(2, min(_AGO, len(spot.moves)) + 1 if told else 0):
        at = spot.earlier(back)
        move = spot.moves[len(spot.moves) - back]
        if whose in (None, at.board.turn) and move in fitting(at, text):
            return Named(at, move, at.board.turn)  # "taking the knight was the losing move"
    raise Unread(f"it is not clear which move {text!r} means")


_NOW = re.compile(r"^(?!.*\b(?:was|were|did|had)\b).*\w now\b(?! that)")
"""Words of a move that is still to come: "taking on d4 now is a blunder"."""
_AGO = 4
"""Plies within which a move that is only described may have been played."""
_ALLOWED = re.compile(r"\b(?:can|could|may|might|would|should|if)\b")
"""Words of what is not said to have been played."""
_WRITTEN = 10
"""The same for one that is written out."""


def _last_of(here: Here, words: list[str]) -> Named:
    """ "The last move", "White's last move": that of the side, if it is as the words say."""
    side = here.side(words[0]) if words[0] in _WHOSE else None
    last = here.last()
    if side in (None, last.side):
        return here.described(" ".join(w for w in words if w not in {"last", "previous"}))
    before = here.at(last.before)
    return before.described(" ".join(w for w in words if w not in {"last", "previous"}))


_WHOSE = frozenset({"our", "my", "your", "his", "her", "their", "white", "black"})
_REASON = re.compile(
    r"\b(?:because of|thanks to|in view of|due to|owing to|on account of)\b(?P<moves>.*)$",
    re.IGNORECASE,
)


def _rests_on_a_reply(here: Here) -> bool:
    """Whether the reader has played the moves behind "because of" before the clause was asked about."""
    reason = _REASON.search(" ".join(here.words.split()))
    if reason is None or not here.spot.moves:
        return False
    last = here.spot.earlier(1).board.san(here.spot.moves[-1])
    said = [m.group() for m in MOVE.finditer(reason["moves"])]
    return bool(said) and _san(said[-1]) == _san(last)


def contrasted(here: Here) -> bool:
    """Whether "but" or the like follows the clause: it may be taken back at once."""
    return (
        re.match(r"\W*(?:but|yet|though|although|however|at first)\b", around(here)[1]) is not None
    )


def doer(here: Here, text: str | None) -> Agent:
    """Who acts in an `agent` slot of any words: as `Here.agent`, but a pointer is a move only when that is plain.

    Without words it is the side that the clause before spoke of, or who moved last.

    :raises Unread: when it is not clear.
    """
    if text is None:
        return Agent(here.implied(), here.spot)
    if text in _POINTERS or text == "who":
        if here.topic is not None and text != "this" and here.find(here.topic):
            at = here.agent(text)
            return Agent(at.side, at.spot, at.square)
        move = played(here, text)
        return Agent(move.side, move.after, move.uci[2:4], move)
    try:
        return here.agent(text)
    except Unread:
        said = Worded.read(text)
        if said is None or not (said.castles or (said.telling and said.to)):
            raise
    move = _worded(here, text)  # "castling loses a piece", of a move that is to come
    return Agent(move.side, move.after, move.uci[2:4], move)


def follows(spot: Spot, text: str) -> str:
    """A move (SAN, with or without its number) that can be played at a spot, in UCI.

    :raises Unread: when it cannot.
    """
    try:
        return spot.board.parse_san(text.rstrip(".").split(".")[-1])
    except ValueError as error:
        raise Unread(f"{text} cannot be played there") from error


def around(here: Here) -> tuple[str, str]:
    """The text of the comment before the words of a clause, and behind them."""
    for comment in here.place.comments:
        if comment.start <= here.start < comment.start + len(comment.text):
            return comment.text[: here.start - comment.start], comment.text[
                here.end - comment.start :
            ]
    return "", ""


def supposed(here: Here) -> bool:
    """Whether the sentence itself has played on from the position shown: "if he takes, ..."."""
    shown = tuple(here.place.moves())
    return len(here.spot.moves) > len(shown) and here.spot.moves[: len(shown)] == shown


def castling(here: Here, side: str) -> Named:
    """The one way in which a side that is to move, or has just moved instead, may castle.

    :raises Unread: when there is none, or two.
    """
    spots = [here.spot, *([here.spot.earlier(1)] if here.spot.moves else [])]
    for spot in spots:
        if spot.board.turn != side:
            continue
        ways = [m for m in spot.board.legal_moves() if spot.board.san(m).startswith("O-O")]
        if len(ways) == 1:
            return Named(spot, ways[0], side)
        if ways:
            raise Unread("it is not clear to which side is castled")
    raise Unread(f"{side} cannot castle here")


def denied(slots: dict[str, Any]) -> bool:
    """Whether the verb of a clause carries a "not"."""
    verb = slots.get("verb")
    return verb is not None and bool(verb.negated)


def piece_side(spot: Spot, at: str) -> str:
    """Whose piece stands on a square that is not empty."""
    return side_of(spot.board.piece_at(at) or "K")


def named_before(here: Here) -> str | None:
    """The move that the same sentence names last before this clause."""
    for comment in here.place.comments:
        if not comment.start <= here.start < comment.start + len(comment.text):
            continue
        for sentence in sentences(comment.text, comment.start):
            if not sentence.start <= here.start < sentence.end:
                continue
            said = [
                w
                for number, w in enumerate(sentence.words)
                if w.move is not None
                and sentence.start + w.end <= here.start
                and not _only_square(sentence.words, number)
                and not _prevented(sentence.words, number)
            ]
            return said[-1].norm if said else None
    return None


def _only_square(words: Sequence[Word], at: int) -> bool:
    """Whether a square is no move there: "the c8 bishop", "on d5"."""
    if not re.fullmatch("[a-h][1-8]", words[at].norm):
        return False
    before = words[at - 1].norm if at else ""
    after = words[at + 1].norm if at + 1 < len(words) else ""
    return after in LETTERS or before in {"on", "at", "from", "of", "behind"}


_STOPPING = frozenset(
    form for verb in ("prevent", "stop", "preclude", "thwart", "forbid") for form in forms(verb)
)
_PARTED = frozenset({",", ";", ":", "-", "and", "but", "because", "since", "so", "which"})


def _prevented(words: Sequence[Word], at: int) -> bool:
    """Whether a move is only named as one that is prevented: "to stop White from playing Ba3"."""
    for word in reversed(words[max(0, at - _REACH) : at]):
        if word.norm in _PARTED or word.move is not None:
            return False
        if word.norm in _STOPPING:
            return True
    return False


_REACH = 10
"""Words within which a verb speaks of a move."""


def _san(text: str) -> str:
    return text.split(".")[-1].rstrip("+#")


__all__ = [
    "PLAYED",
    "around",
    "castling",
    "contrasted",
    "denied",
    "doer",
    "follows",
    "named_before",
    "piece_side",
    "played",
    "supposed",
]
