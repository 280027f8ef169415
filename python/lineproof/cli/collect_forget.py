"""`lineproof collect forget`: takes the games of a source out of a collection."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from .collected import add_collection_option, opened
from .failures import STOPPED, CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(commands, "forget", "take out the games that only this source holds", run)
    command.add_argument("source", metavar="SOURCE", help="as `lineproof collect list` names it")
    add_collection_option(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.collection import NoSuchCollectionError
    from lineproof.engine import Stop
    from lineproof.report.collected_json import forget_json
    from lineproof.report.counted import counted
    from lineproof.report.plain import plain

    from .waiting import wait_for

    stop = Stop()
    with opened(given) as collection:
        if not collection.exists:
            raise NoSuchCollectionError(
                f"there is no collection {collection.name}; `lineproof collect list` names them"
            )
        try:
            gone = wait_for(lambda: collection.forget(given.source, stop=stop))
        except KeyboardInterrupt:
            stop.set()
            raise CommandError("Stopped. The collection is as it was.", STOPPED) from None
        left = collection.games
    if given.json:
        write_json(forget_json(collection.name, given.source, gone, left))
    else:
        write(
            f"Took out {counted(gone, 'game')} that only {plain(given.source)} holds;"
            f" {plain(collection.name)} now has {counted(left, 'game')}.\n"
        )
    return 0
