"""The script as Markdown: what the teacher says and does, with the time of each cue."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence

from .cues import Cue
from .running import RunningOrder
from .summary import cut_line, printed
from .timing import ASKED, LOOK, MARK, MOVE, SHOW, clock, length

_SPECIAL = re.compile(r"([\\`*_\[\]<>|])")
_LEADING = re.compile(r"^(\s*)([#>+\-]|\d+[.)])(?=\s)")


def script(order: RunningOrder) -> str:
    """The whole script."""
    lines = [
        f"# {escaped(order.lesson.settings.title)}",
        f"{length(order.seconds)}. {counting(order.words_a_minute)}",
        *script_lines(order.cues),
    ]
    if order.cuts:
        lines += [
            "---\n\n**Left out to fit**",
            "\n".join(f"* {cut_line(order, cut)}" for cut in order.cuts),
        ]
    return "\n\n".join(lines) + "\n"


def script_lines(cues: Sequence[Cue]) -> Iterator[str]:
    """A paragraph each: sentences said one after another, moves played one after another, a way back, a pause."""
    at = 0
    while at < len(cues):
        cue = cues[at]
        when = f"`{clock(cue.begins)}`"
        if cue.kind == "play":
            run = _run(cues, at, "play")
            yield f"{when} **Play** {_moves(run)}"
            at += len(run)
            continue
        if cue.kind in ("say", "mark"):
            run = _sayings(cues, at)
            yield f"{when} {' '.join(_saying(one) for one in run)}"
            at += len(run)
            continue
        if cue.kind == "go back to":
            after = f" *(after {cue.place.label})*" if cue.place.ply else ""
            yield f"---\n\n{when} **{cue.words}**{after}"
        elif cue.kind == "pause":
            said = "" if cue.asked else f" {escaped(cue.words)}"
            yield f"{when} **Pause, {cue.silence:.0f} seconds.**{said}"
        else:
            yield f"{when} **Set up** {cue.words.removeprefix('Set up this position. ')}"
        at += 1


def _run(cues: Sequence[Cue], at: int, kind: str) -> list[Cue]:
    end = at
    while end < len(cues) and cues[end].kind == kind:
        end += 1
    return list(cues[at:end])


def _sayings(cues: Sequence[Cue], at: int) -> list[Cue]:
    end = at
    while end < len(cues) and cues[end].kind in ("say", "mark"):
        end += 1
    return list(cues[at:end])


def _moves(run: Sequence[Cue]) -> str:
    """The moves in words, and as they are printed."""
    said = "; ".join(f"{cue.words} *[{cue.note}]*" if cue.note else cue.words for cue in run)
    return f"{said[:1].upper()}{said[1:]}. *({printed(run)})*"


def _saying(cue: Cue) -> str:
    if cue.kind == "mark":
        return f"*[mark {_listed(cue.squares)}]*"
    return escaped(" ".join(cue.words.split()))


def _listed(squares: Sequence[str]) -> str:
    return squares[0] if len(squares) == 1 else f"{', '.join(squares[:-1])} and {squares[-1]}"


def escaped(text: str) -> str:
    """The author's words as they are: nothing in them means anything to Markdown."""
    return _LEADING.sub(r"\1\\\2", _SPECIAL.sub(r"\\\1", text))


def counting(words_a_minute: int) -> str:
    """How the times are reckoned."""
    return (
        f"Times: {words_a_minute} words a minute, a square being two; beside the words {MOVE:.0f} second a move, {MARK:.0f} a mark,"
        f" {LOOK:.0f} after a way back; a pause {ASKED:.0f}, a show of hands {SHOW:.0f}, a pause point 10 to 30 by its grade"
        " (common practice)."
    )
