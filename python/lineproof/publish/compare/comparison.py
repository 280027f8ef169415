"""Comparing two states of a lesson: lines, advice, verdicts, words and settings, all by position."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from functools import cached_property
from pathlib import Path

from lineproof.claims import Outcome, read_lesson
from lineproof.lesson import Lesson, Place
from lineproof.lesson.graph import Graph
from lineproof.publish.repertoire import advice
from lineproof.publish.said import verdicts
from lineproof.report.plain import plain

from .runs import Run, runs
from .sides import Side


@dataclass(frozen=True)
class LineChange:
    """A line. place: where it parts, in the lesson that has it. old, new: its moves; empty where it was added or taken out.

    goes_on: whether the other lesson ends there. more: moves of further sidelines. joins: a place of the other lesson that it comes to.
    """

    place: Place
    old: tuple[Place, ...]
    new: tuple[Place, ...]
    goes_on: bool = False
    more: int = 0
    joins: Place | None = None


@dataclass(frozen=True)
class AdviceChange:
    """What the taught side is to play. place: the position, in the newer lesson. new: None where it has no move any more."""

    place: Place
    old: Place
    new: Place | None


@dataclass(frozen=True)
class VerdictChange:
    """What is said of a position. held, holds: what was found of the words of both editions, where they are the same."""

    place: Place
    old: tuple[str, ...]
    new: tuple[str, ...]
    held: Outcome | None = None
    holds: Outcome | None = None


@dataclass(frozen=True)
class WordsChange:
    """The comments on a position."""

    place: Place
    old: str
    new: str


@dataclass(frozen=True)
class SettingChange:
    """what: "title", "side" or "audience"."""

    what: str
    old: str
    new: str


@dataclass(frozen=True)
class Comparison:
    """What the newer state has that the older had not, and the other way round, each in the order of the lesson."""

    old: Side
    new: Side
    added: tuple[LineChange, ...]
    removed: tuple[LineChange, ...]
    changed: tuple[LineChange, ...]
    advice: tuple[AdviceChange, ...]
    verdicts: tuple[VerdictChange, ...]
    words: tuple[WordsChange, ...]
    settings: tuple[SettingChange, ...]

    @cached_property
    def nothing(self) -> bool:
        """Whether nothing has changed."""
        lists = (self.added, self.removed, self.changed, self.advice, self.verdicts)
        return not any((*lists, self.words, self.settings))


def compare(old: Side, new: Side) -> Comparison:
    """What has changed from one state to the other."""
    before, after = Graph(old.lesson), Graph(new.lesson)
    side = new.lesson.settings.side or old.lesson.settings.side
    added, removed = runs(after, before), runs(before, after)
    pairs = list(_pairs(removed, added, lambda key: side == after.turn(key)))
    paired = {id(run) for pair in pairs for run in pair}
    return Comparison(
        old,
        new,
        tuple(_line(run, before, gone=False) for run in added if id(run) not in paired),
        tuple(_line(run, after, gone=True) for run in removed if id(run) not in paired),
        tuple(replace(_line(two, before, gone=False), old=tuple(one.places)) for one, two in pairs),
        tuple(_advice(old.lesson, new.lesson, side, after)),
        tuple(_verdicts(old, new, before, after)),
        tuple(_words(before, after)),
        tuple(_settings(old, new)),
    )


def _pairs(
    removed: list[Run], added: list[Run], taught: Callable[[int], bool]
) -> Iterator[tuple[Run, Run]]:
    """A move of the taught side that gave way to another; replies of the opponent do not replace each other."""
    left = list(added)
    for run in removed:
        other = next((one for one in left if one.start == run.start), None)
        if other is not None and taught(run.start):
            left.remove(other)
            yield run, other


def _line(run: Run, other: Graph, *, gone: bool) -> LineChange:
    start = run.places[0].parent
    assert start is not None
    places = tuple(run.places)
    return LineChange(
        start,
        places if gone else (),
        () if gone else places,
        run.alone,
        run.more,
        None if run.joins is None else other.place[run.joins],
    )


def _advice(old: Lesson, new: Lesson, side: str | None, after: Graph) -> Iterator[AdviceChange]:
    if side is None:
        return
    was, now = advice(old, side), advice(new, side)
    for key in after.order:
        before, here = was.get(key), now.get(key)
        if before is None or (here is not None and here.uci == before.uci):
            continue
        if here is not None or not after.moves[key]:
            yield AdviceChange(after.place[key], before, here)


def _verdicts(old: Side, new: Side, before: Graph, after: Graph) -> Iterator[VerdictChange]:
    was = verdicts(read_lesson(old.lesson).claims)
    now = verdicts(read_lesson(new.lesson).claims)
    held, holds = _found(old), _found(new)
    for key in after.order:
        if key not in before.place:
            continue
        place = after.place[key]
        said = tuple(one.words for one in was.get(key, ()))
        says = tuple(one.words for one in now.get(key, ()))
        if set(said) != set(says):
            yield VerdictChange(place, said, says)
            continue
        for words in says:
            one, two = held.get((key, words)), holds.get((key, words))
            if one is not None and two is not None and one is not two:
                yield VerdictChange(place, (words,), (words,), one, two)


def _found(side: Side) -> dict[tuple[int, str], Outcome]:
    kept = () if side.edition is None else side.edition.verdicts
    return {(one.said.key, one.said.words): one.outcome for one in kept}


def _words(before: Graph, after: Graph) -> Iterator[WordsChange]:
    was, now = _spoken(before), _spoken(after)
    for key in after.order:
        if key in before.place and was.get(key, "") != now.get(key, ""):
            yield WordsChange(after.place[key], was.get(key, ""), now.get(key, ""))


def _spoken(graph: Graph) -> dict[int, str]:
    found: dict[int, list[str]] = {}
    for comment in graph.lesson.comments:
        text = plain(comment.text)
        if text:
            found.setdefault(comment.place.key, []).append(text)
    return {key: " ".join(texts) for key, texts in found.items()}


def _settings(old: Side, new: Side) -> Iterator[SettingChange]:
    was, now = _told(old), _told(new)
    for what in was:
        if was[what] != now.get(what, was[what]):
            yield SettingChange(what, was[what], now[what])


def _told(side: Side) -> dict[str, str]:
    lesson = side.lesson
    # a file without a title has its own name for one
    bare = lesson.folder is None and side.title == Path(lesson.name).stem
    named = {} if bare else {"title": side.title}
    return named | {
        "side": lesson.settings.side or "not said",
        "audience": str(lesson.settings.audience),
    }
