"""Guesses to start a fit from: `python training/guesses.py` writes them into `weights.rs`.

Formulas of our own for what the handbooks say in words: material near the trade's 1, 3, 3, 5, 9, pieces worth more
near the centre, pawns the further they have gone, the king behind its pawns until the endgame (common practice).
"""

from __future__ import annotations

import math
from collections.abc import Callable

import layout
import numpy as np
import weights
from layout import Layout
from weights import Weights

Pair = tuple[float, float]

MATERIAL: list[Pair] = [(92, 112), (330, 300), (340, 320), (480, 530), (970, 980), (0, 0)]
# By rank from the own side, first to last.
PASSED: list[Pair] = [(0, 0), (2, 8), (4, 14), (8, 24), (20, 44), (44, 84), (80, 140), (0, 0)]

SINGLE: dict[str, Pair] = {
    "TEMPO": (12, 12),
    "BISHOP_PAIR": (28, 48),
    "ROOK_PAIR": (-8, -8),
    "KNIGHT_WITH_PAWN": (3, 3),
    "ROOK_WITH_PAWN": (-4, -4),
    "KNIGHT_OUTPOST": (12, 8),
    "KNIGHT_OUTPOST_HELD": (10, 6),
    "BISHOP_OUTPOST": (8, 4),
    "BISHOP_OUTPOST_HELD": (6, 4),
    "BAD_BISHOP": (-3, -4),
    "ROOK_OPEN_FILE": (24, 10),
    "ROOK_HALF_OPEN_FILE": (12, 6),
    "ROOK_SEVENTH": (14, 16),
    "PINNED": (-10, -8),
    "CENTRE_HELD": (5, 0),
    "DOUBLED": (-9, -20),
    "ISOLATED": (-9, -12),
    "ISOLATED_OPEN": (-6, -6),
    "BACKWARD": (-6, -8),
    "BACKWARD_OPEN": (-6, -6),
    "SPACE": (2, 0),
    "PASSED_ROOK_BEHIND": (6, 16),
    "PASSED_ENEMY_ROOK_BEHIND": (-6, -12),
    "UNSTOPPABLE": (0, 500),
    "UNSTOPPABLE_MOVES": (0, -12),
    "RACE": (0, 40),
    "PAWN_STEP": (14, 10),
    "CAN_CASTLE_SHORT": (14, 0),
    "CAN_CASTLE_LONG": (8, 0),
    "QUEEN_OUT_EARLY": (-6, 0),
    "BARE_KING": (150, 150),
    "DRIVE_TO_EDGE": (16, 16),
    "DRIVE_KINGS_NEAR": (10, 10),
    "DRIVE_TO_CORNER": (32, 32),
}

LISTS: dict[str, list[Pair]] = {
    "MATERIAL": MATERIAL,
    "PASSED": PASSED,
    "CANDIDATE": [(0.3 * mg, 0.3 * eg) for mg, eg in PASSED],
    "COVER": [(12, 0), (6, 0), (-6, 0), (-16, 0)],
    "COVER_BESIDE": [(10, 0), (5, 0), (-4, 0), (-12, 0)],
    "STORM": [(-4, 0), (-10, 0), (-6, 0), (-2, 0), (0, 0), (0, 0)],
    "ATTACKED_BY_PAWN": [(4, 6), (44, 34), (44, 34), (56, 40), (56, 40)],
    "ATTACKED_BY_CHEAPER": [(0, 0), (0, 0), (0, 0), (34, 28), (38, 30)],
    "LOOSE": [(10, 16), (22, 20), (22, 20), (24, 20), (24, 20)],
    "OUTNUMBERED": [(6, 8), (12, 12), (12, 12), (14, 14), (14, 14)],
    "UNDEVELOPED": [(0, 0), (-11, 0), (-22, 0), (-33, 0), (-44, 0)],
}

UNITS: dict[str, list[float]] = {
    "DANGER_HITS": [12, 10, 12, 12],
    "DANGER_BARE_SQUARE": [14],
    "DANGER_CHECK": [16],
    "DANGER_OPEN_FILE": [14],
    "DANGER_GUARD": [-10],
    "DANGER_QUEEN": [10],
}


def _square(index: int) -> Pair:
    role, square = divmod(index, 64)
    rank, file = divmod(square, 8)
    inner_file, inner_rank = min(file, 7 - file), min(rank, 7 - rank)
    centre, advance = inner_file + inner_rank, rank - 1
    if role == 0:
        if rank in (0, 7):
            return 0, 0
        held = {(3, 3): 18, (3, 1): -12, (2, 3): 6}.get((inner_file, rank), 0)
        return held + inner_file * advance + 2 * advance**2 - 8, 3 * advance**2 - inner_file
    if role == 1:
        return 9 * centre - 32, 7 * centre - 24
    if role == 2:
        return 4 * centre - 10 - (12 if rank == 0 else 0), 3 * centre - 8
    if role == 3:
        return 4 * inner_file - 6, 0
    if role == 4:
        return centre - 2, 4 * centre - 12
    home = {0: 18, 1: 34, 2: 8, 3: -4}[inner_file]
    second = 2 if inner_file < 2 else -22
    middlegame = home if rank == 0 else second if rank == 1 else -34 - 8 * min(rank, 5)
    return middlegame, 10 * centre - 34


def _mobility(mg: float, eg: float, neutral: int) -> Callable[[int], Pair]:
    # a root, since the first squares count most; the slope at the neutral number is the weight
    def value(squares: int) -> Pair:
        steps = 2 * math.sqrt(neutral + 1) * (math.sqrt(squares + 1) - math.sqrt(neutral + 1))
        return mg * steps, eg * steps

    return value


def _by_rank(mg: float, eg: float) -> Callable[[int], Pair]:
    def value(rank: int) -> Pair:
        return (mg * rank, eg * rank) if 1 <= rank <= 6 else (0, 0)

    return value


def _king_distance(per_step: float) -> Callable[[int], Pair]:
    def value(rank: int) -> Pair:
        return (0, per_step * (rank - 2)) if 3 <= rank <= 6 else (0, 0)

    return value


FORMULAS: dict[str, Callable[[int], Pair]] = {
    "SQUARES": _square,
    "KNIGHT_MOBILITY": _mobility(5, 5, 4),
    "BISHOP_MOBILITY": _mobility(5, 5, 6),
    "ROOK_MOBILITY": _mobility(2, 4, 7),
    "QUEEN_MOBILITY": _mobility(1, 3, 13),
    "DEFENDED": _by_rank(3, 2.5),
    "PHALANX": _by_rank(2.5, 2),
    "PASSED_FREE": _by_rank(1, 2),
    "PASSED_WAY_FREE": _by_rank(1, 4),
    "PASSED_KINGS": _king_distance(2),
}


def start(of: Layout) -> Weights:
    """The guesses, rounded."""
    pairs = np.zeros((of.count, 2))
    for term in of.terms:
        for index in range(term.length):
            pairs[term.first + index] = (
                SINGLE[term.name]
                if term.name in SINGLE
                else LISTS[term.name][index]
                if term.name in LISTS
                else FORMULAS[term.name](index)
            )
    units = np.concatenate([np.array(UNITS[unit.name]) for unit in of.units])
    return Weights(pairs, units).rounded()


def main() -> None:
    """Writes `weights.rs`."""
    of = layout.read()
    header = [
        "Weights of the evaluation. Written by a program: do not edit.",
        "",
        "These are guesses, fitted to nothing: `python training/guesses.py`.",
    ]
    weights.write(of, start(of), header)


if __name__ == "__main__":
    main()
