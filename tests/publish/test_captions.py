"""Captions are read by webvtt-py and measured again here; hostile words stay words."""

from __future__ import annotations

import html
import io
import re
from dataclasses import dataclass, replace
from itertools import pairwise
from pathlib import Path

import pytest
import webvtt

from lineproof.claims.sentence import sentences
from lineproof.facade import Lesson
from lineproof.lesson import Side
from lineproof.order import Cue, running_order
from lineproof.publish import Choices, PublishError, publish
from lineproof.publish.captioning import Chapter, captions, chapter_list, chapters
from lineproof.publish.captioning.chapters import _long_enough
from lineproof.publish.products.captions import PRODUCT, make, notes
from tests.order.lessons import AGAIN, BRANCHES, MISTAKES

from .lessons import TRAP, nothing_found

ROOT = Path(__file__).resolve().parents[2]
HOSTILE = """{1 --> 2 & <b>bold</b> <script>alert("x")</script> {\\an8 &lt; &amp;. 00:00:01.000 --> 00:00:02.000

NOTE no note. WEBVTT. STYLE. \u202eturned\u202c \u2028 %s e\u0301\u0301 \U0001f468\u200d\U0001f469\u200d\U0001f467 \u4e2d\u6587. ...}
1. e4 {%s} e5 {-->} 2. Nc3 {<i>} Nf6 {Pause here. <} 3. f4 {No. Yes. No. Oh.} *
""" % ("e\u0301" * 60, "Donaudampfschiff" * 20)


@dataclass(frozen=True)
class Shown:
    """A caption as another reader has it. begins, ends: in seconds."""

    begins: float
    ends: float
    lines: list[str]


def files(lesson: Lesson) -> dict[str, str]:
    made = make(lesson, nothing_found(lesson), Choices())
    return {name.rsplit(".", 1)[-1]: data.decode() for name, data in made.items()}


def read(text: str, kind: str) -> list[Shown]:
    """By webvtt-py; what WebVTT escapes is taken back."""
    found = webvtt.from_string(text) if kind == "vtt" else from_srt(text)
    back = html.unescape if kind == "vtt" else lambda line: line.replace("\u2060", "")
    return [
        Shown(seconds(one.start), seconds(one.end), [back(line) for line in one.lines])
        for one in found
    ]


def from_srt(text: str) -> webvtt.WebVTT:
    return webvtt.from_buffer(io.StringIO(text), "srt")


def seconds(clock: str) -> float:
    hours, minutes, rest = clock.split(":")
    return 3600 * int(hours) + 60 * int(minutes) + float(rest)


def bare(text: str) -> str:
    """The characters of a text, without blanks."""
    return "".join(text.split())


LESSONS = {
    "branches": BRANCHES,
    "again": AGAIN,
    "mistakes": MISTAKES,
    "trap": TRAP,
    "hostile": HOSTILE,
}


@pytest.fixture(params=LESSONS)
def lesson(request: pytest.FixtureRequest) -> Lesson:
    return Lesson.from_text(LESSONS[request.param], name="lesson.pgn", side="white")


@pytest.mark.parametrize("kind", ["vtt", "srt"])
def test_captions_come_one_after_the_other_on_two_short_lines(lesson: Lesson, kind: str) -> None:
    shown = read(files(lesson)[kind], kind)
    assert len(shown) > 3
    assert all(one.begins < one.ends for one in shown)
    assert all(one.ends <= other.begins for one, other in pairwise(shown))
    assert shown[-1].ends <= running_order(lesson).seconds + 0.001
    for one in shown:
        assert 1 <= len(one.lines) <= 2
        assert all(1 <= len(line) <= 42 for line in one.lines)
        assert one.ends - one.begins <= 7.0005


@pytest.mark.parametrize("kind", ["vtt", "srt"])
def test_every_word_that_is_said_is_there_in_its_order(lesson: Lesson, kind: str) -> None:
    """What is said: the sentences as they are, and moves and ways back in the words of the script."""
    expected = ""
    for cue in running_order(lesson).cues:
        if cue.kind == "mark" or (cue.kind == "pause" and cue.asked):
            continue
        words = cue.words
        if cue.kind == "play":
            words = words[0].upper() + words[1:] + "."
        expected += bare(re.sub("[\u202c\u202e]", "\ufffd", words))
    shown = read(files(lesson)[kind], kind)
    assert "".join(bare("".join(one.lines)) for one in shown) == expected
    comments = [c.text for c in lesson.comments]
    for text in comments:
        for sentence in sentences(re.sub(r"\[%[^\]]*\]", " ", text), 0):
            assert bare(re.sub("[\u202c\u202e]", "\ufffd", sentence.text)) in expected


def test_each_caption_begins_while_its_first_word_is_said(lesson: Lesson) -> None:
    said: list[Cue] = []
    for cue in running_order(lesson).cues:
        if cue.kind != "mark" and not (cue.kind == "pause" and cue.asked):
            said += [cue] * (len(bare(cue.words)) + (cue.kind == "play"))
    at = 0
    for one in read(files(lesson)["vtt"], "vtt"):
        cue = said[at]
        assert cue.begins - 0.001 <= one.begins <= cue.begins + cue.seconds + 0.001
        at += len(bare("".join(one.lines)))
    assert at == len(said)


@pytest.mark.parametrize("words_a_minute", [60, 150, 300])
def test_the_reading_speed_is_kept_or_what_is_not_is_said(words_a_minute: int) -> None:
    text = (ROOT / "examples" / "budapest" / "lines.pgn").read_text(encoding="utf-8")
    lesson = Lesson.from_text(text, side="black")
    lesson = lesson.with_settings(replace(lesson.settings, words_a_minute=words_a_minute))
    shown = read(files(lesson)["srt"], "srt")
    fast = [one for one in shown if len("\n".join(one.lines)) / (one.ends - one.begins) > 17.05]
    short = [one for one in shown if one.ends - one.begins < 0.9995]
    told = " ".join(notes(lesson, nothing_found(lesson), Choices()))
    assert (f"{len(fast)} of {len(shown)} captions must be read faster" in told) == bool(fast)
    assert (f"{len(short)} of {len(shown)} captions stand for less" in told) == bool(short)
    assert bool(told) == bool(fast or short)
    if words_a_minute <= 150:
        assert told == ""
    else:
        assert 0 < len(fast) < len(shown)


def test_nothing_hostile_is_markup_in_webvtt() -> None:
    text = files(Lesson.from_text(HOSTILE, side="white"))["vtt"]
    times = [line for line in text.splitlines() if "-->" in line]
    assert all(re.fullmatch(r"[\d:.]{12} --> [\d:.]{12}", line) for line in times)
    assert "<" not in text and text.count(">") == len(times)
    assert re.findall(r"&(?!amp;|lt;|gt;)", text) == []
    assert text.count("WEBVTT") == 2 and text.startswith("WEBVTT\n\n1\n")
    assert "\u202e" not in text and "\u2028" not in text


def test_nothing_hostile_is_markup_in_srt() -> None:
    text = files(Lesson.from_text(HOSTILE, side="white"))["srt"]
    times = [line for line in text.splitlines() if "-->" in line]
    assert all(re.fullmatch(r"[\d:,]{12} --> [\d:,]{12}", line) for line in times)
    assert re.findall(r"<[a-z/]|\{\\", text) == []
    blocks = text.strip("\n").split("\n\n")
    assert [block.split("\n")[0] for block in blocks] == [str(n + 1) for n in range(len(blocks))]


def test_a_pause_is_silent_and_a_caption_does_not_stand_through_it() -> None:
    lesson = Lesson.from_text("1. e4 {Pause here.} e5 {Good.} *", side="white")
    order = running_order(lesson)
    (pause,) = [cue for cue in order.cues if cue.kind == "pause"]
    *_, before, after = captions(order)
    assert before.lines == ("Pause here.",) and before.ends <= 1000 * pause.begins + 1000
    assert after.lines == ("E five. Good.",)
    assert after.begins >= 1000 * (pause.begins + pause.silence)


def test_a_chapter_begins_at_each_way_back_and_has_ten_seconds(lesson: Lesson) -> None:
    order = running_order(lesson)
    found = chapters(order)
    backs = {int(cue.begins) for cue in order.cues if cue.kind in ("go back to", "set up")}
    begins = [one.begins for one in found]
    assert begins[0] == 0 and set(begins[1:]) <= backs
    ends = [*begins[1:], order.seconds]
    assert len(found) == 1 or all(b - a >= 10 for a, b in zip(begins, ends, strict=True))
    kept = chapter_list(found).splitlines()
    assert kept[0].startswith("0:00 ")
    assert [re.fullmatch(r"(\d+):(\d\d) \S.*", line) is not None for line in kept] == [True] * len(
        found
    )


def test_the_chapters_of_the_demo_are_named_by_what_they_lead_to() -> None:
    order = running_order(Lesson.open(ROOT / "examples" / "vienna"))
    found = chapters(order)
    backs = [cue for cue in order.cues if cue.kind == "go back to"]
    assert len(found) == 1 + len(backs) == 23
    assert found[0].title == "The Vienna Gambit for White"
    assert found[1].title == "5... Bc5"
    assert chapter_list(found[:2]) == "0:00 The Vienna Gambit for White\n1:45 5... Bc5\n"


def test_short_chapters_go_to_the_one_before_and_hours_are_told() -> None:
    given = [Chapter(begins, str(begins)) for begins in (0, 9, 30, 35, 39, 60, 69)]
    assert [one.begins for one in _long_enough(given, 70)] == [0, 39, 60]
    given = [Chapter(begins, str(begins)) for begins in (0, 10, 20, 30, 3787)]
    kept = _long_enough(given, 3797)
    assert [one.begins for one in kept] == [0, 10, 20, 30, 3787]
    assert chapter_list(kept).splitlines()[-1] == "1:03:07 3787"


def test_the_same_lesson_gives_the_same_bytes(lesson: Lesson) -> None:
    again = Lesson.from_text(lesson.source.text, name="lesson.pgn", side="white")
    assert files(lesson) == files(again)


def test_a_lesson_without_words_is_refused_and_the_way_out_named() -> None:
    silent = Lesson.from_text("1. e4 e5 *", name="silent.pgn", side="white")
    with pytest.raises(PublishError) as refused:
        make(silent, nothing_found(silent), Choices())
    assert str(refused.value) == (
        "silent.pgn: the lesson has no comments, so there is nothing to say; write what you will say as comments after the moves;"
        " or leave captions out with --only"
    )


def test_what_could_not_be_kept_is_published_with_the_files(tmp_path: Path) -> None:
    lesson = Lesson.from_text(
        "1. e4 {%s.} *" % " ".join(["Counterrevolutionary"] * 12), side="white"
    )
    published = publish(nothing_found(lesson), tmp_path, (PRODUCT,))
    ((product, note),) = published.notes
    assert product == "captions" and "must be read faster than 17 characters a second" in note


@pytest.mark.parametrize(("demo", "side"), [("vienna", "white"), ("budapest", "black")])
def test_no_caption_of_a_demo_has_more_words_a_minute_than_can_be_read(
    demo: str, side: Side
) -> None:
    # BBC Subtitle Guidelines (from memory): 160 to 180 words a minute, two lines
    text = (ROOT / "examples" / demo / "lines.pgn").read_text(encoding="utf-8")
    shown = read(files(Lesson.from_text(text, side=side))["vtt"], "vtt")
    assert len(shown) > 100
    for one in shown:
        assert 60 * len(" ".join(one.lines).split()) / (one.ends - one.begins) <= 180
        assert len(one.lines) <= 2
