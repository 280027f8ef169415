"""What words beside a position name."""

from __future__ import annotations

import pytest

from lineproof.lesson import Lesson
from lineproof.lesson.graph import Graph
from lineproof.replies.words import for_all, named, names


def at(words: str) -> tuple[Graph, int]:
    """After 1. e4 e5 2. Nf3 with words there; Black is to move."""
    graph = Graph(Lesson.from_text(f"1. e4 e5 2. Nf3 {{{words}}} Nc6 3. Bb5 *", side="white"))
    key = next(key for key in graph.order if graph.place[key].label == "2. Nf3")
    return graph, key


@pytest.mark.parametrize(
    ("words", "san", "said"),
    [
        ("On 2... d6 we push the pawn.", "d6", True),
        ("On Nf6 we take.", "Nf6", True),
        ("After 2... d6 3. d4 Nf6 he is cramped.", "Nf6", True),  # a line's later move without a number
        ("Later comes 4... Nf6.", "Nf6", False),  # of another move number
        ("White's 2. d4 is another story.", "d4", False),  # of the other side
        ("The pawn on d6 would be in the way.", "d6", False),  # a square
        ("He may push his pawn to d6.", "d6", True),
    ],
)  # fmt: skip
def test_a_move_is_named_with_its_number_or_without(words: str, san: str, said: bool) -> None:
    graph, key = at(words)
    assert names(named(graph, key), graph.place[key].board, san) is said


@pytest.mark.parametrize(
    ("words", "answers"),
    [
        ("Anything else we answer with 3. d4.", {"d4"}),
        ("To everything\nelse the reply is Bc4 or d4. Later 5. c3 follows.", {"Bc4", "d4"}),
        ("Whatever else he plays, we castle.", set()),
        ("Any other move is met by development.", set()),
        ("On other replies we castle.", set()),
        ("The other knight is better.", None),
        ("On 2... d6 we play 3. d4.", None),
    ],
)
def test_words_that_answer_all_else_may_name_the_answer(
    words: str, answers: set[str] | None
) -> None:
    graph, key = at(words)
    found = for_all(graph, key)
    assert (None if found is None else {move.san for move in found}) == answers
