"""Lineproof checks every checkable sentence of a chess lesson before it is taught.

>>> import lineproof
>>> lesson = lineproof.Lesson.from_text("1. f3 e5 2. g4 Qh4# {This is mate.} *")
>>> [str(finding.outcome) for finding in lesson.prove(effort="sketch").findings]
['holds']
"""

from __future__ import annotations

import importlib

__all__ = [
    "Answer",
    "Collection",
    "Effort",
    "Finding",
    "Lesson",
    "LessonError",
    "Outcome",
    "Proof",
    "RunningOrder",
    "Study",
]


def __getattr__(name: str) -> object:
    # Nothing is imported before it is asked for, so that `import lineproof` and `--help` stay fast.
    if name in __all__:
        return getattr(importlib.import_module("lineproof.facade"), name)
    raise AttributeError(f"module 'lineproof' has no attribute {name!r}")


def __dir__() -> list[str]:
    return sorted([*globals(), *__all__])
