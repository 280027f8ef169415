"""The one clear call: open a lesson and prove it.

>>> from lineproof.facade import Lesson
>>> proof = Lesson.from_text("1. f3 e5 2. g4 Qh4# {This is mate.} *").prove(effort="sketch")
>>> proof.findings[0].because
'White is in check and has no legal move.'
"""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from contextlib import ExitStack, closing
from pathlib import Path
from typing import TYPE_CHECKING

from lineproof import lesson as lessons
from lineproof.claims import Outcome
from lineproof.collection import Collection
from lineproof.follow import Followed, follow, of_player, played
from lineproof.lesson import LessonError, Settings, Side
from lineproof.order import RunningOrder, running_order
from lineproof.proof import Effort, EvidenceStore, Finding, Progress, Proof, evidence_file, prove
from lineproof.proof.marking import mark, take_back
from lineproof.publish import Choices, Found, Published, PublishError, RefusedError, chosen
from lineproof.publish import publish as publish_found
from lineproof.publish.compare import Comparison, opened, unpublished
from lineproof.publish.compare import compare as compare_sides
from lineproof.publish.publishing import check, check_choices, refuse
from lineproof.replies import Replies
from lineproof.replies.answering import Answer, answer
from lineproof.replies.study import Study, study

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine

__all__ = [
    "Answer",
    "Collection",
    "Comparison",
    "Effort",
    "Finding",
    "Followed",
    "Lesson",
    "LessonError",
    "Outcome",
    "Proof",
    "PublishError",
    "Published",
    "RefusedError",
    "RunningOrder",
    "Study",
]


class Lesson(lessons.Lesson):
    """A lesson that can be proved."""

    @staticmethod
    def open(
        path: str | os.PathLike[str],
        *,
        side: Side | None = None,
        audience: int | None = None,
    ) -> Lesson:
        """Opens a lesson folder or a bare PGN file; `side` and `audience` go before its settings.

        :raises LessonError: one of `lineproof.lesson.errors`.
        """
        return _provable(lessons.Lesson.open(path, side=side, audience=audience))

    @staticmethod
    def from_text(
        text: str,
        *,
        name: str = "lesson.pgn",
        side: Side | None = None,
        audience: int | None = None,
    ) -> Lesson:
        """A lesson that is in no file; its evidence is kept in memory only.

        :raises PgnError, NotPgnError, NulByteError:
        """
        return _provable(lessons.Lesson.from_text(text, name=name, side=side, audience=audience))

    def with_text(self, text: str) -> Lesson:
        """The same lesson with another text, read anew."""
        return _provable(super().with_text(text))

    def with_settings(self, settings: Settings) -> Lesson:
        """The same lines under other settings."""
        return _provable(super().with_settings(settings))

    def __reduce__(self) -> tuple[object, ...]:
        again, values = super().__reduce__()
        return (_again, (again, values))

    def mark_opinion(
        self, words: str = "", at: tuple[int, int | None] | None = None
    ) -> tuple[Lesson, str]:
        """Marks a sentence as the author's opinion, which is not checked, and writes lesson.toml.

        words: the sentence or a part of it. at: its line and perhaps column.
        :returns: the lesson with the mark, and the whole sentence.
        :raises LessonError: when not just one sentence is meant, the lesson has no folder, or it cannot be written.
        """
        lesson, reading = mark(self, words, at)
        return _provable(lesson), reading.sentence.text

    def take_back_opinion(
        self, words: str = "", at: tuple[int, int | None] | None = None
    ) -> tuple[Lesson, str]:
        """Takes such a mark back, also one whose sentence is gone.

        :raises LessonError: as `mark_opinion`.
        """
        lesson, opinion = take_back(self, words, at)
        return _provable(lesson), opinion.words

    def evidence(self) -> EvidenceStore:
        """The lesson's evidence store, opened; close it after use."""
        return EvidenceStore(evidence_file(self))

    def prove(
        self,
        effort: Effort | str = Effort.NORMAL,
        *,
        progress: Progress | None = None,
        workers: int | None = None,
        store: EvidenceStore | None = None,
        engine: str | os.PathLike[str] | OutsideEngine | None = None,
        collection: str | Collection | None = None,
    ) -> Proof:
        """Checks every claim of the lesson.

        The same lesson at the same effort gives the same findings, unless an outside engine is asked.

        effort: "sketch", "normal" or "thorough". progress: called with the claims done and in all.
        workers: threads, by default two for each core. store: by default the lesson's own.
        engine: a UCI program that answers the searches in place of ours, or one that is open already. Claims that
        it leaves unanswered are in `Proof.not_answered()`.
        collection: games, by name or opened already, that are asked how often a move is played; without them such claims
        are unsettled.
        :raises ValueError: when there is no such effort.
        :raises lineproof.engine.outside.StartError: when the program cannot be started or is no UCI engine.
        :raises lineproof.collection.CollectionError: when there is no such collection, or it is damaged.
        :raises KeyboardInterrupt: as it comes; what was answered by then is kept.
        """
        chosen = Effort(effort)
        with ExitStack() as stack:
            engine = _engine(engine, stack)
            counted = _collection(collection, stack)
            games = None
            if counted is not None:
                from lineproof.proof.games import Games

                games = Games.of(counted, self)
            if store is None:
                store = self.evidence()
                stack.callback(store.close)
            return prove(
                self,
                chosen,
                progress=progress,
                workers=workers,
                store=store,
                engine=engine,
                games=games,
            )

    def study(
        self,
        effort: Effort | str = Effort.SKETCH,
        *,
        progress: Progress | None = None,
        workers: int | None = None,
        collection: str | Collection | None = None,
        engine: str | os.PathLike[str] | OutsideEngine | None = None,
    ) -> Study:
        """What the opponent will really play: replies left open, slips, pause points, early stops.

        collection: games to count, or the name of a collection. The rest as in `prove`; progress: called with the steps done and in all.
        :raises lineproof.replies.StudyError: when the lesson does not say which side is taught.
        :raises lineproof.replies.NaturalError: when the weights fitted to the collection are damaged.
        :raises lineproof.collection.CollectionError: when the collection cannot be read.
        """
        with ExitStack() as stack:
            return study(
                self,
                Effort(effort),
                progress=progress,
                workers=workers,
                collection=_collection(collection, stack),
                engine=_engine(engine, stack),
            )

    def order(
        self,
        *,
        minutes: float | None = None,
        study: bool = False,
        progress: Progress | None = None,
        collection: str | Collection | None = None,
    ) -> RunningOrder:
        """In which order the lesson is best told: cues with their times. Nothing is searched unless it is asked for.

        minutes: what it is to fit into; what is seldom met is left out first, by the model of natural moves and the collection.
        study: ask pause points and count slips as mistakes, too, that `study` finds. progress, collection: as there.
        :raises lineproof.order.OrderError: when the lesson has no moves or no comments, or what is seldom met cannot be known.
        :raises lineproof.replies.StudyError: when a study is wanted and the lesson does not say which side is taught.
        """
        with ExitStack() as stack:
            games = _collection(collection, stack)
            found = self.study(progress=progress, collection=games) if study else None
            store = stack.enter_context(closing(self.evidence())) if minutes is not None else None
            replies = (
                None if store is None else Replies(self.settings.audience, store, collection=games)
            )
            return running_order(self, minutes=minutes, replies=replies, study=found)

    def publish(
        self,
        out: str | os.PathLike[str],
        effort: Effort | str = Effort.NORMAL,
        *,
        only: Sequence[str] | None = None,
        choices: Choices | None = None,
        order: RunningOrder | None = None,
        anyway: bool = False,
        progress: Progress | None = None,
        studying: Progress | None = None,
        workers: int | None = None,
        collection: str | Collection | None = None,
        engine: str | os.PathLike[str] | OutsideEngine | None = None,
    ) -> Published:
        """Proves the lesson and writes products of it into a folder, each into a folder of its name; all of them or nothing.

        effort: of the proof; pause points are those of a study at sketch effort. only: names of products, by default all but the video, which takes long.
        choices: width of pictures, language of the pieces' letters, what the video is like.
        order: what captions and video follow, as `order` gives it; by default the whole lesson's, without a study. anyway: also where claims fail.
        progress, studying: called with the claims, and with the steps of the study, that are done and in all. The rest as in `prove`.
        :raises lineproof.publish.RefusedError: when claims fail or words are stale.
        :raises lineproof.publish.PublishError: when there is no such product, or one cannot be made or written.
        :raises: as `prove`.
        """
        folder, products = Path(out), chosen(only)
        check(self, folder)
        check_choices(self, products, choices or Choices())
        with ExitStack() as stack:
            engine, counted = _engine(engine, stack), _collection(collection, stack)
            proof = self.prove(
                effort, progress=progress, workers=workers, engine=engine, collection=counted
            )
            refuse(proof, anyway)
            needed = any(product.needs_study for product in products)
            studied = (
                self.study(progress=studying, workers=workers, engine=engine, collection=counted)
                if needed
                else None
            )
        return publish_found(
            Found(proof, studied, order=order), folder, products, choices, anyway=anyway
        )

    def compare(self, old: str | os.PathLike[str] | lessons.Lesson) -> Comparison:
        """What this lesson has that an older state has not, and the other way round.

        old: a lesson, its folder or PGN file, or an edition of either: "vienna@3". Nothing is searched.
        :raises LessonError: when it cannot be opened, or there is no such edition.
        """
        older = unpublished(old) if isinstance(old, lessons.Lesson) else opened(old)
        return compare_sides(older, unpublished(self))

    def follow(
        self,
        games: str | os.PathLike[str],
        effort: Effort | str = Effort.SKETCH,
        *,
        player: str | None = None,
        progress: Progress | None = None,
        engine: str | os.PathLike[str] | OutsideEngine | None = None,
    ) -> Followed:
        """Where students' games left the lesson. games: a PGN file. player: the student; without, whoever had the taught side.

        Of the games nothing is kept but what was searched of their positions.
        :raises lineproof.follow.FollowError: when nobody, or several, have that name, there are no games, or no side is taught.
        :raises LessonError: when the file cannot be read.
        """
        found = played(Path(games))
        side = self.settings.side
        chosen = of_player(found, player) if player else [(game, str(side)) for game in found]
        with ExitStack() as stack:
            return follow(
                self, chosen, Effort(effort), progress=progress, engine=_engine(engine, stack)
            )

    def ask(
        self,
        position: str,
        effort: Effort | str = Effort.SKETCH,
        *,
        collection: str | Collection | None = None,
        engine: str | os.PathLike[str] | OutsideEngine | None = None,
    ) -> Answer:
        """Answers a viewer's "what about ...?". position: moves from the initial position, or a FEN. The rest as in `study`.

        :raises lineproof.collection.NotAPositionError: when it is neither.
        """
        with ExitStack() as stack:
            return answer(
                self,
                position,
                Effort(effort),
                collection=_collection(collection, stack),
                engine=_engine(engine, stack),
            )


def _collection(given: str | Collection | None, stack: ExitStack) -> Collection | None:
    """A collection, opened where it is named; its games are asked at once, so that one that is not there is told."""
    if isinstance(given, str):
        given = stack.enter_context(Collection.open(given))
    if given is not None:
        given.games  # noqa: B018 - raises where there is none
    return given


def _engine(
    given: str | os.PathLike[str] | OutsideEngine | None, stack: ExitStack
) -> OutsideEngine | None:
    if isinstance(given, str | os.PathLike):
        from lineproof.engine.outside.pool import OutsideEngine

        return stack.enter_context(OutsideEngine(given))
    return given


def _again(make: Callable[..., lessons.Lesson], values: tuple[object, ...]) -> Lesson:
    return _provable(make(*values))


def _provable(lesson: lessons.Lesson) -> Lesson:
    """The lesson as one of this class, without reading its text a second time."""
    made = Lesson.__new__(Lesson)
    made.__dict__.update(lesson.__dict__)
    return made
