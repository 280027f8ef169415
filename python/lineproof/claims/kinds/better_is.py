"""Better moves: one move is better than another."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import edge_of_two, seen_from, spoken
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import SAFE, shown, spelled
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.phrase import MOVE
from lineproof.claims.played import PLAYED, follows, played

PHRASES = (
    "{move} <be> [{very}] {better} [here|now] [for {side}]",
    "{move} <be> [{very}] {better} than {agent} [here|now]",
    "{move} <be> to be preferred [to {agent}]",
    "{move} <improve> on {agent}",
    "{move} <be> [{very}] an improvement [on {agent}|over {agent}]",
    "[{very}] {better} <be> {move}",
    "(a|the) {better} (move|reply|answer|choice|way|try|defence|continuation|idea) <be> {move}",
    "{move} <be> [{very}] (a|the) {better} (move|reply|answer|choice|way|try|defence|continuation|idea) [than {agent}]",
    "(here|there) {move} <be> [{very}] {better}",
    "it <be> [{very}] {better} to play {move} [than {agent}]",
    "{side} <do> better (with|to play) {move} [than {agent}]",
    "{side} (should|had to|ought to) (have played|have chosen|have preferred|have gone for) {move} [instead of {agent}]",
    "{side} (should|ought to) have (played|chosen|preferred) {move} instead",
    "(i|we) prefer {move} to {than}",
    "an improvement [on {agent}] <be> {move}",
)


FRAMES = (
    "{move} <=> better [than {agent}]",
    "{move} <=> improvement [(on|over|upon) {than}]",
    "{move} <=> better [than {than}]",
    "{move} <improve_on> {agent}",
    "{side} <have> better_move (in|with) {move}",
    "{move} <=> better_move [than {than}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    move = here.named(slots["move"])
    if "side" in slots and here.side(slots["side"]) != move.side:
        raise Unread("the move is not that side's")
    worse = _worse(here, move, slots.get("agent", slots.get("than")))
    if worse == move.uci:
        raise Unread("a move is not compared with itself")
    return [here.claim(KIND.id, move.side, spot=move.before, move=move.uci, than=worse)]


def _worse(here: Here, move: Named, text: str | None) -> str:
    """The move (UCI) that it is compared with: the one named, else the one played or shown in its place."""
    if text is not None:
        if MOVE.fullmatch(text) is None:
            other = played(here, text)
            if other.before.board.key != move.before.board.key:
                raise Unread(f"{text} is not played in the same position")
            return other.uci
        return follows(move.before, text)
    if move.before.moves != here.spot.moves:
        return here.last().uci
    following = here.shown_next
    if following is None:
        raise Unread("it is not said what it is better than, and no move is shown there")
    return following


def outcome(better: int, worse: int) -> Outcome:
    """What the points of the two moves say of the first being better."""
    if better - worse > SAFE:
        return Outcome.HOLDS
    return Outcome.FAILS if worse - better > SAFE else Outcome.UNSETTLED


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move, than = claim.spot, claim.params["move"], claim.params["than"]
    side, board = spot.board.turn, spot.board
    one, two = ask.move(spot, move), ask.move(spot, than)
    better, worse = seen_from(side, one.points), seen_from(side, two.points)
    said = outcome(better, worse)
    gap = better - worse
    names = board.san(move), board.san(than)
    score = f"after {names[0]} {spoken(side, better)}, after {names[1]} {spoken(side, worse)}"
    if said is Outcome.HOLDS:
        because = f"{names[0]} gains {spelled(gap)} on {names[1]}: {score}."
    elif said is Outcome.FAILS:
        because = f"{names[0]} costs {spelled(-gap)} against {names[1]}: {score}."
    else:
        because = f"{names[0]} and {names[1]} are within {SAFE} points of each other: {score}."
    instead = f"{names[1]} is better than {names[0]}." if said is Outcome.FAILS else None
    return Judgement(
        said, because, shown(spot, one.moves, better), spot, {"points": better, "points of the other": worse, "gain": gap},
        edge_of_two(better, worse, outcome), instead, said is Outcome.UNSETTLED,
        marks=(Mark("move", (move[:2], move[2:4]), side),),
    )  # fmt: skip


_BETTER = (
    "better", "much better", "far better", "clearly better", "a lot better", "slightly better", "a little better", "a bit better", "even better", "stronger", "much stronger", "even stronger", "more accurate", "more precise",
    "preferable", "more exact", "sounder", "simpler and better", "still better", "rather better", "considerably stronger", "superior",
)  # fmt: skip

KIND = Kind(
    id="better-is",
    title="Better move",
    version=1,
    definition=(
        "The better move scores more than 5 points more than the other, each searched alone at the same nodes; within 5 points either way is unsettled, for two moves so close are equally good. "
        "Without a second move it is compared with the move played, or shown, in its place."
    ),
    formula=f"gain = points(the move) - points(the other); holds: gain > {SAFE}; unsettled: -{SAFE} <= gain <= {SAFE}; fails: gain < -{SAFE}",
    phrases=PHRASES,
    patterns={"agent": PLAYED, "than": PLAYED},
    slots={"better": {k: k for k in _BETTER}},
    vocabulary=frozenset(
        [
            "better",
            "stronger",
            "accurate",
            "precise",
            "preferable",
            "exact",
            "sounder",
            "superior",
            "preferred",
            "prefer",
            "improve",
            "improves",
            "improved",
            "improvement",
            "should",
            "had",
            "ought",
        ]
    ),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
