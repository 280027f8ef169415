"""Records of positions, 32 bytes each, from their mover's side: read whole, decoded batch by batch on any device.

A record is sixteen little-endian words. The low 15 bits of word i are squares 4i to 4i+3 (a1 = 0, h8 = 63) as a number
of base 13, square 4i the lowest digit: 0 empty, 1 to 6 own pawn, knight, bishop, rook, queen, king, 7 to 12 the enemy's.
The top bits, word 0 the lowest, are (score + 8191) * 4 + result: the mover's searched centipawns, and 0 lost, 1 drawn,
2 won, 3 for a position that stood in a search and not in a game. When Black is on move, ranks are flipped and colours exchanged. Records of one game stand together.
"""

from __future__ import annotations

import lzma
import shutil
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import torch
from torch import Tensor

RECORD_BYTES = 32
WORDS = 16
OWN_KING = 6
ENEMY_KING = 12
SCORE_MOST = 8191
UNPLAYED = 3
_BASE = 13
_QUADS = _BASE**4


class RecordError(ValueError):
    """A file that is no run of records, or a record that is no position."""


@dataclass(frozen=True)
class Decoded:
    """A batch: `squares`, digits by square, (n, 64) of uint8; `scores`, centipawns, (n,) of float32; `results`, 0, 0.5
    or 1 for the mover, (n,) of float32, and 0.5 where there is none; `played`, 1 where there is one, else 0, the same."""

    squares: Tensor
    scores: Tensor
    results: Tensor
    played: Tensor


def read(paths: Sequence[Path]) -> Tensor:
    """All records of some files, one after another: (n, 16) of int16. Files named .xz or .zst are unpacked; of a
    folder, its files named .bin (or .bin.xz, .bin.zst) are taken in the order of their names.

    :raises RecordError: when a file has no whole number of records, or none has any.
    """
    parts = []
    for path in files_of(paths):
        content = _content(path)
        if len(content) % RECORD_BYTES:
            raise RecordError(f"{path}: {len(content)} bytes are no whole number of records")
        parts.append(words_of(content))
    if not sum(len(part) for part in parts):
        raise RecordError("no records")
    return torch.cat(parts)


def files_of(paths: Sequence[Path]) -> list[Path]:
    """The files among the paths and in the folders among them."""
    found: list[Path] = []
    for path in paths:
        if path.is_dir():
            inside = (inner for inner in path.iterdir() if ".bin" in inner.suffixes[-2:])
            found += sorted(inside)
        else:
            found.append(path)
    return found


def words_of(content: bytes) -> Tensor:
    """The words of some records: (n, 16) of int16."""
    words = np.frombuffer(content, dtype="<i2").reshape(-1, WORDS)
    return torch.from_numpy(words.astype(np.int16))


def _content(path: Path) -> bytes:
    if path.suffix == ".xz":
        try:
            return lzma.decompress(path.read_bytes())
        except (lzma.LZMAError, EOFError) as error:
            raise RecordError(f"{path}: {error}") from error
    if path.suffix == ".zst":
        program = shutil.which("zstd")
        if program is None:
            raise RecordError(f"{path}: the program zstd, which unpacks it, is not installed")
        unpacked = subprocess.run([program, "-dcq", str(path)], capture_output=True, check=False)
        if unpacked.returncode:
            raise RecordError(f"{path}: {unpacked.stderr.decode(errors='replace').strip()}")
        return unpacked.stdout
    return path.read_bytes()


def table(device: torch.device) -> Tensor:
    """The four digits of every number below 13^4: (28561, 4) of uint8."""
    numbers = torch.arange(_QUADS, device=device)
    digits = [numbers // _BASE**place % _BASE for place in range(4)]
    return torch.stack(digits, dim=1).to(torch.uint8)


def decode(words: Tensor, digits: Tensor) -> Decoded:
    """Decodes records, (n, 16) of int16, with the [`table`] of their device."""
    whole = words.to(torch.int32)
    squares = digits[whole & 0x7FFF].reshape(-1, 64)
    places = torch.arange(WORDS, device=words.device, dtype=torch.int32)
    tags = ((whole >> 15 & 1) << places).sum(dim=1)
    result = tags & 3
    played = result < UNPLAYED
    return Decoded(
        squares=squares,
        scores=((tags >> 2) - SCORE_MOST).to(torch.float32),
        results=torch.where(played, result.to(torch.float32) / 2.0, 0.5),
        played=played.to(torch.float32),
    )


def check(words: Tensor, digits: Tensor, chunk: int = 1 << 20) -> None:
    """Looks at every record.

    :raises RecordError: at the first chunk with a word that is no four squares, or a side
        without exactly one king.
    """
    for begin in range(0, len(words), chunk):
        part = words[begin : begin + chunk].to(digits.device)
        if bool(((part.to(torch.int32) & 0x7FFF) >= _QUADS).any()):
            raise RecordError(f"records {begin} on: a word is no four squares")
        found = decode(part, digits)
        for king in (OWN_KING, ENEMY_KING):
            if bool(((found.squares == king).sum(dim=1) != 1).any()):
                raise RecordError(f"records {begin} on: a side has not one king")
        if bool(((found.squares > 0).sum(dim=1) > 32).any()):
            raise RecordError(f"records {begin} on: more than 32 men")


def encode(squares: Sequence[int], score: int, result: int) -> bytes:
    """One record: digits by square, the mover's centipawns, 0 lost, 1 drawn, 2 won or 3 for no game."""
    clamped = max(-SCORE_MOST, min(SCORE_MOST, score))
    tag = (clamped + SCORE_MOST) * 4 + result
    words = []
    for place in range(WORDS):
        four = squares[4 * place : 4 * place + 4]
        low = sum(digit * _BASE**index for index, digit in enumerate(four))
        words.append(low | (tag >> place & 1) << 15)
    return np.array(words, dtype="<u2").tobytes()
