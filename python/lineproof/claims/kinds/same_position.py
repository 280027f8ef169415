"""The same position by another way."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.here import Here, Unread, meant
from lineproof.claims.kind import Kind
from lineproof.claims.kinds import transposes
from lineproof.claims.road import road
from lineproof.claims.sentence import sentences
from lineproof.claims.word import Word
from lineproof.engine import Board

FRAMES = (
    "{anything} <=> {same} ; elsewhere=yes",
    "<~> {same} ; elsewhere=yes",
    "{side} <reach/lead to/have/get> {same} [(by|through|from) {anything}] ; elsewhere=yes if modal=|would|can|could",
    "<be:reach> {same} [(from|by|through|via) {anything}] ; other=yes elsewhere=yes",
    "{same} <arise/come_about/result/occur/appear> [(from|by|through|via|out_of) {anything}] ; other=yes elsewhere=yes",
    "<be:reach> {here} [(from|by|through|via) {anything}] +also ; other=yes elsewhere=yes if modal=can|could|may|",
    "{here} <arise/come_about/result/occur/appear> [(from|by|through|via|out_of) {anything}] +also ; other=yes elsewhere=yes if modal=can|could|may|",
    "{here} <=> identical (to|with) {road} [(with|after|of) {moves}]",
    "{here} <=> identical (to|with) {position} (in|after|of|from) {road} [(with|after|of) {moves}]",
    "{here} <=> {none} from {road} [(with|after|of) {moves}]",
    "{here} <=> {none} from {position} (in|after|of|from) {road} [(with|after|of) {moves}]",
    "{here} <=> {alike} (as|in|after) {road} [(with|after|of) {moves}]",
    "{here} <arise/come_about/result/occur/appear> (after|from|via|by|through|out_of|in) {road} [+also] if modal=can|could|may|",
    "<be:reach> {here} (after|from|via|by|through|out_of|in) {road} [+also] if modal=can|could|may|",
    "{side} <know/meet/see> {here} [(from|in|after) {road}] ; seen=yes",
    "{here} <=> different from {road} [(with|after|of) {moves}] if negated",
    "{side} <be> +here +before ; seen=yes if modal=almost|",
    "{side} <be> +here (in|after) {road} ; seen=yes",
    "{road} <lead_to/reach/give/come_to/get_to> {same}",
    "{opening} <lead_to/reach/give/come_to/get_to/transpose_to> {same} ; elsewhere=yes other=yes",
    "{road} <lead/come> to {same}",
)
_NUMBER = re.compile(r"^(?:\d+\.(?:\.\.)?|\.\.\.)")
CHOICES = 16
"""Roads that are followed where "takes" may mean several captures."""
_TAKES = frozenset({"takes", "captures", "recaptures"})


def _reached(here: Here, other_road: bool) -> Claim:
    """A claim that the moves of the sentence, played from the first move on, lead to the position here.

    other_road: whether it is enough that there is another road, of which the sentence gives some moves.

    :raises Unread: when it names none, or they are no game.
    """
    roads = [Spot(here.place.root_fen, (), Board(here.place.root_fen))]
    count = 0
    for word in _words(here):
        if word.san is None and word.norm not in _TAKES:
            continue
        roads = [spot.play(uci) for spot in roads for uci in _moves(spot, word)][:CHOICES]
        count += 1
        if not roads and other_road:
            return _unnamed(here)
        if not roads:
            raise Unread(f"{word.norm} does not follow")
    if count < 3 and other_road:
        return _unnamed(here)
    if count < 3:
        raise Unread("no line is named")
    here_key = here.place.board.key
    way = next((spot for spot in roads if spot.board.key == here_key), roads[0])
    moves = tuple(way.boards[0].san_line(way.moves))
    return here.claim(
        KIND.id, None, line="the line named", moves=moves, labels=(), others=(), direct=way.board.key == here_key,
    )  # fmt: skip


def _unnamed(here: Here) -> Claim:
    """A claim that another road leads here, which the sentence does not give move by move."""
    found = transposes.KIND.read
    assert found is not None  # it has frames, and so it reads
    (claim,) = found(here, {})
    return replace(claim, kind=KIND.id, negated=False, params={**claim.params, "unnamed": True})


def _words(here: Here) -> tuple[Word, ...]:
    for comment in here.place.comments:
        for sentence in sentences(comment.text, comment.start):
            if sentence.start <= here.start < sentence.end:
                return sentence.words
    return ()


def _moves(spot: Spot, word: Word) -> list[str]:
    """What a word may mean: its move, or of "takes" any capture of what has just moved."""
    if word.san is not None:
        try:
            return [meant(spot, _NUMBER.sub("", word.norm))]
        except ValueError:
            return []
    last = spot.moves[-1][2:4] if spot.moves else ""
    return [u for u in spot.board.legal_moves() if u[2:4] == last]


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "seen" in slots and not slots["verb"].done and "road" not in slots:
        raise Unread("it does not say that it has been seen before")
    if "elsewhere" in slots:
        return [_reached(here, "other" in slots)]
    found = transposes.KIND.read
    assert found is not None  # it has frames, and so it reads
    wanted: dict[str, Any] = {s: slots[s] for s in ("road", "moves") if s in slots}
    return [replace(claim, kind=KIND.id, negated=False) for claim in found(here, wanted)]


def check(claim: Claim, ask: Ask) -> Judgement:
    p = claim.params
    if p.get("unnamed") and not (p["labels"] or p["others"]):
        because = "The other road is not given move by move, and no other place of the lesson has this position."
        return Judgement(Outcome.UNSETTLED, because, (), claim.spot)
    return transposes.check(replace(claim, negated=False), ask)


KIND = Kind(
    id="same-position",
    title="The same position",
    version=1,
    definition="The position here is the same as at the end of the line named, or as one that stands elsewhere in the lesson: placement, side to move, castling rights and legal en passant.",
    source="FIDE Laws of Chess, article 9.2.3",
    frames=FRAMES,
    tests={
        "side": lambda n: n.text if n.type == "side" and n.text != "i" else None,
        "opening": lambda n: n.text if n.head == "opening" and n.det else None,
        "road": road,
        "moves": lambda n: n.text.replace(" then ", " ") if n.type in {"move", "square"} else None,
        "position": lambda n: n.head if n.head == "position" and n.det in {"the", "that"} else None,
        "none": lambda n: n.head if n.head == "different" and n.no else None,
        "alike": lambda n: n.head if n.head == "same" else None,
        "here": lambda n: (
            n.head
            if (n.head == "position" and n.det == "this") or (n.type == "pronoun" and n.head in {"it", "this"})
            else None
        ),
        "same": lambda n: (
            n.head
            if n.head == "position" and {"same", "identical", "very"} & set(n.adjectives)
            else None
        )
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
