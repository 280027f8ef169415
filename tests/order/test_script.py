"""The cues, their times and the script."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from lineproof.claims.sentence import sentences
from lineproof.engine import Board
from lineproof.lesson import Lesson
from lineproof.order import Cue, RunningOrder, running_order
from lineproof.order.cues import cues
from lineproof.order.order import steps_of, telling
from lineproof.order.pausing import Point
from lineproof.order.pointing import named_squares
from lineproof.order.script import script
from lineproof.order.spacing import spaced
from lineproof.order.summary import summary

from .lessons import MISTAKES, lesson

VIENNA = Path(__file__).resolve().parents[2] / "examples" / "vienna"


@pytest.fixture(scope="module")
def vienna() -> RunningOrder:
    return running_order(Lesson.open(VIENNA))


def kinds(order: RunningOrder, kind: str) -> list[Cue]:
    return [cue for cue in order.cues if cue.kind == kind]


def test_the_demo_lesson_has_the_fewest_ways_back_there_can_be(vienna: RunningOrder) -> None:
    assert vienna.telling.file.worse_by(vienna.measure) >= 0.3
    assert vienna.measure == (22, 5, 0) and vienna.telling.proven
    assert not vienna.telling.early and len(vienna.telling.file_early) == 2


def test_the_demo_lesson_begins_and_ends_as_its_author_wants(vienna: RunningOrder) -> None:
    said = kinds(vienna, "say")
    assert said[0].words == "Good evening, and welcome to the Tuesday class."
    assert said[-1].words.startswith("That is all for tonight; stack the chairs, please")
    first = [cue.san for cue in vienna.cues[: vienna.cues.index(kinds(vienna, "go back to")[0])]]
    assert [san for san in first if san][-3:] == ["exf6", "Bxf6", "O-O"]


def test_each_cue_begins_where_the_one_before_ends(vienna: RunningOrder) -> None:
    assert vienna.cues[0].begins == 0
    for one, after in zip(vienna.cues, vienna.cues[1:], strict=False):
        assert after.begins == pytest.approx(one.begins + one.seconds, abs=0.002)
    assert vienna.seconds == pytest.approx(sum(cue.seconds for cue in vienna.cues), abs=0.1)


def test_the_times_are_what_the_constants_say() -> None:
    """At 60 words a minute a word is a second; a move has one more, a way back three, a mark one."""
    text = "1. e4 {One two three.} e5 (1... c5 {On e4. Pause here.}) *"
    at = lesson(text)
    order = running_order(at.with_settings(replace(at.settings, words_a_minute=60)))
    got = [(cue.kind, cue.seconds) for cue in order.cues]
    back = kinds(order, "go back to")[0]
    assert (
        back.words
        == "Back to the position with the white pawn on e4 and the black pawn still on e7, where Black has another move."
    )
    assert got == [
        ("play", 3), ("say", 3), ("play", 3),
        ("go back to", 24 + 3), ("play", 3), ("mark", 1), ("say", 3), ("say", 2), ("pause", 20),
    ]  # fmt: skip


def test_the_words_of_the_author_are_said_as_they_are(vienna: RunningOrder) -> None:
    for cue in kinds(vienna, "say"):
        assert cue.start is not None
        assert vienna.lesson.text[cue.start : cue.start + len(cue.words)] == cue.words


@pytest.mark.parametrize(
    ("text", "squares"),
    [
        ("The knight on e4 is attacked twice.", ("e4",)),
        ("The g7-pawn and the rook on h8, then the knight on e4, and on e4 again.", ("g7", "h8", "e4")),
        ("The knight stands on c6 and not on g6.", ("c6",)),
        ("Mate on f7, for the pawn on e4 has gone.", ("f7",)),
        ("The d4-square is weak and the d4-pawn is none.", ("d4",)),
        ("Now e4 would be a move.", ()),
        ("Bishop to c4 attacks.", ()),
    ],
)  # fmt: skip
def test_squares_that_a_sentence_points_at_are_marked(text: str, squares: tuple[str, ...]) -> None:
    board = Board("rn1qkb1r/ppp2ppp/2n5/8/4N3/8/PPPP1PPP/R1BQKBNR b KQkq - 0 1")
    (sentence,) = sentences(text, 0)
    assert named_squares(sentence, board) == squares


@pytest.mark.parametrize(
    ("words", "silence"),
    [
        ("Pause here and find the move; I shall pour the tea.", 20),
        ("Can you see it?", 20),
        ("Hands up, who would have played this?", 5),
        ("I shall stop talking now and then.", None),
        ("He has to find the only move.", 20),
    ],
)
def test_the_author_s_own_words_ask_for_a_pause(words: str, silence: int | None) -> None:
    order = running_order(lesson(f"1. e4 {{{words}}} e5 *"))
    assert [cue.silence for cue in kinds(order, "pause")] == ([] if silence is None else [silence])


def points(text: str, best: str, grade: int = 3) -> list[Cue]:
    told = telling(steps_of(lesson(text)))
    key = told.steps.lesson.places[6].key
    return list(cues(told, 150, [Point(key, best, grade)]))


def test_a_pause_point_is_asked_before_its_answer_is_shown() -> None:
    found = points(MISTAKES, "h5f7")
    (pause,) = [n for n, cue in enumerate(found) if cue.kind == "pause"]
    assert (
        found[pause].words == "White to move: what would you play?" and found[pause].silence == 20
    )
    assert next(cue.san for cue in found[pause:] if cue.san) == "Qxf7#"


def test_a_pause_point_comes_before_the_sentence_that_gives_it_away() -> None:
    text = MISTAKES.replace("A blunder.", "A blunder. It is over. Now Qxf7 mates.")
    found = [cue for cue in points(text, "h5f7") if cue.kind in ("say", "pause")]
    at = [cue.words for cue in found].index("It is over.")
    assert [cue.kind for cue in found[at : at + 3]] == ["say", "pause", "say"]
    assert found[at + 2].words == "Now Qxf7 mates."


def test_what_the_author_asks_is_not_asked_twice_and_what_the_lesson_lacks_not_at_all() -> None:
    text = MISTAKES.replace("A blunder.", "A blunder. Find the punishment.")
    assert [cue.asked for cue in points(text, "h5f7") if cue.kind == "pause"] == [True]
    assert [cue for cue in points(MISTAKES, "h5h4") if cue.kind == "pause"] == []


def test_of_pause_points_that_are_near_the_hardest_is_asked() -> None:
    talk = "We talk and talk about this line. " * 45  # 315 words, 126 seconds
    text = f"1. e4 {{A.}} e5 {{B.}} 2. Nf3 {{{talk}}} Nc6 {{C.}} 3. Bb5 {{D.}} a6 {{Pause here.}} 4. Ba4 {{E.}} *"
    told = telling(steps_of(lesson(text)))
    at = told.steps.lesson.places
    near = [Point(at[0].key, "e2e4", 1), Point(at[2].key, "g1f3", 4), Point(at[4].key, "f1b5", 5)]
    # the third stands beside the author's own pause; of the others, a few seconds apart, the second is harder
    assert spaced(near, list(cues(told, 150, near))) == [near[1]]
    assert spaced(near[:1], list(cues(told, 150, near))) == [near[0]]


def test_a_position_that_is_not_the_first_is_set_up() -> None:
    text = '[SetUp "1"]\n[FEN "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"]\n\n{King and pawn.} 1. e4 {Too fast.} (1. Kd2 {Better.}) *'
    order = running_order(lesson(text))
    assert order.cues[0].kind == "set up"
    assert (
        order.cues[0].words
        == "Set up this position. White has king e1, pawn e2. Black has king e8. White is to move."
    )
    assert [cue.words for cue in kinds(order, "go back to")] == [
        "Back to the position with the white pawn still on e2, where White has another move."
    ]


def test_a_second_game_begins_anew_without_a_way_back() -> None:
    text = (
        '1. e4 {One.} *\n\n[SetUp "1"]\n[FEN "4k3/8/8/8/8/8/4P3/4K3 w - - 0 1"]\n\n1. e4 {Two.} *'
    )
    order = running_order(lesson(text))
    assert [cue.kind for cue in order.cues] == ["play", "say", "set up", "play", "say"]
    assert order.measure.ways_back == 0


def test_a_null_move_is_said_and_shown() -> None:
    order = running_order(lesson("1. e4 {One.} e5 (1... -- {Nothing.} 2. d4 {A centre.}) 2. d4 *"))
    assert [cue.words for cue in kinds(order, "play")] == [
        "e four",
        "e five",
        "d four",
        "suppose Black passes",
        "d four",
    ]


def test_known_moves_are_announced_as_known() -> None:
    text = """1. Nf3 {A.} (1. Nc3 {B.} d5 2. Nf3 {B meets A.}) 1... d5 2. Nc3 {A meets B.} Nf6 {On.} 3. d4 {And on.} e6 {One.} (3... c6 {Two.}) *"""
    said = [cue.words for cue in kinds(running_order(lesson(text)), "play")]
    assert said[-3:] == ["as before, knight to f six", "d four", "but this time c six"]


def test_glyphs_are_named_in_the_script_and_not_said() -> None:
    order = running_order(lesson("1. e4 $1 {Good.} e5 $14 *"))
    assert [cue.note for cue in kinds(order, "play")] == ["good move", "White slightly better"]
    assert "**Play** E four *[good move]*. *(1. e4)*" in script(order)


def test_nothing_in_the_author_s_words_means_anything_to_markdown() -> None:
    words = "# Not *a* heading, `no` code, [no](link), <b>no</b> tag_s."
    text = script(running_order(lesson(f"1. e4 {{{words}}} *")))
    assert r"\# Not \*a\* heading, \`no\` code, \[no\](link), \<b\>no\</b\> tag\_s." in text


def test_the_summary_says_the_length_and_each_line(vienna: RunningOrder) -> None:
    lines = summary(vienna, "vienna").splitlines()
    assert lines[0].startswith("vienna: 20 min ") and lines[0].endswith(" at 150 words a minute.")
    backs = [line for line in lines if "ack to the position" in line]
    assert len(backs) == vienna.measure.ways_back
