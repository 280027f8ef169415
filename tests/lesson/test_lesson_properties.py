"""Properties of reading and editing, on random lessons in random layout."""

from __future__ import annotations

import contextlib
import io
from collections import Counter
from random import Random

import chess.pgn
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from lesson_layout import random_text

from lineproof._engine import Pgn
from lineproof.lesson import Lesson, LessonError, Place, edit
from lineproof.lesson.errors import EditError
from lineproof.lesson.source import Source

SEEDS = st.integers(min_value=0, max_value=2**32)
LINE_ENDS = st.sampled_from(["\n", "\r\n", "\r"])
MARKS = {
    "utf-8": b"",
    "utf-8-mark": b"\xef\xbb\xbf",
    "utf-16-le": b"\xff\xfe",
    "utf-16-be": b"\xfe\xff",
    "latin-1": b"",
}

Path = tuple[int, tuple[str, ...]]


def path(place: Place) -> Path:
    return place.game.index, tuple(place.moves())


def paths(lesson: Lesson) -> Counter[Path]:
    return Counter(path(place) for place in lesson.places)


def words(lesson: Lesson) -> Counter[tuple[Path, str]]:
    return Counter((path(c.place), c.text) for c in lesson.comments)


def second_reader(text: str) -> Counter[Path]:
    """The paths of all nodes as python-chess reads them."""
    found: Counter[Path] = Counter()
    file = io.StringIO(text.replace("\r\n", "\n").replace("\r", "\n"))
    index = 0
    while (game := chess.pgn.read_game(file)) is not None:
        assert not game.errors
        waiting: list[tuple[chess.pgn.GameNode, tuple[str, ...]]] = [(game, ())]
        while waiting:
            node, moves = waiting.pop()
            found[(index, moves)] += 1
            waiting += [(child, (*moves, child.move.uci())) for child in node.variations]
        index += 1
    return found


@given(st.text(alphabet=st.sampled_from('ab1e4.{}()[]";%$!?*-=+O0NxQ \n\r\té∞\u2028Zf"')))
@settings(max_examples=400)
def test_tokens_cover_any_text(text: str) -> None:
    pgn = Pgn(text)
    tokens = [pgn.token(index) for index in range(pgn.tokens)]
    assert "".join(text[start:end] for _, start, end in tokens) == text
    assert [start for _, start, _ in tokens] == [0, *(end for _, _, end in tokens[:-1])][
        : len(tokens)
    ]
    assert all(start < end for _, start, end in tokens)


PIECES = [
    *("e4", "e5", "Nf3", "1.", "1...", "2", "(", ")", "{a}", "{", "}", ";x\n", "\n%y\n", "$3", "$"),
    *(
        "!",
        "?!",
        "=",
        "+-",
        "--",
        "Z0",
        "*",
        "1-0",
        '[Event "x"]',
        '[FEN "8/8 w"]',
        "[",
        "]",
        "0-0",
    ),
    *(" ", " ", "\n", "\r\n", "word", "é", ".", '"'),
]


@given(st.lists(st.sampled_from(PIECES), max_size=25).map("".join))
@settings(max_examples=500, deadline=None)
def test_any_jumble_is_a_lesson_or_a_named_error(text: str) -> None:
    try:
        lesson = Lesson.from_text(text)
    except LessonError as error:
        assert str(error).startswith("lesson.pgn")
        return
    for place in lesson.places:
        assert place.label and place.board.key == place.key
        assert len(place.nags) + len(place.marks) == len(lesson.pgn.glyphs(place.index))
    for comment in lesson.comments:
        assert comment in comment.place.comments
    for place in lesson.places:
        for change in (
            lambda p: edit.add_move(p, p.board.san(p.board.legal_moves()[-1])),
            edit.cut,
            edit.promote,
            edit.bring_forward,
            lambda p: edit.add_comment(p, "words"),
            lambda p: edit.set_marks(p, [3]),
        ):
            with contextlib.suppress(EditError):
                change(place)


@given(SEEDS, LINE_ENDS)
@settings(max_examples=150, deadline=None)
def test_a_lesson_is_read_as_it_was_written(seed: int, line_end: str) -> None:
    text, expected = random_text(seed, line_end=line_end)
    lesson = Lesson.from_text(text)
    assert [tuple(place.moves()) for place in lesson.places] == expected.paths
    assert [place.nags for place in lesson.places] == expected.nags
    assert [(tuple(c.place.moves()), c.text) for c in lesson.comments] == expected.comments
    for comment in lesson.comments:
        assert lesson.text[comment.start : comment.end] == comment.text


@given(SEEDS, LINE_ENDS, st.sampled_from(sorted(MARKS)))
@settings(max_examples=100, deadline=None)
def test_any_encoding_is_written_back_byte_for_byte(
    seed: int, line_end: str, encoding: str
) -> None:
    latin = encoding == "latin-1"
    text, expected = random_text(seed, wide=not latin, line_end=line_end)
    if latin:
        text = f"{{é }}{line_end}{text}"  # e with acute before a space is no UTF-8
    data = MARKS[encoding] + text.encode(encoding.removesuffix("-mark"))
    source = Source.decode(data, "x.pgn")
    assert source.text == text
    assert source.encode() == data
    assert len(Lesson.from_text(source.text).places) == len(expected.paths)


@given(SEEDS)
@settings(max_examples=100, deadline=None)
def test_python_chess_reads_the_same_moves(seed: int) -> None:
    text, _ = random_text(seed, plain=True)
    lesson = Lesson.from_text(text)
    assert paths(lesson) == second_reader(text)
    for place in lesson.places:
        board = chess.Board()
        for uci in place.moves():
            board.push_uci(uci)
        assert place.board.fen == board.fen(en_passant="legal")
        if place.ply:
            before = board.copy()
            move = before.pop()
            assert place.san == before.san(move)


def is_insertion(old: str, new: str) -> bool:
    start = 0
    while start < len(old) and old[start] == new[start]:
        start += 1
    tail = len(old) - start
    # The common head may reach into what was put in when both begin alike: any split will do.
    return any(
        old[:cut] == new[:cut] and old[cut:] == new[len(new) - len(old) + cut :]
        for cut in range(start, max(-1, start - 100), -1)
    ) or (tail == 0 and new.startswith(old))


@given(SEEDS, st.booleans(), LINE_ENDS)
@settings(max_examples=150, deadline=None)
def test_an_added_move_only_adds(seed: int, plain: bool, line_end: str) -> None:
    text, _ = random_text(seed, plain=plain, line_end=line_end)
    rng = Random(seed)
    lesson = Lesson.from_text(text)
    place = rng.choice(lesson.places)
    moves = place.board.legal_moves()
    if not moves:
        return
    uci = rng.choice(moves)
    new, at = edit.add_move(place, place.board.san(uci))
    known = [child for child in place.children if child.uci == uci]
    if known:
        assert (new, at) == (lesson, known[0])
        return
    assert path(at) == (place.game.index, (*place.moves(), uci))
    assert paths(new) - paths(lesson) == Counter([path(at)])
    assert paths(lesson) - paths(new) == Counter()
    assert words(new) == words(lesson)
    assert is_insertion(lesson.text, new.text)
    if plain:
        assert second_reader(new.text) == paths(new)


@given(SEEDS, LINE_ENDS)
@settings(max_examples=100, deadline=None)
def test_an_added_line_is_one_line(seed: int, line_end: str) -> None:
    text, _ = random_text(seed, line_end=line_end)
    rng = Random(seed)
    lesson = Lesson.from_text(text)
    place = rng.choice(lesson.places)
    board, sans, moves = place.board, [], place.moves()
    for _ in range(rng.randint(1, 6)):
        legal = board.legal_moves()
        if not legal:
            break
        uci = rng.choice(legal)
        sans.append(board.san(uci))
        moves.append(uci)
        board = board.play(uci)
    new, at = edit.add_line(place, sans)
    assert at.moves() == moves
    assert words(new) == words(lesson)
    assert not paths(lesson) - paths(new)


@given(SEEDS, st.booleans(), LINE_ENDS)
@example(248, False, "\n")  # a variation inside the variation that is cut
@example(4952, False, "\n")  # an escaped line between number and move
@example(102, True, "\n")  # the same move twice
@example(1075, True, "\n")  # a game of which nothing is left
@settings(max_examples=150, deadline=None)
def test_a_cut_takes_that_branch_and_no_other(seed: int, plain: bool, line_end: str) -> None:
    text, _ = random_text(seed, plain=plain, line_end=line_end)
    lesson = Lesson.from_text(text)
    place = Random(seed).choice(lesson.places)
    if place.parent is None:
        with pytest.raises(EditError):
            edit.cut(place)
        return
    gone = {p.index for p in lesson.places if place in p.path()}
    kept = Counter(path(p) for p in lesson.places if p.index not in gone)
    others = place.parent.children[place.parent.children.index(place) + 1 :]
    replaced = bool(others) and others[0].depth > place.depth
    kept_words = Counter(
        (path(c.place), c.text)
        for c in lesson.comments
        if c.anchor.index not in gone or (replaced and c.opening and c.anchor == place)
    )
    new, at = edit.cut(place)
    assert paths(new) == kept
    assert words(new) == kept_words
    assert path(at) == path(place.parent)
    if plain:
        assert second_reader(new.text) == paths(new)


@given(SEEDS, st.booleans(), LINE_ENDS)
@example(2102, False, "\n")  # an escaped line between number and move
@example(6637, False, "\n")  # a line that ends in a semicolon comment went before a space
@settings(max_examples=200, deadline=None)
def test_a_promotion_loses_nothing(seed: int, plain: bool, line_end: str) -> None:
    text, _ = random_text(seed, plain=plain, line_end=line_end)
    lesson = Lesson.from_text(text)
    inside = [place for place in lesson.places if place.depth]
    if not inside:
        return
    place = Random(seed).choice(inside)
    new, at = edit.promote(place)
    assert path(at) == path(place)
    assert at.depth == place.depth - 1
    assert paths(new) == paths(lesson)
    assert words(new) == words(lesson)
    assert sorted((path(p), p.nags) for p in new.places) == sorted(
        (path(p), p.nags) for p in lesson.places
    )
    assert new.text.count("%escape") == lesson.text.count("%escape")
    if plain:
        assert second_reader(new.text) == paths(new)


@given(SEEDS, st.booleans(), LINE_ENDS)
@settings(max_examples=200, deadline=None)
def test_a_variation_brought_forward_loses_nothing(seed: int, plain: bool, line_end: str) -> None:
    text, _ = random_text(seed, plain=plain, line_end=line_end)
    lesson = Lesson.from_text(text)
    for place in lesson.places:
        try:
            new, at = edit.bring_forward(place)
        except EditError:
            continue
        assert path(at) == path(place)
        assert at.depth == place.depth
        assert sorted(paths(new)) == sorted(paths(lesson))
        assert sorted(words(new)) == sorted(words(lesson))
        assert sorted(new.text) == sorted(text)
        # Of the moves at that branch only the two variations, with what is inside them, have changed places.
        first = next(p for p in place.path() if p.depth == place.depth)
        parent = first.parent
        assert parent is not None
        old, now = ([c.uci for c in p.children] for p in (parent, new.places[parent.index]))
        depths = [child.depth for child in parent.children]
        begins = parent.children.index(first)
        before = max(n for n in range(begins) if depths[n] <= first.depth)
        after = [n for n in range(begins + 1, len(depths)) if depths[n] <= first.depth]
        ends = after[0] if after else len(depths)
        assert now == [*old[:before], *old[begins:ends], *old[before:begins], *old[ends:]]
        if plain:
            assert second_reader(new.text) == paths(new)


@given(SEEDS, LINE_ENDS, st.sampled_from(["two words", "", "a\nb", "∞ {", "; % $1 (x"]))
@settings(max_examples=100, deadline=None)
def test_changed_words_change_nothing_else(seed: int, line_end: str, text: str) -> None:
    lesson = Lesson.from_text(random_text(seed, line_end=line_end)[0])
    if not len(lesson.comments):
        return
    index = Random(seed).randrange(len(lesson.comments))
    comment = lesson.comments[index]
    if comment.to_line_end and "\n" in text:
        with pytest.raises(EditError):
            edit.change_words(comment, text)
        return
    new, _ = edit.change_words(comment, text)
    assert new.text == lesson.text[: comment.start] + text + lesson.text[comment.end :]
    assert [c.text for c in new.comments] == [
        text if at == index else c.text for at, c in enumerate(lesson.comments)
    ]
    assert paths(new) == paths(lesson)


@given(SEEDS, LINE_ENDS)
@settings(max_examples=100, deadline=None)
def test_a_comment_added_and_removed_leaves_the_moves(seed: int, line_end: str) -> None:
    lesson = Lesson.from_text(random_text(seed, line_end=line_end)[0])
    place = Random(seed).choice(lesson.places)
    new, at = edit.add_comment(place, "new words")
    assert at.index == place.index
    assert words(new) - words(lesson) == Counter([(path(place), "new words")])
    assert not words(lesson) - words(new)
    assert is_insertion(lesson.text, new.text)
    added = next(c for c in at.comments if c.text == "new words")
    back, _ = edit.remove_comment(added)
    assert words(back) == words(lesson)
    assert paths(back) == paths(lesson)


@given(SEEDS, LINE_ENDS)
@settings(max_examples=100, deadline=None)
def test_any_comment_can_be_removed(seed: int, line_end: str) -> None:
    lesson = Lesson.from_text(random_text(seed, line_end=line_end)[0])
    if not len(lesson.comments):
        return
    comment = Random(seed).choice(lesson.comments)
    new, _ = edit.remove_comment(comment)
    assert words(lesson) - words(new) == Counter([(path(comment.place), comment.text)])
    assert paths(new) == paths(lesson)


@given(SEEDS, LINE_ENDS, st.lists(st.integers(0, 300), max_size=3))
@settings(max_examples=100, deadline=None)
def test_set_marks_are_read_back(seed: int, line_end: str, nags: list[int]) -> None:
    lesson = Lesson.from_text(random_text(seed, line_end=line_end)[0])
    place = Random(seed).choice(lesson.places)
    if place.parent is None:
        return
    new, at = edit.set_marks(place, nags)
    assert at.nags == tuple(nags)
    others = [p.nags for p in new.places if p.index != at.index]
    assert others == [p.nags for p in lesson.places if p.index != at.index]
    assert words(new) == words(lesson)
    assert paths(new) == paths(lesson)


@given(SEEDS, LINE_ENDS)
@settings(max_examples=150, deadline=None)
def test_a_joined_line_is_a_copy_of_what_followed(seed: int, line_end: str) -> None:
    """Both places are reached by the same knight moves in another order; what follows is random."""
    rng = Random(seed)
    tail, _ = random_text(seed, line_end=line_end)
    first = "1. Nf3 Nf6 2. Nc3 Nc6 {here}"
    second = "1. Nc3 Nc6 2. Nf3 Nf6 3. Ng1 Ng8 4. Nf3 Nf6"
    board = Lesson.from_text(f"{first} *").lines()[0].board
    sans = []
    for _ in range(rng.randint(1, 4)):
        uci = rng.choice(board.legal_moves())
        sans.append(board.san(uci))
        board = board.play(uci)
    lesson = Lesson.from_text(f"{first} *{line_end}{line_end}{tail}{line_end}{second} *")
    other = lesson.lines()[-1]
    lesson, _ = edit.add_line(other, sans)
    lesson, _ = edit.add_comment(lesson.lines()[-1], "end")
    place = next(p for p in lesson.places if p.key == other.key and p.game.index == 0)
    other = lesson.positions[place.key][-1]
    new, at = edit.join(place, other)
    line = [p.san for p in new.lines()[0].path()[place.ply + 1 :]]
    assert line == sans
    assert new.lines()[0].comments[-1].text == "end"
    assert new.lines()[0].written is not None
    assert sum(words(new).values()) == sum(words(lesson).values()) + 1
    assert at == new.places[place.index]
    number = new.text[: new.lines()[0].path()[place.ply + 1].span[0]].split()[-1]  # type: ignore[index]
    assert number == "3."
