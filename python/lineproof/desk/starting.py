"""Starting: how a lesson comes on the desk when none was given on the command line."""

from __future__ import annotations

import tempfile
from importlib.resources import as_file, files
from pathlib import Path

from lineproof.engine import Board
from lineproof.lesson.folder import new
from lineproof.lesson.lesson import LINES

from .folders import named
from .importing import together
from .wire import DemoLesson, NewLesson, OpenLessonAt

FROM_POSITION = """[Event "{title}"]
[Result "*"]
[SetUp "1"]
[FEN "{fen}"]

*
"""
"""The lines of a lesson that begins with a position (PGN standard, 9.7)."""
DEMO_AUDIENCE = 1400
"""Rating of the audience of the demo lesson, which is taught for White."""


def start(asked: OpenLessonAt | NewLesson | DemoLesson) -> Path:
    """Where the lesson is, after it is made where it is new.

    :raises LessonError: when it cannot be made; nothing of it is left.
    :raises FenError: when its position is none.
    """
    path = named(asked.path)
    match asked:
        case OpenLessonAt():
            pass
        case DemoLesson():
            with as_file(files(__package__).joinpath("demo", LINES)) as lines:
                new(path, lines, "white", DEMO_AUDIENCE)
        case NewLesson():
            _make(path, asked)
    return path


def _make(path: Path, asked: NewLesson) -> None:
    data, title = None, asked.title.strip() or None
    if asked.files is not None:
        data = together(asked.files)
    elif asked.fen is not None:
        event = (title or path.name).replace("\\", "\\\\").replace('"', '\\"')
        data = FROM_POSITION.format(title=event, fen=Board(asked.fen).fen).encode()
    if data is None:
        new(path, None, asked.side, asked.audience, title)
        return
    with tempfile.TemporaryDirectory() as folder:
        lines = Path(folder) / LINES
        lines.write_bytes(data)
        new(path, lines, asked.side, asked.audience, title)
