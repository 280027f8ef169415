"""Recurring ideas and other move orders."""

from __future__ import annotations

from lineproof.engine import Stop
from lineproof.lesson import Lesson
from lineproof.lesson.graph import Graph
from lineproof.proof import Effort, EvidenceStore
from lineproof.proof.asker import Asker
from lineproof.replies import Replies
from lineproof.replies.course import Course
from lineproof.replies.ideas import ideas
from lineproof.replies.orders import returns, roads


def course(text: str, side: str = "white") -> Course:
    graph = Graph(Lesson.from_text(text))
    store = EvidenceStore(None)
    ask = Asker(store, Effort.SKETCH.steps[0], Stop())
    return Course(graph, graph.order[0], side, Replies(1500, store), ask)


def test_a_move_is_told_where_it_works_and_where_it_fails() -> None:
    """Légal's sacrifice fails when the knight on c6 takes back (common practice)."""
    text = (
        "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 (4... Nc6 5. Nxe5 $2 Nxe5) 5. Nxe5 dxe5 6. Qxg4 *"
    )
    first = ideas(course(text))[0]
    assert (first.side, first.move, first.taught) == ("white", "the knight takes on e5", True)
    good, bad = first.pair
    assert (good.place.label, bad.place.label) == ("4... g6", "4... Nc6")
    assert good.cost.points <= 5 and bad.cost.points >= 15
    assert bad.cost.line[1] == "c6e5"
    assert first.differs == (
        "Where it works there stand Black's knight on b8 and the pawn on g6, where it fails there stand Black's knight on c6 and the pawn on g7."
    )


def test_a_move_that_the_lesson_plays_nowhere_is_no_idea() -> None:
    found = ideas(course("1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4) 3. Bb5 *"))
    assert all(any(one.played for one in (*idea.works, *idea.fails)) for idea in found)


def test_a_move_that_is_good_everywhere_is_no_idea() -> None:
    found = ideas(course("1. e4 e5 (1... c5 2. Nf3) 2. Nf3 *"))
    assert "the knight goes to f3" not in {idea.move for idea in found}


def test_all_orders_of_the_moves_to_a_position_are_found() -> None:
    graph = Graph(Lesson.from_text("1. e4 e5 2. Nf3 Nc6 *"))
    found = roads(graph, graph.order[-1])
    # two moves of each side, each in two orders: four, less the lesson's own
    assert {road.san for road in found} == {("Nf3", "e5", "e4", "Nc6"), ("Nf3", "Nc6", "e4", "e5"), ("e4", "Nc6", "Nf3", "e5")}  # fmt: skip
    names = {road.san: road.opening and road.opening.name for road in found}
    assert names["e4", "Nc6", "Nf3", "e5"] == "Nimzowitsch Defence"


def test_an_order_that_is_not_legal_is_none() -> None:
    graph = Graph(Lesson.from_text("1. e4 d5 2. exd5 *"))
    assert roads(graph, graph.order[-1]) == []


def test_an_open_reply_may_come_back_by_the_lessons_own_moves() -> None:
    of = course("1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 *")
    key = next(key for key in of.order if of.graph.place[key].label == "3. Bc4")
    (found,) = [one for one in returns(of, key) if one.reply.san == "Nf6"]
    assert found.line == ("Nf6", "O-O", "Bc5")
    assert found.into.label == "4... Nf6"


def test_where_the_taught_side_is_to_move_nothing_comes_back() -> None:
    of = course("1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 *")
    assert returns(of, of.order[0]) == []
