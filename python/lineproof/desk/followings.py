"""Students' games against an open lesson: where each left it, and what the commonest departures are.

The games are held in memory alone, until they are forgotten or the desk is closed; what was searched of their positions stays in the
lesson's evidence, as with everything that is searched.
"""

from __future__ import annotations

import threading

from lineproof.engine import Stop
from lineproof.engine.outside import OutsideError
from lineproof.follow import (
    Common,
    Departure,
    Followed,
    FollowError,
    Played,
    follow,
    of_player,
    played_in,
)
from lineproof.lesson import Lesson
from lineproof.lesson.source import Source
from lineproof.proof import EvidenceStore
from lineproof.proof.asker import Interrupted
from lineproof.report.followed import came, common_said, departed, scored
from lineproof.report.followed_html import followed_html
from lineproof.report.plain import plain

from .events import Events
from .naming import Names
from .shown import evidence
from .ways import Looking
from .wire import DepartureShown, Evidence, FollowAsked, FollowedShown, Moves

SHOWN = 8
"""Plies that are shown of how a game went on."""
COMMON = 12
"""Departures of several games that are shown at most."""
NONE = FollowedShown(state="none", done=0, of=0, problem=None, said=[], common=[], games=[])


class Followings:
    """The students' games of one lesson."""

    def __init__(self, events: Events, store: EvidenceStore) -> None:
        self._events = events
        self._store = store
        self._asked = threading.Lock()
        """Held while the games are changed."""
        self._lock = threading.Lock()
        self._shown = NONE
        self._page = ""
        self._stop = Stop()
        self._thread: threading.Thread | None = None

    def begin(self, lesson: Lesson, names: Names, looking: Looking, asked: FollowAsked) -> None:
        """Begins to follow games; those that were followed before are forgotten.

        :raises FollowError: when there are none, nobody in them has the player's name, or the lesson does not say which side is taught.
        :raises LessonError: when the file is no text.
        """
        side = lesson.settings.side
        if side is None:
            raise FollowError(
                "the lesson does not say which side it teaches; say it under “About this lesson”"
            )
        some = played_in(Source.decode(asked.file.data, asked.file.name))
        games = of_player(some, asked.player) if asked.player.strip() else [(g, str(side)) for g in some]  # fmt: skip
        with self._asked:
            self.end()
            self._stop = stop = Stop()
            self._tell(NONE.model_copy(update={"state": "running", "of": len(games)}))
            self._thread = threading.Thread(
                target=self._run, args=(lesson, names, looking, games, stop), daemon=True
            )
            self._thread.start()

    def shown(self) -> FollowedShown:
        """What came of them by now."""
        with self._lock:
            return self._shown

    def report(self) -> str:
        """The report of them as HTML; "" where there is none."""
        with self._lock:
            return self._page

    def forget(self) -> FollowedShown:
        """Breaks off what goes on, and forgets the games."""
        with self._asked:
            self.end()
            self._tell(NONE)
        return NONE

    def end(self) -> None:
        """Breaks off what goes on."""
        self._stop.set()
        if self._thread is not None:
            self._thread.join()

    def _run(
        self,
        lesson: Lesson,
        names: Names,
        looking: Looking,
        games: list[tuple[Played, str]],
        stop: Stop,
    ) -> None:
        def tell(done: int, of: int) -> None:
            self._tell(NONE.model_copy(update={"state": "running", "done": done, "of": of}))

        page = ""
        try:
            found = follow(
                lesson,
                games,
                looking.effort,
                progress=tell,
                store=self._store,
                stop=stop,
                engine=looking.outside,
            )
            shown = _shown(found, names, len(games))
            page = followed_html(found, lesson)
        except Interrupted:
            return
        except OutsideError as error:
            shown = NONE.model_copy(update={"state": "failed", "problem": str(error)})
        except Exception as error:  # said in the window, where it would else run for ever
            problem = f"the program has a fault here ({type(error).__name__})"
            shown = NONE.model_copy(update={"state": "failed", "problem": problem})
        self._tell(shown, page)

    def _tell(self, shown: FollowedShown, page: str = "") -> None:
        with self._lock:
            self._shown, self._page = shown, page
        told = NONE.model_copy(update={"state": shown.state, "done": shown.done, "of": shown.of})
        self._events.publish("followed", told)  # the windows ask for the rest


def _shown(found: Followed, names: Names, of: int) -> FollowedShown:
    return FollowedShown(
        state="done",
        done=of,
        of=of,
        problem=None,
        said=[came(found), *scored(found)],
        common=[_common(one, names) for one in found.common[:COMMON]],
        games=[_game(one, names) for one in found.departures],
    )


def _common(one: Common, names: Names) -> DepartureShown:
    first = one.first
    add = None
    if not first.by_student and first.uci is not None and first.answer is not None:
        moves = [first.uci, first.answer.best_line[0]]
        add = Moves(place=names.of(first.place), moves=moves)
    words = common_said(one, lines=False)
    return DepartureShown(
        place=names.of(first.place),
        words=f"{words}.",
        evidence=evidence(first.spot.board, add.moves, "") if add else _went_on(first),
        add=add,
    )


def _game(one: Departure, names: Names) -> DepartureShown:
    game = one.game
    words = f"{plain(game.white)} against {plain(game.black)}: {departed(one, lines=False)}"
    return DepartureShown(place=names.of(one.place), words=words, evidence=_went_on(one), add=None)


def _went_on(one: Departure) -> Evidence | None:
    """The game from where it left the lesson on."""
    moves = one.game.moves[len(one.spot.moves) :][:SHOWN]
    return evidence(one.spot.board, moves, "") if moves else None
