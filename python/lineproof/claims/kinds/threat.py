"""Threats: what the side would gain if the opponent passed."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import LEAST
from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import name, names, other, pieces, side_of, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import SAFE, weigh
from lineproof.claims.here import Agent, Here, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.passing import PAWN, Gain, gained, parsed
from lineproof.claims.patterns import targets
from lineproof.claims.reference import Reference
from lineproof.claims.sentence import SAN
from lineproof.claims.timing import as_it_stands, of_this_move

_AMOUNTS: dict[str, Any] = {
    **dict.fromkeys(("material", "some material"), "material"),
    **dict.fromkeys(("a pawn", "another pawn", "a second pawn", "a clear pawn"), "pawn"),
    **dict.fromkeys(("a piece", "a whole piece", "a clear piece", "a knight", "a bishop"), "piece"),
    **dict.fromkeys(("the exchange", "an exchange"), "exchange"),
    **dict.fromkeys(("a rook", "a whole rook"), "rook"),
    **dict.fromkeys(("the queen", "his queen", "her queen", "our queen", "your queen"), "queen"),
}  # fmt: skip


_SQUARE = re.compile("[a-h][1-8]")
_AVERTED = re.compile(
    r"\b(?:parr|prevent|stop|avert|meet|met|answer|ward|deal|cope|end|remov|get rid|got rid|take care|took care|see to|saw to|neutrali|eliminat|escap|avoid|create|renew|would|could|without)"
)
"""Words of a threat that is over, or not there yet."""


_GO = "play/follow with/follow up with/continue with/go/jump in with/come in with"

FRAMES = (
    "<be:threaten> {target} ; passive=yes",
    "{target} <=> under threat [from {agent}] ; passive=yes",
    "[{agent}] <threaten> {moves}",
    "[{agent}] <threaten> {target}",
    "[{agent}] <threaten> {anything}",
    "[{agent}] <have> {none}",
    "<~> {none}",
    f"[{{agent}}] <threaten to {_GO}> {{moves}}",
    "[{agent}] <threaten to win> {amount} [(with|by) {move}]",
    "[{agent}] <threaten to win> {target} [(with|by) {move}] ; won=yes",
    "[{agent}] <threaten to capture> {target}",
    "[{agent}] <threaten to capture> {target} with {man}",
    "[{agent}] <~> threat (of|to) {moves}",
    "[{agent}] <~> threat (against|on|to) {target}",
    "<~> threat of {moves}",
    "threat <=> {moves}",
    "threat <=> {push}",
    f"threat <be to {_GO}> {{push}}",
    f"[{{agent}}] <threaten to {_GO}> {{push}}",
    "<~> threat of {push}",
    f"threat <be to {_GO}> {{moves}}",
    "threat <be to capture> {target}",
    "threat <be to win> {amount} [(with|by) {move}]",
    "{move} <=> threat",
    "{described} <=> threat",
    "{moves} <=> looming",
    "{moves} <=> in luft",
    "[{agent}] <be/have/carry/make/create/contain to win> {amount} {above}",
    "[{agent}] <be/have/carry/make/create/contain to play> {moves} {above}",
    "[{agent}] <be/have/carry/make/create/contain to capture> {target} {above}",
    "[{agent}] <capture> {target} +next if modal=will",
    "[{agent}] <capture> {target} +imminent if modal=will",
    "[{agent}] <play> {moves} +imminent if modal=will",
    "{side} <beware/fear/avert> {moves} ; warned=yes if modal=must|should|had|may",
    "<beware> {moves} ; warned=yes if bidden",
    "<*> threat of {moves}",
    "<*> threat (to|against|on) {target}",
    "{next} <be> {moves}",
    "{agent} <say/scream/shout/mean> {move} +next",
    "{target} <come/get> (in|into|under) fire [from {agent}] ; bare=yes passive=yes",
    "{agent} <attack> {targets} ; bare=yes",
    "[{agent}] <attack> {targets} ; bare=yes if active",
    "{agent} <attack> {target} ; bare=yes",
    "[{agent}] <attack> {target} [with {by}] ; bare=yes if active",
    "[{agent}] <attack> {pawns} [(with|by) {by}] ; bare=yes if active",
    "<be:attack> {target} ; bare=yes passive=yes",
    "[{agent}] <~> attack (on|against) {prey} ; bare=yes",
    "{target} <=> under fire [from {agent}] ; bare=yes passive=yes",
    "{agent} <be> on {prey} ; bare=yes",
    "[{agent}] <be/go/try/jump> after {target}",
    "[{agent}] <want> after {target} ; wanted=yes",
    "[{agent}] <want> {prey} ; wanted=yes",
    "[{agent}] <want to play> {move} +next|soon ; wanted=yes",
    "[{agent}] <want to capture> {target} ; wanted=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    if "push" in slots:
        slots["moves"] = slots.pop("push")
    if "bare" in slots:
        return _attack(here, slots)
    if "described" in slots:
        return _described(here, slots)
    if not any(slot in slots for slot in ("agent", "side", "whose")):
        of_this_move(here)
    if "known" in slots and _AVERTED.search(here.said):
        raise Unread("the threat may be over")
    if "known" in slots and "target" in slots:
        slots = {"target": slots["target"], "side": here.mover}
    elif "warned" in slots or "known" in slots:
        verb = slots.get("verb")
        if verb is not None and (verb.negated or verb.past):
            raise Unread("it is said that it need not be feared")
        warned = here.side(slots["side"]) if "warned" in slots and "side" in slots else None
        free = here.spot.passed()
        if warned == here.mover or free is None or parsed(free, _moves(slots)[0]) is None:
            raise Unread("it is no move of the side that moved last")
        slots = {"moves": slots["moves"], "side": here.mover}
    if "man" in slots:
        slots["agent"] = slots["man"] if len(here.find(slots["man"], here.mover)) == 1 else slots.get("agent", slots["man"])  # fmt: skip
    targets: list[str] | None = None
    passive = "passive" in slots
    agent = _agent(here, slots, passive)
    side, spot = agent.side, agent.spot
    at = here.at(spot)
    moves = _moves(slots)
    if "target" in slots and not passive and _free_square(at, slots["target"]):
        moves = [slots.pop("target")]  # "threatens d4", where nothing stands: the move
    if (
        len(moves) == 1
        and _SQUARE.fullmatch(moves[0])
        and at.board.piece_at(moves[0])
        and "target" not in slots
    ):
        slots["target"], moves = moves[0], []  # "threatens f7": the pawn there, no move
    if "target" in slots:
        targets = _targets(at, slots["target"], None if passive else other(side))
        if passive:
            side = other(side_of(spot.board.piece_at(targets[0]) or "K"))
            if "agent" in slots and side != agent.side:
                raise Unread("it is not clear who threatens whom")
    if spot.board.turn == side:
        raise Unread("it is that side's own move, so nothing is only threatened")
    verb = slots.get("verb")
    if "anything" in slots and not (verb is not None and verb.negated):
        raise Unread("it is not clear what is threatened")
    wanted = "wanted" in slots
    if wanted and side == here.taught:
        raise Unread("what we want next may be no more than a plan")
    if "side" not in slots and "agent" not in slots and "whose" not in slots:
        free = spot.passed()
        if free is not None and moves and parsed(free, moves[0]) is None:
            raise Unread(f"{moves[0]} is no move of the side that moved last")
    params: dict[str, Any] = {
        "targets": targets,
        "by": agent.square if "agent" in slots and agent.move is None and _is_piece(slots["agent"]) else None,
        "amount": slots.get("amount") or (_worth(at, targets) if "won" in slots else None),
        "wanted": wanted,
    }  # fmt: skip
    none = "none" in slots
    named: list[str | None] = [*moves] or [None]
    return [
        here.claim(KIND.id, side, spot=spot, negated=none, move=move, **params) for move in named
    ]


_ABOUT = re.compile(
    r"\b(?:chas|hunt|kick|push|harass|harry|hound|bother)\w* (?:\S+ ){0,4}?(?:about|around|round)$"
)
"""What happens to a piece for some moves: "our knight gets chased about"."""


def _attack(here: Here, slots: dict[str, Any]) -> list[Claim]:
    """ "Attacks the knight" says no more than that: whether it gains anything is not asked.

    :raises Unread: when it is not clear who attacks what, or one of his own.
    """
    verb = slots.get("verb")
    if re.search(r"\b(?:only|nothing|once|twice|thrice|times|doubly)\b", here.said) or slots.get(
        "agent"
    ) in {"him", "them"}:
        raise Unread("it says more than that it is attacked")
    if _ABOUT.search(here.said):
        raise Unread("it says what goes on, not what is attacked now")
    if verb is not None and (verb.negated or verb.done or verb.modal == "almost"):
        raise Unread("it is not clear what is said of the attack")
    words = slots.get("agent")
    nobody = words is None and "passive" in slots
    agent = None if nobody else here.agent(words)
    if "by" in slots:
        agent = here.agent(slots["by"])
        words = slots["by"]
    if words is not None and " and " in words:
        raise Unread("several attack it")
    at = here if agent is None else here.at(agent.spot)
    if "pawns" in slots:
        slots["target"] = _of_pawns(at, agent)
    prey: list[str] = []
    for text in (
        targets(slots["targets"])
        if "targets" in slots
        else [slots.get("target", slots.get("prey"))]
    ):
        prey += _prey(at, text, None if agent is None else other(agent.side))
    if any((at.board.piece_at(to) or "").lower() == "k" for to in prey):
        raise Unread("an attack on the king is a check, or no more than a direction")
    sides = {side_of(at.board.piece_at(to) or "K") for to in prey}
    if len(sides) != 1:
        raise Unread("it is not clear whose piece is attacked")
    side = other(sides.pop())
    if agent is not None and agent.side != side:
        raise Unread("a side does not attack its own piece")
    by = None
    if agent is not None and (agent.move is not None or (words is not None and _is_piece(words))):
        by = agent.square
    if by in prey:
        raise Unread("it stands there itself")
    return [  # one for each of several: "attacks f7 and h7"
        here.claim(KIND.id, side, spot=at.spot, move=None, targets=[to], by=by, amount=None, wanted=False, bare=True)
        for to in prey
    ]  # fmt: skip


def _of_pawns(here: Here, agent: Agent | None) -> str:
    """ "Nibbles at the chain": the pawn that the piece attacks.

    :raises Unread: when it attacks none, or several.
    """
    if agent is None or agent.square is None:
        raise Unread("it is not clear what attacks the pawns")
    enemy = pieces(here.board, other(agent.side), "p")
    hit = [at for at in here.board.attacks(agent.square) if at in enemy]
    if len(hit) != 1:
        raise Unread("it is not clear which pawn is attacked")
    return hit[0]


def _prey(here: Here, text: str | None, owner: str | None) -> list[str]:
    if text is None or text in {"it", "this", "that", "which", "who"}:
        text = here.topic
    if text is None:
        raise Unread("it is not clear which piece is meant")
    reference = Reference.read(text)
    if reference.plural:
        raise Unread(f"{text!r} are several")
    found = here.find(text, owner)
    if owner is not None:
        found = [at for at in found if at in pieces(here.board, owner)]
    if not found:
        raise absent(text, "on the board to be attacked")
    if len(found) > 1:
        hit = [
            at for at in found
            if here.board.attackers(other(side_of(here.board.piece_at(at) or "K")), at)
        ]  # fmt: skip
        found = hit if len(hit) == 1 else here.salient(found)
    if len(found) > 1:
        raise Unread(f"it is not clear which piece {text!r} means")
    return found


def _described(here: Here, slots: dict[str, Any]) -> list[Claim]:
    """ "Taking on e5 is a threat": a capture on the square.

    :raises Unread: when no piece stands on a square named, or it is the capturing side's move.
    """
    reference = Reference.read(slots["described"])
    if reference.square is None or re.match("tak|captur|grab|snatch", slots["described"]) is None:
        raise Unread("it is not clear which move is meant")
    letter = here.board.piece_at(reference.square)
    if letter is None:
        raise Unread(f"nothing stands on {reference.square}")
    side = other(side_of(letter))
    if here.board.turn == side:
        raise Unread("it is that side's own move, so nothing is only threatened")
    return [
        here.claim(KIND.id, side, move=None, targets=[reference.square], by=None, amount=None, wanted=False)
    ]  # fmt: skip


def _agent(here: Here, slots: dict[str, Any], passive: bool) -> Agent:
    if "agent" in slots:
        return here.agent(slots["agent"])
    word = slots.get("side") or slots.get("whose")
    if word is not None:
        return Agent(here.side(word), here.spot)
    if passive or here.subject is None or here.subject == here.mover:
        return Agent(here.mover, here.spot)
    return Agent(here.implied(), here.spot)


def _free_square(here: Here, text: str) -> bool:
    """Whether the words are a square on which nothing stands."""
    return _SQUARE.fullmatch(text) is not None and here.board.piece_at(text) is None


def _worth(here: Here, targets: list[str] | None) -> str | None:
    """The amount in "to win the rook": more than a capture there."""
    if targets is None:
        return None
    letter = (here.board.piece_at(targets[0]) or "p").lower()
    return {"p": "pawn", "n": "piece", "b": "piece", "r": "rook", "q": "queen"}.get(letter)


def _is_piece(text: str) -> bool:
    reference = Reference.read(text)
    return reference.letter is not None or reference.square is not None


def _moves(slots: dict[str, Any]) -> list[str]:
    if "move" in slots:
        return [slots["move"]]
    words = slots.get("moves", "").split()
    found = [w for w in words if re.search(rf"{SAN}[+#]?$", w)]
    return found if "then" not in words and ("and" in words or len(found) == 1) else found[:1]


def _targets(here: Here, text: str, owner: str | None) -> list[str]:
    """Squares of the pieces that may be threatened.

    :raises Unread: when there is none, or they are of both sides.
    """
    found = here.find(text, owner)
    if owner is not None:
        found = [at for at in found if at in pieces(here.board, owner)]
    if not found:
        raise absent(text, "on the board to be threatened")
    if len({side_of(here.board.piece_at(at) or "K") for at in found}) > 1:
        raise Unread(f"it is not clear whose {text!r} is meant")
    if Reference.read(text).plural and len(found) > 1:
        raise Unread(f"{text!r} are several")
    return found


def check(claim: Claim, ask: Ask) -> Judgement:
    side, spot = claim.side or "white", claim.spot
    if claim.params.get("bare"):
        return _aimed(claim)
    opponent = title(other(side))
    free = spot.passed()
    if free is None:
        why = f"{opponent} is in check and cannot pass, so a threat cannot be asked for."
        return Judgement(Outcome.UNSETTLED, why)
    allowed, what = _allowed(claim, free)
    if allowed == []:
        because = f"If {opponent} passes, {what}."
        return Judgement(Outcome.FAILS, because, (), free, instead=because)
    gain = gained(ask, spot, side, allowed)
    if gain is None:
        return Judgement(Outcome.UNSETTLED, "The game is over here, so nothing is threatened.")
    amount = claim.params["amount"]
    numbers = {"material": gain.material, "points": gain.points, "without the pass": gain.base}
    marks = (Mark("move", (gain.uci[:2], gain.uci[2:4]), side),)
    if amount is not None:
        least = LEAST[amount][0]
        holds = gain.wins(amount, least)
        near = 1.0 if least - 1 <= gain.material < least else 100.0
    else:
        holds = gain.threatens(gain.points, gain.base)
        near = 100.0
        if not gain.mates and not (gain.material >= PAWN and gain.takes):
            near = edge_of_two(gain.points, gain.base, gain.threatens)
    because = f"If {opponent} passes, {gain.san} {_spoken(gain)}."
    if holds:
        return Judgement(Outcome.HOLDS, because, gain.line, free, numbers, near, marks=marks)
    if claim.params["wanted"]:
        found = weigh(ask, free, gain.uci)
        if is_safe(found.best, found.played):
            because += " It is a sensible move, but no threat."
            return Judgement(
                Outcome.UNSETTLED, because, gain.line, free, numbers, near, one_off=True
            )
    instead = f"{gain.san} is no threat: if {opponent} passes, it {_spoken(gain)}."
    if amount is not None:
        instead = f"{title(side)} does not threaten{_of(amount)}: if {opponent} passes, {gain.san} {_spoken(gain)}."
    return Judgement(Outcome.FAILS, because, gain.line, free, numbers, near, instead, marks=marks)


def _aimed(claim: Claim) -> Judgement:
    """Whether the piece named, or any of the side, attacks each of the targets: a fact of the board."""
    board, side = claim.spot.board, claim.side or "white"
    by, prey = claim.params["by"], claim.params["targets"]
    aims = {to: board.attackers(side, to) for to in prey}
    missed = [to for to, found in aims.items() if (by not in found if by else not found)]
    who = upper(name(board, by)) if by else title(side)
    holds = not missed
    because = (
        f"{who} attacks {names(board, prey)}."
        if holds
        else f"{who} does not attack {names(board, missed)}."
    )
    marks = tuple(
        Mark("move", (by or found[0], to), side)
        for to, found in aims.items()
        if found and to not in missed
    )
    return Judgement(
        Outcome.HOLDS if holds else Outcome.FAILS, because, (), claim.spot, {"attacked": len(prey) - len(missed)},
        instead=None if holds else because, marks=marks,
    )  # fmt: skip


def _of(amount: str | None) -> str:
    return (
        ""
        if amount is None
        else f" to win {'the ' if amount in {'exchange', 'queen'} else '' if amount == 'material' else 'a '}{amount}"
    )


def _allowed(claim: Claim, free: Spot) -> tuple[list[str] | None, str]:
    """The moves that may carry the threat out, None for any, and what to say when there is none."""
    move, targets, by = claim.params["move"], claim.params["targets"], claim.params["by"]
    board = free.board
    if move is not None:
        uci = parsed(free, move)
        return ([] if uci is None else [uci]), f"{move} cannot be played"
    if targets is None:
        return None, ""
    legal = board.legal_moves()
    found = [m for m in legal if m[2:4] in targets and by in (None, m[:2])]
    who = upper(name(board, by)) if by else title(claim.side or "white")
    return found, f"{who[0].lower() + who[1:] if by else who} cannot take {names(board, targets)}"


def _spoken(gain: Gain) -> str:
    if gain.mates:
        return "mates" if len(gain.line) == 1 else "leads to mate"
    if gain.material >= PAWN and not gain.takes and gain.best - gain.points > SAFE:
        return f"is not what gains: another move is better by {gain.best - gain.points} points"
    if gain.material >= PAWN:
        return f"wins {_pawns(gain.material)}"
    more = gain.points - gain.base
    lead = "gains" if more >= 0 else "loses"
    return f"{lead} {abs(more)} points against best play without the pass, and no material"


def _pawns(count: int) -> str:
    return "a pawn" if count == 1 else f"material worth {count} pawns"


KIND = Kind(
    id="threat",
    title="Threat",
    version=2,
    definition=(
        "If the opponent passes, best play mates, or wins a pawn or more above what stands on the board, or gains 15 points or more over best play without the pass; "
        "a named move must be the one that does (and for points cost at most 5 after the pass), and of a piece or square threatened it must be a capture there; an amount named must be won. Not asked of a side in check. "
        "Said of no more than an attack ('attacks', 'hits', 'under fire'), it asks that the piece named, or any of its side, attacks the target."
    ),
    formula=f"gain = material(end of best play after the pass) - material(here), or points(after the pass) - points(without it); holds: mate, material >= {PAWN}, or 15 points and cost <= {SAFE}",
    slots={
        "amount": _AMOUNTS,
    },
    frames=FRAMES,
    tests={
        "anything": lambda n: n.text if n.head in {"anything", "nothing"} else None,
        "none": lambda n: n.head if n.no and n.head in NOUNS["threat"] else None,
        "pawns": lambda n: n.text if n.head in {"chain", "pawn chain", "pawn structure"} else None,
        "next": lambda n: n.head if n.head in {"next", "next up", "coming up"} else None,
        "man": lambda n: n.text if n.type == "piece" and not n.plural else None,
        "above": lambda n: n.text if n.head in NOUNS["threat"] else None,
        "moves": lambda n: n.text if n.type in {"move"} else None,
        "push": lambda n: n.text if n.type == "square" and not n.parts else None,
        "prey": lambda n: n.text if n.type in {"piece", "square"} and not n.parts else None,
    },
    gives_way=frozenset({"attacked-count", "fork", "pin", "skewer", "discovered-attack", "mate-threat", "gains-tempo", "for-free"}),
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
