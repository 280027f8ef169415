"""Discovered attacks. Definition: common practice. The line is Légal's (from memory)."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from tests.claims.kinds.sketching import outcome, read_as, sketched

LEGAL = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 {%s} 5... Bxd1 *"
BEFORE = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 {%s} 5. Nxe5 *"


@pytest.mark.parametrize(
    "words",
    [
        "This is a discovered attack.",
        "This is a discovered attack on the bishop on g4.",
        "The knight uncovers an attack on the bishop.",
        "5. Nxe5 unveils the queen.",
        "Moving the knight unveils the queen.",
        "The knight unmasks the queen against the bishop.",
        "The bishop on g4 is attacked by a discovery.",
        "We unleash our queen against the bishop.",
        "With a discovered attack on the bishop.",
    ],
)
def test_a_true_discovered_attack_holds(words: str) -> None:
    finding = sketched("discovered-attack", LEGAL % words)
    assert finding.outcome is Outcome.HOLDS
    assert (
        finding.because
        == "Nxe5 opens the line of the queen on d1, which now attacks the bishop on g4."
    )


def test_a_false_target_fails_and_says_what_is_attacked() -> None:
    finding = sketched("discovered-attack", LEGAL % "It's a discovered attack on his queen.")
    assert finding.outcome is Outcome.FAILS
    assert finding.because == "Nxe5 opens the line of the queen on d1 only to the bishop on g4."


def test_near_miss_the_line_is_opened_but_what_it_hits_is_protected_and_worth_less() -> None:
    movetext = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nf6 5. Nxe5 {This is a discovered attack.} *"
    assert outcome("discovered-attack", movetext) is Outcome.FAILS
    named = movetext.replace("attack.", "attack on the bishop on g4.")
    assert outcome("discovered-attack", named) is Outcome.HOLDS


def test_a_denial_is_turned() -> None:
    assert outcome("discovered-attack", LEGAL % "This is not a discovered attack.") is Outcome.FAILS
    assert outcome("discovered-attack", LEGAL % "This is no discovery.") is Outcome.FAILS
    assert (
        outcome("discovered-attack", "1. e4 {This isn't a discovered attack.} *") is Outcome.HOLDS
    )


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("White has a discovered attack on the bishop.", Outcome.HOLDS),
        ("White has no discovered attack.", Outcome.FAILS),
        ("White has a discovered attack on his queen.", Outcome.FAILS),
    ],
)
def test_a_possible_one_is_a_legal_move(words: str, expected: Outcome) -> None:
    assert outcome("discovered-attack", BEFORE % words) is expected


@pytest.mark.parametrize(
    "words",
    [
        "White opens up the position.",
        "The knight reveals its true colours.",
        "This was a discovery of the last century.",
        "A pupil discovered an attack here.",
    ],
)
def test_other_discoveries_are_not_read(words: str) -> None:
    assert not read_as("discovered-attack", LEGAL % words)


def test_the_piece_behind_attacks_when_another_has_left() -> None:
    finding = sketched("discovered-attack", LEGAL % "Our queen now attacks the bishop on g4.")
    assert finding.outcome is Outcome.HOLDS


def test_near_miss_a_piece_that_stood_open_before_is_not_laid_open() -> None:
    assert read_as("discovered-attack", LEGAL % "Our bishop now attacks f7.") == []


def test_a_move_said_in_words_lays_the_piece_open() -> None:
    words = "When the knight takes on e5, the queen attacks the bishop on g4."
    assert sketched("discovered-attack", BEFORE % words).outcome is Outcome.HOLDS
