"""`--report FILE.html`: what was found as one HTML file."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import CommandError
from .shared import own

if TYPE_CHECKING:
    from collections.abc import Callable

    from lineproof.lesson import Lesson


def add_report_option(command: argparse.ArgumentParser) -> None:
    """Adds `--report`."""
    command.add_argument(
        "--report", metavar="FILE.html", type=Path, help="write a report as one HTML file"
    )


def check_report(lesson: Lesson, file: Path | None, *others: Path) -> None:
    """:raises CommandError: when the report would take the place of one of the lesson's own files. others: files that are read beside it."""
    if file is None:
        return
    if file.exists() and any(other.exists() and file.samefile(other) for other in others):
        raise CommandError(
            f"{file}: this file is read, and a report would destroy it; choose another place with --report"
        )
    if own(lesson, file):
        raise CommandError(
            f"{file}: this belongs to the lesson, and a report would destroy it;"
            " choose another place with --report"
        )


def written(save: Callable[[Path], None], file: Path) -> str | None:
    """Writes the report; gives the line to say when that cannot be done."""
    try:
        save(file)
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        return (
            f"{file}: the report cannot be written ({reason}); choose another place with --report"
        )
    return None


def where_it_is(file: Path) -> str:
    """The line that says where the report is."""
    from lineproof.report.plain import plain

    return f"The report is in {plain(str(file))}.\n"
