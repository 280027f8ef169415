"""Space: whose pawns are further on, and whose men reach further."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import other, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import HAVE, brings, named_after, named_side
from lineproof.claims.structure import FILES, WINGS, pawns, rank
from lineproof.claims.tense import answer, spots, squares, when
from lineproof.claims.where import CENTRE, WING, Where
from lineproof.engine import Board

MARGIN = 3
"""Squares of reach that one side must have more than the other before it counts as more."""

_ON = "(on|in) (the|his|her|our|your|their) {wing}"
_MORE = "({more} (space|room|territory|elbow room)|{edge})"
PHRASES = (
    f"{{side}} {HAVE} [{{very}}] {_MORE} [{_ON}|to work with|than {{whom}}|behind {{whose}} pawns]",
    f"{{side}} <be> [{{very}}] ahead in space [{_ON}]",
    f"{{side}} <gain/win/grab/take/seize> [{{very}}] [{{some}}] space [{_ON}]",
    f"[{{agent}}] <gain/win/grab/take/seize/claim> [{{side}}] [{{very}}] [{{some}}] space [for {{side}}] [{_ON}]",
    f"[{{agent}}] <give/leave/grant/promise> {{side}} [with] [{{very}}] {_MORE} [{_ON}]",
    f"<ing:gain/win/grab/take/seize> [{{some}}] space [for {{side}}] [{_ON}]",
    f"<ing:give/leave> {{side}} [with] {_MORE} [{_ON}]",
    f"with {_MORE} [for {{side}}] [{_ON}]",
    "{side} <lack/be short of> (space|room)",
    f"{{side}} <be> [{{very}}] {{cramped}} [{_ON}]",
    "{whose} (position|camp|pieces|game) <be> [{very}] {cramped}",
    f"{{side}} {HAVE} [{{very}}] (less|little) (space|room) [{_ON}]",
    f"{{side}} {HAVE} a [{{very}}] {{cramped}} (position|game)",
    f"{_MORE} [{_ON}] for {{side}}",
    f"{{side}} <have/enjoy> [{{very}}] the {{advantage}} in (space|territory) [{_ON}]",
)


FRAMES = (
    "{side} <have> more space (on|in) {wing} [(with|for) {anything}]",
    "{side} <have> {flank_space}",
    "{side} <have/control/command> more space [(on|in) {wing}]",
    "{side} <have> {space_edge} [(on|in) {wing}]",
    "{side} <have> advantage in space [(on|in) {wing}]",
    "[{agent}] <give> {side} {space_edge} [(on|in) {wing}]",
    "{side} <have> lack of space",
    "piece <lack> space",
    "[{anything}] <give> {side} more space [(on|in) {wing}]",
    "<*> advantage in space",
    "<*> {space_edge}",
    "{side} <have> space (on|in) {wing}",
    "{side} <have> space",
    "{side} <have> more space [(with|for) {anything}]",
    "[{agent}] <win/make> space",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    words = set(here.said.split())
    slots.setdefault("wing", slots.get("flank_space"))
    takes = bool(words & {"gains", "wins", "grabs", "takes", "seizes", "claims", "gaining", "winning", "grabbing", "taking"})  # fmt: skip
    asked = when(here, slots, brings=brings(here, slots))
    at = named_after(here, slots)
    less = "cramped" in slots or (
        "more" not in words and bool(words & {"less", "little", "lack", "lacks", "short"})
    )
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
    phrases=PHRASES,
    slots={
        "more": dict.fromkeys(
            ("more", "much more", "a lot more", "a little more", "a bit more", "slightly more", "far more", "plenty of", "lots of", "some extra", "extra", "considerably more", "clearly more", "the most"), True
        ),
        "edge": dict.fromkeys(
            ("a space advantage", "the space advantage", "an advantage in space", "an edge in space", "a spatial advantage", "a spatial edge", "a spatial plus", "a small space advantage", "a big space advantage", "a clear space advantage", "a large space advantage", "a slight space advantage", "a space plus", "the advantage in space", "a huge space advantage", "a territorial advantage", "the freer game", "the freer position"), True
        ),
        "some": dict.fromkeys(("some", "more", "a lot of", "a bit of", "a little", "valuable", "plenty of", "useful", "important", "lots of"), True),
        "cramped": dict.fromkeys(("cramped", "a little cramped", "a bit cramped", "rather cramped", "very cramped", "quite cramped", "somewhat cramped", "slightly cramped", "short of space", "short of room", "squeezed", "terribly cramped"), True),
        "advantage": dict.fromkeys(("advantage", "edge", "upper hand"), True),
    },
    patterns={"wing": rf"(?:{WING}|{CENTRE})", "whom": r" (?:white|black|him|her|us|you|the opponent)"},
    vocabulary=frozenset({"space", "room", "territory", "cramped", "spatial", "squeezed", "territorial", "freer"}),
    frames=FRAMES,
    tests={
        "space_edge": lambda n: n.head if n.head in {"advantage", "edge", "plus"} and "space" in n.adjectives else None,
"flank_space": lambda n: next((a for a in n.adjectives if a in {"kingside", "queenside"}), None) if n.head == "space" else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
