"""Chunking: a sentence cut into noun phrases, verb groups, places, adverbs and joints; every word is in one of them.

>>> from lineproof.claims.sentence import sentences
>>> [type(c).__name__ for c in chunks(sentences("Now the knight on f6 is pinned to the queen.", 0)[0])]
['Adverb', 'Noun', 'Group', 'Place']
"""

from __future__ import annotations

from .chunk import Adjective, Adverb, Chunk, Group, Joint, Stray
from .noun import Noun, pointer
from .places import Places
from .sentence import Sentence
from .turns_of_speech import JUST, LONE


def chunks(sentence: Sentence) -> list[Chunk]:
    """The chunks of a sentence, in order; every word is in one of them."""
    return _Chunker(sentence).run()


class _Chunker(Places):
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
        likened = self._compared() if token.norm == "as" else None
        if likened is not None:
            return likened
        if "wh" in token.tags and "sub" not in token.tags:
            return self._joint("wh")
        lone = self._lone() if token.norm in LONE else None
        if lone is not None:
            return lone
        simile = self._simile() if token.norm == "as" else None
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
        if token.norm in {"yet", "before"} and (then is None or then.is_("punct", "sub")):
            self.at += 1
            return Adverb(token.norm, "adverb", token.first, token.last)  # "does not work yet"
        for sort in ("cc", "sub", "wh"):
            if sort in token.tags and not self._not_yet(token):
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
            token.norm in JUST
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
            if sort in token.tags:
                self.at += 1
                return Adverb(token.norm, sort, token.first, token.last)
        if "not" in token.tags:
            self.at += 1
            return Adverb("not", "deny", token.first, token.last)
        self.at += 1
        if token.norm == "her":
            return Noun("pronoun", "it", "it", token.first, token.last, det="her")
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


__all__ = ["chunks"]
