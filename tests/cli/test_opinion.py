"""`lineproof opinion`: marks, takes back, lists; says what is wrong."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest

from lineproof.report.schemas import schema

from .command import lineproof

LIE = "The knight on f6 is pinned to the king."


@pytest.fixture
def vienna(home: Path) -> Path:
    assert lineproof(home, "new", "vienna", "--from", "vienna.pgn", "--side", "white").status == 0
    return home


def test_a_marked_sentence_no_longer_fails_the_lesson(vienna: Path) -> None:
    prove = ("prove", "vienna", "--effort", "sketch", "--strict")
    assert lineproof(vienna, *prove).status == 1
    ran = lineproof(vienna, "opinion", "vienna", "pinned to the king")
    assert ran.out == f"“{LIE}” is your opinion now: it is not checked, and counted apart.\n"
    after = lineproof(vienna, *prove)
    assert after.status == 0
    assert "1 sentence is marked as your opinion." in after.out
    assert lineproof(vienna, "opinion", "vienna").out == f"vienna/lines.pgn:4:47  3. f4  “{LIE}”\n"
    back = lineproof(vienna, "opinion", "vienna", "--at", "vienna/lines.pgn:4:47", "--take-back")
    assert back.out == f"“{LIE}” is checked again.\n"
    assert lineproof(vienna, *prove).status == 1


def test_a_vanished_sentence_is_told_once_and_listed_as_gone(vienna: Path) -> None:
    lineproof(vienna, "opinion", "vienna", "--at", "4:50")
    file = vienna / "vienna" / "lines.pgn"
    file.write_text(file.read_text(encoding="utf-8").replace(f" {LIE}", ""), encoding="utf-8")
    told = f"You marked “{LIE}” (after 3. f4) as your opinion"
    prove = ("prove", "vienna", "--effort", "sketch")
    assert told in " ".join(lineproof(vienna, *prove).out.split())
    assert told not in " ".join(lineproof(vienna, *prove).out.split())
    assert lineproof(vienna, "opinion", "vienna").out == f"gone, was beside 3. f4  “{LIE}”\n"


def test_json_has_the_published_shape(vienna: Path) -> None:
    for arguments, changed in (
        ((), None),
        (("pinned",), {"what": "marked", "words": LIE}),
        (("pinned", "--take-back"), {"what": "taken back", "words": LIE}),
    ):
        value = json.loads(lineproof(vienna, "opinion", "vienna", *arguments, "--json").out)
        jsonschema.Draft202012Validator(schema("opinion")).validate(value)
        assert value["changed"] == changed
        assert len(value["opinions"]) == (arguments == ("pinned",))


def test_the_proof_counts_it_in_json(vienna: Path) -> None:
    lineproof(vienna, "opinion", "vienna", "pinned")
    value = json.loads(lineproof(vienna, "prove", "vienna", "--effort", "sketch", "--json").out)
    jsonschema.Draft202012Validator(schema("proof")).validate(value)
    assert value["answer"]["opinions"] == 1
    assert value["opinions"] == [{"words": LIE, "move": "3. f4", "sentences": 1}]
    assert [s["status"] for s in value["sentences"]] == ["read", "your opinion"]


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("vienna", "bishop"), "vienna/lines.pgn: no sentence has the words 'bishop'; `lineproof prove"),
        (("vienna", "e"), "2 sentences have the words 'e', at 4:28, 4:47; say which with --at LINE"),
        (("vienna", "--at", "4"), "2 sentences stand at line 4"),
        (("vienna", "--at", "9:1"), "no sentence stands at line 9, column 1"),
        (("vienna", "--at", "here"), "--at is here; give a line, or LINE:COLUMN"),
        (("vienna", "--take-back"), "--take-back needs WORDS or --at"),
        (("vienna", "level", "--take-back"), "no sentence that is marked as your opinion has the words 'level'"),
        (("vienna.pgn", "level"), "a bare PGN file has no settings; make a folder of it with `lineproof new"),
        (("nothing", "level"), "nothing"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said_in_one_line(
    vienna: Path, arguments: tuple[str, ...], message: str
) -> None:
    ran = lineproof(vienna, "opinion", *arguments)
    assert (ran.status, ran.out) == (2, "")
    assert message in ran.err
    assert len(ran.err.splitlines()) == 1
