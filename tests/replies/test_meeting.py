"""How often a position is met, worked out by hand."""

from __future__ import annotations

import pytest

from lineproof.lesson import Lesson
from lineproof.lesson.graph import Graph
from lineproof.replies.meeting import Meeting
from lineproof.replies.start import starts


def graph(text: str) -> Graph:
    return Graph(Lesson.from_text(text, side="white"))


def at(of: Graph, label: str) -> int:
    return next(key for key in of.order if of.place[key].label == label)


SHARES = {"e7e5": 0.5, "e7e6": 0.2, "d7d5": 0.1, "g8f6": 0.4, "b8c6": 0.25}


def meeting(of: Graph, side: str = "white") -> Meeting:
    return Meeting(of, of.order[0], side, lambda _, uci: SHARES.get(uci, 0.0))


def test_shares_multiply_along_a_line() -> None:
    found = graph("1. e4 e5 2. Nf3 Nf6 (2... Nc6) (2... d5) *")
    met = meeting(found)
    assert met.chance(at(found, "2. Nf3")) == pytest.approx(0.5)
    assert met.chance(at(found, "2... Nf6")) == pytest.approx(0.5 * 0.4)
    assert met.chance(at(found, "2... Nc6")) == pytest.approx(0.5 * 0.25)
    assert met.inside({key: 1.0 for key in found.order if not found.moves[key]}) == pytest.approx(
        0.5 * (0.4 + 0.25 + 0.1)
    )


def test_shares_add_up_where_the_opponents_moves_transpose() -> None:
    found = graph("1. e4 e5 (1... Nc6 2. Nf3 e5) 2. Nf3 Nc6 3. Bb5 *")
    # one road by 1... e5 2... Nc6, the other by 1... Nc6 2... e5
    assert meeting(found).chance(at(found, "3. Bb5")) == pytest.approx(2 * 0.5 * 0.25)


def test_of_several_moves_of_the_taught_side_the_one_that_leads_there_is_played() -> None:
    found = graph("1. e4 e5 2. Nf3 (2. Nc3 Nf6) 2... Nc6 *")
    met = meeting(found)
    assert met.chance(at(found, "2. Nc3")) == pytest.approx(0.5)
    assert met.chance(at(found, "2... Nf6")) == pytest.approx(0.5 * 0.4)
    # inside to the end: the better of the two choices
    assert met.inside({key: 1.0 for key in found.order if not found.moves[key]}) == pytest.approx(
        0.5 * 0.4
    )


def test_a_move_of_the_taught_side_that_the_lesson_marks_as_bad_is_not_played() -> None:
    found = graph("1. e4 e5 2. Nf3 (2. Nc3 $2 Nf6) 2... Nc6 *")
    bad = frozenset({(at(found, "1... e5"), "b1c3")})
    met = Meeting(found, found.order[0], "white", lambda _, uci: SHARES.get(uci, 0.0), bad)
    assert met.chance(at(found, "2... Nf6")) == 0
    # the better of the two would be 0.4
    ends = {key: 1.0 for key in found.order if not found.moves[key]}
    assert met.inside(ends) == pytest.approx(0.5 * 0.25)


def test_a_position_that_comes_back_adds_nothing() -> None:
    found = graph("1. Nf3 Nf6 2. Ng1 Ng8 3. Nf3 *")
    assert meeting(found).chance(at(found, "1... Nf6")) == pytest.approx(0.4)


def test_nothing_behind_a_pass_is_met() -> None:
    found = graph("1. e4 -- 2. d4 *")
    assert [found.place[key].label for key in found.order] == ["start", "1. e4"]


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("1. e4 e5 2. Nc3 Nf6 (2... Nc6) *", ["2. Nc3"]),  # where the lines part
        ("1. e4 e5 2. Nc3 {The Vienna.} Nf6 3. f4 d5 (3... exf4) *", ["2. Nc3"]),  # where words begin
        ("{Good evening.} 1. e4 e5 2. Nc3 Nf6 3. f4 d5 (3... exf4) *", ["3. f4"]),  # words before it only introduce
        ("1. e4 e5 *", ["start"]),  # neither: otherwise nothing at all would be found
        ("1. e4 e5 2. Nc3 Nf6 (2... Nc6) *\n\n1. e4 e5 2. Nc3 Bc5 *", ["2. Nc3"]),
        ('[SetUp "1"]\n[FEN "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"]\n\n1. e4 Kd7 (1... Ke7) *\n\n1. d4 d5 (1... f5) *', ["1. e4", "1. d4"]),
        ("*", ["start"]),
    ],
)  # fmt: skip
def test_a_lesson_begins_where_its_lines_part_or_its_words_begin(
    text: str, begins: list[str]
) -> None:
    found = graph(text)
    assert [found.place[key].label for key in starts(found)] == begins
