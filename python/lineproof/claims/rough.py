"""Rough clauses: the chunks of a sentence cut at joints and at verbs, each piece with its subject and objects as they stand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from .attached import COUNTED
from .chunk import Adjective, Adverb, Chunk, Group, Joint, Place, Stray
from .clause import Clause
from .lexicon import VERBS
from .noun import Noun, listed
from .pile import Pile, gerund, inverted
from .verbs import Verb

_COMES = frozenset(
    [
        "come",
        "go",
        "stand",
        "be",
        "follow",
        "sit",
        "lie",
        "loom",
        "remain",
        "appear",
        "hang",
        "threaten",
        "lurk",
    ]
)

_PHRASAL = frozenset(
    w
    for name in (
        "dislodge",
        "shut in",
        "trap",
        "pin",
        "exchange",
        "remove",
        "capture",
        "regain",
        "give back",
        "come off",
        "sacrifice",
        "play",
        "insert",
        "block",
        "defend",
        "develop",
    )
    for w in VERBS[name]
    if w.count(" ") == 1 and w.split()[1] in {"in", "out", "up", "down", "off", "away", "back"}
)
"""Verbs whose particle may stand behind the object."""


def split(found: list[Chunk]) -> Iterator[Clause]:
    """Cuts the chunks at joints and at verbs."""
    pile = Pile()
    for chunk in found:
        if isinstance(chunk, Joint):
            if pile.before or pile.group:
                yield _clause(pile)
                pile = Pile(_pending := "")
            word = chunk.norm
            if chunk.sort == "sub" or chunk.sort == "relative" or chunk.sort == "wh":
                pile.sub = word
            pile.joint = f"{pile.joint} {word}".strip()
            continue
        if isinstance(chunk, Group) and pile.group is not None:
            whole = inverted(pile, chunk)
            if whole is not None:
                pile.group, pile.after = whole, []
                continue
            pulled: list[Chunk] = []
            if chunk.form == "finite":
                pulled = pile.nobody()
                while pile.after and isinstance(pile.after[-1], Adverb) and not pulled:
                    pulled.insert(0, pile.after.pop())
                if (
                    pile.after
                    and not any(isinstance(c, Noun) for c in pulled)
                    and isinstance(pile.after[-1], Noun)
                    and pile.after[-1].det not in {"us", "him", "them", "me"}
                    and not gerund(pile, chunk)
                ):
                    pulled.insert(0, pile.after.pop())
            by = ""
            if (
                chunk.form in {"ing", "part"}
                and pile.after
                and isinstance(pile.after[-1], Place)
                and pile.after[-1].preposition == "with"
                and pile.after[-1].noun is not None
            ):
                pulled.insert(0, pile.after.pop())  # "with the colours swapped"
            if (
                chunk.form == "ing"
                and pile.after
                and isinstance(pile.after[-1], Place)
                and pile.after[-1].noun is None
            ):
                by = pile.after.pop().preposition  # type: ignore[union-attr]
            yield _clause(pile)
            pile = Pile(before=pulled, by=by)
            pile.joint = "-" if chunk.form == "finite" else f"={by}"
            pile.group = chunk
            continue
        if isinstance(chunk, Group):
            if pile.before and isinstance(pile.before[-1], Place) and pile.before[-1].noun is None:
                pile.by = pile.before.pop().preposition  # type: ignore[union-attr]
            pile.group = chunk
            continue
        pile.put(chunk)
    if pile.before or pile.group:
        yield _clause(pile)


def _clause(pile: Pile) -> Clause:
    """A clause from its chunks: subject, objects, places, with its features."""
    clause = Clause(joint=pile.joint, sub=pile.sub)
    before = [c for c in pile.before if isinstance(c, Noun)]
    if before and before[0].text.startswith("1."):
        before = _lined(before)  # a whole game; of other moves the last is the subject
    after = _lined([c for c in pile.after if isinstance(c, Noun)])
    parts = [*pile.before, *([pile.group] if pile.group else []), *pile.after]
    while len(parts) > 1 and isinstance(parts[0], Adverb):
        del parts[0]  # "now" before a claim is no part of its words
    for chunk in parts:
        clause.see(chunk)
    for chunk in (*pile.before, *pile.after):
        match chunk:
            case Place():
                clause.places.append(chunk)
            case Adjective():
                clause.states.append(chunk)
            case Adverb():
                clause.adverbs.append(chunk.norm)
                clause.hedged = clause.hedged or chunk.sort == "hedge"
            case Stray():
                clause.strays.append(chunk.norm)
    group = pile.group
    if (
        group is not None
        and not pile.sub
        and not before
        and after
        and group.verb.past
        and group.lemma == "be"
        and group.form == "finite"
        and not pile.joint
        and not any(isinstance(c, Adjective | Place) for c in pile.before)
    ):
        clause.sub = "if"  # "were the knight not there"
    if group is None:
        clause.objects = before
        for place in list(clause.places):
            if (
                not before
                and place.preposition == "with"
                and place.noun is not None
                and place.noun.type == "noun"
            ):
                clause.objects.append(place.noun)  # "with a fork of king and queen"
                clause.places.remove(place)
        if any(isinstance(c, Adverb) and c.sort == "deny" for c in pile.before):
            clause.verb = Verb(negated=True)
        if any(isinstance(c, Adverb) and c.sort == "limit" for c in pile.before):
            clause.verb = Verb(clause.verb.negated, "almost")
        return clause
    clause.lemma, clause.verb, clause.form, clause.passive = (
        group.lemma,
        group.verb,
        group.form,
        group.passive,
    )
    clause.adverbs += group.adverbs
    clause.fronted, clause.verb_at = pile.by, group.first
    for chunk in (*pile.before, *pile.after):
        if isinstance(chunk, Adverb) and chunk.sort == "deny":
            clause.deny()
        if isinstance(chunk, Adverb) and chunk.sort == "limit" and not clause.verb.modal:
            clause.verb = Verb(clause.verb.negated, "almost", clause.verb.done, clause.verb.past)
    if len(before) > 1 and before[-2].head == "neither" and before[-1].parts:
        before[-2:] = [replace(before[-1], no=True)]  # "neither the bishop nor the rook"
    clause.objects = after
    if len(before) > 1 and group.form == "finite" and all(n.type == "move" for n in before):
        before = [listed(before, "then")]  # "Nxd4 Qh2 is mate"
    if group.form in {"finite"} and before:
        clause.subject = before[-1]
        clause.objects = after + before[:-1]  # "two jobs the king has"
    elif before and group.form in {"ing", "part", "base"}:
        clause.subject = before[-1]
        clause.objects = after + before[:-1]
    elif (
        group.form in {"ing", "part"}
        and clause.places
        and clause.places[0].preposition == "with"
        and clause.places[0].noun is not None
        and clause.places[0].first < group.first
    ):
        clause.subject = clause.places.pop(0).noun  # "with the queen lined up"
    else:
        clause.objects = after + before
    for adverb in clause.adverbs:
        if f"{clause.lemma} {adverb}" in _PHRASAL and after:
            clause.lemma = f"{clause.lemma} {adverb}"  # "shuts the rook out"
            clause.adverbs.remove(adverb)
            break
    if (
        len(clause.objects) > 1
        and clause.subject is not None
        and clause.subject.type == clause.objects[0].type == "side"
        and (
            clause.subject.text == clause.objects[0].text
            or (clause.objects[0].text in {"he", "they", "we", "you"} and not clause.objects[0].det)
        )
        and clause.lemma.split()[0] in {"get", "have", "win", "secure", "build", "create", "find"}
    ):
        del clause.objects[0]  # "we've got ourselves an outpost"
    swapped = (
        clause.subject is not None
        and clause.subject.type != "side"
        and after
        and after[0].type == "side"
        and after[0].text in {"we", "he", "they", "you", "i"}
    )
    if swapped and clause.lemma == "have" and clause.subject is not None:
        clause.subject, clause.objects[0] = clause.objects[0], clause.subject  # "no time have we"
    if (
        group.form == "finite"
        and clause.subject is None
        and after
        and COUNTED.isdisjoint(clause.adverbs)
        and (not pile.sub or pile.sub not in {"which", "who", "that"})
        and _verb_base(group) in _COMES
        and not pile.joint.endswith(("and", "but", "-"))
        and not (pile.joint == "," and not pile.before and group.lemma == "be")
    ):
        clause.subject, clause.objects = after[0], after[1:]  # "off goes the queen"
        clause.turned = not pile.before
    return clause


def _lined(nouns: list[Noun]) -> list[Noun]:
    """Moves that follow one another as one: "1. e4 e5 2. Nc3 leads to the same position"."""
    found: list[Noun] = []
    for noun in nouns:
        last = found[-1] if found else None
        moves = {"move", "square"}
        if (
            last is not None
            and last.type in moves
            and noun.type in moves
            and last.last + 1 == noun.first
            and not noun.parts
        ):
            found[-1] = listed([last, replace(noun, type="move")], "then")
            found[-1] = replace(found[-1], type="move")
        else:
            found.append(noun)
    return found


def _verb_base(group: Group) -> str:
    return group.lemma.split()[0]


__all__ = ["split"]
