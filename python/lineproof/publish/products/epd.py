"""The pause points as EPD: positions with the move to find, for any program that sets exercises.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, section 16.2 (from memory).
"""

from __future__ import annotations

from lineproof.lesson import Lesson
from lineproof.publish.naming import slug_of
from lineproof.publish.product import Choices, Files, Found, Product
from lineproof.replies.pauses import Pause
from lineproof.report.plain import plain
from lineproof.report.title import title_of


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:  # noqa: ARG001 - one shape for all
    pauses = sorted(found.studied.pauses, key=lambda pause: pause.place.index)
    title = title_of(lesson)
    records = [_record(pause, number, title) for number, pause in enumerate(pauses, 1)]
    return {f"{slug_of(lesson)}-pauses.epd": "".join(records).encode()} if records else {}


def _record(pause: Pause, number: int, title: str) -> str:
    """One line; opcodes in the order of the alphabet."""
    board = pause.place.board
    *position, halves, moves = board.fen.split()
    operations = {
        "bm": " ".join(pause.safe),
        "c0": _string(pause.point),
        "c1": _string(f"grade {pause.grade} of 5"),
        "c2": _string(f"after {pause.place.label}" if pause.place.ply else "at the start"),
        "fmvn": moves,
        "hmvc": halves,
        "id": _string(f"{title}: pause point {number}"),
        "pv": " ".join(board.san_line(list(pause.line))),
    }
    said = (f"{opcode} {operand};" for opcode, operand in operations.items() if operand)
    return f"{' '.join(position)} {' '.join(said)}\n"


def _string(text: str) -> str:
    """A string of EPD, which has no way to hold its own quotation mark."""
    return '"{}"'.format(plain(text).replace('"', "”").replace("\\", "/"))


PRODUCT = Product("epd", "the pause points, with the move to find", make, needs_study=True)
