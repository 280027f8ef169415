"""Looking along the tokens of a sentence: what comes next, and what stands before."""

from __future__ import annotations

from collections.abc import Callable

from .chunk import Adverb, Chunk, Joint, Place
from .noun import Noun, pointer
from .sentence import Sentence
from .token import Token
from .tokens import tokens

_BEYOND = 64
"""How far beyond either end of a sentence a token may be asked for."""
_VERBAL = frozenset({"verb", "third", "be", "have", "do", "word"})
_MOVES_ON = frozenset({"adverb", "hedge", "deny", "limit", "not"})
ATTRIBUTIVE = frozenset(
    {"doubled", "tripled", "isolated", "passed", "hanging", "weakened", "opposed", "connected"}
)


class Scan:
    """The tokens of a sentence, where the reading stands, and the chunks found so far."""

    def __init__(self, sentence: Sentence) -> None:
        self.sentence = sentence
        self.tokens: list[Token] = []
        self._token: Callable[[int], Token | None]
        """The token there; None before the first (at -1, ...) and behind the last. It is asked for most of all, hence no method."""
        self._look_at(tokens(sentence))
        self.at = 0
        self.found: list[Chunk] = []

    def _look_at(self, found: list[Token]) -> None:
        """Puts the tokens there."""
        self.tokens = found
        around: list[Token | None] = [*found, *[None] * _BEYOND]
        self._token = around.__getitem__

    def _skip(self, at: int) -> int:
        while (
            (t := self._token(at)) is not None
            and not t.tags.isdisjoint(_MOVES_ON)
            and "noun" not in t.tags
        ):
            before = self._token(at - 1)
            if (
                before is not None
                and (before.is_("not", "do", "modal") or before.norm == "to")
                and any(form == "base" for _, form in t.verbs)
            ):
                break  # "do not see"
            at += 1
        return at

    def _form(self, at: int, *wanted: str) -> str | None:
        """The base of the verb at a token that has one of some forms."""
        token = self._token(at)
        if token is None or token.tags.isdisjoint(_VERBAL):
            return None
        if "be" in token.tags:
            return (
                "be"
                if {"been": "part", "being": "ing", "be": "base"}.get(token.norm) in wanted
                else None
            )
        if "have" in token.tags and not token.verbs:
            form = {"had": "part", "having": "ing", "have": "base"}.get(token.norm)
            return "have" if form in wanted else None
        if "do" in token.tags and not token.verbs:
            return None
        if not token.verbs and "word" in token.tags and "base" in wanted:
            return token.norm
        return next((base for base, form in token.verbs if form in wanted), None)

    def _subject_before(self) -> Noun | None:
        """The noun phrase before this, when it can be the subject of a verb here."""
        for chunk in reversed(self.found):
            if isinstance(chunk, Adverb):
                continue
            if isinstance(chunk, Noun):
                return chunk
            if isinstance(chunk, Joint) and chunk.sort == "relative":
                return pointer(Token(chunk.norm, frozenset({"pron"}), chunk.first, chunk.last))
            if isinstance(chunk, Place):
                continue
            return None
        return None

    def _segment(self) -> list[Chunk]:
        """The chunks since the last joint."""
        found: list[Chunk] = []
        for chunk in reversed(self.found):
            if isinstance(chunk, Joint):
                break
            found.append(chunk)
        return found

    def _nominal(self, at: int) -> bool:
        """Whether a noun may begin here, or an adjective before one."""
        for step in range(5):
            t = self._token(at)
            if t is None:
                return False
            if t.is_("piece", "noun", "file") or (t.norm in {"1", "one", "ones"} and step):
                return True
            if t.is_("square", "move"):
                return True
            if (
                t.is_("adj", "word", "number")
                or ("verb" in t.tags and not t.is_("be", "have", "do"))
                or t.norm in {"very", "most", "own", "white", "black", "only"}
            ):
                at += 1
                continue
            return False
        return False

    def _adjectival(self, at: int) -> bool:
        t = self._token(at)
        return t is not None and (t.is_("adj", "word", "noun", "verb", "adverb"))

    def _denied(self, first: int, last: int) -> bool:
        return sum(t.is_("not", "deny") for t in self.tokens[first:last]) % 2 == 1

    def _adverbs(self, first: int, last: int) -> list[str]:
        return [t.norm for t in self.tokens[first:last] if "not" not in t.tags]

    def _attributive(self, at: int) -> bool:
        """Whether a participle stands before its noun: "has doubled c-pawns"."""
        t = self._token(at)
        if t is None or t.norm not in ATTRIBUTIVE:
            return False
        after = self._token(at + 1)
        if after is None:
            return False
        return "file" in after.tags or (after.is_("piece", "noun") and after.plural)

    def _is_verb(self, at: int, head: Token) -> bool:
        """Whether a word after a noun is its verb: "the knight pins", "the knights pin", but "the knight fork"."""
        token = self.tokens[at]
        names = {f for _, f in token.verbs}
        if "move" in head.tags and "square" not in head.tags:
            return "third" in names
        if "third" in names and not head.plural:
            after = self._token(at + 1)
            return after is None or not after.is_("be", "modal")
        return "base" in names and head.plural and bool(names)


__all__ = ["Scan"]
