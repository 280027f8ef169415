"""Better moves: one move is better than another."""

from __future__ import annotations

from contextlib import suppress
from typing import Any

from lineproof.claims.bands import edge_of_two, seen_from, spoken
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import SAFE, shown, spelled
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, members
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import follows, played
from lineproof.claims.worded import NOMINAL, Worded, fitting

_BETTER = members("preferable move", JUDGEMENTS)


def improved(noun: Noun) -> str | None:
    """ "A better move", "the wiser choice"."""
    if noun.head == "better move":
        return noun.text
    moves = noun.head in NOMINAL | {
        "way",
        "try",
        "defence",
        "idea",
        "plan",
        "decision",
        "option",
        "alternative",
    }
    return (
        noun.text if moves and not _BETTER.isdisjoint(noun.adjectives) and not noun.plural else None
    )


FRAMES = (
    "{deed} <=> {better} [for {side}] [than {other}]",
    "{deed} <=> {improved} [than {other}]",
    "{deed} <=> improvement [(on|over|upon) {other}]",
    "{deed} <=> {better} [(instead_of|rather_than) {other}]",
    "{deed} <improve_on> {other}",
    "{improved} <=> {deed}",
    "improvement [(on|over) {other}] <=> {deed}",
    "<be to prefer> {deed} [to {other}]",
    "<be:prefer> {deed} [to {other}]",
    "{author} <prefer> {deed} [(to|over) {other}] if modal=|would",
    "{side} <have> {improved} (in|with) {deed} [(instead_of|rather_than) {other}]",
    "{side} <do better> (with|by) {deed} [(than|instead_of|rather_than) {other}] if modal=|would|will|can|could|should",
    "{side} <do better to play/choose/prefer/go for> {deed} [(than|instead_of|rather_than) {other}]",
    "{side} <play/choose/prefer/go for> {deed} [(instead_of|rather_than) {other}] if modal=should perfect",
    "{side} <play/choose/prefer/go for> {deed} +instead if modal=should",
    "{deed} <=> {worse} [than {other}] ; turned=yes",
    "{deed} <=> preferable (to|than) {other}",
    "{deed} <=> {evil}",
    "<=> {deed} (rather_than|instead_of) {other} if verbless",
    "{it} <be> {deed} if modal=must",
    "{evil} <=> {deed}",
    "{deed} <deserve/merit/get> preference",
    "{side} <=> better_off|well_advised (with|by) {deed}",
    "{side} <answer/reply/respond/try/continue/meet/insert/go> {deed} [(instead_of|rather_than) {other}] if modal=should perfect",
    "{side} <answer/reply/respond/continue> with {deed} if modal=should perfect",
    "{side} <play/choose/prefer/go for/try/answer/reply> {deed} (instead_of|rather_than) {anything} if modal=should",
    "{side} <capture> {prey} [(instead_of|rather_than) {other}] if modal=should perfect",
    "{side} <capture/take_on/exchange> (on) {square} [with {by_man}] [(instead_of|rather_than) {other}] if modal=should perfect",
    "{side} <take_on> {square} [with {by_man}] [(instead_of|rather_than) {other}] if modal=should perfect",
    "{man} <go/move/retreat/come/step/be/stand> (to|on) {square} if modal=should perfect",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    other = slots.get("other")
    if "turned" in slots:
        if other is None:
            raise Unread("it is not said what is better")
        slots["deed"], other = other, slots["deed"]
    if "man" in slots:
        slots["deed"] = f"{slots['man']} to {slots['square']}"
    elif "square" in slots:
        by = f" with {slots['by_man']}" if "by_man" in slots else ""
        slots["deed"] = f"taking on {slots['square']}{by}"
    if "prey" in slots:
        slots["deed"] = f"taking {slots['prey']}"
    move = _meant(here, slots)
    if "side" in slots and slots["side"] != "you" and here.side(slots["side"]) != move.side:
        raise Unread("the move is not that side's")
    worse = _worse(here, move, other)
    if worse == move.uci:
        raise Unread("a move is not compared with itself")
    return [here.claim(KIND.id, move.side, spot=move.before, move=move.uci, than=worse)]


def _meant(here: Here, slots: dict[str, Any]) -> Named:
    """The better move; "should have played" may speak of the side's own last move, before the reply."""
    text, side, verb = slots["deed"], slots.get("side"), slots.get("verb")
    missed = verb is not None and verb.done and side is not None and len(here.spot.moves) > 1
    before = here.spot.earlier(2) if missed else here.spot
    if missed and before.board.turn == here.side(side):
        found = []
        with suppress(Unread):
            found = [follows(before, text)] if MOVE.fullmatch(text) else fitting(before, text)
        if len(found) == 1 and found[0] != here.spot.moves[-2]:
            return Named(before, found[0], before.board.turn)
    gone = bool(verb is not None and verb.past and slots.get("other") is None)
    if here.spot.moves and (gone or _is_last(here, slots.get("other"))):
        at, last = here.spot.earlier(1), here.spot.moves[-1]
        found = []
        with suppress(Unread):
            found = [follows(at, text)] if MOVE.fullmatch(text) else fitting(at, text)
        found = [uci for uci in found if uci != last]
        if len(found) == 1:
            return Named(at, found[0], at.board.turn)  # instead of the move just played
    return played(here, text)


def _is_last(here: Here, text: str | None) -> bool:
    """Whether words mean the move just played: "swapping was better than taking the bishop"."""
    if text is None:
        return False
    with suppress(Unread):
        return played(here, text).after.moves == here.spot.moves
    return False


def _worse(here: Here, move: Named, text: str | None) -> str:
    """The move (UCI) that it is compared with: the one named, else the one played or shown in its place."""
    if text is not None and MOVE.fullmatch(text):
        return follows(move.before, text)
    said = Worded.read(text) if text is not None else None
    if text is not None and not (
        said is not None and not said.telling
    ):  # "striking back" may be any move
        found = fitting(move.before, text)
        if len(found) == 1 and found[0] != move.uci:
            return found[0]
        other = played(here, text)
        if other.before.board.key != move.before.board.key:
            raise Unread(f"{text} is not played in the same position")
        return other.uci
    if move.before.moves != here.spot.moves:
        return here.spot.moves[len(move.before.moves)]
    following = here.shown_next
    if following is None:
        raise Unread("it is not said what it is better than, and no move is shown there")
    return following


def outcome(better: int, worse: int) -> Outcome:
    """What the points of the two moves say of the first being better."""
    if better - worse > SAFE:
        return Outcome.HOLDS
    return Outcome.FAILS if worse - better > SAFE else Outcome.UNSETTLED


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move, than = claim.spot, claim.params["move"], claim.params["than"]
    side, board = spot.board.turn, spot.board
    one, two = ask.move(spot, move), ask.move(spot, than)
    better, worse = seen_from(side, one.points), seen_from(side, two.points)
    said = outcome(better, worse)
    gap = better - worse
    names = board.san(move), board.san(than)
    score = f"after {names[0]} {spoken(side, better)}, after {names[1]} {spoken(side, worse)}"
    if said is Outcome.HOLDS:
        because = f"{names[0]} gains {spelled(gap)} on {names[1]}: {score}."
    elif said is Outcome.FAILS:
        because = f"{names[0]} costs {spelled(-gap)} against {names[1]}: {score}."
    else:
        because = f"{names[0]} and {names[1]} are within {SAFE} points of each other: {score}."
    instead = f"{names[1]} is better than {names[0]}." if said is Outcome.FAILS else None
    return Judgement(
        said, because, shown(spot, one.moves, better), spot, {"points": better, "points of the other": worse, "gain": gap},
        edge_of_two(better, worse, outcome), instead, said is Outcome.UNSETTLED,
        marks=(Mark("move", (move[:2], move[2:4]), side),),
    )  # fmt: skip


KIND = Kind(
    id="better-is",
    title="Better move",
    version=1,
    definition=(
        "The better move scores more than 5 points more than the other, each searched alone at the same nodes; within 5 points either way is unsettled, for two moves so close are equally good. "
        "Without a second move it is compared with the move played, or shown, in its place."
    ),
    formula=f"gain = points(the move) - points(the other); holds: gain > {SAFE}; unsettled: -{SAFE} <= gain <= {SAFE}; fails: gain < -{SAFE}",
    slots={
        "better": dict.fromkeys(_BETTER, True),
        "worse": dict.fromkeys(
            ("inferior", "weaker", "worse", "less accurate", "less good", "less precise"), True
        ),
    },
    tests={
        "improved": improved,
        "by_man": lambda n: n.text if n.type == "piece" and not n.plural else None,
        "prey": lambda n: n.text if n.type == "piece" and not n.plural else None,
        "it": lambda n: n.text if n.head == "it" else None,
        "evil": lambda n: n.text if n.head == "evil" and "lesser" in n.adjectives else None,
        "man": lambda n: n.text if n.type == "piece" and not (n.plural or n.parts) else None,
        "deed": lambda n: deed(n) if n.type != "pronoun" or n.head == "that" else None,
        "other": deed,
        "author": lambda n: n.text if n.type == "side" and n.text in {"i", "we"} else None,
    },
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)
