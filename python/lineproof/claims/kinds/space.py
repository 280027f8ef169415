"""Space: whose pawns are further on, and whose men reach further."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import other, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS, members
from lineproof.claims.noun import Noun
from lineproof.claims.owner import brings, named_after, named_side
from lineproof.claims.structure import FILES, WINGS, pawns, rank
from lineproof.claims.tense import answer, spots, squares, when
from lineproof.claims.where import Where
from lineproof.engine import Board

MARGIN = 3
"""Squares of reach that one side must have more than the other before it counts as more."""


FRAMES = (
    "{side} <have> more space (on|in) {wing} [(with|for) {anything}]",
    "{side} <have> {flank_space}",
    "{side} <have/control/command> more space [(on|in) {wing}]",
    "{side} <have> {space_edge} [(on|in) {wing}]",
    "{side} <have> advantage in space [(on|in) {wing}]",
    "[{agent}] <give> {side} {space_edge} [(on|in) {wing}]",
    "{side} <have> lack of space ; less=yes",
    "(piece|position|camp) <lack> space ; less=yes",
    "[{anything}] <give> {side} more space [(on|in) {wing}]",
    "<*> advantage in space",
    "<*> {space_edge}",
    "{side} <have> space (on|in) {wing}",
    "{side} <have> space",
    "[{agent}] <give> {side} space",
    "{side} <have> more space [(with|for) {anything}]",
    "[{agent}] <win/make> space [(on|in) {wing}] [for {side}] [(with|by) {move}] ; takes=yes",
    "[{agent}] <capture> space [(on|in) {wing}] ; takes=yes",
    "[{agent}] <occupy> space [(on|in) {wing}] ; takes=yes",
    "{side} <have/control/command/secure/claim> {more_space} [of {board}] [(on|in) {wing}] [(with|for) {anything}]",
    "[{agent}] <give/secure> {side} {more_space} [of {board}] [(on|in) {wing}]",
    "{more_space} <belong to> {side} [of {board}]",
    "{side} <have/control> {less_space} [of {board}] [(on|in) {wing}] ; less=yes",
    "{side} <lack> space [(on|in) {wing}] ; less=yes",
    "{side} <=> {cramped} [(on|in) {wing}] ; less=yes",
    "{side} <be> short of space [(on|in) {wing}] ; less=yes",
    "{side} <=> {cramped} for space ; less=yes",
    "<be:squeeze/cramp/press> {side} [for space] ; less=yes",
    "(position|camp|game|piece) <=> {cramped} [(on|in) {wing}] ; less=yes",
    "{side} <have> {cramped_position} ; less=yes",
    "{side} <be> in space [(on|in) {wing}] +ahead",
    "{side} <lead> in space [(on|in) {wing}]",
    "{side} <have> {freer}",
    "{side} <have> {edge_in} in space [(on|in) {wing}]",
    "<~> {more_space} for {side} [(on|in) {wing}]",
    "<~> {space_edge} for {side} [(on|in) {wing}]",
)


_MORE = frozenset(
    {
        "more",
        "extra",
        "greater",
        "larger",
        "bigger",
        "additional",
        "most",
        "enough",
        "ample",
        "lion 's",
    }
)
_LESS = frozenset({"less", "lesser", "little", "smaller", "least", "insufficient"})
_ROOM = members("space", NOUNS)
_SHARE = frozenset({"share", "part", "half", "slice", "portion"})


def _room(noun: Noun, amounts: frozenset[str]) -> str | None:
    """Room, or a share of the board, of such an amount: "more elbow room", "the lesser share"."""
    if noun.no or noun.head not in _ROOM | _SHARE or noun.type != "noun":
        return None
    return noun.head if amounts & set(noun.adjectives) else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    slots.setdefault("wing", slots.get("flank_space"))
    takes, less = "takes" in slots, "less" in slots
    asked = when(here, slots, brings=brings(here, slots))
    at = named_after(here, slots)
    if "side" in slots:
        side = named_side(here, slots["side"])
    elif "whose" in slots and less:
        side = named_side(here, slots["whose"])
    elif "agent" in slots:
        side = here.agent(slots["agent"]).side
    else:
        side = here.implied()
    if "whom" in slots and named_side(here, slots["whom"]) == side:
        raise Unread("a side has no more space than itself")
    return [
        here.claim(
            KIND.id, other(side) if less else side, spot=at.spot, when=asked,
            wing=Where.read(slots.get("wing")).wing, takes=takes,
        )
    ]  # fmt: skip


def frontier(board: Board, side: str, files: str = FILES) -> int:
    """Steps that the foremost pawn of each file has gone, added up; a file without one adds nothing."""
    return sum(
        max((rank(side, p) for p in pawns(board, side, file)), default=2) - 2 for file in files
    )


def reach(board: Board, side: str, files: str = FILES) -> int:
    """Squares beyond the middle of the board that a side attacks and no enemy pawn does (common practice)."""
    enemy = set(pawns(board, other(side)))
    seen = {
        at
        for man in pieces(board, side)
        for at in board.attacks(man)
        if at[0] in files and rank(side, at) > 4
    }
    return sum(not (set(board.attackers(other(side), at)) & enemy) for at in seen)


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    side, wing = claim.side or "white", claim.params["wing"]
    files = FILES if wing is None else WINGS[wing][-1 if wing == "centre" else 0]
    found = [(spot, _lead(spot.board, side, files)) for spot in spots(claim)]
    best = max(found, key=lambda f: f[1])
    spot, lead = best if best[1] > 0 else found[0]
    if claim.params["takes"] and lead <= 0 and len(claim.spot.moves) > 1:
        before = claim.spot.boards[-2]
        gain = frontier(claim.spot.board, side, files) - frontier(before, side, files)
        if gain > 0:
            because = (
                f"With this move {title(side)}'s pawns have gone {_count(gain, 'step')} further."
            )
            return answer(claim, True, because)
    board = spot.board
    enemy = other(side)
    steps = frontier(board, side, files), frontier(board, enemy, files)
    seen = reach(board, side, files), reach(board, enemy, files)
    where = "" if wing is None else f" {'in' if wing == 'centre' else 'on'} the {wing}"
    because = (
        f"{title(side)}'s foremost pawns{where} have gone {_count(steps[0], 'step')} against {steps[1]}, "
        f"and his men reach {_count(seen[0], 'square')} beyond the middle against {seen[1]}."
    )
    numbers: dict[str, int | float | str] = {
        "steps": steps[0], "other steps": steps[1], "reach": seen[0], "other reach": seen[1],
    }  # fmt: skip
    if lead == 0 and steps[0] != steps[1]:
        return Judgement(Outcome.UNSETTLED, f"The two counts disagree: {because[0].lower() if because.startswith('The') else because[0]}{because[1:]}", (), claim.spot, numbers)  # fmt: skip
    return answer(claim, lead > 0, because, at=spot, numbers=numbers, marks=squares(pawns(board, side, files), side))  # fmt: skip


def _lead(board: Board, side: str, files: str) -> int:
    """1 when a side has more space, -1 when less, 0 when the counts are level or disagree."""
    enemy = other(side)
    steps = frontier(board, side, files) - frontier(board, enemy, files)
    seen = reach(board, side, files) - reach(board, enemy, files)
    by_reach = 0 if abs(seen) < MARGIN else seen
    if steps >= 0 and by_reach >= 0:
        return int(steps > 0 or by_reach > 0)
    if steps <= 0 and by_reach <= 0:
        return -1
    return 0


def _count(n: int, noun: str) -> str:
    return f"{n} {noun}{'' if n == 1 else 's'}"


KIND = Kind(
    id="space",
    title="Space",
    version=1,
    definition="Two counts over all files, or those of the wing: the steps that the foremost pawn of each file has gone, and the squares beyond the middle that a side attacks and no enemy pawn does (a difference below three is none). More space: ahead in one and not behind in the other; where they disagree it is unsettled. Gaining space also holds when the move takes the side's pawns further on.",
    formula=f"steps = sum of the foremost pawns' steps; reach = squares beyond the middle attacked and not by an enemy pawn, counted from a difference of {MARGIN}; holds: ahead in one, not behind in the other",
    source="the counts: common practice; the margin and how the two are joined are ours",
    slots={
        "cramped": dict.fromkeys(("cramped", "a little cramped", "a bit cramped", "rather cramped", "very cramped", "quite cramped", "somewhat cramped", "slightly cramped", "short of space", "short of room", "squeezed", "terribly cramped"), True),
    },
    frames=FRAMES,
    tests={
        "more_space": lambda n: _room(n, _MORE),
        "less_space": lambda n: _room(n, _LESS),
        "board": lambda n: n.head if n.head in {"board", "middle", "centre"} else None,
        "cramped_position": lambda n: (
            n.head
            if n.head in {"position", "game", "camp"} and {"cramped", "passive", "squeezed", "restricted"} & set(n.adjectives)
            else None
        ),
        "freer": lambda n: (
            n.head
            if n.head in {"position", "game", "hand", "play"} and {"freer", "roomier", "more spacious"} & set(n.adjectives)
            else None
        ),
        "edge_in": lambda n: n.head if n.head in {"advantage", "edge", "plus", "lead", "upper hand", "pull"} else None,
        
        "space_edge": lambda n: n.head if n.head in {"advantage", "edge", "plus"} and {"space", "spatial", "territorial"} & set(n.adjectives) else None,
"flank_space": lambda n: next((a for a in n.adjectives if a in {"kingside", "queenside"}), None) if n.head == "space" else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
