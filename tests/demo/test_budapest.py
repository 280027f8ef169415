"""The second demo lesson: all that is read of it holds, and it has what a lesson has."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.claims import Outcome, Status
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, Proof, prove

FOLDER = Path(__file__).parent.parent.parent / "examples" / "budapest"


@pytest.fixture(scope="module")
def proof() -> Proof:
    return prove(Lesson.open(FOLDER), Effort.SKETCH, store=EvidenceStore(None))


def test_it_is_a_lesson_for_black_with_lines_that_meet(proof: Proof) -> None:
    lesson = proof.lesson
    assert lesson.settings.side == "black"
    assert len(lesson.positions) >= 60
    assert len(lesson.lines()) >= 12
    assert sum(len(places) > 1 for places in lesson.positions.values()) >= 2


def test_all_that_is_claimed_holds(proof: Proof) -> None:
    assert [f.claim.words for f in proof.findings if f.outcome is not Outcome.HOLDS] == []
    assert len(proof.findings) >= 80
    assert proof.contradictions == ()


def test_its_claims_are_of_many_kinds(proof: Proof) -> None:
    assert len({f.claim.kind for f in proof.findings}) >= 25


def test_most_of_its_sentences_are_read(proof: Proof) -> None:
    readings = proof.reading.sentences
    assert sum(r.status is Status.READ for r in readings) >= 0.7 * len(readings)


def test_the_trap_ends_in_mate(proof: Proof) -> None:
    """The smothered mate of the Kieninger trap; Hooper and Whyld, The Oxford Companion to Chess (from memory)."""
    mates = [p for p in proof.lesson.places if p.san == "Nd3#"]
    assert len(mates) == 2 and all(p.board.is_checkmate for p in mates)
    (pinned,) = [f for f in proof.findings if f.claim.place == mates[0] and f.claim.kind == "pin"]
    assert pinned.because.startswith("The queen on e7 looks through the pawn on e2 at the king")
