"""Claims: from the author's words and glyphs to typed claims, each with its check."""

from __future__ import annotations

from .claim import Ask, Claim, GameOver, Judgement, Mark, Outcome, Played, Spot
from .kind import Kind
from .reading import read_comment, read_glyphs, read_lesson, read_sentence
from .registry import all_kinds, kind_of
from .status import LessonReading, Reading, Status

__all__ = [
    "Ask", "Claim", "GameOver", "Judgement", "Kind", "LessonReading", "Mark", "Outcome", "Played", "Reading", "Spot", "Status",
    "all_kinds", "kind_of", "read_comment", "read_glyphs", "read_lesson", "read_sentence",
]  # fmt: skip
