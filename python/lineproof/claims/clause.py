"""A plain clause: what is said by one verb, or by a part without one, in a straight order."""

from __future__ import annotations

from dataclasses import dataclass, field

from .chunk import Adjective, Chunk, Place
from .noun import Noun
from .verbs import Verb

CONDITIONS = frozenset(["if", "unless", "when", "whenever", "wherever", "once", "until", "till", "whether", "lest", "provided that", "even if", "in case", "as soon as", "as long as", "so long as", "so that", "in order that", "as if", "as though", "before", "by the time", "the moment", "not that", "after"])  # fmt: skip
"""What is said under one of these is not said to be so; after "when", "once", "if" and the like it may be a move that is played."""
_UNMARKED = Verb()


@dataclass
class Clause:
    """A plain clause.

    lemma: the verb; "" when there is none ("a fork on d5"). subject, objects: in the active voice. places: prepositions with their nouns.
    states: adjectives. adverbs: all of them, with what stood inside the verb group. strays: words that fit nowhere.
    form: of the verb. joint: what joins it to the clause before; "" for the first. sub: the conjunction it stands under.
    passive: whether it was said so. governor: the verb of which it is the infinitive.
    twin: of what the same is denied. inherited: whether the subject is that of an earlier clause. nobody: a noun denies it ("no defender"). complement: an infinitive follows. unreal: the infinitive of a verb that does not say that it happens. turned: its subject stands behind the verb. first, last: its words; verb_at: the first of its verb.
    """

    lemma: str = ""
    subject: Noun | None = None
    objects: list[Noun] = field(default_factory=list)
    places: list[Place] = field(default_factory=list)
    states: list[Adjective] = field(default_factory=list)
    adverbs: list[str] = field(default_factory=list)
    strays: list[str] = field(default_factory=list)
    verb: Verb = _UNMARKED
    form: str = ""
    joint: str = ""
    sub: str = ""
    passive: bool = False
    governor: Clause | None = None
    inherited: bool = False
    hedged: bool = False
    unreal: bool = False
    nobody: bool = False
    complement: bool = False
    turned: bool = False
    fronted: str = ""
    verb_at: int = -1
    twin: Noun | None = None
    first: int = -1
    last: int = -1

    def see(self, chunk: Chunk | Clause) -> None:
        """Counts the words of a chunk among its own."""
        self.first = chunk.first if self.first < 0 else min(self.first, chunk.first)
        self.last = max(self.last, chunk.last)

    @property
    def empty(self) -> bool:
        return not (self.lemma or self.subject or self.objects or self.places or self.states)

    def deny(self) -> None:
        verb = self.verb
        self.verb = Verb(not verb.negated, verb.modal, verb.done, verb.past)


__all__ = ["CONDITIONS", "Clause"]
