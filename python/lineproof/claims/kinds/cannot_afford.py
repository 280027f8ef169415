"""Moves that a side would like to play and cannot afford."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import edge_of_two
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, taught, told, weigh
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, members
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import castling, played
from lineproof.claims.reference import Reference
from lineproof.claims.worded import fitting

LEAST = 10
"""Points that a move costs at least which a side cannot afford."""

_PREY = frozenset({"poisoned", "taboo", "off limits"})
"""What is said of a piece or pawn that it does not pay to take."""
_AFFORDING = (
    "{side} <afford> {choice} if modal=|can|could|may",
    "{side} <afford to play/choose/go for> {choice}",
    "{side} <afford to castle> ; castle=yes",
    "{side} <have to castle> {above} ; castle=yes",
    "{side} <allow/permit> {oneself} {choice} if modal=|can|could|may",
    "{side} <have> time for {choice}",
    "{side} <have> time for {kind} such_as {choice}",
    "<~> time for {choice}",
    "{side} <have to play/choose/go for> {choice} {above}",
    "<be to play/choose/go for> {choice} {above}",
)
FRAMES = (
    *(f"{frame} ; lacks=yes if negated" for frame in _AFFORDING),
    *(f"{frame} ; afford=yes" for frame in _AFFORDING),
    "{side} <afford> {it} ; that=yes if negated modal=can|could|may",
    "{side} <have> time for {it} ; that=yes if negated",
    "{deed} <=> {unaffordable} [for {side}]",
    "{deed} <=> luxury [for {side}]",
    "{deed} <take too long>",
    "{prey} <=> {poisoned}",
    "<be:poison> {prey}",
    "[{taker}] <capture> {prey} if modal=can|may negated",
    "{side} <capture> {prey} if modal=can|may negated",
    "{taker} <capture/take_on> {square} if modal=can|may negated",
    "{taker} <capture/take_on> (on) {square} if modal=can|may negated",
    "{side} <have to capture> {prey} {above} if negated",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    side = here.side(slots["side"]) if "side" in slots else None
    if "that" in slots:
        first = _said_before(here)
        if side != first.side:
            raise Unread("the move is not that side's")
        return [here.claim(KIND.id, first.side, spot=first.before, move=first.uci)]
    if "castle" in slots:
        move: Named = castling(here, side or here.board.turn)
    elif "prey" in slots:
        taker = slots.get("taker")
        if taker in {"it", "he", "that", "which"}:
            raise Unread("it is not clear what may not take")
        by = f" with {taker}" if taker is not None else ""
        taking = f"taking {slots['prey']}{by}"
        coming = fitting(here.spot, taking)
        told = Reference.read(slots["prey"]).square is not None or side == here.board.turn
        if len(coming) == 1 and told:
            move = Named(here.spot, coming[0], here.board.turn)  # not the capture that led here
        else:
            move = played(here, taking)
    elif "taker" in slots:
        move = played(here, f"taking on {slots['square']} with {slots['taker']}")
    else:
        move = played(here, slots.get("deed", slots.get("choice")))
    text = slots.get("deed", slots.get("choice"))
    if side is not None and side != move.side and text is not None and not MOVE.fullmatch(text):
        move = played(
            here, f"{side} {text}"
        )  # "grabbing this pawn is something White cannot afford"
    if side is not None and side != move.side:
        raise Unread("the move is not that side's")
    return [
        here.claim(KIND.id, move.side, spot=move.before, negated="afford" in slots, move=move.uci)
    ]


def _said_before(here: Here) -> Named:
    """The first move that the sentence itself has played, "if he takes it, we take on d1, so he cannot afford that".

    :raises Unread: when it has played none.
    """
    shown = tuple(here.place.moves())
    own = here.spot.moves
    first = next((n for n, move in enumerate(own) if n >= len(shown) or move != shown[n]), None)
    if first is None or first < len(shown) - 1:
        raise Unread("it is not clear what cannot be afforded")
    before = here.spot.earlier(len(own) - first)
    return Named(before, own[first], before.board.turn)


def outcome(best: int, points: int) -> Outcome:
    """What best and played say of a move that is said to be too costly."""
    if best < LOST:
        return Outcome.UNSETTLED
    return Outcome.HOLDS if best - points >= LEAST else Outcome.FAILS


def check(claim: Claim, ask: Ask) -> Judgement:
    move = claim.params["move"]
    cost = weigh(ask, claim.spot, move)
    said = outcome(cost.best, cost.played)
    because, second = told(cost), taught(cost, claim.spot)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays ({cost.best} of 100), so what {cost.san} costs is not counted."
    return Judgement(
        said, because, cost.line, claim.spot, cost.numbers, edge_of_two(cost.best, cost.played, outcome),
        f"{title(cost.side)} can afford {cost.san}." if said is Outcome.FAILS else None,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side),), second=second,
    )  # fmt: skip


KIND = Kind(
    id="cannot-afford",
    title="Cannot afford",
    version=1,
    definition="The move is legal and costs its side 10 points or more, each move searched alone at the same nodes. With the best move below 15 points nothing is counted.",
    formula=f"cost = best - played; holds: cost >= {LEAST}; unsettled: best < {LOST}; fails: cost < {LEAST}",
    slots={
        "unaffordable": dict.fromkeys(members("unaffordable", JUDGEMENTS) - _PREY, True),
        "poisoned": dict.fromkeys(_PREY, True),
    },
    tests={
        "kind": lambda n: n.text if n.head == "move" and n.plural else None,
        "choice": lambda n: deed(n) if n.type != "pronoun" else None,
        "above": lambda n: n.text if n.head == "time" else None,
        "oneself": lambda n: n.text if n.type in {"side", "pronoun"} else None,
        "it": lambda n: (
            n.text if n.type == "pronoun" and n.head in {"it", "that", "this"} else None
        ),
        "prey": lambda n: (
            n.text if n.type == "piece" and not n.plural and n.head != "king" else None
        ),
        "taker": lambda n: (
            n.text
            if (n.type == "piece" and not n.plural)
            or (n.type == "pronoun" and n.head in {"it", "that", "which"})
            else None
        ),
    },
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
