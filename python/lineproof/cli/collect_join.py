"""`lineproof collect join`: takes in collections that were built apart."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .collected import add_collection_option, opened
from .failures import STOPPED, CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(
        commands, "join", "take in the games of collections that were built apart", run
    )
    command.add_argument(
        "folders", metavar="FOLDER", type=Path, nargs="+", help="of another collection"
    )
    command.add_argument("--threads", type=int, help="threads that read games (one for each core)")
    add_collection_option(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.engine import Stop
    from lineproof.report.collected import added
    from lineproof.report.collected_json import added_json

    from .waiting import wait_for

    if given.threads is not None and not 1 <= given.threads <= 256:
        raise CommandError(f"--threads is {given.threads}; give 1 to 256")
    stop = Stop()
    with opened(given) as collection:
        try:
            report = wait_for(
                lambda: collection.join(given.folders, threads=given.threads, stop=stop)
            )
        except KeyboardInterrupt:
            stop.set()
            raise CommandError(
                "Stopped. Either all games of these collections are in or none; the same command again adds what is missing.",
                STOPPED,
            ) from None
    if given.json:
        write_json(added_json(report, collection.name))
    else:
        write(added(report, collection.name))
    return 0
