"""What the film shows and when: stills, moves, ways back and pauses, in frames.

Only a move and a way back have frames of their own; a still is one frame with its time. All times are common practice.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Final, Literal, cast

from lineproof.claims.board import side_of
from lineproof.diagram import JustPlayed, Mark, MarkedSquare, Side
from lineproof.engine import Board
from lineproof.lesson import Place
from lineproof.order import Cue, RunningOrder
from lineproof.order.spoken import NULL_MOVE

from .claimed import Claimed

FRAMES: Final = 30
"""Frames a second."""
MOVING: Final = 12
"""Frames of a move: 0.4 s."""
FADING: Final = 24
"""Frames of a way back: 0.8 s."""
LOOP_MOVE, LOOP_END = 1.2, 3.0
"""Seconds of a move of a loop, and of its last position."""

Kind = Literal["still", "move", "fade"]


@dataclass(frozen=True)
class Still:
    """A picture: a position with its marks. left: of a pause, from 1 to 0; None where there is none."""

    fen: str
    marks: tuple[Mark, ...] = ()
    left: float | None = None

    @property
    def placement(self) -> str:
        return self.fen.split()[0]


@dataclass(frozen=True)
class Scene:
    """begins, ends: in frames. still: what is shown, at the end of a move or a way back. before, uci: what it comes from, and by which move.

    key: whether a player can begin here.
    """

    kind: Kind
    begins: int
    ends: int
    still: Still
    before: Still | None = None
    uci: str = ""
    key: bool = False

    @property
    def frames(self) -> int:
        """Frames that are encoded."""
        return 1 if self.kind == "still" else self.ends - self.begins


def scenes(order: RunningOrder, claimed: Claimed) -> tuple[Scene, ...]:
    """The whole order, without gaps. claimed: marks of claims that hold."""
    return tuple(_Scenes(order.cues, round(order.seconds * FRAMES), claimed).all())


class _Scenes:
    def __init__(self, cues: Sequence[Cue], end: int, claimed: Claimed) -> None:
        begins = [round(cue.begins * FRAMES) for cue in cues]
        self.cues = [*zip(cues, begins, [*begins[1:], end], strict=True)]
        self.claimed = claimed
        self.shown = Still(_before(cues[0]))
        self.said = True
        """Whether a sentence was said since squares were marked."""

    def all(self) -> Iterator[Scene]:
        for cue, begins, ends in self.cues:
            if ends > begins:
                found = list(self._cue(cue, begins, ends))
                yield replace(found[0], key=True)
                yield from found[1:]
                self.shown = found[-1].still

    def _cue(self, cue: Cue, begins: int, ends: int) -> Iterator[Scene]:
        match cue.kind:
            case "play":
                yield from self._play(cue, begins, ends)
            case "go back to" | "set up":
                still = Still(cue.place.board.fen)
                if still.placement == self.shown.placement:
                    yield Scene("still", begins, ends, still)
                else:
                    yield from _changed("fade", begins, ends, self.shown, still, FADING)
            case "mark":
                self.said = False
                marks = _just_played(self._here(cue).marks) + _squares(cue)
                yield Scene("still", begins, ends, replace(self._here(cue), marks=marks))
            case "say":
                yield Scene("still", begins, ends, self._marked(cue))
                self.said = True
            case "pause":
                yield from self._pause(cue, begins, ends)

    def _here(self, cue: Cue) -> Still:
        """What is on the board; where a game begins without a word, its position."""
        fen = cue.place.board.fen
        same = fen.split()[0] == self.shown.placement
        return replace(self.shown, fen=fen, left=None) if same else Still(fen)

    def _play(self, cue: Cue, begins: int, ends: int) -> Iterator[Scene]:
        still = Still(cue.place.board.fen, _played(cue.uci))
        before = self.shown
        if not _leads(before.fen, cue.uci or "", still.placement):
            before = Still(_before(cue))
        if cue.uci == NULL_MOVE or not _leads(before.fen, cue.uci or "", still.placement):
            yield Scene("still", begins, ends, still)
            return
        yield from _changed("move", begins, ends, before, still, MOVING, cue.uci or "")

    def _marked(self, cue: Cue) -> Still:
        """A sentence with the marks of its claims, beside the squares that were marked for it; without any, what is there stays."""
        here = self._here(cue)
        marks = self.claimed.by(cue)
        if not marks:
            return here
        kept = _just_played(here.marks) if self.said else here.marks
        return replace(here, marks=tuple(dict.fromkeys((*kept, *marks))))

    def _pause(self, cue: Cue, begins: int, ends: int) -> Iterator[Scene]:
        """The move just played only, for marks would give the answer away; what is left of the silence, second by second."""
        still = replace(self._here(cue), marks=_just_played(self.shown.marks))
        silent = max(begins, ends - round(cue.silence * FRAMES))
        if silent > begins:
            yield Scene("still", begins, silent, still)
        for at in range(silent, ends, FRAMES):
            left = (ends - at) / (ends - silent)
            yield Scene("still", at, min(at + FRAMES, ends), replace(still, left=left))


def looped(line: Place, claimed: Claimed) -> tuple[Scene, ...]:
    """One line of a lesson, from its beginning to its end and back."""
    places = line.path()
    start = Still(places[0].board.fen)
    made = [Scene("still", 0, FRAMES, start, key=True)]
    for number, place in enumerate(places[1:], 1):
        at = made[-1].ends
        seconds = LOOP_END if number == len(places) - 1 else LOOP_MOVE
        still = Still(place.board.fen, _played(place.uci) + claimed.at(place))
        before = made[-1].still
        kind: Kind = "still" if place.uci == NULL_MOVE else "move"
        if kind == "still":
            made.append(Scene("still", at, at + round(seconds * FRAMES), still))
        else:
            ends = at + round(seconds * FRAMES)
            made += _changed("move", at, ends, before, still, MOVING, place.uci or "")
    at = made[-1].ends
    made.append(Scene("fade", at, at + FADING, start, made[-1].still))
    return tuple(made)


def extended(scenes: Sequence[Scene], seconds: float) -> tuple[Scene, ...]:
    """The same, the last picture shown until a time at least."""
    end = math.ceil(seconds * FRAMES)
    last = scenes[-1]
    if last.ends >= end:
        return tuple(scenes)
    if last.kind == "still":
        return (*scenes[:-1], replace(last, ends=end))
    return (*scenes, Scene("still", last.ends, end, last.still))


def _changed(
    kind: Kind, begins: int, ends: int, before: Still, still: Still, frames: int, uci: str = ""
) -> Iterator[Scene]:
    """A change, and what it leads to for the rest of the time."""
    until = min(begins + frames, ends)
    yield Scene(kind, begins, until, still, replace(before, left=None), uci)
    if until < ends:
        yield Scene("still", until, ends, still)


def _before(cue: Cue) -> str:
    """The position that a first cue, or a move that begins elsewhere, is told from."""
    parent = cue.place.parent
    if cue.kind == "play" and parent is not None and cue.place.uci == cue.uci:
        return parent.board.fen
    return cue.place.board.fen


def _leads(fen: str, uci: str, placement: str) -> bool:
    board = Board(fen)
    return uci in board.legal_moves() and board.play(uci).fen.split()[0] == placement


def _played(uci: str | None) -> tuple[Mark, ...]:
    return () if uci is None or uci == NULL_MOVE else (JustPlayed(uci[:2], uci[2:4]),)


def _just_played(marks: Sequence[Mark]) -> tuple[Mark, ...]:
    return tuple(mark for mark in marks if isinstance(mark, JustPlayed))


def _squares(cue: Cue) -> tuple[Mark, ...]:
    """Squares that a sentence points at: the idea of whose piece stands there, on an empty one of the side to move."""
    board = cue.place.board
    sides = (
        side_of(letter) if (letter := board.piece_at(square)) else board.turn
        for square in cue.squares
    )
    return tuple(
        MarkedSquare(square, cast(Side, side))
        for square, side in zip(cue.squares, sides, strict=True)
    )
