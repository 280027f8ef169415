"""Whatever is edited: it can all be taken back and done again, the file has it, and the next run finds it."""

from __future__ import annotations

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from lineproof.desk.opened import OpenLesson
from lineproof.desk.wire import (
    AddComment,
    AddLine,
    ChangeWords,
    Cut,
    Decide,
    Edited,
    Promote,
    PutDiagram,
    Redo,
    RemoveComment,
    SetLesson,
    SetMarks,
    SetSource,
    Source,
    Undo,
)
from lineproof.lesson.errors import EditError, SettingsError

from .lessons import folder

WORDS = st.text(st.characters(codec="utf-8", exclude_categories=["Cc"]), max_size=20)
NUMBERS = st.integers(0, 40)
KINDS = ["move", "cut", "promote", "words", "comment", "remove", "marks", "undo", "redo",
         "about", "decide", "source", "diagram"]  # fmt: skip


def edit(opened: OpenLesson, kind: str, number: int, words: str) -> Edited | None:
    """One edit of those that are drawn; None where it cannot be made."""
    lesson, names = opened.lesson, opened.names
    place = lesson.places[number % len(lesson.places)]
    legal = place.board.legal_moves()
    comment = number % max(1, len(lesson.comments))
    name = names.of(place)
    made = {
        "move": lambda: AddLine(op="add_line", place=name, moves=[legal[number % len(legal)]]),
        "cut": lambda: Cut(op="cut", place=name),
        "promote": lambda: Promote(op="promote", place=name),
        "words": lambda: ChangeWords(op="change_words", comment=comment, text=words),
        "comment": lambda: AddComment(op="add_comment", place=name, text=words),
        "remove": lambda: RemoveComment(op="remove_comment", comment=comment),
        "marks": lambda: SetMarks(op="set_marks", place=name, nags=[number % 7]),
        "about": lambda: SetLesson(
            op="settings",
            title=words.strip() or "None",
            side=("white", "black")[number % 2],
            audience=1000 + number,
        ),
        "decide": lambda: Decide(
            op="decide",
            sort="met",
            place=name,
            about="e7e5",
            decided=("later", "dismissed", None)[number % 3],
        ),
        "source": lambda: SetSource(
            op="source",
            place=name,
            source=Source(sort="book", words=words) if number % 3 else None,
        ),
        "diagram": lambda: PutDiagram(op="diagram", place=name, wanted=number % 4 > 0),
        "undo": lambda: Undo(op="undo"),
        "redo": lambda: Redo(op="redo"),
    }[kind]()
    try:
        return opened.edit(opened.version, "", made)
    except (EditError, SettingsError):
        return None


def stand(opened: OpenLesson) -> tuple[object, ...]:
    """All that the author can change: the text and the settings."""
    settings = opened.lesson.settings
    return (
        opened.lesson.text,
        settings.title,
        settings.side,
        settings.audience,
        settings.decisions,
    )


@settings(max_examples=25, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(KINDS), NUMBERS, WORDS), max_size=25))
def test_any_edits_can_be_taken_back_and_are_found_again(
    edits: list[tuple[str, int, str]],
) -> None:
    with tempfile.TemporaryDirectory() as base:
        path = folder(Path(base))
        opened = OpenLesson("1", path)
        first = stand(opened)
        for kind, number, words in edits:
            before = stand(opened)
            done = edit(opened, kind, number, words)
            if done is None:
                assert stand(opened) == before
            else:
                assert done.at in {place.id for place in done.lesson.places}
                assert len({place.id for place in done.lesson.places}) == len(done.lesson.places)
        last, shown = stand(opened), opened.shown()
        opened.close()
        assert (path / "lines.pgn").read_bytes() == opened.lesson.text.encode()

        again = OpenLesson("1", path)
        assert stand(again) == last
        assert (again.shown().undo, again.shown().redo) == (shown.undo, shown.redo)
        for _ in range(shown.undo):
            assert edit(again, "undo", 0, "")
        assert stand(again) == first
        for _ in range(shown.undo):
            assert edit(again, "redo", 0, "")
        assert stand(again) == last
        again.close()
