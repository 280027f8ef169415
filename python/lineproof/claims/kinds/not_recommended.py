"""Moves that the author advises against, with what they cost."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import edge_of_two
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, SAFE, taught, told, weigh
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, NOUNS, members
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import around, played
from lineproof.claims.worded import NOMINAL, fitting

FRAMES = (
    "{author} <recommend> {deed} [to {anything}] [for {anything}] if active modal=|would|can|could|will",
    "<be:recommend> {deed} [to {anything}] [for {anything}]",
    "<be to recommend> {deed} [to {anything}] [for {anything}]",
    "{author} <recommend/warn/counsel> [{pupil}] against {deed} ; against=yes if modal=|would|can|must",
    "{author} <avoid> {deed} ; against=yes if modal=|would",
    "<avoid> {deed} ; against=yes if bidden",
    "{deed} <be to avoid> {above} ; against=yes if lone",
    "{author} <leave> {deed} +alone ; against=yes if modal=|would",
    "<leave> {deed} +alone ; against=yes if bidden",
    "{side} <avoid> {deed} ; against=yes if modal=must|should",
    "{author} <play/choose/touch/try/go for> {choice} [(to|for) {anything}] ; against=yes if negated modal=|would|will",
    "<play/choose/touch/try/go for/rush> {choice} ; against=yes if bidden negated",
    "{side} <play/choose/touch/try/go for/rush> {choice} ; against=yes if negated modal=must|should",
    "{deed} <=> {inadvisable} [(to|for) {anything}] ; against=yes",
    "{deed} <=> {bad_idea} [(to|for) {anything}] ; against=yes",
    "{deed} <=> {advisable} [(to|for) {anything}]",
    "{deed} <=> {good_idea} [(to|for) {anything}]",
    "{deed} <=> for {pupil} ; against=yes if negated",
    "{deed} <tempt> {nobody} ; against=yes if modal=|should|must",
    "{deed} <tempt> [{side}] ; against=yes if negated modal=|should|must",
    "{side} <do better to avoid> {deed} ; against=yes",
    "<~> need for {deed} ; against=yes if negated",
    "{side} <capture/touch> {prey} ; against=yes if modal=must|should negated",
    "{side} <capture/take_on> (on) {square} ; against=yes if modal=must|should negated",
    "{side} <take_on> {square} ; against=yes if modal=must|should negated",
    "<castle> ; against=yes castles=yes if bidden negated",
    "{side} <castle> ; against=yes castles=yes if modal=must|should negated",
    "<touch> {prey} ; against=yes if bidden negated",
    "{side} <waste/lose> time (on|with) {choice} ; against=yes if modal=must|should negated",
    "<waste/lose> time (on|with) {choice} ; against=yes if bidden negated",
)


_CHOICES = NOMINAL | {"square", "one", "thing", "option", "try"}
"""What a move to avoid may be called."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "castles" in slots:
        slots["deed"] = "castling"
    elif "prey" in slots:
        slots["deed"] = f"taking {slots['prey']}"
    elif "square" in slots:
        slots["deed"] = f"taking on {slots['square']}"
    verb = slots.get("verb")
    if "above" in slots and re.match(r"\s*\w+ing\b", around(here)[1]):
        raise Unread("what is to be avoided is something else")
    if "choice" in slots and verb is not None and (verb.done or verb.past):
        raise Unread("it is told what was not played, not advised")
    move = _advised(here, slots.get("deed", slots.get("choice", "")))
    if "side" in slots and slots["side"] != "you" and here.side(slots["side"]) != move.side:
        raise Unread("the move is not that side's")
    denied = verb is not None and verb.negated
    if "against" not in slots and not denied:
        raise Unread("the move is recommended, not advised against")
    return [
        here.claim(
            KIND.id, move.side, spot=move.before, negated="against" in slots and denied, move=move.uci,
            scope=slots.get("anything"),
        )
    ]  # fmt: skip


def _advised(here: Here, text: str) -> Named:
    """The move that is advised against: one to be played here, sooner than one that has been."""
    coming = fitting(here.spot, text) if MOVE.fullmatch(text) is None else []
    if len(coming) == 1 and text.split()[0] not in {"this", "that", "it"}:
        return Named(here.spot, coming[0], here.board.turn)
    if len(coming) > 1 and text.startswith("taking "):
        if here.shown_next in coming:
            return Named(here.spot, here.shown_next or "", here.board.turn)
        raise Unread("it is not clear with which piece it would be taken")
    if re.fullmatch("[a-h][1-8]", text):
        taking = [
            m for m in here.board.legal_moves() if m[2:4] == text and "x" in here.board.san(m)
        ]
        meant = (
            here.shown_next
            if here.shown_next in taking
            else taking[0]
            if len(taking) == 1
            else None
        )
        if meant is not None and here.board.piece_at(text) is not None:
            return Named(here.spot, meant, here.board.turn)  # "keep your hands off d4"
    return played(here, text)


def _first_of(noun: Noun) -> str | None:
    """A move; of several ("h6 and g5") the first, without which the others are not played."""
    if noun.parts and all(part.type in {"move", "square"} for part in noun.parts):
        return noun.parts[0].text
    return deed(noun)


def outcome(best: int, points: int, rival: int | None, negated: bool) -> Outcome:
    """What the points of best move, this move and the best other one (None without one) say of the advice not to play it.

    negated: the author recommends it instead.
    """
    if best < LOST:
        return Outcome.UNSETTLED
    if best - points > SAFE:
        return Outcome.FAILS if negated else Outcome.HOLDS
    if negated:
        return Outcome.HOLDS
    return Outcome.FAILS if rival is None or points - rival > SAFE else Outcome.UNSETTLED


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move = claim.spot, claim.params["move"]
    cost = weigh(ask, spot, move)
    rival, rival_points, rival_san = None, None, ""
    if cost.points <= SAFE and not claim.negated:
        rival = ask.best(spot, without=(move,))
        if rival is not None:
            alone = ask.move(spot, rival.moves[0])
            rival_points = alone.points if cost.side == "white" else 100 - alone.points
            rival_san = spot.board.san(rival.moves[0])
    said = outcome(cost.best, cost.played, rival_points, claim.negated)
    because = told(cost)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays ({cost.best} of 100), so what {cost.san} costs is not counted."
    elif said is Outcome.UNSETTLED:
        because += f" So is {rival_san} good: which of them to play is a matter of taste."
    elif said is Outcome.FAILS and not claim.negated:
        because += f" Every other move costs more{f', {rival_san} {cost.played - (rival_points or 0)} points' if rival_san else ''}."
    instead = None
    if said is Outcome.FAILS:
        instead = f"{cost.better} is better than {cost.san}." if claim.negated else f"{cost.san} is the move to play."  # fmt: skip
    near = edge_of_two(
        cost.best, cost.played, lambda b, p: outcome(b, p, rival_points, claim.negated)
    )
    return Judgement(
        said, because, cost.line, spot, cost.numbers, near, instead, said is Outcome.UNSETTLED and cost.best >= LOST,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side),), second=taught(cost, spot),
    )  # fmt: skip


KIND = Kind(
    id="not-recommended",
    title="Not recommended",
    version=1,
    definition=(
        "Advice against a move holds, with its cost, when it costs more than 5 points; it fails when every other move costs more than 5 points against it; between the two it is a matter of taste and unsettled. "
        "A move recommended must cost at most 5."
    ),
    formula=f"cost = best - played; holds: cost > {SAFE}; unsettled: cost <= {SAFE} and another move within {SAFE}; fails: every other move costs more than {SAFE} against it",
    slots={
        "inadvisable": dict.fromkeys(members("inadvisable", JUDGEMENTS), True),
        "advisable": dict.fromkeys(members("advisable", JUDGEMENTS), True),
    },
    frames=FRAMES,
    tests={
        "deed": _first_of,
        "prey": lambda n: (
            n.text if n.type == "piece" and not n.plural and n.head != "king" else None
        ),
        "choice": lambda n: deed(n) if n.type != "pronoun" else None,
        "above": lambda n: n.text if n.head in _CHOICES and not n.no else None,
        "author": lambda n: n.text if n.type == "side" and n.text in {"i", "we"} else None,
        "pupil": lambda n: (
            n.text if n.type == "side" or n.head in members("beginner", NOUNS) else None
        ),
        "bad_idea": lambda n: (
            n.text if n.head == "idea" and {"bad", "poor", "terrible"} & set(n.adjectives) else None
        ),
        "good_idea": lambda n: n.text if n.head == "idea" and "good" in n.adjectives else None,
    },
    read=read,
    check=check,
)
