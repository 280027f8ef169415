"""Lost tempi: moves that a piece did not need."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import name, other, pieces, side_of, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.reference import Reference
from lineproof.claims.timing import of_this_move
from lineproof.claims.tracks import Loss, losses, tracks

FRAMES = (
    "[{agent}] <lose/waste/spend> tempo [with {target}]",
    "[{agent}] <lose/waste> {a_move} [with {target}]",
    "[{agent}] <lose/waste/spend> (tempo) (with|by) {move}",
    "[{agent}] <lose/waste/spend> {a_move} (with|by) {move}",
    "{side} <move/play> {same} {times}",
    "{side} <move/play> {defender} {times}",
    "{defender} <move> {times}",
    "{side} <spend/use/waste/need> {moves_on}",
    "[{agent}] <cost> {side} tempo",
    "[{agent}] <=> waste of tempo",
    "[{agent}] <move/play> with loss_of_tempo",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    said = here.said
    if "moves_on" in slots:
        count, slots["defender"] = re.split(" moves? (?:on|with) ", slots["moves_on"])
        slots["times"] = int(count)
    if "times" in slots:
        return [_moved(here, slots)]
    verb = slots.get("verb")
    coming = _coming(here, slots.get("agent")) if "side" not in slots else None
    if coming is not None and (verb is None or not (verb.done or verb.past or verb.negated)):
        return [here.claim(KIND.id, coming.board.turn, spot=coming.play(here.shown_next or ""), just=True, n=1, at=None)]  # fmt: skip
    if verb is not None and verb.modal in {"can", "will", "must", "shall"}:
        raise Unread("said of what may come")
    if verb is not None and verb.negated and re.match(r"(?:do not|don['’]t|never|avoid)\b", said):
        raise Unread("it is advice")
    costs = re.search(r"\bcosts?\b|\bcosting\b", said) is not None and "cost of" not in said
    move = None
    if "move" in slots:
        past = verb is not None and (verb.done or verb.past)
        move = here.made(slots["move"]) if past else here.named(slots["move"])
    if "agent" not in slots and move is None:
        of_this_move(here)
    whole = "agent" in slots and _is_side(slots["agent"])
    agent = here.agent(slots.get("agent")) if not (whole or move) else None
    if move is not None:
        side, spot, just = move.side, move.after, True
        if whole and here.side(slots["agent"]) != side:
            raise Unread(f"{slots['move']} is no move of that side")
    elif whole:
        side, spot = here.side(slots["agent"]), here.spot
        just = not (verb is not None and verb.done) and here.mover == side
        if not just and not (verb is not None and verb.done):
            raise Unread("it is not clear which move loses it")
    else:
        assert agent is not None  # no side and no move named
        side, spot = agent.side, agent.spot
        just = not (verb is not None and verb.done)
        if not just and agent.move is None and agent.square is not None and "target" not in slots:
            slots["target"] = slots["agent"]  # "the queen has wasted time", some moves ago
        elif other(spot.board.turn) != side:
            raise Unread("it is not clear which move loses it")
    if costs and here.side(slots["side"]) != side:
        if agent is not None and agent.move is None:
            raise Unread("it is not clear which move loses it")
        raise Unread("it is not the mover who loses it")
    square = None
    if slots.get("target") in {"it", "this", "that"} and agent is not None and agent.square:
        square = [agent.square]
    elif slots.get("target") in {"it", "this", "that"} and whole and just:
        pass  # "Black loses a tempo with it": with the move just played
    elif "target" in slots:
        found = [
            at for at in here.at(spot).find(slots["target"], side) if at in pieces(spot.board, side)
        ]
        if not found or Reference.read(slots["target"]).plural:
            raise Unread(f"it is not clear which piece {slots['target']!r} is")
        square = found
    n = int(slots["n"]) if "n" in slots else 1
    if not 1 <= n <= 20:
        raise Unread("so many moves are not lost")
    return [here.claim(KIND.id, side, spot=spot, just=just, n=n, at=square)]


def _coming(here: Here, text: str | None) -> Spot | None:
    """The position before the move shown next, where the piece that "is about to lose a tempo" makes that move."""
    shown = here.shown_next
    if text is None or shown is None or _is_side(text):
        return None
    return here.spot if shown[:2] in here.find(text, here.board.turn) else None


def _moved(here: Here, slots: dict[str, Any]) -> Claim:
    """ "Black has moved the same knight three times": how often one of his has moved."""
    verb = slots["verb"]
    if not verb.done or verb.past or verb.modal or verb.negated:
        raise Unread("said of what may come")
    side = here.side(slots["side"]) if "side" in slots else None
    reference = Reference.read(slots.get("same") or slots["defender"])
    side = side or here.owner(reference)
    squares = reference.squares(here.board, side)
    if side is None:
        squares = here.salient(squares)
        if len(squares) != 1:
            raise Unread("it is not clear whose piece is meant")
        side = side_of(here.board.piece_at(squares[0]) or "K")
    if not squares or reference.plural:
        raise Unread("it is not clear which piece is meant")
    return here.claim(KIND.id, side, just=False, n=1, at=squares, steps=slots["times"])


def _is_side(text: str) -> bool:
    words = text.split()
    return words[-1] in {
        "white",
        "black",
        "we",
        "you",
        "i",
        "he",
        "she",
        "they",
        "opponent",
        "player",
    }


def _times(count: int) -> str:
    return {0: "not once", 1: "once", 2: "twice"}.get(count, f"{count} times")


def _counted(claim: Claim, steps: int) -> Judgement:
    """Whether one of the pieces meant has moved so often."""
    side = claim.side or "white"
    found = [t for t in tracks(claim.spot) if t.side == side and t.at in claim.params["at"]]
    most = max(found, key=lambda t: len(t.steps))
    count = len(most.steps)
    because = f"{upper(name(claim.spot.board, most.at))} has moved {_times(count)}."
    marks = (Mark("square", (most.at,), side),)
    if count == steps:
        return Judgement(Outcome.HOLDS, because, (), claim.spot, {"moves": count}, marks=marks)
    return Judgement(Outcome.FAILS, because, (), claim.spot, {"moves": count}, instead=because, marks=marks)  # fmt: skip


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, side, n = claim.spot, claim.side or "white", claim.params["n"]
    at, just = claim.params["at"], claim.params["just"]
    steps: int | None = claim.params.get("steps")
    if steps is not None:
        return _counted(claim, steps)
    if not spot.moves:
        return Judgement(Outcome.UNSETTLED, "No move that led here is known.")
    found = _lost(spot, side, at)
    total = sum(loss.moves for loss in found)
    line: tuple[str, ...] = ()
    if just:
        before = spot.earlier(1)
        last = spot.moves[-1]
        was = {loss.at: loss.moves for loss in losses(before, side)}
        total = sum(loss.moves for loss in found) - sum(was.values()) if at is None else total
        found = [loss for loss in found if loss.at == last[2:4]] or found[:0]
        if total < n:
            ahead, line = _driven_next(claim, ask)
            if ahead is not None:
                moved = spot.line(line[:1]).board.san(line[1])
                reply = spot.board.san(line[0])
                because = f"{reply} attacks {name(spot.board, last[2:4])}, which must move again ({moved})."
                holds = n == 1
                return Judgement(
                    Outcome.HOLDS if holds else Outcome.FAILS, because, line, spot, {"lost": 1},
                    instead=None if holds else because,
                )  # fmt: skip
    holds = total >= n
    numbers = {"lost": max(total, 0)}
    if found:
        because = " ".join(_spoken(spot, loss) for loss in found)
    else:
        because = f"{_mover(spot, side, just)} has used no more moves than its square needs, and no developing move drives it on."
        if not just:
            because = f"No piece of {title(side)} has used more moves than its square needs, or was driven on by a developing move."
    marks = tuple(Mark("square", (loss.at,), side) for loss in found)
    instead = None if holds else because
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS,
        because,
        line,
        spot,
        numbers,
        instead=instead,
        marks=marks,
    )


def _lost(spot: Spot, side: str, at: list[str] | None) -> list[Loss]:
    return [loss for loss in losses(spot, side) if at is None or loss.at in at]


def _driven_next(claim: Claim, ask: Ask) -> tuple[Loss | None, tuple[str, ...]]:
    """Whether the reply shown, or else the best one, drives the piece that has just moved on by a developing move."""
    spot, side = claim.spot, claim.side or "white"
    line: list[str] = []
    if spot.moves == tuple(claim.place.moves()):
        at = claim.place
        while at.next is not None and at.next.uci is not None and len(line) < 2:
            at = at.next
            line.append(at.uci or "")
    if len(line) < 2:
        best = ask.best(spot)
        line = list(best.moves[:2]) if best is not None else []
    if len(line) < 2 or line[1][:2] != spot.moves[-1][2:4]:
        return None, ()
    after = spot.line(line)
    was = sum(loss.driven for loss in losses(spot, side))
    for loss in losses(after, side):
        if (
            loss.at == line[1][2:4]
            and loss.driven > 0
            and sum(x.driven for x in losses(after, side)) > was
        ):
            return loss, tuple(line)
    return None, ()


def _mover(spot: Spot, side: str, just: bool) -> str:
    return upper(name(spot.board, spot.moves[-1][2:4])) if just else title(side)


def _spoken(spot: Spot, loss: Loss) -> str:
    who = upper(name(spot.board, loss.at))
    if loss.spent - loss.needed >= loss.driven:
        return f"{who} has spent {loss.spent} move{'s' if loss.spent != 1 else ''} where {loss.needed} would have done; captures and moves that nothing else could replace are not counted."
    times = "once" if loss.driven == 1 else "twice" if loss.driven == 2 else f"{loss.driven} times"
    return f"{who} was driven on {times} by a developing move."


KIND = Kind(
    id="loses-tempo",
    title="Loses a tempo",
    version=2,
    definition=(
        "A piece has used more moves than its square needs on an empty board (captures and moves that were the only legal one apart), or a developing move (a minor piece off its first square, castling, a pawn move that frees a bishop) "
        "attacked it, being worth less or it unprotected, and it moved on at once. Of the move just played: it adds to this, or the reply shown (else the best) does. 'n tempi' asks n or more. Of a piece that 'has moved twice' its moves are counted."
    ),
    frames=FRAMES,
    slots={"times": {"3 times": 3, "4 times": 4, "5 times": 5, "twice": 2, "2 times": 2}},
    tests={
        "moves_on": lambda n: n.text if n.type == "noun" and re.fullmatch(r"[2-9] moves (?:on|with) the (?:queen|rook|bishop|knight)(?: on [a-h][1-8])?", n.text) else None,
        "same": lambda n: f"the {n.head}" if n.type == "piece" and "same" in n.adjectives else None,"a_move": lambda n: n.head if n.head == "move" and n.type == "noun" and not set(n.adjectives) - {"whole", "full", "valuable", "important", "precious"} and n.det not in {"the", "this", "that"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
