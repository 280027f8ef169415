"""What the command says: the length, how the order compares, what is left out, and each line with its time."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from .cues import Cue
from .fitting import Cut
from .references import Reference
from .running import RunningOrder
from .timing import clock, length


def summary(order: RunningOrder, name: str) -> str:
    """What the command prints: the length, how the order compares, and each line with its time."""
    return "\n".join(_summary(order, name)) + "\n"


def _summary(order: RunningOrder, name: str) -> Iterator[str]:
    telling = order.telling
    yield f"{name}: {length(order.seconds)} at {order.words_a_minute} words a minute."
    yield _compared(order)
    if telling.file_early or telling.early:
        yield (
            f"Told before what they refer to: {_counted(_sentences(telling.early), 'sentence')}; in the file's own order"
            f" {_sentences(telling.file_early)}."
        )
    for ref in {ref.sentence.start: ref for ref in telling.early}.values():
        line, _ = order.lesson.locate(ref.sentence.start)
        yield f"  line {line}: “{' '.join(ref.sentence.text.split())}”: it speaks of what is told after it; say it in other words, or elsewhere"
    if order.minutes is not None:
        yield from _fit(order)
    yield ""
    at = 0
    moves: list[Cue] = []
    for cue in order.cues:
        if cue.kind in ("go back to", "set up") and moves:
            yield f"      {printed(moves)}"
            moves = []
        if cue.kind in ("go back to", "set up"):
            yield f"{clock(cue.begins):>5} {cue.words}"
        elif cue.kind == "play":
            if not moves and not at:
                yield f"{clock(order.cues[0].begins):>5} From the beginning."
            moves.append(cue)
        elif cue.kind == "pause":
            moves.append(cue)
        at += cue.kind in ("play", "go back to", "set up")
    if moves:
        yield f"      {printed(moves)}"


def _sentences(refs: Sequence[Reference]) -> int:
    return len({ref.sentence.start for ref in refs})


def _compared(order: RunningOrder) -> str:
    """The measure, beside the file's order and what no order can go below."""
    telling = order.telling
    mine, file, least = telling.measure, telling.file, telling.least
    text = (
        f"Ways back: {mine.ways_back}, in the file's own order {file.ways_back}. Moves shown again: {mine.plies_again}, in the file's own"
        f" order {file.plies_again}. Moves between a mistake and its punishment: {mine.distance}, in the file's own order {file.distance}."
    )
    if telling.proven:
        return f"{text} No order is better."
    return f"{text} No order has fewer than {_counted(least.ways_back, 'way')} back; whether one has fewer than this was not tried."


def _fit(order: RunningOrder) -> Iterator[str]:
    whole = f"the whole lesson takes {length(order.whole)}"
    if not order.cuts and order.fits:
        yield f"Nothing has to be left out for {_minutes(order)}."
        return
    if order.fits:
        yield f"Left out, to fit into {_minutes(order)} ({whole}); the first is missed least:"
    else:
        yield (
            f"{_minutes(order)} cannot be kept ({whole}): the main line, the punishment of each mistake that is shown and what sentences"
            f" refer to take {length(order.seconds)}. Left out, the first is missed least:"
        )
    for cut in order.cuts:
        yield f"  {cut_line(order, cut)}"


def _minutes(order: RunningOrder) -> str:
    return f"{order.minutes:g} minute{'' if order.minutes == 1 else 's'}"


def cut_line(order: RunningOrder, cut: Cut) -> str:
    """ "3... d6 (line 34), 10 moves, 1 min 20 s; met in 12 of 100 games" """
    steps = order.telling.steps
    step = steps.all[cut.step]
    place = step.place
    above = "" if place.parent is None or place.parent.ply == 0 else f"{place.parent.label} "
    line, _ = order.lesson.locate(place.span[0] if place.span else 0)
    met = "a footnote" if cut.footnote else f"met in {_rare(cut.chance)} games"
    count = _counted(len(cut.steps), "move")
    return f"{above}{place.label} (line {line}): {count}, {length(cut.seconds)}; {met}"


def _rare(chance: float) -> str:
    """ "4 of 100", "1 of 250" """
    percent = 100 * chance
    if percent >= 1:
        return f"{percent:.0f} of 100"
    return f"1 of {round(100 / percent):,}" if percent > 0.001 else "fewer than 1 of 100,000"


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun}{'' if count == 1 else 's'}"


def printed(run: Sequence[Cue]) -> str:
    """ "3... d5 4. fxe5" """
    found: list[str] = []
    for cue in run:
        if cue.kind == "pause":
            found.append("(pause)")
            continue
        label = cue.place.number
        found.append(
            f"{label} {cue.san}"
            if not found or found[-1] == "(pause)" or not label.endswith("..")
            else cue.san or ""
        )
    return " ".join(found)
