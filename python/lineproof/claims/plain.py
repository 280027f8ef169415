"""Plain clauses: what a sentence says, one verb at a time, in a straight order.

>>> from lineproof.claims.sentence import sentences
>>> for said in ("On b5 the bishop pins the knight.", "The knight is pinned by the bishop.", "It is the bishop that pins the knight."):
...     (clause,) = plain(sentences(said, 0)[0])
...     print(clause.subject.text, "|", clause.lemma, "|", clause.objects[0].text)
the bishop | pin | the knight
the bishop | pin | the knight
the bishop | pin | the knight
"""

from __future__ import annotations

from collections.abc import Iterator

from .asides import without_asides
from .chunk import Place
from .chunking import chunks
from .clause import Clause
from .comparing import compared_lines
from .dislocation import apposed
from .doings import deeds
from .joining import joined
from .lexicon import NOUNS
from .ordering import insisted
from .partitive import the_latter
from .rough import split
from .sentence import Sentence


def plain(sentence: Sentence) -> list[Clause]:
    """The plain clauses of a sentence, in the order in which they are said."""
    rough = [part for clause in split(chunks(sentence)) for part in _apart(clause)]
    return joined(
        insisted(deeds(the_latter(apposed(compared_lines(without_asides(_trailing(rough)))))))
    )


_BROUGHT = frozenset(
    w
    for name in ("attack", "threat", "fork", "pin", "skewer", "discovered attack")
    for w in NOUNS[name]
)


def _apart(clause: Clause) -> Iterator[Clause]:
    """ "Swings over to h4 with an attack on h2": what a clause brings with it stands by itself."""
    at = next(
        (
            n
            for n, p in enumerate(clause.places)
            if p.preposition == "with" and p.noun is not None and p.noun.head in _BROUGHT
        ),
        None,
    )
    noun = clause.places[at].noun if at is not None else None
    verb_first = [o.first for o in clause.objects]
    if at is None or noun is None or not clause.lemma or noun.whose:
        yield clause
        return
    if (
        (clause.subject is None and clause.form != "finite")
        or (clause.subject is not None and noun.first < clause.subject.first)
        or any(f > noun.first for f in verb_first)
    ):
        yield clause
        return
    rest = clause.places[at + 1 :]
    clause.places = clause.places[:at]
    brought = Clause(objects=[noun], places=rest, joint="with", hedged=clause.hedged)
    for chunk in (Place("with", noun, noun.first - 1, noun.last), *rest):
        brought.see(chunk)
    clause.last = brought.first - 1
    yield clause
    yield brought


def _trailing(rough: list[Clause]) -> list[Clause]:
    """Counts ", of course" among the words of the clause before it."""
    found: list[Clause] = []
    waiting: Clause | None = None
    inside: Clause | None = None
    leading: list[str] = []
    for clause in rough:
        if _tag(clause):
            continue
        if clause.empty and not found and not clause.strays and not clause.hedged:
            leading += clause.adverbs  # "nine times out of ten what you meet is ..."
        elif leading and not found:
            clause.adverbs, leading = leading + clause.adverbs, []
        if (
            clause.empty
            and clause.sub in {"which", "who", "because", "since"}
            and not clause.strays
        ):
            waiting = clause  # "which, of course, is backward"
            continue
        if waiting is not None:
            if not clause.sub and clause.joint == ",":
                clause.sub, clause.joint = waiting.sub, waiting.joint.rstrip(" ,")
            waiting = None
        if (
            inside is not None
            and clause.joint == ","
            and not clause.lemma
            and clause.places
            and not (clause.objects or clause.states or clause.strays)
        ):
            inside.places += clause.places  # "we have landed, move for move, in a Slav"
            inside.see(clause)
            inside = None
            continue
        inside = None
        if (
            clause.empty
            and found
            and clause.joint == ","
            and not clause.strays
            and "only" not in clause.adverbs
        ):
            inside = found[-1]
            found[-1].adverbs += clause.adverbs
            found[-1].hedged = found[-1].hedged or clause.hedged
            if clause.verb.modal == "almost" and not found[-1].verb.modal:
                found[-1].verb = found[-1].verb._replace(modal="almost")  # "it is mate, almost"
            found[-1].last = max(found[-1].last, clause.last)
        elif not clause.empty or _limits(clause) or (clause.hedged and not found):
            found.append(clause)
    return found


def _tag(clause: Clause) -> bool:
    """ ", doesn't it": a question behind what is said."""
    return (
        bool(clause.strays)
        and set(clause.strays) <= {"does", "do", "did"}
        and not (clause.lemma or clause.places or clause.states)
        and clause.joint == ","
        and all(o.type in {"pronoun", "side"} and o.first > clause.first for o in clause.objects)
    )


def _limits(clause: Clause) -> bool:
    """Whether a part without a noun may take back what was said: ", but only seemingly", ", or so it seems"."""
    return (
        "only" in clause.adverbs
        or "but" in clause.joint
        or clause.joint.rstrip(" so").endswith("or")
    )


__all__ = ["plain"]
