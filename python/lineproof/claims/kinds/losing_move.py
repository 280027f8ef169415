"""Losing moves: after them the game is lost."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import edge_of_two, spoken
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, MISTAKE, SAFE, taught, told, weigh
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, NOUNS, STANDINGS, members
from lineproof.claims.noun import Noun
from lineproof.claims.played import played, supposed

NEXT_BAND = 35
"""Points below which a move is one band from losing: clearly worse."""

_FAULTS = frozenset({"move", "mistake", "error", "blunder", "idea"})


def losing(noun: Noun) -> bool | None:
    """Whether a noun phrase blames the move: "a fatal mistake" (True), "a losing move" (False)."""
    said = set(noun.adjectives)
    if noun.head not in _FAULTS or noun.plural:
        return None
    if said & {"fatal", "decisive"} or (noun.head != "move" and "losing" in said):
        return True
    return noun.det == "the" if "losing" in said else None


FRAMES = (
    "{deed} <lose> [for {side}] [to {by}] if lone",
    "{side} <lose> +outright|by_force|at_once|immediately|on_the_spot|straight_away|instantly if lone",
    "{deed} <lose to> {by} if lone",
    "{deed} <lose> game",
    "{deed} <lose the game> ; decisive=yes",
    "{deed} <=> losing [for {side}]",
    "{deed} <=> {losing} [for {side}]",
    "{deed} <=> {fatal} [for {side}] ; decisive=yes",
    "{blamed} <=> {deed} ; decisive=yes",
    "{deed} <cost> {side} game",
    "{deed} <cost> {side} {points}",
    "{deed} <cost> game",
    "{deed} <cost> {points}",
    "{side} <lose_the_game> [(by|with) {deed}] ; decisive=yes",
    "{side} <lose> game [(by|with) {deed}] ; decisive=yes",
    "{side} <=> {lost_state} ; ahead=yes",
    "{deed} <leave> {side} lost",
    "{deed} <give/leave> {side} {lost}",
    "{deed} <leave> {side} (with|in) {lost}",
    "{deed} <lead to> {lost} [for {side}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "ahead" in slots and not supposed(here):
        raise Unread("it is said of the position, and not of a move")
    by_it = "side" in slots and slots.get("deed") in {
        "it",
        "this",
        "that",
    }  # "loses the game by it"
    move = here.last() if "ahead" in slots or by_it else played(here, slots.get("deed"))
    if "side" in slots and here.side(slots["side"]) != move.side:
        raise Unread("the side that is said to lose is not the one that moved")
    verb = slots.get("verb")
    decisive = "decisive" in slots or bool(slots.get("losing"))
    return [
        here.claim(
            KIND.id,
            move.side,
            spot=move.before,
            negated=verb is not None and verb.negated,
            move=move.uci,
            decisive=decisive,
        )
    ]


def outcome(best: int, points: int, decisive: bool, negated: bool) -> tuple[Outcome, bool]:
    """What the points of best move and this one say, and whether it is one band off.

    decisive: it is said that this move lost the game, which a move in a lost position cannot do.
    """
    lost = points < LOST
    if negated:
        return (Outcome.FAILS if lost else Outcome.HOLDS), False
    if lost and decisive and best - points <= SAFE:
        return Outcome.UNSETTLED, False
    if lost:
        return Outcome.HOLDS, False
    return (Outcome.UNSETTLED, True) if points < NEXT_BAND else (Outcome.FAILS, False)


def check(claim: Claim, ask: Ask) -> Judgement:
    move, decisive = claim.params["move"], claim.params["decisive"]
    cost = weigh(ask, claim.spot, move)
    said, one_off = outcome(cost.best, cost.played, decisive, claim.negated)
    because = told(cost)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays: after {cost.better} too {spoken(cost.side, cost.best)}."
    elif one_off:
        because += " That is one band off."
    instead = None
    if said is Outcome.FAILS:
        loses = f"{cost.san} loses: after it {spoken(cost.side, cost.played)}."
        instead = (
            loses
            if claim.negated
            else f"{cost.san} does not lose the game: {spoken(cost.side, cost.played)}."
        )
    near = edge_of_two(
        cost.best, cost.played, lambda b, p: outcome(b, p, decisive, claim.negated)[0]
    )
    return Judgement(
        said, because, cost.line, claim.spot, cost.numbers, near, instead, one_off,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side),), second=taught(cost, claim.spot),
    )  # fmt: skip


KIND = Kind(
    id="losing-move",
    title="Losing move",
    version=1,
    definition=(
        "After the move its side scores less than 15 points of 100 with best play; from 15 to 35 it is one band off. Where every move loses, 'loses' holds, and a word such as 'the decisive mistake', "
        "which blames this move, is not counted (the best move must score more than 5 points more)."
    ),
    formula=f"holds: points after the move < {LOST}; one off: < {NEXT_BAND}; fails: >= {NEXT_BAND}; blamed for it: best - played > {SAFE}",
    slots={
        "fatal": dict.fromkeys(members("fatal", JUDGEMENTS), True),
        "lost_state": dict.fromkeys(STANDINGS["lost"], True),
    },
    frames=FRAMES,
    tests={
        "points": lambda n: (  # "costs the point", "costs 30 points", but not "2 points"
            n.text if n.head == "point" and (n.count or MISTAKE) not in range(2, MISTAKE) else None
        ),
        "losing": losing,
        "blamed": lambda n: n.text if losing(n) and (n.det == "the" or n.whose) else None,
        "lost": lambda n: (
            n.text
            if n.head in members("position", NOUNS) and {"lost", "losing"} & set(n.adjectives)
            else None
        ),
    },
    gives_way=frozenset({"unlike-before"}),
    read=read,
    check=check,
)
