"""The network in whole numbers: its sizes, its file, and its arithmetic exactly as the engine does it.

The file, little-endian:

| offset | what |
|---|---|
| 0 | 16 bytes: `Lineproof net 1` and a line feed |
| 16 | u32 bytes before the weights (a multiple of 64), u32 width, u32 king buckets, u32 output buckets, u32 centipawns for an output of one, u32 bytes of text |
| 40 | 32 bytes: the king bucket of each square a1 to d1, a2 to d2, ... d8 |
| 72 | 33 bytes: the output bucket of each number of men, 0 to 32; then 7 zero bytes |
| 112 | u64 checksum of all other bytes: FNV-1a (Fowler, Noll and Vo) by words of eight bytes |
| 120 | the text in UTF-8: where the network comes from; zero bytes up to the weights |
| then | i16 weights of the features, (buckets * 768, width); i16 biases, (width); i16 output weights, (output buckets, 2 * width); i32 output biases |

A feature is 768 * king bucket + 64 * kind + square: own pawn to king 0 to 5, the enemy's 6 to 11; squares as the side sees them,
flipped to the other wing when its king stands on files e to h.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from pathlib import Path

import numpy as np
import torch
from torch import Tensor

MAGIC = b"Lineproof net 1\n"
FEATURES = 768
# Parts of one in the accumulators, and in the output weights.
UNIT = 255
OUTPUT_UNIT = 512
# A bias and 32 columns stay within 16 bits.
FEATURE_MOST = 992
# Squares of clamped values lose three bits, so that they and the output weights fit in 16 bits each, and the sum of 256
# products in 32: 255 * 255 // 8 * 1023 * 256 < 2^31.
SQUARE_SHIFT = 3
OUTPUT_MOST = 1023
OUTPUT_BIAS_MOST = 1 << 24
LIMIT = 20_000
WIDTHS = range(32, 1025, 32)
_FIXED = 120


class NetworkError(ValueError):
    """Sizes that the engine does not take, or bytes that are no network."""


@dataclass(frozen=True)
class Sizes:
    """`width`: accumulator values a side. `king_buckets`: a bucket for each of 32 squares, a1 to d1 first.
    `output_buckets`: a bucket for each number of men, 0 to 32. `scale`: centipawns for an output of one."""

    width: int
    king_buckets: tuple[int, ...]
    output_buckets: tuple[int, ...]
    scale: int = 400

    def __post_init__(self) -> None:
        if self.width not in WIDTHS:
            raise NetworkError(f"width {self.width} is no multiple of 32 up to 1024")
        for name, table, length in (
            ("king", self.king_buckets, 32),
            ("output", self.output_buckets, 33),
        ):
            # The engine's bounds, checked here so that no training ends with a file that it refuses.
            if len(table) != length or min(table) < 0 or max(table) >= 32:
                raise NetworkError(f"{name} buckets: {length} numbers from 0 to 31 are needed")

        if not 1 <= self.scale <= 4000:
            raise NetworkError(f"scale {self.scale} is not 1 to 4000")
        for name, table in (("king", self.king_buckets), ("output", self.output_buckets)):
            if set(table) != set(range(max(table) + 1)):
                raise NetworkError(f"{name} buckets: a number is left out")

    @property
    def inputs(self) -> int:
        """How many features there are in all king buckets."""
        return FEATURES * (max(self.king_buckets) + 1)

    @property
    def outputs(self) -> int:
        """How many output buckets there are."""
        return max(self.output_buckets) + 1


def king_buckets(text: str) -> tuple[int, ...]:
    """A table from `1`, `4` or `8` buckets, or from 32 numbers between commas.

    :raises NetworkError: when it is none of these.
    """
    ready = {
        "1": [0] * 32,
        # the corner, the middle of the back rank, the second rank, further out
        "4": [0, 0, 1, 1] + [2] * 4 + [3] * 24,
        # the back rank square by square, the second rank in two, ranks 3 and 4, further out
        "8": [0, 1, 2, 3, 4, 4, 5, 5] + [6] * 8 + [7] * 16,
    }
    if text in ready:
        return tuple(ready[text])
    try:
        table = tuple(int(word) for word in text.split(","))
    except ValueError as error:
        raise NetworkError(f"king buckets: {error}") from error
    if len(table) != 32:
        raise NetworkError("king buckets: 1, 4, 8 or 32 numbers between commas")
    return table


def output_buckets(count: int) -> tuple[int, ...]:
    """`count` buckets, each of about as many numbers of men from 2 to 32."""
    return tuple((max(men, 2) - 2) * count // 31 for men in range(33))


class Features:
    """Features of positions on one device."""

    def __init__(self, sizes: Sizes, device: torch.device) -> None:
        self.inputs = sizes.inputs
        whole = [
            sizes.king_buckets[4 * (square >> 3) + min(square & 7, 7 - (square & 7))]
            for square in range(64)
        ]
        mirror = [7 if square & 4 else 0 for square in range(64)]
        # The enemy sees the board from the other side: his king's square is flipped by rank.
        self._first = torch.tensor([FEATURES * bucket for bucket in whole], device=device)
        self._mirror = torch.tensor(mirror, device=device)
        self._squares = torch.arange(64, device=device)
        self._outputs = torch.tensor(sizes.output_buckets, device=device)

    def active(self, squares: Tensor) -> Tensor:
        """The features of both sides, the mover's first: (2 n, 64) of int64 from digits (n, 64) of uint8. An empty square
        gives `inputs`, one more than the last feature."""
        digits = squares.to(torch.int64)
        sides = []
        for flip, kinds, king in (
            (0, digits - 1, 6),
            (56, torch.where(digits > 6, digits - 7, digits + 5), 12),
        ):
            home = (squares == king).to(torch.uint8).argmax(dim=1) ^ flip
            turned = self._squares ^ flip ^ self._mirror[home][:, None]
            feature = self._first[home][:, None] + 64 * kinds + turned
            sides.append(torch.where(digits > 0, feature, self.inputs))
        return torch.cat(sides)

    def dense(self, squares: Tensor) -> Tensor:
        """The same as ones and zeros: (2 n, inputs) of float32. A matrix product with them is faster on a GPU than sums of
        chosen rows, and exact where the weights are."""
        active = self.active(squares)
        # Rows of a whole number of 32 bytes; the first column too many takes the empty squares.
        ones = torch.zeros(len(active), self.inputs + 8, device=squares.device)
        ones.scatter_(1, active, 1.0)
        return ones[:, : self.inputs]

    def output(self, squares: Tensor) -> Tensor:
        """The output bucket of each position, (n,) of int64."""
        found: Tensor = self._outputs[(squares > 0).sum(dim=1)]
        return found


@dataclass(frozen=True)
class Network:
    """Weights in whole numbers: `features` (inputs, width), `biases` (width,), `outputs` (buckets, 2 * width), all of int16;
    `output_biases` (buckets,) of int32. `text` says where they come from."""

    sizes: Sizes
    features: Tensor
    biases: Tensor
    outputs: Tensor
    output_biases: Tensor
    text: str = ""

    def to(self, device: torch.device) -> Network:
        """The same on a device."""
        return Network(
            self.sizes,
            self.features.to(device),
            self.biases.to(device),
            self.outputs.to(device),
            self.output_biases.to(device),
            self.text,
        )

    def values(self, squares: Tensor, features: Features) -> Tensor:
        """Centipawns for the mover of positions given as digits (n, 64), exactly as the engine's network gives them, before
        what the engine knows of endings: (n,) of int64."""
        precision = torch.get_float32_matmul_precision()
        torch.set_float32_matmul_precision("highest")
        try:
            # Sums of at most 33 whole numbers below 2^10 are exact in 24 bits.
            sums = features.dense(squares) @ self.features.to(torch.float32)
        finally:
            torch.set_float32_matmul_precision(precision)
        clamped = (sums.to(torch.int64) + self.biases.to(torch.int64)).clamp(0, UNIT)
        both = torch.cat(clamped.chunk(2), dim=1)
        bucket = features.output(squares)
        squared = both * both >> SQUARE_SHIFT
        weighted = (squared * self.outputs.to(torch.int64)[bucket]).sum(dim=1)
        inner = torch.div(weighted << SQUARE_SHIFT, UNIT, rounding_mode="trunc")
        inner = inner + self.output_biases.to(torch.int64)[bucket]
        value = torch.div(inner * self.sizes.scale, UNIT * OUTPUT_UNIT, rounding_mode="trunc")
        return value.clamp(-LIMIT, LIMIT)

    def to_bytes(self) -> bytes:
        """The file."""
        text = self.text.encode()
        first = (_FIXED + len(text) + 63) // 64 * 64
        sizes = self.sizes
        kings = max(sizes.king_buckets) + 1
        head = MAGIC + struct.pack(
            "<6I", first, sizes.width, kings, sizes.outputs, sizes.scale, len(text)
        )
        head += bytes(sizes.king_buckets) + bytes(sizes.output_buckets) + bytes(7)
        rest = text + bytes(first - _FIXED - len(text))
        for tensor, kind in (
            (self.features, "<i2"),
            (self.biases, "<i2"),
            (self.outputs, "<i2"),
            (self.output_biases, "<i4"),
        ):
            rest += tensor.cpu().numpy().astype(kind).tobytes()
        return head + struct.pack("<Q", checksum(head + rest)) + rest


def checksum(content: bytes) -> int:
    """FNV-1a with 64 bits (Fowler, Noll and Vo), over words of eight bytes, the last filled with zeros."""
    words = np.frombuffer(content + bytes(-len(content) % 8), dtype="<u8")
    found = 0xCBF29CE484222325
    for word in words.tolist():
        found = ((found ^ word) * 0x100000001B3) & 0xFFFFFFFFFFFFFFFF
    return found


def read(path: Path) -> Network:
    """Reads a file that [`Network.to_bytes`] made.

    :raises NetworkError: when it is none, or damaged.
    """
    content = path.read_bytes()
    if len(content) < _FIXED or not content.startswith(MAGIC):
        raise NetworkError(f"{path}: no network")
    first, width, kings, outputs, scale, length = struct.unpack_from("<6I", content, 16)
    sizes = Sizes(width, tuple(content[40:72]), tuple(content[72:105]), scale)
    counts = (kings * FEATURES * width, width, outputs * 2 * width, outputs)
    if len(content) != first + 2 * sum(counts[:3]) + 4 * counts[3]:
        raise NetworkError(f"{path}: {len(content)} bytes are too few or too many")
    if checksum(content[:112] + content[_FIXED:]) != struct.unpack_from("<Q", content, 112)[0]:
        raise NetworkError(f"{path}: damaged")
    parts, offset = [], first
    for count, kind in zip(counts, ("<i2", "<i2", "<i2", "<i4"), strict=True):
        part = np.frombuffer(content, dtype=kind, count=count, offset=offset)
        parts.append(torch.from_numpy(part.copy()))
        offset += part.nbytes
    return Network(
        sizes,
        parts[0].reshape(-1, width),
        parts[1],
        parts[2].reshape(outputs, -1),
        parts[3],
        content[_FIXED : _FIXED + length].decode(),
    )
