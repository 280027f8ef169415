"""What the commands of collections have in common."""

from __future__ import annotations

import argparse
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from .failures import CommandError

if TYPE_CHECKING:
    from lineproof.collection import Collection


def add_collection_option(command: argparse.ArgumentParser) -> None:
    """Adds `--collection NAME`."""
    command.add_argument(
        "--collection", metavar="NAME", default="games", help="the collection's name (games)"
    )


@contextmanager
def opened(given: argparse.Namespace) -> Iterator[Collection]:
    """The collection that is meant; its errors end the command."""
    from lineproof.collection import Collection, CollectionError

    try:
        with Collection.open(given.collection) as collection:
            yield collection
    except CollectionError as error:
        raise CommandError(str(error)) from error
