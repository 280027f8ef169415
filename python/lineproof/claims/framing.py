"""Framing: a frame compiled from what a kind writes; `frame` tells the language."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from .element import Element, Words
from .frame import CONDITIONS, COPULA, LIGHT, Frame
from .lexicon import ADJECTIVES, NOUNS, VERBS, members
from .slot import SLOTS, InTable, Test

_PART = re.compile(r"\[[^\]]*\]|<[^>]*>|\([^)]*\)|[^\s\[\]<>]+")
_SECTION = re.compile(r"\s(;|if)(?=\s|$)")
_OPENS = ("{", "<", "(", "+")
"""With what a part begins that is no plain word."""


class FrameError(ValueError):
    """A frame that is written wrongly."""


@dataclass
class _Verbs:
    """What stands between the angles of a frame."""

    verbs: frozenset[str] = frozenset()
    governors: frozenset[str] = frozenset()
    light: bool = False
    passive: bool = False
    anywhere: bool = False

    @classmethod
    def read(cls, text: str) -> _Verbs:
        """Reads `pin`, `be:pin`, `threaten to win`, `~`, `=` or `*`."""
        name = text.replace("_", " ")
        passive = name.startswith("be:")
        name = name.removeprefix("be:")
        governors: frozenset[str] = frozenset()
        if " to " in name:
            above, _, name = name.partition(" to ")
            governors = _forms(above)
        if name == "*":
            return cls(light=True, anywhere=True)
        verbs = {"~": LIGHT, "=": COPULA}.get(name) or _forms(name)
        return cls(verbs, governors, name == "~", passive)


def _forms(names: str) -> frozenset[str]:
    return frozenset().union(*(members(name, VERBS) for name in names.split("/")))


def compiled(
    source: str,
    tables: Mapping[str, Mapping[str, Any]] | None = None,
    own: Mapping[str, Test] | None = None,
) -> Frame:
    """Compiles a frame. tables: slots of the kind's own, from words to values. own: its slots that look at a noun phrase.

    :raises FrameError: for one that is written wrongly.
    """
    body, values, conditions = _sections(source)
    said: _Verbs | None = None
    subject: Element | None = None
    rest: list[Element] = []
    parts = _PART.findall(body)
    while parts:
        part = parts.pop(0)
        if part.startswith("<"):
            said = _Verbs.read(part[1:-1])
            continue
        optional = part.startswith("[")
        words = part[1:-1].split() if optional else [part, *_belonging(part, parts, source)]
        element = _element(words, optional, source, tables or {}, own or {})
        if said is None and subject is None and not element.prepositions:
            subject = element
        else:
            rest.append(element)
    if said is None:
        raise FrameError(f"no verb in {source!r}")
    if said.passive and subject is not None:
        rest.insert(0, subject)  # what is said of comes behind the verb in the active voice
        subject = None
    return Frame(
        source, said.verbs, said.light, subject, tuple(rest), values, said.governors, said.passive, conditions, said.anywhere
    )  # fmt: skip


def _sections(source: str) -> tuple[str, dict[str, str], dict[str, str]]:
    """The frame itself, the slots with a fixed value, the conditions."""
    body, *behind = _SECTION.split(source)
    values: dict[str, str] = {}
    conditions: dict[str, str] = {}
    for opening, text in zip(behind[::2], behind[1::2], strict=True):
        for part in text.split():
            name, _, value = part.partition("=")
            if (name in CONDITIONS) != (opening == "if"):
                raise FrameError(
                    f"{part!r} in {source!r}: a condition stands behind 'if', a slot with its value behind ';'"
                )
            (conditions if opening == "if" else values)[name] = value
    return body, values, conditions


def _belonging(part: str, parts: list[str], source: str) -> list[str]:
    """Takes the parts that belong to one before them: the noun of a preposition, the words of a turn."""
    words: list[str] = []
    if _is_preposition(part):
        if not parts:
            raise FrameError(f"nothing follows {part!r} in {source!r}")
        words.append(parts.pop(0))
        while words[-1] in _ADJECTIVE_WORDS and parts and not parts[0].startswith((*_OPENS, "[")):
            words.append(parts.pop(0))
    elif not part.startswith(("{", "(", "+")):
        while parts and not parts[0].startswith((*_OPENS, "[")) and not _is_preposition(parts[0]):
            words.append(parts.pop(0))
    return words


def _is_preposition(text: str) -> bool:
    return all(p in _PREPOSITIONS for p in text.strip("()").replace("_", " ").split("|"))


_PREPOSITIONS = frozenset(
    ["of", "in", "on", "at", "by", "with", "from", "to", "into", "onto", "for", "against", "through", "over", "under", "behind", "before", "after", "between", "among", "along", "down", "up", "as", "without", "like", "towards", "than", "about", "off", "upon", "versus", "vs", "via"]
) | {"on to", "out of", "away from", "in front of", "because of", "next to", "ahead of", "apart from", "short of", "other than", "aside from", "except", "except for", "but", "besides", "save for", "in return for", "at the cost of", "at the expense of", "in exchange for", "on account of", "owing to", "in view of", "thanks to", "due to", "instead of", "rather than", "such as", "as in", "unlike", "only then", "within", "namely", "around", "round", "near", "beside"}  # fmt: skip


_ADJECTIVE_WORDS = frozenset(
    [
        "open",
        "half_open",
        "isolated",
        "doubled",
        "extra",
        "good",
        "bad",
        "opposite",
        "same",
        "better",
        "mating",
        "only",
        "undeveloped",
        "quicker",
        "faster",
        "superior",
        "more",
    ]
)


def _element(
    words: list[str],
    optional: bool,
    source: str,
    tables: Mapping[str, Any],
    own: Mapping[str, Test],
) -> Element:
    prepositions: frozenset[str] = frozenset()
    if len(words) > 1 and _is_preposition(words[0]):
        prepositions = frozenset(words[0].strip("()").replace("_", " ").split("|"))
        words = words[1:]
    if words == ["{wing}"] and prepositions == {"on"}:
        prepositions = frozenset({"on", "in", "at"})  # "in the middle"
    text = " ".join(words)
    if "{" in text[1:]:
        raise FrameError(f"no preposition is {words[0]!r}, in {source!r}")
    if text.startswith("{"):
        name = text[1:-1]
        table = InTable(tables[name]) if name in tables else None
        test = own.get(name) or table or SLOTS.get(name)
        if name != "where" and test is None:
            raise FrameError(f"no slot {name!r} is known, in {source!r}")
        return Element(name, (), prepositions, optional, test=test, table=table)
    choices = text.lstrip("+").strip("()").split("|")
    said = tuple(_words(choice) for choice in choices)
    return Element("", said, prepositions, optional, text.startswith("+"))


def _words(text: str) -> Words:
    *adjectives, heads = (_line(word.replace("_", " ")) for word in text.split())
    return Words(heads, tuple(adjectives), frozenset().union(*adjectives))


def _line(word: str) -> frozenset[str]:
    return members(word, NOUNS) | members(word, ADJECTIVES)


__all__ = ["FrameError", "compiled"]
