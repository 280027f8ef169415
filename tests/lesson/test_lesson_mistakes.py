"""Every bad input has its own error, which says where, what, and what to do."""

from __future__ import annotations

from pathlib import Path

import pytest

from lineproof.lesson import Lesson, LessonError, errors

OTHER_RULES = '[Event "x"]\n[Variant "Atomic"]\n\n1. e4 *'  # any other rules will do

MISTAKES: list[tuple[str, type[LessonError], str]] = [
    (
        "1. e4 e5\n2. Ke3 *",
        errors.IllegalMoveError,
        "2:4: Ke3 is not legal here; that piece can play Ke2; correct it, or a move before it",
    ),
    (
        "1. e4 e5 2. Bb5 c6 3. Bd4 *",
        errors.IllegalMoveError,
        "1:23: Bd4 is not legal here; that piece can play Ba4, Ba6, Bc4, Bd3, Be2, Bf1, Bxc6;"
        " correct it, or a move before it",
    ),
    (
        "1. e4 f5 2. Qh5+ -- *",
        errors.IllegalMoveError,
        "1:18: a side in check cannot pass; correct it, or a move before it",
    ),
    (
        "1. d4 d5 2. Nf3 Nf6 3. Nd2 *",
        errors.AmbiguousMoveError,
        "1:24: Nd2 can mean Nbd2 or Nfd2; write which",
    ),
    (
        "1. e4 e5 2. Springer f3 *",
        errors.NotAMoveError,
        "1:13: Springer is not a move;"
        " put words between { and }, and write moves as in Nf3, exd5, O-O, e8=Q",
    ),
    (
        "1. e4 {the king's pawn\n1... e5 *",
        errors.UnclosedCommentError,
        "1:7: this comment is never closed; write } where it ends",
    ),
    (
        "1. e4 {a} } e5 *",
        errors.StrayBraceError,
        "1:11: a comment ends here that never began;"
        " delete it, or write { where the comment begins; a comment cannot hold braces",
    ),
    (
        "1. e4 e5\n(1... c5 (1... e6) 2. Nf3 *\n",
        errors.UnclosedVariationError,
        "2:1: this variation is never closed; write ) where it ends",
    ),
    (
        '1. e4 (1. d4 1-0\n\n[Event "next"]\n\n1. c4 *',
        errors.UnclosedVariationError,
        "1:7: this variation is never closed; write ) where it ends",
    ),
    (
        "1. e4 e5) 2. Nf3 *",
        errors.StrayCloseError,
        "1:9: a variation ends here that never began;"
        " delete it, or write ( where the variation begins",
    ),
    (
        "(1. e4) 1. d4 *",
        errors.VariationBeforeMoveError,
        "1:1: a variation begins before there is a move to replace; write the main move first",
    ),
    (
        "1. e4 ({or} (1. d4)) *",
        errors.VariationBeforeMoveError,
        "1:13: a variation begins before there is a move to replace; write the main move first",
    ),
    (
        '[Event "x"]\n[Site "y]\n\n1. e4 *',
        errors.UnclosedTagError,
        '2:1: this tag is not closed on its line; write it as [Name "value"]',
    ),
    (
        '[FEN "8/8/8/8/8/8/8/K7 w - - 0 1"]\n\n*',
        errors.WrongFenError,
        "1:1: the FEN is no legal position: a king is missing; correct the FEN tag",
    ),
    (
        '[Event "x"]\n[FEN "4k3/8/8/8/8/8/8/4K2P w - - 0 1"]\n\n*',
        errors.WrongFenError,
        "2:1: the FEN is no legal position: a pawn stands on the first or the last rank;"
        " correct the FEN tag",
    ),
    (
        "1. Qe7 *",
        errors.IllegalMoveError,
        "1:4: Qe7 is not legal here; no queen has a move here; correct it, or a move before it",
    ),
    (
        "1. Ke2 *",
        errors.IllegalMoveError,
        "1:4: Ke2 is not legal here; the king has no move here; correct it, or a move before it",
    ),
    (
        "1. e4 " + "x" * 5000 + " *",
        errors.NotAMoveError,
        f"1:7: {'x' * 59}\u2026 is not a move;"
        " put words between { and }, and write moves as in Nf3, exd5, O-O, e8=Q",
    ),
    (
        f'[Variant "{"x" * 5000}"]\n\n*',
        errors.VariantError,
        f"1:1: the game is played by other rules ({'x' * 59}\u2026);"
        " a lesson holds games of standard chess only",
    ),
    (
        '[FEN "4k3/8/8/8/8/8/8/4K3[Q] w - - 0 1"]\n\n*',
        errors.VariantError,
        "1:1: the game is played by other rules (its FEN has pieces in hand);"
        " a lesson holds games of standard chess only",
    ),
    (
        '[FEN "4k3/8/8/8/8/8/8/Q~3K3 w - - 0 1"]\n\n*',
        errors.VariantError,
        "1:1: the game is played by other rules (its FEN has pieces marked as promoted);"
        " a lesson holds games of standard chess only",
    ),
    (
        '[FEN "4k3/8/8/8/8/8/8/4K3 w - - 0 1 +3+3"]\n\n*',
        errors.VariantError,
        "1:1: the game is played by other rules (its FEN has a count of checks);"
        " a lesson holds games of standard chess only",
    ),
    (
        '[FEN "4k3/8/8/8/8/8/8/4K1R1 w G - 0 1"]\n\n*',
        errors.WrongFenError,
        "1:1: the FEN is no legal position: castling rights do not fit the places of king and"
        " rooks; correct the FEN tag",
    ),
    (
        '[FEN "4k3/8/8/8/8/8/8/4K3 w - - 0 99999999"]\n\n*',
        errors.WrongFenError,
        "1:1: the FEN is no legal position: the move number is 99999999, more than 9999;"
        " correct the FEN tag",
    ),
    (
        OTHER_RULES,
        errors.VariantError,
        "2:1: the game is played by other rules (Atomic);"
        " a lesson holds games of standard chess only",
    ),
    (
        "1. e4 \0 e5",
        errors.NulByteError,
        "1:7: a zero byte stands in the text;"
        " delete it, or save UTF-16 text with its byte order mark",
    ),
]

FILES: list[tuple[bytes, type[LessonError], str]] = [
    (b"", errors.EmptyFileError, "the file is empty; a lesson needs at least one game in PGN"),
    (
        b" \r\n ",
        errors.EmptyFileError,
        "the file is empty; a lesson needs at least one game in PGN",
    ),
    (
        b"\xef\xbb\xbf",
        errors.EmptyFileError,
        "the file is empty; a lesson needs at least one game in PGN",
    ),
    (
        b"PK\x03\x04\x14\x00\x00",
        errors.BinaryFileError,
        "this is no text file; give the PGN file itself, unpacked",
    ),
    (
        bytes(range(256)) * 8,
        errors.BinaryFileError,
        "this is no text file; give the PGN file itself, unpacked",
    ),
    (
        b"\xff\xfe1\x00.",
        errors.EncodingError,
        "the text is marked as UTF-16-LE and is not (byte 4); save the file as UTF-8",
    ),
    (
        b"\xef\xbb\xbf1. e4 {\xe9 } *",
        errors.EncodingError,
        "the text is marked as UTF-8 and is not (byte 10); save the file as UTF-8",
    ),
    (
        b"Dear all, the club meets on Tuesday.\n",
        errors.NotPgnError,
        "this is not PGN: it holds no game; a lesson is a PGN file, or a folder with lines.pgn",
    ),
    (
        b"WEBVTT\n\n00:00.000 --> 00:02.000\nWelcome\n",
        errors.NotPgnError,
        "this is not PGN: it holds no game; a lesson is a PGN file, or a folder with lines.pgn",
    ),
]


@pytest.mark.parametrize(("text", "kind", "message"), MISTAKES)
def test_a_mistake_in_the_text_is_named_with_its_place(
    text: str, kind: type[LessonError], message: str, tmp_path: Path
) -> None:
    file = tmp_path / "bad.pgn"
    file.write_bytes(text.encode())
    with pytest.raises(LessonError) as caught:
        Lesson.open(file)
    assert type(caught.value) is kind
    assert str(caught.value) == f"{file}:{message}"


@pytest.mark.parametrize(("data", "kind", "message"), FILES)
def test_a_file_that_is_no_pgn_is_refused(
    data: bytes, kind: type[LessonError], message: str, tmp_path: Path
) -> None:
    file = tmp_path / "bad.pgn"
    file.write_bytes(data)
    with pytest.raises(LessonError) as caught:
        Lesson.open(file)
    assert type(caught.value) is kind
    assert str(caught.value).split(": ", 1)[0].startswith(str(file))
    assert message in str(caught.value)
    assert str(caught.value).endswith(message)


def test_all_mistakes_are_told_at_once() -> None:
    with pytest.raises(LessonError) as caught:
        Lesson.from_text("1. e4 e5 (1... Ke3) 2. Nf3 Nf9 * 1. d5 *")
    error = caught.value
    assert [(e.line, e.column) for e in (error, *error.more)] == [(1, 16), (1, 28), (1, 37)]


def test_columns_count_characters() -> None:
    with pytest.raises(LessonError) as caught:
        Lesson.from_text("{日本∞} 1. e5 *")
    assert (caught.value.line, caught.value.column) == (1, 10)


def test_a_missing_file_is_named_as_it_was_given(tmp_path: Path) -> None:
    file = tmp_path / "none.pgn"
    with pytest.raises(errors.NoSuchFileError) as caught:
        Lesson.open(file)
    assert str(caught.value) == f"{file}: there is no such file; check the name"


def test_a_folder_that_is_no_lesson_says_how_to_make_one(tmp_path: Path) -> None:
    with pytest.raises(errors.NotALessonError) as caught:
        Lesson.open(tmp_path)
    assert str(caught.value) == (
        f"{tmp_path}: this folder is no lesson;"
        " make a lesson with `lineproof new`, or give a PGN file"
    )


def test_a_lesson_folder_without_lines_says_so(tmp_path: Path) -> None:
    (tmp_path / "lesson.toml").write_text("format = 1\n")
    with pytest.raises(errors.MissingLinesError) as caught:
        Lesson.open(tmp_path)
    assert str(caught.value) == (
        f"{tmp_path}: the lesson has no lines.pgn; put the lines there as lines.pgn"
    )


@pytest.mark.parametrize("variant", ["Standard", "standard", "From Position", "Normal", "", "?"])
def test_names_of_standard_chess_are_no_other_rules(variant: str) -> None:
    assert Lesson.from_text(f'[Variant "{variant}"]\n\n1. e4 *').places[1].san == "e4"


SETTINGS: list[tuple[str, str]] = [
    ("format = 1\ntitle = \n", "2:9: this is not TOML: invalid value; correct the line"),
    ('format = 1\nside = "red"\n', '2:1: side is \'red\'; write side = "white" or side = "black"'),
    ("format = 1\naudience = 399\n", "2:1: audience is 399; write a rating from 400 to 2900"),
    ("format = 1\naudience = 2901\n", "2:1: audience is 2901; write a rating from 400 to 2900"),
    (
        'format = 1\n\naudience = "1500"\n',
        "3:1: audience is '1500'; write a rating from 400 to 2900",
    ),
    ("format = 1\naudience = true\n", "2:1: audience is True; write a rating from 400 to 2900"),
    (
        "format = 1\nwords_a_minute = 10\n",
        "2:1: words_a_minute is 10; write a number from 60 to 300",
    ),
    ("format = 1\ntitle = 3\n", '2:1: title is no text; write title = "..."'),
    (
        "format = 1\naudiance = 1500\n",
        "2:1: audiance is no setting;"
        " the settings are format, title, side, audience, words_a_minute, decisions",
    ),
    (
        "format = 1\ndecisions = 3\n",
        "2:1: decisions is no table; write [decisions] on a line of its own",
    ),
    ('title = "x"\n', "1:1: format is missing; write format = 1"),
    ('format = "1"\n', "1:1: format is '1'; write format = 1"),
    (
        "# mine\nformat = 2\n",
        "2:1: the lesson was made by a newer version (format 2; this one reads up to 1);"
        " install the newer version",
    ),
    (
        "format = 0\n",
        "1:1: format 0 is not known; write format = 1 after checking the settings",
    ),
]


@pytest.mark.parametrize(("text", "message"), SETTINGS)
def test_wrong_settings_are_named_with_their_place(text: str, message: str, tmp_path: Path) -> None:
    (tmp_path / "lines.pgn").write_text("1. e4 *")
    (tmp_path / "lesson.toml").write_text(text)
    with pytest.raises(errors.SettingsError) as caught:
        Lesson.open(tmp_path)
    assert str(caught.value) == f"{tmp_path / 'lesson.toml'}:{message}"


@pytest.mark.parametrize("limit", [400, 2900])
def test_the_edges_of_the_audience_are_allowed(limit: int, tmp_path: Path) -> None:
    (tmp_path / "lines.pgn").write_text("1. e4 *")
    (tmp_path / "lesson.toml").write_text(f"format = 1\naudience = {limit}\n")
    assert Lesson.open(tmp_path).settings.audience == limit
