"""What the words beside a position name: a reply that is spoken of is answered, an end that names what comes is no early stop."""

from __future__ import annotations

import re

from lineproof.claims.sentence import sentences
from lineproof.lesson.graph import Graph

_ALL = re.compile(
    r"\b(?:any(?:thing)? (?:else|other (?:move|reply)|sensible (?:move|reply))|(?:all |the )?other (?:moves|replies)|everything else|nothing else)\b",
    re.IGNORECASE,
)


def named(graph: Graph, key: int) -> frozenset[str]:
    """The moves (SAN, without signs) that the comments at a position name, those right before and behind it on every line included."""
    found: set[str] = set()
    for place in graph.places(key):
        for near in (place, *([place.parent] if place.parent else []), *place.children):
            for comment in near.comments:
                for sentence in sentences(comment.text, comment.start):
                    found |= {word.san.rstrip("+#") for word in sentence.words if word.san}
    return frozenset(found)


def speaks_of_all(graph: Graph, key: int) -> bool:
    """Whether a comment at a position, or behind a move from there, answers whatever else may be played."""
    return any(
        _ALL.search(comment.text)
        for place in graph.places(key)
        for near in (place, *place.children)
        for comment in near.comments
    )
