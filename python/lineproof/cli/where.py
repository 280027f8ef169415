"""`lineproof where`: where the user's data lives."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

from .output import write, write_json
from .shared import add_command

if TYPE_CHECKING:
    from .shared import Commands

FORMAT = 1
"""Of the JSON."""


def add(commands: Commands) -> None:
    add_command(commands, "where", "list the folders that hold your data", run)


def run(given: argparse.Namespace) -> int:
    from lineproof.lesson.where import where
    from lineproof.report.plain import plain

    places = {name: str(folder) for name, folder in where().items()}
    if given.json:
        write_json({"format": FORMAT, "folders": places})
        return 0
    wide = max(map(len, places))
    write("".join(f"{name:<{wide}}  {plain(folder)}\n" for name, folder in places.items()))
    return 0
