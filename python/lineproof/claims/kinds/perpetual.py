"""Perpetual check: checks without end."""

from __future__ import annotations

import re
from collections import deque
from typing import Any

from lineproof.claims.board import other, side_of, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.pointing import present
from lineproof.engine import Board

SHARE = 10
"""Nodes of a search for each position that may be looked at here."""
MOST = 20_000
"""Positions looked at, at most."""
DEPTH = 24
"""Checks in a row after which a position must have come back."""
SHOWN = 12
"""Plies of the checks that are shown."""

_ON = "[(on|from) {squares}]"
_ENDLESS = "without_end|endlessly|for_ever|forever|for_eternity|over_and_over|again_and_again|till_the_cows_come_home|till_doomsday|ad_infinitum|as_long_as_he_likes|for_as_long_as_he_likes"

FRAMES = (
    f"[{{agent}}] <~> perpetual {_ON}",
    f"{{side}} <have/force/find/reach/get/secure/claim> perpetual {_ON} [with {{moves}}]",
    f"[{{agent}}] <force/mean> perpetual {_ON}",
    f"{{side}} <draw/escape/hold/save/survive> [{{saved}}] (by|with|through) perpetual {_ON}",
    f"[{{anything}}] <~> (draw|game) by perpetual {_ON}",
    f"(game|line|position) <end/finish> (in|with|by) perpetual {_ON}",
    f"[{{anything}}] <end_in/end_with/lead_to> perpetual {_ON}",
    f"{{agent}} <keep/keep_on/go_on/continue to check> {_ON} [+{_ENDLESS}]",
    f"{{agent}} <keep/keep_on/go_on/continue to give> check {_ON} [+{_ENDLESS}]",
    f"{{agent}} <keep_on/go_on> check {_ON} [+{_ENDLESS}]",
    "{side} <run> out_of check ; runs=yes",
    "{side} <run_out_of> check ; runs=yes",
    "check <run> +out ; runs=yes",
    "check <end/stop> ; runs=yes",
    "{escaper} <escape/get/run> out_of check if modal=can negated",
    "{escaper} <escape/escape_from> check if modal=can negated",
    "<~> {noescape} from check",
    f"[{{agent}}] <give> check {_ON} +{_ENDLESS}",
    f"[{{agent}}] <check> {_ON} +{_ENDLESS}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    present(verb, "will", "can")
    denied = (
        "runs" in slots
    )  # checks that end are none without end; the reader turns a denial round
    spot = here.spot
    side = None
    if "escaper" in slots:
        side = other(here.side(slots["escaper"]))
    elif "side" in slots:
        side = here.side(slots["side"])
    elif "agent" in slots and slots["agent"] not in {"it", "this", "that", "which"}:
        side, spot = _giver(here, slots["agent"])
    elif "whose" in slots:
        side = here.side(slots["whose"])
    if side is None:
        side = _checker(here, lately="runs" in slots or "noescape" in slots)
    squares = re.findall("[a-h][1-8]", slots.get("squares", ""))
    return [here.claim(KIND.id, side, spot=spot, negated=denied, squares=squares)]


def _giver(here: Here, text: str) -> tuple[str, Spot]:
    """Whose checks they are: of a piece, the side's, where it may be either of two bishops."""
    try:
        agent = here.agent(text)
    except Unread:
        owners = {side_of(here.board.piece_at(at) or "K") for at in here.find(text)}
        owners &= {here.mover if here.board.in_check else here.board.turn}
        if len(owners) != 1:
            raise
        return owners.pop(), here.spot
    if agent.move is not None and not agent.spot.board.in_check:
        raise Unread("it is not clear who gives the checks")
    return agent.side, agent.spot


def _checker(here: Here, *, lately: bool) -> str:
    """Who gives the checks, when it is not said: who has just given one, or gives the next of the line.

    lately: whether the words speak of checks that are being given, the last one answered included.
    """
    if here.spot.moves and here.board.in_check:
        return here.mover
    if lately and len(here.spot.moves) > 1 and here.spot.earlier(1).board.in_check:
        return here.board.turn  # he has just stepped out of one
    following = here.shown_next
    if following is not None and here.board.play(following).in_check:
        return here.board.turn
    raise Unread("it is not clear who gives the checks")


def _checks(board: Board, squares: list[str]) -> list[tuple[str, Board]]:
    """The checks of the mover, on the squares named if any, with the position after each: those with the fewest replies first."""
    found = []
    for uci in board.legal_moves():
        if not squares or uci[2:4] in squares:
            after = board.play(uci)
            if after.in_check:
                found.append((uci, after))
    return sorted(found, key=lambda pair: len(pair[1].legal_moves()))


class _Proof:
    """Looks for one check in each position after which every reply leads to a position with such a check again.

    kept: that check, by the key of the position. A position on the way to itself counts as kept: the checks begin anew there. When it
    turns out not to be, all that was kept since is taken back.
    """

    def __init__(self, squares: list[str], most: int) -> None:
        self.kept: dict[int, str] = {}
        self._squares = squares
        self._left = most
        self._path: set[int] = set()
        self._order: list[int] = []

    def endless(self, board: Board, depth: int = DEPTH) -> bool:
        key = board.key
        if key in self._path or key in self.kept:
            return True
        if depth == 0 or self._left <= 0:
            return False
        self._left -= 1
        self._path.add(key)
        mark = len(self._order)
        try:
            for uci, after in _checks(board, self._squares):
                if all(self.endless(after.play(m), depth - 1) for m in after.legal_moves()):
                    self.kept[key] = uci
                    self._order.append(key)
                    return True
            for gone in self._order[mark:]:
                del self.kept[gone]
            del self._order[mark:]
            return False
        finally:
            self._path.discard(key)


def _escapes(roots: list[Board], squares: list[str], most: int) -> bool:
    """Whether the other side certainly gets out of the checks from some root: every check and every reply tried, in at most `most` positions.

    A position that was not looked at is taken for one in which the checks go on.
    """
    replies: dict[int, list[set[int]]] = {}
    waiting = deque(roots)
    seen = {board.key for board in roots}
    while waiting and len(replies) < most:
        board = waiting.popleft()
        replies[board.key] = []
        for _, after in _checks(board, squares):
            then = [after.play(m) for m in after.legal_moves()]
            replies[board.key].append({b.key for b in then})
            for position in then:
                if position.key not in seen:
                    seen.add(position.key)
                    waiting.append(position)
    going_on = set(seen)
    while True:
        gone = {
            key
            for key in going_on & set(replies)
            if not any(after <= going_on for after in replies[key])
        }
        if not gone:
            return any(root.key not in going_on for root in roots)
        going_on -= gone


def check(claim: Claim, ask: Ask) -> Judgement:
    board = claim.spot.board
    side = claim.side or "white"
    squares: list[str] = claim.params["squares"]
    most = min(ask.nodes // SHARE, MOST)
    roots = [board] if board.turn == side else [board.play(m) for m in board.legal_moves()]
    if not roots:
        because = "The game is over here."
        return Judgement(Outcome.FAILS, because, (), claim.spot, instead=because)
    there = f" on {' and '.join(squares)}" if squares else ""
    proof = _Proof(squares, most)
    if all(proof.endless(root) for root in roots):
        line = _cycle(board, side, proof.kept)
        because = f"{title(side)} can give check without end{there}, for example {' '.join(board.san_line(list(line)))}."
        checks = dict.fromkeys(line[0 if board.turn == side else 1 :: 2])
        marks = tuple(Mark("move", (m[:2], m[2:4]), side) for m in checks)
        numbers = {"positions": len(proof.kept)}
        return Judgement(Outcome.HOLDS, because, line, claim.spot, numbers, marks=marks[:4])
    if not _escapes(roots, squares, most):
        because = f"{title(side)} has many checks; whether they end was not found out in {most} positions."
        return Judgement(Outcome.UNSETTLED, because, (), claim.spot, {}, 1.0)
    because = f"{title(other(side))} gets out of {title(side)}'s checks{there}."
    if not any(_checks(root, squares) for root in roots):
        because = f"{title(side)} has no check{there}."
    return Judgement(Outcome.FAILS, because, (), claim.spot, {}, instead=because)


def _cycle(board: Board, side: str, kept: dict[int, str]) -> tuple[str, ...]:
    """Checks and replies until a position comes back, or mate."""
    line: list[str] = []
    if board.turn != side:
        line.append(board.legal_moves()[0])
        board = board.play(line[0])
    seen: set[int] = set()
    while board.key not in seen and len(line) < SHOWN:
        seen.add(board.key)
        line.append(kept[board.key])
        board = board.play(line[-1])
        legal = board.legal_moves()
        if not legal:
            break
        line.append(next((m for m in legal if board.play(m).key in seen), legal[0]))
        board = board.play(line[-1])
    return tuple(line)


KIND = Kind(
    id="perpetual",
    title="Perpetual check",
    version=1,
    definition=f"The side can give check after check without end, on the squares named if any, whatever the other replies (mate counts too): every check and every reply is tried, in at most {MOST} positions; with the other side to move, after each of his moves.",
    frames=FRAMES,
    tests={
        "noescape": lambda n: (
            n.head
            if n.no and n.head in {"escape", "way out", "exit", "refuge", "shelter"}
            else None
        ),
        "escaper": lambda n: n.text if n.type == "side" else None,
        "squares": lambda n: n.text if n.type == "square" else None,
        "saved": lambda n: (
            n.text if n.head in {"draw", "game", "half"} or n.type == "side" else None
        ),
        "moves": lambda n: n.text if n.type == "move" else None,
    },
    read=read,
    check=check,
    flips=True,
    tactic="for",
)
