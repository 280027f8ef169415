"""Chunking: a sentence cut into noun phrases, verb groups, places, adverbs and joints; every word is in one of them.

>>> from lineproof.claims.sentence import sentences
>>> [type(c).__name__ for c in chunks(sentences("Now the knight on f6 is pinned to the queen.", 0)[0])]
['Adverb', 'Noun', 'Group', 'Place']
"""

from __future__ import annotations

from .chunk import Adjective, Adverb, Chunk, Group, Joint, Place, Stray
from .lexicon import VERBS
from .noun import Noun, listed, pointer
from .nouns import Nouns
from .sentence import Sentence
from .tokens import Token
from .verbs import Verb

_OVER = frozenset({"over on", "up on", "out on"})
_JUST = frozenset({"right", "bang", "smack", "straight", "clean"})
_ALONE = frozenset({"next", "first", "straight", "once", "yet"})
"""Adverbs that are other words where something follows that belongs to them: "the next move", "once the king has moved"."""
_STRANDED = frozenset({"for", "with", "of", "to", "at", "against", "about"})
_LONE = _ALONE | _STRANDED | _JUST
_MOMENTS = frozenset({"moment", "hour", "time"})
_BEING = frozenset(
    w.split()[0] for w in (*VERBS["be"], *VERBS["have"], *VERBS["make"], *VERBS["give"])
)
_WAYS = frozenset({"way", "means", "chance", "hope", "method", "possibility", "prospect"})
_SAYING = frozenset(VERBS["know"]) | frozenset(VERBS["think"])


def chunks(sentence: Sentence) -> list[Chunk]:
    """The chunks of a sentence, in order; every word is in one of them."""
    return _Chunker(sentence).run()


class _Chunker(Nouns):
    def run(self) -> list[Chunk]:
        while self.at < len(self.tokens):
            chunk = self._next()
            self.found.append(chunk)
        return self.found

    def _next(self) -> Chunk:
        token = self.tokens[self.at]
        nearby = self._token(self.at + 1)
        if nearby is not None and nearby.norm == "or" and self._or_no(token):
            self.at += 4
            last = self.tokens[self.at - 1].last
            return Adverb("or not", "adverb", token.first, last)  # "queen or no queen"
        if "punct" in token.tags:
            return self._joint("punct")
        if token.norm in {"should", "were"} and self._inverted_if():
            return Joint("if", "sub", token.first, token.last)
        if token.norm == "that" and self._that() is not None:
            return self._joint(self._that() or "that")
        if token.norm in {"which", "who", "whom", "whose"} and token.norm != "whose":
            return self._joint("relative")
        if "prep" in token.tags and nearby is not None and nearby.norm in {"which", "whom"}:
            self.at += 2  # "on which", "by whom"
            return Joint(f"{token.norm} {nearby.norm}", "sub", token.first, nearby.last)
        if token.norm == "all" and (not self.found or isinstance(self.found[-1], Joint)):
            after = self._token(self.at + 1)
            if after is not None and after.norm in {
                "it",
                "we",
                "he",
                "you",
                "they",
                "i",
                "white",
                "black",
            }:
                then = self._token(self.at + 2)
                if then is not None and then.is_("verb", "have", "do", "modal", "clitic"):
                    self.at += 1
                    return Joint("what", "wh", token.first, token.last)  # "all it's cost us is"
        if token.norm == "there" and self._exists():
            barred = self._no_doing()
            if barred is not None:
                return barred
            return self._take(pointer(token))
        compared = self._compared()
        if compared is not None:
            return compared
        if "wh" in token.tags and "sub" not in token.tags:
            return self._joint("wh")
        lone = self._lone()
        if lone is not None:
            return lone
        simile = self._simile()
        if simile is not None:
            return simile
        group = self._group()
        if group is not None:
            return group
        noun = self._noun(coordinate=True)
        if noun is not None:
            return noun
        if token.norm == "but" and not self._excepts():
            return self._joint("cc")
        if "prep" in token.tags and not (token.is_("sub", "cc") and not self._noun_follows()):
            place = self._place()
            if place is not None:
                return place
        then = self._token(self.at + 1)
        if token.norm == "yet" and (then is None or then.is_("punct", "sub")):
            self.at += 1
            return Adverb("yet", "adverb", token.first, token.last)  # "does not work yet"
        for sort in ("cc", "sub", "wh"):
            if token.is_(sort) and not self._not_yet(token):
                return self._joint(sort)
        after = self._token(self.at + 1)
        if token.norm == "only" or (
            token.norm == "even"
            and after is not None
            and after.is_("prep", "sub", "det", "poss", "adverb")
        ):
            self.at += 1
            return Adverb(token.norm, "adverb", token.first, token.last)
        if (
            token.norm in _JUST
            and after is not None
            and "prep" in after.tags
            and "sub" not in after.tags
        ):
            self.at += 1
            return Adverb(token.norm, "adverb", token.first, token.last)  # "right across"
        if "adj" in token.tags and "adverb" in token.tags and self._beside_object():
            self.at += 1
            return Adverb(
                token.norm, "adverb", token.first, token.last
            )  # "wins the queen outright"
        if (
            "adj" in token.tags
            and after is not None
            and after.norm in {"white", "black"}
            and not self._nominal(self.at + 2)
            and not (self.found and isinstance(self.found[-1], Group))
        ):
            self.at += 1
            return Adverb(token.norm, "adverb", token.first, token.last)  # "poor Black"
        adjective = self._adjective()
        if adjective is not None:
            return adjective
        for sort in ("deny", "hedge", "limit", "adverb"):
            if token.is_(sort):
                self.at += 1
                return Adverb(token.norm, sort, token.first, token.last)
        if "not" in token.tags:
            self.at += 1
            return Adverb("not", "deny", token.first, token.last)
        self.at += 1
        if token.norm == "her":
            return Noun("pronoun", "it", "it", token.first, token.last)
        if token.is_("side", "pron"):
            return pointer(token)
        if token.norm in {"enough", "more than enough", "not enough", "plenty", "too little"}:
            said = (token.norm,)
            return Noun("noun", "enough", token.norm, token.first, token.last, adjectives=said)
        if token.norm == "1" and (t := self._token(self.at)) is not None and "modal" in t.tags:
            return Noun("side", "one", "you", token.first, token.last)
        if "number" in token.tags:
            return Noun(
                "noun",
                "one" if token.norm == "1" else token.norm,
                token.norm,
                token.first,
                token.last,
                count=int(token.norm),
            )
        if token.is_("particle", "prep"):
            return Adverb(token.norm, "particle", token.first, token.last)
        if token.norm in {"more", "less", "fewer"}:
            return Adjective(token.norm, (), token.first, token.last)  # "has a pawn more"
        return Stray(token.norm, token.first, token.last)

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
        if token.norm not in _LONE:
            return None
        ends = after is None or "punct" in after.tags
        goes_on = after is not None and (
            after.norm in {"and", "but", "by", "or"} or "clitic" in after.tags
        )
        goes_on = goes_on or (after is not None and after.tags == {"adverb"})
        lone = token.norm in _ALONE and (ends or goes_on) and bool(self.found)
        lone = lone or (token.norm == "first" and after is not None and after.is_("det", "poss"))
        lone = lone or (token.norm in _STRANDED and ends and bool(self.found))
        before = after is not None and "prep" in after.tags and not after.is_("sub", "particle")
        if lone or (token.norm in _JUST and before):
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
            self.tokens[end] = to._replace(norm="does", tags=frozenset({"do"}), verbs=())
            return True  # "were White to take, ..."
        doing = self._form(self._skip(end), "base") or (to is not None and to.norm == "do")
        if noun is None or not doing:
            self.at = start - 1
            return False
        does = said._replace(norm="does", tags=frozenset({"do"}), verbs=())
        self.tokens[end:end] = [does]
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

    def _beside_object(self) -> bool:
        """Whether the object of a verb that does something stands just before."""
        if not self.found or not isinstance(self.found[-1], Noun):
            return False
        group = next((c for c in reversed(self.found) if isinstance(c, Group)), None)
        return group is not None and group.lemma.split()[0] not in _BEING

    def _compared(self) -> Adjective | Adverb | None:
        """ "As snug as a bug": the adjective, when what it is likened to is nothing on the board."""
        token, said, then = self.tokens[self.at], self._token(self.at + 1), self._token(self.at + 2)
        if token.norm != "as" or said is None or then is None or then.norm != "as":
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

    def _excepts(self) -> bool:
        """Whether "but" means "except", or "not X but Y"."""
        before = self.found[-1] if self.found else None
        if not isinstance(before, Noun):
            return False
        if before.no or before.head in {"anything", "everything", "all", "choice", "nothing"}:
            return True
        groups = [c for c in self.found if isinstance(c, Group)]
        return bool(groups) and groups[-1].verb.negated and groups[-1].lemma == "be"

    def _that(self) -> str | None:
        """Whether "that" opens a clause ("that"), is a relative, or (None) a determiner or pronoun."""
        before = self.found[-1] if self.found else None
        after = self._token(self.at + 1)
        if after is None:
            return None
        if before is None or (isinstance(before, Joint) and before.norm not in {"and", "but"}):
            said = any(isinstance(c, Group) and c.lemma in _SAYING for c in self.found)
            return (
                "that"
                if said
                and after.is_("side", "poss", "piece", "square", "move")
                and before is not None
                else None
            )
        if isinstance(before, (Group, Adverb)):
            starts = after.is_("det", "poss", "side", "pron", "move", "square", "piece")
            return "that" if starts else None
        if isinstance(before, Noun | Place) and (
            after.is_("verb", "be", "have", "do", "modal", "side", "poss", "pron")
            or after.norm in {"'s", "the"}
            or after.is_("adverb", "not", "deny")
        ):
            return "relative"
        return None

    def _noun_follows(self) -> bool:
        token, after = self.tokens[self.at], self._token(self.at + 1)
        if (
            token.norm == "since"
            and after is not None
            and any(t.norm in {"that", "which"} for t in self.tokens[self.at + 1 : self.at + 4])
        ):
            return False  # "since the bishop that pins the knight is lost"
        if token.norm in {"as", "for", "since", "after", "before", "till", "until", "like"}:
            back = self.at  # a clause follows when a verb stands behind the noun phrase
            self.at += 1
            noun = self._noun(coordinate=True)
            at = self._skip(self.at)
            following = self._token(at)
            self.at = back
            before = self.found[-1] if self.found else None
            if noun is not None and isinstance(before, Noun) and before.head in _MOMENTS:
                return True  # "the moment for e4 has come"
            if noun is not None and token.norm == "for" and self._what_open():
                return True  # "what he has for the pawn is"
            if noun is None or following is None:
                return noun is not None or (after is not None and after.is_("verb", "number"))
            if following.verbs and (
                noun.type == "side"
                or (not noun.plural and any(f == "third" for _, f in following.verbs))
            ):
                return False
            begins = following.is_("be", "have", "do", "modal", "clitic") or (
                following.is_("verb", "third")
                and not following.is_("noun", "prep", "adj")
                and not any(f in {"part", "ing"} for _, f in following.verbs)
            )
            past = any(f == "past" for _, f in following.verbs) and "prep" not in following.tags
            return not (begins or past)
        return after is not None

    def _simile(self) -> Adjective | None:
        """ "As open as a barn", "as open as a position can be": very open."""
        if self.tokens[self.at].norm != "as":
            return None
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

    def _what_open(self) -> bool:
        """Whether a clause with "what" waits for its "is"."""
        opens = [i for i, c in enumerate(self.found) if isinstance(c, Joint) and c.norm == "what"]
        return bool(opens) and sum(isinstance(c, Group) for c in self.found[opens[-1] :]) == 1

    def _place(self) -> Place | None:
        token = self.tokens[self.at]
        if token.norm in _OVER:
            token = token._replace(norm=token.norm.split()[-1])  # "over on the queenside"
        back = self.at
        self.at += 1
        following = self._token(self.at)
        if following is None:
            self.at = back
            return None
        while (
            following is not None
            and following.is_("adverb", "hedge")
            and self._token(self.at + 1) is not None
            and "noun" not in following.tags
        ):
            self.at += 1
            following = self._token(self.at)
        if following is not None and following.norm in {"which", "whom", "what", "he", "she", "we", "they", "i"}:  # fmt: skip
            self.at = back
            return None  # "without queens on he is safe"
        way = self.found[-1] if self.found else None
        doing = (
            (
                token.norm == "from"
                or (token.norm == "of" and isinstance(way, Noun) and way.head in _WAYS)
            )
            and following is not None
            and any(form == "ing" for _, form in following.verbs)
            and not self._attributive(self.at)
        )  # "from trading bishops"
        noun = None if doing else self._noun(coordinate=True)
        if noun is None and following is not None and self._unknown_thing(token, following):
            self.at += 1
            thing = following.norm
            noun = Noun("noun", thing, thing, following.first, following.last)  # "without remorse"
        if noun is None and following is not None and "number" in following.tags:
            self.at += 1
            noun = Noun(
                "noun",
                following.norm,
                following.norm,
                following.first,
                following.last,
                count=int(following.norm),
            )
        if noun is None:
            if (
                self._token(self.at) is not None
                and self._form(self._skip(self.at), "ing") is not None
            ):
                return Place(token.norm, None, token.first, token.last)
            self.at = back
            return None
        if noun is not None and noun.type in {"move", "square"} and not noun.parts:
            line = [noun]
            while (t := self._token(self.at)) is not None and "move" in t.tags:
                line.append(Noun("move", t.norm, t.norm, t.first, t.last))
                self.at += 1
            if len(line) > 1:
                noun = listed(line, "then")
        return Place(token.norm, noun, token.first, noun.last if noun is not None else token.last)

    def _unknown_thing(self, preposition: Token, token: Token) -> bool:
        """Whether a word that no table lists stands alone behind its preposition."""
        after = self._token(self.at + 1)
        return (
            preposition.norm
            not in {"to", "as", "than", "like", "but", "off", "out", "up", "down", "over"}
            and token.tags == {"word"}
            and (after is None or after.is_("punct", "cc", "sub", "prep", "wh"))
        )

    def _adjective(self) -> Adjective | None:
        at, said = self.at, []
        while (t := self._token(at)) is not None and (
            (t.is_("adverb", "hedge", "limit") and "adj" not in t.tags)
            or self._before_adjective(at)
        ):
            said.append(t.norm)
            at += 1
        if t is None or not t.is_("adj", "word") or (said and "adj" not in t.tags):
            return None
        first = self.tokens[self.at].first
        self.at = at + 1
        return Adjective(t.norm, tuple(said), first, t.last, "adj" in t.tags)

    def _before_adjective(self, at: int) -> bool:
        """Whether an unknown word stands before an adjective that is known: "deadly boring and dead level"."""
        t, after, then = (self._token(at + step) for step in range(3))
        if after is not None and after.norm in _JUST and then is not None and "prep" in then.tags:
            return False  # "short right under it"
        return (
            t is not None
            and after is not None
            and t.is_("word", "adj")
            and "verb" not in t.tags
            and "adj" in after.tags
            and "verb" not in after.tags
        )


__all__ = ["chunks"]
