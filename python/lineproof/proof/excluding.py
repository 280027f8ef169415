"""Excluding: why two claims of one position cannot both be true."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims import Claim, Outcome, kind_of
from lineproof.claims.bounds import is_good, move_of, others_of

from .finding import Finding

_BEST = re.compile(r"\b(?:best|strongest)\b")
_ONE_OF_THE_BEST = re.compile(r"\b(?:one of|among|second|third|next|nothing|not)\b", re.IGNORECASE)
_SAID_ONLY = frozenset({"named", "glyph", "scope", "either", "lasting"})
"""Parameters that keep the author's words, or that a denial leaves out."""
_OPPOSITES = (
    frozenset({"open-position", "closed-position"}),
    frozenset({"mate", "stalemate"}),
    frozenset({"check", "stalemate"}),
)


Why = tuple[str, str] | None
"""The key of a rule and the reason in one sentence; None where both may be true."""


def excluding(one: Finding, other: Finding) -> Why:
    """What the first rule that applies says of two findings of the same position."""
    for rule in (_denial, _opposites, _counts, _won_and_level, _best, _move, _only):
        why = rule(one, other) or rule(other, one)
        if why is not None:
            return why
    return None


def _denial(one: Finding, other: Finding) -> Why:
    first, second = one.claim, other.claim
    if first.kind != second.kind or first.negated == second.negated or first.side != second.side:
        return None
    if _both_hold(one, other) or _meant(first) != _meant(second):
        return None
    return "denial", "One says what the other denies, of the same position."


def _meant(claim: Claim) -> dict[str, Any]:
    return {k: v for k, v in claim.params.items() if k not in _SAID_ONLY}


def _both_hold(one: Finding, other: Finding) -> bool:
    return one.outcome is Outcome.HOLDS and other.outcome is Outcome.HOLDS


def _opposites(one: Finding, other: Finding) -> Why:
    kinds = frozenset({one.claim.kind, other.claim.kind})
    if kinds not in _OPPOSITES or one.claim.negated or other.claim.negated:
        return None
    if _both_hold(one, other):
        return None  # a check that may come, a family of openings
    titles = sorted(kind_of(kind).title.lower() for kind in kinds)
    return "opposites", f"One says {titles[0]}, the other {titles[1]}, of the same position."


def _counts(one: Finding, other: Finding) -> Why:
    first, second = one.claim, other.claim
    if first.kind != second.kind or first.negated or second.negated or _both_hold(one, other):
        return None
    said, meant = first.params, second.params
    match first.kind:
        case "material-count":
            differ = (first.side, said["amount"], said.get("pawns")) != (second.side, meant["amount"], meant.get("pawns"))  # fmt: skip
            same_side = first.side == second.side
            levels = [p["amount"] == "level" for p in (said, meant)]
            if "pawns" in (said["amount"], meant["amount"]) and said["amount"] != meant["amount"]:
                return None
            if not differ or (same_side and not any(levels) and "material" in (said["amount"], meant["amount"])):  # fmt: skip
                return None
            if all(levels):
                return None
        case "attacked-count" | "defended-count":
            if said["at"] != meant["at"] or first.side != second.side:
                return None
            counts = said.get("n"), meant.get("n")
            if None in counts or counts[0] == counts[1]:
                return None
        case "development-lead":
            if _lead(first) & _lead(second):
                return None
        case _:
            return None
    return "counts", "They count differently, in the same position."


def _lead(claim: Claim) -> set[int]:
    """The leads of White that a claim of development leaves open."""
    n = claim.params["n"]
    if n is None:
        own = set(range(2, 20))
    elif n == 0:
        own = {-1, 0, 1}
    else:
        own = set(range(max(1, n - 1), n + 2))
    return own if claim.side == "white" else {-lead for lead in own}


def _won_and_level(one: Finding, other: Finding) -> Why:
    won, count = one.claim, other.claim
    if won.kind != "wins-material" or count.kind != "material-count":
        return None
    if won.negated or count.negated or not won.params.get("done"):
        return None
    ahead = count.params["amount"] not in {"level", "pawns"} and count.side == won.side
    if ahead or count.params["amount"] == "pawns" or _both_hold(one, other):
        return None
    if float(one.judgement.numbers.get("before", 0)) < 0:
        return None  # what was won made good a loss
    return "won and level", "One says that material has been won, the other that it is not so."


def _best(one: Finding, other: Finding) -> Why:
    first, second = _best_move(one.claim), _best_move(other.claim)
    if first is not None and second is not None and first != second:
        return "best move", f"In the same position one calls {_san(one, first)} the best move, the other {_san(other, second)}."  # fmt: skip
    if one.claim.kind != "better-is" or one.claim.negated:
        return None
    move, than = one.claim.params["move"], one.claim.params["than"]
    if other.claim.kind == "better-is" and not other.claim.negated:
        turned = (other.claim.params["than"], other.claim.params["move"]) == (move, than)
        return ("best move", "Each calls the other's move the better one.") if turned else None
    if than == second:
        return "best move", f"One calls {_san(one, move)} better than {_san(one, than)}, the other {_san(other, than)} the best."  # fmt: skip
    return None


def _best_move(claim: Claim) -> str | None:
    """The move that the words call the best, or the only one."""
    if claim.negated:
        return None
    if claim.kind == "only-move" and not claim.params.get("legal"):
        return str(claim.params["move"])
    said = claim.kind == "move-mark" and _BEST.search(claim.words) is not None
    if said and not _ONE_OF_THE_BEST.search(claim.words):
        return str(claim.params["move"])
    return None


def _san(finding: Finding, uci: str) -> str:
    return finding.claim.spot.board.san(uci)


def _move(one: Finding, other: Finding) -> Why:
    first, second = move_of(one.claim), move_of(other.claim)
    if first is None or second is None or first.move != second.move or first.pairs & second.pairs:
        return None
    return "one move", f"What they say of {_san(one, first.move)} cannot both be true."


def _only(one: Finding, other: Finding) -> Why:
    only, second = others_of(one.claim), move_of(other.claim)
    if second is None:
        return None
    forced = one.claim.params["moves"] if one.claim.kind == "forced" and not one.claim.negated else ()  # fmt: skip
    if forced and second.move not in forced and is_good(other.claim):
        return "only move", f"One calls {' or '.join(_san(one, m) for m in forced)} forced, the other calls {_san(other, second.move)} a good move there."  # fmt: skip
    if only is None or second.move == only.move or only.pairs & second.pairs:
        return None
    return "only move", f"One calls {_san(one, only.move)} the only move, the other lets {_san(other, second.move)} be played there."  # fmt: skip
