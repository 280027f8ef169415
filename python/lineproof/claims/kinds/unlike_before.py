"""Unlike before: a move that worked elsewhere in the lesson and does not here, or the other way round."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import defenders, names, other, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.comparing import line_of
from lineproof.claims.cost import Cost, weigh
from lineproof.claims.elsewhere import just_played_or, labels, same_move, spots_before
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.passing import POINTS
from lineproof.claims.tracks import hit

FRAMES = tuple(
    f"{said} {than}{fixed}"
    for said, fixed in (
        ("{move} <work/succeed>", ""),
        ("{move} <fail/lose/misfire>", " ; fails=yes"),
        ("{move} <=> {good}", ""),
        ("{move} <=> {bad}", ""),
        ("{move} <hit/attack/threaten> {none}", ""),
    )
    for than in ("{unlike}", "unlike {line}")
)
_UNLIKE = dict.fromkeys(
    ("this time", "unlike before", "unlike last time", "unlike then", "contrary to before"), True
)
_GOOD = dict.fromkeys(
    (
        "good",
        "possible",
        "playable",
        "strong",
        "fine",
        "right",
        "the right move",
        "a good move",
        "correct",
        "sound",
        "in order",
        "on",
        "best",
        "safe",
    ),
    True,
)
_BAD = dict.fromkeys(
    (
        "bad",
        "wrong",
        "a mistake",
        "a blunder",
        "an error",
        "weak",
        "no good",
        "impossible",
        "out of the question",
        "too slow",
        "too risky",
        "dubious",
        "unsound",
        "premature",
        "a bad move",
        "pointless",
        "useless",
    ),
    True,
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    named = just_played_or(here, slots.get("move"))
    verb = slots.get("verb")
    if verb is not None and (verb.past or verb.modal == "must"):
        raise Unread("said of another position")
    found = same_move(here, named, slots.get("line"))
    hits = "none" in slots
    good = slots.keys().isdisjoint({"none", "bad", "fails"})
    if verb is not None and verb.negated:
        if hits:
            raise Unread("it is not clear what is denied")
        good = not good
    return [
        here.claim(
            KIND.id, named.side, spot=named.before, move=named.uci, good=good, hits=hits,
            elsewhere=spots_before(found), at=labels(found) if found else "",
        )
    ]  # fmt: skip


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, uci, elsewhere = claim.spot, claim.params["move"], claim.params["elsewhere"]
    san = spot.board.san(uci)
    marks = (Mark("move", (uci[:2], uci[2:4]), claim.side or "white"),)
    if not elsewhere:
        because = f"{title(claim.side or 'white')} plays {san} nowhere else in the lesson, so there is nothing to compare it with."
        return Judgement(Outcome.UNSETTLED, because, (), spot, marks=marks)
    if claim.params["hits"]:
        return _hits(claim)
    here = weigh(ask, spot, uci)
    there = [weigh(ask, other_, _same(other_, spot, uci)) for other_ in elsewhere[:3]]
    known = [c for c in there if c.counted]
    if not here.counted or not known:
        return Judgement(Outcome.UNSETTLED, f"What {san} costs cannot be counted.", (), spot)
    good: bool = claim.params["good"]
    pick = max(known, key=lambda c: c.points) if good else min(known, key=lambda c: c.points)
    said = _outcome(good, here, pick)

    def with_here(best: int, played: int) -> Outcome:
        return _outcome(good, replace(here, best=best, played=played), pick)

    def with_there(best: int, played: int) -> Outcome:
        return _outcome(good, here, replace(pick, best=best, played=played))

    near = min(
        edge_of_two(here.best, here.played, with_here),
        edge_of_two(pick.best, pick.played, with_there),
    )
    because = f"Here {san} costs {here.points} points, after {claim.params['at']} {pick.points}."
    return Judgement(
        said, because, here.line, spot, {"cost": here.points, "elsewhere": pick.points}, near,
        because if said is Outcome.FAILS else None, one_off=said is Outcome.UNSETTLED, marks=marks,
    )  # fmt: skip


def _same(there: Spot, here: Spot, uci: str) -> str:
    """The same piece's move to the same square: from where the piece stands there."""
    letter = here.board.piece_at(uci[:2])
    return next(
        m
        for m in there.board.legal_moves()
        if m[2:] == uci[2:] and there.board.piece_at(m[:2]) == letter
    )


def _outcome(good: bool, here: Cost, there: Cost) -> Outcome:
    """Recurring idea: a cost of at most 5 at one place and of 15 or more at the other."""
    fine, poor = (here, there) if good else (there, here)
    if is_safe(fine.best, fine.played) and poor.points >= POINTS:
        return Outcome.HOLDS
    if fine.points >= POINTS or is_safe(poor.best, poor.played):
        return Outcome.FAILS
    return Outcome.UNSETTLED


def _hits(claim: Claim) -> Judgement:
    """Whether the piece moved attacks nothing that must be attended to here, and did elsewhere."""
    spot, uci, elsewhere = claim.spot, claim.params["move"], claim.params["elsewhere"]
    san = spot.board.san(uci)
    here = _attacked(spot, uci)
    there = [_attacked(other_, _same(other_, spot, uci)) for other_ in elsewhere]
    if here:
        because = f"{san} attacks {names(spot.play(uci).board, here)} here."
        return Judgement(Outcome.FAILS, because, (), spot, instead=because)
    if not any(there):
        because = f"{san} attacks nothing of note here, and did not after {claim.params['at']}."
        return Judgement(Outcome.FAILS, because, (), spot, instead=because)
    because = f"{san} attacks nothing here that is worth more or unprotected; after {claim.params['at']} it did."
    return Judgement(Outcome.HOLDS, because, (), spot)


def _attacked(spot: Spot, uci: str) -> list[str]:
    after, at = spot.play(uci).board, uci[2:4]
    enemy = pieces(after, other(spot.board.turn))
    by = after.piece_at(at) or "p"
    return [
        t
        for t in after.attacks(at)
        if t in enemy and hit(by, (after.piece_at(t) or "p").lower(), defenders(after, t)[0])
    ]


KIND = Kind(
    id="unlike-before",
    title="Unlike before",
    version=1,
    definition=(
        "The same piece's move to the same square costs at most 5 points where it is said to work and 15 or more where it is said not to, here and elsewhere in the lesson (in the line named); it fails where one of the two is the other way round. "
        "'Hits nothing' asks that the piece moved attacks nothing that is worth more or unprotected here, and did elsewhere. Where the lesson plays the move nowhere else, it is unsettled."
    ),
    formula=f"works: safe move; does not: cost >= {POINTS}; holds: both as said; fails: either the other way round; unsettled between",
    frames=FRAMES,
    slots={"good": _GOOD, "bad": _BAD, "unlike": _UNLIKE},
    tests={
        "line": line_of,
        "none": lambda n: n.head if n.head in {"nothing", "thin air"} else None,
    },
    read=read,
    check=check,
)  # fmt: skip
