"""Weighing openings."""

from __future__ import annotations

import pytest

from lineproof.collection.asked import asked
from lineproof.engine import Stop
from lineproof.follow.weighing import Candidate, Weight, weigh_openings
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore
from lineproof.proof.asker import Asker
from lineproof.replies import Replies


def weighed(candidate: Candidate, rating: int = 1500) -> Weight:
    store = EvidenceStore(None)
    ask = Asker(store, Effort.SKETCH.steps[0], Stop())
    (found,) = weigh_openings([candidate], Replies(rating, store), ask)
    return found


def of_moves(text: str) -> Candidate:
    return Candidate.of_moves(text, asked(text))


@pytest.mark.parametrize(
    ("text", "side"),
    [
        ("1. e4 e5 2. Nc3", "white"),
        ("1. e4 c5", "black"),
        ("", "white"),
        ("8/8/8/8/8/k7/p7/K7 b - - 0 1", "black"),
    ],
)
def test_an_opening_belongs_to_the_side_that_made_the_last_move(text: str, side: str) -> None:
    assert of_moves(text).side == side


# Black's king on a8 has one legal move and then one again: White on h7 and b6 leaves it a8-b8-a8 (counted by hand)
ONE_WAY = "k7/8/1K6/8/8/8/8/7R w - - 0 1"


def test_where_the_opponent_has_one_reply_one_position_is_learned_for_each_move() -> None:
    found = weighed(Candidate("rook", Candidate.of_moves("", asked(ONE_WAY)).spot, "white"))
    # 1. Rh8 is mate: after the one position that is learned nothing is left to answer
    assert (found.positions, found.whole, found.worst, found.reach) == (1, True, 100, 100)


def test_the_way_to_it_is_the_chance_of_the_opponents_moves_alone() -> None:
    found = weighed(of_moves("1. f3 e5 2. g4 Qh4#"))
    replies = Replies(1500, EvidenceStore(None))
    spot = of_moves("").spot
    first = replies.at(spot).reply("f2f3").share
    second = replies.at(of_moves("1. f3 e5").spot).reply("g2g4").share
    assert found.reach == pytest.approx(first * second / 100)
    assert (found.positions, found.answered) == (0, 100)
    assert found.candidate.side == "black"


def test_the_lessons_own_answers_are_taken_first() -> None:
    lesson = Lesson.from_text("1. f3 e5 2. g4 {Thank you.} Qh4# *", side="black")
    found = weighed(Candidate.of_lesson(lesson, "black"))
    assert (found.positions, found.from_lesson, found.whole, found.worst) == (1, 1, True, 100)
