"""`lineproof publish`, as it is typed."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import chess.pgn
import jsonschema
import pikepdf
import pytest

from lineproof.report.schemas import schema

from .command import lineproof
from .test_commands import valid

TRAP = (
    "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# {This is mate.} *\n"
)
"""Légal's mate; Hooper and Whyld, The Oxford Companion to Chess (from memory)."""
SKETCH = ("--side", "white", "--effort", "sketch")


def test_every_product_is_written_and_listed(home: Path) -> None:
    (home / "trap.pgn").write_text(TRAP, encoding="utf-8")
    ran = lineproof(home, "publish", "trap.pgn", *SKETCH, "--out", "out", "--width", "40", "--json")
    value = valid(ran, "publish")
    assert value["published"] and value["fails"] == [] and value["empty"] == []
    assert {file["product"] for file in value["files"]} == {
        "article",
        "captions",
        "diagrams",
        "epd",
        "handout",
        "page",
        "pgn",
    }
    there = {str(path.relative_to(home / "out")) for path in (home / "out").rglob("*.*")}
    for file in value["files"]:
        data = (home / "out" / file["name"]).read_bytes()
        assert file["size"] == len(data)
        assert file["sha256"] == hashlib.sha256(data).hexdigest()
    assert there <= {file["name"] for file in value["files"]}
    assert (home / "out" / "pgn" / "trap.pgn").read_text(encoding="utf-8") == TRAP
    with (home / "out" / "pgn" / "trap-repertoire.pgn").open(encoding="utf-8") as stream:
        game = chess.pgn.read_game(stream)
    assert game is not None and game.end().board().is_checkmate()

    again = lineproof(
        home, "publish", "trap.pgn", *SKETCH, "--out", "two", "--width", "40", "--json"
    )
    assert json.loads(again.out)["files"] == value["files"]

    german = lineproof(
        home,
        "publish",
        "trap.pgn",
        *SKETCH,
        "--out",
        "out",
        "--only",
        "article",
        "--language",
        "de",
    )
    assert (german.status, german.err) == (0, "")
    assert german.out.startswith("Published in out:\n  article   ")
    assert "6. Lxf7+ Ke7 7. Sd5#" in (home / "out" / "article" / "trap.md").read_text("utf-8")

    handout = ("publish", "trap.pgn", *SKETCH, "--only", "handout", "--out", "out")
    options = ("--notation", "figurine", "--paper", "letter", "--columns", "1", "--large")
    ran = lineproof(home, *handout, *options)
    assert (ran.status, ran.err) == (0, "")
    assert ran.out.startswith("Published in out:\n  handout   2 files, ")
    with pikepdf.open(home / "out" / "handout" / "trap.pdf") as pdf:
        # ANSI Y14.1 (from memory): 8.5 by 11 inches
        assert [float(side) for side in pdf.pages[0].mediabox] == [0, 0, 612, 792]
        dictionaries = [item for item in pdf.objects if isinstance(item, pikepdf.Dictionary)]
        fonts = {str(item.BaseFont) for item in dictionaries if "/BaseFont" in item}
    assert any("LineproofFigurine" in font for font in fonts)
    ran = lineproof(home, *handout, "--columns", "3")
    assert ran.status == 2 and "--columns: invalid choice: 3" in ran.err


def test_a_video_is_made_where_it_is_asked_for(home: Path) -> None:
    (home / "short.pgn").write_text("1. e4 {Good.} *\n", encoding="utf-8")
    ran = lineproof(
        home, "publish", "short.pgn", *SKETCH, "--out", "out", "--only", "video,captions", "--json"
    )
    value = valid(ran, "publish")
    names = [file["name"] for file in value["files"]]
    assert names == [
        "captions/SHA256SUMS", "captions/short-chapters.txt", "captions/short.srt", "captions/short.vtt",
        "video/SHA256SUMS", "video/short.mp4",
    ]  # fmt: skip
    assert value["notes"] == []
    assert b"ftyp" in (home / "out" / "video" / "short.mp4").read_bytes()[:12]


def test_captions_follow_an_order_that_is_cut_and_asks_at_pause_points(home: Path) -> None:
    (home / "trap.pgn").write_text(
        TRAP.replace(" 4. Nc3", " 4. Nc3 {Quiet.} (4. h3 {%s.})" % " ".join(["Long"] * 200)),
        encoding="utf-8",
    )
    texts = []
    for options in ((), ("--minutes", "1"), ("--minutes", "2", "--study")):
        ran = lineproof(
            home, "publish", "trap.pgn", *SKETCH, "--out", "out", "--only", "captions", *options
        )
        assert (ran.status, ran.err) == (0, "")
        said = "1 line left out, to fit into 1 minute: it lasts "
        assert (said in ran.out) == (options == ("--minutes", "1"))
        texts.append((home / "out" / "captions" / "trap.vtt").read_text("utf-8"))
    whole, cut, asked = texts
    assert "Long Long" in whole and "Long" not in cut and "This is mate." in cut
    assert "what would you play?" in asked and "what would you play?" not in whole


def test_a_failing_claim_is_named_with_its_place_and_nothing_is_written(home: Path) -> None:
    ran = lineproof(home, "publish", "vienna.pgn", *SKETCH, "--out", "out")
    assert (ran.status, ran.out) == (1, "")
    told, summary = ran.err.splitlines()
    assert told.startswith(
        "vienna.pgn:4:47: 3. f4, “The knight on f6 is pinned to the king” fails: "
    )
    assert summary == (
        "vienna.pgn: 1 claim fails, so nothing was published; correct the words, mark an opinion with"
        " `lineproof opinion`, or publish all the same with --anyway"
    )
    assert not (home / "out").exists()
    ran = lineproof(home, "publish", "vienna.pgn", *SKETCH, "--out", "out", "--json")
    value = json.loads(ran.out)
    jsonschema.Draft202012Validator(schema("publish")).validate(value)
    assert ran.status == 1 and not value["published"] and value["files"] == []
    assert [fails["at"] for fails in value["fails"]] == ["vienna.pgn:4:47"]


def test_anyway_publishes_and_says_so_on_the_terminal_only(home: Path) -> None:
    only = ("--only", "pgn")
    ran = lineproof(home, "publish", "vienna.pgn", *SKETCH, "--out", "out", *only, "--anyway")
    assert ran.status == 0
    assert ran.err.splitlines()[0].startswith("vienna.pgn:4:47: ")
    assert (
        ran.err.splitlines()[1]
        == "vienna.pgn: 1 claim fails; published all the same, as --anyway asks"
    )
    assert not any("fail" in path.read_text("utf-8") for path in (home / "out" / "pgn").iterdir())


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("--out", "out", "--only", "pgn,song"), "--only: there is no product 'song'; choose from article, captions, diagrams, epd, handout, page, pgn, video"),
        (("--out", "out", "--only", ""), "--only: a product has no name; choose from article, captions, diagrams, epd, handout, page, pgn, video"),
        (("--out", "vienna.pgn"), "vienna.pgn: this is a file; give a folder with --out"),
        (("--out", "out", "--width", "0"), "--width is 0; give 1 to 16384 pixels"),
        (("--out", "out", "--audience", "9"), "--audience is 9; give a rating from 400 to 2900"),
        (("--out", "out", "--only", "pgn", "--minutes", "3"), "--minutes is for captions and the video; ask for one of them with --only"),
        (("--out", "out", "--only", "captions", "--minutes", "0.1"), "the minutes are 0.1; give a number from 1 to 1000"),
        (("--out", "out", "--voice", "talk.wav"), "--voice is for the video; ask for it with --only video"),
        (("--out", "out", "--only", "pgn", "--loop", "1"), "--loop is for the video; ask for it with --only video"),
        (("--out", "out", "--only", "video", "--loop", "9"), "sound.pgn: there is no line 9: the lesson has 1; their numbers are those in the names of the diagrams"),
        ((), "lineproof publish: the following arguments are required: --out; see `lineproof publish --help`"),
    ],
)  # fmt: skip
def test_bad_use_is_told_in_one_line(home: Path, arguments: tuple[str, ...], message: str) -> None:
    ran = lineproof(home, "publish", "sound.pgn", *SKETCH, *arguments)
    assert (ran.status, ran.out, ran.err) == (2, "", message + "\n")


def test_a_lesson_that_cannot_be_published_is_told_in_one_line(home: Path) -> None:
    (home / "empty.pgn").write_text('[Event "x"]\n\n*\n', encoding="utf-8")
    (home / "mute.pgn").write_text("1. e4 e5 2. Nc3 *\n", encoding="utf-8")
    for name, arguments, message in (
        ("empty.pgn", SKETCH, "empty.pgn: the lesson has no moves; write its lines first"),
        (
            "sound.pgn",
            (),
            "sound.pgn: the lesson does not say which side is taught; say it with --side",
        ),
        (
            "mute.pgn",
            (*SKETCH, "--only", "article"),
            "mute.pgn: the lesson has no words, and an article is made of them;"
            " write comments, or leave the article out with --only",
        ),
        ("none.pgn", SKETCH, "none.pgn: there is no such file; check the name"),
    ):
        ran = lineproof(home, "publish", name, "--out", "out", *arguments)
        assert (ran.status, ran.out, ran.err) == (2, "", message + "\n")
        assert not (home / "out").exists()


def test_a_folder_that_nobody_may_write_to_is_told_in_one_line(home: Path) -> None:
    closed = home / "closed"
    closed.mkdir()
    closed.chmod(0o500)
    for out in ("closed", "closed/new"):
        ran = lineproof(
            home, "publish", "sound.pgn", *SKETCH, "--out", out, "--only", "pgn", as_user=True
        )
        assert (ran.status, ran.out) == (2, "")
        assert ran.err == (
            f"{out}: the files cannot be written (permission denied); what was there is whole;"
            " make room, make the folder writable, or choose another with --out\n"
        )
    closed.chmod(0o700)
    assert list(closed.iterdir()) == []


def test_every_language_of_the_letters_can_be_asked_for() -> None:
    from lineproof.cli.publish import LANGUAGES
    from lineproof.publish.letters import LETTERS

    assert tuple(LETTERS) == LANGUAGES
