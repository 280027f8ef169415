"""Trapped pieces: nowhere safe to go, and they fall."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from lineproof.claims.board import attackers, material, name, names, other, side_of, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.exchange import safe_squares
from lineproof.claims.gain import settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.pointing import alone, meant, present
from lineproof.claims.reference import Reference

WITHIN = 8
"""Plies of best play within which the piece must fall: attacked within three moves, and then taken."""

FRAMES = (
    "<be:trap> {target}",
    "<be:entomb/bury> {target} ; either=yes",
    "{target} <get_out/come_out> ; either=yes if modal=can|will negated",
    "{agent} <trap> {target} [(on|in) {square}] [with {move}]",
    "[{agent}] <trap> {target} [with {move}] if active",
    "<be:trap> {target} [(on|in|at) {square}]",
    "{target} <have/find> {none}",
    "{target} <have/find> {bare} if negated",
    "<~> {none} (for|of) {target}",
    "{target} <=> without {bare}",
    "{target} <=> goner",
    "{target} <=> doomed",
    "<=> curtains for {target}",
    "{target} <lack> square ; short=yes",
    "{target} <lack> escape",
    "{target} <=> trapped",
    "{target} <be short of/run out of/be out of/be running out of> square ; short=yes",
    "{target} <=> (out_of|short_of|without) square ; short=yes",
    "{target} <escape/get away/run away/be saved> if modal=can|will negated",
    "{target} <hide/run> ; short=yes if modal=can negated",
    "{target} <find> escape if modal=can|will negated",
    "<be:save/rescue> {target} if modal=can|will negated",
    "<*> {caught}",
)
_NOWHERE = frozenset({"square", "nowhere", "retreat", "flight square", "retreat square", *NOUNS["square"]})  # fmt: skip


def _none(noun: Noun) -> str | None:
    """ "No square", "nowhere", "no way out"."""
    escapes = noun.head in NOUNS["escape"] or noun.head == "escape square"
    return noun.head if noun.no and (noun.head in _NOWHERE or escapes) else None


def _caught(noun: Noun) -> str | None:
    """ "The trapped bishop"."""
    said = {"trapped", "cornered", "ensnared"} & set(noun.adjectives)
    return noun.text if noun.type == "piece" and said and not noun.parts else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will")
    alone(here)
    spot, victim = here.spot, None
    if "move" in slots:
        named = here.named(slots["move"])
        spot, victim = named.after, other(named.side)
    elif "agent" in slots:
        agent = here.agent(slots["agent"])
        spot, victim = agent.spot, other(agent.side)
    at_spot = here.at(spot)
    words = slots.get("target") or slots.get("caught")
    if "square" in slots and words is not None and Reference.read(words).square is None:
        words = f"{words} on {slots['square']}"  # "the bishop is caught on g3"
    held = {at for at, _ in spot.board.pieces() if _hit(spot, at)} & set(here.find(words or ""))
    stuck = [at for at in held if not safe_squares(spot.board, at)]
    found = meant(
        at_spot,
        words,
        fits=lambda at: (
            at in held
            if len(held) == 1
            else not safe_squares(spot.board, at) and (at in held or not stuck)
        ),
    )
    if "square" in slots and slots["square"] not in found:
        raise Unread(f"that piece does not stand on {slots['square']}")
    none = slots.get("none") or slots.get("bare") or ("square" if "short" in slots else "")
    squares_only = none in _NOWHERE
    if "either" in slots and all(at[1] in "18" and not _hit(spot, at) for at in found):
        raise Unread("it stands on its first rank, so it is shut in rather than trapped")
    claims = []
    for at in found:
        side = side_of(spot.board.piece_at(at) or "K")
        if victim is not None and side != victim:
            raise Unread("it is not clear who traps whom")
        claims.append(
            here.claim(KIND.id, side, spot=spot, negated=False, at=at, squares_only=squares_only)
        )
    return claims


def _hit(spot: Spot, at: str) -> bool:
    """Whether an enemy piece attacks what stands on a square."""
    return bool(attackers(spot.board, at)[0])


@dataclass(frozen=True)
class _Fall:
    """What best play makes of the piece.

    taken: whether it is taken within `WITHIN` plies. gain: what the taker has then gained, captures played out. mated: the side that
    best play mates first. line: best play, to the capture.
    """

    taken: bool
    gain: int
    mated: str | None
    line: tuple[str, ...]

    @property
    def falls(self) -> bool:
        return self.taken and self.gain >= 1


def _fall(ask: Ask, spot: Spot, at: str, owner: str) -> _Fall:
    enemy = other(owner)
    here, where = spot, at
    line: list[str] = []
    played: list[str] = []
    while len(played) < WITHIN:
        if not line:
            best = ask.best(here)
            if best is None:
                break
            if best.mate is not None:
                return _Fall(False, 0, "black" if best.mate > 0 else "white", best.moves)
            line = list(best.moves)
        uci = line.pop(0)
        mover = here.board.turn
        here = here.play(uci)
        played.append(uci)
        if mover == enemy and uci[2:4] == where:
            gain = settled(ask, here, enemy).balance - material(spot.board, enemy)
            return _Fall(True, gain, None, tuple(played))
        if mover == owner and uci[:2] == where:
            where = uci[2:4]
    return _Fall(False, 0, None, tuple(played))


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, at = claim.spot, claim.params["at"]
    board = spot.board
    owner = claim.side or "white"
    who = upper(name(board, at))
    safe = safe_squares(board, at)
    numbers: dict[str, int | float | str] = {"safe squares": len(safe)}
    marks = (Mark("square", (at,), other(owner)),)
    if claim.params["squares_only"]:
        because = (
            f"{who} has no safe square."
            if not safe
            else f"{who} can go to {' or '.join(safe[:3])}."
        )
        return Judgement(
            Outcome.FAILS if safe else Outcome.HOLDS, because, (), spot, numbers,
            instead=because if safe else None, marks=marks,
        )  # fmt: skip
    hit, _ = attackers(board, at)
    if safe and board.turn == owner:
        because = f"{who} can go to {' or '.join(safe[:3])}."
        return Judgement(Outcome.FAILS, because, (), spot, numbers, instead=because, marks=marks)
    if safe:
        return _after_best(claim, ask, safe, numbers)
    fall = _fall(ask, spot, at, owner)
    if fall.mated == owner:
        because = f"{who} has no safe square, but best play mates {title(owner)} and does not show whether it falls."
        return Judgement(Outcome.UNSETTLED, because, fall.line, spot, numbers)
    attacked = "nothing attacks it yet"
    if hit:
        attacked = f"{names(board, hit)} {'attack' if len(hit) > 1 else 'attacks'} it"
    if fall.falls:
        because = f"{who} has no safe square: {attacked}, and best play wins it."
        return Judgement(Outcome.HOLDS, because, fall.line, spot, numbers, None, marks=marks)
    because = f"{who} has no safe square, but best play does not lose it."
    return Judgement(
        Outcome.FAILS, because, fall.line, spot, numbers, 1.0, f"{who} is shut in, not trapped." if not hit else because, marks=marks
    )  # fmt: skip


def _after_best(
    claim: Claim, ask: Ask, safe: list[str], numbers: dict[str, int | float | str]
) -> Judgement:
    """With the enemy to move: whether his best move traps it."""
    spot, at = claim.spot, claim.params["at"]
    owner = claim.side or "white"
    who = upper(name(spot.board, at))
    best = ask.best(spot)
    if best is not None and best.mate is None:
        uci = best.moves[0]
        after = spot.play(uci)
        san = spot.board.san(uci)
        if uci[2:4] != at and not safe_squares(after.board, at):
            fall = _fall(ask, after, at, owner)
            if fall.falls:
                because = (
                    f"After {san} {name(spot.board, at)} has no safe square, and best play wins it."
                )
                return Judgement(
                    Outcome.HOLDS, because, (uci, *fall.line), spot, numbers,
                    marks=(Mark("square", (at,), other(owner)),),
                )  # fmt: skip
    because = f"{who} can go to {' or '.join(safe[:3])}, and best play does not take that away."
    return Judgement(Outcome.FAILS, because, (), spot, numbers, 1.0, because)


KIND = Kind(
    id="trapped",
    title="Trapped piece",
    version=1,
    definition=(
        f"The piece (no king, no pawn) has no square where it loses less than a pawn in the exchange there, and best play takes it within {WITHIN} plies (attacked within three moves) with a gain of a pawn or more; "
        "with the enemy to move, after his best move. Otherwise it is only shut in. 'Has no safe square' asks the squares alone."
    ),
    frames=FRAMES,
    gives_way=frozenset({"by-force"}),
    tests={
        "none": _none,
        "bare": lambda n: n.head if n.head in _NOWHERE | set(NOUNS["escape"]) else None,
        "caught": _caught,
    },
    read=read,
    check=check,
    flips=True,
    tactic="against",
)  # fmt: skip
