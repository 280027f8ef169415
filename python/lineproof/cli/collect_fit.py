"""`lineproof collect fit`: fits the model of natural moves to a collection, or says how well it foretells the moves of a file."""

from __future__ import annotations

import argparse
from pathlib import Path
from typing import TYPE_CHECKING

from .collected import add_collection_option, opened
from .failures import STOPPED, CommandError
from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from lineproof.collection import Collection
    from lineproof.replies.observed import Observed

    from .shared import Commands


def add(commands: Commands) -> None:
    command = add_command(
        commands, "fit", "fit the model of natural moves to the games of a collection", run
    )
    command.add_argument(
        "--check",
        metavar="FILE",
        type=Path,
        help="fit nothing: say how well the model foretells the moves of a PGN file",
    )
    command.add_argument(
        "--positions", metavar="N", type=int, default=400, help="positions that are looked at (400)"
    )
    add_collection_option(command)


def run(given: argparse.Namespace) -> int:
    from lineproof.replies import Natural, NaturalError
    from lineproof.replies.fitting import FittingError, fitted
    from lineproof.replies.natural import FITTED
    from lineproof.replies.observed import OwnGamesError
    from lineproof.report.fitted import fit_json, quality_json, told_fit, told_quality
    from lineproof.report.writing import write_whole

    if given.positions < 1:
        raise CommandError(f"--positions is {given.positions}; give a number from 1 on")
    try:
        with opened(given) as collection:
            natural = Natural.near(collection if collection.exists else None)
            if given.check is not None:
                found = _of_file(given)
                if not found:
                    raise CommandError(
                        f"{given.check}: no position in it has 20 games of one rating, so nothing can be said"
                    )
                from lineproof.replies.observed import quality

                of = quality(natural, found)
                if given.json:
                    write_json(quality_json(of, natural, str(given.check)))
                else:
                    write(told_quality(of, natural, str(given.check)))
                return 0
            fit = fitted(
                _observed(collection, given),
                Natural.shipped(),
                f"fitted to {collection.games:,} games of the collection {collection.name}",
            )
            file = collection.folder / FITTED
            try:
                write_whole(file, fit.natural.written().encode())
            except OSError as error:
                raise CommandError(
                    f"{file}: {error.strerror or error}; nothing was changed"
                ) from error
    except OwnGamesError as error:
        raise CommandError(f"{given.check or given.collection}: {error}") from error
    except (FittingError, NaturalError) as error:
        raise CommandError(str(error)) from error
    except KeyboardInterrupt:
        raise CommandError("Stopped. The weights are as they were.", STOPPED) from None
    write_json(fit_json(fit, str(file))) if given.json else write(told_fit(fit, str(file)))
    return 0


def _observed(collection: Collection, given: argparse.Namespace) -> list[Observed]:
    from lineproof.proof import EvidenceStore
    from lineproof.replies.observed import observed

    from .progress import progress

    with progress(collection.name, "Looking", "position") as tell:
        return observed(collection, EvidenceStore(None), most=given.positions, progress=tell)


def _of_file(given: argparse.Namespace) -> list[Observed]:
    """What a file says, by a collection that is thrown away."""
    import tempfile

    from lineproof.collection import Collection
    from lineproof.replies.observed import refuse_own

    with (
        tempfile.TemporaryDirectory(prefix="lineproof-") as folder,
        Collection.open("check", folder) as games,
    ):
        failure = games.add([given.check]).files[0].failure
        if failure is not None:
            raise CommandError(f"{given.check}: it cannot be read ({failure})")
        refuse_own(given.check)
        return _observed(games, given)
