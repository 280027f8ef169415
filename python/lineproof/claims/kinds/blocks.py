"""Blocks: a piece that stands in another's way."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import NAMES, name, other, pieces, side_of, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Spot
from lineproof.claims.here import Here, Unread, absent
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.owner import agreeing
from lineproof.claims.reference import Reference
from lineproof.claims.structure import ahead, isolated, passed, rank
from lineproof.claims.tense import answer, first, when
from lineproof.engine import Board

FRAMES = (
    "{agent} <block> {target} [on {square}]",
    "{agent} <block/close> way (of|to|for) {target}",
    "{agent} <be> in way of {target}",
    "{agent} <be/get/step> in {way}",
    "{agent} <take/block/close/bar> {way}",
    "{agent} <=> in_front_of {target}",
    "{agent} <=> in_front_of {kind}",
    "{agent} <block> {kind} [on {square}]",
    "{own} <block> {target}",
    "<be:block> {target}",
    "{agent} <block/close> {file}",
    "{agent} <block/close> {one} to {two}",
    "{agent} <block/close> diagonal from {one} to {two}",
    "{agent} <block/close> {line} [in {way}] [(of|to|from|against) {target}]",
    "[{agent}] <block/close> {line} with {blocker} [(of|to|from|against) {target}]",
    "{agent} <shelter/shield/screen> {sheltered} [(from|against) {target}]",
    "{agent} <occupy/take> {natural}",
    "{agent} <be> (on|in) {natural}",
)
_WAYS = frozenset(NOUNS["way"]) | {"face", "eye"}


def _way(noun: Noun) -> str | None:
    """Whose way: "the queen's way", "our bishop's diagonal"."""
    piece = next((a for a in noun.adjectives if a in NAMES.values()), None)
    if noun.head not in _WAYS or piece is None:
        return None
    on = f" on {noun.square}" if noun.square else ""
    return f"{noun.whose or 'the'} {piece}{on}"


def _natural(noun: Noun) -> str | None:
    """Whose square: "the knight's natural square"."""
    best = {"natural", "best", "favourite", "proper", "own", "usual"} & set(noun.adjectives)
    return (
        "knight" if noun.head in NOUNS["square"] and best and "knight" in noun.adjectives else None
    )


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    asked = when(here, slots)
    spot, blocker = here.spot, None
    if "blocker" in slots:
        blocker = here.agent(slots["blocker"]).square
    elif "agent" in slots:
        agreeing(here, 1)
        if Reference.read(slots["agent"]).plural:
            raise Unread("several pieces block, of which none is named")
        agent = here.agent(slots["agent"])
        spot, blocker = agent.spot, agent.square
        if blocker is None:
            raise Unread("it is not clear which piece blocks")
    at, board = here.at(spot), spot.board
    standing = board.piece_at(blocker) if blocker else None
    side = side_of(standing) if standing else None
    target, line = None, ""
    own = LETTER_OF.get(slots["own"]) if "own" in slots else None
    text = slots.get("target") or slots.get("way")
    if "sheltered" in slots:
        lines = at.find(slots["sheltered"], side)
        line = lines[0] if len(lines) == 1 else ""
        if not line or side is None or line == blocker:
            raise Unread("it is not clear what is sheltered")
        line = f"before {line}"
    elif "natural" in slots:
        line = "natural"
    elif "kind" in slots:
        target = _before(at, slots["kind"], blocker or "", side or "")
    elif text:
        target = _one(at, text, blocker)
    elif "file" in slots:
        line = slots["file"]
    elif "one" in slots:
        line = f"{slots['one']} {slots['two']}"
    elif "line" in slots:
        line = slots["line"]
    else:
        raise Unread("it is not clear what is blocked")
    if target is not None and (board.piece_at(target) or "").lower() in "nk":
        raise Unread("what stands in a knight's or a king's way is another question")
    if (
        blocker is None
        and own is None
        and target is not None
        and (board.piece_at(target) or "").lower() != "p"
    ):
        raise Unread("it is not said what blocks the piece")
    if blocker is None and target is None:
        raise Unread("it is not said what blocks it")
    return [
        here.claim(KIND.id, side, spot=spot, when=asked, blocker=blocker, target=target, line=line, own=own)
    ]  # fmt: skip


def _before(here: Here, kind: str, blocker: str, side: str) -> str:
    """The pawn that is meant by "the isolated pawn": of those of the other side the one right before the blocker, else the only one.

    :raises Unread: when there is none, or several.
    """
    enemy = other(side)
    found = isolated(here.board, enemy) if kind == "isolated pawn" else passed(here.board, enemy)
    near = [at for at in found if ahead(enemy, at) == blocker] or found
    if len(near) != 1:
        raise Unread(f"it is not clear which {kind} is meant")
    return near[0]


LETTER_OF = {word: letter for letter, word in NAMES.items()}


def _one(here: Here, text: str, blocker: str | None) -> str:
    """The piece in whose way something stands.

    :raises Unread: when several may be meant, or none is there.
    """
    reference = Reference.read(text)
    board = here.board
    found = [a for a in reference.squares(board, here.owner(reference)) if a != blocker]
    if not found:
        raise absent(text)
    if len(found) > 1 and reference.plural:
        raise Unread(f"{text!r} are several")
    if (
        len(found) > 1 and blocker is not None
    ):  # "the knight blocks the bishop": the one in whose way it is
        found = [a for a in found if _blockers(board, a, blocker, None)]
    found = here.salient(found)
    if len(found) != 1:
        raise Unread(f"it is not clear which piece {text!r} means")
    return found[0]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params
    board = claim.spot.board
    blocker: str | None = p["blocker"]
    if p["target"] is None and p["line"] == "natural":
        return _natural_square(claim, blocker or "")
    if p["target"] is None and p["line"].startswith("before"):
        return _sheltered(claim, blocker or "", p["line"].split()[1])
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
    if line in {"diagonal", "file"}:
        where, on = f"a {line}", True
        letters = "bq" if line == "diagonal" else "rq"
    elif len(line) == 1:
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
    if not looking and line in {"diagonal", "file"}:
        return answer(
            claim,
            False,
            f"{who} stands on no {line} of a {'bishop' if line == 'diagonal' else 'rook'} or queen.",
        )
    because = f"{who} stands on {where}"
    because += f", in the way of {name(board, looking[0])}." if looking else "."
    return answer(claim, True, because, marks=(Mark("square", (blocker,), side_of(board.piece_at(blocker) or "K")),))  # fmt: skip


def _natural_square(claim: Claim, blocker: str) -> Judgement:
    """A knight's natural square: c3, f3, c6, f6."""
    side = side_of(claim.spot.board.piece_at(blocker) or "K")
    who = upper(name(claim.spot.board, blocker))
    holds = blocker in (("c3", "f3") if side == "white" else ("c6", "f6"))
    because = f"{who} stands {'' if holds else 'not '}on a natural square of a knight, {blocker}."
    if not holds:
        because = f"{who} stands on {blocker}, which is no natural square of a knight."
    return answer(claim, holds, because, marks=(Mark("square", (blocker,), side),))


def _sheltered(claim: Claim, blocker: str, at: str) -> Judgement:
    """Whether the blocker alone stands between a line piece of the other side and the square."""
    board = claim.spot.board
    side = side_of(board.piece_at(blocker) or "K")
    looking = [
        piece
        for letter in "brq"
        for piece in pieces(board, other(side), letter)
        if blocker in board.attacks(piece)
        and blocker in Board.between(piece, at)
        and at in board.attacks(piece, [blocker])
    ]
    who, what = upper(name(board, blocker)), name(board, at)
    if not looking:
        return answer(claim, False, f"{who} stands in the way of nothing that aims at {what}.")
    because = f"{who} stands between {name(board, looking[0])} and {what}."
    return answer(claim, True, because, marks=(Mark("square", (blocker,), side),))


def _same_line(at: str, blocker: str, line: str) -> bool:
    if line in {"diagonal", "file"}:
        return (at[0] == blocker[0]) == (line == "file") and at[1] != blocker[1]
    if len(line) == 1:
        return at[0] == blocker[0]
    one, two = line.split()
    return at in {one, two, *Board.between(one, two)}


KIND = Kind(
    id="blocks",
    title="Stands in the way",
    version=2,
    definition="A piece stands on the square before a pawn (of a pawn that has not moved: one of the two squares before it), or is the first piece on a line of a bishop, rook or queen. A file or diagonal is blocked by a piece that stands on it. A square is sheltered by the only piece between it and a line piece of the other side. A knight's natural squares are c3, f3, c6 and f6; else what stands in a knight's or a king's way is not read.",
    frames=FRAMES,
    tests={
        "way": _way,
        "natural": _natural,
        "kind": lambda n: "isolated pawn" if n.head in NOUNS["isolated pawn"] else "passed pawn" if n.head in NOUNS["passed pawn"] else None,
        "own": lambda n: n.head if n.type == "piece" and (n.plural or "own" in n.adjectives) and not n.parts else None,
        "blocker": lambda n: n.text if n.type == "piece" and not n.plural else None,
        "line": lambda n: n.head if n.head in {"diagonal", "file"} and not n.file and not n.parts else None,
        "one": lambda n: n.text if n.type == "square" else None,
        "two": lambda n: n.text if n.type == "square" else None,
        "sheltered": lambda n: n.text if n.type in {"piece", "square"} and not n.parts else None,
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
