"""What is said of another in a few words: "and so has White", "Black does not", "f6 twice". Readings: common practice."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of

GAME = "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {%s} *"
Read = set[tuple[str, str | None, bool]]


def read(words: str) -> Read:
    return {(c.kind, c.side, c.negated) for c in claims_of(GAME % words)}


@pytest.mark.parametrize(
    ("words", "last"),
    [
        ("Black has castled, and so has White.", ("castled", "white", False)),
        ("White has not castled, and neither has Black.", ("castled", "black", True)),
        ("White hasn't castled, nor has Black.", ("castled", "black", True)),
        ("We castled already, Black did not.", ("castled", "black", True)),
        ("Black has castled, but White does not.", ("castled", "white", True)),
        ("White has the bishop pair, and so does Black.", ("bishop-pair", "black", False)),
        ("The bishop pair, well, we've got ours and so's he.", ("bishop-pair", "black", False)),
        ("White has the bishop pair, Black does not.", ("bishop-pair", "black", True)),
    ],
)
def test_the_other_side_is_said_to_do_so_or_not(words: str, last: tuple[str, str, bool]) -> None:
    assert last in read(words)


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (
            "White has the majority in the centre, Black has it on the queenside.",
            {("majority", "white", False), ("majority", "black", False)},
        ),
        (
            "In the centre the majority is ours, and on the queenside it belongs to Black.",
            {("majority", "white", False), ("majority", "black", False)},
        ),
        ("The two bishops are ours.", {("bishop-pair", "white", False)}),
        ("The bishop pair isn't Black's.", {("bishop-pair", "black", True)}),
        ("Black is lost, and so he resigned.", {("verdict", "white", False)}),
        ("Once again a knight hits the pawn, just as e5 did before.", set()),
    ],
)
def test_what_a_side_has_is_taken_up_again(words: str, expected: Read) -> None:
    assert read(words) - {("threat", "white", False)} == expected


def test_a_second_part_takes_the_verb_of_the_first() -> None:
    both = claims_of(GAME % "We attack f7 two times and e5 once.")
    assert [(c.params["at"], c.params["n"]) for c in both] == [("f7", 2), ("e5", 1)]
    (by,) = claims_of(GAME % "f7 is attacked by the knight and by the bishop.")
    assert by.kind == "attacked-count"
    assert by.params["by"] == ["g5", "c4"]
    she = claims_of(GAME % "Look at this knight on g5: she's attacked once and defended twice.")
    assert [(c.kind, c.params["n"]) for c in she] == [("attacked-count", 1), ("defended-count", 2)]


@pytest.mark.parametrize(
    ("words", "moves"),
    [("White prepares d2-d4.", ("d4",)), ("White prepares Nb1-c3.", ("Nc3",))],
)
def test_a_long_move_is_its_short_one(words: str, moves: tuple[str, ...]) -> None:
    (claim,) = claims_of(GAME % words)
    assert claim.params["moves"] == moves


def test_a_diagonal_is_no_long_move() -> None:
    assert not claims_of(GAME % "The e1-h4 diagonal is long.")


def test_a_move_that_only_the_other_side_has_is_the_other_side_s_idea() -> None:
    (black,) = claims_of(GAME % "h6 is coming.")
    assert black.side == "black"
    (white,) = claims_of(GAME % "d3 is coming.")
    assert white.side == "white"


def test_a_side_that_clings_to_a_pawn_does_not_defend_it() -> None:
    assert not claims_of(GAME % "Black doesn't cling to the pawn.")
    assert {c.kind for c in claims_of(GAME % "Black's king clings to f7.")} == {"defends"}
