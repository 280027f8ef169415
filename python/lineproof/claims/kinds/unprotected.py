"""Unprotected pieces: nobody defends them."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import attackers, defenders, name, names, side_of, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.reference import Reference
from lineproof.claims.timing import as_it_stands

FRAMES = (
    "{target} <=> unprotected",
    "<=> unprotected on {square}",
    "{nobody} <defend> {target}",
    "{target} <have> {nobody} if without=in|on|before|in_front_of|ahead_of",
    "{target} <have> {none}",
    "<~> {none} (of|for) {target}",
    "<be:defend> {target} ; safe=yes",
    "{target} <have> protection ; safe=yes",
    "{target} <~> without protection",
    "{target} <~> without defender",
    "{target} <lose> (protection|defender) if perfect",
    "{target} <lack> (protection|defender)",
    "{target} <have> {a_defender} if negated",
    "[{agent}] <give> {target} unprotected",
    "<be:give> {target} unprotected",
    "<be:give> {target} without protection",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    text = here.said
    if "agent" in slots:
        agent = here.agent(slots["agent"])
        here = here.at(agent.spot)
    if slots.get("target") in {"it", "this", "that", "which"} and here.topic is not None:
        slots["target"] = here.topic
    found = here.find(slots["target"] if "target" in slots else slots["square"])
    last = here.spot.moves[-1][2:4] if here.spot.moves else None
    if not found:
        raise absent(slots.get("target", slots.get("square")))
    plural = "target" in slots and Reference.read(slots["target"]).plural
    if plural:
        if len({spot_side(here, at) for at in found}) > 1:
            raise Unread(f"it is not clear whose {slots['target']!r} are")
        if " are " not in f" {here.said} " or "attacks" in slots or "defends" in slots:
            raise Unread(f"{slots['target']!r} are several")
    elif " are " in f" {here.said} " and "defender" not in slots:
        raise Unread("several things are spoken of, of which one was read")
    elif len(found) > 1:
        hit = [at for at in found if attackers(here.board, at)[0]]
        if last in found:
            found = [last]
        elif len(hit) == 1:
            found = hit  # "nobody looks after the b-pawn": the one that is attacked
        else:
            raise Unread(f"it is not clear which piece {slots['target']!r} means")
    if any((here.board.piece_at(at) or "").lower() == "k" for at in found):
        raise Unread("a king is not unprotected as pieces are")
    verb = slots.get("verb")
    if verb is not None and verb.modal == "can":
        raise Unread("said of what may come")
    denied = verb is not None and verb.negated
    protected = "safe" in slots or "defender" in slots
    if re.search(r"\bby (?:nothing|nobody|no piece|no one)\b", text):
        protected, denied = True, not denied
    elif re.search(r"\bby any", text):
        protected = True
        if not denied:
            raise Unread("it is not clear what is denied")
    elif "nobody" not in slots and (
        text.split()[0] in {"nothing", "nobody", "no"}
        or ("safe" not in slots and _LACKS.search(text))
    ):
        if denied:
            raise Unread("two denials")
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
    hanging = (slots.get("state") or slots.get("left")) in {"hanging", "en prise"}
    return [
        here.claim(KIND.id, None, negated=protected != denied, at=at, by=by, hanging=hanging)
        for at in found
    ]


_LACKS = re.compile(
    r"\b(?:has|have|is|are|was|were|had) no (?:protect|defend|cover|support)|\black(?:s|ed|ing)?\b|\blost its\b"
)
"""Words of a piece that is not protected."""


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


KIND = Kind(
    id="unprotected",
    title="Unprotected piece",
    version=2,
    definition="No piece of its own side attacks the square of the piece; pinned defenders count. 'Hanging' asks in addition that it is attacked. Counts of attackers and defenders are exact, without or with the pieces lined up behind, and the finding says which.",
    frames=FRAMES,
    tests={
        "a_defender": lambda n: (
            n.head
            if n.head in NOUNS["defender"]
            and not (n.plural or n.no or n.adjectives)
            and n.det in {"a", "an"}
            else None
        ),
        "none": lambda n: (
            n.head if n.no and n.head in NOUNS["protection"] + NOUNS["defender"] else None
        ),
    },
    gives_way=frozenset({"defends", "king-exposed", "defended-count"}),
    read=read,
    check=check,
)
