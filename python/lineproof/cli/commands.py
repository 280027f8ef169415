"""The commands and their options."""

from __future__ import annotations

import argparse
import shutil
from typing import Any, NoReturn

from . import (
    ask,
    collect,
    compare,
    desk,
    engine,
    follow,
    new,
    opinion,
    order,
    prove,
    publish,
    unanswered,
    weigh,
    where,
)
from .failures import CommandError
from .output import write
from .width import NARROWEST


class _Help(argparse.HelpFormatter):
    """Never narrower than can be read."""

    def __init__(self, prog: str) -> None:
        # two columns are left free, as the base class does without a width
        super().__init__(prog, width=max(shutil.get_terminal_size().columns, NARROWEST) - 2)


class Parser(argparse.ArgumentParser):
    """Says what is wrong in one line, and where the help is."""

    def __init__(self, **settings: Any) -> None:
        super().__init__(**settings, formatter_class=_Help)

    def error(self, message: str) -> NoReturn:
        raise CommandError(f"{self.prog}: {message}; see `{self.prog} --help`")

    def print_help(self, file: object = None) -> None:  # noqa: ARG002 - as it is called
        write(self.format_help())


def parser() -> Parser:
    """The parser of the whole command line."""
    top = Parser(
        prog="lineproof",
        description="Checks every checkable sentence of a chess lesson before it is taught.",
        epilog="Exit status: 0 done; 1 when a claim fails, with --strict or when publishing, or with --strict when two contradict; 2 bad use or bad input; 130 stopped.",
        allow_abbrev=False,
    )
    top.add_argument("--version", action=_Version, nargs=0, help="show the version and exit")
    commands = top.add_subparsers(
        title="commands", metavar="COMMAND", dest="command", required=True, parser_class=Parser
    )
    for command in (
        new,
        desk,
        prove,
        opinion,
        ask,
        unanswered,
        order,
        follow,
        weigh,
        publish,
        compare,
        collect,
        where,
        engine,
    ):
        command.add(commands)
    return top


class _Version(argparse.Action):
    """Asks for the version only when it is wanted."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        from lineproof._engine import __version__

        write(f"lineproof {__version__}\n")
        parser.exit()
