"""As before: the same move elsewhere in the lesson. Definition: common practice."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome
from lineproof.claims.kinds.as_before import check
from tests.claims.conftest import Judge, Scripted, claims_of
from tests.claims.kinds.sketching import kinds_of

# the same capture in three lines
LINES = "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 exd4 4. Nxd4) (2... Nf6 3. d4 exd4 4. Nxd4 {%s}) 3. d4 exd4 4. Nxd4 *"


@pytest.mark.parametrize(
    "words",
    [
        "White plays Nxd4 again.",
        "Once more Nxd4.",
        "As before, Nxd4.",
        "Nxd4 as in the main line.",
        "As in the main line, White plays Nxd4.",
        "The same capture as in the main line.",
        "This is the same move as in the line with 2... d6.",
        "We have seen Nxd4 before.",
        "Again, White plays Nxd4.",
        "Here too, Nxd4 is the same idea as before.",
        "We know Nxd4 from the main line.",
        "Just as in the line with 2... d6, White takes on d4, the same trick as in the main line.",
    ],
)
def test_a_move_that_the_lesson_has_shown_is_as_before(judge: Judge, words: str) -> None:
    finding = judge(LINES % words)
    assert (finding.claim.kind, finding.claim.side) == ("as-before", "white")
    assert finding.outcome is Outcome.HOLDS


def test_a_move_that_it_has_not_shown_is_not(judge: Judge) -> None:
    assert judge(LINES % "As before, Qxd4.").outcome is Outcome.FAILS
    assert judge(LINES % "Qxd4 as in the main line.").outcome is Outcome.FAILS


def test_near_miss_a_move_that_comes_later_in_the_text_is_left_open(judge: Judge) -> None:
    later = (
        "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 exd4 4. Nxd4 {Once more Nxd4.}) 3. d4 exd4 4. Nxd4 *"
    )
    assert judge(later).outcome is Outcome.UNSETTLED


@pytest.mark.parametrize(
    ("points", "expected"),
    [(55, Outcome.HOLDS), (54, Outcome.UNSETTLED), (48, Outcome.FAILS)],
)
def test_what_works_again_must_be_sensible_here(points: int, expected: Outcome) -> None:
    (claim,) = claims_of(LINES % "Nxd4 works here too.")
    ask = Scripted({"d1d4": 60, "f3d4": points}, "d1d4")
    assert check(claim, ask).outcome is expected


@pytest.mark.parametrize(
    "words",
    [
        "White takes again.",
        "Once more the kettle is on.",
        "The same idea as in the line with 4. Qxd4.",
        "Qh5 again.",
        "Nxd4 again, so the knight has moved twice.",  # the knight again, perhaps, not the move
        "As in the main line, White stands better.",
        "White would play Nxd4 again.",
        "White does not play Nxd4 again.",
    ],
)
def test_other_repetitions_are_not_read(words: str) -> None:
    assert "as-before" not in kinds_of(LINES % words)
