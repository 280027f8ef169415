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
from lineproof.claims.pays import pays
from lineproof.claims.pointing import meant, present
from lineproof.claims.reference import Reference
from lineproof.engine import Board

_REMOVE = "remove/eliminate/destroy/kill/kill off/knock out/capture/take/take off/take away/exchange/exchange off/swap off/trade off/snap off/get rid of/undermine/chop off"
_OF = "[(of|for) {guarded}]"

PHRASES = (
    f"{{agent}} <{_REMOVE}> {{article}} (guard|defender|protector|guardian) {_OF}",
    f"{{agent}} <{_REMOVE}> {{piece_of}} [,] {{article}} (guard|defender|protector|guardian) {_OF}",
    f"{{agent}} <{_REMOVE}> {{piece_of}} [,] (that|which) (guards|protects|defends|guarded|protected|defended|was guarding|was protecting|was defending) {{guarded}}",
    f"<ing:{_REMOVE}> {{article}} (guard|defender|protector|guardian) {_OF}",
    "(this|that|it|{move}) <be> [a] (removal of the guard|removal of the defender)",
    f"{{article}} (guard|defender|protector|guardian) {_OF} <be:remove/take/capture/eliminate/exchange/exchange off> [by {{move}}]",
    f"{{article}} (guard|defender|protector|guardian) {_OF} <disappear/go/be gone/be off the board>",
)  # fmt: skip


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
    "[{agent}] <remove> {article} of {guarded}",
    "[{agent}] <remove> {article}",
    "{article} of {guarded} <fall/come off/go>",
    "<be:remove> {article} of {guarded}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will", "can")
    move = _move(here, slots, verb)
    before = move.before.board
    quiet = before.piece_at(move.uci[2:4]) is None
    if quiet and "agent" in slots and here.agent(slots["agent"]).move is None:
        raise Unread("no capture is shown")
    named = None
    if "guarded" in slots:
        reference = Reference.read(slots["guarded"])
        if reference.letter is None and reference.square is not None:
            named = reference.square
        else:
            after = here.at(move.after)
            named = meant(
                after, slots["guarded"], "qrbnp", fits=lambda s: s in guarded(before, move.uci[2:4])
            )[0]
            if named not in pieces(after.board, other(move.side)):
                raise Unread("that is a piece of the capturing side")
    if "piece_of" in slots:
        wanted = Reference.read(slots["piece_of"]).letter
        if wanted is not None and (before.piece_at(move.uci[2:4]) or "").lower() != wanted:
            raise Unread(f"{slots['piece_of']!r} is not what is captured")
    return [
        here.claim(
            KIND.id, move.side, spot=move.before, move=move.uci, guarded=named, article=slots.get("article", "the")
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
    version=1,
    definition=(
        "The move captures a piece that protected the piece or square named; 'the' guard, and too few are left: none, or the exchange there now gains a pawn or more; 'the only' guard, and none is left. "
        "Where nothing is named, some piece that it protected can now be won in the exchange on its square and could not before, or not as much. Whether it pays is a second finding."
    ),
    phrases=PHRASES,
    slots={
        "article": {k: k for k in ("the", "a", "an", "its", "his", "our", "the only", "its only", "the last", "one of the", "one", "another", "the most important", "the main", "an important", "a key", "the key")}
    },
    patterns={
        "guarded": r"(?: the| his| her| our| your| their| black 's| white 's)?(?: [a-h][1-8]| [b-h])? (?:queen|rook|bishop|knight|pawn|[a-h][1-8])(?: (?:on|at) [a-h][1-8])?",
        "piece_of": r"(?: the| his| her| our| your| their| black 's| white 's) (?:queen|rook|bishop|knight|pawn)(?: on [a-h][1-8])?",
    },
    vocabulary=frozenset(
        ["guard", "defender", "protector", "guardian", "guards", "protects", "defends", "guarded", "protected", "defended", "guarding", "protecting", "defending"]
    ),
    frames=FRAMES,
    tests={"article": lambda n: (n.det or "the") if not n.plural and not n.det.endswith(" of") and n.head in {"guard", "defender", "protector", "guardian"} else None, "guarded": lambda n: n.text if n.type in {"piece", "square"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
