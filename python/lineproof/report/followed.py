"""What came of students' games, in sentences and as JSON."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from lineproof.claims.cost import Cost, spelled
from lineproof.follow import Common, Departure, Followed

from .counted import counted
from .plain import plain

FORMAT = 1
SHOWN = 12


def followed(found: Followed, *, name: str) -> str:
    return "\n".join(_followed(found, name)) + "\n"


def came(found: Followed) -> str:
    """How many games came to the lesson."""
    total = len(found.departures)
    if total and not found.elsewhere:
        return (
            "The one game came to the lesson."
            if total == 1
            else f"All {total:,} games came to the lesson."
        )
    return (
        f"{counted(total, 'game')} came to the lesson, {counted(found.elsewhere, 'game')} did not."
    )


def scored(found: Followed) -> Iterator[str]:
    """What was left out, and how the students scored."""
    if found.other_side:
        yield f"{counted(found.other_side, 'game')} with the other side {'is' if found.other_side == 1 else 'are'} left out."
    if found.interval is not None:
        text = (
            f"The students scored {found.score:g} of {found.results:,}, {100 * found.score / found.results:.0f} in 100"
            f" (95 %: {found.interval.low:.0f} to {found.interval.high:.0f})"
        )
        if found.expected is not None:
            among = (
                ""
                if found.rated == found.results
                else f" in the {counted(found.rated, 'game')} with both ratings {found.rated_score:g}, where"
            )
            text += f";{among} {found.expected:.1f} were to be expected by the ratings"
        yield f"{text}."


def _followed(found: Followed, name: str) -> Iterator[str]:
    yield f"{plain(name)}: {came(found)}"
    yield from scored(found)
    if found.common:
        yield ""
        yield "The commonest departures, and what to add:"
        for one in found.common[:SHOWN]:
            yield f"  {common_said(one)}"
        if len(found.common) > SHOWN:
            yield f"  and {counted(len(found.common) - SHOWN, 'more', 'more')}; --json has them all"
    if found.departures:
        yield ""
        yield "Game by game:"
        for departure in found.departures:
            yield f"  {_departure(departure)}"


def _at(one: Departure, lines: bool) -> str:
    place = one.place
    if place.span is None:
        return "the start"
    if not lines:
        return place.label
    return f"{place.label} (line {place.lesson.locate(place.span[0])[0]})"


def _move(one: Departure) -> str:
    board = one.spot.board
    return f"{board.move_number}{'.' if board.turn == 'white' else '...'} {one.san}"


def common_said(one: Common, *, lines: bool = True) -> str:
    """A departure, how many games have it, and what to teach there. lines: whether places have their line in the file."""
    first = one.first
    who = "the student" if first.by_student else "the opponent"
    text = f"{counted(one.games, 'game')}: after {_at(first, lines)} {who} played {_move(first)}"
    if one.results:
        text += f", and the students scored {one.points:g} of {one.results}"
    if first.by_student:
        taught = " or ".join(first.taught)
        return f"{text}; {f'the lesson plays {taught}' if taught else 'the lesson ends there'}{_costs(first.cost)}"
    best = f"; teach {first.answer.better} against it" if first.answer is not None else ""
    return f"{text}{_costs(first.cost)}{best}"


def _costs(cost: Cost | None) -> str:
    return f"; it costs {spelled(cost.points)}" if cost is not None and cost.points > 0 else ""


def _departure(one: Departure) -> str:
    game = one.game
    return f"line {game.line}, {plain(game.white)} against {plain(game.black)}: {departed(one)}"


def departed(one: Departure, *, lines: bool = True) -> str:
    """Where and how one game left the lesson. lines: as above."""
    game = one.game
    if one.uci is None:
        text = f"it ended inside the lesson, after {_at(one, lines)}"
    elif one.ended:
        text = f"it followed the lesson to the end of a line, {_at(one, lines)}"
    else:
        who = game.name(one.side) if one.by_student else "the opponent"
        text = f"after {_at(one, lines)} {plain(who)} played {_move(one)}"
        if one.by_student:
            text += f"; the lesson plays {' or '.join(one.taught)}"
        text += _costs(one.cost)
        if one.punished is not None:
            text += ", and it was punished" if one.punished else ", but it was not punished"
    return (
        f"{text}. The game was read to a mistake: {plain(game.broken)}"
        if game.broken
        else f"{text}."
    )


def _cost(cost: Cost | None) -> dict[str, Any] | None:
    if cost is None:
        return None
    return {
        "move": cost.san,
        "best": cost.better,
        "cost": cost.points,
        "points": cost.played,
        "best_points": cost.best,
    }


def followed_json(found: Followed) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "games": len(found.departures),
        "elsewhere": found.elsewhere,
        "other_side": found.other_side,
        "score": {
            "points": found.score,
            "of": found.results,
            "interval": None if found.interval is None else {"low": found.interval.low, "high": found.interval.high},
            "expected": found.expected,
            "rated": found.rated,
            "rated_points": found.rated_score,
        },
        "departures": [
            {
                "line": one.game.line,
                "white": one.game.white,
                "black": one.game.black,
                "place": one.place.label,
                "fen": one.spot.board.fen,
                "move": one.san,
                "by_student": one.by_student,
                "lesson_ended": one.ended,
                "taught": list(one.taught),
                "cost": _cost(one.cost),
                "reply": _cost(one.answer),
                "punished": one.punished,
                "broken": one.game.broken or None,
            }
            for one in found.departures
        ],
        "common": [
            {"place": one.first.place.label, "move": one.first.san, "by_student": one.first.by_student, "games": one.games, "points": one.points, "results": one.results}
            for one in found.common
        ],
    }  # fmt: skip
