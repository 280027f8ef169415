"""Constructed lessons: complete ones come out clean, and of their twins each planted fault is found.

The lessons and where they come from: tests/replies/lessons. Each twin has four faults: a reply without an answer, a slip that is taught,
a line that stops early, and an order of the opponent's moves that is passed over though it comes back to the lesson. The last is a reply without an
answer as well.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from lineproof.lesson import Lesson, Place, Side
from lineproof.proof import Effort, EvidenceStore
from lineproof.replies import Study, study
from lineproof.replies.slips import COSTS

LESSONS = Path(__file__).parent / "lessons"


@dataclass(frozen=True)
class Fault:
    """cut: words of the lesson (blanks and line breaks alike), which the twin has not; put: what it has in their place.

    at: the moves to where it must be found. move: the reply, the slip, or the square where the fight goes on. back: the order's way back.
    """

    cut: str
    at: str
    move: str
    put: str = ""
    back: str = ""


@dataclass(frozen=True)
class Opening:
    """A lesson and what is planted in its twin."""

    file: str
    side: Side
    reply: Fault
    slip: Fault
    stop: Fault
    order: Fault

    @property
    def faults(self) -> tuple[Fault, ...]:
        return self.reply, self.slip, self.stop, self.order


OPENINGS = (
    Opening(
        "petroff",
        "black",
        # 3. d4 is the second of the two main lines (from memory)
        Fault(
            "(3. d4 Nxe4 {By 4. Nxe5 d5 5. Bd3 he only changes the order. To any other move the reply is 4... d5, or 4... Nxd2 where a knight goes "
            "to that square.} 4. Bd3 d5 {To anything else than the capture the reply is 5... exd4.} 5. Nxe5 Nd7 {He has a knight on e5, so we ask it a question.})",
            "e4 e5 Nf3 Nf6",
            "d4",
        ),
        # the pawn holds the knight, but 6. d3 wins it, for it may not move off the file
        Fault(
            "5. Qe2 Qe7 {The knight may not move while our king stands behind it, so we cover the file first. Anything else than 6. d3 we meet with 6... Nc6, and "
            "6. Nc3 with 6... Nxc3.} 6. d3 Nf6",
            "e4 e5 Nf3 Nf6 Nxe5 d6 Nf3 Nxe4 Qe2",
            "d5",
            put="5. Qe2 d5 {The pawn holds the knight.}",
        ),
        Fault(
            "4. d4 exd4 5. Nxd4 Bb4 {We threaten the pawn on e4.}",
            "e4 e5 Nf3 Nf6 Nc3 Nc6 d4 exd4",
            "d4",
            put="4. d4 exd4",
        ),
        Fault(
            "(3. Bc4 Nc6 {On 4. Ng5 strike back with 4... d5. To anything else the reply is 4... Nxe4 or 4... Bc5.} 4. Nc3 {The position that we know from 3. Nc3 Nc6 4. Bc4.})",
            "e4 e5 Nf3 Nf6",
            "Bc4",
            back="Bc4 Nxe4 Nc3 Nc6",
        ),
    ),
    Opening(
        "italian",
        "white",
        # the Hungarian Defence
        Fault(
            "(3... Be7 4. O-O {He is modest; we castle and think about the centre.})",
            "e4 e5 Nf3 Nc6 Bc4",
            "Be7",
        ),
        # Légal's sacrifice where it is wrong: the knight on c6 takes back and guards the bishop (from memory, any handbook)
        Fault(
            "5. h3 {We threaten to take the bishop, so it has to say where it goes. A sacrifice on e5 would be wrong here, for his knight on c6 takes back and guards the bishop.}",
            "e4 e5 Nf3 Nc6 Bc4 d6 Nc3 Bg4",
            "Nxe5",
            put="5. Nxe5 {Légal's sacrifice: after 5... Bxd1 6. Bxf7+ Ke7 7. Nd5 it is mate.}",
        ),
        Fault(
            "6. exd5 Nxd5 7. O-O {His centre looks fine, but our king is in safety and his is not yet.}",
            "e4 e5 Nf3 Nc6 Bc4 Bc5 d3 Nf6 c3 d5 exd5",
            "d5",
            put="6. exd5",
        ),
        Fault(
            "(3... Nf6 4. d3 {To anything else than the bishop we reply 5. O-O or 5. c3.} 4... Bc5 {The same position as after 3... Bc5 4. d3 Nf6.})",
            "e4 e5 Nf3 Nc6 Bc4",
            "Nf6",
            back="Nf6 d3 Bc5",
        ),
    ),
    Opening(
        "caro",
        "black",
        Fault("(3. e5 Bf5 {First the bishop goes out, then the pawn to e6.})", "e4 c6 d4 d5", "e5"),
        # 6. Nd6 is mate: the queen pins the pawn on e7 (from memory, any handbook)
        Fault(
            "5. Qe2 e6 {Careful, this is the one move order in which the king's knight must wait. Now the knight has no business on d6, for the bishop looks there.}",
            "e4 c6 d4 d5 Nc3 dxe4 Nxe4 Nd7 Qe2",
            "Ngf6",
            put="5. Qe2 Ngf6 {As in the other line, and the knights are changed next.}",
        ),
        Fault(
            "3. exd5 cxd5 {A quiet pawn structure.}",
            "e4 c6 d4 d5 exd5",
            "d5",
            put="3. exd5 {A quiet pawn structure.}",
        ),
        Fault(
            "(3. Nd2 dxe4 {Anything else than taking back leaves us a pawn up.} 4. Nxe4 {It comes to the same as 3. Nc3.})",
            "e4 c6 d4 d5",
            "Nd2",
            back="Nd2 dxe4 Nxe4",
        ),
    ),
    Opening(
        "french",
        "black",
        Fault(
            "(4. Bb5+ Bd7 {Mostly he changes. If he guards the bishop with 5. Qe2, it falls to 5... Qa5+; to anything else the reply is 5... Bxb5 or 5... Nc6.} 5. Bxd7+ Qxd7 {He has changed his good bishop for our bad one.})",
            "e4 e6 d4 d5 e5 c5",
            "Bb5+",
        ),
        # 8. Nxd4 Qxd4 9. Bb5+ and the queen falls (from memory, any handbook)
        Fault(
            "7. cxd4 Bd7 {Patience. Only now, when no bishop comes to b5 with check, may we really take the pawn on d4.}",
            "e4 e6 d4 d5 e5 c5 c3 Nc6 Nf3 Qb6 Bd3 cxd4 cxd4",
            "Nxd4",
            put="7. cxd4 Nxd4 {This wins a pawn.}",
        ),
        Fault(
            "6. Be2 cxd4 {To anything else than taking back we reply 7... Nh6.} 7. cxd4 Nh6 {The knight is on its way to f5.}",
            "e4 e6 d4 d5 e5 c5 c3 Nc6 Nf3 Qb6 Be2 cxd4",
            "d4",
            put="6. Be2 cxd4",
        ),
        Fault(
            "(4. Nf3 Nc6 {Anything else than 5. c3 we answer with 5... cxd4.} 5. c3 {And we are back, it is the position after 4. c3 Nc6 5. Nf3.})",
            "e4 e6 d4 d5 e5 c5",
            "Nf3",
            back="Nf3 Nc6 c3",
        ),
    ),
    Opening(
        "queens-gambit",
        "white",
        Fault(
            "(3... dxc4 4. e4 {We have the whole centre, and the pawn on c4 we take with the bishop.})",
            "d4 d5 c4 e6 Nc3",
            "dxc4",
        ),
        # the Elephant trap: 6... Nxd5 7. Bxd8 Bb4+ (from memory)
        Fault(
            "5. e3 {The pawn on d5 is not hanging, whatever it looks like, so we develop.}",
            "d4 d5 c4 e6 Nc3 Nf6 Bg5 Nbd7 cxd5 exd5",
            "Nxd5",
            put="5. cxd5 {Anything else than taking back leaves him a pawn down.} 5... exd5 6. Nxd5 {It wins a pawn, for after 6... Nxd5 7. Bxd8 his queen is gone.}",
        ),
        Fault(
            "4. cxd5 exd5 {If the other pawn takes back, 4... cxd5, we play 5. Nf3.} 5. Bf4 {A calm game with the bishop outside.}",
            "d4 d5 c4 e6 Nc3 c6 cxd5",
            "d5",
            put="4. cxd5 {A calm game.}",
        ),
        Fault(
            "(3... Be7 4. Nf3 {To anything else than the knight we reply 5. cxd5 or 5. Bf4.} 4... Nf6 5. Bg5 {This is the main line again.})",
            "d4 d5 c4 e6 Nc3",
            "Be7",
            back="Be7 Nf3 Nf6 Bg5",
        ),
    ),
    Opening(
        "englund",
        "white",
        Fault(
            "(2... Bb4+ 3. c3 {We threaten the bishop, it has to go back, and we have gained a move.})",
            "d4 e5 dxe5",
            "Bb4+",
        ),
        # 6. Bc3 Bb4 and White loses at least the bishop (from memory, any handbook)
        Fault(
            "6. Nc3 {To anything else than 6... Bb4 the reply is 7. Rb1 as well.} 6... Bb4 7. Rb1 {Anything else than the only square for the queen gives her away for too little.} "
            "7... Qa3 8. Rb3 {Whichever way she goes, 8... Qa5 or 8... Qa6, the reply is the same.} 8... Qa5 9. e4 {Two bishops, two open files, and her Majesty has made five moves.}",
            "d4 e5 dxe5 Nc6 Nf3 Qe7 Bf4 Qb4+ Bd2 Qxb2",
            "Bc3",
            put="6. Bc3 {The bishop attacks the queen, and we threaten to take her.}",
        ),
        Fault(
            "3. exf6 {Whatever takes back, 3... Nxf6 or 3... Qxf6 or 3... gxf6, we are a pawn up.} 3... Nxf6 4. Nf3 {A whole pawn more.}",
            "d4 e5 dxe5 f6 exf6",
            "f6",
            put="3. exf6 {A whole pawn more.}",
        ),
        Fault(
            "(2... Bc5 3. Nf3 {Do not fall asleep, f2 is looked at. To anything else than the knight we reply 4. e3.} 3... Nc6 {The same as 2... Nc6 3. Nf3 Bc5.})",
            "d4 e5 dxe5",
            "Bc5",
            back="Bc5 Nf3 Nc6",
        ),
    ),
)


@pytest.fixture(scope="module")
def store() -> Iterator[EvidenceStore]:
    """A lesson and its twin ask much the same."""
    kept = EvidenceStore(None)
    yield kept
    kept.close()


def text_of(opening: Opening) -> str:
    """The lesson, its moves in one line."""
    tags, moves = (LESSONS / f"{opening.file}.pgn").read_text(encoding="utf-8").split("\n\n", 1)
    return f"{tags}\n\n{' '.join(moves.split())}\n"


def twin_of(opening: Opening) -> str:
    text = text_of(opening)
    for fault in opening.faults:
        assert text.count(fault.cut) == 1
        text = text.replace(fault.cut, fault.put)
    return text


def studied(text: str, side: Side, store: EvidenceStore) -> Study:
    return study(Lesson.from_text(text, side=side), Effort.SKETCH, store=store)


def moves(place: Place) -> str:
    return " ".join(str(at.san) for at in place.path()[1:])


def taught_slips(found: Study) -> set[tuple[str, str]]:
    """Moves that the lesson recommends and that cost what a slip costs: where, and which."""
    return {
        (moves(one.place.parent), one.cost.san)
        for one in found.costly
        if one.cost.points >= COSTS and one.place.parent is not None
    }


@pytest.mark.parametrize("opening", OPENINGS, ids=lambda one: one.file)
def test_a_complete_lesson_comes_out_clean(opening: Opening, store: EvidenceStore) -> None:
    found = studied(text_of(opening), opening.side, store)
    assert [(moves(one.place), one.reply.san) for one in found.open] == []
    assert taught_slips(found) == set()
    assert [moves(one.place) for one in found.stops] == []
    assert [(moves(one.place), one.line) for one in found.returns] == []


@pytest.mark.parametrize("opening", OPENINGS, ids=lambda one: one.file)
def test_each_planted_fault_is_found_and_nothing_else(
    opening: Opening, store: EvidenceStore
) -> None:
    found = studied(twin_of(opening), opening.side, store)
    reply, slip, stop, order = opening.faults
    assert {(moves(one.place), one.reply.san) for one in found.open} == {
        (reply.at, reply.move),
        (order.at, order.move),
    }
    assert taught_slips(found) == {(slip.at, slip.move)}
    assert [(moves(one.place), one.line[0][2:4]) for one in found.stops] == [(stop.at, stop.move)]
    assert [(moves(one.place), " ".join(one.line)) for one in found.returns] == [
        (order.at, order.back)
    ]
