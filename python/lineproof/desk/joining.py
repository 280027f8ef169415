"""Joining: writing imported games into the lines that are there. A game whose first move is in one of the lesson's becomes a part of it."""

from __future__ import annotations

from collections.abc import Iterator

from lineproof.lesson import Game, Lesson, Place, edit

Pair = tuple[Place, Place]


def joined(lesson: Lesson, first: int) -> Lesson:
    """The games from `first` on written into those before them that have their first move, from the same position; the others stay games of their own.

    Moves that are there already are kept, with the words and signs that the imported game has beside them and they have not.
    The tags of a game that becomes a part of another are not kept.
    :raises EditError: when words of a game cannot stand in a brace comment.
    """
    number = max(1, first)
    while number < len(lesson.games):
        game = lesson.games[number]
        fits = [each.root for each in lesson.games[:number] if _begins_alike(each, game)]
        if not fits:
            number += 1
            continue
        # of several the one with which it goes farthest
        target = max(fits, key=lambda root: len(list(_shared(root, game.root)))).index
        lesson = _with_words(lesson, target, number)
        source = lesson.games[number].root
        if source.next is not None:
            lesson, _ = edit.join(lesson.places[target], source)
        lesson = _without(lesson, number)
    return lesson


def _begins_alike(one: Game, other: Game) -> bool:
    moves, new = ({child.uci for child in game.root.children} for game in (one, other))
    return one.start.fen == other.start.fen and (new <= moves or not moves.isdisjoint(new))


def _shared(target: Place, source: Place) -> Iterator[Pair]:
    """The moves that both have, each with its counterpart; the starts first."""
    waiting = [(target, source)]
    while waiting:
        one, other = waiting.pop()
        yield one, other
        known = {child.uci: child for child in one.children}
        waiting.extend((known[c.uci], c) for c in other.children if c.uci in known)


def _with_words(lesson: Lesson, target: int, number: int) -> Lesson:
    """The lesson with the words and signs of a game's shared moves beside their counterparts."""
    wanted: list[tuple[int, list[str], tuple[int, ...]]] = []
    words: dict[int, list[str]] = {}
    for comment in lesson.comments:
        words.setdefault(comment.place.index, []).append(comment.text)
    for one, other in _shared(lesson.places[target], lesson.games[number].root):
        there = {" ".join(text.split()) for text in words.get(one.index, ())}
        new = [t for t in words.get(other.index, ()) if t.strip() and " ".join(t.split()) not in there]  # fmt: skip
        signs = other.nags if other.nags and not one.nags else ()
        if new or signs:
            wanted.append((one.index, new, signs))
    for index, texts, signs in wanted:
        for text in texts:
            lesson, _ = edit.add_comment(lesson.places[index], text)
        if signs:
            lesson, _ = edit.set_marks(lesson.places[index], signs)
    return lesson


def _without(lesson: Lesson, number: int) -> Lesson:
    """The lesson without one of its games, which is not the first."""
    start, end = lesson.games[number].span
    before, after = lesson.text[:start].rstrip(), lesson.text[end:].lstrip()
    gap = lesson.source.line_end * (2 if after else 1)
    return lesson.with_text(before + gap + after)
