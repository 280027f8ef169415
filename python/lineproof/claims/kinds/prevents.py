"""Prevention: what a move or a piece does not allow the other side."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import NAMES, name, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import MISTAKE, spelled, weigh
from lineproof.claims.here import Here, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.passing import parsed
from lineproof.claims.reference import Reference
from lineproof.claims.structure import ahead
from lineproof.claims.timing import as_it_stands, of_this_move

FRAMES = (
    "[{agent}] <prevent> {move}",
    "[{agent}] <prevent/keep/discourage/deter to play/push/reach/go/get_in/try/achieve/carry_out/insert> {move}",
    "[{agent}] <make> {move} impossible",
    "[{agent}] <take> {move} (away_from|from) {side} [+away]",
    "[{agent}] <take> {move} out_of {position}",
    "[{agent}] <deny> {side} {move}",
    "[{agent}] <rob> {side} of {move}",
    "[{agent}] <prevent> {going} of {target}",
    "{move} <=> impossible (thanks_to|because_of|owing_to|due_to|on_account_of) {agent}",
    "{move} <=> possible (thanks_to|because_of|owing_to|due_to|on_account_of) {agent} if negated",
    "[{agent}] <get/step/move> out_of {move}",
    "[{agent}] <avert> {move}",
    "{side} <play/push> {move} (thanks_to|because_of|owing_to|due_to|on_account_of) {man} if modal=can|may negated",
    "[{agent}] <guard/defend/protect/insure> against {move}",
    "[{agent}] <take> {square} +away",
    "[{agent}] <prevent/keep to play/move/capture/exchange/develop/free/push/break/attack/hang on/hang/hold on/hold on to/cling/cling to/gain/support/reply/answer/go/win/castle/open/pin/hold> [{anything}] with {move}",
    "[{agent}] <prevent/keep to move/come/go/land/jump/settle/get> (to|into|on|onto) {square} [{patient}]",
    "[{agent}] <prevent/keep to land on/capture on/land/reach/use/occupy/take on/come to/go to/get to> {square} [{patient}]",
    "[{agent}] <prevent> {blow} (on|at) {square}",
    "[{agent}] <prevent> {blow_at}",
    "[{agent}] <prevent> {going} [of {target}] to {square}",
    "[{agent}] <prevent> {arrival}",
    "[{agent}] <keep> {target} (off|out_of|away_from|from) {square}",
    "[{agent}] <keep> {side} (off|out_of|away_from|from) {square}",
    "[{agent}] <prevent> {target} from {square}",
    "[{agent}] <prevent> {target} to {square}",
    "{agent} <allow> {move} if negated",
    "{agent} <be> against {move}",
    "<be:direct/aim> {agent} against {move}",
    "[{agent}] <deny> {target} {square}",
    "[{agent}] <rob> {target} of {square}",
    "[{agent}] <take> {square} from {target} +away",
    "[{agent}] <take> {square} away_from {target}",
    "[{agent}] <defend> {square} (against|from) {target}",
    "[{agent}] <defend> {square} (against|from) {going} [of {target}]",
    "[{agent}] <defend> {square} +once_and_for_all|for_good|for_ever|forever",
    "[{agent}] <put> end to {move}",
    "{nobody} <prevent> {move}",
    "(idea|next idea) <be to prevent> {move}",
    "(idea|next idea) of {agent} <be to prevent> {move}",
    "[{agent}] <~> measure against {move}",
    "<be:deny> {square} to {target}",
)
_BLOWS = frozenset({"fork", "sacrifice", "shot", "blow", "jump", "leap", "capture", "mate", "check", "royal fork", "family fork", "discovery"})  # fmt: skip
_GOING = frozenset({"advance", "push", "thrust", "break"})


def _blow_at(noun: Noun) -> str | None:
    """ "The check on b5", "the fork on c2": the square."""
    if noun.type != "noun" or noun.head not in _BLOWS | _GOING or noun.no:
        return None
    found = re.search(r" on ([a-h][1-8])$", noun.text)
    return found[1] if found else noun.square or None


def _going(noun: Noun) -> str | None:
    """How something would come to a square: "the advance", "the development"."""
    said = noun.head in {
        *_GOING,
        "jump",
        "leap",
        "sortie",
        "development",
        "invasion",
        "move",
        "check",
    }
    return noun.head if noun.type == "noun" and said and not noun.no else None


def _arrival(noun: Noun) -> str | None:
    """ "The development of the knight to c3": the piece and its square."""
    if noun.type != "noun" or noun.no or _going(noun) is None:
        return None
    found = re.search(r" of ((?:the|his|our|their|white 's|black 's) [a-z' ]+?) (?:to|on|at) ([a-h][1-8])$", noun.text)  # fmt: skip
    return f"{found[1]}|{found[2]}" if found else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    if "nobody" in slots:
        return [_unhindered(here, slots["move"])]
    if "blow_at" in slots:
        slots["square"] = slots.pop("blow_at")
    if "arrival" in slots:
        slots["target"], slots["square"] = slots.pop("arrival").split("|")
    if "man" in slots:
        slots["agent"] = slots.pop("man")
    if "going" in slots and "square" not in slots and "target" in slots:
        return [_advance(here, slots)]
    if "agent" not in slots:
        of_this_move(here)
    agent = here.agent(slots.get("agent"))
    side, spot = agent.side, agent.spot
    enemy = other(side)
    if slots.get("patient") in {"it", "this", "that"}:
        del slots["patient"]  # "makes it impossible"
    if "patient" in slots and "square" in slots:
        slots["target"] = slots.pop("patient")  # "stops the knight from coming to g5"
    if "side" in slots and here.side(slots["side"]) != enemy:
        raise Unread("a side does not keep itself from a move")
    if "whose" in slots and here.side(slots["whose"]) != enemy:
        raise Unread("a side does not keep itself from a move")
    new = bool(spot.moves) and other(spot.board.turn) == side
    if agent.square is None and not new:
        raise Unread("it is not clear what prevents it")
    at = here.at(spot)
    if "move" in slots and new and parsed(spot.earlier(1), slots["move"]) == spot.moves[-1]:
        raise Unread(f"{slots['move']} is that side's own move")
    letter = None
    if "target" in slots:
        reference = Reference.read(slots["target"])
        owner = at.owner(reference)
        if owner == side:
            raise Unread("a side does not keep its own piece away")
        found = [o for o in reference.squares(spot.board, enemy) if o in pieces(spot.board, enemy)]
        if not found or (reference.plural and len(found) < 2):
            raise absent(slots["target"], "to be kept away")
        letter = (spot.board.piece_at(found[0]) or "").lower()
        if reference.square is not None or reference.file is not None:
            letter = None
        origins = found
    else:
        origins = pieces(spot.board, enemy) if "square" in slots else []
        if slots.get("going") in _GOING:
            origins = [o for o in origins if (spot.board.piece_at(o) or "").lower() == "p"]
    return [
        here.claim(
            KIND.id, side, spot=spot, move=slots.get("move"), square=slots.get("square"), origins=origins,
            letter=letter, by=agent.square, new=new and (agent.square is None or spot.moves[-1][2:4] == agent.square),
        )
    ]  # fmt: skip


def _advance(here: Here, slots: dict[str, Any]) -> Claim:
    """ "Prevents the advance of the b-pawn": the only step that it has, or its double step.

    :raises Unread: when it is no pawn's, or that of none in particular.
    """
    agent = here.agent(slots.get("agent"))
    enemy = other(agent.side)
    at = here.at(agent.spot)
    found = [o for o in at.find(slots.get("target", ""), enemy) if o in pieces(at.board, enemy, "p")] if "target" in slots else []  # fmt: skip
    if slots["going"] not in _GOING or len(found) != 1:
        raise Unread("it is not clear which move is prevented")
    step = ahead(enemy, found[0])
    square = step if step is not None and at.board.piece_at(step) is None else None
    if square is None:
        raise Unread("the pawn cannot step forward anyway")
    new = bool(agent.spot.moves) and other(agent.spot.board.turn) == agent.side
    return here.claim(
        KIND.id, agent.side, spot=agent.spot, move=None, square=square, origins=found, letter=None, by=agent.square,
        new=new and (agent.square is None or agent.spot.moves[-1][2:4] == agent.square),
    )  # fmt: skip


def _unhindered(here: Here, move: str) -> Claim:
    """ "Nothing prevents Nxf7": a denial on the part of the side against which the move goes.

    :raises Unread: when neither side can play the move.
    """
    for side in (here.mover, other(here.mover)):
        spot = here.spot.with_move_for(side)
        if spot is not None and parsed(spot, move) is not None:
            return here.claim(
                KIND.id, other(side), negated=True, move=move, square=None, origins=[], letter=None, by=None, new=False,
            )  # fmt: skip
    raise Unread(f"{move} is not legal here")


def check(claim: Claim, ask: Ask) -> Judgement:
    side, spot = claim.side or "white", claim.spot
    enemy = other(side)
    now = spot.with_move_for(enemy)
    if now is None:
        return _unsettled(f"{title(side)} is in check and cannot pass, so it cannot be asked.")
    before = spot.earlier(1).passed() if claim.params["new"] else None
    legal = _legal(claim, now)
    earlier = _legal(claim, before) if before is not None else []
    what = _what(claim)
    if not legal:
        if earlier:
            return Judgement(Outcome.HOLDS, f"{what} is no longer possible.", (), now)
        return _not_yet(claim, now, what)
    found = weigh(ask, now, *legal)
    san = now.board.san(found.uci)
    if not found.counted:
        return _unsettled(
            f"{title(enemy)} is lost whatever he plays, so what {san} costs is not counted."
        )
    said = _outcome(found.best, found.played)
    near = edge_of_two(found.best, found.played, _outcome)
    because = f"{san} would cost {title(enemy)} {spelled(found.points)} now."
    if said is Outcome.HOLDS and before is not None and earlier:
        was = weigh(ask, before, *earlier)
        if was.points >= MISTAKE:
            because += f" It would have cost {spelled(was.points)} before as well."
            return Judgement(
                Outcome.UNSETTLED,
                because,
                found.line,
                now,
                {"cost": found.points, "before": was.points},
                near,
            )
    return Judgement(
        said, because, found.line, now, {"cost": found.points}, near,
        f"{upper(what)} is still possible: {because}" if said is Outcome.FAILS else None,
        one_off=said is Outcome.UNSETTLED, marks=(Mark("move", (found.uci[:2], found.uci[2:4]), enemy),),
    )  # fmt: skip


def _outcome(best: int, played: int) -> Outcome:
    """Prevented is what would be a mistake; what is safe is not."""
    if is_safe(best, played):
        return Outcome.FAILS
    return Outcome.HOLDS if best - played >= MISTAKE else Outcome.UNSETTLED


def _legal(claim: Claim, spot: Spot) -> list[str]:
    move, square, letter = claim.params["move"], claim.params["square"], claim.params["letter"]
    if move is not None:
        uci = parsed(spot, move)
        return [] if uci is None else [uci]
    board = spot.board
    return [
        m
        for m in board.legal_moves()
        if m[2:4] == square
        and (m[:2] in claim.params["origins"] or (board.piece_at(m[:2]) or "").lower() == letter)
    ]


def _not_yet(claim: Claim, now: Spot, what: str) -> Judgement:
    """A move that is possible neither with nor without: prevented where the piece stands in its way or guards the square."""
    board, by = now.board, claim.params["by"]
    square = claim.params["square"] or (claim.params["move"] or "").rstrip("+#")[-2:]
    enemy = other(claim.side or "white")
    if by is not None and square in board.attacks(by):
        because = f"{upper(name(board, by))} guards {square}."
        return Judgement(
            Outcome.HOLDS,
            because,
            (),
            now,
            marks=(Mark("move", (by, square), claim.side or "white"),),
        )
    for origin in pieces(board, enemy, _letter(claim)):
        if by is not None and by in board.between(origin, square):
            because = f"{upper(name(board, by))} stands between {name(board, origin)} and {square}."
            return Judgement(Outcome.HOLDS, because, (), now)
    because = f"{upper(what)} is not possible, with or without it."
    return Judgement(Outcome.UNSETTLED, because)


def _letter(claim: Claim) -> str:
    move = claim.params["move"]
    if move is not None:
        san = move.split(".")[-1]
        return san[0].lower() if san[0] in "KQRBN" else "p"
    at = next(iter(claim.params["origins"]), "")
    return (claim.spot.board.piece_at(at) or "p").lower()


def _what(claim: Claim) -> str:
    if claim.params["move"] is not None:
        return str(claim.params["move"])
    if claim.params["letter"] is None and len(claim.params["origins"]) > 1:
        return f"a move to {claim.params['square']}"
    return f"{NAMES[_letter(claim)]} to {claim.params['square']}"


def _unsettled(because: str) -> Judgement:
    return Judgement(Outcome.UNSETTLED, because)


KIND = Kind(
    id="prevents",
    title="Prevents",
    version=1,
    definition=(
        "The other side's move is not legal any more, or it would be a mistake (a cost of 12 points or more); it fails where the move is safe (costs at most 5, or keeps 85 of more than 90), and is unsettled between, "
        "or where it would have been a mistake before as well. Of a move that is not possible yet: the piece guards the square or stands in the way."
    ),
    formula=f"cost = best - played, of the other side's move; holds: not legal any more, or cost >= {MISTAKE}; unsettled: between; fails: safe move",
    frames=FRAMES,
    tests={"arrival": _arrival, "blow": lambda n: n.text if n.head in _BLOWS else None, "blow_at": _blow_at, "going": _going, "man": lambda n: n.text if n.type == "piece" and not n.plural else None, "position": lambda n: n.head if n.head in {"position", "game", "hand"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
