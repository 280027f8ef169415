"""Verb groups: tense, denial, modal, adverbs, particles and the verb itself."""

from __future__ import annotations

from .chunk import Group
from .noun import Noun
from .verb_words import INTRANSITIVE, STATES, VerbWords
from .verbs import Verb

_READY = {"able": "can", "about": "will", "bound": "will", "sure": "will", "set": "will", "certain": "will", "ready": "will", "due": "will", "going": "will", "poised": "will"}  # fmt: skip
_IMMINENT = frozenset({"about", "ready", "set", "poised", "going"})

_MODALS = {"'ll": "will", "'d": "would", "ought to": "should", "needs to": "must"}
_BEGINS = frozenset({"to", "not", "be", "modal", "have", "do", "verb", "third", "clitic", "adverb", "hedge", "deny", "limit"})  # fmt: skip
"""What the first word of a verb group may be."""


class Groups(VerbWords):
    """Reads verb groups."""

    def _there_behind(self, at: int) -> bool:
        """Whether "there is" follows a row of adverbs."""
        while (t := self._token(at)) is not None and "adverb" in t.tags and t.norm != "there":
            at += 1
        then = self._token(at + 1)
        return t is not None and t.norm == "there" and then is not None and "be" in then.tags

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
        if "adverb" in token.tags and self._there_behind(at):
            return None  # "now there is a mate in one": "there" is its subject
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
                modal, aux, at = _MODALS.get(bare, bare), "modal", at + 1
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
                then = self._token(self._skip(after + 1))
                if (
                    nxt is not None
                    and nxt.norm == "to"
                    and then is not None
                    and (self._form(self._skip(after + 1), "base") or then.norm == "do")
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
        if passive and lemma.split()[0] in INTRANSITIVE:
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

    def _state(self, group: Group) -> Group:
        """ "stands pinned", "gets mated", "has been left undefended": the state is what is said."""
        if group.passive and group.lemma in {"call", "consider", "regard as", "name", "deem"}:
            return group._replace(lemma="be", passive=False)
        if group.lemma not in STATES or group.passive:
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
        return group._replace(
            lemma=lemma,
            passive=True,
            verb=group.verb._replace(negated=neg),
            adverbs=(*group.adverbs, *said),
            last=self.tokens[at - 1].last,
        )


__all__ = ["Groups"]
