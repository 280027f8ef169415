"""Removal of the guard: the protector is captured, and what it protected falls."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import (
    defenders,
    material,
    name,
    names,
    other,
    pieces,
    upper,
)
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.exchange import exchange, worth
from lineproof.claims.here import Here, Named, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.pays import pays
from lineproof.claims.pointing import meant, present
from lineproof.claims.reference import Reference
from lineproof.engine import Board


def guarded(board: Board, by: str) -> list[str]:
    """The pieces of its own side that the piece on a square protects, directly or from behind; the king apart."""
    side = "white" if (board.piece_at(by) or "K").isupper() else "black"
    found = []
    for at in pieces(board, side):
        direct, behind = defenders(board, at)
        if worth(board, at) and by in {*direct, *behind}:
            found.append(at)
    return found


FRAMES = (
    "[{agent}] <remove> {ward}",
    "{ward} <fall/come off/go>",
    "{guarded} <lose> {article}",
    "[{agent}] <remove> {article} (of|for) {guarded}",
    "[{agent}] <remove> {article}",
    "{article} of {guarded} <fall/come off/go>",
    "{article} <fall/come off/go> of {guarded}",
    "<be:remove> {article} of {guarded}",
    "[{agent}] <rob/deprive> {guarded} of {article}",
    "[{agent}] <leave> {guarded} without {article}",
    "[{agent}] <remove> {article} (of|for) {guarded} with {move}",
    "[{agent}] <attack/go for/go after> {article} (of|for) {guarded} ; hits=yes",
    "[{agent}] <attack/go for/go after> {ward} ; hits=yes",
)


def _article(noun: Noun) -> str | None:
    """ "The guard", "its only defender"."""
    if noun.plural or noun.det.endswith(" of") or noun.head not in NOUNS["defender"]:
        return None
    if {"only", "sole", "last", "lone"} & set(noun.adjectives):
        return "the only"
    return noun.det or "the"


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will", "can")
    move = _move(here, slots, verb)
    before = move.before.board
    quiet = before.piece_at(move.uci[2:4]) is None
    hits = "hits" in slots and quiet  # to hit it by taking it is to remove it
    if quiet and not hits and "agent" in slots and here.agent(slots["agent"]).move is None:
        raise Unread("no capture is shown")
    named = None
    if "ward" in slots:
        slots["guarded"], slots["article"] = slots["ward"], "the"
    if "guarded" in slots:
        reference = Reference.read(slots["guarded"])
        if reference.square is not None and (hits or reference.letter is None):
            named = reference.square
        elif hits:
            raise Unread("it is not said where it stands")
        else:
            after = here.at(move.after)
            named = meant(
                after, slots["guarded"], "qrbnp", fits=lambda s: s in guarded(before, move.uci[2:4])
            )[0]
            if named not in pieces(after.board, other(move.side)):
                raise Unread("that is a piece of the capturing side")
    return [
        here.claim(
            KIND.id, move.side, spot=move.before, move=move.uci, guarded=named, article=slots.get("article", "the"), hits=hits,
        )
    ]  # fmt: skip


def _move(here: Here, slots: dict[str, Any], verb: Any) -> Named:
    if "move" in slots:
        return here.named(slots["move"])
    future = verb is not None and verb.modal in {"will", "can"}
    if "agent" in slots:
        agent = here.agent(slots["agent"])
        if agent.move is not None:
            return agent.move
        if here.spot.moves and here.mover == agent.side and not future:
            if here.find(slots["agent"]) and here.last().uci[2:4] != agent.square:
                raise Unread("that piece has not just moved")
            return here.last()
        following = _possible(here, slots) if future else here.shown_next
        if here.board.turn != agent.side or following is None:
            raise Unread("the capture is not shown")
        return Named(here.spot, following, agent.side)
    if future:
        raise Unread("the capture is not shown")
    return here.last()


def _possible(here: Here, slots: dict[str, Any]) -> str | None:
    """The capture that "can" or "will" means: the next of the line shown, or the only capture of a piece that guards what is named."""
    board = here.board
    shown = here.shown_next
    reference = Reference.read(slots["guarded"]) if "guarded" in slots else None
    at = reference.square if reference is not None else None
    fits = [
        m
        for m in board.legal_moves()
        if board.piece_at(m[2:4]) is not None
        and (at is None or at in guarded(board, m[2:4]) or at in board.attacks(m[2:4]))
    ]
    if shown in fits:
        return shown
    return fits[0] if at is not None and len(fits) == 1 else None


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move = claim.spot, claim.params["move"]
    board, side = spot.board, claim.side or "white"
    enemy = other(side)
    gone = move[2:4]
    san = board.san(move)
    after = board.play(move)
    if claim.params["hits"]:
        return _hit(claim, after, san)
    if board.piece_at(gone) is None:
        because = f"{san} captures nothing."
        return Judgement(Outcome.FAILS, because, (move,), spot, {}, instead=because)
    what = name(board, gone)
    named = claim.params["guarded"]
    had = guarded(board, gone)
    if named is not None:
        holds, because = _named(board, after, gone, named, side, claim.params["article"], san)
        falls = [named]
    else:
        falls = [
            at
            for at in had
            if after.piece_at(at) == board.piece_at(at)
            and exchange(after, at, side) >= 1
            and exchange(after, at, side) > exchange(board, at, side)
        ]
        holds = bool(falls)
        if holds:
            because = f"{san} takes {what}, which protected {names(board, falls)}."
        elif had:
            because = f"{san} takes {what}; what it protected ({names(board, had)}) does not fall."
        else:
            because = f"{san} takes {what}, which protected nothing."
    marks = tuple(Mark("move", (gone, at), enemy) for at in falls) if holds else ()
    numbers = {"protected": len(had)}
    if not holds:
        because = upper(because)
        return Judgement(Outcome.FAILS, because, (move,), spot, numbers, instead=because)
    paid = pays(ask, spot.play(move), side, material(board, side))
    return Judgement(
        Outcome.HOLDS, upper(because), (move, *paid.line), spot, numbers, marks=marks, second=paid.said(side)
    )  # fmt: skip


def _hit(claim: Claim, after: Board, san: str) -> Judgement:
    """Whether the move attacks a piece that guards what is named."""
    spot, move, at = claim.spot, claim.params["move"], claim.params["guarded"]
    side = claim.side or "white"
    prey = [s for s in after.attacks(move[2:4]) if s in pieces(after, other(side))]
    found = [s for s in prey if at in after.attacks(s)]
    if found:
        because = f"{san} attacks {names(after, found)}, which guards {name(after, at)}."
        marks = (Mark("move", (move[2:4], found[0]), side), Mark("move", (found[0], at), other(side)))  # fmt: skip
        return Judgement(Outcome.HOLDS, because, (move,), spot, {"guards": len(found)}, marks=marks)
    because = f"{san} attacks no piece that guards {name(after, at)}."
    return Judgement(Outcome.FAILS, because, (move,), spot, {"guards": 0}, instead=because)


def _named(
    board: Board, after: Board, gone: str, at: str, side: str, article: str, san: str
) -> tuple[bool, str]:
    """Whether the captured piece guarded what is named; "the" guard asks that too few are left, "the only" that it was alone."""
    enemy = other(side)
    what, thing = name(board, gone), name(board, at)
    stands = board.piece_at(at) is not None and at in pieces(board, enemy)
    if not (at in guarded(board, gone) if stands else at in board.attacks(gone)):
        return False, f"{san} takes {what}, which did not protect {thing}."
    left = [s for s in after.attackers(enemy, at) if s != at]
    if article in {"a", "one of the", "one", "another"} or not left:
        return True, f"{san} takes {what}, which protected {thing}."
    if article in {"the", "its", "his", "our"} and stands and exchange(after, at, side) >= 1:
        return True, f"{san} takes {what}, and what is left does not protect {thing} enough."
    kept = f"{names(after, left)} still {'protect' if len(left) > 1 else 'protects'} {thing}"
    return False, f"{san} takes {what}, but {kept}."


KIND = Kind(
    id="removal-of-guard",
    title="Removal of the guard",
    version=2,
    definition=(
        "The move captures a piece that protected the piece or square named; 'the' guard, and too few are left: none, or the exchange there now gains a pawn or more; 'the only' guard, and none is left. "
        "Where nothing is named, some piece that it protected can now be won in the exchange on its square and could not before, or not as much. Whether it pays is a second finding. "
        "Of a guard that is hit or gone for: the piece moved attacks one that guards what is named."
    ),
    frames=FRAMES,
    tests={"article": _article, "ward": lambda n: n.square if n.square and _article(n) else None, "guarded": lambda n: n.text if n.type in {"piece", "square"} else None},
    read=read,
    check=check,
    flips=True,
    tactic="for",
)  # fmt: skip
