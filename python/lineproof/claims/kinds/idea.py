"""Ideas: what a move prepares, and whether that makes sense."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import NAMES, other, pieces, side_of, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import MISTAKE, spelled, weigh
from lineproof.claims.here import Agent, Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.passing import parsed
from lineproof.claims.reference import Reference
from lineproof.claims.sentence import SAN
from lineproof.claims.timing import as_it_stands, of_this_move

_WINGS = {
    **dict.fromkeys(("short", "kingside", "on the kingside", "king side"), "O-O"),
    **dict.fromkeys(("long", "queenside", "on the queenside", "queen side"), "O-O-O"),
}
_LETTER = {word: letter for letter, word in NAMES.items()}
_AHEAD = 8
"""Plies of the line shown in which the side may carry its idea out."""


_DO = "play/push/follow with/follow up with/continue with/go/answer with/prepare"
_BRING = "bring/put/play/move/develop/reroute/post/place/send/get/swing/transfer/manoeuvre/lift/shuffle/plant/bring out"
_AIM = "prepare/mean/want/wish/intend/hope/aim/plan/be planning/get ready"

FRAMES = (
    "[{agent}] <prepare/be about> {moves}",
    "[{agent}] <prepare/plan/intend/support/threaten> {march}",
    f"[{{agent}}] <{_AIM} to {_DO}> {{moves}}",
    f"[{{agent}}] <{_AIM} to {_BRING}> {{target}} (to|on|on_to|onto|into|towards) {{square}}",
    f"[{{agent}}] <{_AIM} to castle> [{{wing}}] ; castle=castling",
    "[{agent}] <prepare/want/intend/plan> {castling}",
    "[{agent}] <prepare/eye/dream of/think of/have an eye on/aim at/hope for/plan for> {blow} (on|at) {square}",
    f"[{{agent}}] <{_AIM} to prepare> {{blow}} (on|at) {{square}}",
    "{moves} <=> (idea|next idea|only idea)",
    "{moves} <follow/come/be/arrive> ; coming=yes if modal=can",
    "{moves} <follow/come/be> +next|under_way|soon ; coming=yes",
    "{moves} <=> +next ; coming=yes",
    "{moves} <=> on way ; coming=yes",
    "{moves} <=> {whose_lever}",
    f"[{{agent}}] <play/make/come/go/move to {_DO}> {{moves}}",
    "[{agent}] <play/make> [{anything}] with {moves} +in_mind",
    "[{agent}] <want/need> {placed}",
    f"[{{agent}}] <{_AIM} to {_BRING}> {{placed}}",
    f"(idea|next idea|only idea) <be to {_BRING}> {{placed}}",
    f"(idea|next idea|only idea) (of|behind) {{by}} <be to {_BRING}> {{placed}}",
    "{whose_next} <=> {moves}",
    "(idea|next idea|only idea) <=> {moves}",
    "(idea|next idea|only idea) (of|behind) {by} <=> {moves}",
    "(idea|next idea|only idea) (of|behind) {by} <=> {castling}",
    "(idea|next idea|only idea) <=> {castling}",
    "<~> idea of {moves}",
    "<~> {moves} in mind",
    f"(idea|next idea|only idea) <be to {_DO}> {{moves}}",
    "(idea|next idea|only idea) <be to push> (to|on_to) {moves}",
    f"(idea|next idea|only idea) (of|behind) {{by}} <be to {_DO}> {{moves}}",
    "(idea|next idea|only idea) (of|behind) {by} <be to push> (to|on_to) {moves}",
    f"(idea|next idea|only idea) <be to {_BRING}> {{target}} (to|on|on_to|onto|into|towards) {{square}}",
    f"(idea|next idea|only idea) (of|behind) {{by}} <be to {_BRING}> {{target}} (to|on|on_to|onto|into|towards) {{square}}",
    "(idea|next idea|only idea) <be to castle> [{wing}] ; castle=castling",
    "(idea|next idea|only idea) (of|behind) {by} <be to castle> [{wing}] ; castle=castling",
    "(idea|next idea|only idea) <be to capture> (on|at) {square}",
    "(idea|next idea|only idea) <be to capture> {square}",
    "(idea|next idea|only idea) (of|behind) {by} <be to capture> (on|at) {square}",
    "(idea|next idea|only idea) (of|behind) {by} <be to capture> {square}",
    "[{agent}] <be up to/be planning/be after/plan> {moves}",
    "[{agent}] <want/intend/plan> {moves}",
    "[{agent}] <play/push> {moves} +next if modal=will",
    "[{agent}] <play/make/come/go/move/step/retreat/drop back/step back to push> {marcher}",
    "{moves} <=> planned",
    "{moves} <=> in luft",
    "[{agent}] <play/push> {moves} +imminent if modal=will",
    "[{agent}] <make> (way|space) for {freed}",
    "[{agent}] <let> {freed} +out",
    "[{agent}] <release/free/liberate> {freed}",
    "(idea|next idea|only idea) <be to develop> {freed}",
    "(idea|next idea|only idea) (of|behind) {by} <be to develop> {freed}",
    "[{agent}] <prepare/want/intend/plan to develop> {freed}",
    "{target} <move> (to|on_to|into) {square} ; coming=yes if modal=will",
    "{target} <move> (to|on_to|into) {square} +under_way ; coming=yes",
    "{target} <move> (to|on_to|into) {square} +next ; coming=yes",
    "{target} <head for/make for/aim for/be bound for/be making for/be heading for> {square}",
    "{target} <=> (to|for) {square} +en_route|on_its_way|on_his_way|on_the_way|bound|on_her_way",
    "{target} <=> on way to {square}",
    "{mover} <=> on way to {square}",
    "{mover} <=> (to|for) {square} +en_route|on_its_way|on_his_way|on_the_way|bound|on_her_way",
)


def _march(noun: Noun) -> str | None:
    """ "The march of the b-pawn to b5": the piece and its square."""
    found = re.fullmatch(r".*?\bof ((?:the|his|our|their|white 's|black 's) (?:[a-h] )?\w+) (?:to|on to) ([a-h][1-8])", noun.text)  # fmt: skip
    return f"{found[1]}|{found[2]}" if found and noun.type == "noun" and not noun.no else None


def _castling(noun: Noun) -> str | None:
    """ "Castling", "short castling": how it is written."""
    if noun.head != "castling":
        return None
    said = {*noun.adjectives, *(w for w in noun.text.split())}
    return next((move for word, move in _WINGS.items() if word in said), "castling")


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    for owned in {"whose_lever", "whose_next"} & slots.keys():
        slots["whose"] = slots.pop(owned).removesuffix(" 's")
    first = slots.get("moves", "").split()[:1]
    if first and re.fullmatch("[a-h][1-8]", first[0]) and here.board.piece_at(first[0]):
        raise Unread("a piece stands there already, so it is not clear what is prepared")
    if "marcher" in slots:
        slots["target"] = slots.pop("marcher")
    if "march" in slots:
        slots["target"], slots["square"] = slots.pop("march").split("|")
    if "mover" in slots:
        slots["target"] = _just_moved(here, slots.pop("mover"))
    agent = _agent(here, slots)
    if "target" in slots and "side" not in slots and "whose" not in slots:
        agent = here.agent(slots["target"]) if "agent" not in slots else agent
    side, spot = agent.side, agent.spot
    moves = [w for w in slots.get("moves", "").split() if re.search(rf"{SAN}[+#]?$", w)]
    nobody = {"agent", "by", "side", "whose", "target"}.isdisjoint(slots)
    if "coming" in slots and moves and nobody and _of_the_other(spot, side, moves[0]):
        side = other(side)  # no move of the side that has just moved
    elif "coming" in slots and spot.board.turn == side:
        raise Unread("it is that side's own move, so it may be said of the next move alone")
    elif moves and nobody and all(_of_the_other(spot, side, m) for m in moves):
        side = other(
            side
        )  # "the idea is c3, then d4", which the side that has just moved cannot play
    castling = slots.get("wing") or slots.get("castling") or slots.get("castle")
    if castling:
        moves = ["O-O", "O-O-O"] if castling == "castling" else [castling]
    origins: list[str] = []
    if "placed" in slots:
        head, slots["square"] = slots["placed"].split()
        origins = pieces(spot.board, side, _LETTER[head])
        if not origins or slots["square"] in origins:
            raise Unread("it is not clear which piece is meant")
    elif "freed" in slots:
        origins = [_freed(here.at(spot), slots["freed"], side)]
    elif "target" in slots:
        if slots["target"] in {"it", "this", "that"} and agent.square is not None:
            origins = [agent.square]
        else:
            origins = _origins(here.at(spot), slots["target"], side)
        if slots.get("square") in origins:
            raise Unread("it stands there already")
    elif "blow" in slots and agent.square is not None and slots.get("agent"):
        origins = [agent.square]
    elif "square" in slots and "blow" not in slots:
        if at_square_own(here, slots["square"], side):
            raise Unread("a side does not take its own piece")
        origins = pieces(spot.board, side)
    elif not moves:
        raise Unread("it is not clear what is prepared")
    return [
        here.claim(
            KIND.id, side, spot=spot, moves=tuple(moves), either=castling == "castling", origins=origins,
            square=slots.get("square"),
        )
    ]  # fmt: skip


def _of_the_other(spot: Spot, side: str, move: str) -> bool:
    """Whether the other side alone can play a move that is said to be coming."""
    own, others = spot.with_move_for(side), spot.with_move_for(other(side))
    if others is None or parsed(others, move) is None:
        return False
    return own is not None and parsed(own, move) is None


def _freed(here: Here, text: str, side: str) -> str:
    """ "Makes way for the bishop", "to develop the bishop": the one of the side that can move now and could not, or else the only one.

    :raises Unread: when it is not clear which, or it is no piece of that side.
    """
    reference = Reference.read(text)
    if reference.letter in {None, "k"} or here.owner(reference) not in {None, side}:
        raise Unread("it is not clear which piece is meant")
    found = [at for at in here.find(text, side) if at in pieces(here.board, side)]
    if len(found) > 1 and here.spot.moves:
        now, before = here.spot.with_move_for(side), here.spot.earlier(1).with_move_for(side)
        moves = [{m[:2] for m in s.board.legal_moves()} if s else set() for s in (now, before)]
        found = [at for at in found if at in moves[0] - moves[1]]
    if len(found) != 1 or reference.plural:
        raise Unread(f"it is not clear which piece {text!r} is")
    return found[0]


def at_square_own(here: Here, square: str, side: str) -> bool:
    """Whether a piece of the side stands on the square, or none does."""
    letter = here.board.piece_at(square)
    return letter is None or side_of(letter) == side


def _just_moved(here: Here, text: str) -> str:
    """ "He's on his way to c4": the piece that has just moved.

    :raises Unread: when it is the other side that moved.
    """
    last = here.last()
    if text not in {"he", "she"}:
        raise Unread("a side is not on its way to a square")
    letter = (here.board.piece_at(last.uci[2:4]) or "p").lower()
    return f"the {NAMES[letter]} on {last.uci[2:4]}"


def _agent(here: Here, slots: dict[str, Any]) -> Agent:
    if "by" in slots:
        return here.agent(slots["by"])
    if "agent" in slots:
        return here.agent(slots["agent"])
    word = slots.get("side") or slots.get("whose")
    if word is not None:
        return Agent(here.side(word), here.spot)
    of_this_move(here)
    if here.subject is not None and here.subject != here.mover:
        raise Unread("it is not clear whose idea it is")
    return Agent(here.mover, here.spot)


def _origins(here: Here, text: str, side: str) -> list[str]:
    found = [at for at in here.find(text, side) if at in pieces(here.board, side)]
    if not found or Reference.read(text).plural:
        raise Unread(f"it is not clear which piece {text!r} is")
    return found


def check(claim: Claim, ask: Ask) -> Judgement:
    side = claim.side or "white"
    moves: tuple[str, ...] = claim.params["moves"]
    step = moves if claim.params["either"] else moves[:1]
    spot = claim.spot.with_move_for(side)
    found: Judgement | None = None
    if spot is not None:
        legal = _legal(claim, spot, step)
        where = "here" if spot is claim.spot else f"after a pass by {title(other(side))}"
        found = _costs(ask, spot, legal, where) if legal else None
        if found is None and _never(spot, side, step):
            because = f"{title(side)} has no right to castle that way any more."
            return Judgement(Outcome.FAILS, because, (), spot, instead=because)
    if found is None or found.outcome is not Outcome.HOLDS:
        shown = _shown(claim, step)
        if shown is not None:
            in_line = _costs(ask, *shown, "in the line shown")
            found = in_line if found is None or in_line.outcome is Outcome.HOLDS else found
    if found is None:
        because = f"{_wanted(claim)} is not possible in one move, so whether it makes sense was not searched."
        return Judgement(Outcome.UNSETTLED, because)
    if len(moves) > 1 and not claim.params["either"] and found.outcome is Outcome.HOLDS:
        return replace(found, second=f"Only the first move of the plan, {moves[0]}, was searched.")
    return found


def _costs(ask: Ask, spot: Spot, legal: list[str], where: str) -> Judgement:
    """Whether the cheapest of some moves is sensible at a spot. where: the spot in words."""
    side = spot.board.turn
    found = weigh(ask, spot, *legal)
    san = spot.board.san(found.uci)
    if not found.counted:
        because = f"{title(side)} is lost whatever he plays, so what {san} costs is not counted."
        return Judgement(Outcome.UNSETTLED, because)
    said = _outcome(found.best, found.played)
    near = edge_of_two(found.best, found.played, _outcome)
    because = f"{san} {where} costs {title(side)} {spelled(found.points)}"
    because += "." if found.is_best else f" against {found.better}."
    return Judgement(
        said, because, found.line, spot, {"cost": found.points, "points": found.played}, near,
        f"{san} makes no sense as a plan: {because}" if said is Outcome.FAILS else None,
        one_off=said is Outcome.UNSETTLED, marks=(Mark("move", (found.uci[:2], found.uci[2:4]), side),),
    )  # fmt: skip


def _outcome(best: int, played: int) -> Outcome:
    if is_safe(best, played):
        return Outcome.HOLDS
    return Outcome.FAILS if best - played >= MISTAKE else Outcome.UNSETTLED


def _legal(claim: Claim, spot: Spot, step: tuple[str, ...]) -> list[str]:
    if step:
        return [uci for uci in (parsed(spot, move) for move in step) if uci is not None]
    origins, square = claim.params["origins"], claim.params["square"]
    return [m for m in spot.board.legal_moves() if m[:2] in origins and square in (None, m[2:4])]


def _shown(claim: Claim, step: tuple[str, ...]) -> tuple[Spot, list[str]] | None:
    """Where the line shown carries the idea out, with the move; None where it does not, or the sentence has left the line."""
    if claim.spot.moves != tuple(claim.place.moves()):
        return None
    at, spot = claim.place, claim.spot
    for _ in range(_AHEAD):
        if at.next is None or at.next.uci is None:
            return None
        at = at.next
        uci = at.uci or ""
        if spot.board.turn == claim.side:
            legal = _legal(claim, spot, step)
            if not step:
                letter = (spot.board.piece_at(uci[:2]) or "").lower()
                kinds = {
                    (claim.spot.board.piece_at(o) or "").lower() for o in claim.params["origins"]
                }
                to = claim.params["square"]
                legal = [uci] if letter in kinds and to in (None, uci[2:4]) else []
            if uci in legal:
                return spot, [uci]
        if uci not in spot.board.legal_moves():
            return None
        spot = spot.play(uci)
    return None


def _never(spot: Spot, side: str, step: tuple[str, ...]) -> bool:
    wings = {"O-O": "king", "O-O-O": "queen"}
    return bool(step) and all(
        m in wings and not spot.board.may_castle(side, wings[m]) for m in step
    )


def _wanted(claim: Claim) -> str:
    if claim.params["either"]:
        return "Castling"
    if claim.params["moves"]:
        return str(claim.params["moves"][0])
    letter = claim.spot.board.piece_at(claim.params["origins"][0]) or "p"
    square = claim.params["square"]
    return (
        f"The {NAMES[letter.lower()]} to {square}"
        if square
        else f"A move of the {NAMES[letter.lower()]}"
    )


KIND = Kind(
    id="idea",
    title="Idea",
    version=1,
    definition=(
        "The move that is prepared is sensible after a pass by the opponent, or where the line shown plays it within eight plies: it costs at most 5 points (or keeps 85 of more than 90). "
        "From a cost of 12, a mistake, the claim fails; between, and where the move is not possible in one move and the line does not play it, it is unsettled. Of several moves the first is asked."
    ),
    formula=f"cost = best - played; holds: safe move; unsettled: cost < {MISTAKE}; fails: cost >= {MISTAKE}",
    slots={"wing": _WINGS},
    frames=FRAMES,
    gives_way=frozenset({"threat", "pass-consequence"}),
    tests={
        "moves": lambda n: n.text if n.type in {"move", "square"} else None,
        "castling": _castling,
        "whose_next": lambda n: n.whose if n.head == "move" and "next" in n.adjectives and not n.no and n.whose else None,
        "whose_lever": lambda n: n.whose if n.head in {"break", "lever", "pawn break", "freeing move"} and n.whose and not n.no else None,
        "placed": lambda n: f"{n.head} {n.square}" if n.type == "piece" and n.square and not n.parts else None,
        "blow": lambda n: n.head if n.head in {*NOUNS["fork"], "check", "sacrifice"} else None,
        "freed": lambda n: n.text if n.type == "piece" and not n.parts and not n.plural and n.head != "pawn" else None,
        "marcher": lambda n: n.text if n.type == "piece" and n.head == "pawn" and not n.plural and not n.parts else None,
        "march": _march,
        "mover": lambda n: n.text if n.type == "side" else None,
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
