"""Move numbers in words: "with his seventh move", "it's move eight", "on move six Black brings the queen to f6", where they are wrong."""

from __future__ import annotations

import re

from .here import Here, Unread
from .sentence import Sentence
from .word import Word

_ORDINALS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth", "eleventh", "twelfth", "thirteenth", "fourteenth", "fifteenth")  # fmt: skip
_ANY = "|".join(_ORDINALS)
_WHOSE = r"white 's|black 's|his|her|our|your|their"
_NTH = re.compile(
    rf"^(?: \w+)? with (?P<whose>{_WHOSE}) (?P<nth>{_ANY}) move(?= )"
    rf"|^(?: \w+)? this(?: \w+)? move , (?P<of>white 's|black 's|his|our) (?P<n>{_ANY})(?: move)?(?= ,)"
)
"""The move just played, counted: "with his seventh move", "this knight move, White's fourth,"."""
_IT_IS = re.compile(
    r"^(?: (?:and|so|now|well|,))* (?:it (?:is|'s)|this is|that 's|we are (?:on|at)) move (?P<n>\d+)(?= |$)"
)
"""The number of the position: "it's move eight"."""
_CALLED = re.compile(
    rf"^ (?P<whose>{_WHOSE}) (?P<nth>{_ANY}) move , (?:the |a )?(?P<what>[^,]+?)(?= ,|$)"
)
"""A move counted and named: "White's sixth move, rook b1,"."""
_ON = re.compile(rf"^ (?:on|at) (?:move (?P<n>\d+)|the (?P<nth>{_ANY}) move)(?: ,)? (?P<who>white|black|we|he|they) (?:\S+ )*?(?:to|on) (?P<to>[a-h][1-8])(?= |$)")  # fmt: skip
"""A move counted and told: "on move six Black brings his queen to f6"."""


def miscounted(here: Here, sentence: Sentence) -> list[tuple[str, Word, Word]]:
    """What the move just played, or the position, is called by a number that it does not have, each with the first and last word that say so."""
    line = "".join(f" {w.norm}" for w in sentence.words)
    if not here.spot.moves:
        return []
    board = here.spot.earlier(1).board
    match = _IT_IS.match(line)
    if match is not None:
        now = {board.move_number, here.board.move_number}
        return [] if int(match["n"]) in now else [_told(sentence, match, f"it is move {max(now)}")]
    for pattern, whose, numbers in (
        (_NTH, ("whose", "of"), ("nth", "n")),
        (_CALLED, ("whose",), ("nth",)),
        (_ON, ("who",), ("n", "nth")),
    ):
        match = pattern.match(line)
        if match is None:
            continue
        side = next(match[w] for w in whose if match[w])
        said = next(match[n] for n in numbers if match[n])
        try:
            if board.turn != here.side(side) or not _is_last(here, match.groupdict()):
                return []
        except Unread:
            return []
        if _number(said) == board.move_number:
            return []
        reason = (
            f"the move beside these words is {board.turn.title()}'s {_spelt(board.move_number)}"
        )
        return [_told(sentence, match, reason)]
    return []


def _is_last(here: Here, said: dict[str, str | None]) -> bool:
    """Whether the move that is named or told beside the number is the one just played; of none named it is."""
    last = here.last()
    if said.get("to"):
        return last.uci[2:4] == said["to"]
    what = said.get("what")
    return not what or last.before.board.san(last.uci).rstrip("+#") == what.rstrip("+#")


def _number(said: str) -> int:
    return int(said) if said.isdigit() else _ORDINALS.index(said) + 1


def _spelt(number: int) -> str:
    return _ORDINALS[number - 1] if number <= len(_ORDINALS) else f"{number}th"


def _told(sentence: Sentence, match: re.Match[str], reason: str) -> tuple[str, Word, Word]:
    return reason, sentence.words[0], sentence.words[len(match.group().split()) - 1]


__all__ = ["miscounted"]
