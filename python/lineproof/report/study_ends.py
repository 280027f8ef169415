"""What a study found of ideas, ends and orders, as lists of its sheet."""

from __future__ import annotations

from collections.abc import Iterator

from lineproof.claims.board import title
from lineproof.claims.claim import Spot
from lineproof.claims.cost import spelled
from lineproof.claims.showing import numbered
from lineproof.lesson import Place
from lineproof.replies import Study
from lineproof.replies.detours import Detour
from lineproof.replies.ideas import Idea
from lineproof.replies.model_games import ModelGames
from lineproof.replies.plans import Plans

from .counted import counted
from .detoured import detoured
from .item import Figure, Item, Listing, captioned, place_link, played, shown
from .markup import Html, join
from .modelled import continuation, later, scored, stood

LINE = 5
"""Plies of a line that are shown."""


def ends(found: Study) -> Iterator[Listing]:
    yield Listing(
        "ideas",
        "Recurring ideas",
        "The same move, good here and bad there, and what makes the difference.",
        tuple(_idea(one) for one in found.ideas),
    )
    yield Listing(
        "plans",
        "Plans at the ends of lines",
        f"What {title(found.side)} can do next, each move only where it costs nothing.",
        tuple(_plans(one) for one in found.plans),
    )
    yield Listing(
        "games",
        "What the model games did",
        "Games of the collection that come to the end of a line, on whatever road and whatever the ratings.",
        tuple(_model(one) for one in found.model_games),
    )
    yield Listing(
        "orders",
        "Orders of the moves that the opponent can choose",
        "Where he leaves the taught road and comes back to the lesson later, and what he gains by it. Those that the lesson does not answer stand first.",
        tuple(_order(one) for one in found.detours),
    )


def _idea(idea: Idea) -> Item:
    works, fails = idea.pair
    good, bad = Spot.of(works.place), Spot.of(fails.place)
    rows = [
        ("Good", _where(works.place, numbered(good, works.cost.line[:LINE]))),
        (
            "Bad",
            _where(
                fails.place,
                f"{numbered(bad, fails.cost.line[:LINE])}; it costs {spelled(fails.cost.points)}",
            ),
        ),
    ]
    if idea.differs:
        rows.append(("Differs", join((idea.differs,))))
    figures = tuple(
        Figure(spot, shown(spot, one.cost.line[:1]), captioned(spot, word))
        for spot, one, word in ((good, works, "Good."), (bad, fails, "Bad."))
    )
    words = f"{title(idea.side)}: {idea.move}"
    kind = "both in the lesson" if idea.taught else "one in the lesson"
    return Item(
        works.place,
        kind,
        words,
        tuple(rows),
        figures,
        f"{idea.move}: good here, bad {_at(fails.place.label)}",
    )


def _where(place: Place, line: str) -> Html:
    return join((place_link(place, begins=True), f": {line}"))


def _at(label: str) -> str:
    return "at the start" if label == "start" else f"after {label}"


_SORTS = {"break": "Break", "development": "Pieces", "exchange": "Exchange"}


def _plans(of: Plans) -> Item:
    sorts: dict[str, list[str]] = {}
    for plan in of.plans:
        line = numbered(plan.spot, plan.cost.line[:LINE])
        sorts.setdefault(_SORTS[plan.sort], []).append(
            f"{plan.what.removeprefix('the break ')} ({line})"
        )
    rows = tuple((sort, "; ".join(said)) for sort, said in sorts.items())
    spot = Spot.of(of.place)
    first = {plan.sort: plan.cost.uci for plan in reversed(of.plans)}
    figure = Figure(spot, shown(of.plans[0].spot, tuple(first.values())))
    words = f"{title(of.plans[0].cost.side)}'s plans"
    return Item(of.place, "end of a line", words, rows, (figure,), "plans from here")


def _model(of: ModelGames) -> Item:
    spot = Spot.of(of.place)
    rows = [("Result", scored(of))]
    if of.line:
        rows.append(("Mostly", continuation(of)))
    if of.stood:
        rows.append(("Later", f"{later(of)}: {stood(of.stood)}."))
    marks = played(spot) + shown(spot, tuple(step.uci for step in of.line[:1]))
    came = counted(of.games, "game")
    figure = Figure(spot, marks)
    return Item(of.place, "end of a line", came, tuple(rows), (figure,), f"{came} came here")


def _order(one: Detour) -> Item:
    spot = Spot.of(one.place)
    after = spot.play(one.reply.uci)
    sentence = detoured(one)
    rows = (
        ("Order", f"{numbered(spot, one.line)}, and it is the position after {one.into.label}"),
        ("Chance", f"about {one.reply.share:.0f} in 100 players choose it"),
        ("Gain", f"{sentence[0].upper()}{sentence[1:]}"),
    )
    kind = "answered" if one.answers else "not answered"
    move = numbered(spot, (one.reply.uci,))
    best = next(
        (uci for uci in after.board.legal_moves() if after.board.san(uci) == one.best), None
    )
    marks = played(after) + (shown(after, (best,)) if best else ())
    return Item(
        one.place,
        f"order, {kind}",
        move,
        rows,
        (Figure(after, marks),),
        f"{move} is another order",
    )
