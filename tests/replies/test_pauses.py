"""The point of a pause: what a proof has found of the words beside its answer goes before what falls."""

from __future__ import annotations

from lineproof.claims import Outcome
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, prove
from lineproof.proof.kept import held
from lineproof.replies import study
from lineproof.replies.pauses import Pause

LINE = (
    "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 {Now wait.} 6. Bxf7+ {%s} Ke7 7. Nd5# *"
)
"""Légal's mate; Hooper and Whyld, The Oxford Companion to Chess (from memory)."""


def pause(words: str, *, proved: str | None = None) -> Pause:
    """At 6. Bxf7+. proved: the words of the lesson that was proved before, where any was."""
    store = EvidenceStore(None)
    if proved is not None:
        prove(Lesson.from_text(LINE % proved, side="white"), Effort.SKETCH, store=store)
    lesson = Lesson.from_text(LINE % words, side="white")
    found = study(lesson, Effort.SKETCH, store=store)
    store.close()
    (one,) = [one for one in found.pauses if one.place.label == "5... Bxd1"]
    assert one.best == "Bxf7+"
    return one


MATE = "White mates in two."


def test_without_a_proof_the_point_is_what_the_line_comes_to() -> None:
    assert pause(MATE).point == "it mates"


def test_a_tactical_claim_that_holds_is_the_point() -> None:
    assert pause(MATE, proved=MATE).point == "after 6. Bxf7+ White mates in 1"


def test_a_reason_that_weighs_two_positions_is_not_the_point() -> None:
    words = "White wins material."
    lesson = Lesson.from_text(LINE % words, side="white")
    (finding,) = prove(lesson, Effort.SKETCH, store=EvidenceStore(None)).findings
    assert (finding.claim.kind, finding.outcome) == ("wins-material", Outcome.HOLDS)
    assert pause(words, proved=words).point == "it mates"


def test_a_claim_that_fails_or_is_no_tactic_is_not_the_point() -> None:
    for words in ("The bishop forks the king and the rook on h8.", "Black is in check."):
        assert pause(words, proved=words).point == "it mates"


def test_words_that_were_changed_since_the_proof_are_not_the_point() -> None:
    assert pause("Here it is.", proved=MATE).point == "it mates"


def test_what_the_last_run_held_is_known_without_a_search() -> None:
    store = EvidenceStore(None)
    lesson = Lesson.from_text(LINE % f"{MATE} The bishop is pinned.", side="white")
    assert held(lesson, store) == ()
    prove(lesson, Effort.SKETCH, store=store)
    assert [one.claim.words for one in held(lesson, store)] == [MATE.removesuffix(".")]
    store.record_run("now", {"findings": [{"fingerprint": 1}]})
    assert held(lesson, store) == ()
    store.close()
