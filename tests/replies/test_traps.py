"""Classical traps: the losing move is a slip, and after it the book's move is a pause point's only safe one.

The lines and their source: tests/traps. What the study does not find so, at the rating given and at sketch effort where nothing else is said, is marked with
the reason.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from lineproof.engine import Stop
from lineproof.lesson import Lesson, Place
from lineproof.lesson.graph import Graph
from lineproof.proof import Effort, EvidenceStore
from lineproof.proof.asker import Asker
from lineproof.replies import Replies
from lineproof.replies.course import Course
from lineproof.replies.pauses import asked
from lineproof.replies.slips import slips

TRAPS: dict[str, dict[str, Any]] = {
    trap["name"]: trap
    for trap in json.loads(
        (Path(__file__).parents[1] / "traps" / "traps.json").read_text(encoding="utf-8")
    )
}
SMALL = "the search thinks that it costs fewer than 15 points"
PLAIN = "no wrong answer is likely: nearly all take back, or mate"


def case(
    name: str,
    losing: str,
    book: str,
    *,
    slip: str = "",
    pause: str = "",
    rating: int = 1500,
    effort: Effort = Effort.SKETCH,
) -> Any:
    """slip, pause: why the study does not find it. effort: at which the pause point is found."""
    return pytest.param(name, losing, book, slip, pause, rating, effort, id=name)


CASES = [
    case("Légal's mate", "5... Bxd1", "Bxf7+"),
    case("Noah's Ark trap", "8. Qxd4", "c5"),
    case("Elephant trap", "6. Nxd5", "Nxd5", pause=PLAIN),
    case("Lasker trap in the Albin Counter-Gambit", "6. Bxb4", "exf2+", pause=PLAIN),
    case("Kieninger trap in the Budapest Gambit", "8. axb4", "Nd3#", slip="the model thinks that 3 in 100 overlook a mate in one"),
    case("Fishing Pole trap", "6. hxg4", "hxg4", pause=PLAIN),
    case("Rubinstein trap", "12... f5", "Nxd5", slip=SMALL, effort=Effort.NORMAL),
    case("Monticelli trap", "9... Nxc3", "Ng5", slip=SMALL, effort=Effort.NORMAL),
    case("Cambridge Springs trap", "9. Bd3", "dxc4", slip="the model thinks that 2 in 100 play it"),
    case("Tarrasch trap in the Open Spanish", "11... Qd7", "Nxe6"),
    case("Tarrasch trap in the Steinitz Defence", "7... O-O", "Bxc6", slip=SMALL),
    case("Fried Liver attack", "5... Nxd5", "Nxf7", slip=SMALL),
    case("Marshall trap", "10. Re1", "Bxh2+", slip=SMALL),
    case("Scholar's mate", "3... Nf6", "Qxf7#", pause=PLAIN, rating=900),
    case("Fool's mate", "2. g4", "Qh4#", slip="the model thinks that 1 in 100 play it", pause=PLAIN, rating=900),
]  # fmt: skip


def course(
    name: str, losing: str, rating: int, effort: Effort = Effort.SKETCH
) -> tuple[Course, Place]:
    trap = TRAPS[name]
    text = trap["pairs"][0]["true"]["pgn"]
    lesson = Lesson.from_text(text, side=trap["taught"], audience=rating)
    graph = Graph(lesson)
    store = EvidenceStore(None)
    ask = Asker(store, effort.steps[0], Stop())
    found = Course(graph, graph.order[0], trap["taught"], Replies(rating, store), ask)
    return found, next(place for place in lesson.places if place.label == losing)


@pytest.mark.parametrize(("name", "losing", "book", "slip", "pause", "rating", "effort"), CASES)
def test_the_losing_move_is_a_slip(
    name: str, losing: str, book: str, slip: str, pause: str, rating: int, effort: Effort
) -> None:
    of, place = course(name, losing, rating)
    assert place.parent is not None
    found = {one.reply.uci: one for one in slips(of, place.parent.key)}
    if slip:
        assert place.uci not in found
        pytest.xfail(slip)
    one = found[place.uci or ""]
    assert one.cost.points >= 15
    assert one.cost.line[1] == place.board.parse_san(book)


@pytest.mark.parametrize(("name", "losing", "book", "slip", "pause", "rating", "effort"), CASES)
def test_its_refutation_is_a_pause_point(
    name: str, losing: str, book: str, slip: str, pause: str, rating: int, effort: Effort
) -> None:
    of, place = course(name, losing, rating, effort)
    found, _ = asked(of, place.key)
    if pause:
        assert found is None or found.safe != (book,)
        pytest.xfail(pause)
    assert found is not None
    assert (found.best, found.safe) == (book, (book,))
