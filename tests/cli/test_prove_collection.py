"""`lineproof prove --collection`: from files of games to findings, as it is typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from .command import lineproof
from .test_commands import valid

LESSON = """[Event "The Vienna Gambit for White"]
[Result "*"]

1. e4 e5 2. Nc3 Nf6 3. f4 {Here d5 is the main move. You will rarely meet exf4. Nc6 is often played.} d5 *
"""
LINES = {"d5": 60, "exf4": 25, "d6": 14, "Nc6": 1}


@pytest.fixture
def club(home: Path) -> Path:
    """A lesson for 1450, and a hundred games of its audience."""
    (home / "vienna.pgn").write_text(LESSON, encoding="utf-8")
    games = [
        f'[Round "{number}"]\n[WhiteElo "1480"]\n[BlackElo "1420"]\n\n1. e4 e5 2. Nc3 Nf6 3. f4 {move} *\n\n'
        for move, count in LINES.items()
        for number in range(count)
    ]
    (home / "club.pgn").write_text("".join(games), encoding="utf-8")
    assert lineproof(home, "collect", "add", "club.pgn", "--collection", "evenings").status == 0
    return home


PROVE = ("prove", "vienna.pgn", "--effort", "sketch", "--audience", "1450")


def test_findings_come_from_the_collection_that_is_named(club: Path) -> None:
    value = valid(lineproof(club, *PROVE, "--collection", "evenings", "--json"), "proof")
    assert value["collection"] == {"name": "evenings", "games": 100, "ratings": [1250, 1650]}
    found = {finding["words"]: finding for finding in value["findings"]}
    main, rare, often = (
        found["d5 is the main move"],
        found["You will rarely meet exf4"],
        found["Nc6 is often played"],
    )
    assert [each["outcome"] for each in (main, rare, often)] == ["holds", "fails", "fails"]
    assert rare["because"] == (
        "3... exf4 was played in 25 of 100 games between players rated 1250 to 1649 of the collection evenings,"
        " 25.0 of 100 (95 % interval 17.5 to 34.3). “Rarely” means fewer than 5 of 100."
    )
    assert rare["instead"] == "3... exf4 is sometimes played here: in 25 of 100 games."
    assert (main["numbers"]["played"], main["numbers"]["games"]) == (60, 100)


def test_the_terminal_and_the_page_name_the_collection(club: Path) -> None:
    ran = lineproof(club, *PROVE, "--collection", "evenings", "--report", "sheet.html")
    assert (ran.status, ran.err) == (0, "")
    said = " ".join(ran.out.split())
    assert "collection evenings (100 games)" in said
    assert "1 holds, 2 fail" in said
    page = " ".join((club / "sheet.html").read_text(encoding="utf-8").split())
    assert "3 claims of how often a move is played were counted in the games between" in page


def test_without_a_collection_it_is_unsettled_and_no_other_one_is_taken(club: Path) -> None:
    lineproof(club, "collect", "add", "club.pgn")  # the collection that `collect` means by default
    value = valid(lineproof(club, *PROVE, "--json"), "proof")
    assert value["collection"] is None
    assert {finding["outcome"] for finding in value["findings"]} == {"unsettled"}


def test_a_collection_that_is_not_there_is_refused_in_one_line(club: Path) -> None:
    ran = lineproof(club, *PROVE, "--collection", "nowhere")
    assert ran.status == 2
    assert ran.out == ""
    assert ran.err == (
        "there is no collection nowhere; make it with `lineproof collect add FILE --collection nowhere`\n"
    )


def test_a_damaged_collection_is_refused_and_the_lesson_can_be_proved_without_it(
    club: Path,
) -> None:
    (segment,) = (club / "data" / "collections" / "evenings" / "segments").iterdir()
    for file in segment.glob("*.parquet"):
        file.write_bytes(file.read_bytes()[:40])
    ran = lineproof(club, *PROVE, "--collection", "evenings")
    assert ran.status == 2
    assert ran.err.count("\n") == 1
    assert "missing or damaged" in ran.err
    assert lineproof(club, *PROVE).status == 0
