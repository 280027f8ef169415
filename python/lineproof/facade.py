"""The one clear call: open a lesson and prove it.

>>> from lineproof.facade import Lesson
>>> proof = Lesson.from_text("1. f3 e5 2. g4 Qh4# {This is mate.} *").prove(effort="sketch")
>>> proof.findings[0].because
'White is in check and has no legal move.'
"""

from __future__ import annotations

import os
from collections.abc import Callable
from contextlib import ExitStack
from typing import TYPE_CHECKING

from lineproof import lesson as lessons
from lineproof.claims import Outcome
from lineproof.collection import Collection
from lineproof.lesson import LessonError, Settings, Side
from lineproof.proof import Effort, EvidenceStore, Finding, Progress, Proof, evidence_file, prove
from lineproof.proof.marking import mark, take_back

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine

__all__ = ["Collection", "Effort", "Finding", "Lesson", "LessonError", "Outcome", "Proof"]


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
            if isinstance(engine, str | os.PathLike):
                from lineproof.engine.outside.pool import OutsideEngine

                engine = stack.enter_context(OutsideEngine(engine))
            games = None
            if collection is not None:
                from lineproof.proof.games import Games

                if isinstance(collection, str):
                    collection = stack.enter_context(Collection.open(collection))
                games = Games.of(collection, self)
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


def _again(make: Callable[..., lessons.Lesson], values: tuple[object, ...]) -> Lesson:
    return _provable(make(*values))


def _provable(lesson: lessons.Lesson) -> Lesson:
    """The lesson as one of this class, without reading its text a second time."""
    made = Lesson.__new__(Lesson)
    made.__dict__.update(lesson.__dict__)
    return made
