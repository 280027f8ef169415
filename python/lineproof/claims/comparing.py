"""Comparing: "as in the main line", "unlike after 2... Nf6" told with the clause that is compared, as one place with the line's words."""

from __future__ import annotations

from dataclasses import replace

from .chunk import Place
from .clause import Clause
from .noun import Noun

AS = frozenset({"as in", "just as in", "like in", "just like in", "as after", "just as after", "like after"})  # fmt: skip
UNLIKE = frozenset({"unlike", "unlike in", "unlike after", "in contrast to", "contrary to", "as opposed to"})  # fmt: skip
BEFORE = frozenset(
    {"as before", "just as before", "like before", "same as before", "the same as before", "as last time", "as above", "as we saw before", "as we saw above"}
)  # fmt: skip
"""Adverbs that point to an earlier place of the lesson."""
ONCE_MORE = BEFORE | {"once more", "once again", "yet again", "here again", "here too", "here as well", "one more time", "for the second time"}  # fmt: skip
"""Adverbs with which a move is said to have been shown before; "again" may be said of a piece that moves twice."""
MOVES = frozenset(
    ["move", "answer", "reply", "response", "sacrifice", "capture", "follow up",
     "idea", "plan", "motif", "trick", "recipe", "resource", "shot", "blow", "reaction"]
)  # fmt: skip
"""What a move is called that is the same as before."""
_BEGINS = frozenset({"with", "after"})


def compared_lines(rough: list[Clause]) -> list[Clause]:
    """The clauses, each with the line that it is compared with."""
    if not any(p.preposition in AS or p.preposition in UNLIKE for c in rough for p in c.places):
        return rough
    found: list[Clause] = []
    leading: Clause | None = None
    for clause in rough:
        clause.places = _whole(clause)
        if leading is not None:
            clause.places = leading.places + clause.places
            clause.adverbs = leading.adverbs + clause.adverbs
            clause.joint, leading = leading.joint, None
        if not _alone(clause):
            found.append(clause)
        elif found and clause.joint == ",":
            found[-1].places += clause.places  # "is bad, unlike in the main line"
            found[-1].adverbs += clause.adverbs
            found[-1].see(clause)
        elif not found and clause is not rough[-1]:
            leading = clause  # "unlike in the main line, Nxe5 is bad"
        else:
            found.append(clause)
    return found


def _alone(clause: Clause) -> bool:
    """Whether a part says no more than what is compared with."""
    said = clause.lemma or clause.subject or clause.objects or clause.states or clause.strays
    return (
        not said
        and not clause.sub
        and bool(clause.places)
        and all(p.preposition in {"as in", "unlike"} for p in clause.places)
    )


def _whole(clause: Clause) -> list[Place]:
    """The places, each line with the moves that it begins with: "the line with 2... d6"."""
    found: list[Place] = []
    same = _same(clause)
    for place in clause.places:
        last = found[-1] if found else None
        if place.preposition in AS and same:
            found.append(place._replace(preposition=place.preposition.split()[-1]))
        elif place.preposition in AS or place.preposition in UNLIKE:
            sort = "as in" if place.preposition in AS else "unlike"
            found.append(place._replace(preposition=sort))
        elif (
            last is not None
            and last.noun is not None
            and last.preposition in {"as in", "unlike"}
            and place.preposition in _BEGINS
            and place.noun is not None
            and place.noun.type == "move"
            and place.first == last.last + 1
        ):
            text = f"{last.noun.text} {place.preposition} {place.noun.text}"
            noun = replace(last.noun, text=text, last=place.last)
            found[-1] = last._replace(noun=noun, last=place.last)
        else:
            found.append(place)
    return found


def _same(clause: Clause) -> bool:
    """Whether it is said of something else than a move that it is the same: "the same position as after 3... Nc6"."""
    nouns = [*([clause.subject] if clause.subject else []), *clause.objects]
    likened = [n for n in nouns if n.head == "same" or {"same", "identical"} & set(n.adjectives)]
    if any(s.lemma in {"same", "identical"} for s in clause.states):
        return True
    return bool(likened) and not any(n.head in MOVES for n in likened)


_LINES = frozenset({"line", "variation"})
_WHICH = frozenset({"main", "previous", "last", "first", "other"})


def line_of(noun: Noun) -> str | None:
    """The words of a line of the lesson: "the main line", "the line with 2... d6", "2... d6"; None for anything else."""
    if noun.type == "move":
        return noun.text
    if noun.head not in _LINES or noun.type != "noun":
        return None
    named = not _WHICH.isdisjoint(noun.adjectives) or any(f" {b} " in noun.text for b in _BEGINS)
    return noun.text if named else None


__all__ = ["AS", "BEFORE", "MOVES", "ONCE_MORE", "UNLIKE", "compared_lines", "line_of"]
