"""`lineproof engine match`: plays two programs against each other, to measure a change."""

from __future__ import annotations

import argparse
import math
from typing import TYPE_CHECKING

from .failures import CommandError
from .output import say, write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from lineproof.engine import MatchSummary

    from .shared import Commands

FORMAT = 1
"""Of the JSON."""


def add(commands: Commands) -> None:
    command = add_command(commands, "match", "play two UCI programs against each other", match)
    for side, role in (("one", "the program whose gain is measured"), ("other", "its opponent")):
        command.add_argument(
            f"--{side}", required=True, metavar="COMMAND", help=f"{role}, as a shell would be told"
        )
        command.add_argument(
            f"--{side}-option",
            action="append",
            default=[],
            metavar="NAME=VALUE",
            help="set before the first game; may be repeated",
        )
    command.add_argument(
        "--pairs", required=True, metavar="N", help="pairs of games, both from one opening"
    )
    pace = command.add_mutually_exclusive_group(required=True)
    pace.add_argument("--nodes", metavar="N", help="nodes a move")
    pace.add_argument("--movetime", metavar="MS", help="milliseconds a move")
    pace.add_argument(
        "--clock", metavar="BASE+INC", help="seconds a game and a move, such as 10+0.1"
    )
    command.add_argument(
        "--sprt",
        metavar="ELO0,ELO1[,ALPHA,BETA]",
        help="stop as soon as the pairs tell one from the other (0.05 each)",
    )
    command.add_argument("--seed", metavar="S", help="another seed gives other openings (1)")
    command.add_argument(
        "--grace", metavar="MS", help="by how much a program may overstep its time (20)"
    )
    command.add_argument("--at-once", metavar="K", help="games at a time (one a processor core)")
    command.add_argument("--games", metavar="FILE", help="write the games, one a line")
    command.add_argument(
        "--to-the-end",
        action="store_true",
        help="play on when both programs agree how it will end",
    )


def match(given: argparse.Namespace) -> int:
    from lineproof.engine import MatchSettingError, play_match

    from .waiting import wait_for

    words = _words(given)
    try:
        summary = wait_for(lambda: play_match(words, say))
    except MatchSettingError as error:
        raise CommandError(f"{error}; see `lineproof engine match --help`") from error
    if given.json:
        write_json(_plain(summary))
    else:
        write(summary.report)
    return 0


def _words(given: argparse.Namespace) -> list[str]:
    """The words that say the same to the engine's own program."""
    words = ["--to-the-end"] if given.to_the_end else []
    for name, values in (
        ("--one", [given.one]),
        ("--other", [given.other]),
        ("--one-option", given.one_option),
        ("--other-option", given.other_option),
        *((f"--{name.replace('_', '-')}", [getattr(given, name)]) for name in _SINGLE),
    ):
        for value in values:
            if value is not None:
                words += [name, value]
    return words


_SINGLE = ("pairs", "nodes", "movetime", "clock", "sprt", "seed", "grace", "at_once", "games")


def _plain(summary: MatchSummary) -> dict[str, object]:
    """Plain values, in JSON's numbers: an infinite Elo is null."""
    lost, drawn, won = summary.games
    ratio = summary.ratio
    one, other = summary.failures
    return {
        "format": FORMAT,
        "games": {"won": won, "drawn": drawn, "lost": lost},
        "pairs": summary.pairs,
        "elo": _finite(summary.elo),
        "elo_interval": summary.elo_interval and [_finite(bound) for bound in summary.elo_interval],
        "sprt": ratio
        and {"ratio": ratio[0], "bounds": [ratio[1], ratio[2]], "accepted": summary.accepted},
        "endings": dict(summary.endings),
        "failures": {"one": dict(one), "other": dict(other)},
        "plies": summary.plies,
        "seconds": round(summary.seconds, 3),
    }


def _finite(value: float | None) -> float | None:
    return round(value, 2) if value is not None and math.isfinite(value) else None
