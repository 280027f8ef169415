"""Random lessons in random layout, with what a reader must find in them."""

from __future__ import annotations

from dataclasses import dataclass, field
from random import Random

import chess

SUFFIXES = {"!": 1, "?": 2, "!!": 3, "??": 4, "!?": 5, "?!": 6}
WORDS = [
    "the point",
    "not 4. d4",
    "so {what",
    "$3 (no) ; 1-0",
    "%x",
    "[%clk 0:01]",
    "",
    " a ",
    "é ü",
]
WIDE_WORDS = ["∞ und ⩲", "Ко́нь", "日本 棋"]


@dataclass
class Expected:
    """Places as (path of UCI moves), in text order; comments as (path of the place, text)."""

    paths: list[tuple[str, ...]] = field(default_factory=list)
    nags: list[tuple[int, ...]] = field(default_factory=list)
    comments: list[tuple[tuple[str, ...], str]] = field(default_factory=list)


class Writer:
    """Writes one random game.

    :param plain: keep to what python-chess reads: no blank lines, SAN only, no empty comments.
    """

    def __init__(self, rng: Random, *, wide: bool, plain: bool, line_end: str) -> None:
        self.rng = rng
        self.plain = plain
        self.line_end = line_end
        self.words = WORDS + (WIDE_WORDS if wide else [])
        self.expected = Expected()
        self.parts: list[str] = []

    def gap(self) -> None:
        end = self.line_end
        gaps = [" ", " ", " ", end, "  ", "\t", f" {end}"]
        if not self.plain:
            gaps += [end * 2, f"{end}%escape }} ({end}", f"{end}  "]
        self.parts.append(self.rng.choice(gaps))

    def comments(self, path: tuple[str, ...]) -> bool:
        wrote = False
        while self.rng.random() < 0.3:
            wrote = True
            text = self.rng.choice(self.words)
            self.expected.comments.append((path, text))
            if self.rng.random() < 0.2 and not self.plain:
                self.parts.append(f";{text}{self.line_end}")
            else:
                self.parts.append(f"{{{text}}}")
                self.gap()
        return wrote

    def spelled(self, board: chess.Board, move: chess.Move) -> str:
        san = board.san(move)
        if self.plain:
            return san
        spellings = [san, san, san.rstrip("+#"), san.replace("O", "0"), san.replace("=", "")]
        if not board.is_castling(move):
            piece = board.piece_at(move.from_square)
            assert piece is not None
            letter = "" if piece.piece_type == chess.PAWN else piece.symbol().upper()
            sign = self.rng.choice(["-", "x", ""])
            origin, target = chess.square_name(move.from_square), chess.square_name(move.to_square)
            promotion = f"={chess.piece_symbol(move.promotion).upper()}" if move.promotion else ""
            spellings.append(f"{letter}{origin}{sign}{target}{promotion}")
        return self.rng.choice(spellings)

    def move(self, board: chess.Board, path: tuple[str, ...], numbered: bool) -> chess.Move | None:
        moves = list(board.legal_moves)
        if not moves:
            return None
        move = self.rng.choice(moves)
        if board.turn == chess.WHITE or numbered or self.rng.random() < 0.2:
            dots = "." if board.turn == chess.WHITE else "..."
            self.parts.append(f"{board.fullmove_number}{dots}")
            if self.rng.random() < 0.8:
                self.gap()
        self.parts.append(self.spelled(board, move))
        nags: list[int] = []
        if self.rng.random() < 0.2:
            suffix = self.rng.choice(list(SUFFIXES))
            nags.append(SUFFIXES[suffix])
            self.parts.append(suffix)
        self.gap()
        while self.rng.random() < 0.15:
            nag = self.rng.choice([1, 5, 10, 14, 146, 255])
            nags.append(nag)
            self.parts.append(f"${nag}")
            self.gap()
        self.expected.paths.append((*path, move.uci()))
        self.expected.nags.append(tuple(nags))
        return move

    def line(self, board: chess.Board, path: tuple[str, ...], length: int, depth: int) -> None:
        numbered = True
        for _ in range(length):
            before = board.copy(stack=False)
            move = self.move(board, path, numbered)
            if move is None:
                return
            board.push(move)
            after = (*path, move.uci())
            numbered = self.comments(after)
            while depth and self.rng.random() < 0.25:
                numbered = True
                self.parts.append("(")
                if self.rng.random() < 0.3:
                    self.gap()
                self.comments(path)
                self.line(before.copy(stack=False), path, self.rng.randint(1, 4), depth - 1)
                self.parts.append(")")
                self.gap()
                self.comments(after)
            path = after

    def game(self, index: int) -> None:
        end = self.line_end
        self.parts.append(f'[Event "game {index}"]{end}[Annotator "A \\"B\\""]{end}{end}')
        self.expected.paths.append(())
        self.expected.nags.append(())
        self.comments(())
        self.line(chess.Board(), (), self.rng.randint(0, 12), 3)
        self.parts.append(f"*{end}{end}")


def random_text(
    seed: int, *, wide: bool = True, plain: bool = False, line_end: str = "\n"
) -> tuple[str, Expected]:
    """A random text and what it holds."""
    rng = Random(seed)
    writer = Writer(rng, wide=wide, plain=plain, line_end=line_end)
    for index in range(rng.randint(1, 2)):
        writer.game(index)
    return "".join(writer.parts), writer.expected
