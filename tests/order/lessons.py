"""Lessons whose file order is far from the best. All invented; the moves are legal and nothing else."""

from __future__ import annotations

from lineproof.lesson import Lesson

BRANCHES = """1. e4 {We begin.} e5 {The old answer.} (1... c5 {The Sicilian.} 2. Nf3 {Quietly.})
(1... e6 {The French.} 2. d4 {Two in the centre.}) 2. Nc3 {The Vienna.} (2. Nf3 {The knight.} Nc6 {The other knight.})
(2. Bc4 {The bishop.} Nf6 {Attacked at once.}) 2... Nf6 {Best.} (2... Nc6 {Slow.} 3. f4 {Sharp.}) 3. f4 {The gambit.} *
"""
"""Five variations: the file goes into each and back to the line, twice five ways back less those between neighbours."""

JOINING = """1. Nf3 {First.} (1. Nc3 {The other road.} d5 2. Nf3 Nf6 {Now it is the same position.} 3. d4 {The second answer.})
1... d5 2. Nc3 Nf6 {Four knights, nearly.} 3. g3 {The first answer.} (3. e3 {The third.}) *
"""
"""Two roads to one position, from which three moves go on."""

MISTAKES = """1. e4 {First.} e5 2. Bc4 {Aiming.} Nc6 3. Qh5 {A threat.} Nf6 $4 {A blunder.} (3... g6 {Right.} 4. Qf3 {Again.} Nf6 {Held.} 5. Ne2 {Slow.} Bg7 {Fine.})
(3... Qe7 {Also right.} 4. Nc3 {Eyeing the square.} Nf6 {With time.}) 4. Qxf7# {Mate.} *
"""
"""A blunder on the main line whose punishment the file puts off."""

AGAIN = """1. e4 {One.} e5 {Two.} 2. Nf3 {Three.} Nc6 {Four.} 3. Bb5 {Five.} *

1. e4 e5 2. Nf3 Nc6 3. Bc4 {Another bishop.} *

1. e4 e5 2. Nf3 Nc6 3. d4 {A pawn.} *
"""
"""Three games that begin alike: the file plays the same four moves three times."""

FIXTURES = {"branches": BRANCHES, "joining": JOINING, "mistakes": MISTAKES, "again": AGAIN}


def lesson(text: str, **settings: object) -> Lesson:
    return Lesson.from_text(text, **settings)  # type: ignore[arg-type]
