"""Where a lesson begins: the games that come to this position are those that it is about."""

from __future__ import annotations

from lineproof.lesson.graph import Graph


def starts(graph: Graph) -> tuple[int, ...]:
    """The position at which the lesson begins, of each first position that its games have, in order.

    That is, on the way that all lines from there share, the first that has words of its own or at which the opponent's replies part;
    words before the first move introduce the lesson and do not count. Where that is only its end, it begins at the very first.
    """
    found = []
    for root in dict.fromkeys(graph.root.values()):
        key, seen = root, {root}
        while len(graph.moves[key]) == 1:
            (after,) = graph.moves[key].values()
            if after in seen:
                break
            key = after
            seen.add(key)
            if any(
                comment.text.strip() for place in graph.places(key) for comment in place.comments
            ):
                break
        found.append(key if graph.moves[key] else root)
    return tuple(dict.fromkeys(found))
