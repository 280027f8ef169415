"""Noun phrases in the tokens of a sentence, lists of them included."""

from __future__ import annotations

import re
from dataclasses import replace

from .chunk import Adverb, Group, Joint
from .groups import Groups
from .lexicon import NOUNS, VERBS, members
from .noun import Noun, Run, listed, on_square, owned, pointer
from .scan import ATTRIBUTIVE
from .tokens import Token

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

_GIVING = (members("give", VERBS) | {"cost", "save", "win"}) - {"land"}
_OF = re.compile("[1-9] of")
_MEN = {"us": "our", "ours": "our", "him": "his", "his": "his", "them": "their", "theirs": "their"}
"""Whose men "two of us" and "one of his" are."""


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


_BEGINS = frozenset({"side", "pron", "det", "poss", "move", "square", "piece", "noun", "file", "number", "adj", "word", "verb", "clitic"})  # fmt: skip
"""What the first word of a noun phrase may be."""
_OWNERS = frozenset({"his", "hers", "white", "black"})


class Nouns(Groups):
    """Reads noun phrases."""

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

    def _does_it(self, at: int) -> bool:
        """Whether a word is a verb in the third person, and no noun in the singular."""
        t, after = self._token(at), self._token(at + 1)
        third = t is not None and t.plural and any(form == "third" for _, form in t.verbs)
        return third and after is not None and not after.is_("be", "have", "modal", "piece")

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
        )
        began = any(isinstance(c, Group) for c in self._segment())
        if began and verb_next and after is not None and self._holds(after):
            verb_next = False  # "has got his queen and his rook forked"
        if joint == "," and began and len(parts) == 1 and self._comma_and(more):
            return False
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

    def _one(self) -> Noun | None:
        token = self._token(self.at)
        if token is None or token.tags.isdisjoint(_BEGINS):
            return None
        at = self.at
        if token.norm in {"this", "that"} and self._does_it(at + 1):
            self.at += 1
            return pointer(token)  # "this leads to a draw"
        owner: Noun | None = None
        after = self._token(at + 1)
        alone = self._possessive(at)
        if alone is not None:
            return alone
        if (
            "side" in token.tags
            and after is not None
            and after.norm == "'s"
            and self._nominal(at + 2)
        ):
            owner = pointer(token)
            at += 2
        elif (
            "square" in token.tags
            and after is not None
            and after.norm == "'s"
            and self._role(at + 2)
        ):
            self.at += 2
            role = self._one()
            return None if role is None else replace(role, square=token.norm, first=token.first)
        elif (
            token.norm in {"white", "black"}
            and self._nominal(at + 1)
            and after is not None
            and after.is_("piece", "noun")
            and not any(f == "third" for _, f in after.verbs)
            and not ("noun" in after.tags and self._giving())
        ):
            pass
        elif (
            token.norm == "neither"
            and after is not None
            and after.is_("det", "poss", "piece", "square")
            and any(t.norm == "nor" for t in self.tokens[at:])
        ):
            self.at += 1
            neither = self._one()
            return None if neither is None else replace(neither, no=True, first=token.first)
        elif (
            token.norm == "both"
            and after is not None
            and after.is_("det", "poss")
            and self._nominal(at + 2)
        ):
            self.at += 1
            both = self._one()
            return None if both is None else replace(both, det="both", first=token.first)
        elif "side" in token.tags or (
            "pron" in token.tags
            and not ("det" in token.tags and self._nominal(at + 1) and not self._points(at))
        ):
            self.at += 1
            return pointer(token)
        if (
            _OF.fullmatch(token.norm)
            and after is not None
            and after.norm in _MEN
            and not self._nominal(at + 2)
        ):
            self.at += 2
            count, whose = int(token.norm[0]), _MEN[after.norm]
            return Noun(
                "noun", "piece", f"{whose} {count} pieces", token.first, after.last, whose, count=count, plural=count > 1
            )  # fmt: skip
        start = at
        end, head = at, -1
        det = owner is not None
        while (t := self._token(end)) is not None:
            first = end == start
            if (first and t.is_("det", "poss") and "pron" not in t.tags) or (
                first and t.is_("det", "poss") and self._nominal(end + 1)
            ):
                det = True
            elif (
                "det" in t.tags
                and det
                and t.norm in {"other", "many", "such", "few", "more", "most", "several", "another"}
            ):
                pass
            elif t.is_("poss", "det") and end == start + 1 and "det" in self.tokens[start].tags:
                pass  # "both of his", "all the"
            elif t.is_("move", "square"):
                if (
                    head >= 0
                    and "move" in self.tokens[head].tags
                    and "square" not in self.tokens[head].tags
                ):
                    break
                head = end
                nxt = self._token(end + 1)
                last = self._token(end + 2)
                if (
                    nxt is not None
                    and t.is_("square")
                    and nxt.is_("square")
                    and last is not None
                    and last.noun in {"diagonal", "line"}
                ):
                    end += 1  # "the h4-d8 diagonal"
                    continue
                if nxt is None or not (
                    "square" in t.tags
                    and nxt.is_("piece", "noun")
                    and not self._is_verb(end + 1, t)
                ):
                    end += 1
                    break
            elif "piece" in t.tags:
                if head >= 0 and "piece" in self.tokens[head].tags:
                    break
                head = end
            elif "noun" in t.tags:
                if head >= 0 and self._is_verb(end, self.tokens[head]):
                    break
                if (
                    head < 0
                    and not det
                    and end == start
                    and "verb" in t.tags
                    and "piece" not in t.tags
                    and self._imperative(end)
                ):
                    break
                head = end
            elif (
                "file" in t.tags
                or (
                    t.norm in {"-", "and", ","}
                    and end > start
                    and self._file_before(end, start)
                    and (self._token(end + 1) or t).is_("file")
                )
                or (t.norm == "-" and end > start and "file" in self.tokens[end - 1].tags)
            ):
                pass
            elif (
                t.norm == "1"
                and end > start
                and (
                    self.tokens[end - 1].is_("adj", "word")
                    or self.tokens[end - 1].norm in {"white", "black"}
                    or self.tokens[end - 1].norm in ATTRIBUTIVE
                )
                and not self._nominal(end + 1)
            ):
                head = end
            elif (
                t.norm in {"or", "to"}
                and not first
                and "number" in self.tokens[end - 1].tags
                and (self._token(end + 1) or t).is_("number")
            ):
                pass  # "two or three tempi"
            elif "number" in t.tags and (
                first
                or self.tokens[end - 1].is_("det", "poss", "adverb", "number")
                or self.tokens[end - 1].norm in {"or", "to"}
            ):
                det = True
            elif (
                t.norm == ","
                and det
                and head < 0
                and end > start + 1
                and "adj" in self.tokens[end - 1].tags
                and (self._token(end + 1) or t).is_("adj")
                and self._nominal(end + 1)
            ):
                pass  # "a good, solid move"
            elif t.norm == "'s" and head == end - 1 and self._done_so(end + 1):
                break  # "that knight's used four moves"
            elif t.norm == "'s" and head == end - 1 and self._nominal(end + 1):
                head = -1
            elif (
                t.norm == "'s" and head < 0 and end > start and "side" in self.tokens[end - 1].tags
            ):
                pass  # "neither of White's bishops"
            elif head >= 0:
                break
            elif "side" in t.tags and t.norm in {"white", "black"}:
                pass
            elif (
                t.is_("adj", "word")
                or t.norm == "own"
                or (
                    det
                    and "verb" in t.tags
                    and any(f == "base" for _, f in t.verbs)
                    and not t.is_("be", "have", "do")
                )
                or (
                    "verb" in t.tags
                    and not t.is_("be", "have", "do")
                    and any(f in {"ing", "part"} for _, f in t.verbs)
                    and (det or self._nominal(end + 1))
                )
            ):
                if not det and not self._nominal(end + 1):
                    break
            elif t.is_("adverb", "limit", "hedge") and det and self._adjectival(end + 1):
                pass
            else:
                break
            end += 1
        if head < 0:
            if not det or end - start < 2:
                return None
            last = self.tokens[end - 1]
            if not last.is_("word", "adj", "number", "verb") or (
                "number" in last.tags and end - start < 2
            ):
                return None
            head = end - 1
        items = self.tokens[start : head + 1]
        noun = Run(items, owner).build()
        if noun is None:
            return None
        self.at = head + 1
        return noun if noun.first == token.first else replace(noun, first=token.first)

    def _done_so(self, at: int) -> bool:
        """Whether a participle with a number or an article behind it follows: "has used four moves"."""
        t, after = self._token(at), self._token(at + 1)
        done = t is not None and not t.is_("noun", "adj") and any(f == "part" for _, f in t.verbs)
        return done and after is not None and after.is_("number", "det", "poss")

    def _points(self, at: int) -> bool:
        """Whether "this" or "that" stands for itself before a verb that might be a plural: "this offers", but "this move"."""
        t, after = self.tokens[at], self._token(at + 1)
        return (
            t.norm in {"this", "that"}
            and after is not None
            and after.plural
            and any(form == "third" for _, form in after.verbs)
        )

    def _giving(self) -> bool:
        """Whether a verb of giving stands just before: "gives Black doubled pawns"."""
        before = self.found[-1] if self.found else None
        return isinstance(before, Group) and not before.passive and before.lemma in _GIVING

    def _possessive(self, at: int) -> Noun | None:
        """ "His on g5", "Black's still lingers": whose it is, and not what."""
        token, after, then = self.tokens[at], self._token(at + 1), self._token(at + 2)
        if token.norm not in _OWNERS:
            return None
        if token.norm == "his" and (after is None or "punct" in after.tags):
            self.at += 1
            return Noun("pronoun", "his", "his", token.first, token.last)  # "the pair is his"
        ends = after is not None and after.norm == "'s" and (then is None or "punct" in then.tags)
        if token.norm in {"white", "black"} and ends:
            last = self.found[-1] if self.found else None
            if isinstance(last, Group) and last.lemma == "be":
                self.at += 2
                text = f"{token.norm} 's"
                return Noun(
                    "side", text, text, token.first, token.last + 1
                )  # "the edge is White's"
        if after is None or then is None:
            return None
        if token.norm in {"his", "hers"} and after.norm in {"on", "at"} and "square" in then.tags:
            self.at += 1
            return Noun("pronoun", "his", "his", token.first, token.last)
        if token.norm in {"white", "black"} and after.norm in {"'s", "is"}:
            verb = self._token(self._skip(at + 2))
            third = verb is not None and (
                (after.norm == "'s" and verb.norm in {"is", "has", "was"})
                or any(f == "third" for _, f in verb.verbs)
            )
            if third and verb is not None and "noun" not in verb.tags:
                self.at += 2
                text = f"{token.norm} 's"
                return Noun("pronoun", text, text, token.first, after.last)
        return None

    def _role(self, at: int) -> bool:
        """Whether "only defender" stands here."""
        while (t := self._token(at)) is not None and ("adj" in t.tags or t.norm == "only"):
            at += 1
        return t is not None and t.noun in NOUNS["defender"]

    def _file_before(self, at: int, start: int) -> bool:
        """Whether a file stands before a joint, its hyphen included: "the a- and b-files"."""
        if self.tokens[at - 1].norm == "-":
            at -= 1
        return at - 1 >= start and "file" in self.tokens[at - 1].tags

    def _imperative(self, at: int) -> bool:
        after = self._token(at + 1)
        starts = not self.found or isinstance(self.found[-1], Joint | Adverb)
        return (
            starts
            and after is not None
            and after.is_("det", "poss")
            and any(f == "base" for _, f in self.tokens[at].verbs)
        )

    def _behind(self, noun: Noun) -> Noun:
        """Where it stands ("on f6") and whose it is ("of ours")."""
        while True:
            prep, arg = self._token(self.at), self._token(self.at + 1)
            if prep is None or arg is None:
                return noun
            if (
                prep.norm in {"on", "at"}
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
