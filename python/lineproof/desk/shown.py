"""A lesson and a position as the page gets them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence

from lineproof.diagram import JustPlayed, alternative
from lineproof.engine import Board
from lineproof.lesson import Comment, Lesson, Place
from lineproof.lesson.diagrams import diagrams
from lineproof.lesson.graph import NULL_MOVE
from lineproof.lesson.opinions import OpinionError, read_opinions
from lineproof.replies.likely import COUNTING
from lineproof.report.title import title_of

from .naming import Names
from .put_off import read_put_off
from .sources import read_sources
from .wire import (
    CommentShown,
    ConflictShown,
    Evidence,
    GameShown,
    LegalMove,
    LessonShown,
    OpinionShown,
    PlaceShown,
    PositionShown,
    StaleDecided,
)

Road = tuple[str, str | None, str | None, str]
"""What is the same for a place as long as its name is: number, SAN, UCI, FEN."""


def without_options(said: str) -> str:
    """What is told, without the way out that only the command line has."""
    return said.replace(f" {COUNTING}.", "").replace(" `--audience RATING` counts others.", "")


def lesson_shown(
    lesson: Lesson,
    names: Names,
    roads: dict[str, Road],
    *,
    key: str,
    version: int,
    undo: int,
    redo: int,
    conflict: ConflictShown | None = None,
    notice: str | None = None,
    unwritable: str | None = None,
) -> LessonShown:
    """The whole lesson. roads: what is known of its places from earlier versions; what is new is added."""
    settings = lesson.settings
    return LessonShown(
        key=key,
        version=version,
        title=title_of(lesson),
        side=settings.side,
        audience=settings.audience,
        name=lesson.name,
        folder=lesson.folder is not None,
        undo=undo,
        redo=redo,
        conflict=conflict,
        notice=notice,
        unwritable=unwritable,
        games=[
            GameShown(root=names.of(game.root), tags=list(game.tags), result=game.result)
            for game in lesson.games
        ],
        places=_places(lesson, names, roads),
        opinions=_opinions(lesson),
        stale_decided=list(_stale_decided(lesson, names)),
    )


def _stale_decided(lesson: Lesson, names: Names) -> Iterator[StaleDecided]:
    for one in read_put_off(lesson.settings.decisions):
        sort, key, about = one.anchor
        places = lesson.positions.get(key, ())
        if sort == "stale" and places:
            yield StaleDecided(places=[names.of(p) for p in places], about=about, decided=one.how)


def _opinions(lesson: Lesson) -> list[OpinionShown]:
    try:
        found = read_opinions(lesson.settings.decisions)
    except OpinionError:  # lesson.toml was checked when it was read
        return []
    return [OpinionShown(name=each.name, words=each.words, move=each.move) for each in found]


def _places(lesson: Lesson, names: Names, roads: dict[str, Road]) -> list[PlaceShown]:
    pgn = lesson.pgn
    before: dict[int, list[CommentShown]] = defaultdict(list)
    after: dict[int, list[CommentShown]] = defaultdict(list)
    for index, comment in enumerate(lesson.comments):
        opens = comment.anchor != comment.place
        (before if opens else after)[comment.anchor.index].append(_comment(index, comment))
    first: dict[int, int] = {}
    second: dict[int, int] = {}
    for index in range(pgn.places):
        key = pgn.key(index)
        if first.setdefault(key, index) != index:
            second.setdefault(key, index)
    sources = read_sources(lesson.settings.decisions)
    drawn = {place.index for place in diagrams(lesson)}
    found = []
    for place in lesson.places:
        index, key = place.index, pgn.key(place.index)
        name = names.all[index]
        if name not in roads:
            roads[name] = (place.number, place.san, place.uci, place.board.fen)
        number, san, uci, fen = roads[name]
        glyphs = bool(pgn.glyphs(index))
        parent = pgn.parent(index)
        twin = first[key] if first[key] != index else second.get(key)
        found.append(
            PlaceShown(
                id=name,
                parent=None if parent is None else names.all[parent],
                game=pgn.game(index),
                ply=pgn.ply(index),
                number=number,
                san=san,
                uci=uci,
                fen=fen,
                depth=pgn.depth(index),
                nags=list(place.nags) if glyphs else [],
                signs=list(place.marks) if glyphs else [],
                before=before[index],
                after=after[index],
                joins=None if twin is None else names.all[twin],
                source=sources.get((key, uci or "")),
                diagram=_diagram(place) if index in drawn else None,
            )
        )
    return found


def _diagram(place: Place) -> str:
    """What the diagram at a place says to a screen reader."""
    uci = place.uci
    played = () if uci is None or uci == NULL_MOVE else (JustPlayed(uci[:2], uci[2:4]),)
    return alternative(place.board.fen, played)


def _comment(index: int, comment: Comment) -> CommentShown:
    return CommentShown(index=index, text=comment.text, to_line_end=comment.to_line_end)


def position_shown(board: Board) -> PositionShown:
    """A position with its legal moves."""
    return PositionShown(
        fen=board.fen,
        turn="white" if board.turn == "white" else "black",
        check=board.in_check,
        legal=[legal_move(board, uci) for uci in board.legal_moves()],
        alternative=alternative(board.fen),
    )


def legal_move(board: Board, uci: str) -> LegalMove:
    """A move and the position after it."""
    return LegalMove(uci=uci, san=board.san(uci), fen=board.play(uci).fen)


def evidence(board: Board, moves: Sequence[str], text: str) -> Evidence:
    """A line that can be stepped through. moves: in UCI. text: the same with move numbers."""
    found: list[LegalMove] = []
    at = board
    for uci in moves:
        found.append(legal_move(at, uci))
        at = at.play(uci)
    return Evidence(fen=board.fen, moves=found, text=text)
