"""The terms of the evaluation, as the Rust source lays them out in one table of weights."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

EVAL = Path(__file__).resolve().parent.parent / "crates" / "engine" / "src" / "eval"
_TERM = re.compile(r"^ {4}([A-Z][A-Z_]*) (\d+);$", re.MULTILINE)


class LayoutError(ValueError):
    """The Rust source does not have the shape that is read here."""


@dataclass(frozen=True)
class Term:
    """A run of weights: `name`, index of the first one, how many."""

    name: str
    first: int
    length: int


@dataclass(frozen=True)
class Layout:
    """All terms of the table of weights, and all units of king danger."""

    terms: tuple[Term, ...]
    units: tuple[Term, ...]

    @property
    def count(self) -> int:
        """How many weights there are, each with a middlegame and an endgame value."""
        return self.terms[-1].first + self.terms[-1].length

    @property
    def unit_count(self) -> int:
        """How many units of danger there are."""
        return self.units[-1].first + self.units[-1].length


def read(path: Path = EVAL / "terms.rs") -> Layout:
    """Reads the layout.

    :raises LayoutError: when a table is missing.
    """
    blocks = re.split(r"^layout! \{ ", path.read_text(encoding="utf-8"), flags=re.MULTILINE)[1:]
    found = {block.split(",", 1)[0]: _runs(block.split("\n}\n", 1)[0]) for block in blocks}
    for name in ("TERMS", "UNITS"):
        if not found.get(name):
            raise LayoutError(f"{path}: no table {name}")
    return Layout(found["TERMS"], found["UNITS"])


def _runs(block: str) -> tuple[Term, ...]:
    runs: list[Term] = []
    for match in _TERM.finditer(block):
        first = runs[-1].first + runs[-1].length if runs else 0
        runs.append(Term(match[1], first, int(match[2])))
    return tuple(runs)
