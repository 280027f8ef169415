"""The same thing said in many ways: verdicts, marks, material, mate, and the moves that are spoken of. Definitions: the kinds' own."""

from __future__ import annotations

import pytest

from tests.claims.conftest import claims_of

PETROFF = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 Nxe4 4. Qe2 Nf6 {%s} 5. Nc6+ *"
DISCOVERED = "1. e4 e5 2. Nf3 Nf6 3. Nxe5 Nxe4 4. Qe2 Nf6 5. Nc6+ {%s} Be7 *"
VIENNA = "1. e4 e5 2. Nc3 Nf6 3. f4 exf4 4. e5 Ng8 5. Nf3 d6 {%s} 6. d4 *"
BUDAPEST = (
    "1. d4 Nf6 2. c4 e5 3. dxe5 Ng4 4. Bf4 Nc6 5. Nf3 Bb4+ 6. Nbd2 Qe7 7. a3 Ngxe5 {%s} 8. Nxe5 *"
)
SCHOLAR = "1. e4 e5 2. Qh5 Nc6 3. Bc4 {%s} g6 *"
LEGAL = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 {%s} 6. Bxf7+ *"


def read(text: str, words: str, taught: str = "white") -> set[tuple[str, str | None, bool]]:
    return {(c.kind, c.side, c.negated) for c in claims_of(text % words, taught)}


@pytest.mark.parametrize(
    ("words", "side"),
    [
        ("It's already hopeless for Black.", "white"),
        ("Black's position is in ruins.", "white"),
        ("Black can resign.", "white"),
        ("It's all over for Black.", "white"),
        ("White wins without any trouble.", "white"),
        ("White has much the better game.", "white"),
        ("The better chances are White's.", "white"),
        ("White is to be preferred.", "white"),
        ("Clear advantage for White.", "white"),
        ("Black is fighting for his life.", "white"),
        ("White comes out on top.", "white"),
        ("Black has solved all his problems.", "black"),
        ("Black equalises without difficulty.", "black"),
        ("Neither side can claim an advantage.", "white"),
        ("I'd rate the position as balanced.", "white"),
    ],
)
def test_a_verdict_is_said_in_many_ways(words: str, side: str) -> None:
    assert ("verdict", side, False) in read(VIENNA, words)


@pytest.mark.parametrize(
    "words",
    [
        "White would like to be better.",
        "If he plays g5 we castle and it's all over.",
        "Even with the knight on f3 Black may castle.",
        "White wins the f-pawn back.",
        "Both sides have chances.",
    ],
)
def test_near_miss_what_is_no_verdict(words: str) -> None:
    assert not {c for c in read(VIENNA, words) if c[0] == "verdict"}


@pytest.mark.parametrize(
    "words",
    [
        "What a howler!",
        "A terrible mistake!",
        "Bad move!",
        "This is where Black goes wrong.",
        "Black commits a serious error.",
        "Black's last move was a mistake.",
        "Give that move two question marks.",
        "This natural-looking retreat is a blunder.",
        "Nf6 strikes me as a touch doubtful.",
        "Nf6 isn't entirely sound.",
    ],
)
def test_a_mark_is_said_in_many_ways(words: str) -> None:
    assert ("move-mark", "black", False) in read(PETROFF, words)


@pytest.mark.parametrize(
    "words",
    [
        "Black finds the best reply.",
        "This is the best Black can do.",
        "Black has nothing better.",
        "A good, solid move.",
        "Black is right to take.",
        "Best is to take on e5.",
    ],
)
def test_a_good_move_is_said_in_many_ways(words: str) -> None:
    assert ("move-mark", "black", False) in read(BUDAPEST, words) | read(
        BUDAPEST, words.replace("to take.", "to capture on e5.")
    )


@pytest.mark.parametrize(
    "words",
    [
        "The best move, as we shall see, is another.",
        "It has nothing better than to trot home.",
        "Half a point for being clever.",
        "White's strongest move comes next.",
    ],
)
def test_near_miss_what_marks_no_move(words: str) -> None:
    assert not {c for c in read(PETROFF, words) if c[0] == "move-mark"}


@pytest.mark.parametrize(
    ("words", "kind", "side", "negated"),
    [
        ("The queen is ours.", "wins-material", "white", False),
        ("That's the queen in the bag.", "wins-material", "white", False),
        ("White wins nothing.", "wins-material", "white", True),
        ("White wins the queen by force.", "by-force", None, False),
        ("Nothing saves Black's queen.", "by-force", None, False),
    ],
)
def test_the_queen_falls_in_many_ways(
    words: str, kind: str, side: str | None, negated: bool
) -> None:
    assert (kind, side, negated) in read(DISCOVERED, words)


@pytest.mark.parametrize(
    ("words", "kind", "negated"),
    [
        ("Scholar's mate is threatened.", "mate-threat", False),
        ("Black must stop the mate on f7.", "mate-threat", False),
        ("White is one move away from mate.", "mate-threat", False),
        ("Unless Black reacts, it's mate.", "mate-threat", False),
        ("If Black isn't careful, he's mated on f7.", "mate-threat", False),
        ("No mate is threatened.", "mate-threat", True),
    ],
)
def test_a_mate_threatens_in_many_ways(words: str, kind: str, negated: bool) -> None:
    assert (kind, "white", negated) in read(SCHOLAR, words)


@pytest.mark.parametrize(
    "words",
    [
        "Two moves and it's mate.",
        "White forces mate.",
        "Black is mated in two.",
        "Black will be mated in two.",
    ],
)
def test_a_mate_to_come_is_no_mate_on_the_board(words: str) -> None:
    kinds = {c[0] for c in read(LEGAL, words)}
    assert "mate-in" in kinds
    assert "mate" not in kinds


def test_a_move_that_walks_into_mate_is_mated_by_the_other_side() -> None:
    assert ("mate-in", "black", False) in read(
        BUDAPEST, "8. axb4 walks into a smothered mate.", "black"
    )


@pytest.mark.parametrize(
    ("words", "kind", "side"),
    [
        ("8. axb4 is met by Nd3 mate.", "refuted-by", "black"),
        ("White can't take the bishop.", "cannot-afford", "white"),
        ("White shouldn't take on b4.", "not-recommended", "white"),
        ("I'd advise against taking the bishop.", "not-recommended", "white"),
        ("8. axb4 is unplayable.", "playable", "white"),
        ("Don't worry about 8. Nxe5.", "nothing-to-fear", "black"),
        ("Black has got his pawn back.", "regains", "black"),
        ("Material equality has been restored.", "material-count", "white"),
        ("Seven pawns each.", "material-count", "white"),
    ],
)
def test_moves_and_material_are_spoken_of_in_many_ways(words: str, kind: str, side: str) -> None:
    assert (kind, side) in {c[:2] for c in read(BUDAPEST, words, "black")}


@pytest.mark.parametrize(
    ("words", "kind"),
    [
        ("2... Nc6 is the better move.", "better-is"),
        ("3... Nxe4 was the mistake.", "move-mark"),
        ("Taking on e4 was a mistake.", "move-mark"),
        ("What would have been better? Qe7.", "better-is"),
        ("Black ought to have played Qe7.", "better-is"),
        ("The lesser evil was Qe7.", "better-is"),
        ("Only move!", "only-move"),
        ("Anything else loses a piece.", "only-move"),
        ("There's no alternative.", "forced"),
        ("Forced.", "forced"),
    ],
)
def test_the_moves_before_are_spoken_of(words: str, kind: str) -> None:
    assert kind in {c[0] for c in read(PETROFF, words)}


def test_the_only_other_move_is_no_only_move() -> None:
    assert "only-move" not in {c[0] for c in read(PETROFF, "Qe7 is the only other move.")}


EXCHANGED = "1. d4 d5 2. c4 dxc4 3. e3 b5 4. a4 c6 5. axb5 cxb5 6. Qf3 Nc6 7. Qxc6+ Bd7 8. Qf3 e5 9. dxe5 Bb4+ 10. Bd2 Bxd2+ 11. Nxd2 {%s} *"
SPANISH = "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. Nxe5 {%s} Qd4 *"


@pytest.mark.parametrize(
    ("words", "negated"),
    [
        ("Each side has lost a bishop.", False),
        ("The dark-squared bishops are gone.", False),
        ("A pair of bishops is gone.", False),
        ("The queens are still on the board.", True),
    ],
)
def test_an_exchange_is_told_by_halves(words: str, negated: bool) -> None:
    assert ("exchange", negated) in {(c[0], c[2]) for c in read(EXCHANGED, words)}


@pytest.mark.parametrize(
    ("words", "kind", "negated"),
    [
        ("Finally White can take on e5.", "works-now", False),
        ("The time for Nxe5 has not come yet.", "works-now", True),
        ("Nothing speaks against Nxe5.", "playable", False),
        ("White could also play 5. d3.", "playable", False),
        ("This wins by force.", "by-force", False),
    ],
)
def test_what_works_now_is_told_in_many_ways(words: str, kind: str, negated: bool) -> None:
    assert (kind, negated) in {(c[0], c[2]) for c in read(SPANISH, words)}


def test_near_miss_what_is_given_back_is_no_pawn_move() -> None:
    assert not {
        c for c in read(PETROFF, "Black does well to give the pawn back.") if c[0] == "move-mark"
    }
