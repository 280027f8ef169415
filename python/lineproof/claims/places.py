"""Places and what stands alone: a preposition with its noun, an adjective, "that" and "but" by what they mean here."""

from __future__ import annotations

from dataclasses import replace

from .chunk import Adjective, Adverb, Group, Joint, Place
from .lexicon import VERBS
from .noun import Noun, listed
from .token import Token
from .turns_of_speech import JUST, TurnsOfSpeech

_OVER = frozenset({"over on", "up on", "out on"})

_MOMENTS = frozenset({"moment", "hour", "time"})

_BEING = frozenset(
    w.split()[0] for w in (*VERBS["be"], *VERBS["have"], *VERBS["make"], *VERBS["give"])
)

_WAYS = frozenset({"way", "means", "chance", "hope", "method", "possibility", "prospect"})

_SAYING = frozenset(VERBS["know"]) | frozenset(VERBS["think"])


class Places(TurnsOfSpeech):
    """Reads places and adjectives."""

    def _beside_object(self) -> bool:
        """Whether the object of a verb that does something stands just before."""
        if not self.found or not isinstance(self.found[-1], Noun):
            return False
        group = next((c for c in reversed(self.found) if isinstance(c, Group)), None)
        return group is not None and group.lemma.split()[0] not in _BEING

    def _excepts(self) -> bool:
        """Whether "but" means "except", or "not X but Y"."""
        before = self.found[-1] if self.found else None
        if not isinstance(before, Noun):
            return False
        if before.det in {"every", "each", "all", "all of"} and not any(
            isinstance(c, Group) for c in self.found
        ):
            return True  # "every piece but the knight"
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
            self.at = self._skip(self.at + 1) if token.norm == "for" else self.at + 1
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
        alone = following.norm in {"only", "merely"}
        while (
            following is not None
            and (following.is_("adverb", "hedge") or following.norm in {"only", "merely"})
            and self._token(self.at + 1) is not None
            and "noun" not in following.tags
            and following.norm != "either"
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
        if alone and noun.count == 1:
            noun = replace(noun, adjectives=("only", *noun.adjectives))  # "left with only one move"
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
        after = self._token(at + 1)
        if said and t.is_("noun") and after is not None and after.is_("be", "have", "modal"):
            return None  # "now material is even"
        first = self.tokens[self.at].first
        self.at = at + 1
        return Adjective(t.norm, tuple(said), first, t.last, "adj" in t.tags)

    def _before_adjective(self, at: int) -> bool:
        """Whether an unknown word stands before an adjective that is known: "deadly boring and dead level"."""
        t, after, then = (self._token(at + step) for step in range(3))
        if after is not None and after.norm in JUST and then is not None and "prep" in then.tags:
            return False  # "short right under it"
        return (
            t is not None
            and after is not None
            and t.is_("word", "adj")
            and "verb" not in t.tags
            and "adj" in after.tags
            and "verb" not in after.tags
        )


__all__ = ["Places"]
