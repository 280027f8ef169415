"""A comparison as a notice for the audience of the older edition."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from lineproof.claims import Outcome
from lineproof.lesson import Place
from lineproof.report.counted import counted, listed
from lineproof.report.plain import plain

from .comparison import AdviceChange, Comparison, LineChange, SettingChange, VerdictChange

WHOLE: Final = 6
"""Half-moves up to which a position is told by all its moves."""
SHOWN: Final = 4
"""Half-moves by which a later one is told."""


def notice(of: Comparison) -> str:
    """Plain text: a heading, then each kind of change with a line for each."""
    return "\n".join(_notice(of)) + "\n"


def _notice(of: Comparison) -> Iterator[str]:
    yield f"{of.new.title}: what has changed from {plain(of.old.words)} to {plain(of.new.words)}."
    if of.nothing:
        yield "Nothing has changed: the lines, the advice, the verdicts and the words are the same."
        return
    yield from _listed("What the lesson now recommends", map(_advice, of.advice))
    yield from _listed("New lines", map(_line, of.added))
    yield from _listed("Lines that are gone", map(_line, of.removed))
    yield from _listed("Lines that now go another way", map(_changed, of.changed))
    yield from _listed("Verdicts", map(_verdict, of.verdicts))
    yield from _listed("Words that are new or different", (f"{at(w.place)}." for w in of.words))
    yield from _listed("The lesson as a whole", map(_setting, of.settings))


def _listed(heading: str, lines: Iterator[str]) -> Iterator[str]:
    found = list(dict.fromkeys(lines))
    if found:
        yield ""
        yield f"{heading}:"
        yield from (f"  {line}" for line in found)


def at(place: Place) -> str:
    """ "After 3. f4 exf4 4. e5 d5": enough moves to know the position by."""
    path = place.path()[1:]
    if not path:
        return "At the start"
    return f"After {moves(path if len(path) <= WHOLE else path[-SHOWN:])}"


def moves(places: Sequence[Place]) -> str:
    """ "3... exf4 4. e5"."""
    words: list[str] = []
    for place in places:
        number = place.number if not words or not place.number.endswith("...") else ""
        words.append(f"{number} {place.san}".strip())
    return " ".join(words)


def _within(text: str) -> str:
    """The words of `at` in the middle of a sentence."""
    return text[0].lower() + text[1:]


def _advice(change: AdviceChange) -> str:
    old = moves([change.old])
    if change.new is None:
        return f"{at(change.place)} the lesson ends; before it recommended {old}."
    return f"{at(change.place)} the lesson now recommends {moves([change.new])} in place of {old}."


def _line(change: LineChange) -> str:
    gone = not change.new
    what = f"{_moves(change)}."
    if change.goes_on:
        verb = "went on" if gone else "goes on"
        return f"{at(change.place)} the line {verb}: {what}"
    return f"{at(change.place)}: {what}"


def _changed(change: LineChange) -> str:
    return f"{at(change.place)}: {_moves(change)}, in place of {moves(change.old)}."


def _moves(change: LineChange) -> str:
    """ "5... Be7 6. d4, with 3 moves of sidelines, which comes to the position after 4. d4"."""
    text = moves(change.new or change.old)
    if change.more:
        text += f", with {counted(change.more, 'move')} of sidelines"
    if change.joins is not None:
        verb = "comes" if change.new else "came"
        text += f", which {verb} to the position {_within(at(change.joins))}"
    return text


def _verdict(change: VerdictChange) -> str:
    where, old, new = at(change.place), listed(change.old), listed(change.new)
    if change.holds is not None:
        return f"{where}: that {new} {_outcome(change.holds)}; before, it {_before(change.held)}."
    if not old:
        return f"{where}: {new}; before, nothing was said."
    if not new:
        return f"{where}: nothing is said any more; before, {old}."
    return f"{where}: {new}; before, {old}."


_NOW: Final = {
    Outcome.HOLDS: "now holds",
    Outcome.FAILS: "no longer holds",
    Outcome.UNSETTLED: "is now unsettled",
}
_THEN: Final = {
    Outcome.HOLDS: "held",
    Outcome.FAILS: "failed",
    Outcome.UNSETTLED: "was unsettled",
}


def _outcome(found: Outcome) -> str:
    return _NOW[found]


def _before(found: Outcome | None) -> str:
    return "" if found is None else _THEN[found]


def _setting(change: SettingChange) -> str:
    names = {"title": "The title", "side": "The side taught", "audience": "The audience's rating"}
    return f"{names[change.what]} is {change.new}; before: {change.old}."
