"""What a study found, in sentences: replies left open, slips, pause points, ends. And the answer to a viewer's question."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import TypeVar

from lineproof.claims.bands import spoken
from lineproof.claims.board import title
from lineproof.claims.claim import Spot
from lineproof.claims.cost import Cost, spelled
from lineproof.claims.showing import numbered
from lineproof.lesson import Place
from lineproof.replies import Study
from lineproof.replies.answering import Answer
from lineproof.replies.detours import Detour
from lineproof.replies.ideas import Idea
from lineproof.replies.likely import Reply
from lineproof.replies.orders import Road
from lineproof.replies.pauses import Pause
from lineproof.replies.plans import Plans
from lineproof.replies.slips import Slip
from lineproof.replies.stops import Stop
from lineproof.replies.unanswered import Unanswered

from . import collected
from .counted import counted, rare
from .detoured import detoured
from .modelled import modelled
from .plain import plain

_T = TypeVar("_T")
GUESSED = "How likely a reply is comes from a model of natural moves, whose weights are guesses"
SHOWN = 12
"""Of each list, so many get a line of their own."""


def share(reply: Reply) -> str:
    """ "13 of 100 games, 5 of 40 counted" """
    counts = f"; counted: {reply.games:,} of {reply.of:,} games" if reply.of else ""
    return f"about {reply.share:.0f} in 100 players choose it{counts}"


def studied(found: Study, *, name: str, everything: bool) -> str:
    """What `unanswered` says. everything: the long lists whole."""
    return "\n".join(_studied(found, name, None if everything else SHOWN)) + "\n"


def _studied(found: Study, name: str, most: int | None) -> Iterator[str]:
    yield f"{plain(name)}: {title(found.side)} is taught, to players of about {found.rating}."
    yield where_from(found)
    for beginning in found.beginnings:
        yield ""
        yield f"From {_at(beginning.place)} on, of 100 games of this audience about so many stay inside the lesson:"
        for move, percent in beginning.answered:
            end = "to the end of its lines" if move is None else f"up to move {move}"
            yield f"  {percent:.0f} {end}"
    yield from _list(
        "Dangerous replies that are left open, the heaviest first", found.dangerous, _open, most
    )
    harmless = tuple(one for one in found.met if not one.dangerous)
    yield from _list("Other replies that are left open and will be met", harmless, _open, most)
    slips = tuple(slip for slip in found.slips if slip.within_reach)
    footnotes = len(found.slips) - len(slips)
    yield from _list("Slips: tempting moves that cost much", slips, _slip, most)
    if footnotes:
        yield f"  {counted(footnotes, 'more', 'more')} whose refutation lies too deep for this audience: footnotes at most."
    yield from _list(
        "Moves of the lesson that cost something",
        found.costly,
        lambda one: (
            f"{_at(one.place)} costs {spelled(one.cost.points)}; {one.cost.better} is better"
        ),
        most,
    )
    pauses = tuple(sorted(found.pauses, key=lambda one: -one.grade)) if most else found.pauses
    yield from _list(
        "Pause points, the hardest first" if most else "Pause points", pauses, _pause, most
    )
    yield from _list(
        f"To be known by heart ({len(found.by_heart)})",
        found.by_heart,
        lambda one: (
            f"{_at(one.place)}: the only move, and about {one.share:.0f} in 100 would find it unaided"
        ),
        most,
    )
    yield from _list("Lines that stop early", found.stops, _stop, most)
    yield from _list(
        "Recurring ideas: the same move, good here and bad there", found.ideas, _idea, most
    )
    yield from _list("Plans at the ends of lines", found.plans, _plans, most)
    yield from _list(
        "What the model games did where a line ends",
        found.model_games,
        lambda one: f"{_at(one.place)}: {modelled(one)}",
        most,
    )
    yield from _list(
        "Orders of the moves that the opponent can choose", found.detours, _detour, most
    )
    for beginning in found.beginnings:
        yield from _list(f"Other roads to {beginning.place.label}", beginning.roads, _road, most)
    if not any((found.open, found.slips, found.costly, found.pauses, found.by_heart, found.stops)):
        yield ""
        yield "Nothing is left open, and nothing asks for a pause."


def where_from(found: Study) -> str:
    """How the shares were come by."""
    if found.games:
        return "How likely a reply is comes from counted games of this audience and, where they are few, from a model of natural moves."
    return f"{GUESSED}: {found.uncounted}."


def _list(
    heading: str, found: Sequence[_T], line: Callable[[_T], str], most: int | None
) -> Iterator[str]:
    if not found:
        return
    yield ""
    yield f"{heading}:"
    for one in found[:most]:
        yield f"  {line(one)}"
    if most is not None and len(found) > most:
        yield f"  and {counted(len(found) - most, 'more', 'more')}; --all shows them"


def _at(place: Place) -> str:
    if place.label == "start":
        return "the start"
    line, _ = place.lesson.locate(place.span[0] if place.span else 0)
    return f"{place.label} (line {line})"


def _open(one: Unanswered) -> str:
    dots = _number(one.place)
    text = f"after {_at(one.place)}: {dots} {one.reply.san}, {share(one.reply)}, met in {rare(one.chance)} games"
    if one.natural is None:
        return f"{text}; the game is over"
    answer = one.natural
    if one.dangerous:
        return f"{text}; the natural {answer.san} costs {spelled(answer.points)}, teach {answer.better} ({spoken(answer.side, answer.best)})"
    return f"{text}; answer: {answer.better} ({spoken(answer.side, answer.best)})"


def _number(place: Place) -> str:
    board = place.board
    return f"{board.move_number}{'.' if board.turn == 'white' else '...'}"


def _slip(slip: Slip) -> str:
    shown = "the lesson shows it" if slip.shown else "the lesson does not show it"
    return f"after {_at(slip.place)}: {_number(slip.place)} {slip.reply.san}, {share(slip.reply)}, costs {spelled(slip.cost.points)}; {_refuted(slip.cost, slip.place)}; {shown}"


def _refuted(cost: Cost, place: Place) -> str:
    spot = Spot.of(place)
    return (
        f"refuted by {numbered(spot.play(cost.uci), cost.line[1:6])}"
        if len(cost.line) > 1
        else "the game is over"
    )


def _pause(one: Pause) -> str:
    wrong = ", ".join(f"{reply.san} ({spelled(cost.points)})" for reply, cost in one.wrong)
    return f"{one.grade} of 5: after {_at(one.place)}, find {one.best}: {one.point}; wrong answers and their cost: {wrong}"


def _stop(one: Stop) -> str:
    comes = f"; {one.what}" if one.what else ""
    what = "can still play" if one.to_move else "threatens"
    move, line = numbered(one.spot, one.line[:1]), numbered(one.spot, one.line)
    shown = f" ({line})" if len(one.line) > 1 else ""
    return f"{_at(one.place)}: {title(one.side)} {what} {move}{shown}{comes}"


def _idea(idea: Idea) -> str:
    works, fails = idea.pair
    good, bad = (numbered(Spot.of(one.place), one.cost.line[:5]) for one in idea.pair)
    differs = f" {idea.differs}" if idea.differs else ""
    return (
        f"{title(idea.side)}: {idea.move}. Good after {_at(works.place)}: {good}. After {_at(fails.place)} it costs"
        f" {spelled(fails.cost.points)}: {bad}.{differs}"
    )


def _plans(of: Plans) -> str:
    parts = [f"{plan.what} ({numbered(plan.spot, plan.cost.line[:5])})" for plan in of.plans]
    return f"{_at(of.place)}: {'; '.join(parts)}"


def _detour(one: Detour) -> str:
    line = numbered(Spot.of(one.place), one.line)
    return f"after {_at(one.place)}: {line}, and it is {_at(one.into)}; {share(one.reply)}; {detoured(one)}"


def _road(road: Road) -> str:
    return f"{collected.numbered(road.san)}{f': {road.opening}' if road.opening else ''}"


def answered(found: Answer, *, name: str) -> str:
    """What `ask` says."""
    return "\n".join(_answered(found, name)) + "\n"


def _answered(found: Answer, name: str) -> Iterator[str]:
    if found.places:
        places = ", ".join(_at(place) for place in found.places)
        yield f"{plain(name)} has this position: {places}."
        if found.lesson_plays:
            yield f"It goes on with {', '.join(found.lesson_plays)}."
    elif found.left is not None:
        left = found.left
        who = {True: "the taught side", False: "the opponent", None: title(left.place.board.turn)}
        yield f"{plain(name)} does not have this position. It is left after {_at(left.place)}, where {who[left.by_taught]} plays {left.reply.san}: {share(left.reply)}."
        if left.uncounted:
            yield f"{GUESSED}: {left.uncounted}."
    else:
        yield f"{plain(name)} does not have this position, nor any on the way to it."
    yield found.sentence
