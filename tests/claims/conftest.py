"""Small lessons of one comment, read and judged."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field

import pytest

from lineproof.claims import Claim, Played, Reading, Spot, read_lesson
from lineproof.engine import Line
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, Finding, settle


def readings(
    movetext: str, taught: str | None = "white", setup: str | None = None
) -> tuple[Reading, ...]:
    """The sentences of a movetext."""
    return read_lesson(lesson(movetext, taught, setup)).sentences


def lesson(movetext: str, taught: str | None = "white", setup: str | None = None) -> Lesson:
    head = f'[SetUp "1"]\n[FEN "{setup}"]\n\n' if setup else ""
    return Lesson.from_text(f"{head}{movetext}", side=taught)


@pytest.fixture(scope="session")
def store() -> EvidenceStore:
    """One store in memory for all tests: the same question is searched once."""
    return EvidenceStore(None)


Judge = Callable[..., Finding]


@pytest.fixture
def judge(store: EvidenceStore) -> Judge:
    """judge(movetext, taught=..., setup=..., kind=...): the finding of the only claim of that kind."""

    def run(
        movetext: str,
        taught: str | None = "white",
        setup: str | None = None,
        kind: str | None = None,
    ) -> Finding:
        claims = [
            c for c in read_lesson(lesson(movetext, taught, setup)).claims if kind in (None, c.kind)
        ]
        assert len(claims) == 1, [(c.kind, c.words) for c in claims]
        return settle(claims[0], Effort.NORMAL, store)

    return run


def claims_of(
    movetext: str, taught: str | None = "white", setup: str | None = None
) -> tuple[Claim, ...]:
    return read_lesson(lesson(movetext, taught, setup)).claims


@dataclass
class Scripted:
    """Answers questions from a script, to stand a claim on either side of an edge.

    points: White's, by move (UCI) searched alone; "" is the best line without restriction.
    """

    points: dict[str, int]
    best_move: str
    rival: str = ""
    first_sight: str = ""
    nodes: int = 400_000
    asked: list[str] = field(default_factory=list)

    def _line(self, uci: str, points: int) -> Line:
        return Line((uci,), (uci,), points, 0, None)

    def best(self, spot: Spot, *, without: tuple[str, ...] = ()) -> Line | None:
        self.asked.append("best")
        uci = self.rival if without else self.best_move
        return self._line(uci, self.points[uci])

    def move(self, spot: Spot, uci: str) -> Line:
        return self._line(uci, self.points[uci])

    def shallow(self, spot: Spot) -> Line | None:
        return self._line(self.first_sight, 50) if self.first_sight else None

    def aside(self, spot: Spot, uci: str) -> Line:
        return self._line(uci, self.points.get(uci, 50))

    def mate(self, spot: Spot, moves: int) -> tuple[bool | None, tuple[str, ...]]:
        return None, ()

    def played(self, spot: Spot, uci: str, ratings: tuple[int, int] | None = None) -> Played | None:
        return None
