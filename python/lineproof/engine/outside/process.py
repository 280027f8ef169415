"""One running engine, spoken to through python-chess's UCI client.

Everything here runs on the event loop of `loop.Loop`; a process is asked one question at a time.
"""

from __future__ import annotations

import asyncio
import contextlib
import logging
import os
import signal
from collections.abc import Coroutine, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Final, TypeVar

import chess
import chess.engine

from .errors import DiedError, HungError, NotRunnableError, NotUciError, WrongAnswerError
from .info import Info, read
from .program import tame

_T = TypeVar("_T")

# The client reports what it could not read to its log; what matters of it is an error of ours.
logging.getLogger("chess.engine").addHandler(logging.NullHandler())

HASH_MB: Final = 64
"""MiB of the table, where the engine has such an option."""
MOST_BYTES: Final = 64 * 2**20
"""Output for one question above which it is no answer but a flood."""
FAREWELL: Final = 1.0
"""Seconds that an engine has to end by itself after `quit`."""
REAPING: Final = 5.0
"""Seconds that the system has to report a killed process."""


@dataclass(frozen=True)
class Patience:
    """How long an engine is waited for, generously: a busy machine must not make it seem to hang.

    start: seconds until it says `uciok`. answer: seconds for any question. slowest: nodes a second that even a
    slow engine reaches; more time is given for more nodes.
    """

    start: float = 10.0
    answer: float = 30.0
    slowest: int = 10_000

    def seconds(self, nodes: int) -> float:
        return self.answer + nodes / self.slowest


@dataclass(frozen=True)
class Said:
    """What came of a question: scored `info` lines in order, and the move of `bestmove`."""

    infos: tuple[Info, ...]
    best: str


class _Talk(chess.engine.UciProtocol):
    """The client, which alone would wait for ever when an answer cannot be played or a process ends early."""

    def __init__(self) -> None:
        super().__init__()
        self.fault: asyncio.Future[str] = self.loop.create_future()
        self.ended: asyncio.Future[int | None] = self.loop.create_future()
        self.infos: list[Info] = []
        self.best = ""
        self.complaint = ""
        self._received = 0

    def forget(self) -> None:
        """Before a new question."""
        self.infos, self.best, self._received = [], "", 0

    def connection_lost(self, exc: Exception | None) -> None:
        self.ended.set_result(None if self.transport is None else self.transport.get_returncode())
        # the client stumbles over a question that was given up
        with contextlib.suppress(asyncio.InvalidStateError):
            super().connection_lost(exc)

    def pipe_data_received(self, fd: int, data: bytes | str) -> None:
        self._received += len(data)
        if self._received > MOST_BYTES:
            self._spoil(f"it writes without end (more than {MOST_BYTES // 2**20} MiB)")
            return
        super().pipe_data_received(fd, data)

    def error_line_received(self, line: str) -> None:
        self.complaint = tame(line) or self.complaint

    def line_received(self, line: str) -> None:
        word, _, rest = line.strip().partition(" ")
        if word == "info":
            info = read(line)
            if info.has_score or info.nodes:
                self.infos.append(info)
        elif word == "bestmove":
            self.best = (rest.split() or [""])[0].lower()
            self._check_move()

    def _check_move(self) -> None:
        try:
            if self.best in ("", "0000"):
                self._spoil("it gave no move")
            else:
                self.board.parse_uci(self.best)
        except ValueError:
            self._spoil(f"its move, {tame(self.best)}, is not legal")

    def _spoil(self, why: str) -> None:
        if not self.fault.done():
            self.fault.set_result(why)


class Process:
    """A process that has said `uciok`."""

    def __init__(self, transport: asyncio.SubprocessTransport, talk: _Talk) -> None:
        self._transport = transport
        self._talk = talk
        self.options: dict[str, int | bool | str] = {}
        self._buttons: dict[str, None] = {}

    @classmethod
    async def start(cls, path: Path, patience: Patience) -> Process:
        """:raises NotRunnableError, NotUciError:"""
        # a group of its own: Ctrl-C is for us to handle, and what a script has started can be ended with it
        opening = asyncio.ensure_future(_Talk.popen([str(path)], setpgrp=True))
        try:
            transport, talk = await asyncio.shield(opening)
        except asyncio.CancelledError:
            # half begun it could not be ended
            await asyncio.wait({opening})
            if opening.exception() is None:
                await cls(*opening.result()).kill()
            raise
        except (OSError, ValueError) as error:
            reason = (getattr(error, "strerror", None) or str(error)).lower()
            raise NotRunnableError(
                f"{path}: the system does not run it ({reason}); give a program made for this machine"
            ) from error
        process = cls(transport, talk)
        try:
            await process._greet(path, patience)
        except BaseException:
            await process.kill()
            raise
        return process

    async def _greet(self, path: Path, patience: Patience) -> None:
        advice = "give a program that speaks UCI"
        try:
            await self._within(patience.start, self._talk.initialize())
            self._choose_options()
            await self._within(patience.start, self._talk.configure(self.options))
            await self._within(patience.start, self._talk.ping())
        except HungError as error:
            raise NotUciError(
                f"{path}: it does not answer as a UCI engine within {patience.start:g} s; {advice}"
            ) from error
        except DiedError as error:
            raise NotUciError(f"{path}: it ends at its start ({error}); {advice}") from error
        except WrongAnswerError as error:
            raise NotUciError(f"{path}: it is no UCI engine ({error}); {advice}") from error

    def _choose_options(self) -> None:
        for name, value in (("Threads", 1), ("Hash", HASH_MB)):
            option = self._talk.options.get(name)
            if option is not None and option.type == "spin":
                least = option.min if option.min is not None else value
                most = option.max if option.max is not None else value
                self.options[option.name] = max(least, min(most, value))
        clear = self._talk.options.get("Clear Hash")
        if clear is not None and clear.type == "button":
            self._buttons[clear.name] = None

    @property
    def name(self) -> str:
        return tame(self._talk.id.get("name", "")) or "without a name"

    @property
    def group(self) -> int:
        """The number of the process, and of its group."""
        return self._transport.get_pid()

    def declared(self) -> list[tuple[str, str, str]]:
        """Every option with its type and its default, in the order of names."""
        return sorted((o.name, o.type, str(o.default)) for o in self._talk.options.values())

    async def ask(
        self,
        fen: str,
        moves: Sequence[str],
        nodes: int,
        root_moves: Sequence[str] | None,
        seconds: float,
    ) -> Said:
        """One search, as if it were the first of a new game.

        :raises DiedError, HungError, WrongAnswerError: after any of them the process is of no more use
        """
        board = chess.Board(fen)
        for uci in moves:
            board.push_uci(uci)
        only = None if root_moves is None else [chess.Move.from_uci(uci) for uci in root_moves]
        self._talk.forget()
        await self._within(seconds, self._search(board, nodes, only))
        best = self._talk.best
        if root_moves is not None and best not in root_moves:
            raise WrongAnswerError(f"it was asked about other moves than {tame(best)}")
        return Said(tuple(self._talk.infos), best)

    async def _search(
        self, board: chess.Board, nodes: int, only: Sequence[chess.Move] | None
    ) -> None:
        limit = chess.engine.Limit(nodes=nodes)
        # a new game object makes the client send `ucinewgame`; the lines are read by us, letter for letter
        analysis = await self._talk.analysis(
            board,
            limit,
            game=object(),
            info=chess.engine.INFO_NONE,
            root_moves=only,
            options=self._buttons,
        )
        await analysis.wait()

    async def _within(self, seconds: float, doing: Coroutine[Any, Any, _T]) -> _T:
        talk = self._talk
        task = asyncio.ensure_future(doing)
        ends: set[asyncio.Future[Any]] = {task, talk.fault, talk.ended}
        try:
            await asyncio.wait(ends, timeout=seconds, return_when=asyncio.FIRST_COMPLETED)
            if talk.fault.done():
                raise WrongAnswerError(talk.fault.result())
            if task.done():
                return task.result()
            if talk.ended.done():
                raise DiedError(self._end())
            raise HungError(f"no answer came within {seconds:.0f} s")
        except chess.engine.EngineTerminatedError as error:
            await asyncio.wait({talk.ended}, timeout=REAPING)
            raise DiedError(self._end()) from error
        except chess.engine.EngineError as error:
            raise WrongAnswerError(tame(str(error))) from error
        finally:
            if not task.done():
                task.cancel()

    def _end(self) -> str:
        """How the process ended, with the last line of its standard error."""
        code = self._talk.ended.result() if self._talk.ended.done() else None
        if code is None:
            ended = "it closed its output"
        elif code < 0:
            with contextlib.suppress(ValueError):
                return self._complaining(f"killed by {signal.Signals(-code).name}")
            ended = f"killed by signal {-code}"
        else:
            ended = f"exit status {code}"
        return self._complaining(ended)

    def _complaining(self, ended: str) -> str:
        return f"{ended}, “{self._talk.complaint}”" if self._talk.complaint else ended

    async def quit(self) -> None:
        """Asks it to end, and ends it when it does not."""
        if not self._talk.ended.done():
            with contextlib.suppress(Exception):
                self._talk.send_line("quit")
            await asyncio.wait({self._talk.ended}, timeout=FAREWELL)
        await self.kill()

    async def kill(self) -> None:
        """Ends it and what it has started, now."""
        if self._transport.get_returncode() is None:
            end_group(self.group)
            # closed before the system has reported the end, it would be reported wrongly
            await asyncio.wait({self._talk.ended}, timeout=REAPING)
        self._transport.close()


def end_group(group: int) -> None:
    """Kills a process and, where the system has groups, those that it started."""
    with contextlib.suppress(OSError):
        if hasattr(os, "killpg"):
            os.killpg(group, signal.SIGKILL)
        else:
            os.kill(group, signal.SIGTERM)
