"""Signs of nouns: whether a noun phrase may begin, go on or end with a word."""

from __future__ import annotations

from .chunk import Adverb, Group, Joint
from .groups import Groups
from .lexicon import NOUNS, VERBS, members
from .noun import Noun

_GIVING = (members("give", VERBS) | {"cost", "save", "win"}) - {"land"}

OWNERS = frozenset({"his", "hers", "white", "black"})


class NounSigns(Groups):
    """Tells nouns from other words."""

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

    def _does_it(self, at: int) -> bool:
        """Whether a word is a verb in the third person, and no noun in the singular."""
        t, after = self._token(at), self._token(at + 1)
        third = t is not None and t.plural and any(form == "third" for _, form in t.verbs)
        return third and after is not None and not after.is_("be", "have", "modal", "piece")


__all__ = ["OWNERS", "NounSigns"]
