"""`lineproof collect add`: reads games into a collection."""

from __future__ import annotations

import argparse
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from .collected import add_collection_option, opened
from .failures import STOPPED, CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from lineproof.collection import Added, Collection

    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(commands, "add", "read the games of PGN files into a collection", run)
    command.add_argument(
        "files",
        metavar="FILE",
        nargs="+",
        help="PGN, plain or packed by gzip, bzip2 or zstd; - for standard input",
    )
    command.add_argument(
        "--source", metavar="NAME", help="the name to list and forget them by (the path of each)"
    )
    command.add_argument("--threads", type=int, help="threads that read games (one for each core)")
    add_collection_option(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.report.collected import added
    from lineproof.report.collected_json import added_json

    if given.threads is not None and not 1 <= given.threads <= 256:
        raise CommandError(f"--threads is {given.threads}; give 1 to 256")
    paths = [None if name == "-" else Path(name) for name in given.files]
    for path in paths:
        _check(path)
    with opened(given) as collection:
        report = _add(given, collection, paths)
    unread = next((file for file in report.files if file.failure and not file.bytes), None)
    if given.json:
        write_json(added_json(report, collection.name))
    else:
        write(added(report, collection.name))
    if unread is not None:
        raise CommandError(
            f"{unread.name}: no game could be read ({unread.failure}); choose a file of games in PGN"
        )
    return 0


def _check(path: Path | None) -> None:
    """Refuses at once what is no file, before long work on others begins."""
    if path is None:
        return
    try:
        if path.is_dir():
            raise CommandError(f"{path}: this is a folder; give the files in it")
        with path.open("rb"):
            pass
    except FileNotFoundError as error:
        raise CommandError(f"{path}: there is no such file; check the name") from error
    except OSError as error:
        reason = (error.strerror or str(error)).lower()
        raise CommandError(
            f"{path}: it cannot be read ({reason}); check who may read it"
        ) from error
    except ValueError as error:
        raise CommandError(f"{path}: no file can have such a name; check the name") from error


def _add(given: argparse.Namespace, collection: Collection, paths: list[Path | None]) -> Added:
    from lineproof.engine import Stop

    from .progress import progress
    from .waiting import wait_for

    stop = Stop()
    total = sum(path.stat().st_size for path in paths if path is not None and path.is_file())
    name = given.files[0] if len(given.files) == 1 else f"{len(given.files)} files"
    with progress(name, "Reading games", "byte") as line:

        def tell(read: int, games: int) -> None:  # noqa: ARG001 - the line shows bytes
            if line is not None and total:
                line(min(read, total), total)

        try:
            return wait_for(
                lambda: collection.add(
                    paths,
                    source=given.source,
                    threads=given.threads,
                    stop=stop,
                    progress=None if line is None or not sys.stderr.isatty() else tell,
                )
            )
        except KeyboardInterrupt:
            stop.set()
            raise CommandError(
                "Stopped. Either all games of these files are in or none; the same command again adds what is missing.",
                STOPPED,
            ) from None
