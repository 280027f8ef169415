"""Blocks: a piece that stands in another's way."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.board import NAMES, name, other, pieces, side_of, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.owner import agreeing
from lineproof.claims.reference import Reference
from lineproof.claims.structure import ahead, rank
from lineproof.claims.tense import answer, first, when
from lineproof.claims.where import FILE_LIST
from lineproof.engine import Board

_LINE = "(the|his|her|our|your|their) ({file} file|[long|short] diagonal [from] {one} [to] {two}|{one} {two} diagonal)"
PHRASES = (
    "{agent} <block/obstruct/block in/blockade/stop up> {target} [on {square}]",
    "{agent} <stand/be/sit> [{very}] in the way of {target}",
    "{agent} <stand/be/sit> [{very}] in {whose_piece} way",
    "{agent} <take> {whose_piece} path",
    "{agent} <block/obstruct/close> {whose_piece} (path|way|view|diagonal|file|line|road)",
    "{agent} <block/obstruct/close> the (path|way|view|diagonal|file|line|road) of {target}",
    f"{{agent}} <block/obstruct> {_LINE}",
    "{target} <be:block/obstruct/blockade> by {blocker}",
    "{target} <be:block/blockade>",
    "{target} <be:block/obstruct/block in> by (its|his|her) own {own}",
    "<ing:block/obstruct/block in/blockade> {target}",
    f"<ing:block/obstruct> {_LINE}",
    "blocking {whose_piece} (path|way|view|diagonal|file|line)",
)


FRAMES = (
    "{agent} <block> {target} [on {square}]",
    "{agent} <block/close> way of {target}",
    "{agent} <be> in way of {target}",
    "{agent} <be> in_front_of {target}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    asked = when(here, slots)
    if "agent" in slots:
        agreeing(here, 1)
        if Reference.read(slots["agent"]).plural:
            raise Unread("several pieces block, of which none is named")
        agent = here.agent(slots["agent"])
        spot, blocker = agent.spot, agent.square
        if blocker is None:
            raise Unread("it is not clear which piece blocks")
    elif "blocker" in slots:
        spot = here.spot
        blocker = here.agent(slots["blocker"]).square
    elif "own" in slots or re.search(r"\bblock(?:ed|aded)\b", here.said):
        spot, blocker = here.spot, None
    else:  # "..., blocking the bishop": the piece just moved
        last = here.last()
        spot, blocker = here.spot, last.uci[2:4]
    at = here.at(spot)
    target, line = None, ""
    text = slots.get("target") or slots.get("whose_piece", "").removesuffix(" 's").strip()
    if text:
        target = _one(at, text, blocker)
    elif "file" in slots:
        line = slots["file"].strip()
    elif "one" in slots:
        line = f"{slots['one'].strip()} {slots['two'].strip()}"
    else:
        raise Unread("it is not clear what is blocked")
    board = spot.board
    if target is not None and (board.piece_at(target) or "").lower() in "nk":
        raise Unread("what stands in a knight's or a king's way is another question")
    if (
        blocker is None
        and "own" not in slots
        and target is not None
        and (board.piece_at(target) or "").lower() != "p"
    ):
        raise Unread("it is not said what blocks the piece")  # fmt: skip
    own = LETTER_OF.get(slots.get("own", "").strip().removesuffix("s"))
    standing = board.piece_at(blocker or "") if blocker else None
    side = side_of(standing) if standing else None
    return [
        here.claim(KIND.id, side, spot=spot, when=asked, blocker=blocker, target=target, line=line, own=own)
    ]  # fmt: skip


LETTER_OF = {word: letter for letter, word in NAMES.items()}


def _one(here: Here, text: str, blocker: str | None) -> str:
    """The piece in whose way something stands.

    :raises Unread: when several may be meant, or none is there.
    """
    reference = Reference.read(text)
    board = here.board
    found = [a for a in reference.squares(board, here.owner(reference)) if a != blocker]
    if not found:
        raise Unread(f"there is no {text} on the board")
    if len(found) > 1 and reference.plural:
        raise Unread(f"{text!r} are several")
    if (
        len(found) > 1 and blocker is not None
    ):  # "the knight blocks the bishop": the one in whose way it is
        found = [a for a in found if _blockers(board, a, blocker, None)]
    if len(found) != 1:
        raise Unread(f"it is not clear which piece {text!r} means")
    return found[0]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params
    board = claim.spot.board
    blocker: str | None = p["blocker"]
    if p["target"] is None:
        return _line(claim, blocker or "", p["line"])
    target: str = p["target"]

    def fitting(spot: Spot) -> list[str]:
        return _blockers(spot.board, target, blocker, p["own"])

    spot, found = first(claim, fitting)
    who = name(board, target)
    if found:
        marks = (Mark("move", (target, found[0]), side_of(board.piece_at(target) or "K")),)
        because = (
            f"{upper(name(spot.board, found[0]))} stands in the way of {name(spot.board, target)}."
        )
        return answer(claim, True, because, at=spot, marks=marks)
    if blocker is not None:
        return answer(
            claim, False, f"{upper(name(board, blocker))} does not stand in the way of {who}."
        )
    return answer(claim, False, f"{upper(who)} is not blocked: {_free(board, target)}.")


def _blockers(board: Board, target: str, blocker: str | None, own: str | None) -> list[str]:
    """The pieces in the way of one: next to a pawn on its file (one that has not moved: within two squares), first on a line of a line piece."""
    letter = board.piece_at(target)
    if letter is None:
        return []
    side = side_of(letter)
    if letter.lower() == "p":
        way = [ahead(side, target)]
        if rank(side, target) == 2:
            way.append(ahead(side, target, 2) if blocker is not None else None)
        seen = [a for a in way if a is not None and board.piece_at(a) is not None]
    else:
        seen = [a for a in board.attacks(target) if board.piece_at(a) is not None]
    if blocker is not None:
        return [a for a in seen if a == blocker]
    if own is not None:
        return [
            a
            for a in seen
            if side_of(board.piece_at(a) or "K") == side
            and (board.piece_at(a) or "").lower() == own
        ]
    return seen


def _free(board: Board, target: str) -> str:
    side = side_of(board.piece_at(target) or "K")
    stop = ahead(side, target)
    if (board.piece_at(target) or "").lower() == "p" and stop is not None:
        return f"{stop} is empty"
    return "its lines are free of such pieces"


def _line(claim: Claim, blocker: str, line: str) -> Judgement:
    """A file or a diagonal: the blocker stands on it, and a line piece looks along it at the blocker."""
    board = claim.spot.board
    who = upper(name(board, blocker))
    if len(line) == 1:
        where, on = f"the {line}-file", blocker[0] == line
        letters = "rq"
    else:
        one, two = line.split()
        where = f"the diagonal from {one} to {two}"
        on, letters = blocker in {one, two, *Board.between(one, two)}, "bq"
    if not on:
        return answer(claim, False, f"{who} does not stand on {where}.")
    looking = [
        a
        for side in (side_of(board.piece_at(blocker) or "K"), other(side_of(board.piece_at(blocker) or "K")))
        for letter in letters
        for a in pieces(board, side, letter)
        if blocker in board.attacks(a) and _same_line(a, blocker, line)
    ]  # fmt: skip
    because = f"{who} stands on {where}"
    because += f", in the way of {name(board, looking[0])}." if looking else "."
    return answer(claim, True, because, marks=(Mark("square", (blocker,), side_of(board.piece_at(blocker) or "K")),))  # fmt: skip


def _same_line(at: str, blocker: str, line: str) -> bool:
    if len(line) == 1:
        return at[0] == blocker[0]
    one, two = line.split()
    return at in {one, two, *Board.between(one, two)}


KIND = Kind(
    id="blocks",
    title="Stands in the way",
    version=1,
    definition="A piece stands on the square before a pawn (of a pawn that has not moved: one of the two squares before it), or is the first piece on a line of a bishop, rook or queen. A file or diagonal is blocked by a piece that stands on it. What stands in a knight's or a king's way is not read.",
    phrases=PHRASES,
    slots={},
    patterns={
        "whose_piece": r"(?: (?:the|his|her|our|your|their|black 's|white 's|its own|his own))(?: (?:own|king 's|queen 's|dark squared|light squared|[a-h]))? (?:queen|rook|bishop|pawn)(?: on [a-h][1-8])? 's",
        "own": r" (?:pawns?|knights?|bishops?|rooks?|queen|king)",
        "blocker": r"(?: (?:the|his|her|our|your|their|a|black 's|white 's))(?: [a-h])? (?:king|queen|rook|bishop|knight|pawn)(?: (?:on|at) [a-h][1-8])?",
        "one": r" [a-h][1-8]",
        "two": r" [a-h][1-8]",
        "file": FILE_LIST,
    },
    vocabulary=frozenset(
        ["blocks", "block", "blocked", "blocking", "obstructs", "obstruct", "obstructed", "obstructing", "blockades", "blockade", "blockaded", "blockading", "way", "path", "closes", "close"]
    ),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
