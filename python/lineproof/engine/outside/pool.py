"""A pool of processes of one outside engine, which threads ask as they would ask our own search."""

from __future__ import annotations

import asyncio
import hashlib
import json
import os
import threading
import weakref
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType
from typing import Final, Self

from lineproof._engine import Board, Stop
from lineproof.engine.answer import Answer
from lineproof.engine.searching import search

from .errors import DiedError, GivenUpError, HungError, OutsideError, StartError, WrongAnswerError
from .info import chosen, line_of
from .loop import POLL, Loop, Stopped
from .mates import proved
from .process import Patience, Process, Said, end_group
from .program import Program, find, hash_of

TRIES: Final = 2
"""How often a question is asked: once more, of a process started anew, when no answer came."""
ENOUGH: Final = 3
"""Questions in a row without an answer after which the engine is asked no more."""
PROOF: Final = 4
"""Nodes that the proof of an announced mate may take, as a multiple of those of the question."""

_Question = tuple[str, tuple[str, ...], int, tuple[str, ...] | None]


class OutsideEngine:
    """Answers searches by a program of the user's. Any number of threads may ask; close it after use.

    Each question is asked as the first of a new game, with one thread, of a process that has no other question.

    >>> from lineproof.engine.outside import NoProgramError
    >>> try:
    ...     OutsideEngine("no-such-folder/engine")
    ... except NoProgramError as error:
    ...     print("not there")
    not there
    """

    def __init__(
        self,
        path: str | os.PathLike[str],
        *,
        processes: int | None = None,
        patience: Patience | None = None,
    ) -> None:
        """Starts the first process, to know who answers.

        processes: at most so many at once, by default one a core.
        :raises StartError: when it cannot be started or is no UCI engine
        """
        self._path = find(Path(path))
        self._patience = patience or Patience()
        self._most = processes or os.cpu_count() or 1
        self._changed = threading.Condition()
        self._idle: list[Process] = []
        self._busy: set[Process] = set()
        self._running = 0
        self._in_a_row = 0
        self._unanswered: dict[_Question, OutsideError] = {}
        self._groups: set[int] = set()
        self._closed = False
        self._mark = _mark(self._path)
        sha256 = hash_of(self._path)
        self._loop = Loop()
        # should nobody close it, nothing is left running when the program ends
        self._finalizer = weakref.finalize(self, _end_all, self._groups)
        try:
            process = self._start(None)
        except BaseException:
            self.close()
            raise
        declared = hashlib.sha256(json.dumps(process.declared()).encode()).hexdigest()
        self.program = Program(self._path, process.name, sha256, process.options, declared)
        self._running = 1
        self._idle.append(process)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def search(
        self,
        fen: str,
        moves: Sequence[str] = (),
        *,
        nodes: int,
        root_moves: Sequence[str] | None = None,
        stop: Stop | None = None,
    ) -> Answer:
        """The best line of a position, as `lineproof.engine.search` gives it.

        Whether the game is over is for the rules to say, not for the engine. A mate that our own solver does not
        prove within four times `nodes` counts as a won game without a mate. nodes: where the engine does not say
        how many it searched, the answer says as many as were asked for.
        :raises OutsideError: when it did not answer, though it was started anew and asked again
        """
        rules = search(fen, moves, nodes=1, root_moves=root_moves, hash_mb=1)
        if rules.finished:
            return rules
        only = None if root_moves is None else tuple(root_moves)
        question: _Question = (fen, tuple(moves), nodes, only)
        board = Board(fen)
        for uci in moves:
            board = board.play(uci)
        try:
            return self._answer(question, board, stop)
        except Stopped:
            return Answer((), 0, 0, True, "")

    def _answer(self, question: _Question, board: Board, stop: Stop | None) -> Answer:
        with self._changed:
            before = self._unanswered.get(question)
            given_up = self._in_a_row >= ENOUGH
        if before is not None:
            raise before
        if given_up:
            raise GivenUpError(
                f"{self.program.name} left {ENOUGH} questions in a row unanswered and is asked no more;"
                " try another engine, or go on without one"
            )
        failure: OutsideError | None = None
        for _ in range(TRIES):
            try:
                answer = self._ask(question, board, stop)
            except (StartError, DiedError, HungError, WrongAnswerError) as error:
                failure = error
                continue
            with self._changed:
                self._in_a_row = 0
            return answer
        assert failure is not None
        told = self._told(failure, question, board)
        with self._changed:
            self._unanswered[question] = told
            self._in_a_row += 1
        raise told from failure

    def _ask(self, question: _Question, board: Board, stop: Stop | None) -> Answer:
        fen, moves, nodes, only = question
        process = self._borrow(stop)
        try:
            seconds = self._patience.seconds(nodes)
            said = self._loop.run(process.ask(fen, moves, nodes, only, seconds), stop)
            answer = _read(said, question, board, stop)
        except BaseException:
            self._discard(process)
            raise
        self._give_back(process)
        return answer

    def _told(self, failure: OutsideError, question: _Question, board: Board) -> OutsideError:
        """The failure with the question, in one line."""
        nodes, only = question[2:]
        asked = "the best move"
        if only is not None:
            asked = f"the move {board.san(only[0])}" if len(only) == 1 else "the best of some moves"
        what = str(failure)
        if isinstance(failure, DiedError):
            what = f"the process ended ({failure})"
        elif isinstance(failure, StartError):
            what = what.rpartition(";")[0]  # the way out is another one here
        return type(failure)(
            f"{self.program.name} was asked twice for {asked} in {board.fen} ({nodes:,} nodes) and did not"
            f" answer: {what}; prove again to ask it anew, or use another engine"
        )

    def _borrow(self, stop: Stop | None) -> Process:
        with self._changed:
            while not self._idle and self._running >= self._most:
                if stop is not None and stop.is_set():
                    raise Stopped
                self._changed.wait(POLL)
            if self._closed:
                raise Stopped
            if self._idle:
                process = self._idle.pop()
                self._busy.add(process)
                return process
            self._running += 1
        try:
            process = self._start(stop)
        except BaseException:
            with self._changed:
                self._running -= 1
                self._changed.notify()
            raise
        with self._changed:
            self._busy.add(process)
        return process

    def _start(self, stop: Stop | None) -> Process:
        if _mark(self._path) != self._mark:
            raise WrongAnswerError("the program was replaced while it was in use")
        process = self._loop.run(Process.start(self._path, self._patience), stop)
        self._groups.add(process.group)
        if self._closed:
            end_group(process.group)
            raise Stopped
        return process

    def _give_back(self, process: Process) -> None:
        with self._changed:
            self._busy.discard(process)
            self._idle.append(process)
            self._changed.notify()

    def _discard(self, process: Process) -> None:
        try:
            self._loop.run(process.kill())
            self._groups.discard(process.group)
        finally:
            with self._changed:
                self._busy.discard(process)
                self._running -= 1
                self._changed.notify()

    def close(self) -> None:
        """Ends every process; a question that still waits for an answer is stopped."""
        with self._changed:
            if self._closed:
                return
            self._closed = True
            idle, busy = list(self._idle), list(self._busy)
        try:
            self._loop.run(_end_politely(idle, busy))
            self._groups.difference_update(process.group for process in (*idle, *busy))
        finally:
            self._finalizer()
            self._loop.close()


def _read(said: Said, question: _Question, board: Board, stop: Stop | None) -> Answer:
    nodes, only = question[2:]
    info = chosen(said.infos, said.best)
    line = line_of(info, said.best, board)
    line, spent = proved(line, board, only, PROOF * nodes, stop)
    if stop is not None and stop.is_set():
        raise Stopped
    searched = max((info.nodes for info in said.infos), default=0)
    return Answer((line,), (searched or nodes) + spent, info.depth, False, "")


async def _end_politely(idle: Sequence[Process], busy: Sequence[Process]) -> None:
    await asyncio.gather(
        *(process.quit() for process in idle), *(process.kill() for process in busy)
    )


def _mark(path: Path) -> tuple[int, int]:
    """Changes when the file does."""
    about = path.stat()
    return about.st_size, about.st_mtime_ns


def _end_all(groups: set[int]) -> None:
    for group in groups:
        end_group(group)


__all__ = ["OutsideEngine", "Patience"]
