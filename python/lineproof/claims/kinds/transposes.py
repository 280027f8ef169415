"""Transpositions: the same position by another road."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.openings import MOVES, named, played
from lineproof.claims.road import road
from lineproof.claims.sentence import SAN
from lineproof.claims.verbs import Verb
from lineproof.engine import Board
from lineproof.lesson import Place

AHEAD = 6
"""Plies of the shown line within which a transposition may be completed."""

FRAMES = (
    "[{anything}] <transpose to/lead to/land> {opening}",
    "[{anything}] <land/arrive/end up/end/drift/steer/flow> (in|into|to|at) {opening}",
    "[{anything}] <make> {opening}",
    "{opening} <arise>",
    "[{anything}] <be> in {opening} +back",
    "[{anything}] <be> in {opening} +by_transposition",
    "[{anything}] <be> {opening} +by_transposition",
    "[{anything}] <have/reach/get> {opening} +by_transposition",
    "[{anything}] <transpose_to/transpose/lead to/land> {road} [(with|after|of) {moves}] ; ahead=yes",
    "[{anything}] <transposing> (to|into|in) {road} [(with|after|of) {moves}] ; ahead=yes",
    "[{anything}] <transposing> ; ahead=yes",
    "[{anything}] <be> (in|to|at|on) {road} [(with|after|of) {moves}] +back",
    "[{anything}] <be/have/get> {same} (after|in|with|from|of|as) {road} [(with|after|of) {moves}]",
    "[{anything}] <be/have/get> {same} (after|in|with|from|of|as) {position} (after|in|with|from|of) {road} [(with|after|of) {moves}]",
    "[{anything}] <reach/lead_to/have> {same} (after|in|with|from|of|as) {road} [(with|after|of) {moves}]",
    "[{anything}] <reach/lead_to/be/arrive> {position} (after|from|of|in) {road} [(with|after|of) {moves}]",
    "[{anything}] <reach> {road} (by|through|via) {order}",
    "<~> transposition (to|into) {road} [(with|after|of) {moves}] ; ahead=yes",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "opening" in slots:
        return [_named(here, slots)]
    verb = slots.get("verb", Verb())
    if verb.past or verb.modal in {"can", "may", "must", "might", "almost"}:
        raise Unread("said of what was or may come")
    wanted = f"{slots.get('road', '')} {slots.get('moves', '')}".strip()
    moves = re.findall(rf"(?:\d+\.(?:\.\.)?|\.\.\.)?{SAN}[+#]?", wanted)
    if (
        not moves
        and wanted
        and not re.search(r"\b(main|above|before|previous|last|first|line|position)\b", wanted)
    ):
        raise Unread(f"{wanted!r} names no line of the lesson")
    # a line may be about to transpose; the same position is the same here and now
    spots = list(_ahead(here)) if "ahead" in slots else [here.spot]
    same = [(spot, place) for spot in spots for place in _twins(here, spot)]
    reference = _reference(here, moves)
    fitting = [place for _, place in same if _fits(place, moves, wanted)]
    direct = reference is not None and any(spot.board.key == reference for spot in spots)
    return [
        here.claim(
            KIND.id, None, negated=verb.negated, line=wanted or "another line", moves=tuple(moves), labels=tuple(dict.fromkeys(_road(p) for p in fitting))[:3],
            others=tuple(dict.fromkeys(_road(p) for _, p in same))[:3], direct=direct,
        )
    ]  # fmt: skip


def _named(here: Here, slots: dict[str, Any]) -> Claim:
    """ "We have transposed to the Italian": its moves have been played, here or within the next plies of the line shown."""
    verb = slots.get("verb", Verb())
    if verb.past or verb.modal in {"can", "may", "must", "might", "almost"}:
        raise Unread("said of what was or may come")
    opening: str = slots["opening"]
    line = "the " + opening.replace(" 's", "'s")
    there = not verb.negated and not verb.done
    spots = list(_ahead(here)) if there else [here.spot]
    return here.claim(
        KIND.id, None, negated=verb.negated, line=line, moves=(), labels=(), others=(), opening=opening,
        direct=any(played(spot, opening) for spot in spots),
    )  # fmt: skip


def _ahead(here: Here) -> Iterator[Spot]:
    yield here.spot
    if here.spot.moves != tuple(here.place.moves()):
        return
    at, spot = here.place, here.spot
    for _ in range(AHEAD):
        if at.next is None or at.next.uci is None:
            return
        at = at.next
        spot = spot.play(at.uci or "")
        yield spot


def _twins(here: Here, spot: Spot) -> list[Place]:
    """Other places of the lesson with the same position, reached by other moves."""
    return [
        p for p in here.lesson.positions.get(spot.board.key, ()) if tuple(p.moves()) != spot.moves
    ]


def _reference(here: Here, moves: list[str]) -> int | None:
    """The key of a position given by its moves from move 1, or by the end of a road of the lesson."""
    if not moves:
        return None
    branch = re.match(r"(\d+)\.(\.\.)?", moves[0])
    if branch is not None and branch[1] != "1":
        for spot, board in zip(_roads(here), here.spot.boards, strict=True):
            if (board.move_number, board.turn) == (
                int(branch[1]),
                "black" if branch[2] else "white",
            ):
                try:
                    for text in moves:
                        spot = spot.play(spot.board.parse_san(_san(text)))
                except ValueError:
                    return None
                return spot.board.key
        return None
    if branch is not None and not branch[2]:
        spot = Spot(here.place.root_fen, (), Board(here.place.root_fen))
        try:
            for text in moves:
                spot = spot.play(spot.board.parse_san(_san(text)))
        except ValueError as error:
            raise Unread(f"the moves of {' '.join(moves)} do not follow") from error
        return spot.board.key
    return None


def _roads(here: Here) -> list[Spot]:
    """The spots on the way here, from the root."""
    plies = len(here.spot.moves)
    return [
        here.spot.earlier(plies - done) if done < plies else here.spot for done in range(plies + 1)
    ]


def _san(text: str) -> str:
    """A move without its number."""
    return re.sub(r"^(?:\d+\.(?:\.\.)?|\.\.\.)", "", text)


def _fits(twin: Place, moves: list[str], wanted: str) -> bool:
    if not moves:
        return "main" not in wanted or twin.is_main
    road = [_bare(p.label) for p in twin.path() if p.uci]
    below = [_bare(p.label) for p in _below(twin, 4)]
    return all(any(_agrees(_bare(m), label) for label in road + below) for m in moves)


def _agrees(move: str, label: str) -> bool:
    """Whether "5...Be7" or "Be7" names the move of a label such as "5...Be7"."""
    return (
        label == move
        if re.match(r"\d", move)
        else re.sub(r"^\d+\.(?:\.\.)?", "", label) == move.lstrip(".")
    )


def _bare(label: str) -> str:
    return re.sub(r"[\s+#!?]", "", label)


def _below(place: Place, plies: int) -> list[Place]:
    if plies == 0:
        return []
    found: list[Place] = []
    for child in place.children:
        found.append(child)
        found.extend(_below(child, plies - 1))
    return found


def _road(place: Place) -> str:
    """The last two moves that lead to a place, for the finding: "5... Ng8 6. Nf3" or "13. b4 O-O"."""
    last = [p for p in place.path() if p.uci][-2:]
    white_first = len(last) == 2 and "..." not in last[0].number
    return " ".join(p.san or "" if i and white_first else p.label for i, p in enumerate(last))


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params
    same = p["direct"] or bool(p["labels"])
    if p.get("opening"):
        moves = MOVES[p["opening"]].replace(" /", ";").rstrip(";")
        because = f"The moves that make the opening ({moves}) have {'' if same else 'not all '}been played, {'or' if same else 'nor do'} its pawns and pieces stand as after them."
    elif p["labels"]:
        because = f"The same position stands in the lesson after {' and after '.join(p['labels'])}."
    elif p["direct"]:
        because = f"It is the position after {' '.join(p['moves'])}."
    elif p["others"]:
        because = f"The position stands in the lesson after {' and after '.join(p['others'])}, but not in {p['line']}."
    else:
        because = "No other place of the lesson has this position: placement, side to move, castling and en passant rights were compared."
    holds = same != claim.negated
    if holds:
        return Judgement(Outcome.HOLDS, because, (), claim.spot)
    if same:
        instead = "This is the same position."
    elif p.get("opening"):
        instead = because
    elif p["others"]:
        instead = f"This transposes to the line with {p['others'][0]}."
    else:
        instead = "This does not transpose to a line of the lesson."
    return Judgement(Outcome.FAILS, because, (), claim.spot, instead=instead)


KIND = Kind(
    id="transposes",
    title="Transposes to",
    version=3,
    definition="The position (of 'transposes': or one within the next six plies of the line shown) is the same as in the line named: placement, side to move, castling rights and legal en passant. Of an opening: all moves that make it have been played, in whatever order, or its pawns and the pieces that those moves bring out stand as after them.",
    source="FIDE Laws of Chess, article 9.2.3; the openings: Encyclopaedia of Chess Openings (from memory)",
    frames=FRAMES,
    tests={
        "opening": lambda n: named(n.text) if n.head == "opening" else None,
        "road": road,
        "moves": lambda n: n.text.replace(" then ", " ") if n.type in {"move", "square"} else None,
        "same": lambda n: (
            n.head if n.head == "position" and {"same", "identical"} & set(n.adjectives) else None
        ),
        "position": lambda n: (
            n.head if n.head in {"position", "1", "one"} and n.det in {"the", "that"} else None
        ),
        "order": lambda n: (
            n.head if n.head in {"order", "road", "route", "way", "transposition"} else None
        ),
    },
    read=read,
    check=check,
)
