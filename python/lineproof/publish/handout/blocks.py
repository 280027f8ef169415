"""The lines of the handout as blocks of text, diagrams and sidelines, ready to be set.

A block is a mapping of plain values, for it goes to the typesetter as JSON: `text` (runs of moves, verdicts and words), `diagram`,
`sideline` (a short line within a section) and `see` (sections that part here).
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import lru_cache
from typing import Any, Final

from lineproof.claims import Reading
from lineproof.diagram import PRINT, Mark, diagram
from lineproof.lesson import Lesson, Place
from lineproof.publish.moments import Moment
from lineproof.publish.spoken_words import said_words
from lineproof.publish.verdict_words import with_verdict
from lineproof.report.plain import plain

from .lines import Line, by_place
from .notation import Notation
from .spread import by_author

Block = dict[str, Any]

LONGEST: Final = 40
"""Moves without a word that stand in one paragraph."""


def anchor(place: Place) -> str:
    """The name by which pages are told of a place."""
    return f"place-{place.index}"


PAPER: Final = replace(PRINT, name="paper", page=None)
"""The printed board on whatever paper there is."""


def drawing(moment: Moment, *, flipped: bool) -> dict[str, str]:
    """A diagram and its text alternative."""
    return {"svg": _svg(moment.place.board.fen, moment.marks, flipped), "alt": moment.text}


@lru_cache(maxsize=1024)  # the same diagrams are set in shape after shape
def _svg(fen: str, marks: tuple[Mark, ...], flipped: bool) -> str:
    return diagram(fen, marks=marks, flipped=flipped, theme=PAPER)


class Writer:
    """Writes the lines of a lesson. shown: by the index of its place each diagram that stands in the text."""

    def __init__(
        self,
        lesson: Lesson,
        lines: Sequence[Line],
        readings: Sequence[Reading],
        shown: Mapping[int, Moment],
        notation: Notation,
    ) -> None:
        self.lesson = lesson
        self.lines = by_place(lines)
        self.shown = shown
        self.notation = notation
        self.flipped = lesson.settings.side == "black"
        self.before, self.after = _said(lesson, readings)

    def section(self, line: Line) -> list[Block]:
        return list(self._blocks(line))

    def opening(self, line: Line) -> str:
        """What is said before the first move of a game."""
        return self._words(self.after.get(line.first.index, ()))

    def moves(self, places: Sequence[Place]) -> list[str]:
        """ "5.Nf3", "Nf6", "6.d4", without marks."""
        return self.notation.moves(_numbered([(place, place.san or "") for place in places]))

    def label(self, place: Place) -> str:
        """ "5...Nf6"; "the start"."""
        return "".join(self.notation.moves(place.label)) if place.ply else "the start"

    def at(self, place: Place) -> str:
        """ "After 5...Nf6"; "At the start"."""
        return f"After {self.label(place)}" if place.ply else "At the start"

    def _blocks(self, line: Line) -> Iterator[Block]:
        run: list[Place] = []
        begun = self._words(self.before.get(line.first.index, ()))
        if begun:
            yield _text([{"words": begun}])
        for place in line.places:
            if place.uci is None:
                # what is said before the first game begins the handout
                said = "" if line.label == "1" else self.opening(line)
                if said:
                    yield _text([{"words": said}])
                if place.index in self.shown:
                    yield self._diagram(place)
                continue
            run.append(place)
            words = self._words(self.after.get(place.index, ()))
            others = line.sidelines.get(place.index, [])
            full = len(run) == LONGEST or place == line.last
            if words or others or full or place.index in self.shown:
                yield self._paragraph(run, words, stays=place.index in self.shown)
                run = []
            if place.index in self.shown:
                yield self._diagram(place)
            yield from self._sidelines(others)

    def _sidelines(self, others: Sequence[Line]) -> Iterator[Block]:
        sections = [other for other in others if not other.inline]
        for other in others:
            if other.inline:
                yield {
                    "kind": "sideline",
                    "label": other.label,
                    "anchor": anchor(other.first),
                    "blocks": self.section(other),
                }
        if sections:
            yield {
                "kind": "see",
                "lines": [
                    {
                        "move": self.label(other.first),
                        "label": other.label,
                        "anchor": anchor(other.first),
                    }
                    for other in sections
                ],
            }

    def _paragraph(self, places: Sequence[Place], words: str, *, stays: bool) -> Block:
        runs: list[dict[str, Any]] = []
        run: list[tuple[Place, str]] = []
        for place in places:
            move, verdict = with_verdict(place.san or "", place)
            run.append((place, move))
            if verdict:
                runs.append({"moves": self.notation.moves(_numbered(run))})
                runs.append({"verdict": verdict})
                run = []
        if run:
            runs.append({"moves": self.notation.moves(_numbered(run))})
        if words:
            runs.append({"words": words})
        return _text(runs, [anchor(place) for place in places], stays=stays)

    def _diagram(self, place: Place) -> Block:
        moment = self.shown[place.index]
        mover = place.board.turn.capitalize()
        asks = moment.pause is not None
        return {
            "kind": "diagram",
            "place": None if by_author(moment) else place.index,
            **drawing(moment, flipped=self.flipped),
            "caption": f"{self.at(place)}: find {mover}’s move."
            if asks
            else f"{self.at(place)}. {mover} to move.",
        }

    def _words(self, readings: Sequence[Reading]) -> str:
        return self.notation.words(" ".join(plain(text) for text in said_words(readings)))


def _text(runs: list[dict[str, Any]], anchors: Sequence[str] = (), *, stays: bool = False) -> Block:
    return {"kind": "text", "runs": runs, "anchors": list(anchors), "stays": stays}


def _numbered(moves: Sequence[tuple[Place, str]]) -> str:
    words: list[str] = []
    for place, move in moves:
        number = place.number if not words or not place.number.endswith("...") else ""
        words.append(f"{number} {move}".strip())
    return " ".join(words)


Said = dict[int, tuple[Reading, ...]]


def _said(lesson: Lesson, readings: Sequence[Reading]) -> tuple[Said, Said]:
    """Sentences by the index of the place that they are written at: before its move, and after it."""
    before: Said = {}
    after: Said = {}
    left = list(readings)
    at = 0
    for comment in sorted(lesson.comments, key=lambda c: c.start):
        first = at
        while at < len(left) and left[at].sentence.start < comment.end:
            at += 1
        said = before if comment.opening and comment.anchor.uci is not None else after
        index = comment.anchor.index
        said[index] = said.get(index, ()) + tuple(left[first:at])
    return before, after
