"""`lineproof collect`: games gathered for statistics."""

from __future__ import annotations

from typing import TYPE_CHECKING

from . import (
    collect_add,
    collect_fit,
    collect_forget,
    collect_join,
    collect_list,
    collect_look,
    collect_reach,
)

if TYPE_CHECKING:
    from .shared import Commands


def add(commands: Commands) -> None:
    from .commands import Parser

    collect = commands.add_parser(
        "collect",
        help="gather games, and ask what is played",
        description="Gather games, and ask what is played.",
        allow_abbrev=False,
    )
    inner = collect.add_subparsers(
        title="commands",
        metavar="COMMAND",
        dest="collect_command",
        required=True,
        parser_class=Parser,
    )
    for command in (
        collect_add,
        collect_join,
        collect_look,
        collect_reach,
        collect_list,
        collect_forget,
        collect_fit,
    ):
        command.add(inner)
