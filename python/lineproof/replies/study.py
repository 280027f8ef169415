"""A study of a lesson: what the opponent will really play against it, and which moments are worth teaching.

>>> from lineproof.lesson import Lesson
>>> text = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# *"
>>> found = study(Lesson.from_text(text, side="white"), Effort.SKETCH)
>>> [slip.reply.san for slip in found.slips if slip.shown]
['Bxd1']
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from concurrent.futures import FIRST_COMPLETED, Future, ThreadPoolExecutor, wait
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from lineproof.engine import Stop as Halt
from lineproof.lesson.graph import Graph
from lineproof.proof import Effort, EvidenceStore, evidence_file
from lineproof.proof.asker import Asker
from lineproof.proof.kept import held

from .course import Course
from .detours import Detour, detours
from .ideas import Idea, ideas
from .likely import Replies
from .model_games import ModelGames, model_games
from .orders import Return, Road, returns, roads
from .pauses import ByHeart, Pause, asked
from .plans import Plans, plans
from .slips import Costly, Slip, costly, slips
from .start import starts
from .stops import Stop, stop
from .unanswered import Unanswered, answered, unanswered

if TYPE_CHECKING:
    from lineproof.collection import Collection
    from lineproof.engine.outside.pool import OutsideEngine
    from lineproof.lesson import Lesson, Place

    from .natural import Natural

MOVES = (6, 8, 10, None)
"""Move numbers up to which the share of games answered is told; None is the end."""

Progress = Callable[[int, int], None]
"""Called with the positions done and the positions in all."""


class StudyError(ValueError):
    """A lesson cannot be studied. The text says why and what to do."""


@dataclass(frozen=True)
class Beginning:
    """Where a lesson begins, and the percent of the audience's games from there on that stay inside it up to a move number (None: the end).
    roads: other orders of the moves to there."""

    place: Place
    answered: tuple[tuple[int | None, float], ...]
    roads: tuple[Road, ...]


@dataclass(frozen=True)
class Study:
    """Of one lesson. games: whether games of a collection were counted; without, all shares are the model's, and `uncounted` says why. rating: the audience's.

    Lists are ordered by what matters most: open replies by how often they are met and what they cost, slips and pause points by how
    often their position is met; the others as in the lesson.
    """

    lesson: Lesson
    side: str
    rating: int
    effort: Effort
    games: bool
    beginnings: tuple[Beginning, ...]
    open: tuple[Unanswered, ...]
    slips: tuple[Slip, ...]
    costly: tuple[Costly, ...]
    pauses: tuple[Pause, ...]
    by_heart: tuple[ByHeart, ...]
    stops: tuple[Stop, ...]
    ideas: tuple[Idea, ...]
    returns: tuple[Return, ...]
    plans: tuple[Plans, ...]
    detours: tuple[Detour, ...] = ()
    model_games: tuple[ModelGames, ...] = ()
    uncounted: str = ""

    @property
    def met(self) -> tuple[Unanswered, ...]:
        """Open replies that will be met, the most often met first."""
        return tuple(sorted((o for o in self.open if o.met), key=lambda o: -o.chance))

    @property
    def dangerous(self) -> tuple[Unanswered, ...]:
        """Open replies to which the natural answer costs much, the heaviest first."""
        return tuple(sorted((o for o in self.open if o.dangerous), key=lambda o: -o.weight))


@dataclass
class _Found:
    """At one position."""

    open: list[Unanswered]
    slips: list[Slip]
    costly: list[Costly]
    pause: Pause | None
    by_heart: ByHeart | None
    stop: Stop | None
    returns: list[Return]
    plans: Plans | None
    chance: float


def study(
    lesson: Lesson,
    effort: Effort = Effort.NORMAL,
    *,
    progress: Progress | None = None,
    workers: int | None = None,
    store: EvidenceStore | None = None,
    collection: Collection | None = None,
    natural: Natural | None = None,
    engine: OutsideEngine | None = None,
) -> Study:
    """Studies a lesson. collection: games of the audience to count. natural: other weights than those that ship.
    engine: answers the searches in place of ours.

    The same lesson, collection, effort and last proof give the same study. Each search has the first step of the effort.

    :raises StudyError: when the lesson does not say which side is taught.
    :raises CollectionError: when the collection cannot be read.
    :raises KeyboardInterrupt: as it comes; what was searched by then is kept.
    """
    if lesson.settings.side is None:
        raise StudyError(
            f"{lesson.name}: the lesson does not say which side is taught; say it with --side"
        )
    own = store is None
    evidence = EvidenceStore(evidence_file(lesson)) if store is None else store
    try:
        return _study(
            lesson,
            lesson.settings.side,
            effort,
            progress,
            workers or 2 * (os.cpu_count() or 1),
            evidence,
            collection,
            natural,
            engine,
        )
    finally:
        if own:
            evidence.close()


def _study(
    lesson: Lesson,
    side: str,
    effort: Effort,
    progress: Progress | None,
    workers: int,
    store: EvidenceStore,
    collection: Collection | None,
    natural: Natural | None,
    outside: OutsideEngine | None,
) -> Study:
    halt = Halt()
    graph = Graph(lesson)
    rating = lesson.settings.audience
    replies = Replies(rating, store, natural=natural, collection=collection, stop=halt)
    ask = Asker(store, effort.steps[0], halt, outside)
    proved = held(lesson, store)
    courses = [Course(graph, start, side, replies, ask, proved) for start in starts(graph)]
    work = [(course, key) for course in courses for key in course.order]
    with ThreadPoolExecutor(max_workers=workers) as pool:
        try:
            first = [pool.submit(course.likely, key) for course, key in work]
            _wait(first, progress, 0, 2 * len(work))
            rest = [pool.submit(_at, course, key) for course, key in work]
            _wait(rest, progress, len(work), 2 * len(work))
        except BaseException:
            halt.set()
            pool.shutdown(cancel_futures=True)
            raise
    found = [future.result() for future in rest]
    ways = [tuple(roads(graph, course.start)) for course in courses]
    uncounted = replies.uncounted(course.spot(key) for course, key in work)
    by_chance = sorted(found, key=lambda one: -one.chance)
    return Study(
        lesson,
        side,
        rating,
        effort,
        not uncounted,
        tuple(
            Beginning(
                graph.place[course.start],
                tuple((move, 100 * answered(course, move)) for move in MOVES),
                way,
            )
            for course, way in zip(courses, ways, strict=True)
        ),
        tuple(one for at in found for one in at.open),
        tuple(one for at in by_chance for one in at.slips),
        tuple(one for at in found for one in at.costly),
        tuple(at.pause for at in by_chance if at.pause is not None),
        tuple(at.by_heart for at in found if at.by_heart is not None),
        tuple(at.stop for at in found if at.stop is not None),
        tuple(idea for course in courses for idea in ideas(course)),
        tuple(one for at in found for one in at.returns),
        tuple(at.plans for at in found if at.plans is not None),
        detours=tuple(
            one for course, way in zip(courses, ways, strict=True) for one in detours(course, way)
        ),
        model_games=() if collection is None else tuple(_model_games(work, collection)),
        uncounted=uncounted,
    )


def _at(course: Course, key: int) -> _Found:
    pause, heart = asked(course, key)
    return _Found(
        unanswered(course, key),
        slips(course, key),
        costly(course, key),
        pause,
        heart,
        stop(course, key),
        returns(course, key),
        plans(course, key),
        course.chance(key),
    )


def _model_games(
    work: Sequence[tuple[Course, int]], collection: Collection
) -> Iterator[ModelGames]:
    for course, key in work:
        found = model_games(course, key, collection)
        if found is not None:
            yield found


def _wait(waiting: Sequence[Future[Any]], progress: Progress | None, done: int, total: int) -> None:
    left = set(waiting)
    while left:
        finished, left = wait(left, timeout=0.5, return_when=FIRST_COMPLETED)
        for future in finished:
            future.result()
        if progress is not None:
            progress(done + len(waiting) - len(left), total)
