"""One writer at a time: a lock of the operating system, which a dead process does not keep.

>>> from lineproof.lesson import Lesson
>>> with WriterLock(Lesson.open("vienna")):  # doctest: +SKIP
...     ...  # nobody else can save the lesson
"""

from __future__ import annotations

import contextlib
import json
import os
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

from lineproof.lesson.disk import reason
from lineproof.lesson.errors import LockedError, SaveError

if TYPE_CHECKING:
    from filelock import BaseFileLock

    from lineproof.lesson.lesson import Lesson

LOCK = "lock"
HOLDER = "lock.json"
"""Who holds the lock, for the message only: whether it is held is for the system to say."""


class WriterLock:
    """The right to write a lesson, from entering to leaving; a process may take it repeatedly.

    :raises LockedError: on entering, when another process holds it; it names the holder.
    :raises SaveError: when the lock cannot be made, as on a read-only disk.
    """

    def __init__(self, lesson: Lesson) -> None:
        if lesson.home is None:
            raise SaveError("the lesson is in no file", path=lesson.name, hint="save it as a file")
        self._name = lesson.name
        self._home = Path(os.path.realpath(lesson.home))
        self._lock: BaseFileLock | None = None

    def __enter__(self) -> WriterLock:
        from filelock import FileLock, Timeout

        try:
            self._home.mkdir(parents=True, exist_ok=True)
            # One object a process and file, so that a process does not lock itself out.
            lock = FileLock(self._home / LOCK, timeout=0, thread_local=False, is_singleton=True)
            lock.acquire()
        except Timeout as error:
            holder = _holder(self._home)
            raise LockedError(
                f"another process is writing this lesson{holder}", path=self._name
            ) from error
        except OSError as error:
            raise SaveError(
                f"the lesson cannot be locked for writing ({reason(error)})",
                path=self._name,
                hint="make its folder writable",
            ) from error
        self._lock = lock
        self._sign()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        if self._lock is not None:
            self._lock.release()
            self._lock = None

    def _sign(self) -> None:
        since = datetime.now(UTC).isoformat(timespec="seconds")
        # On a full disk the lock holds without its signature.
        with contextlib.suppress(OSError):
            (self._home / HOLDER).write_text(
                json.dumps({"pid": os.getpid(), "since": since}), encoding="utf-8"
            )


def _holder(home: Path) -> str:
    try:
        signed = json.loads((home / HOLDER).read_text(encoding="utf-8"))
        return f" (process {signed['pid']}, since {signed['since']})"
    except (OSError, ValueError, KeyError, TypeError):
        return ""
