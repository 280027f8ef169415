"""What happens if a side does nothing."""

from __future__ import annotations

from typing import Any

from lineproof.claims.amounts import LEAST, Amount
from lineproof.claims.bands import edge_of_two
from lineproof.claims.board import other, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import SAFE
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.passing import Gain, gained, parsed
from lineproof.claims.slot import SLOTS

PROFIT = 5
"""Points that a move after the pass gains at least over best play without it (common practice)."""


FRAMES = (
    "[{side}] <play/push/capture> {move} ; passed=yes",
    "[{side}] <move/play/push> (with|to) {move} ; passed=yes",
    "{first} <follow/come/be> [next] ; passed=yes",
    "{first} <=> next ; passed=yes",
    "[{side}] <win> {won} [(with|by) {move}] ; passed=yes",
    "[{side}] <capture> (on|at) {square} ; passed=yes",
    "{man} <move/go/come/push/advance> (on|to|into|onto) {square} [with {check}] ; passed=yes goes=yes",
    "{side} <castle> ; passed=yes castles=yes",
    "{side} <bring/put/play/place> {man} (on|to|into|onto) {square} [with {check}] ; passed=yes goes=yes",
    "[{side}] <take_on> {square} ; passed=yes",
    "{move} <win> {won} ; passed=yes",
    "{move} <=> {nasty} [(for|to) {side}] ; passed=yes",
)
"""Said of the move after "if Black does nothing", "let White pass and", "otherwise"."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if here.idle is None:
        raise Unread("nobody has been let pass")
    if verb is not None and verb.modal in {"can", "may", "might", "could"}:
        raise Unread("it is not said to follow")
    if verb is not None and verb.negated and "won" not in slots:
        raise Unread("it is not said to follow")
    here = here.at(here.idle)
    if "first" in slots:
        slots["move"] = slots["first"].split()[0]
    if "nasty" in slots:
        slots.pop("side", None)
    if "won" in slots:
        slots["amount"] = Amount.read(slots["won"]).name
    if verb is not None and verb.past:
        raise Unread("said of an earlier moment")
    idler = here.board.turn
    side = here.side(slots["side"]) if "side" in slots else other(idler)
    if side == idler:
        raise Unread("it is that side's own move")
    move, square = slots.get("move"), slots.get("square")
    if "goes" in slots:
        move, square = _going(here, side, slots["man"], slots["square"]), None
    if "castles" in slots:
        move = _castles(here)
    free = here.spot.passed()
    if free is not None and move is not None and parsed(free, move) is None:
        raise Unread(f"{move} cannot be played after a pass")
    if square is not None and here.board.piece_at(square) is None:
        raise Unread(f"nothing stands on {square}")
    return [here.claim(KIND.id, side, move=move, amount=slots.get("amount"), square=square)]


def _going(here: Here, side: str, man: str, square: str) -> str:
    """The move (SAN) of a piece to a square after the pass.

    :raises Unread: when there is none, or several.
    """
    free = here.spot.passed()
    found = [
        uci
        for uci in (free.board.legal_moves() if free is not None else ())
        if uci[2:4] == square and free is not None and uci[:2] in here.find(man, side)
    ]
    if len(found) != 1 or free is None:
        raise Unread(f"it is not clear which move of {man!r} is meant")
    return free.board.san(found[0])


def _castles(here: Here) -> str:
    """The one way to castle after the pass."""
    free = here.spot.passed()
    ways = (
        [m for m in free.board.legal_moves() if free.board.san(m).startswith("O-O")]
        if free is not None
        else []
    )
    if len(ways) != 1 or free is None:
        raise Unread("it is not clear how is castled")
    return free.board.san(ways[0])


def check(claim: Claim, ask: Ask) -> Judgement:
    side, spot = claim.side or "white", claim.spot
    opponent, amount = title(other(side)), claim.params["amount"]
    free = spot.passed()
    if free is None:
        because = f"{opponent} is in check and cannot pass."
        return Judgement(Outcome.UNSETTLED, because)
    gain = gained(ask, spot, side, _allowed(claim, free.board.legal_moves()))
    if gain is None:
        because = f"If {opponent} passes, {title(side)} cannot play it."
        return Judgement(Outcome.FAILS, because, (), free, instead=because)
    least = LEAST[amount][0] if amount is not None else None

    def holds(points: int, base: int) -> bool:
        if gain.mates:
            return True
        if least is not None:
            return gain.wins(amount, least)
        return gain.best - points <= SAFE and points - base >= PROFIT

    said = holds(gain.points, gain.base)
    near = 100.0 if gain.mates else edge_of_two(gain.points, gain.base, holds)
    if least is not None and least - 1 <= gain.material < least:
        near = 1.0
    because = f"If {opponent} passes, {gain.san} {_spoken(gain)}."
    numbers = {"material": gain.material, "points": gain.points, "without the pass": gain.base}
    return Judgement(
        Outcome.HOLDS if said else Outcome.FAILS, because, gain.line, free, numbers, near,
        None if said else because, marks=(Mark("move", (gain.uci[:2], gain.uci[2:4]), side),),
    )  # fmt: skip


def _allowed(claim: Claim, legal: list[str]) -> list[str] | None:
    free = claim.spot.passed()
    if claim.params["move"] is not None and free is not None:
        uci = parsed(free, claim.params["move"])
        return [] if uci is None else [uci]
    if claim.params["square"] is not None:
        return [m for m in legal if m[2:4] == claim.params["square"]]
    return None


def _spoken(gain: Gain) -> str:
    if gain.mates:
        return "mates" if len(gain.line) == 1 else "leads to mate"
    worth = "wins no material" if gain.material < 1 else f"wins material worth {gain.material}"
    more = gain.points - gain.base
    said = f"{worth} and {'gains' if more >= 0 else 'loses'} {abs(more)} points over best play without the pass"
    short = gain.best - gain.points
    return said + (f"; another move is {short} points better" if short > SAFE else "")


KIND = Kind(
    id="pass-consequence",
    title="What happens after a pass",
    version=1,
    definition=(
        "If the opponent passes, the move named is sensible (costs at most 5 points) and leaves its side at least 5 points better than best play without the pass, or mates; "
        "where an amount of material is named, best play after the pass wins that amount. Not asked of a side in check."
    ),
    formula=f"gain = points(after the pass) - points(without it); holds: cost <= {SAFE} and gain >= {PROFIT}, or mate, or the amount named is won",
    frames=FRAMES,
    tests={
        "first": lambda n: n.text if n.type in {"move", "square"} else None,
        "won": SLOTS["amount"],
        "man": lambda n: n.text if n.type == "piece" and not (n.plural or n.parts) else None,
        "check": lambda n: n.text if n.head == "check" else None,
    },
    slots={
        "nasty": dict.fromkeys(
            ("disagreeable", "unpleasant", "nasty", "strong", "dangerous", "awkward", "annoying", "deadly", "painful", "embarrassing"), True
        )
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
