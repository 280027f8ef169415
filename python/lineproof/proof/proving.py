"""Proving a lesson: every claim read, checked in parallel, and kept."""

from __future__ import annotations

import os
import time
from collections.abc import Callable
from concurrent.futures import FIRST_COMPLETED, Future, ThreadPoolExecutor, wait
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING

from lineproof.claims import LessonReading, Outcome, read_lesson
from lineproof.engine import ENGINE_VERSION, Stop
from lineproof.lesson import Lesson
from lineproof.lesson.opinions import Opinion, read_opinions

from .asker import Interrupted
from .changes import Change, changes
from .contradictions import Contradiction, contradictions
from .effort import Effort
from .finding import NOT_ANSWERED, Finding
from .opinions import Marked, set_apart, told_gone
from .settling import settle
from .store import EvidenceStore

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine
    from lineproof.engine.outside.program import Program

    from .games import Games

Progress = Callable[[int, int], None]
"""Called with the claims done and the claims in all."""


@dataclass(frozen=True)
class Proof:
    """The answer of a run: what was read, what was found, what changed since the last run.

    engine: version of our engine, which knows the rules and proves mates. outside: the program that answered the
    searches in its place, None where it did so itself; its answers may differ from run to run.
    opinions: the author's marks, each with its sentences. newly_gone: marks without a sentence, of which no earlier run has told.
    contradictions: pairs of claims that cannot both be true. games: those that were asked how often a move is played.
    seconds: wall time. kept: False when the evidence could not be written (a read-only or full disk).
    """

    lesson: Lesson
    effort: Effort
    engine: str
    reading: LessonReading
    findings: tuple[Finding, ...]
    changes: tuple[Change, ...]
    seconds: float
    kept: bool
    outside: Program | None = None
    opinions: tuple[Marked, ...] = ()
    newly_gone: tuple[Opinion, ...] = ()
    contradictions: tuple[Contradiction, ...] = ()
    games: Games | None = None

    def count(self, outcome: Outcome) -> int:
        return sum(f.outcome is outcome for f in self.findings)

    def of(self, outcome: Outcome) -> tuple[Finding, ...]:
        return tuple(f for f in self.findings if f.outcome is outcome)

    def not_answered(self) -> tuple[Finding, ...]:
        """Unsettled only because the outside engine failed; the next run asks them anew."""
        return tuple(f for f in self.findings if f.why_unsettled == NOT_ANSWERED)


def prove(
    lesson: Lesson,
    effort: Effort = Effort.NORMAL,
    *,
    progress: Progress | None = None,
    workers: int | None = None,
    store: EvidenceStore | None = None,
    engine: OutsideEngine | None = None,
    games: Games | None = None,
) -> Proof:
    """Checks every claim of a lesson.

    The same lesson at the same effort gives the same findings, whatever the number of workers; an outside
    engine may answer otherwise at another time.

    workers: threads, by default two for each core, for one may wait for what another searches. store: by default the lesson's own evidence store.
    engine: answers the searches in place of ours; claims that it leaves unanswered are unsettled.
    games: asked how often a move is played; without them such claims are unsettled.
    :raises KeyboardInterrupt: as it comes; what was answered by then is kept, and the next run goes on from there.
    :raises lineproof.lesson.opinions.OpinionError: when the settings, made by hand, hold an opinion that is none.
    :raises lineproof.collection.CollectionError: when a file of the games is damaged.
    """
    began = time.monotonic()
    own = store is None
    evidence = EvidenceStore(evidence_file(lesson)) if store is None else store
    try:
        apart = set_apart(read_lesson(lesson), read_opinions(lesson.settings.decisions))
        reading = apart.reading
        findings = _settle_all(
            reading, effort, evidence, progress, workers or 2 * (os.cpu_count() or 1), engine, games
        )
        last = evidence.last_run()
        changed = changes(last, findings, effort, apart.dropped)
        told = told_gone(last)
        evidence.record_run(
            datetime.now(UTC).isoformat(timespec="seconds"),
            {
                "effort": str(effort),
                "findings": [f.record() for f in findings],
                "opinions": [claim.fingerprint() for claim in apart.dropped],
                "gone": [opinion.name for opinion in apart.gone],
            },
        )
        return Proof(
            lesson,
            effort,
            ENGINE_VERSION,
            reading,
            findings,
            changed,
            time.monotonic() - began,
            evidence.kept,
            None if engine is None else engine.program,
            apart.marks,
            tuple(opinion for opinion in apart.gone if opinion.name not in told),
            contradictions(findings),
            games,
        )
    finally:
        if own:
            evidence.close()


def evidence_file(lesson: Lesson) -> Path | None:
    """Where a lesson's evidence is kept; None for a lesson that is in no file."""
    return None if lesson.home is None else lesson.home / "cache" / "evidence.sqlite"


def _settle_all(
    reading: LessonReading,
    effort: Effort,
    store: EvidenceStore,
    progress: Progress | None,
    workers: int,
    engine: OutsideEngine | None,
    games: Games | None,
) -> tuple[Finding, ...]:
    claims = reading.claims
    stop = Stop()
    found: dict[int, Finding] = {}
    with ThreadPoolExecutor(max_workers=workers) as pool:
        waiting: dict[Future[Finding], int] = {}
        try:
            for number, claim in enumerate(claims):
                waiting[pool.submit(settle, claim, effort, store, stop, engine, games)] = number
            while waiting:
                if progress is not None:
                    progress(len(found), len(claims))
                done, _ = wait(waiting, timeout=0.5, return_when=FIRST_COMPLETED)
                for future in done:
                    found[waiting.pop(future)] = future.result()
        except BaseException:
            stop.set()
            for future in waiting:
                future.cancel()
            raise
    if progress is not None:
        progress(len(claims), len(claims))
    return tuple(found[number] for number in range(len(claims)))


__all__ = ["Interrupted", "Progress", "Proof", "prove"]
