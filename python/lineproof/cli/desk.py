"""`lineproof desk`: opens a lesson in the browser, to be written and checked at once."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .failures import CommandError
from .output import write
from .shared import add_engine_option

if TYPE_CHECKING:
    from .shared import Commands

PORTS = (0, 65535)


def add(commands: Commands) -> None:
    summary = "write a lesson in the browser, and see at once what holds"
    command: argparse.ArgumentParser = commands.add_parser(
        "desk",
        help=summary,
        description=f"{summary[0].upper()}{summary[1:]}. It runs on this machine only, until Ctrl-C.",
        allow_abbrev=False,
    )
    command.set_defaults(run=run)
    command.add_argument(
        "lesson",
        metavar="LESSON",
        type=Path,
        nargs="?",
        help="a lesson folder or a PGN file; without, choose one there",
    )
    command.add_argument(
        "--port", type=int, default=0, metavar="N", help="where to listen (one that is free)"
    )
    command.add_argument("--no-browser", action="store_true", help="only print the address")
    command.add_argument(
        "--effort",
        choices=("sketch", "normal", "thorough"),
        default="normal",
        help="how much each search may spend (normal)",
    )
    command.add_argument(
        "--collection", metavar="NAME", help="a collection whose games are counted"
    )
    add_engine_option(command)


def run(given: argparse.Namespace) -> int:
    if not PORTS[0] <= given.port <= PORTS[1]:
        raise CommandError(f"--port is {given.port}; give a number from 0 to {PORTS[1]}")
    try:
        from lineproof.desk.lessons import Lessons
        from lineproof.desk.serve import PortError, serve
    except ModuleNotFoundError as error:
        if (error.name or "").split(".")[0] not in {"fastapi", "pydantic", "starlette", "uvicorn"}:
            raise
        raise CommandError(
            "lineproof desk: some packages are missing; install them with `pip install 'lineproof[desk]'`"
        ) from error
    from lineproof.collection import CollectionError
    from lineproof.desk.ways import collection_of
    from lineproof.lesson import LessonError
    from lineproof.proof import Effort

    from .outside import opened

    try:
        with opened(given.engine) as engine:
            with collection_of(given.collection or ""):
                lessons = Lessons(Effort(given.effort), engine, given.collection or "")
            if given.lesson is not None:
                lessons.open(given.lesson)
            serve(lessons, port=given.port, browser=not given.no_browser, started=_started)
    except (LessonError, CollectionError) as error:
        raise CommandError(str(error)) from error
    except PortError as error:
        reason = (error.strerror or str(error)).lower()
        raise CommandError(
            f"--port {given.port}: it cannot be had ({reason}); choose another, or leave it out"
        ) from error
    return 0


def _started(address: str) -> None:
    write(f"The desk is at {address}\nStop it with Ctrl-C; everything is saved as you go.\n")
