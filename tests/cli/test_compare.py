"""`lineproof compare`, as it is typed."""

from __future__ import annotations

from pathlib import Path

from .command import lineproof
from .test_commands import valid


def test_two_files_are_compared_in_words_and_as_json(home: Path) -> None:
    (home / "new.pgn").write_text(
        '[Event "The Vienna Gambit for White"]\n\n1. e4 e5 2. Nc3 Nf6 3. f4 exf4 *\n', "utf-8"
    )
    ran = lineproof(home, "compare", "sound.pgn", "new.pgn", "--side", "white")
    assert (ran.status, ran.err) == (0, "")
    assert ran.out == (
        "The Vienna Gambit for White: what has changed from sound.pgn to new.pgn.\n"
        "\nNew lines:\n  After 1. e4 e5 2. Nc3 Nf6 3. f4: 3... exf4.\n"
        "\nLines that are gone:\n  After 1. e4 e5 2. Nc3 Nf6 3. f4: 3... d5.\n"
        "\nWords that are new or different:\n  After 1. e4 e5 2. Nc3 Nf6 3. f4.\n"
    )
    value = valid(lineproof(home, "compare", "sound.pgn", "new.pgn", "--json"), "compare")
    assert value["added"][0]["new"] == ["exf4"]
    assert value["added"][0]["after"] == ["e4", "e5", "Nc3", "Nf6", "f4"]


def test_an_edition_is_named_by_its_number(home: Path) -> None:
    publish = ("publish", "sound.pgn", "--side", "white", "--effort", "sketch")
    ran = lineproof(home, *publish, "--out", "out", "--only", "pgn")
    assert ran.status == 0 and ran.out.endswith("This is edition 1.\n")
    ran = lineproof(home, "compare", "sound.pgn@1", "sound.pgn", "--side", "white")
    assert (ran.status, ran.err) == (0, "")
    assert "Nothing has changed" in ran.out
    ran = lineproof(home, "compare", "sound.pgn@2", "sound.pgn")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err == "sound.pgn: there is no edition 2; choose another: it has 1\n"
    ran = lineproof(home, "compare", "sound.pgn", "nothing.pgn")
    assert (ran.status, ran.err) == (2, "nothing.pgn: there is no such file; check the name\n")
