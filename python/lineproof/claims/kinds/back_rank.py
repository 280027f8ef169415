"""Weak back ranks: a king without a square to flee to from a check along its first rank."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import names, other, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.pointing import checked_side, king, present
from lineproof.engine import Board

GUARDS = 1
"""Rooks and queens on its own first rank with which a back rank still counts as weak, at most."""
DEPTH = 2
"""Moves within which a threatened back-rank mate must mate."""

LUFT = (
    "luft", "air", "breathing hole", "breathing space", "breathing room", "escape square", "flight square", "escape squares", "flight squares", "loophole",
    "escape hatch", "bolt hole",
)  # fmt: skip
"""What lets a king off its first rank, in words."""
FRAMES = (
    "{king} <have> {none}",
    "{side} <have> {none} [for {king}] [on back_rank]",
    "{king} <have> {none} [on back_rank]",
    "{king} <lack/be_without> {made} ; lacks=yes",
    "{side} <lack/be_without> {made} ; lacks=yes",
    "<~> {none} for {king}",
    "<~> {none} on back_rank",
    "back_rank <=> {weak}",
    "{side} <have> {weak_rank}",
    "{side} <have> (trouble|problem|weakness) (on|with) back_rank",
    "{side} <=> {weak} (on|along) back_rank",
    "{king} <=> {weak} (on|along) back_rank",
    "[{agent}] <make/create/get/give> {made} [for {king}] [with {move}]",
    "{king} <have> {made} [on {square}]",
    "[{agent}] <threaten> {mating}",
    "[{agent}] <threaten> mate (on|along) back_rank ; mated=yes",
    "<~> (threat|danger) of {mating}",
    "<~> {mating}",
    "<~> mate (on|along) back_rank ; mated=yes",
)


def _no_luft(noun: Noun) -> str | None:
    return "luft" if noun.no and _luft(noun) else None


def _some_luft(noun: Noun) -> str | None:
    return "luft" if not noun.no and _luft(noun) else None


def _luft(noun: Noun) -> bool:
    words = {noun.head, *(f"{a} {noun.head}" for a in noun.adjectives)}
    return not words.isdisjoint({*LUFT, *NOUNS["luft"]})


def _weak_rank(noun: Noun) -> str | None:
    """ "A weak back rank", "a back-rank problem"."""
    if noun.head in NOUNS["back rank"]:
        return noun.text if "weak" in noun.adjectives else None
    named = not _RANKS.isdisjoint(noun.adjectives)
    return noun.text if noun.head in {"problem", "weakness", "trouble"} and named else None


def _mate(noun: Noun) -> str | None:
    """ "A back-rank mate"."""
    return (
        noun.text if noun.head in NOUNS["mate"] and not _RANKS.isdisjoint(noun.adjectives) else None
    )


_RANKS = frozenset(NOUNS["back rank"])


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb)
    spot = here.at(here.named(slots["move"]).after).spot if "move" in slots else here.spot
    if "mating" in slots or "mated" in slots:
        return [_threat(here, slots, spot)]
    if "lacks" in slots:
        slots["none"] = slots.pop("made")
    if "made" in slots:
        side = other(spot.board.turn) if "move" in slots else None
        if "agent" in slots:
            side = here.agent(slots["agent"]).side
        elif "side" in slots:
            side = here.side(slots["side"])
        elif "king" in slots:
            side = _king_of(here, slots["king"])
        if side is None:
            raise Unread("it is not clear whose king is meant")
        if not _tucked_away(spot.board, side):
            raise Unread("the king has not castled, so it may have no need of any")
        return [here.claim(KIND.id, side, spot=spot, negated=True, luft=True, mate=False)]
    if "king" in slots:
        side = _king_of(here, slots["king"])
    elif "whose" in slots:
        side = here.side(slots["whose"])
    elif "side" in slots:
        side = here.side(slots["side"])
    else:
        side = _only_weak(here, luft="none" in slots)
    luft = "none" in slots
    if luft and not _at_home(spot.board, side):
        raise Unread("the king is not on its first rank")
    return [here.claim(KIND.id, side, spot=spot, luft=luft, mate=False)]


def _king_of(here: Here, text: str) -> str:
    """Whose king: "the king" alone only when one of the two kings stands on its first rank without a flight square."""
    if text.split()[0] == "the" and not any(
        w in text.split() for w in ("white", "black", "on", "at")
    ):
        return _only_weak(here, luft=True)
    return checked_side(here, text)


def _only_weak(here: Here, *, luft: bool) -> str:
    """The only side of which it is true; so nobody need be named."""
    found = [s for s in ("white", "black") if _reason(here.board, s, luft=luft)[0]]
    if len(found) != 1:
        raise Unread("it is not clear whose back rank is meant")
    return found[0]


def _threat(here: Here, slots: dict[str, Any], spot: Any) -> Claim:
    """A back-rank mate that is threatened: by the side named, else by the last mover."""
    attacker = other(spot.board.turn)
    if "agent" in slots:
        attacker = here.agent(slots["agent"]).side
    if spot.board.turn == attacker and not spot.board.is_checkmate:
        raise Unread("it is that side's own move, so nothing is only threatened")
    return here.claim(KIND.id, other(attacker), spot=spot, luft=False, mate=True)


def _home(side: str) -> str:
    return "1" if side == "white" else "8"


def _king_square(board: Board, side: str) -> str:
    return pieces(board, side, "k")[0]


def _at_home(board: Board, side: str) -> bool:
    return _king_square(board, side)[1] == _home(side)


def _tucked_away(board: Board, side: str) -> bool:
    return _at_home(board, side) and _king_square(board, side)[0] not in "def"


def _flights(board: Board, side: str) -> list[str]:
    """Squares off its first rank to which the king could step: not its own side's, not attacked by the enemy."""
    at = _king_square(board, side)
    own = set(pieces(board, side))
    return [
        to
        for to in board.attacks(at)
        if to[1] != at[1] and to not in own and not board.attackers(other(side), to, (at,))
    ]


def _reason(board: Board, side: str, *, luft: bool) -> tuple[bool, str]:
    """Whether the back rank is weak, or the king without a flight square (`luft`), and why."""
    enemy = other(side)
    whose = f"{title(side)}'s king on {_king_square(board, side)}"
    if not _at_home(board, side):
        return False, f"{whose} is not on its first rank."
    free = _flights(board, side)
    if free:
        return False, f"{whose} can step out to {' or '.join(free)}."
    if luft:
        return True, f"{whose} has no square off its first rank."
    if not any((board.piece_at(s) or "").lower() in "rq" for s in pieces(board, enemy)):
        return False, f"{title(enemy)} has no rook or queen to use it."
    guards = _guards(board, side)
    if len(guards) > GUARDS:
        return (
            False,
            f"{whose} has no square off its first rank, but {names(board, guards)} guard the rank.",
        )
    kept = (
        f"only {names(board, guards)} guards the rank"
        if guards
        else "no rook or queen guards the rank"
    )
    return True, f"{whose} has no square off its first rank, and {kept}."


def _guards(board: Board, side: str) -> list[str]:
    """The rooks and queens of a side on its own first rank."""
    return [
        s
        for s in pieces(board, side)
        if s[1] == _home(side) and (board.piece_at(s) or "").lower() in "rq"
    ]


def check(claim: Claim, ask: Ask) -> Judgement:
    board = claim.spot.board
    side = claim.side or "white"
    if claim.params["mate"]:
        return _mates(claim, ask, side)
    holds, because = _reason(board, side, luft=claim.params["luft"])
    numbers = {"flight squares": len(_flights(board, side)), "guards": len(_guards(board, side))}
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        (),
        claim.spot,
        numbers,
        instead=None if holds else because,
        marks=(Mark("square", (_king_square(board, side),), other(side)),),
    )


def _mates(claim: Claim, ask: Ask, side: str) -> Judgement:
    attacker = other(side)
    if claim.spot.board.is_checkmate:
        board = claim.spot.board
        home = _at_home(board, board.turn) and any(
            g[1] == _home(board.turn) and (board.piece_at(g) or "").lower() in "rq"
            for g in board.checkers()
        )
        because = f"{title(board.turn)} is mated{' along the back rank' if home else ', but not along the back rank'}."
        return Judgement(
            Outcome.HOLDS if home else Outcome.FAILS, because, (), claim.spot, {}, instead=None if home else because
        )  # fmt: skip
    free = claim.spot.with_move_for(attacker)
    if free is None:
        because = f"{title(side)} is in check and cannot pass, so a threat cannot be asked for."
        return Judgement(Outcome.UNSETTLED, because, (), claim.spot)
    forced, line = ask.mate(free, DEPTH)
    if forced is None:
        because = f"Not every line could be tried to mate in {DEPTH} after a pass."
        return Judgement(Outcome.UNSETTLED, because, (), free, {}, 1.0)
    if forced:
        end = free.line(line)
        givers = end.board.checkers()
        on_rank = king(end, side)[1] == _home(side) and any(
            g[1] == _home(side) and (end.board.piece_at(g) or "").lower() in "rq" for g in givers
        )
        sans = " ".join(free.board.san_line(list(line)))
        if on_rank:
            because = f"If {title(side)} passes, {sans} is mate on the back rank."
            return Judgement(Outcome.HOLDS, because, line, free, {"mate in": (len(line) + 1) // 2})
        because = f"If {title(side)} passes, {sans} mates, but not along the back rank."
        return Judgement(Outcome.FAILS, because, line, free, {}, instead=because)
    because = f"If {title(side)} passes, {title(attacker)} has no mate within {DEPTH} moves."
    return Judgement(Outcome.FAILS, because, (), free, {}, instead=because)


KIND = Kind(
    id="back-rank",
    title="Weak back rank",
    version=2,
    definition=(
        f"The king stands on its first rank with no square off that rank to step to (each is its own side's or attacked), the enemy has a rook or queen, and at most {GUARDS} rook or queen of its own guards that rank. "
        f"'No luft' and 'no escape square' ask the squares alone; a back-rank mate that is threatened: after a pass, mate in at most {DEPTH} by a rook or queen on that rank."
    ),
    slots={
        "weak": dict.fromkeys(("weak", "vulnerable", "unguarded", "unprotected", "bare", "undefended", "a weakness", "a problem", "exposed", "open", "in danger", "without protection"), True)
    },
    frames=FRAMES,
    tests={"none": _no_luft, "made": _some_luft, "weak_rank": _weak_rank, "mating": _mate},
    read=read,
    check=check,
    flips=True,
    tactic="against",
)  # fmt: skip
