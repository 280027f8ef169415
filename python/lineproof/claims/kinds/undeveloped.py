"""Undeveloped pieces: those still at home."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import HOME_MINORS, names, pieces, side_of, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.patterns import targets
from lineproof.claims.reference import Reference
from lineproof.claims.timing import as_it_stands
from lineproof.claims.tracks import FIRST, tracks

MOST = 1
"""Minor pieces off their first squares with which a side as a whole still counts as undeveloped."""


FRAMES = (
    "{target} <make> move ; home=undeveloped if negated",
    "{target} <stir/budge/move> ; home=undeveloped if negated",
    "{targets} <stir/budge/move> ; home=undeveloped if negated",
    "{target} <=> undeveloped ; home=undeveloped",
    "{targets} <=> undeveloped ; home=undeveloped",
    "{target} <sleep> ; home=undeveloped",
    "{targets} <sleep> ; home=undeveloped",
    "{side} <have> {nothing} +out if without=on|in",
    "{side} <touch> {group} ; home=undeveloped some=yes if negated",
    "{side} <touch> {target} ; home=undeveloped if negated",
    "{target} <enter/join> game ; home=undeveloped if negated",
    "{none} <stir> ; home=undeveloped",
    "<be:touch> {none} ; home=undeveloped",
    "{target} <leave> {home_square} ; home=undeveloped if negated",
    "{target} <leave> +home ; home=undeveloped if negated",
    "{none} <leave> {home_square} ; home=undeveloped",
    "{none} <leave> +home ; home=undeveloped",
    "{group} <sleep> ; home=undeveloped",
    "{group} <=> undeveloped ; home=undeveloped",
    "{group} <stir> ; home=undeveloped if negated",
    "{group} <move> muscle ; home=undeveloped if negated",
    "{target} <move> muscle ; home=undeveloped if negated",
    "<be:touch> {group} ; home=undeveloped if negated",
    "<be:touch> {target} ; home=undeveloped if negated",
    "{target} <meet> daylight ; home=undeveloped if negated",
    "{target} <get_out/come_out> ; home=undeveloped if negated perfect",
    "{targets} <=> undeveloped piece ; home=undeveloped",
    "{target} <=> undeveloped piece ; home=undeveloped",
    "<be:develop> {target} ; out=yes",
    "<be:develop> {targets} ; out=yes",
    "<be:develop> {none} ; home=undeveloped",
    "{target} <be> +out ; out=yes",
    "{targets} <be> +out ; out=yes",
    "{none} <be> +out ; home=undeveloped",
    "{none} <=> developed ; home=undeveloped",
    "{no_minor} <=> developed",
    "<be:develop> {no_minor}",
    "{no_minor} <leave> +home",
    "{no_minor} <leave> {home_square}",
    "{no_minor} <stir/move>",
    "{no_minor} <be> +out",
    "<be:develop> {group} ; out=yes",
    "{group} <=> developed ; out=yes",
    "{target} <wait> for (turn|development|chance|call) ; home=undeveloped",
    "only undeveloped piece <be> {target} ; home=undeveloped",
    "only undeveloped piece <be> {targets} ; home=undeveloped",
    "{target} <develop> +still ; home=undeveloped if modal=must",
    "{target} <=> developed ; out=yes",
    "{targets} <=> developed ; out=yes",
    "{side} <develop> {target} ; home=undeveloped if negated",
    "{side} <develop> {targets} ; home=undeveloped if negated",
    "{side} <develop> {group} ; home=undeveloped some=yes if negated",
    "{side} <develop> {group} ; out=yes if perfect",
    "{side} <develop> {nothing} if negated",
    "{side} <touch> {nothing} if negated",
    "{side} <=> undeveloped ; undeveloped=yes",
    "{group} <=> undeveloped (except|but) {target} ; home=undeveloped",
    "{group} <=> undeveloped (except|but) {targets} ; home=undeveloped",
    "{group} <=> undeveloped (except|but|except_for|save_for|apart_from) {but_so_many} ; home=undeveloped",
    "{group} <leave> +home ; home=undeveloped if negated",
    "{group} <leave> {home_square} ; home=undeveloped if negated",
    "{group} <be> +out ; out=yes",
    "{targets} <=> only undeveloped piece ; home=undeveloped",
    "{target} <=> only undeveloped piece ; home=undeveloped",
    "{targets} <leave> {home_square} ; home=undeveloped if negated",
    "{targets} <leave> +home ; home=undeveloped if negated",
    "{target} <join> {the_fight} ; home=undeveloped if negated",
    "{group} <join> {the_fight} ; home=undeveloped if negated",
    "{target} <wait/remain> on {home_square} ; home=undeveloped",
    "{side} <have> {group} undeveloped ; home=undeveloped",
    "{side} <have> {target} undeveloped ; home=undeveloped",
    "{target} <be/stay/stand/sit> on {square} +still ; first=yes",
    "{side} <develop> {target} +still ; home=undeveloped if modal=must",
    "{side} <develop> {targets} +still ; home=undeveloped if modal=must",
    "{side} <develop> {group} +still ; home=undeveloped if modal=must",
    "<be:develop> {target} +still ; home=undeveloped if modal=must",
    "<be:develop> {some_of} ; home=undeveloped if negated",
    "{some_of} <=> undeveloped ; home=undeveloped",
    "{some_of} <stir/move> ; home=undeveloped if negated",
    "{some_of} <leave> {home_square} ; home=undeveloped if negated",
    "{some_of} <leave> +home ; home=undeveloped if negated",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    said = here.said
    if "none" in slots:
        slots["target"] = slots.pop("none")
    verb = slots.get("verb")
    if "no_minor" in slots:
        side = here.side(slots["no_minor"])
        return [here.claim(KIND.id, side, at=None, stirred=False, most=0)]
    if "first" in slots:
        piece = (here.board.piece_at(slots["square"]) or "").lower()
        if not piece or piece not in {FIRST[s].get(slots["square"]) for s in ("white", "black")}:
            raise Unread("that is no first square")
        slots["home"] = "undeveloped"
    out = "out" in slots
    denied = verb is not None and verb.negated
    if "some_of" in slots:
        few, _, slots["group"] = slots["some_of"].partition("|")
        side, grouped = _group(here, slots["group"], None)
        return [
            here.claim(
                KIND.id, side, at=grouped, any_of=False, stirred=False, most=None, few=int(few)
            )
        ]
    group = slots.get("group")
    if group is not None and "side" in slots:  # "White has developed all his pieces": White's
        group = re.sub("^(?:his|her|their) ", f"{here.side(slots['side'])} 's ", group)
    if "undeveloped" in slots or (
        group is None and "target" not in slots and "targets" not in slots
    ):
        side = here.side(slots["side"])
        whole = "undeveloped" in slots
        negated = whole and verb is not None and verb.negated
        return [
            here.claim(
                KIND.id, side, negated=negated, at=None, stirred=False, most=MOST if whole else 0
            )
        ]
    if group is not None:
        side, grouped = _group(here, group, slots.get("targets", slots.get("target")))
        if "but_so_many" in slots and not denied:
            few = len(grouped) - slots["but_so_many"]
            return [here.claim(KIND.id, side, at=grouped, any_of=False, stirred=False, most=None, few=few)]  # fmt: skip
        stays = "home" in slots
        if (not stays or "some" in slots) and _ALL.search(said):
            every = not denied and not stays  # "has not developed all his pieces": some are at home
            return [here.claim(KIND.id, side, negated=every, at=grouped, any_of=not every, stirred=False, most=None)]  # fmt: skip
        if (stays and denied) or (not stays and not denied):
            raise Unread("it is not clear how many of them are meant")
        return [here.claim(KIND.id, side, at=grouped, any_of=False, stirred=False, most=None)]
    owner = here.side(slots["side"]) if "side" in slots else None
    words = targets(slots["targets"]) if "targets" in slots else [slots["target"]]
    squares: list[str] = []
    any_of = False
    for text in words:
        found = _named(here, text, owner)
        plural = Reference.read(text).plural
        any_of = any_of or (len(found) > 1 and not plural)
        squares.extend(found)
    if any_of and len(words) > 1:
        raise Unread("it is not clear which pieces are meant")
    sides = {side_of(here.board.piece_at(at) or "K") for at in squares}
    if len(sides) > 1:
        raise Unread("it is not clear whose pieces are meant")
    developed = "home" not in slots and out and not denied
    if "home" in slots and denied:
        developed = True
    if developed and any_of:
        raise Unread("it is not clear which piece is meant")
    stirred = re.search(r"\b(?:moved|stirred|touched|budged|unmoved|untouched)\b", said) is not None
    return [
        here.claim(
            KIND.id,
            sides.pop(),
            negated=developed,
            at=squares,
            any_of=any_of,
            stirred=stirred,
            most=None,
        )
    ]


_ALL = re.compile(r"\b(?:all|every|each)\b")


def _named(here: Here, text: str, owner: str | None) -> list[str]:
    """Squares of the pieces named; "queen's knight" is the one that began on that wing.

    :raises Unread: when there is none, or a pawn is meant.
    """
    reference = Reference.read(text)
    found = here.find(text, owner)
    if here.owner(reference) is None and owner is not None:
        found = [at for at in found if at in pieces(here.board, owner)]
    wing = re.search(r"\b(queen|king) 's\b", text)
    if wing is not None:
        files = "abcd" if wing[1] == "queen" else "efgh"
        begun = {t.at: t.origin for t in tracks(here.spot)}
        found = [at for at in found if begun.get(at, at)[0] in files]
    colour = re.search(r"\b(dark|light) squared\b", text)
    if colour is not None:
        found = [at for at in found if (ord(at[0]) + int(at[1])) % 2 == (colour[1] == "light")]
    if not found:
        raise absent(text)
    letters = {(here.board.piece_at(at) or "p").lower() for at in found}
    if letters & {"p", "k"}:
        raise Unread("neither kings nor pawns are undeveloped")
    return found


def _group(here: Here, text: str, exception: str | None) -> tuple[str, list[str]]:
    words = text.split()
    whose = next(
        (
            w
            for w in words
            if w in {"black", "white", "his", "her", "our", "your", "their", "opponent"}
        ),
        None,
    )
    side = here.side("the opponent" if whose == "opponent" else whose)
    files = "abcdefgh"
    if "queenside" in words or "queen" in words:
        files = "abc"
    elif "kingside" in words or "king" in words:
        files = "fgh"
    home = HOME_MINORS[side]
    squares = [
        at for at in pieces(here.board, side) if (here.board.piece_at(at) or "").lower() in "nb"
    ]
    if files != "abcdefgh":
        begun = {t.at: t.origin for t in tracks(here.spot)}
        squares = [at for at in squares if begun.get(at, at)[0] in files]
    if exception is not None:
        spared = [at for text in targets(exception) for at in here.find(text, side)]
        squares = [at for at in squares if at not in spared]
    if not squares or not home:
        raise Unread("there are no such pieces on the board")
    return side, squares


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    board, side = claim.spot.board, claim.side or "white"
    squares: list[str] | None = claim.params["at"]
    if squares is None:
        return _whole(claim)
    home = [at for at in squares if FIRST[side].get(at) == (board.piece_at(at) or "").lower()]
    moved = {t.at for t in tracks(claim.spot) if t.steps}
    wandered = [at for at in home if at in moved] if claim.params["stirred"] else []
    still = [at for at in home if at not in wandered]
    away = [at for at in squares if at not in still]
    at_home = bool(still) if claim.params["any_of"] else not away
    few: int | None = claim.params.get("few")
    if few is not None:
        at_home = len(still) >= few
    holds = not still if claim.negated else at_home
    parts = []
    if still:
        parts.append(f"{names(board, still)} {_are(still)} at home")
    if wandered:
        parts.append(
            f"{names(board, wandered)} {'have' if len(wandered) > 1 else 'has'} moved and come back"
        )
    gone = [at for at in away if at not in wandered]
    if gone:
        parts.append(f"{names(board, gone)} {_are(gone)} not at home")
    because = f"{upper(' and '.join(parts))}."
    marks = tuple(Mark("square", (at,), side) for at in (still or away))
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, (), claim.spot, {"at home": len(still)},
        instead=None if holds else because, marks=marks,
    )  # fmt: skip


def _whole(claim: Claim) -> Judgement:
    board, side, most = claim.spot.board, claim.side or "white", claim.params["most"]
    home = HOME_MINORS[side]
    out = [
        at
        for at in pieces(board, side)
        if (letter := (board.piece_at(at) or "").lower()) in "nb" and home.get(at) != letter
    ]
    holds = (len(out) <= most) != claim.negated
    because = f"{title(side)} has developed {names(board, out) if out else 'no minor piece'}."
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, (), claim.spot, {"developed": len(out)},
        instead=None if holds else because,
    )  # fmt: skip


def _are(squares: list[str]) -> str:
    return "are" if len(squares) > 1 else "is"


KIND = Kind(
    id="undeveloped",
    title="Undeveloped",
    version=1,
    definition=(
        "The piece named stands on its first square ('has not moved' asks in addition that it never left it); of several, all of them; of all the pieces of a side or a wing, the minor pieces that are left. "
        "A side is undeveloped with at most one minor piece off its first square, and has developed nothing with none."
    ),
    frames=FRAMES,
    tests={
        "no_minor": lambda n: n.whose if n.no and n.type == "noun" and n.head == "piece" and n.whose else None,
        "some_of": lambda n: (
            f"{n.det[0]}|{n.text}"
            if re.fullmatch("[2-9] of", n.det) and n.whose and n.head == "piece" and n.plural
            else None
        ),
        
        "none": lambda n: re.sub("^the ", f"{n.whose} " if n.whose else "the ", n.text) if n.no and n.type == "piece" and n.head != "pawn" else None,
        "home_square": lambda n: n.head if n.head in {"square", "place", "post"} and {"original", "first", "starting", "initial", "home"} & set(n.adjectives) else None,
"group": lambda n: n.text if n.whose and (n.head in {"queenside", "kingside", "army"} or (n.head == "piece" and (n.plural or n.det in {"every", "each"}))) and n.count is None else None,
        "but_so_many": lambda n: n.count if n.count is not None and not n.parts and n.head in {"one", "1", "2", "3"} else None,
        "nothing": lambda n: n.head if n.head in {"nothing", "anything"} or (n.head == "thing" and n.det == "a") or (n.head == "piece" and (n.no or "single" in n.adjectives)) else None,
        "the_fight": lambda n: n.head if n.head in {"fight", "battle", "fray", "attack", "party", "struggle", "action"} else None},
    read=read,
    check=check,
)  # fmt: skip
