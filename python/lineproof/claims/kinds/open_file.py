"""Open files: no pawn on them."""

from __future__ import annotations

from typing import Any

from lineproof.claims.board import name, names, other, pieces, title, upper
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun
from lineproof.claims.owner import SLOTS, agreeing, denied, either, named_side, owning
from lineproof.claims.reference import Reference
from lineproof.claims.structure import FILES, is_half_open, is_open, pawns
from lineproof.claims.tense import answer, first, squares, when
from lineproof.claims.where import Where
from lineproof.engine import Board

FRAMES = (
    *owning("open file"),
    "{files} <=> open",
    "{side} <have> open file for {anything}",
    "{side} <have> {bare} [for {anything}]",
    "<be:open> {files}",
    "{files} <=> open file",
    "{files} <=> open (for|to) {anything}",
    "{files} <=> open one",
    "{files} <=> only open one",
    "<~> open file (for|to) {anything}",
    "{none} <be> on {files}",
    "<*> open file",
    "{only_open} <be> {files} ; only=yes",
    "{files} <=> {only_open} ; only=yes",
    "<~> {only_open} ; only=yes",
    "{side} <have> {only_open} ; only=yes",
    "[{agent}] <open> {files} ; opening=yes",
    "[{agent}] <open> {files} (for|to|towards|against) {anything} ; opening=yes",
    "[{agent}] <leave/keep> {files} open [(for|to) {side}]",
    "[{agent}] <make> {files} open",
    "{holder} <control/command/dominate/rule/own> {open_file} ; holds=controls",
    "{holder} <occupy/seize/take/take_over> {open_file} ; holds=occupies",
    "{holder} <be> (on|along) {open_file} ; holds=occupies",
    "{files} <open> [for {anything}] ; opening=yes",
)


def _named_open(noun: Noun) -> str | None:
    """The letters of an open file, a blank where none is named."""
    if noun.head != "file" or noun.no or "open" not in noun.adjectives:
        return None
    return noun.file or " "


def _only(noun: Noun) -> str | None:
    """The same, where it is the only one."""
    return _named_open(noun) if "only" in noun.adjectives or noun.count == 1 else None


def _for_whom(here: Here, text: str) -> str | None:
    """The side for which a file is opened: "White", "our rook"; None for a target such as "the king"."""
    try:
        return here.side(text)
    except Unread:
        reference = Reference.read(text)
        return None if reference.letter == "k" else here.owner(reference)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "bare" in slots:
        slots["files"] = slots.pop("bare")
        if not all(is_open(here.board, f) for f in slots["files"]):
            raise Unread("it is not open, so it is not clear what is said of it")
    opening = "opening" in slots
    spot = here.spot
    side = None
    if slots.get("side", "") in {"both sides", "both players", "both camps"}:
        del slots["side"]
    if "holder" in slots:
        holder = here.agent(slots["holder"])
        side = holder.side
        slots["files"] = slots["open_file"].strip() or None
    if "only_open" in slots:
        slots.setdefault("files", slots["only_open"].strip() or None)
    if "anything" in slots and opening:
        side = _for_whom(here, slots["anything"])
    if "side" in slots:
        side = named_side(here, slots["side"])
    elif "whose" in slots:
        side = named_side(here, slots["whose"])
    moved = False
    if "agent" in slots:
        agent = here.agent(slots["agent"])
        spot, moved = agent.spot, agent.move is not None
        side = side or agent.side
    asked = when(here, slots, brings=opening)
    files = "".join(f for f in slots.get("files") or "" if f in FILES)
    if not files and "line" in here.said:
        raise Unread("open lines may be diagonals")
    if "known" in slots and not files and sum(is_open(spot.board, f) for f in FILES) != 1:
        raise Unread("it is not clear which file is meant")
    if here.said.startswith("the"):
        agreeing(here, len(files))
    return [
        here.claim(
            KIND.id, side, spot=spot, negated=denied(slots), when=asked, files=files, opening=opening, moved=moved,
            whose=bool({"side", "whose"} & slots.keys()) or ("anything" in slots and side is not None),
            only="only" in slots, holds=slots.get("holds"), n=int(slots["n"]) if "n" in slots else None,
        )
    ]  # fmt: skip


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    p = claim.params
    if p["n"] is not None:
        return _counted(claim, p["n"])

    def fitting(spot: Spot) -> list[str]:
        return _open(spot.board, claim, p)

    spot, found = first(claim, fitting)
    board = spot.board
    where = f"the {_spelled(found or list(p['files']))}"
    if found:
        half = [f for f in found if not is_open(board, f)]
        because = (
            f"{upper(where)} {'is' if len(found) == 1 else 'are'} open: no pawn stands there."
            if not half
            else f"{upper(where)} is half-open now: only {names(board, [a for s in ('white', 'black') for a in pawns(board, s, half[0])])} left on it."
        )
        if p["moved"] and _was(claim, found):
            return answer(claim, False, f"{upper(where)} was no less open before the move.")
        holder = _holder(board, found, claim, p) if p["holds"] else None
        if p["holds"] and holder is None:
            return answer(
                claim, False, f"{upper(where)} is open, but {_not_held(claim, board, found[0])}."
            )
        marks = tuple(Mark("move", (f + "1", f + "8"), claim.side or "white") for f in found)
        return answer(claim, True, because, at=spot, marks=(*marks, *squares([holder] if holder else [], claim.side or "white")))  # fmt: skip
    return answer(claim, False, _why_not(claim.spot.board, p["files"]))


def _open(board: Board, claim: Claim, p: Any) -> list[str]:
    """The open files spoken of, all of which must be open; of an opening, without pawns of the side is enough."""

    def fits(file: str) -> bool:
        sides = either(claim.side if p["whose"] else None)
        return is_open(board, file) or (
            p["opening"] and any(is_half_open(board, s, file) for s in sides)
        )

    if p["files"]:
        found = [f for f in p["files"] if fits(f)]
        others = [f for f in FILES if is_open(board, f) and f not in found]
        return found if len(found) == len(p["files"]) and not (p["only"] and others) else []
    found = [f for f in FILES if is_open(board, f)]
    return [] if p["only"] and len(found) != 1 else found


def _was(claim: Claim, files: list[str]) -> bool:
    before, now = claim.spot.boards[-2:]
    sides = ("white", "black")

    def without(board: Board, file: str) -> int:
        return sum(not pawns(board, s, file) for s in sides)

    return all(without(before, f) == without(now, f) for f in files)


def _holder(board: Board, files: list[str], claim: Claim, p: Any) -> str | None:
    """A rook or queen of the side on one of the files; of "controls", with no enemy one on it."""
    side = claim.side or "white"
    for file in files:
        mine = _heavy(board, side, file)
        if mine and not (p["holds"] == "controls" and _heavy(board, other(side), file)):
            return mine[0]
    return None


def _heavy(board: Board, side: str, file: str) -> list[str]:
    return [at for letter in "rq" for at in pieces(board, side, letter) if at[0] == file]


def _not_held(claim: Claim, board: Board, file: str) -> str:
    side = claim.side or "white"
    if not _heavy(board, side, file):
        return f"no rook or queen of {title(side)} stands on it"
    return f"{names(board, _heavy(board, other(side), file))} stands on it too"


def _counted(claim: Claim, n: int) -> Judgement:
    found = [f for f in FILES if is_open(claim.spot.board, f)]
    because = f"The open files are the {_spelled(found)}." if len(found) > 1 else f"The {_spelled(found)} alone is open." if found else "No file is open."  # fmt: skip
    return answer(claim, len(found) == n, because)


def _spelled(files: list[str]) -> str:
    return str(Where(files="".join(files))).removeprefix(" on the ") if files else "board"


def _why_not(board: Board, files: str) -> str:
    for file in files:
        if is_open(board, file):
            continue
        halves = [s for s in ("white", "black") if is_half_open(board, s, file)]
        standing = [at for s in ("white", "black") for at in pawns(board, s, file)]
        if halves:
            return f"The {file}-file is half-open for {title(halves[0])}: {name(board, standing[0])} still stands on it."
        return f"The {file}-file is closed: {names(board, standing)} stand on it."
    found = [f for f in FILES if is_open(board, f)]
    return f"The {_spelled(found)} {'is' if len(found) == 1 else 'are'} open." if found else "No file is open."  # fmt: skip


KIND = Kind(
    id="open-file",
    title="Open file",
    version=1,
    definition="No pawn stands on the file. Opening a file for a side asks that none of that side's pawns is left on it, so that it is open or half-open, and that this was not so before the move. Occupied: a rook or queen of the side stands on it; controlled: and none of the other side.",
    source='"Open File", Chess Programming Wiki (from memory)',
    slots={
        **SLOTS,
    },
    frames=FRAMES,
    tests={
        "bare": lambda n: n.file or None if n.type == "file" and not n.adjectives and not n.no else None,
        "only_open": _only,
        "open_file": _named_open,
        "holder": lambda n: n.text if n.type == "side" or (n.type == "piece" and n.head in {"rook", "queen"}) else None,
        "none": lambda n: n.head if n.no and n.type == "piece" and n.head == "pawn" and not n.whose else None,},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
