"""The pause points as EPD, read back by python-chess and by our own reader."""

from __future__ import annotations

from dataclasses import replace

import chess

from lineproof.engine import epd as own
from lineproof.facade import Lesson
from lineproof.publish import Choices, Found
from lineproof.publish.products.epd import make

from .lessons import TRAP


def records(lesson: Lesson, found: Found) -> list[str]:
    (data,) = make(lesson, found, Choices()).values()
    return data.decode().splitlines()


def test_every_pause_point_is_there_in_the_order_of_the_lesson(trap: Lesson, found: Found) -> None:
    read = [chess.Board.from_epd(record) for record in records(trap, found)]
    pauses = sorted(found.studied.pauses, key=lambda pause: pause.place.index)
    assert len(read) >= 2
    assert [board.fen() for board, _ in read] == [pause.place.board.fen for pause in pauses]
    for (board, operations), pause in zip(read, pauses, strict=True):
        assert [board.san(move) for move in operations["bm"]] == list(pause.safe)
        assert [move.uci() for move in operations["pv"]] == list(pause.line)
        assert operations["c0"] == pause.point
        assert operations["c1"] == f"grade {pause.grade} of 5"
        assert operations["c2"] == f"after {pause.place.label}"


def test_the_move_that_mates_in_legals_trap_is_asked_for(trap: Lesson, found: Found) -> None:
    """Hooper and Whyld, The Oxford Companion to Chess (from memory): 6. Bxf7+ Ke7 7. Nd5#."""
    (record,) = [line for line in records(trap, found) if "after 5... Bxd1" in line]
    assert " bm Bxf7+; " in record and " pv Bxf7+ Ke7 Nd5#;" in record


def test_our_own_reader_takes_every_record(trap: Lesson, found: Found) -> None:
    pauses = sorted(found.studied.pauses, key=lambda pause: pause.place.index)
    for record, pause in zip(records(trap, found), pauses, strict=True):
        (problem,) = own.read(record)
        assert problem.fen == pause.place.board.fen
        assert len(problem.best) == len(pause.safe)


def test_a_title_with_quotation_marks_stays_one_string(trap: Lesson, found: Found) -> None:
    text = TRAP.replace('The trap \\"at sea\\" <b>now</b>', 'The \\"big\\" trap; at sea \\\\')
    named = Lesson.from_text(text, name="trap.pgn", side="white")
    assert named.games[0].tag("Event") == 'The "big" trap; at sea \\'
    for number, record in enumerate(records(named, found), 1):
        _, operations = chess.Board.from_epd(record)
        assert operations["id"] == f"The ”big” trap; at sea /: pause point {number}"


def test_opcodes_stand_in_the_order_of_the_alphabet(trap: Lesson, found: Found) -> None:
    for record in records(trap, found):
        _, operations = chess.Board.from_epd(record)
        assert list(operations) == sorted(operations)


def test_a_lesson_without_pause_points_gives_no_file(trap: Lesson, found: Found) -> None:
    assert make(trap, Found(found.proof, replace(found.studied, pauses=())), Choices()) == {}
