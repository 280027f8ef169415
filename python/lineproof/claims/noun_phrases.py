"""Noun phrases, each by itself: from its article to its head."""

from __future__ import annotations

import re
from dataclasses import replace

from .noun import Noun, Run, pointer
from .noun_signs import OWNERS, NounSigns
from .scan import ATTRIBUTIVE

_OF = re.compile("[1-9] of")

_MEN = {"us": "our", "ours": "our", "him": "his", "his": "his", "them": "their", "theirs": "their"}
"""Whose men "two of us" and "one of his" are."""

_BEGINS = frozenset({"side", "pron", "det", "poss", "move", "square", "piece", "noun", "file", "number", "adj", "word", "verb", "clitic"})  # fmt: skip
"""What the first word of a noun phrase may be."""
_OWNS = frozenset({"det", "poss"})
_MOVES = frozenset({"move", "square"})


_PERSONS = frozenset({"everybody", "everyone", "nobody", "somebody", "people", "beginner", "beginners"})  # fmt: skip


class NounPhrases(NounSigns):
    """Reads single noun phrases."""

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
        if token.norm in OWNERS:
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
            token.norm in {"neither of", "none of"}
            and after is not None
            and after.norm in {"us", "you", "them"}
        ):
            self.at += 2
            return Noun("pronoun", "nobody", "nobody", token.first, after.last, no=True)
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
            first, owns = end == start, not t.tags.isdisjoint(_OWNS)
            if first and owns and ("pron" not in t.tags or self._nominal(end + 1)):
                det = True
            elif (
                "det" in t.tags
                and det
                and t.norm in {"other", "many", "such", "few", "more", "most", "several", "another"}
            ):
                pass
            elif owns and end == start + 1 and "det" in self.tokens[start].tags:
                pass  # "both of his", "all the"
            elif not t.tags.isdisjoint(_MOVES):
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
                    and "square" in t.tags
                    and "square" in nxt.tags
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
                if head >= 0 and (self._is_verb(end, self.tokens[head]) or t.norm in _PERSONS):
                    break  # "the error everybody makes"
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
                or self.tokens[end - 1].norm == "'s"
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


__all__ = ["NounPhrases"]
