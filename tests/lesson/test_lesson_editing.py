"""Edits by example: where new text goes, and that all else stays."""

from __future__ import annotations

import pytest

from lineproof.lesson import Lesson, Place, edit, errors

VIENNA = (
    "1. e4 {b} e5 ({c} 1... c5! {d} 2. Nf3 (2. c3 d5) 2... d6) (1... e6 2. d4) {e} 2. Nc3 Nf6 *"
)


def at(text: str, label: str) -> Place:
    return next(place for place in Lesson.from_text(text).places if place.label == label)


@pytest.mark.parametrize(
    ("text", "label", "san", "expected"),
    [
        ("1. e4 e5 *", "1... e5", "Nc3", "1. e4 e5 2. Nc3 *"),
        ("1. e4 *", "1. e4", "e5", "1. e4 e5 *"),
        ("1. e4 {king's pawn} *", "1. e4", "e5", "1. e4 {king's pawn} 1... e5 *"),
        ("1. e4 e5 *", "1. e4", "c5", "1. e4 e5 (1... c5) *"),
        ("1. e4 e5 2. Nf3 *", "start", "d4", "1. e4 (1. d4) 1... e5 2. Nf3 *"),
        ("1. e4 e5 (1... c5) *", "1... c5", "Nf3", "1. e4 e5 (1... c5 2. Nf3) *"),
        ("1. e4 ; best\n*", "1. e4", "e5", "1. e4 ; best\n1... e5\n*"),
        ("1. e4\r\n%x\r\n*", "1. e4", "e5", "1. e4\r\n%x\r\n1... e5\r\n*"),
        ("1. e4 e5 2. *", "1... e5", "Nc3", "1. e4 e5 2. Nc3 *"),
        ('[Event "x"]\n\n*\n', "start", "e4", '[Event "x"]\n\n1. e4 *\n'),
        ('[Event "x"]', "start", "e4", '[Event "x"]\n\n1. e4'),
        ("1. e4 e5", "1... e5", "g1f3", "1. e4 e5"),
        ("1. e4 e5 *", "1... e5", "0-0", "1. e4 e5 *"),
        ("1. e4 e5 *", "1... e5", "ng1-f3", "1. e4 e5 2. Nf3 *"),
        ("1. e4 *", "1. e4", "--", "1. e4 -- *"),
    ],
)
def test_a_move_goes_where_the_export_format_has_it(
    text: str, label: str, san: str, expected: str
) -> None:
    if expected == text:
        with pytest.raises(errors.EditError):
            edit.add_move(at(text, label), san)
    else:
        assert edit.add_move(at(text, label), san)[0].text == expected


def test_a_known_move_is_returned_and_nothing_changes() -> None:
    place = at("1. e4 e5 (1... c5) *", "1. e4")
    lesson, found = edit.add_move(place, "c5")
    assert lesson is place.lesson
    assert found == lesson.places[3]


def test_an_illegal_move_is_refused_with_the_moves_that_are_legal() -> None:
    with pytest.raises(errors.EditError) as caught:
        edit.add_move(at("1. e4 e5 *", "1... e5"), "Ke3")
    assert str(caught.value) == (
        "lesson.pgn:1:7: Ke3 is not legal here; that piece can play Ke2; choose another move"
    )


def test_a_line_follows_what_is_there_first() -> None:
    lesson, place = edit.add_line(at("1. e4 e5 2. Nf3 *", "start"), ["e4", "e5", "Nc3", "Nf6"])
    assert lesson.text == "1. e4 e5 2. Nf3 (2. Nc3 Nf6) *"
    assert place.label == "2... Nf6"


def test_new_text_starts_a_line_where_it_would_not_fit() -> None:
    text = "{" + "x" * 62 + "} 1. e4 e5 *\n"
    lesson, _ = edit.add_line(at(text, "1... e5"), ["Nc3", "Nf6", "f4"])
    assert lesson.text == text.replace(" *", "\n2. Nc3 Nf6 3. f4 *")


@pytest.mark.parametrize(
    ("label", "expected"),
    [
        ("2. Nc3", VIENNA.replace(" 2. Nc3 Nf6", "")),
        ("2... Nf6", VIENNA.replace(" Nf6", "")),
        ("2. d4", VIENNA.replace(" 2. d4", "")),
        ("1... e6", VIENNA.replace(" (1... e6 2. d4)", "")),
        ("2... d6", VIENNA.replace(" 2... d6", "")),
        (
            "1... e5",
            "1. e4 {b} {c} 1... c5! {d} (1... e6 2. d4) 2. Nf3 (2. c3 d5) 2... d6 *",
        ),
    ],
)
def test_a_cut_leaves_the_rest(label: str, expected: str) -> None:
    assert edit.cut(at(VIENNA, label))[0].text == expected


@pytest.mark.parametrize(
    ("label", "expected"),
    [
        (
            "2... d6",
            "1. e4 {b} {c} 1... c5! {d} (1... e5 {e} 2. Nc3 Nf6) (1... e6 2. d4)"
            " 2. Nf3 (2. c3 d5) 2... d6 *",
        ),
        (
            "2... d5",
            "1. e4 {b} e5 ({c} 1... c5! {d} 2. c3 (2. Nf3 2... d6) 2... d5)"
            " (1... e6 2. d4) {e} 2. Nc3 Nf6 *",
        ),
    ],
)
def test_a_promoted_variation_changes_places_with_its_main_line(label: str, expected: str) -> None:
    lesson, place = edit.promote(at(VIENNA, label))
    assert lesson.text == expected
    assert place.label == label


def test_the_main_line_cannot_be_promoted() -> None:
    with pytest.raises(errors.EditError, match="this is the main line already"):
        edit.promote(at(VIENNA, "2. Nc3"))


def test_a_variation_is_brought_before_the_one_before_it_and_all_else_stays() -> None:
    lesson, place = edit.bring_forward(at(VIENNA, "2. d4"))
    assert lesson.text == (
        "1. e4 {b} e5 (1... e6 2. d4) ({c} 1... c5! {d} 2. Nf3 (2. c3 d5) 2... d6) {e} 2. Nc3 Nf6 *"
    )
    assert place.label == "2. d4"


@pytest.mark.parametrize("label", ["1... c5", "2... d5", "2. Nc3"])
def test_the_first_variation_and_the_main_line_stand_first_already(label: str) -> None:
    with pytest.raises(errors.EditError):
        edit.bring_forward(at(VIENNA, label))


def test_a_joined_line_takes_its_words_and_gets_the_right_numbers() -> None:
    text = (
        "1. Nf3 Nf6 2. Ng1 Ng8 3. d4 d5 4. c4 e6 {hm} 5. Nc3 {x} (5. Nf3 $1 c5) 5... Nf6! *\n\n"
        "1. c4 e6 2. d4 d5 *\n"
    )
    lesson = Lesson.from_text(text)
    place, other = lesson.lines()[-1], at(text, "4... e6")
    other = lesson.places[other.index]
    new, same = edit.join(place, other)
    assert new.text == text.replace(
        "1. c4 e6 2. d4 d5 *", "1. c4 e6 2. d4 d5 3. Nc3 {x} (3. Nf3 $1 c5) 3... Nf6! *"
    )
    assert same == new.places[place.index]


def test_joining_keeps_moves_that_are_there() -> None:
    text = (
        "1. d4 d5 2. c4 e6 3. Nc3 {a} Nf6 {b} (3... c5) *\n\n1. c4 e6 2. d4 d5 3. Nc3 {mine} Be7 *"
    )
    lesson = Lesson.from_text(text)
    other = lesson.places[4]
    place = next(p for p in lesson.positions[other.key] if p.game.index == 1)
    new, _ = edit.join(place, other)
    assert new.text == text.replace("Be7 *", "Be7 (3... Nf6 {b} (3... c5)) *")


def test_joining_other_positions_is_refused() -> None:
    lesson = Lesson.from_text("1. e4 e5 2. Nf3 *")
    with pytest.raises(errors.EditError) as caught:
        edit.join(lesson.places[1], lesson.places[2])
    assert str(caught.value) == (
        "lesson.pgn:1:4: 1. e4 and 1... e5 are not the same position;"
        " join only lines that transpose"
    )


def test_words_with_a_closing_brace_are_refused() -> None:
    lesson = Lesson.from_text("1. e4 {a} *")
    with pytest.raises(errors.EditError) as caught:
        edit.change_words(lesson.comments[0], "a } b")
    assert str(caught.value) == (
        "lesson.pgn:1:4: a comment cannot hold a closing brace; use ) or ] instead"
    )


def test_a_semicolon_comment_may_hold_braces_but_no_line_end() -> None:
    lesson = Lesson.from_text("1. e4 ; a\n*")
    new, _ = edit.change_words(lesson.comments[0], " {b}")
    assert new.text == "1. e4 ; {b}\n*"
    with pytest.raises(errors.EditError, match="cannot hold a line end"):
        edit.change_words(lesson.comments[0], "a\nb")


@pytest.mark.parametrize(
    ("text", "label", "expected"),
    [
        ("1. e4 e5 *", "1. e4", "1. e4 {new} 1... e5 *"),
        ("1. e4! $14 {old} (1. d4) *", "1. e4", "1. e4! $14 {old} {new} (1. d4) *"),
        ("1. e4 e5 *", "start", "{new} 1. e4 e5 *"),
        ('[Event "x"]\n\n{old}\n1. e4 *', "start", '[Event "x"]\n\n{old} {new}\n1. e4 *'),
        ("1. e4 e5*", "1... e5", "1. e4 e5 {new} *"),
    ],
)
def test_a_comment_goes_after_the_move_and_its_comments(
    text: str, label: str, expected: str
) -> None:
    assert edit.add_comment(at(text, label), "new")[0].text == expected


@pytest.mark.parametrize(
    ("text", "nags", "expected"),
    [
        ("1. e4 *", [1], "1. e4! *"),
        ("1. e4! *", [2], "1. e4? *"),
        ("1. e4! $14 *", [14], "1. e4 $14 *"),
        ("1. e4 $1 *", [1, 10], "1. e4 $1 $10 *"),
        ("1. e4 {a} $5 *", [], "1. e4 {a} *"),
        ("1. e4 = *", [5], "1. e4!? = *"),
        ("1. e4(1. d4) *", [16, 1], "1. e4 $16 $1 (1. d4) *"),
    ],
)
def test_marks_are_set_beside_the_move(text: str, nags: list[int], expected: str) -> None:
    assert edit.set_marks(at(text, "1. e4"), nags)[0].text == expected


def test_a_game_of_which_nothing_is_left_stays_a_game() -> None:
    for text, label in [("1. e4", "1. e4"), ('[Event "a"]\n\n1. e4 e5\n\n[Event "b"]\n', "1. e4")]:
        games = len(Lesson.from_text(text).games)
        lesson, _ = edit.cut(at(text, label))
        assert len(lesson.games) == len(lesson.places) == games


def test_an_edit_that_could_not_be_read_back_is_refused() -> None:
    place = at('[Event "x"] 2. [Site "y"]', "start")  # a move there would begin a second game
    with pytest.raises(errors.EditError, match="the edit would change more than it should"):
        edit.add_move(place, "e4")


def test_the_start_of_a_game_takes_no_marks_and_no_cut() -> None:
    place = at("1. e4 *", "start")
    with pytest.raises(errors.EditError, match="the start of a game cannot be marked"):
        edit.set_marks(place, [1])
    with pytest.raises(errors.EditError, match="the start of a game cannot be cut"):
        edit.cut(place)


def test_a_game_from_black_keeps_its_numbers() -> None:
    text = '[FEN "4k3/8/8/8/8/8/8/4K3 b - - 0 60"]\n\n60... Kd7 *'
    lesson, _ = edit.add_move(Lesson.from_text(text).places[1], "Kd1")
    assert lesson.text == text.replace(" *", " 61. Kd1 *")
    lesson, _ = edit.add_move(lesson.places[0], "Ke7")
    assert lesson.text == text.replace(" *", " (60... Ke7) 61. Kd1 *")


def test_edits_leave_the_other_games_alone() -> None:
    first, last = '[Event "a"]\n\n1. e4 *\n\n', '\n\n[Event "c"]\n\n1. c4 {x} *'
    lesson = Lesson.from_text(first + '[Event "b"]\n\n1. d4 d5' + last)
    place = next(p for p in lesson.places if p.label == "1... d5")
    new, _ = edit.add_move(place, "c4")
    assert new.text == first + '[Event "b"]\n\n1. d4 d5 2. c4' + last


@pytest.mark.parametrize("character", ["\0", "\x01", "\x0c", "\x1a", "\x1b", "\x7f"])
def test_words_with_control_characters_are_refused(character: str) -> None:
    lesson = Lesson.from_text("1. e4 {words} *")
    for change in (
        lambda: edit.add_comment(lesson.places[1], f"a{character}b"),
        lambda: edit.change_words(lesson.comments[0], character),
    ):
        with pytest.raises(errors.EditError, match="cannot hold the control character"):
            change()


def test_half_of_a_surrogate_pair_is_no_move_and_no_word() -> None:
    lesson = Lesson.from_text("1. e4 {words} *")
    with pytest.raises(errors.EditError, match="is not a move"):
        edit.add_move(lesson.places[1], "e\ud800")
    with pytest.raises(errors.EditError, match="surrogate"):
        edit.add_comment(lesson.places[1], "a \ud800")
    with pytest.raises(errors.EncodingError):
        Lesson.from_text("1. e4 {\ud800} *")
