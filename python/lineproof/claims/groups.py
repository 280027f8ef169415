"""Verb groups: tense, denial, modal, adverbs, particles and the verb itself."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from .chunk import Adverb, Group, Joint, Place
from .lexicon import VERBS
from .noun import Noun
from .scan import Scan
from .tokens import Token
from .verbs import Verb

_READY = {"able": "can", "about": "will", "bound": "will", "sure": "will", "set": "will", "certain": "will", "ready": "will", "due": "will", "going": "will", "poised": "will"}  # fmt: skip
_IMMINENT = frozenset({"about", "ready", "set", "poised", "going"})
_DITRANSITIVE = frozenset(
    {"give", "leave", "call", "name", "deem", "consider", "grant", "offer", "show", "hand", "deny"}
)
"""Verbs whose passive takes an object: "he's given a knight"."""
_PARTICLES = frozenset({"up", "off", "out", "away", "back", "down"})
"""Particles before an object that are seldom prepositions."""
_INTRANSITIVE = frozenset(
    {"sit", "come", "go", "arrive", "stand", "fall", "become", "land", "happen", "run"}
)
_WELL = frozenset({"well", "right", "best", "wisely", "better"})
_STATES = frozenset(w for name in ("be",) for w in VERBS[name]) | {"get"}


_BEGINS = frozenset({"to", "not", "be", "modal", "have", "do", "verb", "third", "clitic", "adverb", "hedge", "deny", "limit"})  # fmt: skip
"""What the first word of a verb group may be."""


@cache
def _tails() -> dict[str, tuple[tuple[str, ...], ...]]:
    """The words that may follow a verb as part of it, the longest first."""
    found: dict[str, set[tuple[str, ...]]] = {}
    for words in VERBS.values():
        for verb in words:
            base, *tail = verb.split()
            if tail:
                found.setdefault(base, set()).add(tuple(tail))
    return {base: tuple(sorted(t, key=len, reverse=True)) for base, t in found.items()}


@cache
def _verbs() -> frozenset[str]:
    """The verbs of the lexicon that need no particle."""
    return frozenset(w for words in VERBS.values() for w in words if " " not in w)


class Groups(Scan):
    """Reads verb groups."""

    def _group(self) -> Group | None:
        start = self.at
        at = start
        neg, modal, past, done, passive, form = False, "", False, False, False, "finite"
        aux = ""
        said: list[str] = []
        lemma = ""
        token = self.tokens[at]
        if token.tags.isdisjoint(_BEGINS) or self._attributive(at):
            return None
        if "to" in token.tags and not aux:
            if self._form(self._skip(at + 1), "base") is None:
                return None
            aux, form, at = "to", "to", at + 1
        while (t := self._token(at)) is not None:
            bare = t.norm
            if "not" in t.tags:
                neg, at = not neg, at + 1
                continue
            then = self._token(at + 1)
            if (
                aux == "have" and bare in {"got", "had"} and then is not None and then.norm == "to"
                and self._form(self._skip(at + 2), "base") is not None
            ):  # fmt: skip
                modal, done, aux, at = "must", bare == "had", "to", at + 2
                continue  # "he's got to take back", "his king's had to take"
            if "be" in t.tags or (bare == "'s" and self._is_or_has()):
                after = self._skip(at + 1)
                if (
                    (bare == "'s" or self._clitic(t))
                    and self._form(after, "part") is not None
                    and (self._has(after) or self._takes_object(after))
                ):
                    done, aux, at = True, "have", at + 1
                    continue
                past = past or bare in {"was", "were"}
                if bare == "being" and not aux:
                    form = "ing"
                nxt = self._token(after)
                ready = self._token(after + 1)
                if (
                    nxt is not None
                    and nxt.norm in _READY
                    and ready is not None
                    and ready.norm == "to"
                    and self._form(self._skip(after + 2), "base")
                ):
                    modal = modal or _READY[nxt.norm]
                    said += ["imminent"] if nxt.norm in _IMMINENT else []
                    neg = neg or self._denied(at + 1, after)
                    said += self._adverbs(at + 1, after)
                    aux, at = "to", after + 2
                    continue
                if (
                    nxt is not None
                    and nxt.norm == "to"
                    and ready is not None
                    and ready.norm == "be"
                    and self._form(self._skip(after + 2), "part") is not None
                    and isinstance(self._subject_before(), Noun)
                ):
                    modal = modal or "can"  # "is not to be regained"
                    neg = neg != self._denied(at + 1, after)
                    aux, at = "to", after + 1
                    continue
                if (
                    nxt is not None
                    and nxt.norm == "to"
                    and self.tokens[after - 1].norm == "about"
                    and self._form(self._skip(after + 1), "base")
                ):
                    modal, aux, at = modal or "will", "to", after + 1  # "is about to win"
                    said.append("imminent")
                    continue
                if (
                    nxt is not None
                    and nxt.norm == "to"
                    and self.tokens[after - 1].norm == "yet"
                    and self._form(self._skip(after + 1), "base")
                ):
                    neg, aux, at = not neg, "to", after + 1  # "is yet to be developed"
                    continue
                state = (
                    nxt is not None
                    and nxt.is_("adj", "noun", "det")
                    and not ("verb" in nxt.tags and not nxt.is_("adj", "noun"))
                )
                then = self._token(after + 1)
                if (
                    state
                    and nxt is not None
                    and self._form(after, "ing")
                    and then is not None
                    and then.is_("det", "poss", "piece", "number")
                    and "verb" in nxt.tags
                ):
                    state = False  # "is losing his queen"
                part = self._form(after, "part")
                if state and part is not None and self._tail(part, after + 1)[0] != part:
                    state = False  # "will be won back"
                by = self._token(after + 1)
                if (
                    state
                    and part is not None
                    and nxt is not None
                    and not nxt.is_("noun")
                    and (
                        (done and not modal)
                        or modal == "must"
                        or (by is not None and by.norm == "by")
                    )
                ):
                    state = False  # "has not been developed", "is won by"
                if not state and part is not None:
                    passive, aux, at = True, "be", at + 1
                    continue
                if not state and self._form(after, "ing") is not None and nxt is not None:
                    aux, at = "ing", at + 1
                    continue
                lemma, at = "be", at + 1
                while (
                    (t2 := self._token(at)) is not None
                    and t2.is_("not", "deny", "adverb", "hedge", "limit")
                    and "noun" not in t2.tags
                    and t2.norm != "without"
                ):
                    if (
                        t2.is_("adverb", "hedge", "limit")
                        and self._adjectival(at + 1)
                        and "limit" not in t2.tags
                    ):
                        break
                    neg = neg != t2.is_("not", "deny")
                    modal = "almost" if "limit" in t2.tags and not modal else modal
                    if "not" not in t2.tags:
                        said.append(t2.norm)
                    at += 1
                break
            if (
                t.norm == "need"
                and aux == ""
                and (b := self._token(at + 1)) is not None
                and "not" in b.tags
            ):
                modal, aux, at = "must", "modal", at + 1
                continue
            if t.norm == "'d" and (b := self._token(at + 1)) is not None and b.norm == "better":
                modal, aux, at = "should", "modal", at + 2
                continue
            if "modal" in t.tags and aux == "":
                modal, aux, at = {"'ll": "will", "'d": "would"}.get(bare, bare), "modal", at + 1
                continue
            if "have" in t.tags and aux in {"", "modal", "to"}:
                after = self._skip(at + 1)
                if (
                    self._form(after, "part") is not None
                    and not (self._token(after) or t).is_("det")
                    and not self._attributive(after)
                ):
                    done, aux, at = True, "have", at + 1
                    past = past or bare == "had"
                    form = "ing" if bare == "having" else form
                    continue
                nxt = self._token(after)
                if (
                    nxt is not None
                    and nxt.norm == "to"
                    and self._form(self._skip(after + 1), "base")
                ):
                    if any(between.norm == "yet" for between in self.tokens[at + 1 : after]):
                        neg, done, aux, at = not neg, True, "to", after + 1  # "has yet to castle"
                        continue
                    if any(b.norm == "nowhere" for b in self.tokens[at + 1 : after]):
                        neg, modal, aux, at = not neg, "can", "to", after + 1
                        continue  # "has nowhere to hide"
                    modal, aux, at = "must", "to", after + 1
                    continue
                past = past or bare == "had"
                form = "ing" if bare == "having" else form
                lemma, at = "have", at + 1
                break
            if "do" in t.tags and not aux and (self._form(self._skip(at + 1), "base") is not None):
                past = past or bare == "did"
                aux, at = "do", at + 1
                continue
            if "do" in t.tags and not aux and self._turned(at):
                past = past or bare == "did"
                lemma, at = "do", at + 1
                break
            if "do" in t.tags and aux in {"", "modal", "to", "do"} and self._does(at):
                past = past or bare == "did"
                lemma, at = "do", at + 1
                break
            wanted = {"": ("third", "past", "base", "part", "ing"), "modal": ("base",), "do": ("base",), "to": ("base",), "have": ("part",), "be": ("part", "ing"), "ing": ("ing",)}[aux]  # fmt: skip
            base = None if not aux and not t.is_("verb", "third") else self._form(at, *wanted)
            if base is not None and self._fits(at, aux):
                names = [f for b, f in t.verbs if b == base and f in wanted] or ["base"]
                if not aux:
                    form = self._bare(names, base, at)
                    past = past or ("past" in names and form == "finite")
                    done = done or past
                    if form == "finite" and "past" in names:
                        past = False  # "White won a pawn" tells of what is done, as "has won" does
                        done = True
                lemma, at = base, at + 1
                break
            if modal == "can" and t.norm == "always":
                at += 1  # "can always castle", but "always castles" tells of a habit
                continue
            if t.is_("adverb", "hedge", "deny", "limit") and not ("noun" in t.tags and not aux):
                if not aux and not self._verb_ahead(at + 1):
                    return None
                said.append(t.norm)
                neg = neg != ("deny" in t.tags)
                if "limit" in t.tags:
                    modal = modal or "almost"
                at += 1
                continue
            return None
        if not lemma:
            return None
        if lemma == "get" and done and self._nominal_after(at):
            lemma, done = "have", False  # "has got"
        nxt = self._token(at)
        if lemma in {"find", "see"} and nxt is not None and "reflexive" in nxt.tags:
            lemma, at = "be", at + 1  # "finds itself pinned"
        following = self._token(at)
        if (
            lemma in {"like", "love"}
            and modal == "would"
            and not any(t.norm == "but" for t in self.tokens)
            and following is not None
            and following.norm == "to"
        ):
            lemma, modal = "want", ""  # "would like to"
        lemma, at = self._tail(lemma, at)
        if passive and lemma.split()[0] in _INTRANSITIVE:
            passive, done = False, True  # "our rook's already sat there", "he's gone short"
        if aux == "ing":
            said.append("under way")
        group = Group(
            lemma,
            form,
            passive,
            Verb(neg, modal, done or past, past),
            tuple(said),
            self.tokens[start].first,
            self.tokens[at - 1].last,
        )
        self.at = at
        return self._state(group)

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

    def _state(self, group: Group) -> Group:
        """ "stands pinned", "gets mated", "has been left undefended": the state is what is said."""
        if group.passive and group.lemma in {"call", "consider", "regard as", "name", "deem"}:
            return replace(group, lemma="be", passive=False)
        if group.lemma not in _STATES or group.passive:
            return group
        after = self._skip(self.at)
        t = self._token(after)
        if t is None or t.is_("adj", "noun", "det") or self._form(after, "part") is None:
            return group
        if self._attributive(after):
            return group
        base = self._form(after, "part") or ""
        neg = self._denied(self.at, after) != group.verb.negated
        said = self._adverbs(self.at, after)
        lemma, at = self._tail(base, after + 1)
        self.at = at
        return replace(
            group,
            lemma=lemma,
            passive=True,
            verb=replace(group.verb, negated=neg),
            adverbs=(*group.adverbs, *said),
            last=self.tokens[at - 1].last,
        )

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
            and (subject.type == "side" or base in _INTRANSITIVE)
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
            and near[1].type in {"piece", "square", "file"}
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
                and before.lemma not in _STATES
                and before.form != "part"
            )  # "cannot avoid losing the queen"
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

    def _alone(self, at: int) -> bool:
        """Whether a preposition is a verb of the lexicon by itself, or with the particle that follows: "round up"."""
        return any(
            base in _verbs() or self._tail(base, at + 1)[0] != base
            for base, _ in self.tokens[at].verbs
        )

    def _tail(self, lemma: str, at: int) -> tuple[str, int]:
        """The particles and fixed words that belong to a verb, perhaps behind an adverb, and where the tokens go on."""
        tails = _tails().get(lemma)
        if tails is None:
            return lemma, at
        start = at
        while (t := self._token(start)) is not None and "adverb" in t.tags:
            start += 1
        starts = [(at, self._spelt(at))]
        if start != at:
            starts.append((start, self._spelt(start)))
        for tail in tails:
            for first, words in starts:
                if words[: len(tail)] != tail:
                    continue
                end, count = first, 0
                while count < len(tail):
                    count += len(self.tokens[end].norm.split())
                    end += 1
                if count == len(tail) and not (lemma == "be" and self._token(end) is None):
                    return f"{lemma} {' '.join(tail)}", end
        return lemma, at

    def _spelt(self, at: int) -> tuple[str, ...]:
        """The words of the next tokens."""
        return tuple(w for t in self.tokens[at : at + 7] for w in t.norm.split())


__all__ = ["Groups"]
