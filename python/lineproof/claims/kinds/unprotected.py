"""Unprotected pieces: nobody defends them."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import attackers, defenders, name, names, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind

PHRASES = (
    "{target} {is} [{very}] {state} [on {square}]",
    "{target} {is} not [{very}] {safe} [by anything|at all|any more|any longer]",
    "{target} (has|have) no (protection|defender|defenders)",
    "{target} (has|have) lost its (protection|defender)",
    "(nothing|nobody|no one|no piece) (protects|defends|guards) {target}",
    "{target} {is} [{very}] {safe} [by {defender}]",
    "{defender} (protects|defends|guards|covers) {target}",
    "{target} (stands|sits|is left|remains) [{very}] {state} [on {square}]",
)
_STATES = {
    k: k
    for k in (
        "unprotected",
        "undefended",
        "unguarded",
        "loose",
        "hanging",
        "en prise",
        "completely unprotected",
        "left unprotected",
        "left undefended",
        "without protection",
        "without a defender",
        "quite unprotected",
        "protected by nothing",
        "defended by nothing",
    )
}
_SAFE = {
    k: k
    for k in (
        "protected",
        "defended",
        "guarded",
        "well protected",
        "well defended",
        "safely protected",
        "safely defended",
        "still protected",
        "still defended",
    )
}


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = here.words.lower()
    found = here.find(slots["target"])
    last = here.spot.moves[-1][2:4] if here.spot.moves else None
    if not found:
        raise Unread(f"there is no {slots['target']} on the board")
    if len(found) > 1:
        if last in found:
            found = [last]
        else:
            raise Unread(f"it is not clear which piece {slots['target']!r} means")
    denied = " not " in f" {text} " or "n't" in text or "n’t" in text
    protected = "safe" in slots or "defender" in slots
    if text.split()[0] in {"nothing", "nobody", "no"}:
        protected, denied = True, True
    by = here.find(slots["defender"]) if "defender" in slots else None
    hanging = slots.get("state") in {"hanging", "en prise"}
    return [
        here.claim(KIND.id, None, negated=protected != denied, at=found[0], by=by, hanging=hanging)
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board = claim.spot.board
    at: str = claim.params["at"]
    direct, behind = defenders(board, at)
    near, far = attackers(board, at)
    who = upper(name(board, at))
    numbers = {
        "defenders": len(direct),
        "behind them": len(behind),
        "attackers": len(near),
        "behind the attackers": len(far),
    }
    if direct:
        because = f"{who} is protected by {names(board, direct)}"
        because += f", and {names(board, behind)} behind." if behind else "."
    else:
        because = f"Nothing protects {name(board, at)}."
    if claim.params["by"] is not None:
        holds = bool(set(claim.params["by"]) & {*direct, *behind})
    elif claim.negated:
        holds = bool(direct)
    else:
        holds = not direct
        if claim.params["hanging"]:
            holds = holds and bool(near)
            because += (
                f" {'It is attacked by ' + names(board, near) if near else 'Nothing attacks it'}."
            )
    marks = (Mark("square", (at,), "white" if (board.piece_at(at) or "K").islower() else "black"),)
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        numbers,
        instead=None if holds else because,
        marks=marks,
    )


KIND = Kind(
    id="unprotected",
    title="Unprotected piece",
    version=1,
    definition="No piece of its own side attacks the square of the piece; pinned defenders count. 'Hanging' asks in addition that it is attacked. Pieces lined up behind a defender are named apart.",
    phrases=PHRASES,
    slots={"state": _STATES, "safe": _SAFE},
    vocabulary=frozenset(
        [
            "unprotected",
            "undefended",
            "unguarded",
            "loose",
            "hanging",
            "prise",
            "protected",
            "defended",
            "guarded",
            "protects",
            "defends",
            "guards",
            "covers",
            "protection",
            "defender",
            "defenders",
        ]
    ),
    read=read,
    check=check,
)
