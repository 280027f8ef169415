"""Castling: who cannot, now or for good."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind

PHRASES = (
    "{side} (can|may) [now|still] (not|never|no longer) [{very}] castle {wing} [any more|any longer|again]",
    "{side} (can|may) [now|still] (not|never|no longer) [{very}] castle [any more|any longer|again]",
    "{side} (has|have) [{very}] (lost|forfeited|given up|spoiled|spoilt|surrendered) (the right|{whose} right|the chance|the possibility) to castle [{wing}]",
    "{side} (has|have) [{very}] (lost|forfeited|given up|surrendered) (castling|castling rights|{whose} castling rights|the castling rights)",
    "{side} (loses|lose|forfeits|forfeit|gives up|give up) (the right|{whose} right|the chance) to castle [{wing}]",
    "{side} {is} [{very}] (unable|not able) to castle [{wing}]",
    "{whose} king (can|may) (not|never|no longer) castle [{wing}]",
    "{whose} king has [{very}] lost (the right|its right|his right) to castle [{wing}]",
    "the king (can|may) (not|never|no longer) castle [{wing}]",
    "{side} (will|can) never castle [{wing}] [again|in this game]",
    "(costs|costing) {side} (the right to castle|castling)",
    "(this|that|it) costs {side} (the right to castle|castling)",
    "(castling|castling {wing}) {is} [{very}] {impossible} [for {side}]",
    "{side} (can|may) [now|still|always] {able} [{wing}] [at once|now]",
    "{side} (has|have) [{very}] no right to castle [{wing}]",
    "(without|losing|having lost) the right to castle",
)
_WINGS = {
    **dict.fromkeys(
        (
            "kingside",
            "king side",
            "on the kingside",
            "short",
            "to the kingside",
            "on the king 's side",
        ),
        "king",
    ),
    **dict.fromkeys(
        (
            "queenside",
            "queen side",
            "on the queenside",
            "long",
            "to the queenside",
            "on the queen 's side",
            "on that side",
        ),
        "queen",
    ),
}

_LASTING = re.compile(
    r"\b(?:any more|any longer|no longer|never|lost|loses|lose|forfeit\w*|given up|gives? up|spoil\w*|surrendered|right|over|gone|again)\b"
)
"""Words that say it is for good."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "side" in slots:
        side = here.side(slots["side"])
    elif "whose" in slots:
        side = here.side(slots["whose"])
    elif here.subject is not None:
        side = here.subject
    else:
        raise Unread("it is not clear who cannot castle")
    can = slots.get("able") is True
    lasting = _LASTING.search(here.said) is not None and not can
    return [here.claim(KIND.id, side, negated=can, wing=slots.get("wing"), lasting=lasting)]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board, side = claim.spot.board, claim.side or "white"
    wings = [claim.params["wing"]] if claim.params["wing"] else ["king", "queen"]
    rights = [w for w in wings if board.may_castle(side, w)]
    who = title(side)
    where = f" {claim.params['wing']}side" if claim.params["wing"] else ""
    possible = _possible(claim, side, rights)
    if claim.params["lasting"] and rights and not _king_must_move(claim, side):
        because = f"{who} still has the right to castle{where}."
        return Judgement(
            Outcome.FAILS, because, (), claim.spot, {"rights": " ".join(rights)}, instead=because
        )
    if not rights:
        because, cannot = f"{who} has no right to castle{where} any more: for good.", True
    elif _king_must_move(claim, side):
        because, cannot = (
            f"{who} is in check and has only king moves: the right is lost by force.",
            True,
        )
    elif possible is None:
        because, cannot = f"{who} is in check and cannot castle now, but keeps the right.", True
    elif not possible:
        because, cannot = f"{who} keeps the right to castle{where}, but cannot castle now.", True
    else:
        because, cannot = f"{who} can castle now: {' or '.join(possible)}.", False
    holds = cannot != claim.negated
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        {"rights": " ".join(rights) or "none"},
        instead=None if holds else because,
    )


def _king_must_move(claim: Claim, side: str) -> bool:
    """Whether every legal move of the side is one of its king, so that the right to castle is lost by force."""
    board = claim.spot.board
    legal = board.legal_moves()
    king = "K" if side == "white" else "k"
    steps = [m for m in legal if board.piece_at(m[:2]) == king and not board.san(m).startswith("O")]
    return board.turn == side and bool(legal) and len(steps) == len(legal)


def _possible(claim: Claim, side: str, rights: list[str]) -> list[str] | None:
    """Castling moves that `side` could play now; None in check."""
    board = claim.spot.board
    if board.turn != side:
        passed = board.passed()
        if passed is None:  # the other side is in check: look at the squares alone
            return ["O-O" if w == "king" else "O-O-O" for w in rights if _free(claim, side, w)]
        board = passed
    if board.in_check:
        return None
    san = [board.san(m) for m in board.legal_moves()]
    return [
        s
        for w, s in (("king", "O-O"), ("queen", "O-O-O"))
        if w in rights and s in {x.rstrip("+#") for x in san}
    ]


def _free(claim: Claim, side: str, wing: str) -> bool:
    board = claim.spot.board
    rank = "1" if side == "white" else "8"
    between = "fg" if wing == "king" else "bcd"
    through = "fg" if wing == "king" else "cd"
    enemy = "black" if side == "white" else "white"
    return all(board.piece_at(f + rank) is None for f in between) and not any(
        board.attackers(enemy, f + rank) for f in through
    )


KIND = Kind(
    id="cannot-castle",
    title="Cannot castle",
    version=2,
    definition="The side has no right to castle (on the wing named) any more, or no castling move is legal now: either reading may hold, and the finding says which. Words of loss (lost, no longer, any more, never) ask for the right itself.",
    source="FIDE Laws of Chess, article 3.8.2",
    phrases=PHRASES,
    slots={
        "wing": _WINGS,
        "impossible": {
            k: k
            for k in (
                "impossible",
                "out of the question",
                "no longer possible",
                "not possible",
                "ruled out",
                "over",
                "gone",
                "illegal",
            )
        },
        "able": {"castle": True},
    },
    vocabulary=frozenset({"castle", "castling"}),
    read=read,
    check=check,
)
