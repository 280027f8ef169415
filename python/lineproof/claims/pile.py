"""A pile: the chunks of one rough clause, before and after its verb."""

from __future__ import annotations

from dataclasses import dataclass, field

from .chunk import Adverb, Chunk, Group, Place
from .noun import Noun
from .verbs import Verb


@dataclass
class Pile:
    """Chunks of one rough clause before and after its verb."""

    joint: str = ""
    sub: str = ""
    before: list[Chunk] = field(default_factory=list)
    group: Group | None = None
    after: list[Chunk] = field(default_factory=list)
    by: str = ""

    def put(self, chunk: Chunk) -> None:
        (self.after if self.group else self.before).append(chunk)

    def nobody(self) -> list[Chunk]:
        """Takes "nobody in this room" off the end: the subject of the verb that follows, "the move nobody in this room saw"."""
        last = len(self.after) - 1
        while last > 0 and isinstance(self.after[last], Place):
            last -= 1
        noun = self.after[last] if 0 < last < len(self.after) - 1 else None
        if not isinstance(noun, Noun) or not noun.no or noun.type != "pronoun":
            return []
        taken, self.after = self.after[last:], self.after[:last]
        return taken


def gerund(pile: Pile, group: Group) -> bool:
    """ "Capturing on c4 is compulsory": the -ing with its object is the subject."""
    first = pile.group
    if first is None or first.form not in {"ing", "to"} or pile.sub:
        return False
    if _reduced(pile):
        return True
    if pile.before and not (first.form == "to" and len(pile.before) == 1 and group.lemma == "be"):
        return False  # but "the only way to save the game is Nf3"
    if pile.before:
        return isinstance(pile.before[0], Noun) and pile.before[0].type == "noun"
    noun = pile.after[-1]
    alone = sum(isinstance(c, Noun) for c in pile.after) == 1
    return (
        isinstance(noun, Noun)
        and (noun.type in {"square", "piece", "move"} or noun.head == "it")
        and (group.lemma == "be" or bool(group.verb.modal) or (not pile.joint and alone))
    )


def _reduced(pile: Pile) -> bool:
    """ "The only piece guarding e5 is pinned": the -ing has its object, and the noun before it is the subject."""
    nouns = [c for c in pile.before if isinstance(c, Noun)]
    after = [c for c in pile.after if isinstance(c, Noun)]
    return (
        pile.group is not None
        and pile.group.form == "ing"
        and pile.group.lemma != "be"
        and len(nouns) == len(after) == 1
        and pile.before[-1] is nouns[0]
        and nouns[0].type in {"noun", "piece"}
        and nouns[0].last + 1 == pile.group.first
        and after[0].type in {"piece", "square"}
        and after[0].first == pile.group.last + 1
        and not any(isinstance(c, Place) for c in pile.before)
    )


def inverted(pile: Pile, group: Group) -> Group | None:
    """ "No longer is our knight pinned": one verb, its subject inside it."""
    first = pile.group
    nouns = [c for c in pile.before if isinstance(c, Noun)]
    if (
        first is None
        or first.lemma not in {"be", "have", "do"}
        or nouns
        or len(pile.after) != 1
        or not isinstance(pile.after[0], Noun)
        or group.form == "to"
    ):
        return None
    denied = sum(isinstance(c, Adverb) and c.sort == "deny" for c in pile.before) % 2 == 1
    pile.before = [
        c for c in pile.before if not (isinstance(c, Adverb) and c.sort == "deny")
    ] + pile.after
    verb = Verb(
        first.verb.negated != (group.verb.negated != denied),
        first.verb.modal or group.verb.modal,
        first.lemma == "have",
        first.verb.past,
    )
    return Group(
        group.lemma,
        "finite",
        first.lemma == "be" and group.form != "ing",
        verb,
        (*first.adverbs, *group.adverbs),
        first.first,
        group.last,
    )


__all__ = ["Pile", "gerund", "inverted"]
