"""Cues: what is said and done, one after the other, each with its time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from typing import Literal

from lineproof.claims.sentence import Sentence
from lineproof.lesson import Place

from . import landmarks, timing
from .acts import Act
from .board_words import noted, set_up, this_time
from .landmarks import Landmark, Seen
from .mistakes import BAD
from .order import Telling
from .pausing import Point, asks, gives_away, question
from .pointing import named_squares
from .references import closing
from .spoken import NULL_MOVE, move_words

Kind = Literal["set up", "say", "play", "go back to", "mark", "pause"]


@dataclass(frozen=True)
class Cue:
    """One thing to do. place: what is on the board when it is done. words: what is said.

    begins, seconds: when, from the beginning, and how long. start: where a sentence stands in the lesson's text.
    uci, san: of a move. again: it was shown before. squares: to mark. landmarks: by which a way back singles its position out.
    main: a way back to the main line. note: the author's glyphs after a move, in words, which are not said. A pause says its words itself unless `asked`: then a sentence before it has.
    """

    kind: Kind
    place: Place
    words: str
    begins: float = 0.0
    seconds: float = 0.0
    start: int | None = None
    uci: str | None = None
    san: str | None = None
    again: bool = False
    squares: tuple[str, ...] = ()
    landmarks: tuple[Landmark, ...] = ()
    main: bool = False
    note: str = ""
    asked: bool = False
    silence: float = 0.0
    """Seconds of a pause in which nothing is said."""
    step: int | None = field(default=None, compare=False)
    """The step that it belongs to, for cutting."""


def cues(telling: Telling, words_a_minute: int, points: Iterable[Point] = ()) -> tuple[Cue, ...]:
    """The cues of a telling. points: pause points that were found by search."""
    found = []
    begins = 0.0
    for cue in _Cues(telling, points).all():
        seconds = _seconds(cue, words_a_minute)
        found.append(replace(cue, begins=round(begins, 3), seconds=round(seconds, 3)))
        begins += seconds
    return tuple(found)


def _seconds(cue: Cue, words_a_minute: int) -> float:
    said = timing.spoken(cue.words, words_a_minute)
    match cue.kind:
        case "play":
            return said + timing.MOVE
        case "go back to" | "set up":
            return said + timing.LOOK
        case "mark":
            return timing.MARK
        case "pause":
            return cue.silence if cue.asked else said + cue.silence
        case "say":
            return said


class _Cues:
    def __init__(self, telling: Telling, points: Iterable[Point]) -> None:
        self.telling = telling
        self.steps = telling.steps
        self.points = {point.key: point for point in points}
        self.last = closing(self.steps)
        self.main = set(self.steps.main_line())
        self.seen = Seen()
        self.played: set[tuple[int, str]] = set()
        self.place = self.steps.all[self.steps.beginnings[0]].place

    def all(self) -> Iterator[Cue]:
        acts = self.telling.acts
        board = -1
        again = False
        back = -1
        for number, act in enumerate(acts):
            self.place = self._place(act)
            if act.kind == "back":
                yield self._back(act, self._next(acts, number), once_more=back == act.position)
                back = act.position
            elif act.kind == "begin" and not landmarks.is_start(self.place.board):
                if self.place.key not in self.seen.numbers:
                    yield Cue("set up", self.place, set_up(self.place.board), step=act.number)
            elif act.kind in ("step", "again"):
                step = None if act.number is None else self.steps.all[act.number]
                before = self.steps.board(board)
                if step is not None:
                    self.place = self.steps.at[board]
                    yield from self._say(step.before, step.number)
                    self.place = step.place
                words = move_words(before, act.uci or "")
                if act.kind == "again" and not again:
                    words = f"as before, {words}"
                elif again and act.kind == "step":
                    words = f"but this time {words}"
                move = (board, act.uci or "")
                yield Cue(
                    "play",
                    self.place,
                    words,
                    uci=act.uci,
                    san="--" if act.uci == NULL_MOVE else before.san(act.uci or ""),
                    again=move in self.played,
                    note="" if step is None else noted(step.nags),
                    step=act.number,
                )
                self.played.add(move)
            again = act.kind == "again"
            board = act.position
            self.seen.add(self.place.board)
            if act.number is not None:
                yield from self._say(self.steps.all[act.number].after, act.number)
        for sentence in self.last:
            yield self._said(sentence, None)

    def _place(self, act: Act) -> Place:
        if act.number is not None:
            return self.steps.all[act.number].place
        return self.steps.at[act.position]

    def _next(self, acts: Sequence[Act], number: int) -> Act | None:
        """The move after an act."""
        return next((act for act in acts[number + 1 :][:2] if act.kind in ("step", "again")), None)

    def _say(self, said: list[Sentence], number: int) -> Iterator[Cue]:
        """Sentences with their marks and pauses; what gives the answer away comes after the pause."""
        said = [sentence for sentence in said if sentence not in self.last]
        point = self._point()
        asked = False
        for sentence in said:
            if point is not None and not asked and gives_away(sentence, self._best(point)):
                yield self._asked(point, number)
                asked = True
            squares = named_squares(sentence, self.place.board)
            if squares:
                yield Cue("mark", self.place, "", squares=squares, step=number)
            yield self._said(sentence, number)
            seconds = asks(sentence)
            if seconds is not None:
                words = " ".join(sentence.text.split())
                yield Cue("pause", self.place, words, silence=seconds, asked=True, step=number)
                asked = True
        if point is not None and not asked:
            yield self._asked(point, number)

    def _point(self) -> Point | None:
        """The pause point here, if the lesson has its answer and has not shown it."""
        point = self.points.get(self.place.key)
        position = self.steps.all[self.steps.of_place[self.place.index]].end
        if point is None or (position, point.best) in self.played:
            return None
        if point.best not in self.steps.moves.get(position, {}):
            return None
        del self.points[self.place.key]
        return point

    def _best(self, point: Point) -> str:
        return self.place.board.san(point.best)

    def _asked(self, point: Point, number: int) -> Cue:
        words, seconds = question(self.place.board, point)
        return Cue("pause", self.place, words, silence=seconds, step=number)

    def _said(self, sentence: Sentence, number: int | None) -> Cue:
        return Cue("say", self.place, sentence.text, start=sentence.start, step=number)

    def _back(self, act: Act, follows: Act | None, once_more: bool) -> Cue:
        board = self.place.board
        road = self.steps.all[self.steps.of_place[self.place.index]].number
        if follows is not None and follows.number is not None:
            road = self.steps.all[follows.number].parent or road
        moves = [self.steps.all[n].uci or "" for n in reversed(self.steps.road(road))]
        moved = [uci[2:4] for uci in moves if uci not in ("", NULL_MOVE)]
        main = follows is not None and follows.number in self.main
        marks = self.seen.marks(board, moved)
        if landmarks.is_start(board):
            where = "to the very beginning"
        else:
            where = f"to the position {landmarks.words(marks, moved)}".rstrip()
        line = "to the main line, " if main else ""
        return Cue(
            "go back to",
            self.place,
            f"{'Once more back' if once_more else 'Back'} {line}{where}, {self._why(act.position, follows)}.",
            landmarks=marks,
            main=main,
            step=None if follows is None else follows.number,
        )

    def _why(self, position: int, follows: Act | None) -> str:
        """What is different this time."""
        if follows is None or follows.uci in (None, NULL_MOVE):
            return "to look at it once more"
        board = self.steps.board(position)
        shown = sum((position, uci) in self.played for uci in board.legal_moves())
        bad = follows.number is not None and bool(self.steps.all[follows.number].nags & BAD)
        return this_time(board, follows.uci, shown, bad)
