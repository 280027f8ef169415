"""Editions: every published state of a lesson, with its number, its date and what was found of its verdicts.

Each is a file of `history/editions`, written once and never again. The same lines under the same settings are the same edition,
however often and in whatever form they are published.
"""

from __future__ import annotations

import hashlib
import json
import os
import re
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from datetime import UTC, date, datetime
from pathlib import Path
from typing import Any, Final

from lineproof.claims import Outcome
from lineproof.lesson import Lesson, LessonError, Settings
from lineproof.lesson.disk import is_folder, read_file, reason
from lineproof.lesson.save import HISTORY, replace_file
from lineproof.lesson.source import Source
from lineproof.proof import Finding
from lineproof.report.title import title_of

from .said import Said, said_by

FORMAT: Final = 1
FOLDER: Final = "editions"
PATIENCE: Final = 10.0
"""Seconds for which another process may hold the editions."""
_FILE = re.compile(r"(?P<number>\d{4,})\.json", re.ASCII)
MONTHS: Final = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


class EditionError(LessonError):
    """An edition is asked for that is not there, or its file is not one that this version reads."""


@dataclass(frozen=True)
class FoundVerdict:
    """A verdict of the author's as it was found. white: White's points out of 100 after best play, None where none were asked for."""

    said: Said
    outcome: Outcome
    white: int | None


@dataclass(frozen=True)
class Edition:
    """number: from 1. day: when it was first published. text, settings: the lesson as it was, with the title that was shown. verdicts: found then."""

    number: int
    day: date
    text: str
    settings: Settings
    verdicts: tuple[FoundVerdict, ...]

    @property
    def words(self) -> str:
        """ "Edition 3, 29 November 2026"."""
        return f"Edition {self.number}, {self.day_in_words}"

    @property
    def day_in_words(self) -> str:
        return f"{self.day.day} {MONTHS[self.day.month - 1]} {self.day.year}"

    def lesson(self, name: str) -> Lesson:
        """The lesson as it was, in no file. name: for messages."""
        return Lesson(Source(self.text, name).checked(), self.settings)


def editions(lesson: Lesson) -> tuple[Edition, ...]:
    """All of a lesson's, by number.

    :raises EditionError: when a file of theirs cannot be read.
    """
    return tuple(_read(file) for _, file in _files(lesson))


def edition(lesson: Lesson, number: int) -> Edition:
    """:raises EditionError: when there is none of that number."""
    files = dict(_files(lesson))
    if number not in files:
        there = f"it has {', '.join(map(str, files))}" if files else "none was published yet"
        raise EditionError(
            f"there is no edition {number}", path=lesson.name, hint=f"choose another: {there}"
        )
    return _read(files[number])


def due(
    lesson: Lesson, findings: Sequence[Finding], today: date | None = None
) -> tuple[Edition, bool]:
    """The edition that this state of the lesson is, and whether it is a new one, which `keep` has still to write.

    today: the day of a new edition, by default that of the clock (UTC).
    :raises EditionError: when one of the editions cannot be read, or none could be written.
    :raises LessonError: when the disk refuses.
    """
    with _held(lesson):
        there = editions(lesson)
    settings = replace(lesson.settings, title=title_of(lesson))
    state = _state(lesson.text, settings)
    known = next((one for one in there if _state(one.text, one.settings) == state), None)
    if known is not None:
        return known, False
    number = there[-1].number + 1 if there else 1
    day = today or datetime.now(UTC).date()
    return Edition(number, day, lesson.text, settings, tuple(_verdicts(findings))), True


def keep(lesson: Lesson, new: Edition) -> Path:
    """Writes a new edition, once all that bears its number is made.

    :raises EditionError: when another run has used its number meanwhile, or it cannot be written.
    :raises LessonError: when the disk refuses.
    """
    with _held(lesson) as folder:
        file = folder / f"{new.number:04d}.json"
        if file.exists():
            raise EditionError(
                f"edition {new.number} was published by another run meanwhile",
                path=lesson.name,
                hint="publish again",
            )
        data = json.dumps(_values(new), ensure_ascii=False, indent=1, default=str) + "\n"
        replace_file(file, data.encode(), name=os.fspath(file))
    return file


@contextmanager
def _held(lesson: Lesson) -> Iterator[Path]:
    """The folder of a lesson's editions, made and held.

    :raises EditionError: when it cannot be had.
    """
    from filelock import FileLock

    assert lesson.home is not None
    folder = lesson.home / HISTORY / FOLDER
    lock = FileLock(folder / "lock", timeout=PATIENCE)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        lock.acquire()
    except OSError as error:  # a lock that is not had in time is one, too
        raise EditionError(
            f"the edition cannot be recorded ({reason(error)})",
            path=os.fspath(folder),
            hint="make the lesson's folder writable, or make room",
        ) from error
    try:
        yield folder
    finally:
        lock.release()


def _files(lesson: Lesson) -> list[tuple[int, Path]]:
    if lesson.home is None:
        return []
    folder = lesson.home / HISTORY / FOLDER
    if not is_folder(folder, os.fspath(folder)):
        return []
    found = ((_FILE.fullmatch(path.name), path) for path in folder.iterdir())
    return sorted((int(match["number"]), path) for match, path in found if match)


def _state(text: str, settings: Settings) -> str:
    """A digest of what makes an edition: the lines and the settings, the author's decisions among them."""
    values = json.dumps([text, _settings(settings)], sort_keys=True, default=str)
    return hashlib.sha256(values.encode()).hexdigest()


def _settings(settings: Settings) -> dict[str, Any]:
    return {
        "title": settings.title,
        "side": settings.side,
        "audience": settings.audience,
        "words_a_minute": settings.words_a_minute,
        "decisions": settings.decisions,
    }


def _verdicts(findings: Sequence[Finding]) -> list[FoundVerdict]:
    found = []
    for finding in findings:
        said = said_by(finding.claim)
        if said is not None:
            numbers = finding.judgement.numbers
            points = numbers.get("points")
            white = None
            if isinstance(points, int):
                white = points if numbers.get("side") == "white" else 100 - points
            found.append(FoundVerdict(said, finding.outcome, white))
    return found


def _values(of: Edition) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "edition": of.number,
        "date": of.day.isoformat(),
        "settings": _settings(of.settings) | {"audience_said": of.settings.audience_said},
        "verdicts": [
            {
                "position": f"{v.said.key:016x}",
                "after": v.said.after,
                "words": v.said.words,
                "outcome": v.outcome.value,
                "white": v.white,
            }
            for v in of.verdicts
        ],
        "lines": of.text,
    }


def _read(file: Path) -> Edition:
    name = os.fspath(file)
    try:
        values = json.loads(read_file(file, name))
        number = values["format"]
        if number != FORMAT:
            raise EditionError(
                f"this edition has format {number}, and this version reads {FORMAT}",
                path=name,
                hint="install the newer version",
            )
        settings = values["settings"]
        return Edition(
            int(values["edition"]),
            date.fromisoformat(values["date"]),
            str(values["lines"]),
            Settings(
                str(settings["title"]),
                settings["side"],
                int(settings["audience"]),
                int(settings["words_a_minute"]),
                dict(settings["decisions"]),
                bool(settings["audience_said"]),
            ),
            tuple(
                FoundVerdict(
                    Said(int(v["position"], 16), str(v["after"]), str(v["words"])),
                    Outcome(v["outcome"]),
                    v["white"],
                )
                for v in values["verdicts"]
            ),
        )
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise EditionError(
            f"this is no edition ({type(error).__name__})",
            path=name,
            hint="move the file away, or bring it back from a copy",
        ) from error
