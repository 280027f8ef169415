"""Turns of speech: "as snug as a bug", "there is no stopping him", "should he take", "queen or no queen"."""

from __future__ import annotations

from .chunk import Adjective, Adverb, Group, Joint
from .noun import Noun, pointer
from .nouns import Nouns
from .token import Token
from .verbs import Verb

JUST = frozenset({"right", "bang", "smack", "straight", "clean"})

_ALONE = frozenset({"next", "first", "straight", "once", "yet"})
"""Adverbs that are other words where something follows that belongs to them: "the next move", "once the king has moved"."""

_STRANDED = frozenset({"for", "with", "of", "to", "at", "against", "about"})

LONE = _ALONE | _STRANDED | JUST


class TurnsOfSpeech(Nouns):
    """Reads words that look like the beginning of something else."""

    def _or_no(self, token: Token) -> bool:
        """ "Queen or no queen"."""
        ahead = [t.norm for t in self.tokens[self.at + 2 : self.at + 4]]
        return ahead == ["no", token.norm]

    def _not_yet(self, token: Token) -> bool:
        """Whether "yet" stands between a verb and its adjective: "is yet developed"."""
        after = self._token(self.at + 1)
        return (
            token.norm == "yet"
            and bool(self.found)
            and isinstance(self.found[-1], Group)
            and after is not None
            and after.is_("adj", "verb")
        )

    def _lone(self) -> Adverb | None:
        """ "Attacked once", "bang in front of", "the one I feel sorry for": a word that looks like the beginning of something and is not."""
        token, after = self.tokens[self.at], self._token(self.at + 1)
        ends = after is None or "punct" in after.tags
        goes_on = after is not None and (
            after.norm in {"and", "but", "by", "or"} or "clitic" in after.tags
        )
        goes_on = goes_on or (after is not None and after.tags == {"adverb"})
        lone = token.norm in _ALONE and (ends or goes_on) and bool(self.found)
        lone = lone or (token.norm == "first" and after is not None and after.is_("det", "poss"))
        lone = lone or (token.norm in _STRANDED and ends and bool(self.found))
        before = after is not None and "prep" in after.tags and not after.is_("sub", "particle")
        if lone or (token.norm in JUST and before):
            self.at += 1
            return Adverb(token.norm, "adverb", token.first, token.last)
        return None

    def _inverted_if(self) -> bool:
        """ "Should Black take, ...": "if". What follows is left with "does" before its verb."""
        if self.found and not isinstance(self.found[-1], Joint):
            return False
        said = self.tokens[self.at]
        self.at += 1
        start = self.at
        first, then = self._token(start), self._token(start + 1)
        if first is not None and "side" in first.tags and (then is None or then.norm != "'s"):
            end, noun = start + 1, pointer(first)
        else:
            found = self._noun(coordinate=True)
            end, self.at = self.at, start
            if found is None:
                self.at = start - 1
                return False
            noun = found
        to = self._token(end)
        if said.norm == "were":
            if to is None or to.norm != "to" or self._form(self._skip(end + 1), "base") is None:
                self.at = start - 1
                return False
            does = to._replace(norm="does", tags=frozenset({"do"}), verbs=())
            self._look_at([*self.tokens[:end], does, *self.tokens[end + 1 :]])
            return True  # "were White to take, ..."
        doing = self._form(self._skip(end), "base") or (to is not None and to.norm == "do")
        if noun is None or not doing:
            self.at = start - 1
            return False
        does = said._replace(norm="does", tags=frozenset({"do"}), verbs=())
        self._look_at([*self.tokens[:end], does, *self.tokens[end:]])
        return True

    def _no_doing(self) -> Group | None:
        """ "There's no stopping him", "there is no way out": nobody can do it."""
        at = self.at + 1
        while (t := self._token(at)) is not None and t.is_("adverb", "hedge", "be", "clitic"):
            at += 1
        doing = self._form(at + 1, "ing")
        named = self._token(at + 1)
        if (
            t is None
            or t.norm != "no"
            or doing is None
            or (named is not None and "noun" in named.tags)
        ):
            return None
        lemma, behind = self._tail(doing, at + 2)
        after = self._token(behind)
        if (
            after is not None
            and not after.is_(
                "punct", "det", "poss", "prep", "side", "pron", "cc", "sub", "particle"
            )
            and after.norm not in {"mate", "checkmate"}
        ):
            return None
        said = self.tokens[self.at]
        self.found.append(Noun("pronoun", "anyone", "anyone", said.first, said.first))
        self.at = behind
        verb = Verb(negated=True, modal="can")
        last = self.tokens[behind - 1].last
        return Group(lemma, "finite", False, verb, (), said.first, last)

    def _compared(self) -> Adjective | Adverb | None:
        """ "As snug as a bug": the adjective, when what it is likened to is nothing on the board."""
        token, said, then = self.tokens[self.at], self._token(self.at + 1), self._token(self.at + 2)
        if said is None or then is None or then.norm != "as":
            return None
        if not said.is_("adj", "word"):
            return None
        back = self.at
        self.at += 3
        noun = self._noun(coordinate=False)
        if noun is None or noun.type != "noun":
            self.at = back
            return None
        if said.norm in {"early", "late", "soon", "fast", "quickly", "far"}:
            return Adverb(
                said.norm, "adverb", token.first, noun.last
            )  # "as early as the third move"
        return Adjective(said.norm, (), token.first, noun.last, "adj" in said.tags)

    def _simile(self) -> Adjective | None:
        """ "As open as a barn", "as open as a position can be": very open."""
        said = self.tokens[self.at : self.at + 5]
        if (
            len(said) < 5
            or [said[0].norm, said[2].norm] != ["as", "as"]
            or "adj" not in said[1].tags
        ):
            return None
        if said[3].norm not in {"a", "an"} or said[4].is_("piece", "square", "move", "adj"):
            return None
        self.at += 5
        tail = [t.norm for t in self.tokens[self.at : self.at + 2]]
        if tail in (["can", "be"], ["could", "be"], ["can", "get"]):
            self.at += 2
        return Adjective(said[1].norm, (), said[0].first, self.tokens[self.at - 1].last)

    def _take(self, noun: Noun) -> Noun:
        self.at += 1
        return noun

    def _joint(self, sort: str) -> Joint:
        token = self.tokens[self.at]
        self.at += 1
        return Joint(token.norm, sort, token.first, token.last)

    def _exists(self) -> bool:
        at = self.at + 1
        while (t := self._token(at)) is not None and t.is_(
            "adverb", "not", "deny", "hedge", "modal"
        ):
            at += 1
        return t is not None and (
            "be" in t.tags
            or t.norm in {"'s", "exists", "stands", "remains", "has", "seems", "lies", "comes"}
        )


__all__ = ["JUST", "LONE", "TurnsOfSpeech"]
