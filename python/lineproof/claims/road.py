"""Roads: the words by which a sentence names a line of the lesson: "the main line", "the line with 3... Nc6", "3. f4 Nc6"."""

from __future__ import annotations

from .noun import Noun

_LINES = frozenset({"line", "variation", "game", "lesson"})


def road(noun: Noun) -> str | None:
    """The words of a line of the lesson, or the moves that lead to it; None for anything else."""
    if noun.type in {"move", "square"}:
        named = noun.parts or noun.text[:1].isdigit() or noun.text.startswith("...")
        return noun.text.replace(" then ", " ") if named else None
    if noun.type == "noun" and noun.head in _LINES and noun.det in {"the", "this", "that", "our"}:
        return noun.text
    return None


__all__ = ["road"]
