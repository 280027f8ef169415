"""The order against the order of the file, by the stated measure: ways back, then moves shown again, then mistake to punishment."""

from __future__ import annotations

import pytest

from lineproof.order import Measure
from lineproof.order.acts import as_written, measure
from lineproof.order.order import steps_of, telling
from lineproof.order.steps import Steps

from .lessons import AGAIN, BRANCHES, FIXTURES, JOINING, MISTAKES, lesson


@pytest.mark.parametrize("name", FIXTURES)
def test_the_order_of_the_file_is_at_least_30_percent_worse(name: str) -> None:
    found = telling(steps_of(lesson(FIXTURES[name])))
    assert found.file.worse_by(found.measure) >= 0.3
    assert found.proven


@pytest.mark.parametrize(
    ("text", "file", "best"),
    [
        # e5 back c5 back e6 back e5 Nc3 back Nf3 back Bc4 back Nc3 Nf6 back Nc6 back Nf6 f4; best: six lines, so five ways back
        (BRANCHES, Measure(8, 0, 0), Measure(5, 0, 0)),
        # three moves go on from where two roads meet: each road takes one, and the third needs a way back of its own;
        # both roads have words after Nf6, so it is played twice
        (JOINING, Measure(3, 1, 0), Measure(2, 1, 0)),
        # between Nf6?? and Qxf7# the file plays the 5 and 3 moves of its two variations
        (MISTAKES, Measure(3, 0, 8), Measure(2, 0, 0)),
        # the file goes back to the beginning and plays four moves again, twice
        (AGAIN, Measure(2, 8, 0), Measure(2, 0, 0)),
    ],
)
def test_the_measures_of_small_lessons_as_counted_by_hand(
    text: str, file: Measure, best: Measure
) -> None:
    found = telling(steps_of(lesson(text)))
    assert (found.file, found.measure) == (file, best)


def test_a_measure_is_compared_from_left_to_right() -> None:
    assert Measure(3, 9, 9) < Measure(4, 0, 0) < Measure(4, 0, 1) < Measure(4, 1, 0)
    assert Measure(4, 1, 0).worse_by(Measure(4, 0, 0)) == float("inf")
    assert Measure(4, 2, 3).worse_by(Measure(4, 2, 2)) == 0.5
    assert Measure(4, 2, 2).worse_by(Measure(4, 2, 2)) == 0


def test_the_bound_counts_lines_that_lead_nowhere() -> None:
    """A tree with n ends needs n walks, whatever the order."""
    found = telling(steps_of(lesson(BRANCHES)))
    ends = [step for step in found.steps.all if not step.children]
    assert found.least.ways_back == len(ends) - 1


def test_known_moves_are_walked_again_where_that_saves_a_way_back() -> None:
    """A second road meets the first two plies before it branches: walking these again is cheaper than coming back."""
    text = """1. Nf3 {A.} (1. Nc3 {B.} d5 2. Nf3 {B meets A.}) 1... d5 2. Nc3 {A meets B.} Nf6 {On.} 3. d4 {And on.} e6 {One.} (3... c6 {Two.}) *"""
    found = telling(steps_of(lesson(text)))
    assert found.measure == Measure(1, 2, 0) == found.least
    again = [act.uci for act in found.acts if act.kind == "again"]
    assert again == ["g8f6", "d2d4"]


def test_written_order_shows_every_move_as_it_is_written() -> None:
    steps = Steps(lesson(AGAIN))
    acts = as_written(steps)
    assert sum(act.kind in ("step", "again") for act in acts) == 15
    assert measure(acts, {}).plies_again == 8
