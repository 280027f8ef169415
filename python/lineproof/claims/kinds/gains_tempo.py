"""Gained tempi: moves that attack something which must move."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import attackers, defenders, name, names, other, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.here import Agent, Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.reference import Reference
from lineproof.claims.timing import of_this_move
from lineproof.claims.tracks import hit

FRAMES = (
    "[{agent}] <win> tempo [(on|against|off|with|at_the_expense_of|at_the_cost_of|from) {target}] [(with|by) {move}]",
    "[{agent}] <~> with tempo [(on|against) {target}]",
    "[{agent}] <attack> {target} with tempo",
    "[{agent}] <win/get> {a_move} [(on|against|off) {target}]",
    "[{agent}] <come_with> tempo [(on|against) {target}]",
    "{played} <kick> {target}",
    "[{agent}] <win> tempo +back [(on|against) {target}]",
    "[{agent}] <regain> tempo [(on|against|from) {target}]",
    "{anything} <give> {side} tempo",
    "<~> {free_tempo} [for {side}]",
    "<~> {bare_tempo} [(on|against) {target}]",
    "[{agent}] <make/force/oblige to move/run> {patient} ; forced=yes",
    "[{agent}] <chase/drive/kick/hit/attack/push/send> {target} with tempo",
    "[{agent}] <develop> piece with tempo [(on|against) {target}]",
    "[{agent}] <develop> {own} with tempo [(on|against) {target}]",
    "[{agent}] <move> {own} with tempo [(on|against) {target}]",
    "[{agent}] <develop/castle/come/arrive/go> with tempo [(on|against) {target}]",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    past = verb is not None and (verb.done or verb.past)
    named = None
    if "move" in slots:
        named = here.made(slots["move"]) if past else here.named(slots["move"])
    if named is not None:
        agent = Agent(named.side, named.after, named.uci[2:4], named)
        word = slots.get("side") or slots.get("agent")
        if word is not None and here.agent(word).side != named.side:
            raise Unread(f"{slots['move']} is no move of that side")
    else:
        if "agent" not in slots:
            of_this_move(here)
        agent = _before_reply(here.agent(slots.get("agent")), past=past)
    if verb is not None and verb.modal in {"can", "will", "must", "shall"} and agent.move is None:
        raise Unread("said of what may come")
    if not agent.spot.moves or other(agent.spot.board.turn) != agent.side:
        raise Unread("it is not clear which move gains it")
    if agent.square is not None and agent.spot.moves[-1][2:4] != agent.square:
        raise Unread("the piece has not just moved")
    targets = None
    if "patient" in slots:
        slots["target"] = slots["patient"]
    if "target" in slots:
        enemy = other(agent.side)
        at = here.at(agent.spot)
        targets = [o for o in at.find(slots["target"], enemy) if o in pieces(at.board, enemy)]
        if not targets or Reference.read(slots["target"]).plural:
            raise Unread(f"it is not clear which piece {slots['target']!r} is")
    return [here.claim(KIND.id, agent.side, spot=agent.spot, targets=targets)]


def _before_reply(agent: Agent, *, past: bool) -> Agent:
    """A piece that "has gained a tempo" by the move before the reply: then it is judged before that reply."""
    moves = agent.spot.moves
    if not past or agent.square is None or agent.move is not None or len(moves) < 2:
        return agent
    if moves[-2][2:4] != agent.square or agent.spot.board.turn != agent.side:
        return agent
    return Agent(agent.side, agent.spot.earlier(1), agent.square)


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    spot, side = claim.spot, claim.side or "white"
    board, before, uci = spot.board, spot.earlier(1).board, spot.moves[-1]
    san, enemy, moved = before.san(uci), other(side), uci[2:4]
    hits: list[tuple[str, str]] = []
    for at in pieces(board, enemy):
        letter = (board.piece_at(at) or "p").lower()
        if letter == "p":
            continue
        for by in board.attackers(side, at):
            fresh = by == moved or by not in before.attackers(side, at)
            if fresh and hit(board.piece_at(by) or "p", letter, defenders(board, at)[0]):
                hits.append((by, at))
    wanted = claim.params["targets"]
    fitting = [(by, at) for by, at in hits if wanted is None or at in wanted]
    marks = tuple(Mark("move", pair, side) for pair in fitting)
    numbers = {"attacked": ", ".join(dict.fromkeys(at for _, at in fitting)) or "nothing"}
    if fitting:
        attacked = list(dict.fromkeys(at for _, at in fitting))
        loose = moved in {by for by, _ in fitting} and not defenders(board, moved)[0]
        takers = attackers(board, moved)[0] if loose else []
        if takers:
            because = f"{san} attacks {names(board, attacked)}, but {names(board, takers)} can simply take on {moved}."
            return Judgement(
                Outcome.FAILS, because, (), spot, numbers, instead=because, marks=marks
            )
        because = f"{san} attacks {names(board, attacked)}, which must attend to it."
        return Judgement(Outcome.HOLDS, because, (), spot, numbers, marks=marks)
    if wanted is not None:
        because = f"{san} makes no attack on {' or '.join(name(board, at) for at in wanted)} that must be attended to."
    else:
        because = f"{san} attacks no piece of {title(enemy)} that is worth more or unprotected."
    return Judgement(Outcome.FAILS, because, (), spot, numbers, instead=because)


KIND = Kind(
    id="gains-tempo",
    title="Gains a tempo",
    version=1,
    definition=(
        "The move newly attacks the piece named, or any piece but a pawn, and the piece is the king, worth more than its attacker, or unprotected, so that it must be attended to; "
        "it fails where the piece moved is unprotected and can simply be taken."
    ),
    frames=FRAMES,
    tests={
        "bare_tempo": lambda n: n.head if n.head == "tempo" and not (n.det or n.adjectives or n.no) else None,
        "free_tempo": lambda n: n.head if n.head == "tempo" and not n.no and n.det in {"a", "an", "another"} and set(n.adjectives) & {"free", "extra", "clear", "whole", "full"} else None,
        "own": lambda n: n.text if n.type == "piece" else None,
        "a_move": lambda n: n.head if n.head == "move" and n.type == "noun" and not set(n.adjectives) - {"whole", "full", "valuable", "important", "precious"} and n.det not in {"the", "this", "that"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
