"""PGN in export form: tags, then moves with variations, no words.

Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12, sections 7, 8.2 and 3.2 (from memory).

>>> main = Step("e4", then=[Step("e5"), Step("c5")])
>>> movetext([main], 0, "*")
'1. e4 e5 (1... c5) *\\n'
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import Final

from lineproof.lesson import Game

COLUMNS: Final = 79
"""Longest line of export form."""


@dataclass
class Step:
    """A move with what follows it, the main continuation first. san: the move. nags: numbers of its glyphs."""

    san: str
    nags: tuple[int, ...] = ()
    then: list[Step] = field(default_factory=list)


def first_half(game: Game) -> int:
    """Half-moves before the start of a game, by its move number: 0 for the initial position."""
    return 2 * (game.start.move_number - 1) + (game.start.turn == "black")


def game_text(tags: Sequence[tuple[str, str]], steps: Sequence[Step], half: int, end: str) -> str:
    """A whole game. steps: first moves. half: as `first_half`. end: its termination marker."""
    head = "".join(f'[{name} "{_quoted(value)}"]\n' for name, value in tags)
    return f"{head}\n{movetext(steps, half, end)}"


def movetext(steps: Sequence[Step], half: int, end: str) -> str:
    """Moves, variations and the termination marker, in lines of at most `COLUMNS`."""
    lines: list[str] = []
    line = ""
    for word in (*_glued(_tokens(steps, half)), end):
        if line and len(line) + 1 + len(word) > COLUMNS:
            lines.append(line)
            line = word
        else:
            line = f"{line} {word}" if line else word
    return "\n".join([*lines, line]) + "\n"


def _tokens(steps: Sequence[Step], half: int) -> Iterator[str]:
    """Without recursion, for variations may nest deeply: what is left to write lies on a stack."""
    left: list[str | tuple[Sequence[Step], int, bool]] = [(steps, half, True)]
    while left:
        item = left.pop()
        if isinstance(item, str):
            yield item
            continue
        steps, half, numbered = item
        while steps:
            main, *others = steps
            yield from _move(main, half, numbered)
            if others:
                left.append((main.then, half + 1, True))
                for other in reversed(others):
                    left += [
                        ")",
                        (other.then, half + 1, False),
                        *reversed([*_move(other, half, True)]),
                    ]
                    left.append("(")
                break
            steps, half, numbered = main.then, half + 1, False


def _move(step: Step, half: int, numbered: bool) -> Iterator[str]:
    if half % 2 == 0:
        yield f"{half // 2 + 1}."
    elif numbered:
        yield f"{half // 2 + 1}..."
    yield step.san
    yield from (f"${nag}" for nag in step.nags)


def _glued(tokens: Iterator[str]) -> Iterator[str]:
    """Brackets stand at the words that they open before and close behind."""
    opened, held = "", ""
    for token in tokens:
        if token == "(":
            opened += token
        elif token == ")":
            held += token
        else:
            if held:
                yield held
            held, opened = opened + token, ""
    if held:
        yield held


def _quoted(value: str) -> str:
    return value.replace("\\", "\\\\").replace('"', '\\"')
