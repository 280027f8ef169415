"""Chunks: a sentence cut into noun phrases, verb groups, places, adverbs and joints."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import cache

from .lexicon import VERBS
from .noun import Noun, Run, listed, on_square, owned, pointer
from .sentence import Sentence
from .tokens import Token, tokens
from .verbs import Verb, forms


@dataclass(frozen=True)
class Group:
    """A verb group. lemma: with its particles ("pick up"). form: "finite", "ing", "part", "to" or "base"; passive: "is pinned".

    verb: what the form says beside it. adverbs: inside the group.
    """

    lemma: str
    form: str
    passive: bool
    verb: Verb
    adverbs: tuple[str, ...]
    first: int
    last: int


@dataclass(frozen=True)
class Place:
    """A preposition with its noun phrase, or with an -ing group (noun is None, and the group follows)."""

    preposition: str
    noun: Noun | None
    first: int
    last: int


@dataclass(frozen=True)
class Adjective:
    """An adjective that stands alone. known: the lexicon has it."""

    lemma: str
    adverbs: tuple[str, ...]
    first: int
    last: int
    known: bool = True


@dataclass(frozen=True)
class Adverb:
    """An adverb or turn. sort: "adverb", "hedge", "deny", "limit"."""

    norm: str
    sort: str
    first: int
    last: int


@dataclass(frozen=True)
class Joint:
    """What joins clauses. sort: "cc", "sub", "relative", "wh", "that", "punct"."""

    norm: str
    sort: str
    first: int
    last: int


@dataclass(frozen=True)
class Stray:
    """A word that fits nowhere."""

    norm: str
    first: int
    last: int


_OF = re.compile("[1-9] of")
_MEN = {"us": "our", "ours": "our", "him": "his", "his": "his", "them": "their", "theirs": "their"}
"""Whose men "two of us" and "one of his" are."""
Chunk = Group | Noun | Place | Adjective | Adverb | Joint | Stray
_SAYING = frozenset(VERBS["know"]) | frozenset(VERBS["think"])
_ATTRIBUTIVE = frozenset(
    {"doubled", "tripled", "isolated", "passed", "hanging", "weakened", "opposed", "connected"}
)
_MOVES_ON = frozenset({"adverb", "hedge", "deny", "limit", "not"})
_READY = {"able": "can", "about": "will", "bound": "will", "sure": "will", "set": "will", "certain": "will", "ready": "will", "due": "will", "going": "will"}  # fmt: skip
_STATES = frozenset(w for name in ("be",) for w in VERBS[name]) | {"get"}


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


def chunks(sentence: Sentence) -> list[Chunk]:
    """The chunks of a sentence, in order; every word is in one of them."""
    return _Chunker(sentence).run()


class _Chunker:
    def __init__(self, sentence: Sentence) -> None:
        self.sentence = sentence
        self.tokens = tokens(sentence)
        self.at = 0
        self.found: list[Chunk] = []

    def run(self) -> list[Chunk]:
        while self.at < len(self.tokens):
            chunk = self._next()
            self.found.append(chunk)
        return self.found

    def _token(self, at: int) -> Token | None:
        return self.tokens[at] if 0 <= at < len(self.tokens) else None

    def _next(self) -> Chunk:
        token = self.tokens[self.at]
        if token.is_("punct"):
            return self._joint("punct")
        if token.norm == "that" and self._that() is not None:
            return self._joint(self._that() or "that")
        if token.norm in {"which", "who", "whom", "whose"} and token.norm != "whose":
            return self._joint("relative")
        if token.norm == "there" and self._exists():
            return self._take(pointer(token))
        if token.is_("wh") and not token.is_("sub"):
            return self._joint("wh")
        group = self._group()
        if group is not None:
            return group
        noun = self._noun(coordinate=True)
        if noun is not None:
            return noun
        if token.norm == "but" and not self._excepts():
            return self._joint("cc")
        if token.is_("prep") and not (token.is_("sub", "cc") and not self._noun_follows()):
            place = self._place()
            if place is not None:
                return place
        for sort in ("cc", "sub", "wh"):
            if token.is_(sort):
                return self._joint(sort)
        after = self._token(self.at + 1)
        if token.norm == "only" or (
            token.norm == "even"
            and after is not None
            and after.is_("prep", "sub", "det", "poss", "adverb")
        ):
            self.at += 1
            return Adverb(token.norm, "adverb", token.first, token.last)
        adjective = self._adjective()
        if adjective is not None:
            return adjective
        for sort in ("deny", "hedge", "limit", "adverb"):
            if token.is_(sort):
                self.at += 1
                return Adverb(token.norm, sort, token.first, token.last)
        if token.is_("not"):
            self.at += 1
            return Adverb("not", "deny", token.first, token.last)
        self.at += 1
        if token.norm == "her":
            return Noun("pronoun", "it", "it", token.first, token.last)
        if token.is_("side", "pron"):
            return pointer(token)
        if token.norm == "1" and (t := self._token(self.at)) is not None and t.is_("modal"):
            return Noun("side", "one", "you", token.first, token.last)
        if token.is_("number"):
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
        return Stray(token.norm, token.first, token.last)

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
            t.is_("be")
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
        if token.norm in {"as", "for", "since", "after", "before", "till", "until", "like"}:
            back = self.at  # a clause follows when a verb stands behind the noun phrase
            self.at += 1
            noun = self._noun(coordinate=True)
            at = self._skip(self.at)
            following = self._token(at)
            self.at = back
            if noun is None or following is None:
                return noun is not None or (after is not None and after.is_("verb", "number"))
            if noun.type == "side" and following.verbs:
                return False
            begins = following.is_("be", "have", "do", "modal", "clitic") or (
                following.is_("verb", "third")
                and not following.is_("noun", "prep", "adj")
                and not any(f in {"part", "ing"} for _, f in following.verbs)
            )
            past = any(f == "past" for _, f in following.verbs) and not following.is_("prep")
            return not (begins or past)
        return after is not None

    # verb groups

    def _skip(self, at: int) -> int:
        while (t := self._token(at)) is not None and t.is_(*_MOVES_ON) and not t.is_("noun"):
            at += 1
        return at

    def _form(self, at: int, *wanted: str) -> str | None:
        """The base of the verb at a token that has one of some forms."""
        token = self._token(at)
        if token is None or not token.is_("verb", "third", "be", "have", "do", "word"):
            return None
        if token.is_("be"):
            return (
                "be"
                if {"been": "part", "being": "ing", "be": "base"}.get(token.norm) in wanted
                else None
            )
        if token.is_("have") and not token.verbs:
            form = {"had": "part", "having": "ing", "have": "base"}.get(token.norm)
            return "have" if form in wanted else None
        if token.is_("do") and not token.verbs:
            return None
        if not token.verbs and token.is_("word") and "base" in wanted:
            return token.norm
        return next((base for base, form in token.verbs if form in wanted), None)

    def _group(self) -> Group | None:
        start = self.at
        at = start
        neg, modal, past, done, passive, form = False, "", False, False, False, "finite"
        aux = ""
        said: list[str] = []
        lemma = ""
        token = self.tokens[at]
        if self._attributive(at):
            return None
        if token.is_("to") and not aux:
            if self._form(self._skip(at + 1), "base") is None:
                return None
            aux, form, at = "to", "to", at + 1
        while (t := self._token(at)) is not None:
            bare = t.norm
            if t.is_("not"):
                neg, at = not neg, at + 1
                continue
            if t.is_("be") or (bare == "'s" and self._is_or_has()):
                after = self._skip(at + 1)
                if bare == "'s" and self._form(after, "part") is not None and self._has(after):
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
                    neg = neg or self._denied(at + 1, after)
                    said += self._adverbs(at + 1, after)
                    aux, at = "to", after + 2
                    continue
                state = (
                    nxt is not None
                    and nxt.is_("adj", "noun", "det")
                    and not (nxt.is_("verb") and not nxt.is_("adj", "noun"))
                )
                then = self._token(after + 1)
                if (
                    state
                    and nxt is not None
                    and self._form(after, "ing")
                    and then is not None
                    and then.is_("det", "poss", "piece", "number")
                    and nxt.is_("verb")
                ):
                    state = False  # "is losing his queen"
                if not state and self._form(after, "part") is not None:
                    passive, aux, at = True, "be", at + 1
                    continue
                if not state and self._form(after, "ing") is not None and nxt is not None:
                    aux, at = "ing", at + 1
                    continue
                lemma, at = "be", at + 1
                while (
                    (t2 := self._token(at)) is not None
                    and t2.is_("not", "deny", "adverb", "hedge", "limit")
                    and not t2.is_("noun")
                ):
                    if (
                        t2.is_("adverb", "hedge", "limit")
                        and self._adjectival(at + 1)
                        and not t2.is_("limit")
                    ):
                        break
                    neg = neg != t2.is_("not", "deny")
                    modal = "almost" if t2.is_("limit") and not modal else modal
                    if not t2.is_("not"):
                        said.append(t2.norm)
                    at += 1
                break
            if (
                t.norm == "need"
                and aux == ""
                and (b := self._token(at + 1)) is not None
                and b.is_("not")
            ):
                modal, aux, at = "must", "modal", at + 1
                continue
            if t.norm == "'d" and (b := self._token(at + 1)) is not None and b.norm == "better":
                modal, aux, at = "should", "modal", at + 2
                continue
            if t.is_("modal") and aux == "":
                modal, aux, at = {"'ll": "will", "'d": "would"}.get(bare, bare), "modal", at + 1
                continue
            if t.is_("have") and aux in {"", "modal", "to"}:
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
                    modal, aux, at = "must", "to", after + 1
                    continue
                past = past or bare == "had"
                form = "ing" if bare == "having" else form
                lemma, at = "have", at + 1
                break
            if t.is_("do") and not aux and (self._form(self._skip(at + 1), "base") is not None):
                past = past or bare == "did"
                aux, at = "do", at + 1
                continue
            wanted = {"": ("third", "past", "base", "part", "ing"), "modal": ("base",), "do": ("base",), "to": ("base",), "have": ("part",), "be": ("part", "ing"), "ing": ("ing",)}[aux]  # fmt: skip
            base = None if not aux and not t.is_("verb", "third") else self._form(at, *wanted)
            if base is not None and self._fits(at, aux):
                names = [f for b, f in t.verbs if b == base and f in wanted] or ["base"]
                if not aux:
                    form = self._bare(names)
                    past = past or ("past" in names and form == "finite")
                    done = done or past
                    if form == "finite" and "past" in names:
                        past = False  # "White won a pawn" tells of what is done, as "has won" does
                        done = True
                lemma, at = base, at + 1
                break
            if t.is_("adverb", "hedge", "deny", "limit") and not (t.is_("noun") and not aux):
                if not aux and not self._verb_ahead(at + 1):
                    return None
                said.append(t.norm)
                neg = neg != (t.is_("deny"))
                if t.is_("limit"):
                    modal = modal or "almost"
                at += 1
                continue
            return None
        if not lemma:
            return None
        if lemma == "get" and done and self._nominal_after(at):
            lemma, done = "have", False  # "has got"
        nxt = self._token(at)
        if lemma in {"find", "see"} and nxt is not None and nxt.is_("reflexive"):
            lemma, at = "be", at + 1  # "finds itself pinned"
        following = self._token(at)
        if (
            lemma in {"like", "love"}
            and modal == "would"
            and following is not None
            and following.norm == "to"
        ):
            lemma, modal = "want", ""  # "would like to"
        lemma, at = self._tail(lemma, at)
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

    def _attributive(self, at: int) -> bool:
        """Whether a participle stands before its noun: "has doubled c-pawns"."""
        t, after = self._token(at), self._token(at + 1)
        if t is None or after is None or t.norm not in _ATTRIBUTIVE:
            return False
        return after.is_("file") or (after.is_("piece", "noun") and after.plural)

    def _nominal_after(self, at: int) -> bool:
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

    def _denied(self, first: int, last: int) -> bool:
        return sum(t.is_("not", "deny") for t in self.tokens[first:last]) % 2 == 1

    def _adverbs(self, first: int, last: int) -> list[str]:
        return [t.norm for t in self.tokens[first:last] if not t.is_("not")]

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
            and (then.is_("det", "poss", "piece", "square") or then.norm in {"us", "him", "them"})
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

    def _verb_ahead(self, at: int) -> bool:
        after = self._skip(at)
        t = self._token(after)
        return t is not None and (
            t.is_("be", "have", "do", "modal") or (t.is_("verb", "third") and self._fits(after, ""))
        )

    def _bare(self, names: list[str]) -> str:
        """The form of a verb without an auxiliary, by what stands before it."""
        subject = self._subject_before()
        if "ing" in names:
            return "ing"
        if "third" in names:
            return "finite"
        if "past" in names:
            return "finite" if subject is not None else "part"
        if "part" in names:
            return "part"
        return "finite" if subject is not None else "base"

    def _subject_before(self) -> Noun | None:
        """The noun phrase before this, when it can be the subject of a verb here."""
        for chunk in reversed(self.found):
            if isinstance(chunk, Adverb):
                continue
            if isinstance(chunk, Noun):
                return chunk
            if isinstance(chunk, Joint) and chunk.sort == "relative":
                return pointer(Token(chunk.norm, frozenset({"pron"}), chunk.first, chunk.last))
            if isinstance(chunk, Place):
                continue
            return None
        return None

    def _fits(self, at: int, aux: str) -> bool:
        """Whether a word that may be a verb or a noun is a verb here."""
        token = self.tokens[at]
        if aux or not token.is_("noun", "adj", "word", "third", "prep", "sub"):
            return True
        if token.is_("adj"):
            opens = self._token(at + 1)
            acts = (
                opens is not None
                and opens.is_("det", "poss", "piece", "number")
                and self._subject_before() is not None
            )
            return any(f == "third" or (f == "past" and acts) for _, f in token.verbs)
        names = {f for _, f in token.verbs}
        subject = self._subject_before()
        after = self._token(at + 1)
        if token.is_("word", "third") and not token.is_("noun"):
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
            return (
                opens
                and last is not None
                and last.form == "finite"
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

    def _tail(self, lemma: str, at: int) -> tuple[str, int]:
        """The particles and fixed words that belong to a verb."""
        norms = " ".join(t.norm for t in self.tokens[at : at + 7]).split()
        for tail in _tails().get(lemma, ()):
            for skipped in range(2):
                start = at
                while skipped and (t := self._token(start)) is not None and t.is_("adverb"):
                    start += 1
                norms = [w for t in self.tokens[start : start + 7] for w in t.norm.split()]
                if tuple(norms[: len(tail)]) == tail:
                    size, count = 0, 0
                    while count < len(tail):
                        count += len(self.tokens[start + size].norm.split())
                        size += 1
                    nxt = self._token(start + size)
                    if count == len(tail) and not (lemma == "be" and nxt is None):
                        return f"{lemma} {' '.join(tail)}", start + size
        return lemma, at

    # noun phrases

    def _noun(self, *, coordinate: bool) -> Noun | None:
        noun = self._one()
        if noun is None:
            return None
        noun = self._behind(noun)
        if not coordinate or noun.type not in {"piece", "square", "file", "move", "side"}:
            return noun
        parts = [noun]
        while True:
            token = self._token(self.at)
            if token is None or token.norm not in {"and", ",", "or", "as well as", "nor", "-"}:
                break
            back = self.at
            self.at += 1
            if (t := self._token(self.at)) is not None and t.norm in {"and", "also", "then"}:
                self.at += 1
            if self._acts(self.at):
                self.at = back
                break  # "comes to g4 and attacks g7"
            more = self._one()
            if more is not None:
                more = self._behind(more)
            if more is None or not self._joins(parts, more, token.norm):
                self.at = back
                break
            parts.append(more)
        return noun if len(parts) == 1 else listed(parts)

    def _acts(self, at: int) -> bool:
        """Whether a verb in the third person with what it acts on begins here: "attacks g7", "pins the knight"."""
        t, after = self._token(at), self._token(at + 1)
        return (
            t is not None
            and after is not None
            and any(form == "third" for _, form in t.verbs)
            and after.is_("det", "poss", "square", "piece", "move")
        )

    def _joins(self, parts: list[Noun], more: Noun, joint: str) -> bool:
        same = {parts[0].type, more.type} <= {"piece", "square"} or parts[0].type == more.type
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
        if joint == "," and began and len(parts) == 1 and self._comma_and(more):
            return False
        if joint == ",":
            if began and verb_next:
                return False
            return after is not None and after.norm in {",", "and"} and not verb_next
        return not (verb_next and began)

    def _comma_and(self, more: Noun) -> bool:
        """Whether ", and" stands before the last of two: a new clause begins there."""
        before = [t for t in self.tokens if t.last < more.first][-2:]
        return [t.norm for t in before] == [",", "and"]

    def _segment(self) -> list[Chunk]:
        """The chunks since the last joint."""
        found: list[Chunk] = []
        for chunk in reversed(self.found):
            if isinstance(chunk, Joint):
                break
            found.append(chunk)
        return found

    def _one(self) -> Noun | None:
        token = self._token(self.at)
        if token is None:
            return None
        at = self.at
        owner: Noun | None = None
        after = self._token(at + 1)
        if token.is_("side") and after is not None and after.norm == "'s" and self._nominal(at + 2):
            owner = pointer(token)
            at += 2
        elif (
            token.norm in {"white", "black"}
            and self._nominal(at + 1)
            and after is not None
            and after.is_("piece", "noun")
            and not any(f == "third" for _, f in after.verbs)
        ):
            pass
        elif token.is_("side") or (
            token.is_("pron") and not (token.is_("det") and self._nominal(at + 1))
        ):
            self.at += 1
            return pointer(token)
        if _OF.fullmatch(token.norm) and after is not None and after.norm in _MEN:
            self.at += 2
            count = int(token.norm[0])
            whose = _MEN[after.norm]
            return Noun(
                "noun", "piece", f"{whose} {count} pieces", token.first, after.last, whose, count=count, plural=count > 1
            )  # fmt: skip
        start = at
        end, head = at, -1
        det = owner is not None
        while (t := self._token(end)) is not None:
            first = end == start
            if (first and t.is_("det", "poss") and not t.is_("pron")) or (
                first and t.is_("det", "poss") and self._nominal(end + 1)
            ):
                det = True
            elif (
                t.is_("det")
                and det
                and t.norm in {"other", "many", "such", "few", "more", "most", "several", "another"}
            ):
                pass
            elif t.is_("poss", "det") and end == start + 1 and self.tokens[start].is_("det"):
                pass  # "both of his", "all the"
            elif t.is_("move", "square"):
                if (
                    head >= 0
                    and self.tokens[head].is_("move")
                    and not self.tokens[head].is_("square")
                ):
                    break
                head = end
                nxt = self._token(end + 1)
                if nxt is None or not (
                    t.is_("square") and nxt.is_("piece", "noun") and not self._is_verb(end + 1, t)
                ):
                    end += 1
                    break
            elif t.is_("piece"):
                if head >= 0 and self.tokens[head].is_("piece"):
                    break
                head = end
            elif t.is_("noun"):
                if head >= 0 and self._is_verb(end, self.tokens[head]):
                    break
                if (
                    head < 0
                    and not det
                    and end == start
                    and t.is_("verb")
                    and not t.is_("piece")
                    and self._imperative(end)
                ):
                    break
                head = end
            elif (
                t.is_("file")
                or (
                    t.norm in {"-", "and", ","}
                    and end > start
                    and self.tokens[end - 1].is_("file")
                    and (self._token(end + 1) or t).is_("file")
                )
                or (t.norm == "-" and end > start and self.tokens[end - 1].is_("file"))
            ):
                pass
            elif (
                t.norm == "1"
                and end > start
                and self.tokens[end - 1].is_("adj", "word")
                and not self._nominal(end + 1)
            ):
                head = end
            elif t.is_("number") and (
                first or self.tokens[end - 1].is_("det", "poss", "adverb", "number")
            ):
                det = True
            elif t.norm == "'s" and head == end - 1 and self._nominal(end + 1):
                head = -1
            elif head >= 0:
                break
            elif t.is_("side") and t.norm in {"white", "black"}:
                pass
            elif (
                t.is_("adj", "word")
                or t.norm == "own"
                or (
                    det
                    and t.is_("verb")
                    and any(f == "base" for _, f in t.verbs)
                    and not t.is_("be", "have", "do")
                )
                or (
                    t.is_("verb")
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
                last.is_("number") and end - start < 2
            ):
                return None
            head = end - 1
        items = self.tokens[start : head + 1]
        noun = Run(items, owner).build()
        if noun is None:
            return None
        self.at = head + 1
        return replace(noun, first=token.first)

    def _is_verb(self, at: int, head: Token) -> bool:
        """Whether a word after a noun is its verb: "the knight pins", "the knights pin", but "the knight fork"."""
        token = self.tokens[at]
        names = {f for _, f in token.verbs}
        if head.is_("move") and not head.is_("square"):
            return "third" in names
        if "third" in names and not head.plural:
            after = self._token(at + 1)
            return after is None or not after.is_("be", "modal")
        return "base" in names and head.plural and bool(names)

    def _imperative(self, at: int) -> bool:
        after = self._token(at + 1)
        starts = not self.found or isinstance(self.found[-1], Joint | Adverb)
        return (
            starts
            and after is not None
            and after.is_("det", "poss")
            and any(f == "base" for _, f in self.tokens[at].verbs)
        )

    def _nominal(self, at: int) -> bool:
        """Whether a noun may begin here, or an adjective before one."""
        for step in range(5):
            t = self._token(at)
            if t is None:
                return False
            if t.is_("piece", "noun", "file") or (t.norm in {"1", "one", "ones"} and step):
                return True
            if t.is_("square", "move"):
                return True
            if (
                t.is_("adj", "word", "number")
                or (t.is_("verb") and not t.is_("be", "have", "do"))
                or t.norm in {"very", "most", "own", "white", "black"}
            ):
                at += 1
                continue
            return False
        return False

    def _adjectival(self, at: int) -> bool:
        t = self._token(at)
        return t is not None and (t.is_("adj", "word", "noun", "verb", "adverb"))

    def _behind(self, noun: Noun) -> Noun:
        """Where it stands ("on f6") and whose it is ("of ours")."""
        while True:
            prep, arg = self._token(self.at), self._token(self.at + 1)
            if prep is None or arg is None:
                return noun
            if (
                prep.norm in {"on", "at"}
                and arg.is_("square")
                and noun.type == "piece"
                and not noun.square
                and not noun.plural
            ):
                noun = on_square(noun, arg.norm, arg.last)
                self.at += 2
                continue
            if (
                prep.norm in {"on", "at"}
                and arg.is_("square")
                and noun.type == "piece"
                and noun.plural
                and not noun.parts
            ):
                squares, at = [arg], self.at + 2
                while (
                    (t := self._token(at)) is not None
                    and t.norm in {"and", ","}
                    and (n := self._token(at + 1)) is not None
                    and n.is_("square")
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

    # the rest

    def _place(self) -> Place | None:
        token = self.tokens[self.at]
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
            and not following.is_("noun")
        ):
            self.at += 1
            following = self._token(self.at)
        if following is not None and following.norm in {"which", "whom", "what"}:
            self.at = back
            return None
        doing = (
            token.norm == "from"
            and following is not None
            and any(form == "ing" for _, form in following.verbs)
            and following.norm not in _ATTRIBUTIVE
        )  # "from trading bishops"
        noun = None if doing else self._noun(coordinate=True)
        if noun is None and following is not None and following.is_("number"):
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
            while (t := self._token(self.at)) is not None and t.is_("move"):
                line.append(Noun("move", t.norm, t.norm, t.first, t.last))
                self.at += 1
            if len(line) > 1:
                noun = listed(line, "then")
        return Place(token.norm, noun, token.first, noun.last if noun is not None else token.last)

    def _adjective(self) -> Adjective | None:
        at, said = self.at, []
        while (t := self._token(at)) is not None and (
            (t.is_("adverb", "hedge", "limit") and not t.is_("adj")) or self._before_adjective(at)
        ):
            said.append(t.norm)
            at += 1
        if t is None or not t.is_("adj", "word") or (said and not t.is_("adj")):
            return None
        first = self.tokens[self.at].first
        self.at = at + 1
        return Adjective(t.norm, tuple(said), first, t.last, t.is_("adj"))

    def _before_adjective(self, at: int) -> bool:
        """Whether an unknown word stands before an adjective that is known: "deadly boring and dead level"."""
        t, after = self._token(at), self._token(at + 1)
        return (
            t is not None
            and after is not None
            and t.is_("word", "adj")
            and not t.is_("verb")
            and after.is_("adj")
            and not after.is_("verb")
        )


__all__ = ["Adjective", "Adverb", "Chunk", "Group", "Joint", "Place", "Stray", "chunks", "forms"]
