"""Phrases: the small language in which a kind of claim writes down how teachers say it.

    "{side} {is} [a] {n} (pawn|pawns) up"

Words stand for themselves, `[...]` may be missing, `(a|b)` is a choice, `{name}` is a slot: one of the shared
slots below or one of the kind's own. `<win/net>` is either verb in any finite form, `<be:attack>` a passive, `<ing:win>` "winning" or "having won",
`<to:win>` "to win", `<done:pin>` "pinned"; what the form says beside the verb is the slot `verb`, a [`Verb`][lineproof.claims.verbs.Verb].
A phrase reads a clause only as a whole: every word must be accounted for, so that a "not", an "if" or a "would" can never be overlooked.

>>> phrase = Phrase.compile("{side} {is} {degree} better", {"degree": {"slightly": "slight", "a little": "slight"}})
>>> phrase.match(" white is a little better")
{'side': 'white', 'degree': 'slight'}
>>> phrase.match(" white is not slightly better") is None
True
>>> Phrase.compile("{side} <win/net> a pawn", {}).match(" he does not win a pawn")["verb"].negated
True
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from . import verbs
from .sentence import SAN
from .spoken import SPOKEN
from .verbs import Verb

_SQUARE = r"[a-h][1-8]"
_MOVE = rf"(?:\d{{1,3}}\.(?:\.\.)?|\.\.\.)?(?:{SPOKEN}|{SAN})[+#]?"
MOVE = re.compile(_MOVE)
"""A move as a word of its own."""
_PIECE = r"(?:kings?|queens?|rooks?|bishops?|knights?|pawns?)"
_WHOSE = r"(?: the| a| an| his| her| our| your| their| my| its| this| that| both| black 's| white 's| both of his| black| white)"
_ADJECTIVE = r"(?: other| last| poor| whole| dark squared| light squared| king 's| queen 's)?"
_REFERENCE = (
    # "a" is an article unless an article stands before it ("the a pawn"): one reading only, or lists would take for ever
    rf"(?:{_WHOSE}{_ADJECTIVE}(?: (?:{_SQUARE}|[a-h]))?|(?: (?:{_SQUARE}|[b-h]))?)"
    rf"(?: (?:{_PIECE})(?: (?:on|at) {_SQUARE})?| {_SQUARE})"
)
_SEPARATOR = r"(?: ,)?(?: and| as well as| ,)(?: also)?(?: at)?"

_DESCRIBED = (
    rf" (?:(?:the|this|that|his|our|her|your)(?: (?:natural|quiet|greedy|bold|simple|little|same|obvious))?(?: {_PIECE})?"
    r"(?: (?:discovered|double|in between))? (?:move|capture|check|push|advance|retreat|sortie|jump|leap|recapture|sacrifice|grab|development|exchange)"
    r"|(?:pushing|advancing|taking|capturing|recapturing|castling|checking|grabbing|snatching|swallowing|accepting|eating|playing|putting)"
    rf"(?: (?:on|back|there|at once|here|first|away|like this|this way|with|the|a|his|our|her|your|white 's|black 's|[a-h]|{_SQUARE}|{_PIECE}))*)"
)
_SIDE = r" (?:white|black|we|you|i|he|she|they|us|him|the opponent|our opponent|your opponent|the second player|the first player)"
AGENT = rf"(?:{_SIDE}|{_REFERENCE}| {_MOVE}| (?:this|that|it|which|who)|{_DESCRIBED})"
"""Whoever or whatever does something: a side, a piece, a move, or a word that points to one."""

SHARED: dict[str, str] = {
    "side": _SIDE,
    "whose": r" (?:white 's|black 's|our|your|my|his|her|their|the opponent 's)",
    "piece": rf" {_PIECE}",
    "square": rf" {_SQUARE}",
    "file": r" [a-h]",
    "n": r" \d{1,3}",
    "m": r" \d{1,3}",
    "move": rf" {_MOVE}",
    "by": rf" {_MOVE}",
    "best": rf" {_MOVE}",
    "moves": rf"(?: {_MOVE}(?: (?:and|,|then))*)* {_MOVE}",
    "target": _REFERENCE,
    "behind": _REFERENCE,
    "pinner": _REFERENCE,
    "defender": _REFERENCE,
    "object": _REFERENCE,
    "second": _REFERENCE,
    "described": _DESCRIBED,
    "actor": rf"(?: the| this| that| our| his| her| your)(?: {_PIECE})",
    "agent": AGENT,
    "targets": rf"(?: both)?{_REFERENCE}(?:{_SEPARATOR}{_REFERENCE})+",
}
"""Slots that every kind may use. Each consumes its own leading blank."""

_LOOSE: dict[str, str] = {
    "is": r"(?: is| are| am| 's| stands| remains| comes out)",
    "has": r"(?: has| have| 's got| have got| keeps| keep| enjoys| retains| is left with| are left with)",
    "gets": r"(?: gets| get| obtains| obtain| reaches| reach| will have| ends up with| end up with)",
    "the": r"(?: the| a| an| this| his| her| our| your| their)",
    "very": r"(?: very| quite| rather| really| simply| just| already| now| still| even| therefore| also| then| of course)",
}
"""Loose words: no slot, only ways of saying the same."""


class PhraseError(ValueError):
    """A phrase that cannot be compiled: a slot nobody defines, brackets that do not close."""


@dataclass(frozen=True)
class Phrase:
    """A compiled phrase. `source` is what the kind wrote."""

    source: str
    pattern: re.Pattern[str]
    values: Mapping[str, Mapping[str, Any]]

    @classmethod
    def compile(
        cls,
        source: str,
        slots: Mapping[str, Mapping[str, Any]],
        patterns: Mapping[str, str] | None = None,
    ) -> Phrase:
        """Compiles a phrase.

        slots: the kind's own, each a table from words to value. patterns: the kind's own as regular expressions.

        :raises PhraseError: for an unknown slot or unbalanced brackets.
        """
        out: list[str] = []
        depth = 0
        for token in re.findall(r"\{\w+\}|<[^<>]+>|[\[\]()|?,]|[^\s\[\]()|{}<>?,]+", source):
            if token.startswith("<"):
                out.append(_verb(token[1:-1], source))
            elif token.startswith("{"):
                out.append(_slot(token[1:-1], slots, patterns or {}, source))
            elif token == "[":
                out.append("(?:")
                depth += 1
            elif token == "]":
                out.append(")?")
                depth -= 1
            elif token == "(":
                out.append("(?:")
                depth += 1
            elif token == ")":
                out.append(")")
                depth -= 1
            elif token == "|":
                out.append("|")
            else:
                out.append(" " + re.escape(token))
        if depth:
            raise PhraseError(f"brackets do not close in {source!r}")
        return cls(
            source,
            re.compile(_number("".join(out))),
            {k: v for k, v in slots.items() if f"{{{k}}}" in source},
        )

    def match(self, clause: str) -> dict[str, Any] | None:
        """The slots of a clause that the phrase accounts for as a whole, or None.

        clause: normalised words, each with one blank before it.
        """
        found = self.pattern.fullmatch(clause)
        if found is None:
            return None
        result: dict[str, Any] = {}
        for name, text in found.groupdict().items():
            if text is None:
                continue
            name = name.rstrip("0123456789")
            plain = text.strip()
            if name == "verb":
                result.setdefault(name, Verb.read(plain))
                continue
            result[name] = self.values[name][plain] if name in self.values else plain
        return result


_VERBS: dict[str, Callable[[str], str]] = {
    "": verbs.finite,
    "be": verbs.passive,
    "ing": verbs.participle,
    "done": verbs.done,
    "to": lambda verb: rf"(?: in order)?(?: not)? to{verbs.bare(verb)}",
}


def _verb(text: str, source: str) -> str:
    form, _, verb = text.rpartition(":")
    if form not in _VERBS:
        raise PhraseError(f"no form {form!r} of a verb is known, in {source!r}")
    return f"(?P<verb>{_VERBS[form](verb)})"


def _slot(
    name: str, slots: Mapping[str, Mapping[str, Any]], patterns: Mapping[str, str], source: str
) -> str:
    if name in patterns:
        return f"(?P<{name}>{patterns[name]})"
    if name in slots:
        choices = sorted(slots[name], key=len, reverse=True)
        return (
            "(?P<"
            + name
            + ">"
            + "|".join(" " + re.escape(c).replace(r"\ ", " ") for c in choices)
            + ")"
        )
    if name in SHARED:
        return f"(?P<{name}>{SHARED[name]})"
    if name in _LOOSE:
        return _LOOSE[name]
    raise PhraseError(f"no slot {name!r} is known, in {source!r}")


def _number(pattern: str) -> str:
    """Numbers the groups, for a slot may stand in several alternatives of one phrase."""
    seen: dict[str, int] = {}

    def name(match: re.Match[str]) -> str:
        seen[match[1]] = seen.get(match[1], -1) + 1
        return f"(?P<{match[1]}{seen[match[1]]}>"

    return re.sub(r"\(\?P<(\w+)>", name, pattern)


def targets(text: str) -> list[str]:
    """The references of a list: "the king and the rook on a8" gives two."""
    return [
        m.group().strip()
        for m in re.finditer(_REFERENCE, " " + re.sub(r"^both ", "", text))
        if m.group().strip()
    ]
