"""Moves that need not be feared: they cost the other side nothing."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from lineproof.claims import Outcome, Spot
from lineproof.claims.kinds.nothing_to_fear import check
from lineproof.engine import Line
from tests.claims.conftest import Judge, Scripted, claims_of

TEXT = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 {%s} 4. d3 *"


@pytest.mark.parametrize(
    "words",
    [
        "Ng5 holds no terrors for Black.",
        "Black need not fear 4. Ng5.",
        "Black does not fear Ng5.",
        "There is nothing to fear from Ng5.",
        "Ng5 is harmless.",
        "Black is not afraid of Ng5.",
        "Ng5 is nothing to worry about.",
        "Ng5 is not dangerous for Black.",
        "Black has no reason to fear Ng5.",
        "Ng5 does not worry Black.",
        "Ng5 is not to be feared.",
    ],
)
def test_ways_to_say_it(words: str) -> None:
    (claim,) = claims_of(TEXT % words)
    assert (claim.kind, claim.side, claim.negated) == ("nothing-to-fear", "black", False)
    assert claim.params["move"] == "f3g5"


@dataclass
class _Before(Scripted):
    """White's points with best play from before Black's last move, and after the feared move."""

    def best(self, spot: Spot, *, without: tuple[str, ...] = ()) -> Line | None:
        assert spot.board.turn == "black"
        return self._line("g8f6", self.points["before"])


@pytest.mark.parametrize(
    ("after", "expected"), [(55, Outcome.HOLDS), (56, Outcome.FAILS), (40, Outcome.HOLDS)]
)
def test_both_sides_of_the_edge(after: int, expected: Outcome) -> None:
    (claim,) = claims_of(TEXT % "Ng5 is harmless.")
    assert check(claim, _Before({"before": 50, "f3g5": after}, "g8f6")).outcome is expected


def test_where_the_side_is_to_move_the_move_shown_comes_first() -> None:
    (claim,) = claims_of("1. e4 e5 2. Nf3 Nc6 3. Bc4 {Black need not fear 4. Ng5.} 3... Nf6 *")
    assert claim.spot.moves[-1] == "g8f6"
    assert not claims_of("1. e4 e5 2. Nf3 Nc6 3. Bc4 {Black need not fear 4. Ng5.} *")


def test_a_move_that_mates_is_to_be_feared(judge: Judge) -> None:
    text = "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {%s} 4. Qxf7# *"
    assert judge(text % "Black need not fear Qxf7.").outcome is Outcome.FAILS
    denial = judge(text % "Qxf7 is not harmless.")
    assert denial.claim.negated
    assert denial.outcome is Outcome.HOLDS


@pytest.mark.parametrize(
    "words",
    [
        "Ng5 is dangerous.",  # a fear, not the lack of one
        "White need not fear Ng5.",  # his own move
        "Do not fear the endgame.",
        "I fear Ng5.",
    ],
)
def test_other_fears_are_not_read(words: str) -> None:
    assert not [c for c in claims_of(TEXT % words) if c.kind == "nothing-to-fear"]
