"""Sentences that more than one output says."""

from __future__ import annotations

from lineproof.lesson.opinions import Opinion
from lineproof.proof import Change

from .plain import plain
from .printed import SIGNS

_IS = {"holds": "holds", "fails": "fails", "unsettled": "is unsettled"}
_WAS = {"holds": "held", "fails": "failed", "unsettled": "was unsettled"}


MAY_DIFFER = "The answers of an outside engine may differ from run to run."


def turned(change: Change) -> str:
    """ "“Black wins a piece.” held, and now fails: the line around it was edited." """
    words = f"“{_as_printed(plain(change.words))}”"
    if change.place not in ("", "start"):
        words += f" (after {plain(change.place)})"
    if not change.before:
        return f"{words} is new and {_IS[change.after]}."
    if not change.after:
        return f"{words}, which {_WAS[change.before]}, is gone: {change.why}."
    return f"{words} {_WAS[change.before]}, and now {_IS[change.after]}: {change.why}."


def _as_printed(words: str) -> str:
    """A glyph that is written as a number, as it is printed."""
    number = words.removeprefix("$")
    if number != words and number.isdecimal():
        return SIGNS.get(int(number), words)
    return words


def gone(opinion: Opinion) -> str:
    """ "You marked “I like it.” (after 3. f4) as your opinion; the lesson has no such sentence any more." """
    at = f" (after {plain(opinion.move)})" if opinion.move not in ("", "start") else ""
    return (
        f"You marked “{plain(opinion.words)}”{at} as your opinion; the lesson has no such sentence any more."
        " If you wrote it anew, mark it anew. This is said once."
    )


def seconds(spent: float) -> str:
    """A time in words."""
    if spent < 60:
        return f"{spent:.1f} seconds"
    return f"{int(spent) // 60} min {int(spent) % 60:02d} s"
