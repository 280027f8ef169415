"""Plans at the end of a line."""

from __future__ import annotations

from lineproof.replies.plans import plans

from .test_ideas import course


def at_the_end(text: str, side: str = "white") -> dict[str, list[str]]:
    of = course(text, side)
    (key,) = [key for key in of.order if not of.graph.moves[key]]
    found = plans(of, key)
    sorts: dict[str, list[str]] = {}
    for plan in found.plans if found is not None else ():
        assert plan.cost.points <= 5
        sorts.setdefault(plan.sort, []).append(plan.what)
    return sorts


def test_breaks_and_squares_for_the_pieces_at_home() -> None:
    """The advance d4 against the pawn on e5 is the break of the open games (common practice)."""
    found = at_the_end("1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 Nf6 *")
    assert "the break d4 against the pawn on e5" in found["break"]


def test_an_exchange_is_of_equal_pieces_that_can_be_taken_back() -> None:
    found = at_the_end("1. e4 e5 2. Nf3 Nc6 3. d4 exd4 4. Nxd4 Nf6 *")
    assert found["exchange"] == ["to exchange the knight for the knight on c6"]


def test_where_a_line_goes_on_there_are_none() -> None:
    of = course("1. e4 e5 2. Nf3 *")
    assert plans(of, of.order[0]) is None


def test_where_the_game_is_over_there_are_none() -> None:
    assert at_the_end("1. f3 e5 2. g4 Qh4# *") == {}
