"""Only moves: everything else costs too much."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from lineproof.claims.alternatives import alternatives
from lineproof.claims.bands import ALONE, edge_of_two, is_only, seen_from, spoken
from lineproof.claims.board import title
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Mark, Outcome
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, NOUNS, members
from lineproof.claims.noun import Noun
from lineproof.claims.played import around, played, supposed
from lineproof.claims.showing import shortest
from lineproof.claims.worded import NOMINAL

_GLYPHS = {7: "forced", 8: "singular"}
"""PGN standard (1994), NAG table: 7 "forced move (all others lose quickly)", 8 "singular move (no reasonable alternatives)"."""


_MOVES = NOMINAL | {"defence", "way", "chance", "salvation", "square", "option", "try"}
_SOLE = frozenset({"only", "sole", "single"})


def only(noun: Noun) -> str | None:
    """ "The only move", "one legal reply"."""
    alone = (_SOLE & set(noun.adjectives) or (noun.count == 1 and noun.det == "the")) and not (
        noun.plural or noun.no or "other" in noun.adjectives
    )
    return noun.text if noun.head in _MOVES and alone else None


def one(noun: Noun) -> str | None:
    """ "One move", which is the only one where "only", "just" or "exactly" stands with it, or the move is named."""
    said = noun.count == 1 and not (noun.plural or noun.no)
    return noun.text if noun.head in _MOVES and said else only(noun)


def _legal(noun: Noun) -> str | None:
    return one(noun) if {"legal", "possible"} & set(noun.adjectives) else None


def _others(noun: Noun) -> str | None:
    """ "All other moves", "every other move"."""
    return (
        noun.text
        if noun.head in NOMINAL
        and "other" in noun.adjectives
        and not noun.no
        and (noun.plural or noun.det in {"every", "any"})
        else None
    )


def _no_other(noun: Noun) -> str | None:
    return noun.text if noun.head in NOMINAL and "other" in noun.adjectives and noun.no else None


_FINE = frozenset({"real", "good", "serious", "proper", "right", "correct", "adequate", "decent", "sensible", "true"})  # fmt: skip
_FAULTS = members("mistake", JUDGEMENTS) | members("blunder", JUDGEMENTS)
_ELSE = (
    "(everything|anything) <lose/fail> +else if modal=almost|will|can|would|could|may",
    "(everything|anything) <=> (worse|bad|losing) +else if modal=almost|will|can|would|could|may",
    "(everything|anything) <lose/fail> {amount} +else if modal=almost|will|can|would|could",
    "(everything|anything) <=> {fault} +else if modal=almost|will|can|would|could",
    "{nobody} <do/work/help/hold/suffice/come_into_consideration> +else if modal=almost|will|can|would|could",
    "{others} <=> {fault} if modal=|would|will",
    "{others} <lose/fail> [{amount}] [game] if modal=would|will",
    "{others} <lose/fail> [{amount}] [game]",
    "{others} <=> (worse|bad|losing)",
    "{nobody} <save> [{thing}] +else if modal=almost|will|can|would|could|may",
    "{nobody} <=> {good} +else if modal=almost|will|can|would|could|may",
    "{no_square} <=> {safe} if negated",
    "{no_other} <save> [{thing}] if negated",
    "{no_other} <=> {good} if negated",
)
_SINGLE = (
    ("{only_legal}", "legal=yes one=yes", ""), ("{only}", "one=yes", ""), ("{one}", "one=yes", "+only|exactly|just|but_1"), ("{one}", "one=yes", "named"),
)  # fmt: skip
_HAVING = (
    "{side} <have> {what} [namely {deed}]",
    "{king} <have> {what} [namely {deed}]",
    "{king} <have> choice of {what} [namely {deed}]",
    "<~> {what} [namely {deed}] [(for|to) {side}]",
    "<~> {what} [namely {deed}] (for|to|of) {king}",
    "{what} <remain> [namely {deed}] [(for|to) {side}]",
    "[{cause}] <give/leave> {side} (with) {what} [namely {deed}]",
    "[{cause}] <give/leave> {side} {what} [namely {deed}]",
)


def _single(frame: str) -> Iterator[str]:
    """A frame of having one move, for each way to say that it is one."""
    for what, fixed, adverb in _SINGLE:
        said = frame.replace("{what}", what)
        said = (
            said.replace("[namely {deed}]", "namely {deed}")
            if adverb == "named"
            else f"{said} {adverb}"
        )
        yield f"{said} ; {fixed}"


FRAMES = (
    "{deed} <=> {only_legal} [for {side}] ; legal=yes",
    "{deed} <=> {only} [for {side}]",
    "{act} <=> {essential} [for {side}]",
    "{only_legal} <=> {deed} ; legal=yes",
    "{only} <=> {deed}",
    "{one} <=> (legal|possible) [namely {deed}] +only ; legal=yes one=yes",
    "{alone} <save> [{thing}] if without=now",
    "{alone} <=> {good}",
    "{alone} <=> {fine}",
    "{king} <have> {alone}",
    "{one} <=> {good} [namely {deed}] +only ; one=yes",
    "{side} <play> {deed} ; must=yes if modal=must",
    "{act} <save> [{thing}] +only ; first=yes if without=now",
    "{act} <=> {good} +only ; first=yes",
    "{act} <get/take/bring> {thing} out_of check ; first=yes",
    "{act} <meet/answer/parry/stop> {thing} ; first=yes",
    "<=> {only} [(for|of|by) {side}] if verbless lone",
    "<~> {no_other} [but {deed}] [for {side}] ; last=yes if negated",
    "{side} <have> {nobody} but {deed}",
    "{side} <have> {no_other} [but {deed}] ; one=yes if negated",
    *(said for frame in _HAVING for said in _single(frame)),
    "{nobody} <=> legal +else ; others=yes legal=yes if modal=almost|will|can|would|could|may",
    *(f"{frame}{'' if ';' in frame else ' ;'} others=yes" for frame in _ELSE),
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if _SHUNNED.match(around(here)[1]):
        raise Unread("it is the one not to play")
    if "must" in slots and re.search(r"\b(?:forced|obliged|compelled)\b", here.said):
        raise Unread("it is said to be forced")
    if "first" in slots and not re.search(r"\b(?:only|just)\s*$", around(here)[0].lower()):
        raise Unread("it is not said that this move alone does it")
    if "others" in slots and "good" in slots and supposed(here):
        raise Unread("it is said loosely of a move that has only been told")
    if "others" in slots and verb is not None and verb.negated:
        raise Unread("that other moves do not fail is not what is checked")
    text = next((slots[s] for s in ("deed", "act", "alone") if s in slots), None)
    if text is not None:
        named = _named(
            here,
            f"{slots['king']} to {text}"
            if "king" in slots and re.fullmatch("[a-h][1-8]", text)
            else text,
        )
    elif "legal" in slots and "others" in slots and len(here.board.legal_moves()) == 1:
        named = Named(here.spot, here.board.legal_moves()[0], here.board.turn)
    elif "last" in slots:
        named = played(here, None)
    elif "one" in slots:
        named = _one(here, slots)
    else:
        if here.subject not in (None, here.mover):
            raise Unread("it is not clear which move is meant")
        named = played(here, None)
    if "side" in slots and here.side(slots["side"]) != named.side:
        raise Unread("the move is not that side's")
    return [
        here.claim(KIND.id, named.side, spot=named.before, move=named.uci, legal="legal" in slots)
    ]


_SHUNNED = re.compile(
    r"\s*(?:(?:that )?(?:you|we|he|she|they|one|white|black) (?:should|must|had better) |to )(?:avoid|fear|forget|shun|stay away|keep away|steer clear|beware)(?: of| from)?(?=\s*(?:$|[^\w\s]|(?:because|since|for|as|here|now)\b))",
    re.IGNORECASE,
)
"""What follows "the one square" where it is the one to avoid."""


def _named(here: Here, text: str) -> Named:
    """The move that is meant; a square to which no pawn can go is where the one other move goes: "e6 is the only square"."""
    try:
        return played(here, text)
    except Unread:
        if not re.fullmatch("[a-h][1-8]", text):
            raise
        last = here.spot.moves[-1] if here.spot.moves else ""
        if last[2:4] == text:
            return here.last()
        found = [uci for uci in here.board.legal_moves() if uci[2:4] == text]
        if len(found) != 1:
            raise
        return Named(here.spot, found[0], here.board.turn)


def _one(here: Here, slots: dict[str, Any]) -> Named:
    """The one move of which it is only said that there is no other: of a side at its turn, or of a king, the one shown next."""
    if "verb" not in slots:
        if "legal" in slots:
            raise Unread("the only move is not named")
        return played(here, None)  # "an only move"
    if "side" in slots and here.side(slots["side"]) != here.board.turn:
        return here.last()
    following = here.shown_next
    if following is None:
        raise Unread("the only move is not named, and the line shows none")
    return Named(here.spot, following, here.board.turn)


def read_glyph(here: Here, nag: int, _: str) -> list[Claim]:
    named = here.last()
    return [here.claim(KIND.id, named.side, spot=named.before, move=named.uci, glyph=nag)]


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move = claim.spot, claim.params["move"]
    side = spot.board.turn
    san = spot.board.san(move)
    mark = (Mark("move", (move[:2], move[2:4]), side),)
    others = [m for m in spot.board.legal_moves() if m != move]
    if not others:
        return Judgement(
            Outcome.HOLDS, f"{san} is the only legal move.", (move,), spot, {"legal": 1}, marks=mark
        )
    if claim.params.get("legal"):
        because = f"{title(side)} has {len(others) + 1} legal moves."
        return Judgement(
            Outcome.FAILS, because, (), spot, {"legal": len(others) + 1}, instead=because
        )
    rival = ask.best(spot, without=(move,))
    if rival is None:
        raise GameOver("the game is drawn before the move")
    alone, best = ask.move(spot, rival.moves[0]), ask.move(spot, move)
    own = seen_from(side, best.points)
    second = seen_from(side, alone.points)
    cost = own - second
    holds = is_only(own, second)
    rival_san = spot.board.san(alone.moves[0])
    numbers: dict[str, int | float | str] = {
        "points": own,
        "next best": rival_san,
        "its points": second,
        "cost": cost,
    }
    margin = edge_of_two(own, second, is_only)
    line = shortest(spot, alone.moves, most=SHOWN)
    if holds:
        because = f"Every other move costs at least {cost} points: after {rival_san} {spoken(side, second)}."
        others_lose = alternatives(ask, claim.place, spot, move, line)
        return Judgement(
            Outcome.HOLDS, because, line, spot, numbers, margin, marks=mark, second=others_lose
        )
    if cost <= 0:
        because = (
            f"{rival_san} is no worse: {spoken(side, second)}, after {san} {spoken(side, own)}."
        )
    else:
        because = f"{rival_san} costs only {cost} points: {spoken(side, second)}, after {san} {spoken(side, own)}."
    instead = (
        f"{san} is a good move here, and so is {rival_san}."
        if cost >= -5
        else f"{rival_san} is better than {san}."
    )
    return Judgement(
        Outcome.FAILS,
        because,
        line,
        spot,
        numbers,
        margin,
        instead,
        marks=mark,
    )


KIND = Kind(
    id="only-move",
    title="Only move",
    version=2,
    definition="The best other legal move (found by leaving the move out, then searched alone at the same nodes) costs 15 points or more and the verdict's band with it; a single legal move is one too.",
    formula=f"cost = points(the move) - points(best other move); holds: cost >= {ALONE} and band(best other move) is another; fails otherwise",
    frames=FRAMES,
    slots={
        "essential": dict.fromkeys(members("essential", JUDGEMENTS), True),
        "safe": dict.fromkeys(
            ("safe", "available", "free", "left", "any good", "open", "possible"), True
        ),
        "good": dict.fromkeys(
            ("good", "any good", "playable", "possible", "good enough", "any use", "on"), True
        ),
    },
    tests={
        "only": only,
        "one": one,
        "act": lambda n: deed(n) if n.type != "pronoun" or n.head == "this" else None,
        "only_legal": _legal,
        "others": _others,
        "no_other": _no_other,
        "alone": lambda n: (
            n.text if n.type in {"move", "square"} and "only" in n.adjectives else None
        ),
        "good": lambda n: n.text if n.head in {"good", "use"} else None,
        "no_square": lambda n: (
            n.text if n.no and n.head in NOUNS["square"] and "other" in n.adjectives else None
        ),
        "fine": lambda n: (
            n.text if n.head in _MOVES and not _FINE.isdisjoint(n.adjectives) else None
        ),
        "thing": lambda n: n.text if n.type in {"noun", "side", "piece"} else None,
        "cause": lambda n: n.text,
        "fault": lambda n: n.text if n.head in _FAULTS else None,
    },
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
    flips=True,
)
