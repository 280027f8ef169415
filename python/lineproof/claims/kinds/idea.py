"""Ideas: what a move prepares, and whether that makes sense."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import NAMES, other, pieces, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import MISTAKE, spelled, weigh
from lineproof.claims.here import Agent, Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.passing import parsed
from lineproof.claims.reference import Reference
from lineproof.claims.sentence import SAN
from lineproof.claims.timing import as_it_stands, of_this_move

_IDEA = "(idea|plan|intention|aim|purpose)"
_BRING = "(bring|put|play|move|transfer|develop|reroute|post|place|send|get|manoeuvre|swing|lift|hop|jump|bring round|bring over)"
_BRINGING = "(bringing|putting|playing|moving|transferring|developing|rerouting|posting|placing|sending|getting|swinging)"

PHRASES = (
    "[{agent}] <prepare/plan/intend/envisage/have in mind> [to play|playing] [the] [advance|push|break|move|follow up] {moves} [next|later]",
    "[{agent}] <prepare/plan/intend> {castling}",
    "[{agent}] <get/make> ready (for|to play) {moves}",
    "[{agent}] <be> (preparing|getting ready for|a preparation for|meant to prepare|designed to prepare|played to prepare|intended to prepare|preparation for) {moves}",
    "[{agent}] <pave/clear/prepare> the way for {moves}",
    "{side} <want/plan/intend/hope/mean/aim/prepare> to (play|follow up with|follow with|continue with|go|answer with|push) {moves} [soon|later|after that]",
    "{side} <want/plan/intend/hope/mean/aim/prepare> {castling}",
    f"{{side}} <want/plan/intend/hope/mean/aim/prepare> to {_BRING} {{target}} (to|on|on to) {{square}}",
    f"(the|{{whose}}) [main|whole|simple|real] {_IDEA} [of {{by}}|of this move|behind {{by}}|behind this move|behind it|behind this] <be> [{{very}}] [to play|to prepare|to follow with|to follow up with|to continue with|to go|the move|the advance|the push] {{moves}}",
    f"(the|{{whose}}) [main|whole|simple|real] {_IDEA} [of {{by}}|of this move|behind {{by}}|behind this move|behind it|behind this] <be> [{{very}}] to castle {{wing}}",
    f"(the|{{whose}}) [main|whole|simple|real] {_IDEA} [of {{by}}|of this move|behind {{by}}|behind this move] <be> [{{very}}] to {_BRING} {{target}} (to|on|on to) {{square}}",
    "the [whole|main] point of {by} <be> [{very}] to (play|prepare|follow with|follow up with) {moves}",
    f"with [{{the}}] [simple|clear|obvious|main|positional] {_IDEA} (of|of playing|to play|of following up with|of following with|of answering with) {{moves}}",
    f"with [{{the}}] [simple|clear|obvious|main|positional] {_IDEA} of castling {{wing}}",
    f"with [{{the}}] [simple|clear|obvious|main|positional] {_IDEA} of {_BRINGING} {{target}} (to|on|on to) {{square}}",
    "[{agent}] <have> {the} [simple|clear|obvious|main|positional] (idea|plan|intention|aim) (of|of playing|to play) {moves}",
    "<ing:prepare/plan/intend/envisage> [to play|playing] {moves} [next|later]",
    "<ing:prepare/plan> {castling}",
    "<ing:prepare/pave/clear> the way for {moves}",
    "<to:prepare> {moves}",
    "<to:prepare> {castling}",
    "(so as|in order) to (play|follow with|follow up with|push) {moves} [next]",
    "with {moves} in mind",
    "{moves} <be> [{very}] (the idea|the plan|the intention|our idea|our plan|his idea|his plan|the next step|the follow up)",
    "{target} <be> [{very}] (heading for|on its way to|on his way to|on her way to|bound for|going to|aiming for|making for) {square}",
    "{target} <head for/make for/aim for> {square}",
)  # fmt: skip

_WINGS = {
    **dict.fromkeys(("short", "kingside", "on the kingside", "king side"), "O-O"),
    **dict.fromkeys(("long", "queenside", "on the queenside", "queen side"), "O-O-O"),
}
_CASTLING = {
    **dict.fromkeys(("to castle short", "short castling", "castling short", "kingside castling", "castling kingside", "to castle kingside", "castling on the kingside"), "O-O"),
    **dict.fromkeys(("to castle long", "long castling", "castling long", "queenside castling", "castling queenside", "to castle queenside", "castling on the queenside"), "O-O-O"),
    **dict.fromkeys(("castling", "to castle"), "castling"),
}  # fmt: skip
_AHEAD = 8
"""Plies of the line shown in which the side may carry its idea out."""


FRAMES = (
    "[{agent}] <prepare> {moves}",
    "[{agent}] <prepare to play> {moves}",
    "[{agent}] <try to play> {moves}",
    "{moves} <=> idea",
    "idea <=> {moves}",
    "idea of {by} <=> {moves}",
    "<~> idea of {moves}",
    "idea <be to play/push> {moves}",
    "idea <be to push> (to|on_to) {moves}",
    "idea of {by} <be to play/push> {moves}",
    "idea of {by} <be to push> (to|on_to) {moves}",
    "[{agent}] <be up to/be planning/be after/plan> {moves}",
    "[{agent}] <want to play/push> {moves} [next]",
    "[{agent}] <want/intend/plan> {moves} [next]",
    "[{agent}] <play/push> {moves} next ; modal=will",
    "{target} <move> (to|on_to) {square} ; modal=will coming=yes",
    "{target} <=> to {square} +en_route|on_its_way|on_his_way|on_the_way|bound",
    "[{agent}] <hope/intend/plan to play/push> {moves}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    as_it_stands(here, slots)
    first = slots.get("moves", "").split()[:1]
    if first and re.fullmatch("[a-h][1-8]", first[0]) and here.board.piece_at(first[0]):
        raise Unread("a piece stands there already, so it is not clear what is prepared")
    agent = _agent(here, slots)
    if "target" in slots and "side" not in slots and "whose" not in slots:
        agent = here.agent(slots["target"]) if "agent" not in slots else agent
    side, spot = agent.side, agent.spot
    if "coming" in slots and spot.board.turn == side:
        raise Unread("it is that side's own move, so it may be said of the next move alone")
    moves = [w for w in slots.get("moves", "").split() if re.search(rf"{SAN}[+#]?$", w)]
    castling = slots.get("wing") or slots.get("castling")
    if castling:
        moves = ["O-O", "O-O-O"] if castling == "castling" else [castling]
    origins: list[str] = []
    if "target" in slots:
        origins = _origins(here.at(spot), slots["target"], side)
    elif not moves:
        raise Unread("it is not clear what is prepared")
    return [
        here.claim(
            KIND.id, side, spot=spot, moves=tuple(moves), either=castling == "castling", origins=origins,
            square=slots.get("square"),
        )
    ]  # fmt: skip


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
    return [m for m in spot.board.legal_moves() if m[:2] in origins and m[2:4] == square]


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
                legal = [uci] if letter in kinds and uci[2:4] == claim.params["square"] else []
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
    return f"The {NAMES[letter.lower()]} to {claim.params['square']}"


KIND = Kind(
    id="idea",
    title="Idea",
    version=1,
    definition=(
        "The move that is prepared is sensible after a pass by the opponent, or where the line shown plays it within eight plies: it costs at most 5 points (or keeps 85 of more than 90). "
        "From a cost of 12, a mistake, the claim fails; between, and where the move is not possible in one move and the line does not play it, it is unsettled. Of several moves the first is asked."
    ),
    formula=f"cost = best - played; holds: safe move; unsettled: cost < {MISTAKE}; fails: cost >= {MISTAKE}",
    phrases=PHRASES,
    slots={"wing": _WINGS, "castling": _CASTLING},
    vocabulary=frozenset(
        ["idea", "plan", "plans", "planned", "planning", "prepare", "prepares", "prepared", "preparing", "preparation", "intends", "intend", "intended", "intending", "intention", "aim", "aims", "aiming", "purpose",
         "point", "wants", "want", "wanted", "hopes", "hope", "hoping", "means", "mean", "meant", "mind", "ready", "way", "order", "envisages", "envisaging", "heading", "heads", "head", "bound", "making", "makes", "make", "going", "clears", "paves", "so", "step", "follow"]
    ),
    frames=FRAMES,
    gives_way=frozenset({"threat"}),
    tests={"moves": lambda n: n.text if n.type in {"move", "square"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
