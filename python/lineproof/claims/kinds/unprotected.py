"""Unprotected pieces: nobody defends them."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import attackers, defenders, name, names, side_of, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.reference import Reference

PHRASES = (
    "{target} {is} [{very}] {state} [on {square}]",
    "{target} {is} not [{very}] {safe} [by anything|at all|any more|any longer]",
    "{target} (has|have) no (protection|defender|defenders|protector|protectors|protection) [at all]",
    "{target} {is} [{very}] (attacked and|under attack and) {state}",
    "{target} {is} [{very}] (attacked|under attack) and has no (protection|defender) [at all]",
    "on {square} (it|he|she) {is} [{very}] {state}",
    "{target} {is} [{very}] (attacked|hit) {attacks} [and (protected|defended|guarded) {defends}]",
    "{target} {is} [{very}] (protected|defended|guarded) {defends} [and attacked {attacks}]",
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
    text = here.said
    found = here.find(slots["target"] if "target" in slots else slots["square"])
    last = here.spot.moves[-1][2:4] if here.spot.moves else None
    if not found:
        raise Unread(f"there is no {slots.get('target', slots.get('square'))} on the board")
    plural = "target" in slots and Reference.read(slots["target"]).plural
    if plural:
        if len({spot_side(here, at) for at in found}) > 1:
            raise Unread(f"it is not clear whose {slots['target']!r} are")
        if " are " not in f" {here.said} " or "attacks" in slots or "defends" in slots:
            raise Unread(f"{slots['target']!r} are several")
    elif " are " in f" {here.said} " and "defender" not in slots:
        raise Unread("several things are spoken of, of which one was read")
    elif len(found) > 1:
        if last in found:
            found = [last]
        else:
            raise Unread(f"it is not clear which piece {slots['target']!r} means")
    denied = here.denied
    protected = "safe" in slots or "defender" in slots
    if text.split()[0] in {"nothing", "nobody", "no"}:
        protected, denied = True, True
    if "attacks" in slots or "defends" in slots:
        return [
            here.claim(
                KIND.id,
                None,
                at=found[0],
                by=None,
                hanging=False,
                attacks=slots.get("attacks"),
                defends=slots.get("defends"),
            )
        ]
    by = here.find(slots["defender"]) if "defender" in slots else None
    hanging = slots.get("state") in {"hanging", "en prise"}
    return [
        here.claim(KIND.id, None, negated=protected != denied, at=at, by=by, hanging=hanging)
        for at in found
    ]


def spot_side(here: Here, at: str) -> str:
    return side_of(here.board.piece_at(at) or "K")


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
    wanted, held = claim.params.get("attacks"), claim.params.get("defends")
    if wanted is not None or held is not None:
        return _counted(claim, wanted, held, (near, far), (direct, behind))
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


def _counted(
    claim: Claim,
    wanted: int | None,
    held: int | None,
    attack: tuple[list[str], list[str]],
    defence: tuple[list[str], list[str]],
) -> Judgement:
    """Exact counts, without and with the pieces lined up behind: either may be meant, and the finding says which."""
    board, at = claim.spot.board, claim.params["at"]
    readings = (
        (len(attack[0]), len(defence[0]), ""),
        (
            len(attack[0]) + len(attack[1]),
            len(defence[0]) + len(defence[1]),
            ", counting the pieces lined up behind",
        ),
    )
    for attacks, defends, how in readings:
        if wanted in (None, attacks) and held in (None, defends):
            because = f"{upper(name(board, at))} is attacked {_times(attacks)} and protected {_times(defends)}{how}."
            return Judgement(
                Outcome.HOLDS, because, (), claim.spot, {"attackers": attacks, "defenders": defends}
            )
    attacks, defends, _ = readings[0]
    because = (
        f"{upper(name(board, at))} is attacked {_times(attacks)} and protected {_times(defends)}"
    )
    if readings[1][:2] != readings[0][:2]:
        because += f" ({readings[1][0]} and {readings[1][1]} with the pieces lined up behind)"
    return Judgement(
        Outcome.FAILS,
        f"{because}.",
        (),
        claim.spot,
        {"attackers": attacks, "defenders": defends},
        instead=f"{because}.",
    )


def _times(count: int) -> str:
    return {0: "by nothing", 1: "once", 2: "twice"}.get(count, f"{count} times")


_TIMES: dict[str, Any] = {
    "once": 1,
    "twice": 2,
    "thrice": 3,
    **{f"{n} times": n for n in range(2, 8)},
}

KIND = Kind(
    id="unprotected",
    title="Unprotected piece",
    version=2,
    definition="No piece of its own side attacks the square of the piece; pinned defenders count. 'Hanging' asks in addition that it is attacked. Counts of attackers and defenders are exact, without or with the pieces lined up behind, and the finding says which.",
    phrases=PHRASES,
    slots={"state": _STATES, "safe": _SAFE, "attacks": _TIMES, "defends": _TIMES},
    vocabulary=frozenset(
        [
            "unprotected",
            "attacked",
            "hit",
            "protector",
            "protectors",
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
