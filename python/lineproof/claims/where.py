"""Where: the files, squares or wing that words such as "on the c- and d-files" or "on the kingside" mean.

>>> Where.read("on the c - and d files")
Where(squares=(), files='cd', wing=None)
>>> Where.read("on e5 and d6").holds("d6")
True
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from .structure import FILES, WINGS

_FILE = r" [a-h](?: -)?"
FILE_LIST = rf"(?:{_FILE}(?:(?: ,| and| , and| or)(?: the)?{_FILE})*)"
"""One file or several, as "the c- and d-files" is normalised."""
SQUARE_LIST = r"(?: [a-h][1-8](?:(?: ,| and| , and| or) [a-h][1-8])*)"
WING = r"(?: kingside| queenside| (?:king|queen)(?: 's)? (?:side|wing))"
CENTRE = r" centre| center"
WHERE = (
    rf"(?:(?: on| along| down| in)(?: the| his| her| our| your| their)?(?: (?:open|half open|semi open))?{FILE_LIST} files?"
    rf"|(?: on| at){SQUARE_LIST}"
    rf"|(?: on| in)(?: the| his| her| our| your| their){WING}"
    rf"|(?: in)(?: the| his| her| our| your| their)(?: middle|{CENTRE}))"
)
"""A place on the board after a noun. Each part brings its own blank."""


@dataclass(frozen=True)
class Where:
    """Squares, files or a wing; all empty for the whole board."""

    squares: tuple[str, ...] = ()
    files: str = ""
    wing: str | None = None

    @classmethod
    def read(cls, *texts: str | None) -> Where:
        """Reads normalised words; parts that are None say nothing."""
        words = " ".join(t for t in texts if t).split()
        squares = tuple(w for w in words if re.fullmatch("[a-h][1-8]", w))
        files = "" if squares else "".join(w for w in words if w in FILES and len(w) == 1)
        wing = None
        if not squares and not files:
            wing = next((w for w in map(_wing, words) if w), None)
        return cls(squares, files, wing)

    def holds(self, at: str) -> bool:
        """Whether a square lies there; of the wing in its wider sense."""
        if self.squares:
            return at in self.squares
        if self.files:
            return at[0] in self.files
        if self.wing == "centre":
            return at[0] in "cdef"
        return self.wing is None or at[0] in WINGS[self.wing][0]

    def __str__(self) -> str:
        """As words with a blank before them: " on the c- and d-files", or nothing."""
        if self.squares:
            return f" on {_and(self.squares)}"
        if self.files:
            return f" on the {_and([f'{f}-' for f in self.files[:-1]] + [f'{self.files[-1]}-file'])}{'s' if len(self.files) > 1 else ''}"
        if self.wing is not None:
            return f" {'in' if self.wing == 'centre' else 'on'} the {self.wing}"
        return ""


def _wing(word: str) -> str | None:
    if word in {"centre", "center", "middle", "central"}:
        return "centre"
    return {"king": "kingside", "queen": "queenside"}.get(re.sub("side$", "", word))


def _and(parts: list[str] | tuple[str, ...]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"
