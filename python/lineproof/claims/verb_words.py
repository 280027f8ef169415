"""Verb words: whether a word that may be a verb is one here, and what it is a form of."""

from __future__ import annotations

from .chunk import Adverb, Group, Joint, Place
from .lexicon import VERBS
from .noun import Noun
from .tails import Tails
from .token import Token

_PARTICLES = frozenset({"up", "off", "out", "away", "back", "down"})
"""Particles before an object that are seldom prepositions."""
_DITRANSITIVE = frozenset(
    {"give", "leave", "call", "name", "deem", "consider", "grant", "offer", "show", "hand", "deny"}
)
"""Verbs whose passive takes an object: "he's given a knight"."""

INTRANSITIVE = frozenset(
    {"sit", "come", "go", "arrive", "stand", "fall", "become", "land", "happen", "run"}
)

_WELL = frozenset({"well", "right", "best", "wisely", "better"})

STATES = frozenset(w for name in ("be",) for w in VERBS[name]) | {"get"}


class VerbWords(Tails):
    """Tells verbs from other words."""

    def _turned(self, at: int) -> bool:
        """Whether the subject follows: "only now does Nxf7 work"."""
        t, said = self._token(at + 1), self._segment()
        fronted = bool(said) and all(isinstance(c, Adverb) for c in said)
        return fronted and t is not None and t.is_("move", "side", "piece", "det", "poss")

    def _does(self, at: int) -> bool:
        """Whether "do" is the verb itself: "does nothing"."""
        beside = self._token(at + 1)
        if beside is not None and beside.norm in {"about", "against"}:
            return True  # "nothing that White can do about it"
        then = self._token(at + 2)
        if beside is not None and beside.norm in _WELL and then is not None and then.norm == "to":
            return True  # "does well to take"
        after = self._token(self._skip(at + 1))
        before = self._token(at - 1)
        if after is None and before is not None and "modal" in before.tags:
            return True  # "the best he can do"
        return after is not None and (
            after.norm in {"nothing", "something", "anything", "better", "worse", "well"}
            or after.is_("det", "poss", "punct", "number")
            or after.norm in {"about", "against"}
        )

    def _nominal_after(self, at: int) -> bool:
        if self._attributive(self._skip(at)):
            return True
        t = self._token(self._skip(at))
        return t is None or not t.is_("verb", "prep", "particle")

    def _coordinated(self, at: int) -> bool:
        """Whether "and allowed a mate" goes on from "he has attacked the queen": a verb that does something, with its object."""
        joint = self.found[-1] if self.found else None
        group = next((c for c in reversed(self.found) if isinstance(c, Group)), None)
        after = self._token(at + 1)
        return (
            isinstance(joint, Joint)
            and joint.norm in {"and", "but"}
            and group is not None
            and group.form == "finite"
            and not group.passive
            and group.verb.done
            and after is not None
            and after.is_("det", "poss")
        )

    def _clitic(self, token: Token) -> bool:
        """Whether "is" was written "'s", and so may be "has"."""
        word = self.sentence.words[token.first]
        return token.norm == "is" and self.sentence.text[word.start : word.end] != "is"

    def _is_or_has(self) -> bool:
        before = self.found[-1] if self.found else None
        return isinstance(before, Noun | Place | Joint)

    def _has(self, after: int) -> bool:
        t, then = self._token(after), self._token(after + 1)
        before = self.found[-1] if self.found else None
        if (
            isinstance(before, Noun)
            and before.type == "side"
            and then is not None
            and (
                then.is_("det", "poss", "piece", "square", "noun")
                or then.norm in {"us", "him", "them"}
            )
        ):
            return True  # "he's pocketed the pawn", "he's mated us"
        return (
            t is not None
            and t.norm
            in {
                "been",
                "got",
                "gone",
                "had",
                "won",
                "given",
                "taken",
                "castled",
                "moved",
                "played",
                "put",
                "left",
                "made",
                "lost",
                "come",
                "become",
                "blundered",
                "sacrificed",
                "gained",
                "picked",
            }
            and t.norm != "lost"
        )

    def _takes_object(self, at: int) -> bool:
        """Whether a noun phrase follows a participle: "he's shut the middle" has shut it."""
        base = self._form(at, "part")
        _, behind = self._tail(base or "", at + 1)
        t = self._token(behind)
        if base in _DITRANSITIVE or t is None:
            return False
        subject = self._subject_before()
        if subject is not None and subject.type == "side" and "noun" in t.tags and not t.plural:
            return True  # "he's wasted time"
        if t.norm in _PARTICLES and (u := self._token(behind + 1)) is not None:
            t = u  # but "the bishop's caught in the net" is passive
        return t.is_("det", "poss", "number", "piece") or t.norm in {"us", "him", "them", "you"}

    def _verb_ahead(self, at: int) -> bool:
        after = self._skip(at)
        t = self._token(after)
        return t is not None and (
            t.is_("be", "have", "do", "modal") or (t.is_("verb", "third") and self._fits(after, ""))
        )

    def _bare(self, names: list[str], base: str, at: int) -> str:
        """The form of a verb without an auxiliary, by what stands before it."""
        subject = self._subject_before()
        if "ing" in names:
            return "ing"
        before = self.found[-1] if self.found else None
        if "part" in names and isinstance(before, Place) and before.preposition == "with":
            return "part"  # "with the colours swapped"
        if "third" in names:
            return "finite"
        if "base" in names and self._made():
            return "base"  # "making the queen run"
        if "base" in names and subject is None and not self.found:
            return "base"  # "let White pass"
        if "past" in names and "part" in names and self._left():
            return "part"  # "has left his king exposed"
        if (
            "base" in names
            and subject is not None
            and subject.plural
            and (subject.type == "side" or base in INTRANSITIVE)
        ):
            return "finite"  # "we come out", "the queens come off"
        if "past" in names:
            return "finite" if subject is not None or self._coordinated(at) else "part"
        if "part" in names and not (
            "base" in names
            and subject is not None
            and subject.plural
            and subject.type in {"move", "square"}
        ):
            return "part"
        return "finite" if subject is not None else "base"

    def _made(self) -> bool:
        """Whether "make" or "let" with whom it makes stands just before."""
        near = [c for c in self.found[-3:] if not isinstance(c, Adverb)][-2:]
        return (
            len(near) == 2
            and isinstance(near[0], Group)
            and near[0].lemma in {"make", "let", "help"}
            and isinstance(near[1], Noun)
        )

    def _left(self) -> bool:
        """Whether "leave" or "keep" with what it leaves stands just before."""
        near = [c for c in self.found[-4:] if not isinstance(c, Adverb)][-2:]
        return (
            len(near) == 2
            and isinstance(near[0], Group)
            and not near[0].passive
            and near[0].lemma in {"leave", "keep", "find", "get", "have"}
            and isinstance(near[1], Noun)
            and near[1].type in {"piece", "square", "file", "side"}
        )

    def _fits(self, at: int, aux: str) -> bool:
        """Whether a word that may be a verb or a noun is a verb here."""
        token = self.tokens[at]
        if not aux and token.is_("prep", "particle") and not self._alone(at):
            return False  # "the squares round his king", "has left home"
        if aux or not token.is_("noun", "adj", "word", "third", "prep", "sub"):
            return True
        if "adj" in token.tags:
            following = self._token(at + 1)
            acts = (
                following is not None
                and following.is_("det", "poss", "piece", "number")
                and self._subject_before() is not None
            )
            stops = (
                isinstance(self.found[-1], Noun) and self.found[-1].type == "side"
                if self.found
                else False
            )
            last = next((c for c in reversed(self.found) if isinstance(c, Group)), None)
            if stops and last is not None and last.lemma in VERBS["prevent"]:
                return any(f == "ing" for _, f in token.verbs)  # "stops us hanging on"
            before = self.found[-1] if self.found else None
            doing = (
                following is not None
                and following.is_("det", "poss", "number")
                and isinstance(before, Group)
                and before.lemma not in STATES
                and before.form != "part"
            )  # "cannot avoid losing the queen"
            opening = (
                following is not None
                and following.is_("det", "poss", "number")
                and all(isinstance(c, Adverb) for c in self._segment())
            )  # "winning the queen"
            doing = doing or opening
            return any(
                f == "third" or (f == "past" and acts) or (f == "ing" and doing)
                for _, f in token.verbs
            )
        names = {f for _, f in token.verbs}
        subject = self._subject_before()
        after = self._token(at + 1)
        if token.is_("word", "third") and "noun" not in token.tags:
            if names == {"third"}:
                return subject is not None and not subject.plural
            return True
        if (
            subject is None
            and "third" in names
            and self.found
            and isinstance(self.found[-1], Joint)
        ):
            last = next((c for c in reversed(self.found) if isinstance(c, Group)), None)
            opens = after is not None and after.is_(
                "det", "poss", "side", "number", "move", "square", "piece", "adverb"
            )
            inside = (
                self.found[-1].norm == "," and last is not None and last.form in {"ing", "part"}
            )
            return (
                opens
                and last is not None
                and (last.form == "finite" or inside)
                and self.found[-1].norm in {"and", "but", ","}
            )
        if subject is None:
            starts = not self.found or isinstance(self.found[-1], Joint | Adverb)
            opens = after is not None and after.is_(
                "det", "poss", "side", "pron", "move", "square", "piece"
            )
            return "third" not in names and starts and opens and not token.plural
        if "third" in names:
            return not subject.plural or subject.no
        if "base" in names:
            return subject.plural and subject.type in {"piece", "side", "pronoun", "noun"}
        return True


__all__ = ["INTRANSITIVE", "STATES", "VerbWords"]
