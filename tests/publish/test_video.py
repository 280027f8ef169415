"""The video as other programs have it: ffprobe for times, streams and chapters; its frames against the diagrams."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from typing import Any

import av
import numpy as np
import pytest
import webvtt

from lineproof.diagram import STAGE, JustPlayed, Mark, MarkedSquare, Pin, diagram, png
from lineproof.facade import Lesson
from lineproof.order import RunningOrder, running_order
from lineproof.publish import Choices, Filming, Found, PublishError, publish
from lineproof.publish.captioning import captions, chapters
from lineproof.publish.products.captions import make as make_captions
from lineproof.publish.products.video import PRODUCT, make, notes
from lineproof.publish.video.layout import Page

from .lessons import nothing_found
from .test_captions import HOSTILE

TEXT = """[Event "Harbour Street <i>\\"trap\\"</i>"]

1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 {The bishop pins the knight to the queen. We like it.} 4. Nc3 g6 {Pause here.}
5. Nxe5 (5. O-O Bg7 {Quiet.}) 5... Bxd1 6. Bxf7+ Ke7 7. Nd5# {This is mate.} *
"""
"""Légal's mate (Hooper and Whyld, The Oxford Companion to Chess, from memory)."""
SIZE = (640, 384)
BOARD, LEFT, TOP = 320, 160, 32
"""Squares of 40 pixels."""
SMALL = Choices(filming=Filming(size=SIZE))


@dataclass(frozen=True)
class Made:
    lesson: Lesson
    found: Found
    order: RunningOrder
    file: Path
    frames: list[tuple[float, np.ndarray[Any, Any]]]


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Made:
    lesson = Lesson.from_text(TEXT, name="trap.pgn", side="white", audience=1400)
    found = Found(lesson.prove("sketch"))
    file = film(lesson, found, tmp_path_factory)
    return Made(lesson, found, running_order(lesson), file, decoded(file))


def film(lesson: Lesson, found: Found, factory: Any, choices: Choices = SMALL) -> Path:
    ((name, data),) = make(lesson, found, choices).items()
    folder = factory.mktemp("film") if hasattr(factory, "mktemp") else factory
    (folder / name).write_bytes(data)
    return Path(folder / name)


def decoded(file: Path) -> list[tuple[float, np.ndarray[Any, Any]]]:
    """Each frame with the second from which it is shown."""
    with av.open(str(file)) as source:
        return [
            (
                float(frame.time),
                frame.reformat(format="rgb24", src_colorspace="ITU709").to_ndarray(),
            )
            for frame in source.decode(video=0)
        ]


def at(frames: list[tuple[float, np.ndarray[Any, Any]]], seconds: float) -> np.ndarray[Any, Any]:
    """What is seen at a time."""
    return [picture for begins, picture in frames if begins <= seconds + 0.001][-1]


def board(picture: np.ndarray[Any, Any]) -> np.ndarray[Any, Any]:
    return picture[TOP : TOP + BOARD, LEFT : LEFT + BOARD].astype(int)


def drawn(fen: str, marks: tuple[Mark, ...] = (), *, flipped: bool = False) -> np.ndarray[Any, Any]:
    """The diagram of the stage, as the desk and the pictures have it."""
    svg = diagram(fen, marks=marks, theme=STAGE, flipped=flipped, size=BOARD)
    decoder = av.VideoCodecContext.create("png", "r")
    (frame,) = decoder.decode(av.Packet(png(svg, BOARD)))
    return frame.to_ndarray(format="rgb24").astype(int)


def apart(one: np.ndarray[Any, Any], other: np.ndarray[Any, Any]) -> float:
    """Mean difference of two pictures, 0 to 255."""
    return float(np.abs(one - other).mean())


NEAR = 4.0
"""How far a decoded frame may be from its diagram: what coding in half the colours loses at 16 pixels a square. A move more or less is over 5."""


def probed(file: Path) -> Any:
    said = subprocess.run(
        ["ffprobe", "-v", "error", "-count_frames", "-show_streams", "-show_chapters", "-show_format", "-of", "json", str(file)],
        capture_output=True,
        check=True,
        text=True,
    )  # fmt: skip
    return json.loads(said.stdout)


def streams(value: Any) -> dict[str, Any]:
    return {stream["codec_name"]: stream for stream in value["streams"]}


def test_length_frames_and_streams_are_those_of_the_running_order(made: Made) -> None:
    value = probed(made.file)
    assert abs(float(value["format"]["duration"]) - made.order.seconds) < 0.05
    video = streams(value)["h264"]
    assert abs(float(video["duration"]) - made.order.seconds) < 0.05
    assert (video["width"], video["height"]) == SIZE
    assert (video["pix_fmt"], video["r_frame_rate"]) == ("yuv420p", "30/1")
    assert video["color_space"] == "bt709"
    assert set(streams(value)) == {"h264", "mov_text", "bin_data"}
    assert value["format"]["tags"]["title"] == 'Harbour Street <i>"trap"</i>'
    # 12 frames of a move and 24 of a way back, then a still; a pause has one each second
    counts = {"play": 13, "go back to": 25, "say": 1, "mark": 1}
    kinds = [cue.kind for cue in made.order.cues]
    expected = sum(counts.get(kind, 0) for kind in kinds) + 20 * kinds.count("pause")
    assert kinds.count("pause") == kinds.count("go back to") == 1
    assert int(video["nb_read_frames"]) == expected == len(made.frames)


def test_chapters_and_captions_are_in_it(made: Made) -> None:
    value = probed(made.file)
    found = [(c["tags"]["title"], float(c["start_time"])) for c in value["chapters"]]
    assert found == [(one.title, one.begins) for one in chapters(made.order)]
    assert len(found) == 2
    assert abs(float(value["chapters"][-1]["end_time"]) - made.order.seconds) < 0.05
    srt = subprocess.run(
        ["ffmpeg", "-v", "error", "-i", str(made.file), "-map", "0:s:0", "-f", "webvtt", "-"],
        capture_output=True, check=True, text=True,
    ).stdout  # fmt: skip
    beside = make_captions(made.lesson, made.found, Choices())
    (text,) = [data.decode() for name, data in beside.items() if name.endswith(".vtt")]
    read = [(c.start, c.end, c.text) for c in webvtt.from_string(srt)]
    assert read == [(c.start, c.end, c.text) for c in webvtt.from_string(text)]


def test_hostile_words_are_in_it_as_they_are_beside_it(tmp_path: Path) -> None:
    lesson = Lesson.from_text(HOSTILE, name="hostile.pgn", side="white")
    file = film(lesson, nothing_found(lesson), tmp_path)
    with av.open(str(file)) as source:
        packets = [bytes(one) for one in source.demux(subtitles=0) if one.size > 2]
    texts = [one[2 : 2 + int.from_bytes(one[:2], "big")].decode() for one in packets]
    assert texts == ["\n".join(one.lines) for one in captions(running_order(lesson))]
    assert all(len(one) == 2 + int.from_bytes(one[:2], "big") for one in packets)
    assert any("<script>" in text for text in texts) and any("-->" in text for text in texts)


def test_a_player_can_begin_at_each_cue(made: Made) -> None:
    said = subprocess.run(
        ["ffprobe", "-v", "error", "-select_streams", "v", "-show_entries", "packet=pts_time,flags", "-of", "csv=p=0", str(made.file)],
        capture_output=True, check=True, text=True,
    ).stdout.split()  # fmt: skip
    keys = {round(30 * float(line.split(",")[0])) for line in said if ",K" in line}
    assert keys == {round(30 * cue.begins) for cue in made.order.cues}


def test_at_each_cue_the_board_is_that_of_its_position(made: Made) -> None:
    frames = made.frames
    positions = {
        cue.place.board.fen.split()[0]: drawn(cue.place.board.fen) for cue in made.order.cues
    }
    seen = 0
    for cue in made.order.cues:
        # a move and a way back are at their position a second later
        seconds = cue.begins + (1.0 if cue.kind in ("play", "go back to") else 0.0)
        picture = board(at(frames, seconds))
        right = cue.place.board.fen.split()[0]
        distances = {fen: apart(picture, diagram) for fen, diagram in positions.items()}
        assert distances[right] < NEAR
        assert min(distances, key=distances.__getitem__) == right
        others = [far for fen, far in distances.items() if fen != right]
        assert min(others) > 1.3 * distances[right]
        seen += 1
    assert seen == len(made.order.cues) > 15


def test_in_the_middle_of_a_move_the_piece_is_on_its_way(made: Made) -> None:
    frames = made.frames
    for cue in made.order.cues:
        if cue.kind == "play" and cue.place.parent is not None:
            middle = board(at(frames, cue.begins + 0.2))
            before, after = drawn(cue.place.parent.board.fen), drawn(cue.place.board.fen)
            ends = apart(before, after)
            assert apart(middle, before) > 0.5 * ends and apart(middle, after) > 0.5 * ends
            assert apart(at(frames, cue.begins + 0.1), at(frames, cue.begins + 0.3)) > 0.1


def test_a_proved_pin_is_drawn_while_it_is_said_and_then_goes(made: Made) -> None:
    (cue,) = [cue for cue in made.order.cues if "pins" in cue.words]
    fen, frames = cue.place.board.fen, made.frames
    played = JustPlayed("c8", "g4")
    marks = (MarkedSquare("f3", "black"), Pin("g4", "d1", "black"), played)
    shown = board(at(frames, cue.begins))
    assert apart(shown, drawn(fen, marks)) < 0.9 * apart(shown, drawn(fen, (played,)))
    (move,) = [cue for cue in made.order.cues if cue.san == "Nc3"]
    after, played = board(at(frames, move.begins + 1)), JustPlayed("b1", "c3")
    fen = move.place.board.fen
    assert apart(after, drawn(fen, (played,))) < 0.9 * apart(
        after, drawn(fen, (*marks[:2], played))
    )


def test_a_pause_shows_what_is_left_of_it_and_no_mark_that_gives_the_answer(made: Made) -> None:
    (cue,) = [cue for cue in made.order.cues if cue.kind == "pause"]
    frames = made.frames
    rows = [
        at(frames, cue.begins + second)[TOP + BOARD :].max(axis=2) > 150 for second in range(20)
    ]
    widths = [int(row.any(axis=0).sum()) for row in rows]
    assert widths[0] > 0.95 * BOARD and widths == sorted(widths, reverse=True)
    assert len(set(widths)) > 15 and 0 < widths[-1] < BOARD / 10
    still = drawn(cue.place.board.fen, (JustPlayed("g7", "g6"),))
    assert apart(board(at(frames, cue.begins + 10)), still) < NEAR
    for other in made.order.cues:
        if other.kind == "say":
            assert at(frames, other.begins)[TOP + BOARD :].max() < 80


def test_a_way_back_is_a_change_without_a_jump(made: Made) -> None:
    (cue,) = [cue for cue in made.order.cues if cue.kind == "go back to"]
    frames = made.frames
    steps = [at(frames, cue.begins + number / 30) for number in range(-1, 25)]
    moved = [apart(board(one), board(other)) for one, other in pairwise(steps)]
    whole = apart(board(steps[0]), board(steps[-1]))
    assert sum(moved) > 0.9 * whole and max(moved) < 0.3 * whole


def test_outside_the_board_there_is_nothing(made: Made) -> None:
    for _, picture in made.frames[::9]:
        outside = picture.copy()
        outside[TOP : TOP + BOARD + 16, LEFT - 2 : LEFT + BOARD + 2] = (32, 36, 46)
        outside[TOP - 2 : TOP, LEFT - 2 : LEFT + BOARD + 2] = (32, 36, 46)
        assert np.abs(outside.astype(int) - (32, 36, 46)).max() <= 6


def test_the_same_lesson_gives_the_same_bytes(made: Made) -> None:
    (data,) = make(made.lesson, made.found, SMALL).values()
    assert data == made.file.read_bytes()


def test_black_sees_the_board_from_the_other_side(tmp_path: Path) -> None:
    lesson = Lesson.from_text("1. e4 {Good.} *", side="black")
    shown = board(decoded(film(lesson, nothing_found(lesson), tmp_path))[-1][1])
    fen = lesson.places[1].board.fen
    marks = (JustPlayed("e2", "e4"),)
    assert apart(shown, drawn(fen, marks, flipped=True)) < NEAR < apart(shown, drawn(fen, marks))


def test_vertical_is_higher_than_wide_with_the_same_board(made: Made, tmp_path: Path) -> None:
    lesson = Lesson.from_text("1. e4 {Good.} *", side="white")
    choices = Choices(filming=Filming(size=SIZE, vertical=True))
    file = film(lesson, nothing_found(lesson), tmp_path, choices)
    assert file.name == "lesson-vertical.mp4"
    picture = decoded(file)[-1][1]
    assert picture.shape == (SIZE[0], SIZE[1], 3)
    assert (
        apart(picture[LEFT : LEFT + BOARD, TOP : TOP + BOARD], drawn(lesson.places[1].board.fen))
        < NEAR
    )


def test_captions_that_are_drawn_in_stand_below_the_board_while_they_are_said(
    made: Made, tmp_path: Path
) -> None:
    choices = Choices(filming=Filming(size=SIZE, burn_captions=True))
    file = film(made.lesson, made.found, tmp_path, choices)
    value = probed(file)
    assert "mov_text" not in streams(value)
    assert abs(float(value["format"]["duration"]) - made.order.seconds) < 0.05
    page = Page(*SIZE, words=True)
    frames = decoded(file)
    shown = captions(made.order)
    for second in np.arange(0, made.order.seconds, 0.5):
        ends = {one.ends / 1000 for one in shown} | {one.begins / 1000 for one in shown}
        if min(abs(second - edge) for edge in ends) > 0.05:
            below = at(frames, second)[page.words_top :].max(axis=2) > 128
            said = any(one.begins <= 1000 * second < one.ends for one in shown)
            assert below.any() == said
    assert sum(one.ends - one.begins for one in shown) < 900 * made.order.seconds
    (cue,) = [cue for cue in made.order.cues if "pins" in cue.words]
    picture = at(frames, cue.begins)
    assert page.top < TOP
    svg = diagram(cue.place.board.fen, theme=STAGE, size=page.board)
    decoder = av.VideoCodecContext.create("png", "r")
    (right,) = decoder.decode(av.Packet(png(svg, page.board)))
    there = picture[page.top : page.top + page.board, page.left : page.left + page.board].astype(
        int
    )
    assert apart(there, right.to_ndarray(format="rgb24")) < NEAR
    assert film(made.lesson, made.found, tmp_path, choices).read_bytes() == file.read_bytes()


def test_what_the_letters_lack_is_named(tmp_path: Path) -> None:
    lesson = Lesson.from_text("1. e4 {Légal 将 ♞ \u05d0.} *", side="white")
    choices = Choices(filming=Filming(size=SIZE, burn_captions=True))
    published = publish(nothing_found(lesson), tmp_path, (PRODUCT,), choices)
    assert [note for _, note in published.notes] == [
        "the letters have no 将 (U+5C06) \u05d0 (U+05D0): each is shown as \ufffd"
    ]
    assert notes(lesson, nothing_found(lesson), SMALL) == ()


@pytest.mark.parametrize("codec", ["h264", "av1"])
def test_at_a_constant_rate_every_frame_is_there(tmp_path: Path, codec: Any) -> None:
    lesson = Lesson.from_text("1. e4 {Good.} e5 {Well.} *", side="white")
    pictures = []
    for constant_rate in (False, True):
        filming = Filming(size=SIZE, codec=codec, constant_rate=constant_rate)
        file = film(lesson, nothing_found(lesson), tmp_path, Choices(filming=filming))
        frames = decoded(file)
        pictures.append([board(at(frames, n / 10)) for n in range(44)])
        video = streams(probed(file))[codec]
        assert abs(float(video["duration"]) - 4.4) < 0.05
        assert (video["avg_frame_rate"] == "30/1") == constant_rate
        assert len(frames) == (132 if constant_rate else 28)
    assert max(apart(one, other) for one, other in zip(*pictures, strict=True)) < 2


def test_a_loop_shows_one_line_and_ends_as_it_begins(made: Made, tmp_path: Path) -> None:
    choices = Choices(filming=Filming(size=SIZE, loop=1))
    file = film(made.lesson, made.found, tmp_path, choices)
    assert file.name.endswith("-loop-01.mp4")
    frames = decoded(file)
    line = made.lesson.lines()[0].path()
    assert line[-1].san == "Bg7" and len(line) == 11
    seconds = 1 + 1.2 * 9 + 3 + 0.8
    assert abs(float(probed(file)["format"]["duration"]) - seconds) < 0.05
    assert apart(board(frames[0][1]), drawn(line[0].board.fen)) < NEAR
    assert apart(board(frames[-1][1]), board(frames[0][1])) < 1.5
    for number, place in enumerate(line[1:]):
        assert apart(board(at(frames, 1 + 1.2 * number + 1)), drawn(place.board.fen)) < NEAR


def test_av1_has_the_same_frames(tmp_path: Path) -> None:
    lesson = Lesson.from_text("1. e4 {Good.} e5 {Well.} *", side="white")
    choices = Choices(filming=Filming(size=SIZE, codec="av1"))
    file = film(lesson, nothing_found(lesson), tmp_path, choices)
    video = streams(probed(file))["av1"]
    assert abs(float(video["duration"]) - running_order(lesson).seconds) < 0.05
    frames = decoded(file)
    assert len(frames) == 28
    assert apart(board(frames[-1][1]), drawn(lesson.places[2].board.fen)) < NEAR
    assert film(lesson, nothing_found(lesson), tmp_path, choices).read_bytes() == file.read_bytes()


@pytest.fixture(scope="module")
def sounds(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Recordings of 2 and of 9 seconds, in each format."""
    folder = tmp_path_factory.mktemp("sounds")
    for seconds, kind in ((2, "wav"), (2, "mp3"), (2, "m4a"), (2, "flac"), (9, "wav")):
        subprocess.run(
            ["ffmpeg", "-v", "error", "-f", "lavfi", "-i", f"sine=frequency=440:duration={seconds}", "-ac", "2", str(folder / f"{seconds}.{kind}")],
            check=True,
        )  # fmt: skip
    return folder


@pytest.mark.parametrize("kind", ["wav", "mp3", "m4a", "flac"])
def test_a_voice_is_joined_and_its_length_said(sounds: Path, tmp_path: Path, kind: str) -> None:
    lesson = Lesson.from_text("1. e4 {Good.} e5 {Well.} *", side="white")
    choices = Choices(filming=Filming(size=SIZE, voice=sounds / f"2.{kind}"))
    published = publish(nothing_found(lesson), tmp_path, (PRODUCT,), choices)
    assert [note for _, note in published.notes] == [
        "the voice lasts 2 s, the running order 4 s: the last 2 s are silent"
    ]
    file = tmp_path / "video" / "lesson.mp4"
    value = probed(file)
    assert abs(float(value["format"]["duration"]) - running_order(lesson).seconds) < 0.05
    sound = streams(value)["aac"]
    assert abs(float(sound["duration"]) - 2) < 0.1 and sound["sample_rate"] == "48000"
    with av.open(str(file)) as source:
        heard = np.concatenate([frame.to_ndarray()[0] for frame in source.decode(audio=0)])
    spectrum = np.abs(np.fft.rfft(heard[24000:72000]))
    assert int(spectrum.argmax()) == 440


def test_a_longer_voice_holds_the_last_picture(sounds: Path, tmp_path: Path) -> None:
    lesson = Lesson.from_text("1. e4 {Good.} e5 {Well.} *", side="white")
    choices = Choices(filming=Filming(size=SIZE, voice=sounds / "9.wav"))
    file = film(lesson, nothing_found(lesson), tmp_path, choices)
    value = probed(file)
    assert abs(float(streams(value)["h264"]["duration"]) - 9) < 0.05
    assert len(decoded(file)) == 28
    (note,) = notes(lesson, nothing_found(lesson), choices)
    assert note.endswith("the last picture stands 5 s longer")


@pytest.mark.parametrize("what", ["absent", "text", "picture", "empty"])
def test_what_is_no_recording_is_refused_with_its_name(tmp_path: Path, what: str) -> None:
    file = tmp_path / "voice.wav"
    lesson = Lesson.from_text("1. e4 {Good.} *", side="white")
    if what == "text":
        file.write_text("no sound " * 100)
    elif what == "picture":
        file.write_bytes(png(diagram(lesson.places[1].board.fen), 64))
    elif what == "empty":
        file.write_bytes(b"")
    choices = Choices(filming=Filming(size=SIZE, voice=file))
    with pytest.raises(PublishError, match=r"voice\.wav: (the voice cannot be read|it)") as refused:
        lesson.publish(tmp_path / "out", "sketch", only=["video"], choices=choices)
    assert "give a WAV, MP3, M4A or FLAC file with --voice" in str(refused.value)
    assert not (tmp_path / "out").exists()


def test_a_line_that_is_not_there_is_refused(made: Made, tmp_path: Path) -> None:
    for loop in (0, 3):
        with pytest.raises(PublishError, match=rf"there is no line {loop}: the lesson has 2"):
            make(made.lesson, made.found, Choices(filming=Filming(size=SIZE, loop=loop)))


def test_a_stopped_video_leaves_nothing_behind(
    made: Made, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    told: list[tuple[int, int]] = []

    def stop(done: int, total: int) -> None:
        told.append((done, total))
        if done > total / 2:
            assert len(list(tmp_path.rglob("*.mp4"))) == 1
            raise KeyboardInterrupt

    choices = Choices(filming=Filming(size=SIZE), progress=stop)
    with pytest.raises(KeyboardInterrupt):
        publish(made.found, tmp_path / "out", (PRODUCT,), choices)
    assert list(tmp_path.iterdir()) == []
    assert told == sorted(told) and told[-1][1] == round(30 * made.order.seconds)


def test_no_room_is_told_and_leaves_nothing(tmp_path: Path) -> None:
    """A system that lets no file grow is like a full disk."""
    code = """
import resource, signal, sys
from lineproof.facade import Lesson, PublishError
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (9000, 9000))
try:
    Lesson.from_text("1. e4 {Good.} *", side="white").publish("out", "sketch", only=["video"])
except PublishError as error:
    print(error)
"""
    environment = os.environ | {"TMPDIR": str(tmp_path)}
    ran = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, env=environment, cwd=tmp_path
    )
    assert ran.stdout == (
        f"{tmp_path}: the video cannot be made (file too large); make room in the folder for temporary files, or name another with"
        " TMPDIR\n"
    ), ran.stderr
    assert list(tmp_path.iterdir()) == []


def test_without_its_library_the_extra_is_named() -> None:
    code = """
import sys
sys.modules[sys.argv[1]] = None
from lineproof.facade import Lesson, PublishError
try:
    Lesson.from_text("1. e4 {Good.} *", name="a.pgn", side="white").publish("nowhere", "sketch", only=["video"])
except PublishError as error:
    print(error)
"""
    for library in ("av", "numpy", "resvg_py"):
        ran = subprocess.run([sys.executable, "-c", code, library], capture_output=True, text=True)
        assert ran.stdout == (
            f"a.pgn: a video needs {library}, which is not installed; pip install 'lineproof[video]', or leave video out with --only\n"
        ), ran.stderr
    assert not Path("nowhere").exists()


@pytest.fixture(autouse=True)
def tools() -> Iterator[None]:
    assert shutil.which("ffprobe") and shutil.which("ffmpeg"), "sh tools/need.sh test"
    yield
