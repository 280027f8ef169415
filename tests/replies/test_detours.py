"""Orders of the moves that the opponent can choose, and what he gains by them."""

from __future__ import annotations

from lineproof.claims.claim import Spot
from lineproof.replies.course import Course
from lineproof.replies.detours import Detour, detours
from lineproof.replies.orders import roads
from lineproof.replies.start import starts
from lineproof.report.detoured import detoured

from .test_ideas import course


def found(text: str, side: str = "white") -> dict[str, Detour]:
    """By the first move of the order, as it is printed."""
    all_ = course(text, side)
    (start,) = starts(all_.graph)
    of = Course(all_.graph, start, side, all_.replies, all_.ask)
    return {
        f"{one.place.label}, {one.reply.san}": one for one in detours(of, roads(of.graph, of.start))
    }


PETROFF = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 d6 4. Nf3 Nxe4 {Here we begin.} 5. d4 d5 *"


def test_an_order_before_the_lesson_begins_is_weighed_against_the_taught_road() -> None:
    """3... Nxe4 at once is the known slip of the Petroff Defence, and 4. Qe2 the answer (from memory)."""
    one = found(PETROFF)["3. Nxe5, Nxe4"]
    assert Spot.of(one.place).line(one.line).board.key == one.into.key
    assert [one.place.board.san_line(list(one.line)), one.into.label] == [
        ["Nxe4", "Nf3", "d6"],
        "4... Nxe4",
    ]
    assert (one.instead, one.best, one.answers) == ("d6", "Qe2", ())
    assert one.back is not None and one.points - one.back > 5
    said = detoured(one)
    assert said.startswith("the lesson does not answer 3... Nxe4; best is 4. Qe2: White is")
    assert "against 3... d6" in said and ", and 4. Nf3 gives" in said


def test_going_back_may_cost_a_piece() -> None:
    """After 2... d6 the pawn on e5 is protected by a pawn."""
    one = found(PETROFF)["2. Nf3, d6"]
    assert one.back is not None and one.points - one.back >= 30
    assert "and 3. Nxe5 gives" in detoured(one)


def test_what_the_opponent_gains_is_told() -> None:
    """1... f6 opens the way to Black's own king and develops nothing; 1... e5 is the usual move (common practice)."""
    one = found("1. e4 f6 2. d4 e5 {Here we begin.} 3. dxe5 fxe5 *")["1. e4, e5"]
    assert one.gain > 5
    assert f"Black gains {one.gain} points against 1... f6" in detoured(one)


def test_orders_of_the_taught_side_are_not_told() -> None:
    of = found(PETROFF)
    assert of and all(one.place.board.turn == "black" for one in of.values())


def test_lines_of_the_lesson_that_meet_are_answered() -> None:
    """The Four Knights by two roads."""
    text = "1. e4 e5 2. Nf3 {Here we begin.} Nc6 (2... Nf6 3. Nc3 Nc6) 3. Nc3 Nf6 4. Bb5 *"
    one = found(text)["2. Nf3, Nf6"]
    assert (one.instead, one.answers, one.into.label) == ("Nc6", ("Nc3",), "3... Nc6")
    assert detoured(one).startswith(
        "the lesson answers 2... Nf6 with 3. Nc3, and nothing is better: "
    )


def test_what_is_not_answered_comes_first() -> None:
    text = "1. e4 e5 2. Nf3 Nc6 {Here we begin.} 3. Nc3 Nf6 (3... Bc5 4. Bb5 Nf6) 4. Bb5 Bc5 *"
    told = [(label, bool(one.answers)) for label, one in found(text).items()]
    assert told[0] == ("1. e4, Nc6", False)
    assert told[-1] == ("3. Nc3, Bc5", True)
    assert [answered for _, answered in told] == sorted(answered for _, answered in told)


def test_an_open_reply_that_comes_back_is_told() -> None:
    text = "1. e4 e5 2. Nf3 {Here we begin.} Nc6 3. Nc3 Nf6 4. Bb5 *"
    one = found(text)["2. Nf3, Nf6"]
    assert one.answers == () and one.into.label == "3... Nf6"
