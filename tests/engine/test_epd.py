"""EPD records are read as the standard has them, and what is wrong is named with its place.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, section 16.2 (from memory).
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lineproof.engine.epd import EpdError, Problem, read
from lineproof.engine.solving import solve

BACK_RANK = "6k1/5ppp/8/8/8/8/8/R3K3 w - -"
"""Ra8 is mate (common practice: the mate on the back rank)."""
KNIGHTS = "4k3/8/8/8/8/8/8/N1N1K3 w - -"


def one(text: str) -> Problem:
    (problem,) = read(text)
    return problem


def test_a_record_has_best_moves_moves_to_avoid_and_a_name() -> None:
    problem = one(f'{KNIGHTS} bm Nab3 Kd2; am Kf1; id "two knights";')
    assert problem.best == ("a1b3", "e1d2")
    assert problem.avoid == ("e1f1",)
    assert (problem.name, problem.line) == ("two knights", 1)
    assert problem.fen == f"{KNIGHTS} 0 1"


def test_semicolons_inside_quoted_text_end_nothing() -> None:
    problem = one(f'{BACK_RANK} c0 "first; bm Kd1; then; rest"; bm Ra8#; id "a; b";')
    assert (problem.name, problem.best) == ("a; b", ("a1a8",))


def test_other_operations_are_left_alone() -> None:
    text = f"{BACK_RANK} acd 12; acs 3; ce 32750; dm 1; bm Ra8#; pv Ra8#; v0 ;"
    assert one(text).best == ("a1a8",)


def test_clocks_go_into_the_position() -> None:
    assert one(f"{BACK_RANK} hmvc 12; fmvn 40; bm Ra8#;").fen == f"{BACK_RANK} 12 40"


def test_without_an_id_the_line_is_the_name() -> None:
    text = f"\ufeff{BACK_RANK} bm Ra8#;\r\n\r\n  {BACK_RANK}\tbm Ra8;  \n"
    assert [(p.name, p.line) for p in read(text)] == [("line 1", 1), ("line 3", 3)]


def test_the_last_semicolon_may_be_missing() -> None:
    assert one(f"{BACK_RANK} bm Ra8#").best == ("a1a8",)


def test_an_empty_text_has_no_records() -> None:
    assert read("") == read("\n \n") == ()


@pytest.mark.parametrize(
    ("record", "column", "said"),
    [
        ("nonsense", 1, "this is no position"),
        ("  6k1/8/8/8/8/8/8/R3K3 w -", 3, "this is no position"),
        ("6k1/8/8/8/8/8/8/R3K2 w - - bm Ra8;", 1, "correct the position"),
        ("8/8/8/8/8/8/8/8 w - - bm Ra8;", 1, "a king is missing; correct the position"),
        (BACK_RANK, 30, "there is nothing to find; add the best move (bm)"),
        (f'{BACK_RANK} id "x";', 30, "there is nothing to find"),
        (f"{BACK_RANK} bm ;", 31, "bm names no move"),
        (f"{BACK_RANK} am ;", 31, "am names no move"),
        (f"{BACK_RANK} bm Ra8# Rb9;", 39, "Rb9 is not a move; correct"),
        (f"{BACK_RANK} bm Rb2;", 34, "Rb2 is not legal here"),
        (f"{BACK_RANK} bm --;", 34, "a pass is no move to find"),
        (f"{KNIGHTS} bm Nb3;", 33, "Nb3 can mean Nab3 or Ncb3; write which"),
        (f"{BACK_RANK} bm Ra8#; am Kb9;", 43, "Kb9 is not a move"),
        (f"{BACK_RANK} bm Ra8#; bm Ra7;", 40, "bm stands here twice"),
        (f'{BACK_RANK} bm Ra8#; id "open;', 43, "this text is never closed"),
        (f"{BACK_RANK} 1st; bm Ra8#;", 31, "“1st” is no operation"),
        (f"{BACK_RANK} hmvc -1; bm Ra8#;", 36, "hmvc is -1; give a number from 0 to 9999"),
        (f"{BACK_RANK} fmvn 0; bm Ra8#;", 36, "fmvn is 0; give a number from 1 to 9999"),
        (f"{BACK_RANK} hmvc ²; bm Ra8#;", 36, "hmvc is ²"),
        (f"{BACK_RANK} hmvc {'9' * 5000}; bm Ra8#;", 36, "give a number from 0 to 9999"),
    ],
)
def test_what_is_wrong_is_named_with_line_and_column(record: str, column: int, said: str) -> None:
    with pytest.raises(EpdError) as caught:
        read(f"{BACK_RANK} bm Ra8#;\n{record}\n")
    assert said in str(caught.value)
    assert (caught.value.line, caught.value.column) == (2, column)


@given(st.text())
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        read(text)
    except EpdError as error:
        assert error.line >= 1
        assert error.column >= 1


@given(st.text(st.characters(exclude_characters='"', exclude_categories=["C", "Z"])))
def test_any_quoted_name_comes_back(name: str) -> None:
    assert one(f'{BACK_RANK} id "{name}"; bm Ra8#;').name == name


def test_a_move_solves_when_it_is_best_and_not_to_be_avoided() -> None:
    problem = Problem("both", f"{KNIGHTS} 0 1", ("a1b3", "c1b3"), ("c1b3",), 1)
    assert problem.solved_by("a1b3")
    assert not problem.solved_by("c1b3")
    assert not problem.solved_by("e1d1")
    assert Problem("only am", f"{KNIGHTS} 0 1", (), ("c1b3",), 1).solved_by("e1d1")


def test_solving_tells_what_was_played_and_what_was_expected() -> None:
    found = solve(one(f"{BACK_RANK} bm Ra8#; am Kd1 Kd2;"), nodes=2_000)
    assert (found.solved, found.played) == (True, "Ra8#")
    assert found.expected == "Ra8#, not Kd1 or Kd2"
    missed = solve(one(f"{BACK_RANK} am Ra8#;"), nodes=2_000)
    assert (missed.solved, missed.played, missed.expected) == (False, "Ra8#", "not Ra8#")


def test_a_position_that_is_drawn_by_rule_is_missed() -> None:
    found = solve(one("8/8/4k3/8/8/4K3/8/8 w - - bm Kd3;"), nodes=2_000)
    assert (found.solved, found.played) == (False, "draw by insufficient material")
