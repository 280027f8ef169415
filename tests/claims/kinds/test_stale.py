"""Stale words: what the board beside them makes impossible."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.claims import Outcome, read_lesson
from lineproof.lesson import Lesson
from lineproof.lesson.save import save
from lineproof.proof import Effort, EvidenceStore, settle
from tests.claims.conftest import claims_of

TEXT = "1. e4 e5 2. Nc3 Nf6 3. f4 {%s} d5 (3... exf4 4. e5 Qe7 5. Qe2 Ng8) 4. fxe5 Nxe4 *"


def reasons(words: str) -> list[str]:
    return [c.params["reason"] for c in claims_of(TEXT % words) if c.kind == "stale"]


@pytest.mark.parametrize(
    "words",
    [
        "Of course 3... exf4 is met by 4. e5.",
        "Later comes 4. fxe5.",
        "Black can answer ...d5 or ...d6.",
        "Instead of this 3. Nf3 is quiet.",
        "If Black does nothing, fxe5 follows.",
        "The knight on f6 is attacked after fxe5.",
        "The knight on c3 stands well.",
        "In reply 3... exf4 4. e5 Qe7 5. Qe2 is known.",
        "We dream of a rook on f1.",
    ],
)
def test_what_can_be_placed_is_not_stale(words: str) -> None:
    assert reasons(words) == []


@pytest.mark.parametrize(
    ("words", "part"),
    [
        ("Now 3... Bb4 5. Qg8 is strong.", "Qg8"),
        ("Here 4... d5 is best.", "wrong move number"),
        ("Bxf7+ wins at once.", "Bxf7"),
        ("The bishop on c4 aims high.", "c4"),
        ("Black's knight on c6 is strong.", "c6"),
    ],
)
def test_what_cannot_be_placed_is_stale(words: str, part: str) -> None:
    assert any(part in r for r in reasons(words)), reasons(words)


def test_near_miss_a_move_of_another_line_is_allowed_when_the_words_point_there() -> None:
    assert reasons("As in the line with 5. Qe2 we are happy.") == []


def test_words_whose_move_has_changed_since_are_to_be_read_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    file = tmp_path / "lesson.pgn"
    file.write_text("1. e4 e5 2. Nc3 {A sound move. It develops.} *")
    lesson = Lesson.open(file)
    save(lesson.with_text(lesson.text.replace("2. Nc3", "2. Nf3")))
    claims = [c for c in read_lesson(Lesson.open(file)).claims if c.kind == "stale"]
    assert [c.words for c in claims] == ["A sound move"]
    finding = settle(claims[0], Effort.SKETCH, EvidenceStore(None))
    assert finding.outcome is Outcome.UNSETTLED
    assert "Nc3" in finding.because


def test_words_that_moved_with_their_move_are_not_stale(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    file = tmp_path / "lesson.pgn"
    file.write_text("1. e4 e5 2. Nc3 {A sound move.} *")
    lesson = Lesson.open(file)
    save(lesson.with_text(lesson.text.replace("{A sound move.}", "{A sound move.} (2. Nf3)")))
    assert not [c for c in read_lesson(Lesson.open(file)).claims if c.kind == "stale"]


TWO_ROADS = "1. e4 e5 2. Nf3 (2. Nc3 Nc6 3. Nf3 {%s}) 2... Nc6 3. Nc3 Nf6 4. Bb5 Bb4 5. O-O *"


def test_a_move_below_the_same_position_on_another_road_is_not_stale() -> None:
    def found(words: str) -> list[str]:
        return [c.words for c in claims_of(TWO_ROADS % words) if c.kind == "stale"]

    assert found("Soon 5. O-O follows.") == []
    assert found("Soon 5. Bd3 follows.") == ["5. Bd3"]


def test_a_finding_shows_the_place_where_the_lesson_plays_the_move() -> None:
    moved = "1. e4 e5 2. Nc3 {It goes 3. Qg4 d6.} Nf6 (2... Bc5 3. Nf3 {Here Bf5 is strong.} Nc6) 3. f4 d5 4. exd5 Bf5 *"
    (claim,) = [c for c in claims_of(moved) if c.kind == "stale"]
    finding = settle(claim, Effort.SKETCH, EvidenceStore(None))
    assert finding.outcome is Outcome.FAILS
    assert finding.judgement.second == (
        "The lesson plays 4... Bf5 after 4. exd5, in line 1: the words may belong there."
    )


def test_a_finding_shows_the_place_where_the_piece_stands() -> None:
    text = "1. e4 e5 2. Nc3 Nf6 {Take the bishop on g4 at once.} (2... d6 3. Nf3 Bg4) 3. f4 *"
    (claim,) = [c for c in claims_of(text) if c.kind == "stale"]
    finding = settle(claim, Effort.SKETCH, EvidenceStore(None))
    assert finding.judgement.second == (
        "In the lesson such a piece stands there after 3... Bg4, in line 1: the words may belong there."
    )


@pytest.mark.parametrize(
    ("words", "stale"),
    [
        ("With his third move Black develops.", True),
        ("With his second move Black develops.", False),
        ("This move, Black's fourth, develops a knight.", True),
        ("This move, Black's second, develops a knight.", False),
    ],
)
def test_a_move_called_by_a_number_that_it_has_not(words: str, stale: bool) -> None:
    kinds = [c.kind for c in claims_of("1. e4 e5 2. Nf3 Nc6 {%s} 3. Bb5 *" % words)]
    assert ("stale" in kinds) is stale
