"""The evidence store: every answered question, kept in SQLite, so that nothing is searched twice.

Safe to delete: what is missing is computed again. Each answer is committed as it comes, so a killed run goes on
from where it was.
"""

from __future__ import annotations

import json
import sqlite3
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

FORMAT = 1

WAIT = 5
"""Seconds that another program may hold the store before this run goes on without keeping."""

_SCHEMA = """
CREATE TABLE IF NOT EXISTS answers (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID;
CREATE TABLE IF NOT EXISTS runs (number INTEGER PRIMARY KEY, finished TEXT NOT NULL, value TEXT NOT NULL);
"""


class EvidenceStore:
    """Answers by key. One process writes at a time; others wait for it a moment, then search without keeping.

    path: the SQLite file, or None to keep answers in memory only.
    """

    def __init__(self, path: Path | None) -> None:
        """Opens or makes the store. A damaged one is set aside; where none can be written, answers are kept
        in memory and `kept` is False."""
        self.path = path
        self._lock = threading.Lock()
        self._asking: dict[str, threading.Lock] = {}
        self.kept = True
        self._silent = False
        self._connection = self._open(path)

    def _open(self, path: Path | None) -> sqlite3.Connection:
        try:
            if path is None:
                return self._connect(":memory:")
            path.parent.mkdir(parents=True, exist_ok=True)
            try:
                return self._connect(str(path))
            except sqlite3.OperationalError:
                raise
            except sqlite3.DatabaseError:
                self._set_aside(path)
                return self._connect(str(path))
        except (sqlite3.Error, OSError):
            # a read-only or full disk: work on without keeping
            self.kept = False
            return self._connect(":memory:")

    def _set_aside(self, path: Path) -> None:
        """A cache that is damaged, or of another format, is put beside and built anew."""
        for ending in ("-wal", "-shm"):
            path.with_name(path.name + ending).unlink(missing_ok=True)
        path.replace(path.with_suffix(".damaged"))

    def _begin_anew(self) -> None:
        """After damage was met in the middle of a run. The lock is held."""
        self._connection.close()
        try:
            if self.path is not None:
                self._set_aside(self.path)
                self._connection = self._connect(str(self.path))
                return
        except (sqlite3.Error, OSError):
            pass
        self.kept = False
        self._connection = self._connect(":memory:")

    def _connect(self, name: str) -> sqlite3.Connection:
        connection = sqlite3.connect(
            name, timeout=WAIT, check_same_thread=False, isolation_level=None
        )
        connection.execute("PRAGMA journal_mode=WAL")
        connection.execute("PRAGMA synchronous=NORMAL")
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        if version not in (0, FORMAT):
            connection.close()
            raise sqlite3.DatabaseError(f"format {version}")
        connection.executescript(_SCHEMA)
        connection.execute(f"PRAGMA user_version={FORMAT}")
        return connection

    def get(self, key: str) -> Any | None:
        """The kept answer, or None; what cannot be read counts as not kept."""
        return self._read("SELECT value FROM answers WHERE key=?", (key,))

    def _read(self, query: str, values: tuple[str, ...]) -> Any | None:
        with self._lock:
            try:
                row = self._connection.execute(query, values).fetchone()
                return None if row is None else json.loads(row[0])
            except (ValueError, TypeError):
                return None
            except sqlite3.OperationalError:
                return None
            except sqlite3.DatabaseError:
                self._begin_anew()
                return None

    def _write(self, query: str, values: tuple[str, ...]) -> None:
        with self._lock:
            if self._silent:
                return
            try:
                self._connection.execute(query, values)
            except sqlite3.OperationalError:
                # full, read-only or held by another: not tried again in this run
                self.kept, self._silent = False, True
            except sqlite3.DatabaseError:
                self._begin_anew()

    def put(self, key: str, value: Any) -> None:
        """Keeps an answer. A full or read-only disk loses the keeping, never the answer."""
        self._write("INSERT OR REPLACE INTO answers VALUES (?, ?)", (key, json.dumps(value)))

    def answer(
        self,
        key: str,
        compute: Callable[[], Any | None],
        valid: Callable[[Any], bool] = lambda _: True,
    ) -> tuple[Any, bool]:
        """The kept answer, or the computed one, which is then kept; and whether it was computed now.

        Two threads that ask the same at once compute it once. None is not kept: a search that was stopped.
        valid: whether a kept value is what it should be.
        """
        with self._one_at_a_time(key):
            kept = self.get(key)
            if kept is not None and valid(kept):
                return kept, False
            value = compute()
            if value is not None:
                self.put(key, value)
            return value, True

    @contextmanager
    def _one_at_a_time(self, key: str) -> Iterator[None]:
        with self._lock:
            lock = self._asking.setdefault(key, threading.Lock())
        with lock:
            yield

    def last_run(self) -> Any | None:
        """What the last finished run found, as it was recorded."""
        return self._read("SELECT value FROM runs ORDER BY number DESC LIMIT 1", ())

    def record_run(self, finished: str, value: Any) -> None:
        """Records a finished run and forgets all but the last twenty."""
        self._write(
            "INSERT INTO runs (finished, value) VALUES (?, ?)", (finished, json.dumps(value))
        )
        self._write("DELETE FROM runs WHERE number <= (SELECT MAX(number) FROM runs) - 20", ())

    def close(self) -> None:
        with self._lock:
            self._connection.close()
