"""Edits of a lesson: each makes a new text, in which all bytes outside the edit stay, and reads it.

>>> from lineproof.lesson import Lesson
>>> lesson = Lesson.from_text("1. e4 e5 2. Nc3 *")
>>> lesson, place = add_move(lesson.places[1], "c5")
>>> lesson.text, place.label
('1. e4 e5 (1... c5) 2. Nc3 *', '1... c5')

Every function gives the new lesson and the place that the edit was about. `EditError` says why an
edit cannot be made; the lesson given stays as it was.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from lineproof._engine import AmbiguousMoveError, IllegalMoveError, MoveSyntaxError, read_san
from lineproof.lesson.errors import EditError, quoted
from lineproof.lesson.places import SUFFIX_NAGS, Comment, Place
from lineproof.lesson.splice import (
    Splice,
    at_root,
    black_number,
    fenced,
    insertion,
    number_after,
    parts,
    removal,
    splice,
)
from lineproof.lesson.walk import (
    BLANK,
    COMMENTS,
    GLYPHS,
    MOVES,
    Text,
    Tokens,
    sure,
    trimmed,
)

if TYPE_CHECKING:
    from lineproof._engine import Board
    from lineproof.lesson.lesson import Lesson

UNWRITABLE = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f]")
"""Control characters other than tab and line ends; files with many of them are taken for no text."""
SURROGATE = re.compile(r"[\ud800-\udfff]")

NAG_MAX = 999_999_999

SUFFIXES = {nag: text for text, nag in reversed(SUFFIX_NAGS.items())}

Edited = tuple["Lesson", Place]


# Moves


def add_move(place: Place, san: str) -> Edited:
    """Adds a move after a place: at the line's end, or as a variation; a known move is returned."""
    return add_line(place, [san])


def add_line(place: Place, sans: Sequence[str]) -> Edited:
    """Adds moves after a place, following those already there.

    :returns: the lesson and the place after the last move.
    :raises EditError: when a move cannot be played there.
    """
    at, board = place, place.board
    fresh: list[str] = []
    ucis: list[str] = []
    for san in sans:
        uci, spelled = _read(place, board, san)
        known = None if fresh else next((c for c in at.children if c.uci == uci), None)
        if known is None:
            fresh.append(spelled)
            ucis.append(uci)
            board = _after(board, uci)
        else:
            at, board = known, known.board
    if not fresh:
        return at.lesson, at
    lesson = _hang(at, _spell(at, fresh))
    _expect(lesson, places=len(at.lesson.places) + len(fresh), comments=len(at.lesson.comments))
    # What was put in stands after all the other moves from there.
    new = next(iter(lesson.places[at.index].children[::-1]), None)
    for _ in fresh[1:]:
        new = new and new.next
    if new is None or new.moves() != [*at.moves(), *ucis]:
        raise _too_much(lesson)
    return lesson, new


def cut(place: Place) -> Edited:
    """Cuts a move and all that follows it on its line; other moves from the same position stay.

    Where variations replace the move, the first of them takes its place, after the words that open
    the line.

    :returns: the lesson and the place before the cut.
    """
    parent = _parent(place, "cut")
    lesson, tokens = place.lesson, Tokens(place.lesson)
    move = tokens.move(place)
    later = parent.children[parent.children.index(place) + 1 :]
    if later and later[0].depth > place.depth:
        lesson, promoted = promote(later[0])
        # The line that made way is now the first variation.
        siblings = lesson.places[parent.index].children
        return cut(siblings[siblings.index(promoted) + 1])
    if _opens(tokens, move):
        first = tokens.opening(move)
        last = tokens.closing(first)
    else:
        first = tokens.numbered(move)
        last = tokens.last_before(tokens.line_end(move, place.depth > 0))
    start, end, text = removal(tokens, first, last)
    if place.ply == 1 and place.depth == 0 and place.game.result is None:
        text += "*"  # without it nothing would part the game from the next
    edited = splice(lesson, [(start, end, text)])
    gone = len(_branch(place))
    if len(edited.places) != len(lesson.places) - gone:
        raise _too_much(lesson)
    return edited, edited.places[parent.index]


def promote(place: Place) -> Edited:
    """Moves the variation that a place is in up one level; what it replaced becomes a variation.

    :returns: the lesson and the same place.
    :raises EditError: when the place is on the main line.
    """
    if place.depth == 0:
        raise _refusal(place, "this is the main line already", "choose a move of a variation")
    lesson, tokens = place.lesson, Tokens(place.lesson)
    path = place.path()
    opened = tokens.opening(tokens.move(place))
    closed = tokens.closing(opened)
    first = next(p for p in path if p.ply and opened < tokens.move(p) < closed)
    main = tokens.replaced(opened)
    steps = [one.children.index(two) for one, two in _pairs(path[first.ply :])]

    # The variation: what opens it, its first move with glyphs and comments, and its tail.
    move = tokens.move(first)
    head = tokens.numbered(move)
    before = trimmed(tokens, opened + 1, head)
    own = next((s for s in tokens.trail(move) if s.variation), None)
    trail_end = tokens.trail_end(move)
    own_end = own.first if own else trail_end
    tail = trimmed(tokens, own_end, closed)

    # The line it replaces: the move, the words about it, the other variations, and its rest.
    main_head = tokens.numbered(main)
    rest_from = tokens.trail_end(main)
    line_end = tokens.line_end(main, place.depth > 1)
    words = [s for s in tokens.trail(main) if not s.variation]
    others = [s for s in tokens.trail(main) if s.variation and s.first != opened]
    number = tokens.text(main_head, main) if main_head != main else f"{first.number} "

    old = Text(tokens)
    old.literal("(" + number)
    old.piece(main, main + 1, glue=True)
    for span in words:
        old.piece(span.first, span.last, glue=tokens.kind(span.first) == "suffix")
    old.piece(*trimmed(tokens, rest_from, line_end))
    old.literal(")", glue=True)

    new = Text(tokens)
    start = tokens.start(main_head)
    if start and lesson.text[start - 1] not in " \t\r\n(":
        new.literal(" ")
    new.piece(*before)
    new.piece(head, move)
    offset = len(new.ready())
    new.piece(*trimmed(tokens, move, own_end))
    new.literal(old.text)
    for span in others:
        new.piece(span.first, span.last)
    if tail[0] < tail[1]:
        if own is None and tokens.kind(tail[0]) in MOVES:
            new.literal(black_number(first))
        new.piece(*tail)

    last = tokens.last_before(line_end)
    text = fenced(tokens, new, last + 1)
    edited = splice(lesson, [(start, tokens.end(last), text)])
    _expect(edited, places=len(lesson.places), comments=len(lesson.comments))
    found = sure(edited.place_at(start + offset))
    for step in steps:
        found = found.children[step]
    return edited, found


def bring_forward(place: Place) -> Edited:
    """Moves the variation that a place is in before the variation that stands before it; what stands between them stays there.

    :returns: the lesson and the same place.
    :raises EditError: when the place is on the main line, or in the first variation there.
    """
    if place.depth == 0:
        raise _refusal(place, "this is the main line", "choose a move of a variation")
    lesson, tokens = place.lesson, Tokens(place.lesson)
    move = tokens.move(place)
    opened = tokens.opening(move)
    spans = [span for span in tokens.trail(tokens.replaced(opened)) if span.variation]
    number = next(n for n, span in enumerate(spans) if span.first == opened)
    if number == 0:
        raise _refusal(
            place,
            "no variation stands before this one",
            "promote it to make it the line shown first",
        )
    before, own = (tokens.text(span.first, span.last) for span in spans[number - 1 : number + 1])
    first, second = (tokens.start(span.first) for span in spans[number - 1 : number + 1])
    swapped = [(first, first + len(before), own), (second, second + len(own), before)]
    edited = splice(lesson, swapped)
    _expect(edited, places=len(lesson.places), comments=len(lesson.comments))
    return edited, sure(edited.place_at(first + tokens.start(move) - second))


def join(place: Place, other: Place) -> Edited:
    """Hangs a copy of the moves that follow `other`, with their words, under `place`.

    Moves that `place` has already are kept as they are, without a second copy of their words; what
    follows them is joined in turn. Move numbers are set right.

    :returns: the lesson and the same place.
    :raises EditError: when the positions differ, or nothing follows `other`.
    """
    if place.lesson is not other.lesson:
        raise _refusal(place, "the two places are of different lessons", "join places of one")
    if place.key != other.key:
        raise _refusal(
            place,
            f"{place.label} and {other.label} are not the same position",
            "join only lines that transpose",
        )
    if place == other:
        raise _refusal(place, "a line cannot be joined to itself", "choose another place")
    if other.next is None:
        raise _refusal(place, f"nothing follows {other.label}", "join to a line that goes on")
    # The copies are spelled from the lesson as it is; their places are found anew after each step.
    lesson = place.lesson
    waiting = [(place, other)]
    jobs: list[tuple[tuple[int, ...], str]] = []
    while waiting:
        at, source = waiting.pop()
        known = {child.uci: child for child in at.children}
        shared = [child for child in source.children if child.uci in known]
        route = tuple(one.children.index(two) for one, two in _pairs(at.path()[place.ply :]))
        if not shared and source.next is not None:
            jobs.append((route, _copy(source.next, at, with_variations=True)))
            continue
        waiting.extend((known[child.uci], child) for child in shared)
        jobs.extend(
            (route, _copy(child, at, with_variations=False))
            for child in source.children
            if child.uci not in known
        )
    for route, text in jobs:
        at = lesson.places[place.index]
        for step in route:
            at = at.children[step]
        lesson = _hang(at, text)
    return lesson, lesson.places[place.index]


# Words


def change_words(comment: Comment, text: str) -> Edited:
    """Gives a comment another text.

    :raises EditError: when the text cannot stand in such a comment.
    """
    _refuse_words(comment.place, text, to_line_end=comment.to_line_end)
    lesson = comment.place.lesson
    edited = splice(lesson, [(comment.start, comment.end, text)])
    _expect(edited, places=len(lesson.places), comments=len(lesson.comments))
    return edited, edited.places[comment.place.index]


def remove_comment(comment: Comment) -> Edited:
    """Takes a comment out."""
    lesson, tokens = comment.place.lesson, Tokens(comment.place.lesson)
    at = lesson.pgn.token_at(comment.start - 1)
    edited = splice(lesson, [removal(tokens, at, at)])
    _expect(edited, places=len(lesson.places), comments=len(lesson.comments) - 1)
    return edited, edited.places[comment.place.index]


def add_comment(place: Place, text: str) -> Edited:
    """Adds a comment after a move and its comments; for the start, before the first move.

    :raises EditError: when the text holds a closing brace or a control character.
    """
    _refuse_words(place, text, to_line_end=False)
    lesson, tokens = place.lesson, Tokens(place.lesson)
    words = "{" + text + "}"
    if place.ply:
        move = tokens.move(place)
        last = move
        for span in tokens.trail(move):
            if span.variation:
                break
            last = span.last - 1
        words_at = insertion(tokens, last, words, after=place)
    else:
        words_at = at_root(tokens, place, words)
    edited = splice(lesson, [words_at])
    _expect(edited, places=len(lesson.places), comments=len(lesson.comments) + 1)
    return edited, edited.places[place.index]


def set_marks(place: Place, nags: Sequence[int]) -> Edited:
    """Gives a move these glyph numbers in place of those it has; signs written as text stay.

    A glyph that the move has keeps its spelling; the first of 1 to 6 is else written as ! to ?!.

    :raises EditError: for the start of a game, or a number that is no glyph.
    """
    _parent(place, "marked")
    for nag in nags:
        if not 0 <= nag <= NAG_MAX:
            raise _refusal(place, f"{nag} is no glyph number", f"use 0 to {NAG_MAX}")
    if tuple(nags) == place.nags:
        return place.lesson, place
    lesson, tokens = place.lesson, Tokens(place.lesson)
    known: dict[int, str] = {}
    splices: list[Splice] = []
    glyphs = [g for g in lesson.pgn.glyphs(place.index) if g[0] != "mark"]
    move = tokens.move(place)
    for (_, start, end), nag in zip(glyphs, place.nags, strict=True):
        known[nag] = lesson.text[start:end]
        at = lesson.pgn.token_at(start)
        if at < move:  # written before the move: nothing before it goes
            splices.append((start, end, ""))
        else:
            splices.append(removal(tokens, at, at))
    text = ""
    for index, nag in enumerate(nags):
        spelled = known.get(nag) or (SUFFIXES.get(nag) if index == 0 else None) or f"${nag}"
        text += spelled if spelled in SUFFIX_NAGS and not text else f" {spelled}"
    end = tokens.end(move)
    if splices and splices[0][0] == end:
        text, splices = text + splices[0][2], [(end, splices[0][1], ""), *splices[1:]]
        splices[0] = (end, splices[0][1], text)
    else:
        splices.append((end, end, text + ("" if parts(lesson.text[end : end + 1]) else " ")))
    edited = splice(lesson, splices)
    marked = edited.places[place.index]
    _expect(edited, places=len(lesson.places), comments=len(lesson.comments))
    if marked.nags != tuple(nags):
        raise _refusal(place, "the marks cannot be written here", "edit the file in a text editor")
    return edited, marked


# Spelling


def _read(place: Place, board: Board, san: str) -> tuple[str, str]:
    try:
        return read_san(board, san)
    except UnicodeEncodeError as error:  # half of a surrogate pair
        raise _refusal(place, f"{quoted(san)} is not a move", "choose another move") from error
    except (MoveSyntaxError, IllegalMoveError, AmbiguousMoveError) as error:
        raise _refusal(place, str(error), "choose another move") from error


def _after(board: Board, uci: str) -> Board:
    if uci != "0000":
        return board.play(uci)
    passed = board.passed()
    if passed is None:
        raise AssertionError("a null move was read in check")
    return passed


def _spell(place: Place, sans: Sequence[str]) -> str:
    """Moves after a place with their numbers; the first always has one."""
    words = []
    for half, san in enumerate(sans):
        number, black = number_after(place, half)
        if not black:
            words.append(f"{number}.")
        elif half == 0:
            words.append(f"{number}...")
        words.append(san)
    return " ".join(words)


def _copy(first: Place, at: Place, *, with_variations: bool) -> str:
    """The line from a move on, to be hung under `at`; with the variations on that move or not."""
    tokens = Tokens(first.lesson)
    move = tokens.move(first)
    shift = number_after(at, 0)[0] - number_after(sure(first.parent), 0)[0]
    end = tokens.line_end(move, first.depth > 0)
    copied = Text(tokens)
    copied.literal(_spell(at, [sure(first.written)]))
    if with_variations:
        ranges = [trimmed(tokens, move + 1, end)]
    else:
        ranges = [(s.first, s.last) for s in tokens.trail(move) if not s.variation]
        ranges.append(trimmed(tokens, tokens.trail_end(move), end))
    for from_, to in ranges:
        copied.piece(from_, to, glue=tokens.kind(from_) == "suffix", shift=shift)
    return copied.ready(glue=True)


def _hang(place: Place, text: str) -> Lesson:
    """Puts a line, which begins with its number, under a place: at the end or as a variation."""
    lesson, tokens = place.lesson, Tokens(place.lesson)
    if place.next is not None:
        words = Text(tokens)
        words.literal("(" + text)
        words.literal(")", glue=True)
        main = tokens.move(place.next)
        spans = tokens.trail(main)
        last = spans[-1].last - 1 if spans else main
        return splice(lesson, [insertion(tokens, last, words.text, after=place.next)])
    if place.ply == 0:
        return splice(lesson, [at_root(tokens, place, text)])
    move = tokens.move(place)
    last = tokens.last_before(tokens.line_end(move, place.depth > 0))
    if tokens.kind(last) == "number":  # the author wrote the number already
        text = text[text.index(".") :].lstrip(".").lstrip()
    elif number_after(place, 0)[1] and tokens.kind(last) in (*MOVES, *GLYPHS):
        text = text[text.index(" ") + 1 :]
    return splice(lesson, [insertion(tokens, last, text)])


# Refusing


def _refusal(place: Place, message: str, hint: str) -> EditError:
    span = place.span or place.game.span
    line, column = place.lesson.locate(span[0])
    return EditError(message, path=place.lesson.name, line=line, column=column, hint=hint)


def _parent(place: Place, verb: str) -> Place:
    if place.parent is None:
        raise _refusal(place, f"the start of a game cannot be {verb}", "choose a move")
    return place.parent


def _refuse_words(place: Place, text: str, *, to_line_end: bool) -> None:
    if to_line_end:
        if "\n" in text or "\r" in text:
            raise _refusal(place, "a comment after ; cannot hold a line end", "keep it on one line")
    elif "}" in text:
        raise _refusal(place, "a comment cannot hold a closing brace", "use ) or ] instead")
    wrong = UNWRITABLE.search(text)
    if wrong:
        raise _refusal(
            place, f"a comment cannot hold the control character {wrong.group()!r}", "delete it"
        )
    if SURROGATE.search(text):
        raise _refusal(place, "a comment cannot hold half of a surrogate pair", "delete it")


def _expect(lesson: Lesson, *, places: int, comments: int) -> None:
    """The edit has read back as meant: a guard against text that runs into its surroundings."""
    if (len(lesson.places), len(lesson.comments)) != (places, comments):
        raise _too_much(lesson)


def _too_much(lesson: Lesson) -> EditError:
    return EditError(
        "the edit would change more than it should",
        path=lesson.name,
        hint="edit the file in a text editor there, and open it again",
    )


def _branch(place: Place) -> list[Place]:
    """A place and all that follow it."""
    found = [place]
    for at in found:
        found.extend(at.children)
    return found


def _opens(tokens: Tokens, move: int) -> bool:
    """Whether a move is the first of a variation."""
    index = tokens.numbered(move) - 1
    while tokens.kind(index) in (*BLANK, *COMMENTS, *GLYPHS, "escape", "number"):
        index -= 1
    return tokens.kind(index) == "open"


def _pairs(path: Sequence[Place]) -> Iterator[tuple[Place, Place]]:
    return pairwise(path)
