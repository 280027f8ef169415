"""What a video shows and when, and its pictures before they are encoded."""

from __future__ import annotations

from itertools import pairwise
from typing import Any

import av
import numpy as np
import pytest
from hypothesis import given, settings

from lineproof.diagram import STAGE, JustPlayed, Mark, MarkedSquare, Pin, ShownMove, diagram, png
from lineproof.lesson import Lesson
from lineproof.order import running_order
from lineproof.publish.video import FRAMES, Claimed, Scene, Still, extended, scenes
from lineproof.publish.video.art import Art
from lineproof.publish.video.layout import Page
from lineproof.publish.video.motion import motion, shares
from lineproof.publish.video.planes import Planes, changed
from tests.order.lessons import AGAIN, BRANCHES, JOINING, MISTAKES
from tests.order.random_lessons import lessons

from .lessons import TRANSPOSING, nothing_found

PAGE = Page(640, 384)
MARKS: tuple[Mark, ...] = (
    JustPlayed("h8", "f6"),
    MarkedSquare("a1", "white"),
    MarkedSquare("h8", "black"),
    ShownMove("g1", "f3", "white"),
    ShownMove("a8", "h1", "black"),
    Pin("b4", "e1", "black"),
)
FEN = "rnbqk2r/pppp1ppp/4pn2/8/1bPP4/2N5/PP2PPPP/R1BQKBNR w KQkq - 2 4"


def of(lesson: Lesson) -> tuple[Scene, ...]:
    return scenes(running_order(lesson), Claimed(nothing_found(lesson).proof))


def without_gaps(lesson: Lesson) -> None:
    order = running_order(lesson)
    made = of(lesson)
    assert made[0].begins == 0 and made[-1].ends == round(order.seconds * FRAMES)
    assert all(one.ends == other.begins for one, other in pairwise(made))
    assert all(one.begins < one.ends for one in made)
    at: list[Still] = [made[0].still] * made[-1].ends
    for scene in made:
        at[scene.begins : scene.ends] = [scene.still] * (scene.ends - scene.begins)
    for cue, after in zip(order.cues, [*order.cues[1:], None], strict=True):
        last = len(at) if after is None else round(after.begins * FRAMES)
        if last > round(cue.begins * FRAMES):
            assert at[last - 1].placement == cue.place.board.fen.split()[0]
    keys = {scene.begins for scene in made if scene.key}
    assert keys == {round(cue.begins * FRAMES) for cue in order.cues} - {len(at)}
    for scene in made:
        if scene.kind == "move":
            assert scene.before is not None
            motion(scene.before.fen, scene.still.fen, scene.uci)


@pytest.mark.parametrize("text", [BRANCHES, JOINING, MISTAKES, AGAIN])
def test_scenes_follow_the_cues_without_gaps(text: str) -> None:
    without_gaps(Lesson.from_text(text, side="white"))


@given(lessons())
@settings(max_examples=40, deadline=None)
def test_scenes_of_any_lesson_follow_its_cues(lesson: Lesson) -> None:
    without_gaps(lesson)


def test_a_pass_changes_nothing_but_the_marks_and_a_position_is_set_up() -> None:
    lesson = Lesson.from_text(
        TRANSPOSING.replace("10... Kd7", "10... Kd7 {Said.}").replace("-- 12.", "-- {Passed.} 12."),
        side="white",
    )
    without_gaps(lesson)
    made = of(lesson)
    order = running_order(lesson)
    (passed,) = [cue for cue in order.cues if cue.uci == "0000"]
    (scene,) = [one for one in made if one.begins == round(passed.begins * FRAMES)]
    assert (scene.kind, scene.still.marks) == ("still", ())
    (set_up,) = [cue for cue in order.cues if cue.kind == "set up"]
    (scene,) = [one for one in made if one.begins == round(set_up.begins * FRAMES)]
    assert scene.kind == "fade" and scene.still.placement == "4k3/8/8/8/8/8/4P3/4K3"


def test_a_marked_square_belongs_to_the_side_whose_piece_stands_there() -> None:
    lesson = Lesson.from_text(
        "1. e4 {The pawn on e4 and the e7-pawn. Well.} e5 {Good.} *", side="white"
    )
    made = of(lesson)
    (marked, *_) = [scene for scene in made if len(scene.still.marks) > 1]
    assert set(marked.still.marks) == {
        JustPlayed("e2", "e4"), MarkedSquare("e4", "white"), MarkedSquare("e7", "black"),
    }  # fmt: skip
    assert made[-1].still.marks == (JustPlayed("e7", "e5"),)


def test_a_film_is_held_until_a_time_and_never_cut() -> None:
    made = of(Lesson.from_text("1. e4 {Good.} *"))
    assert extended(made, 0.5) == made
    longer = extended(made, 60.01)
    assert longer[:-1] == made[:-1] and longer[-1].ends == 1801
    moving = tuple(scene for scene in made if scene.kind == "move")
    assert [scene.kind for scene in extended(moving, 9)] == ["move", "still"]


def decoded(svg: str, size: int) -> np.ndarray[Any, Any]:
    decoder = av.VideoCodecContext.create("png", "r")
    (frame,) = decoder.decode(av.Packet(png(svg, size)))
    return frame.to_ndarray(format="rgb24")


@pytest.mark.parametrize("flipped", [False, True])
@pytest.mark.parametrize("size", [(640, 384), (1920, 1080)])
def test_a_still_is_the_diagram_of_the_stage(size: tuple[int, int], flipped: bool) -> None:
    page = Page(*size)
    art = Art(page, flipped)
    svg = diagram(FEN, marks=MARKS, theme=STAGE, flipped=flipped, size=page.board)
    right = decoded(svg, page.board).astype(int)
    whole = art.still(Still(FEN, MARKS)).astype(int)
    shown = whole[page.top : page.top + page.board, page.left : page.left + page.board]
    assert np.abs(shown - right).mean() < 0.1
    assert (np.abs(shown - right).max(axis=2) > 24).mean() < 0.0005
    for less in range(len(MARKS)):
        marks = MARKS[:less] + MARKS[less + 1 :]
        svg = diagram(FEN, marks=marks, theme=STAGE, flipped=flipped, size=page.board)
        assert np.abs(shown - decoded(svg, page.board)).mean() > 0.1


CASTLED = (
    ("r3k2r/8/8/8/8/8/8/R3K2R", "r3k2r/8/8/8/8/8/8/R4RK1", "e1g1", {"Ke1g1", "Rh1f1"}),
    ("r3k2r/8/8/8/8/8/8/R3K2R", "2kr3r/8/8/8/8/8/8/R3K2R", "e8c8", {"ke8c8", "ra8d8"}),
)


@pytest.mark.parametrize(("before", "after", "uci", "moves"), CASTLED)
def test_castling_moves_king_and_rook(before: str, after: str, uci: str, moves: set[str]) -> None:
    found = motion(before, after, uci)
    assert {one.letter + one.start + one.end for one in found.sliding} == moves
    assert not found.taken and len(found.resting) == 4


def test_a_pawn_taken_in_passing_goes_from_where_it_stands() -> None:
    found = motion("8/8/8/3pP3/8/8/8/8", "8/8/3P4/8/8/8/8/8", "e5d6")
    assert dict(found.taken) == {"d5": "p"}
    assert [(one.start, one.end, one.becomes) for one in found.sliding] == [("e5", "d6", "P")]


def test_a_pawn_that_takes_and_turns_is_one_piece_on_its_way() -> None:
    found = motion("1n6/2P5/8/8/8/8/8/8", "1Q6/8/8/8/8/8/8/8", "c7b8q")
    assert dict(found.taken) == {"b8": "n"}
    (one,) = found.sliding
    assert (one.letter, one.start, one.end, one.becomes) == ("P", "c7", "b8", "Q")


def test_a_move_is_slow_at_both_ends_and_smooth() -> None:
    found = shares(12)
    steps = [b - a for a, b in pairwise([0.0, *found])]
    assert len(found) == 12 and found[-1] == 1.0 and min(steps) > 0
    assert max(steps) == max(steps[4:8]) and steps[0] < 0.3 * max(steps) > steps[-1]


def test_a_piece_on_its_way_is_between_its_squares() -> None:
    """Halfway from e2 to e4 a pawn stands on e3."""
    art = Art(PAGE, False)
    before = Still("8/8/8/8/8/8/4P3/8 w - - 0 1")
    after = Still("8/8/8/8/4P3/8/8/8 b - - 0 1")
    pictures = list(art.pictures(Scene("move", 0, 12, after, before, "e2e4")))
    third = art.still(Still("8/8/8/8/8/4P3/8/8 b - - 0 1"))
    assert len(pictures) == 12 and (pictures[-1] == art.still(after)).all()
    assert (
        np.abs(pictures[5].astype(int) - third).mean() < 0.05
    )  # half of the way after 6 of 12 frames
    assert np.abs(pictures[5].astype(int) - pictures[4]).mean() > 0.05


def test_only_what_differs_is_reckoned_anew_and_gives_the_same_planes() -> None:
    art = Art(PAGE, False)
    stills = [art.still(Still(fen)) for fen in (FEN, "8/8/8/8/8/8/8/8 w - - 0 1", FEN)]
    moved = stills[0].copy()
    moved[203:211, 333:335] = 255
    assert changed(stills[0], moved) == (192, 320, 224, 336)
    assert changed(stills[0], stills[0].copy()) is None
    planes = Planes(PAGE)
    for picture in (*stills, moved):
        fresh = Planes(PAGE).of(picture)
        assert np.abs(planes.of(picture).astype(int) - fresh).max() <= 1
