"""The moments of a lesson that a diagram shows: pause points, branch points, changes of the verdict, and what the author chose."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from lineproof.claims import Outcome
from lineproof.claims.bands import Band, band, seen_from
from lineproof.diagram import JustPlayed, Mark, alternative
from lineproof.lesson import Lesson, Place
from lineproof.lesson.diagrams import diagrams
from lineproof.lesson.graph import NULL_MOVE
from lineproof.proof import Finding
from lineproof.replies.pauses import Pause
from lineproof.report.figure import marks_of

from .naming import move_slug
from .product import Found

PAUSE, BRANCH, VERDICT, AUTHOR = "pause", "branch", "verdict", "author"
SAID: Final = {
    PAUSE: "pause point",
    BRANCH: "branch point",
    VERDICT: "the verdict changes",
    AUTHOR: "the author's choice",
}


@dataclass(frozen=True)
class Moment:
    """A position to show. name: the beginning of its files, in the order of the lesson. line: the first that has it, from 1.

    marks: the move just played, and those of claims that hold here; a pause point has the first only, for the others
    would give the answer away. pause: what is to be found, None at other moments.
    """

    place: Place
    kinds: tuple[str, ...]
    name: str
    line: int
    marks: tuple[Mark, ...]
    pause: Pause | None = None

    @property
    def title(self) -> str:
        """ "After 5... Bxd1 (line 3): pause point." """
        at = "The start" if self.place.ply == 0 else f"After {self.place.label}"
        what = " and ".join(SAID[kind] for kind in self.kinds)
        return f"{at} (line {self.line}): {what}."

    @property
    def text(self) -> str:
        """The text alternative."""
        return alternative(self.place.board.fen, self.marks)


def moments(lesson: Lesson, found: Found) -> tuple[Moment, ...]:
    """In the order of the lesson, each position once as a pause point and once as anything else: where the author put a diagram, if he did."""
    shown: list[tuple[Place, tuple[str, ...], Pause | None]] = [
        (pause.place, (PAUSE,), pause) for pause in found.studied.pauses
    ]
    branches, verdicts = _branches(lesson), _verdict_changes(found)
    chosen = {place.index for place in diagrams(lesson)}
    seen: set[int] = set()
    for index in (*sorted(chosen), *sorted({*branches, *verdicts} - chosen)):
        place = Place(lesson, index)
        if index in chosen or place.key not in seen:
            seen.add(place.key)
            kinds = (BRANCH,) * (index in branches) + (VERDICT,) * (index in verdicts)
            shown.append((place, kinds + (AUTHOR,) * (index in chosen), None))
    shown.sort(key=lambda each: (each[0].index, each[2] is None))
    lines = _first_lines(lesson)
    wide, line_wide = max(3, len(str(len(shown)))), max(2, len(str(len(lesson.lines()))))
    proved = proved_marks(found)
    return tuple(
        Moment(
            place,
            kinds,
            f"{number:0{wide}d}-line-{lines[place.index]:0{line_wide}d}-{move_slug(place)}-{'-'.join(kinds)}",
            lines[place.index],
            _just_played(place) + (proved.get(place.key, ()) if pause is None else ()),
            pause,
        )
        for number, (place, kinds, pause) in enumerate(shown, 1)
    )


def _branches(lesson: Lesson) -> set[int]:
    """Places at which the lesson goes on in more than one way."""
    return {
        place.index
        for place in lesson.places
        if len({move.uci for move in place.children} - {NULL_MOVE}) > 1
    }


def _verdict_changes(found: Found) -> set[int]:
    """Places with a proved verdict of another band than the last one before it on its line; before the first: level."""
    bands: dict[int, Band] = {}
    for finding in found.proof.findings:
        if finding.claim.kind == "verdict" and finding.outcome is Outcome.HOLDS:
            place, numbers = finding.claim.place, finding.judgement.numbers
            if finding.claim.spot.board.fen == place.board.fen:
                points = seen_from(str(numbers["side"]), int(numbers["points"]))
                bands[place.index] = band(points)
    return {index for index in bands if bands[index] != _before(found.proof.lesson, index, bands)}


def _before(lesson: Lesson, index: int, bands: dict[int, Band]) -> Band:
    for earlier in reversed(lesson.pgn.path(index)[:-1]):
        if earlier in bands:
            return bands[earlier]
    return Band.LEVEL


def proved_marks(found: Found) -> dict[int, tuple[Mark, ...]]:
    """By position, the marks of the claims that hold there, each mark once."""
    marks: dict[int, dict[Mark, None]] = {}
    for finding in found.proof.findings:
        if finding.outcome is Outcome.HOLDS and finding.judgement.marks:
            drawn = dict.fromkeys(_drawn(finding))
            marks.setdefault(finding.line_from.board.key, {}).update(drawn)
    return {key: tuple(each) for key, each in marks.items()}


def _drawn(finding: Finding) -> tuple[Mark, ...]:
    return tuple(mark for mark in marks_of(finding) if not isinstance(mark, JustPlayed))


def _just_played(place: Place) -> tuple[Mark, ...]:
    uci = place.uci
    return () if uci is None or uci == NULL_MOVE else (JustPlayed(uci[:2], uci[2:4]),)


def _first_lines(lesson: Lesson) -> dict[int, int]:
    """By the index of a place the number of the first line through it, from 1."""
    found: dict[int, int] = {}
    for number, end in enumerate(lesson.lines(), 1):
        for index in reversed(lesson.pgn.path(end.index)):
            if index in found:
                break
            found[index] = number
    return found
