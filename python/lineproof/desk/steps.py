"""Steps: every edit of a lesson as it was made, kept on the disk at once, so that each can be taken back.

`history/steps.jsonl` begins with its format. Then each line is one of

    {"text": "..."}                                      the whole text, when the desk first opened it
    {"do": "edit", "at": "...", "start": 4, "old": "", "new": "x", "to": "..."}
    {"saved": "..."}                                     the text that was written into the lesson's file

`do` is "edit", "outside" (another program changed the file), "undo" or "redo"; `to` is the digest of the text after it. A step with
"settings" is of lesson.toml, which is written before it, and leaves the text alone (`changes`). A last line that a killed process left
unfinished is passed over.
"""

from __future__ import annotations

import hashlib
import json
import os
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Literal

from .changes import Change

FORMAT = 2
"""Format 1 has no steps of settings, else it is the same."""
HEADS = {1: b'{"format": 1}\n', 2: b'{"format": 2}\n'}
FILE = "steps.jsonl"

Do = Literal["edit", "outside", "undo", "redo"]


@dataclass(frozen=True)
class Step:
    """`old` at `start` gives way to `new`; or, where `settings` is not None, the text stays and the settings change."""

    start: int
    old: str
    new: str
    settings: Change | None = None

    @classmethod
    def of_settings(cls, change: Change) -> Step:
        return cls(0, "", "", change)

    @classmethod
    def between(cls, before: str, after: str) -> Step:
        """The smallest step that makes one text of another."""
        most = min(len(before), len(after))
        start = _shared(before, after, most)
        end = _shared(before[::-1], after[::-1], most - start)
        return cls(start, before[start : len(before) - end], after[start : len(after) - end])

    def apply(self, text: str) -> str:
        """:raises StepsError: when the text is not the one that the step was made of."""
        end = self.start + len(self.old)
        if text[self.start : end] != self.old:
            raise StepsError("a step does not fit the text")
        return text[: self.start] + self.new + text[end:]

    @property
    def back(self) -> Step:
        settings = None if self.settings is None else self.settings.back
        return Step(self.start, self.new, self.old, settings)

    def checked(self, other: Step) -> Step:
        """:raises StepsError: when another step is not this one."""
        if self != other:
            raise StepsError("what is taken back was not done last")
        return self


class StepsError(ValueError):
    """The steps on the disk do not fit together, or are of a newer version."""


@dataclass
class Steps:
    """The steps of one lesson. text: after all of them. done, undone: stacks, the last on top.

    base: the text that was last known to be in the lesson's file. since: the steps taken from there, each with the digest
    of the text that it led to.
    """

    text: str
    base: str
    done: list[Step] = field(default_factory=list)
    undone: list[Step] = field(default_factory=list)
    since: list[tuple[Step, str]] = field(default_factory=list)

    @classmethod
    def of(cls, text: str) -> Steps:
        return cls(text, text)

    def follow(self, do: Do, step: Step, to: str) -> None:
        """Takes a step, and puts it on the stack where it belongs. to: the digest of the text after it."""
        self.text = step.apply(self.text)
        self.since.append((step, to))
        if do == "undo":
            self.undone.append(self.done.pop().checked(step.back))
        elif do == "redo":
            self.done.append(self.undone.pop().checked(step))
        else:
            self.done.append(step)
            self.undone.clear()

    def known(self, text: str) -> bool:
        """Whether the lesson's file may hold this text without another program having written it."""
        told = digest(text)
        return told == digest(self.base) or any(to == told for _, to in self.since)

    def saved(self, told: str) -> None:
        """Takes note that a text, given by its digest, is in the file."""
        for number, (_, to) in reversed(list(enumerate(self.since, 1))):
            if to == told:
                for step, _ in self.since[:number]:
                    self.base = step.apply(self.base)
                del self.since[:number]
                return


def digest(text: str) -> str:
    """16 digits that tell a text from any other."""
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()[:16]


def _shared(one: str, other: str, most: int) -> int:
    """How many first characters two texts share, up to `most`; halving, for comparing slices is quick."""
    low, high = 0, most
    while low < high:
        middle = (low + high + 1) // 2
        if one[low:middle] == other[low:middle]:
            low = middle
        else:
            high = middle - 1
    return low


class StepsFile:
    """The file of the steps. Only the holder of the lesson's lock writes it."""

    def __init__(self, home: Path) -> None:
        self.path = home / "history" / FILE

    def read(self) -> Steps | None:
        """What the file holds; None where there is none yet.

        :raises StepsError: when it is damaged.
        :raises OSError: when it cannot be read.
        """
        try:
            data = self.path.read_bytes()
        except FileNotFoundError:
            return None
        steps: Steps | None = None
        last = ""
        for number, line in enumerate(data.split(b"\n")[:-1], 1):
            try:
                entry = json.loads(line)
                if number == 1:
                    _check_format(entry)
                elif steps is None:
                    steps = Steps.of(entry["text"])
                else:
                    last = _taken(steps, entry) or last
            except StepsError:
                raise
            except (ValueError, KeyError, TypeError, IndexError, AttributeError) as error:
                raise StepsError(f"line {number} is damaged") from error
        if steps is not None and last and digest(steps.text) != last:
            raise StepsError("the steps do not lead to their text")
        return steps

    def begin(self, text: str) -> None:
        """Makes the file, with the text on which all steps build."""
        self.path.parent.mkdir(parents=True, exist_ok=True)
        self.path.unlink(missing_ok=True)  # one that was not even begun
        self._append({"format": FORMAT}, {"text": text})

    def mend(self) -> None:
        """Cuts off a last line that was not finished, and brings an older format up to date."""
        data = self.path.read_bytes()
        if data.startswith(HEADS[1]):
            with self.path.open("r+b") as file:
                file.write(HEADS[FORMAT])
                file.flush()
                os.fsync(file.fileno())
        whole = data.rfind(b"\n") + 1
        if whole < len(data):
            os.truncate(self.path, whole)

    def add(self, do: Do, step: Step, to: str, at: str) -> None:
        """Keeps a step; on return it is on the disk. to: digest of the text after it. at: the time in ISO 8601."""
        self._append(
            {
                "do": do,
                "at": at,
                "start": step.start,
                "old": step.old,
                "new": step.new,
                "to": to,
                **({} if step.settings is None else {"settings": step.settings.spelled()}),
            }
        )

    def saved(self, told: str) -> None:
        """Notes that the text of this digest is in the lesson's file."""
        self._append({"saved": told})

    def set_aside(self) -> Path:
        """Puts a damaged file beside, under a name that is free."""
        number = 1
        while (other := self.path.with_name(f"steps-damaged-{number}.jsonl")).exists():
            number += 1
        self.path.rename(other)
        return other

    def _append(self, *entries: dict[str, Any]) -> None:
        line = b"".join(json.dumps(entry).encode() + b"\n" for entry in entries)
        handle = os.open(self.path, os.O_WRONLY | os.O_CREAT | os.O_APPEND, 0o666)
        try:
            size = os.fstat(handle).st_size
            try:
                rest = memoryview(line)
                while rest:
                    rest = rest[os.write(handle, rest) :]
                os.fsync(handle)
            except OSError:
                os.ftruncate(handle, size)  # half a line would hide all that follow
                raise
        finally:
            os.close(handle)


def _check_format(entry: Any) -> None:
    version = entry["format"]
    if version not in HEADS:
        raise StepsError(f"it has format {version}; this version reads up to {FORMAT}")


def _taken(steps: Steps, entry: Any) -> str:
    """Takes an entry; the digest of the text that it led to, "" where it changed none."""
    if "saved" in entry:
        steps.saved(entry["saved"])
        return ""
    settings = Change.read(entry["settings"]) if "settings" in entry else None
    step = Step(int(entry["start"]), str(entry["old"]), str(entry["new"]), settings)
    steps.follow(entry["do"], step, entry["to"])
    return str(entry["to"])
