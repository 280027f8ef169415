"""Noun phrases with what belongs to them: the square on which a piece stands, whose it is, and the other members of a list."""

from __future__ import annotations

from dataclasses import replace

from .chunk import Group
from .noun import Noun, listed, on_square, owned
from .noun_phrases import NounPhrases
from .token import Token

_SOMETHING = frozenset({"fella", "fellow", "chap", "guy", "thing", "beast", "customer", "creature"})
"""Nouns that with a square mean what stands there."""

_GOING = frozenset(
    {"advance", "push", "capture", "recapture", "jump", "leap", "retreat", "sortie", "thrust"}
)
"""Nouns of a move, behind which its square belongs to it."""

_SETS = frozenset({"pair", "couple", "duo", "trio"})
_AMOUNTS = frozenset(
    {"amount", "deal", "quantity", "share", "bit", "load", "abundance", "wealth", "surplus"}
)
"""Nouns that say how much of what follows."""

_COUNTED = frozenset({"exchange", "piece"})
"""Nouns that are counted as material, as pieces are."""

_CREATURES = frozenset(
    {
        "thing",
        "fellow",
        "chap",
        "fella",
        "beast",
        "brute",
        "creature",
        "monster",
        "lad",
        "soul",
        "guy",
        "bloke",
        "giant",
        "neighbour",
        "colleague",
        "comrade",
        "companion",
        "partner",
    }
)
"""What a piece may be called without saying which."""


class Nouns(NounPhrases):
    """Reads noun phrases, lists of them included."""

    def _noun(self, *, coordinate: bool) -> Noun | None:
        noun = self._one()
        if noun is None:
            return None
        noun = self._behind(noun)
        if not coordinate or (
            noun.type not in {"piece", "square", "file", "move", "side"}
            and noun.head not in _COUNTED
        ):
            return noun
        parts, first, joined = [noun], self.at, False
        while True:
            token = self._token(self.at)
            if token is None or token.norm not in {"and", ",", "or", "as well as", "nor", "-"}:
                break
            back = self.at
            self.at += 1
            if (t := self._token(self.at)) is not None and t.norm in {"and", "also", "then"}:
                self.at += 1
            if self._acts(self.at) or (token.norm in {",", "and"} and self._does_to(self.at)):
                self.at = back
                break  # "comes to g4 and attacks g7", "the queen, guarding b2, ..."
            more = self._one()
            if more is not None:
                more = self._behind(more)
            if more is None or not self._joins(parts, more, token.norm):
                self.at = back
                break
            parts.append(more)
            joined = joined or token.norm != "," or self.tokens[back + 1].norm in {"and", "also"}
        if {p.type for p in parts} == {"piece", "square"} and not joined:
            self.at = first
            return noun  # "the squares round his king, f6, h6"
        return noun if len(parts) == 1 else listed(parts)

    def _acts(self, at: int) -> bool:
        """Whether a verb in the third person with what it acts on begins here: "attacks g7", "pins the knight"."""
        t, after = self._token(at), self._token(at + 1)
        return (
            t is not None
            and after is not None
            and any(form == "third" for _, form in t.verbs)
            and after.is_("det", "poss", "square", "piece", "move")
        )

    def _does_to(self, at: int) -> bool:
        """Whether an -ing with what it acts on begins here: "forking queen and rook"."""
        t, after = self._token(at), self._token(at + 1)
        return (
            t is not None
            and after is not None
            and any(form == "ing" for _, form in t.verbs)
            and not self._attributive(at)
            and after.is_("det", "poss", "square", "piece", "move", "number")
        )

    def _joins(self, parts: list[Noun], more: Noun, joint: str) -> bool:
        same = {parts[0].type, more.type} <= {"piece", "square"} or parts[0].type == more.type
        if parts[0].head in _COUNTED:
            same = more.type == "piece"  # "the exchange and a pawn"
        if not same or more.type == "side" or parts[0].type == "move":
            return False
        after = self._token(self._skip(self.at))
        verb_next = after is not None and (
            after.is_("be", "have", "modal", "do")
            or (
                after.is_("verb", "third")
                and not after.is_("noun", "prep", "adj")
                and any(f in {"third", "past", "base"} for _, f in after.verbs)
            )
            or (after.norm == "'s")
            or self._acts(self._skip(self.at))
        )
        began = any(isinstance(c, Group) for c in self._segment())
        if began and verb_next and after is not None and self._holds(after):
            verb_next = False  # "has got his queen and his rook forked"
        if joint == "," and began and len(parts) == 1 and self._comma_and(more):
            return False
        if (
            joint == ","
            and parts[0].type == "square"
            and more.type == "piece"
            and more.det == "the"
        ):
            return False  # "two of ours look at f7, the knight and the bishop"
        if joint == "," and not more.det and any(a.endswith("ing") for a in more.adjectives):
            return False  # "the knight on f7, forking queen and rook"
        if joint == ",":
            if began and verb_next:
                return False
            after = self._token(self.at)
            return after is not None and after.norm in {",", "and"} and not verb_next
        return not (verb_next and began)

    def _holds(self, token: Token) -> bool:
        """Whether a participle after "has", "leaves" and what it has may be said of that."""
        group = next((c for c in reversed(self._segment()) if isinstance(c, Group)), None)
        if not self._segment() or not isinstance(self._segment()[0], Group) or group is None:
            return False
        return group.lemma in {"have", "get", "leave", "keep", "find"} and any(
            form == "part" for _, form in token.verbs
        )

    def _comma_and(self, more: Noun) -> bool:
        """Whether ", and" stands before the last of two: a new clause begins there."""
        before = [t for t in self.tokens if t.last < more.first][-2:]
        return [t.norm for t in before] == [",", "and"]

    def _behind(self, noun: Noun) -> Noun:
        """Where it stands ("on f6") and whose it is ("of ours")."""
        while True:
            prep, arg = self._token(self.at), self._token(self.at + 1)
            if prep is None or arg is None:
                return noun
            begun = prep.norm == "from" and any(isinstance(c, Group) for c in self._segment())
            if (
                prep.norm in {"on", "at", "from"}
                and not begun
                and "square" in arg.tags
                and noun.type == "piece"
                and not noun.square
                and not noun.plural
            ):
                noun = on_square(noun, arg.norm, arg.last)
                self.at += 2
                continue
            if prep.norm in {"on", "at"} and "square" in arg.tags and noun.head in _SOMETHING:
                self.at += 2
                return Noun(
                    "square", arg.norm, arg.norm, noun.first, arg.last, noun.whose, square=arg.norm
                )
            if (
                prep.norm in {"on", "to"}
                and "square" in arg.tags
                and noun.type == "noun"
                and noun.head in _GOING
                and noun.det in {"the", "this", "that", "his", "our"}
                and not noun.square
            ):
                text = f"{noun.text} {prep.norm} {arg.norm}"
                noun = replace(noun, text=text, square=arg.norm, last=arg.last)
                self.at += 2
                continue
            if prep.norm == "of" and noun.head in _AMOUNTS and noun.det in {"a", "an", "the"}:
                back = self.at
                self.at += 1
                much = self._one()
                bare = much is not None and much.type == "noun" and not (much.plural or much.det)
                if bare and much is not None and {"small", "tiny"}.isdisjoint(noun.adjectives):
                    noun = replace(much, first=noun.first, det=noun.det)
                    continue
                self.at = back
                return noun
            if prep.norm == "of" and noun.head in _SETS and noun.det != "":
                back = self.at
                self.at += 1
                several = self._one()
                if several is not None and several.plural and several.type in {"noun", "piece"}:
                    noun = replace(several, first=noun.first, det=noun.det, whose=noun.whose)
                    continue
                self.at = back
                return noun
            if (
                prep.norm in {"on", "at"}
                and "square" in arg.tags
                and noun.type == "piece"
                and noun.plural
                and not noun.parts
            ):
                squares, at = [arg], self.at + 2
                while (
                    (t := self._token(at)) is not None
                    and t.norm in {"and", ","}
                    and (n := self._token(at + 1)) is not None
                    and "square" in n.tags
                ):
                    squares.append(n)
                    at += 2
                if len(squares) > 1:
                    single = noun.text.removesuffix("s")
                    self.at = at
                    return listed(
                        [
                            replace(
                                noun,
                                plural=False,
                                square=q.norm,
                                text=f"{single} on {q.norm}",
                                last=q.last,
                            )
                            for q in squares
                        ]
                    )
            if (
                prep.norm in {"on", "at"}
                and "square" in arg.tags
                and noun.type == "noun"
                and noun.head in _CREATURES
                and not noun.plural
            ):
                noun = replace(
                    noun, type="square", head=arg.norm, text=arg.norm, square=arg.norm, last=arg.last, adjectives=()
                )  # fmt: skip
                self.at += 2
                continue  # "that poor thing on e5"
            if prep.norm == "of" and noun.type in {"piece", "noun"} and not noun.whose:
                if arg.norm in {
                    "ours",
                    "yours",
                    "his",
                    "hers",
                    "theirs",
                    "mine",
                } and not self._nominal(self.at + 2):
                    noun = owned(noun, arg.norm, arg.last)
                    self.at += 2
                    continue
                if arg.norm in {"white", "black"}:
                    after = self._token(self.at + 2)
                    size = 3 if after is not None and after.norm == "'s" else 2
                    noun = owned(noun, arg.norm, self.tokens[self.at + size - 1].last)
                    self.at += size
                    continue
            return noun


__all__ = ["Nouns"]
