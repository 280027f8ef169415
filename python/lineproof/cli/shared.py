"""Options and types that several commands have."""

from __future__ import annotations

import argparse
import os
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import Any

    from lineproof.lesson import Lesson

    Commands = argparse._SubParsersAction[Any]


def add_command(
    commands: Commands, name: str, summary: str, run: Callable[[argparse.Namespace], int]
) -> argparse.ArgumentParser:
    """Adds a command with `--json`."""
    command: argparse.ArgumentParser = commands.add_parser(
        name, help=summary, description=f"{summary[0].upper()}{summary[1:]}.", allow_abbrev=False
    )
    command.set_defaults(run=run)
    command.add_argument("--json", action="store_true", help="print JSON")
    return command


def add_lesson_settings(command: argparse.ArgumentParser) -> None:
    """Adds the settings of a lesson."""
    command.add_argument("--side", choices=("white", "black"), help="the side that is taught")
    command.add_argument(
        "--audience", type=int, metavar="RATING", help="rating of the audience, 400 to 2900"
    )


def add_engine_option(command: argparse.ArgumentParser) -> None:
    """Adds `--engine PATH`; `outside.opened(given.engine)` opens what it names."""
    command.add_argument(
        "--engine",
        metavar="PATH",
        help="a UCI engine of yours, which answers the searches; its answers may differ from run to run",
    )


def add_effort_option(command: argparse.ArgumentParser, default: str) -> None:
    """Adds `--effort`."""
    command.add_argument(
        "--effort",
        choices=("sketch", "normal", "thorough"),
        default=default,
        help=f"how much each search may spend ({default})",
    )


def check_audience(audience: int | None) -> None:
    """:raises CommandError: when the rating is out of range."""
    from lineproof.lesson.settings import AUDIENCES

    from .failures import CommandError

    low, high = AUDIENCES
    if audience is not None and not low <= audience <= high:
        raise CommandError(f"--audience is {audience}; give a rating from {low} to {high}")


def own(lesson: Lesson, file: Path) -> bool:
    """Whether a file is one of a lesson's own, by whatever path, link or hard link it is reached."""
    from lineproof.lesson.lesson import HOME, SETTINGS

    files = [path for path in (lesson.path, lesson.folder and lesson.folder / SETTINGS) if path]
    real = Path(os.path.realpath(file))
    if HOME in real.parts or any(real == Path(os.path.realpath(path)) for path in files):
        return True
    if lesson.home is not None and real.is_relative_to(os.path.realpath(lesson.home)):
        return True
    return any(path.exists() and real.exists() and real.samefile(path) for path in files)
