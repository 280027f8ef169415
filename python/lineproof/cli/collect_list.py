"""`lineproof collect list`: the collections, and where their games came from."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from .failures import CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(commands, "list", "list collections and their sources", run)
    command.add_argument("--collection", metavar="NAME", help="only this one")


def run(given: argparse.Namespace) -> int:
    from lineproof.collection import Collection, CollectionError, NoSuchCollectionError
    from lineproof.collection.collection import collections
    from lineproof.report.collected import sources
    from lineproof.report.collected_json import list_json

    try:
        found = list(collections())
        if given.collection is not None:
            wanted = Collection.open(given.collection)
            if not wanted.exists:
                raise NoSuchCollectionError(
                    f"there is no collection {given.collection}; `lineproof collect list` names them"
                )
            found = [wanted]
        if given.json:
            write_json(list_json(found))
        elif found:
            write("\n".join(sources(one) for one in found))
        else:
            write("There is no collection yet; make one with: lineproof collect add FILE\n")
    except CollectionError as error:
        raise CommandError(str(error)) from error
    return 0
