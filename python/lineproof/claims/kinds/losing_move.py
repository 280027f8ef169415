"""Losing moves: after them the game is lost."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import edge_of_two, spoken
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, SAFE, taught, told, weigh
from lineproof.claims.frame import SLOTS
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import PLAYED, denied, played

NEXT_BAND = 35
"""Points below which a move is one band from losing: clearly worse."""

PHRASES = (
    "{agent} <lose> [outright|by force|at once|quickly|immediately|on the spot|straight away|without a fight|in all lines|trivially|in every line]",
    "{agent} <lose> the game [outright|by force|at once|on the spot]",
    "{agent} <lose> for {side}",
    "{agent} <be> [{very}] (losing|a losing move|a losing idea|the losing move) [for {side}]",
    "{agent} <lead to/end in/result in> a lost (position|game|ending|endgame) [for {side}]",
    "{agent} <leave> {side} [{very}] (lost|with a lost position|in a lost position|with a lost game)",
    "{agent} <turn out to be> losing",
    "{agent} <throw away the game/throw the game away/give away the game/give the game away/hand over the game/ruin the game/throw it all away>",
    "{agent} <cost> {side} the (game|whole game|point|full point)",
    "{agent} <be> [{very}] {decisive} [for {side}]",
    "[the|{whose}] (losing move|losing mistake|decisive mistake|decisive error|fatal mistake|fatal error) [of the game] (is|was) {move}",
)


FRAMES = (
    "{move} <lose_the_game>",
    "{move} <lose> +outright|by_force|at_once|immediately|on_the_spot",
    "{agent} <=> losing",
    "{move} <lose>",
    "{agent} <lose> game",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    move = played(here, slots.get("agent", slots.get("move")))
    if "side" in slots and here.side(slots["side"]) != move.side:
        raise Unread("the side that is said to lose is not the one that moved")
    said = here.said
    decisive = "decisive" in slots or any(
        w in said
        for w in ("decisive", "fatal", "losing mistake", "away", "ruin", "the losing move")
    )
    return [
        here.claim(
            KIND.id,
            move.side,
            spot=move.before,
            negated=denied(slots),
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
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "decisive": {
            k: k
            for k in (
                "the losing move",
                "the losing mistake",
                "the decisive mistake",
                "the decisive error",
                "a fatal mistake",
                "a fatal error",
                "the fatal mistake",
                "the fatal error",
                "fatal",
                "suicide",
                "suicidal",
                "a losing mistake",
                "a losing blunder",
                "a fatal blunder",
                "the decisive blunder",
                "a decisive mistake",
                "a decisive error",
            )
        }
    },
    vocabulary=frozenset(
        [
            "lose",
            "loses",
            "lost",
            "losing",
            "throw",
            "throws",
            "threw",
            "thrown",
            "throwing",
            "cost",
            "costs",
            "costing",
            "fatal",
            "decisive",
            "suicide",
            "suicidal",
            "game",
        ]
    ),
    frames=FRAMES,
    tests={"agent": SLOTS["played"]},
    read=read,
    check=check,
)
