"""Exchanges: pieces that come off, or have come off."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.board import LETTERS, NAMES, VALUES, counts, other, side_of, title
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.gain import end_of_shown_line, settled
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS
from lineproof.claims.noun import Noun
from lineproof.claims.played import doer
from lineproof.claims.slot import SLOTS
from lineproof.engine import Board

FULL = {"q": 1, "r": 2, "b": 2, "n": 2, "p": 8}
"""Pieces that each side begins with."""

FRAMES = (
    "{pieces} <be> +off|gone|away ; off=yes",
    "{pieces} <be> gone ; off=yes",
    "[{agent}] <exchange> {pieces} [on {square}]",
    "[{agent}] <exchange> {gave} for {got} [on {square}]",
    "[{agent}] <give_up/part_with/give/swap> {gave} for {got} [on {square}] ; even=yes",
    "{pieces} <come_off> [on {square}]",
    "{pieces} <leave> board ; off=done",
    "[{agent}] <offer> exchange of {pieces} [on {square}] ; offer=yes",
    "[{agent}] <propose/force/seek/allow/invite> exchange of {pieces} [on {square}] ; offer=yes",
    "[{agent}] <offer to exchange> {pieces} [on {square}] ; offer=yes",
    "[{agent}] <offer> {pieces} for exchange ; offer=yes",
    "[{agent}] <offer/propose/seek/invite/force> {trade} [on {square}] ; offer=yes",
    "{piece} <offer/propose/seek> exchange ; offer=yes",
    "exchange <follow> of {pieces}",
    "{pieces} <stay> [on board] +on ; stays=yes",
    "{pieces} <be> +on_the_board|on ; stays=yes",
    "{pieces} <go> ; off=yes if perfect without=to|into|on|in",
    "{pieces} <go> on {shade} ; off=yes if perfect without=to|into|in",
    "{pieces} <be> (gone|off) on {shade} ; off=yes",
    "{pieces} <be> off board ; off=yes",
    "<=> {pieces} off board ; off=yes if verbless",
    "{both} <lose/sacrifice/exchange/give_up> {each} ; off=yes",
    "{pointer} <=> {gave} for {got} ; even=yes",
    "<=> {gave} for {got} ; even=yes if verbless lone",
    "{pieces} <stay> on board ; stays=yes",
)


def _men(noun: Noun) -> str | None:
    """The pieces that are exchanged; "minor pieces" are either."""
    if _PAIR.fullmatch(noun.head) is not None:
        return noun.head
    if noun.type == "piece" and noun.head != "king":
        return f"all {noun.text}" if noun.det.startswith("all") else noun.text
    return noun.text if noun.head == "piece" and "minor" in noun.adjectives else None


_PAIR = re.compile(r"(?:\d+ )?pairs? of (?:queen|rook|bishop|knight|minor piece)s")


def _shade(noun: Noun) -> str | None:
    """ "The dark squares": the colour."""
    if noun.head != "square" or not noun.plural:
        return None
    return next((c for c in ("dark", "light") if c in noun.adjectives), None)


def _trade(noun: Noun) -> str | None:
    """ "A queen trade": of queens."""
    if noun.head not in NOUNS["exchange"]:
        return None
    return next((f"{a}s" for a in noun.adjectives if a in LETTERS and a != "king"), None)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    agent_text = slots.get("agent")
    if "each" in slots:
        slots["pieces"] = slots["each"]
    if "gave" in slots:
        own = [_letter(slots["gave"])]
        enemy = [_letter(slots["got"])]
        if agent_text is None and here.subject is None:
            return [_claim(here, _giver(here, own[0]), here.spot, own, enemy, "line", False, slots)]
        agent = doer(here, agent_text)
        if "even" in slots and VALUES.get(own[0], 3) != VALUES.get(enemy[0], 3):
            raise Unread("more is given up than is had for it")
        return [_claim(here, agent.side, agent.spot, own, enemy, "line", False, slots)]
    if "piece" in slots:
        agent_text = slots["piece"]
        slots["pieces"] = agent_text + "s"
    slots.setdefault("pieces", slots.get("trade"))
    letters = _letters(slots["pieces"])
    plural = re.search(r"(?:s|pair of \w+)$", slots["pieces"]) is not None
    verb = slots.get("verb")
    modal = verb.modal if verb is not None else ""
    if modal not in {"", "will", "would", "could"}:
        raise Unread("it is not said that they come off")
    state = "offer" if "offer" in slots else "line"
    if not modal and (
        slots.get("off") == "yes" or (state == "line" and verb is not None and verb.done)
    ):
        state = "off"
    side, spot = None, here.spot
    if agent_text is not None or state == "offer":
        agent = doer(here, agent_text)
        side, spot = agent.side, agent.spot
    elif state == "line" and not plural:
        raise Unread("it is not said what the piece is exchanged for")
    if state == "off" and not plural:
        raise Unread("it is not said that both sides have lost one")
    every = re.search(r"\b(?:all|both pairs of)\b", slots["pieces"]) is not None
    claim = _claim(here, side, spot, letters, letters, state, every, slots)
    return [replace(claim, negated=True)] if "stays" in slots else [claim]


def _giver(here: Here, letter: str) -> str:
    """Who has given such a piece: the side that has fewer of them.

    :raises Unread: when neither has.
    """
    white, black = counts(here.board, "white"), counts(here.board, "black")
    if letter not in white or white[letter] == black[letter]:
        raise Unread("it is not clear who has given it")
    return "white" if white[letter] < black[letter] else "black"


def _claim(
    here: Here, side: str | None, spot: Spot, own: list[str], enemy: list[str], state: str, every: bool, slots: dict[str, Any]
) -> Claim:  # fmt: skip
    return here.claim(
        KIND.id, side, spot=spot, own=tuple(own), enemy=tuple(enemy), state=state, every=every,
        square=slots.get("square"), shade=slots.get("shade") or _shade_of(slots.get("pieces")),
    )  # fmt: skip


def _shade_of(pieces: str | None) -> str | None:
    """The colour of "the dark-squared bishops"."""
    said = next(
        (c for c in ("dark", "light") if c in (pieces or "").replace("-", " ").split()), None
    )
    return said if "bishop" in (pieces or "") else None


def _of_shade(board: Board, shade: str) -> list[str]:
    """The squares of one colour on which bishops stand."""
    bishops = [at for at, letter in board.pieces() if letter.lower() == "b"]
    return [at for at in bishops if ((ord(at[0]) + int(at[1])) % 2 == 0) == (shade == "dark")]


def _letter(text: str) -> str:
    word = text.split()[-1]
    return LETTERS.get(word.removesuffix("s"), "m")


def _letters(text: str) -> list[str]:
    found = [LETTERS[w.removesuffix("s")] for w in text.split() if w.removesuffix("s") in LETTERS]
    return found or ["m"]


def check(claim: Claim, ask: Ask) -> Judgement:
    own, enemy, state = claim.params["own"], claim.params["enemy"], claim.params["state"]
    side = claim.side or "white"
    board = claim.spot.board
    what = " and ".join(f"{NAMES.get(a, 'minor piece')}s" for a in dict.fromkeys(own))
    if state == "off":
        mine, theirs = counts(board, "white"), counts(board, "black")
        gone = all(_full(k) - _count(c, k) >= 1 for k in own for c in (mine, theirs))
        if claim.params["every"] or own == ("q",):
            gone = all(_count(c, k) == 0 for k in own for c in (mine, theirs))
        shade = claim.params["shade"]
        if shade is not None:
            gone = not _of_shade(board, shade)
        because = f"White has {_list(mine, own)} left and Black {_list(theirs, own)}."
        return Judgement(
            Outcome.HOLDS if gone else Outcome.FAILS, because, (), claim.spot, {}, instead=None if gone else because
        )  # fmt: skip
    if state == "offer":
        pairs = _meetings(claim.spot, side, own)
        because = (
            f"{title(side)}'s {pairs[0][1]} and the {pairs[0][0]} may be exchanged."
            if pairs
            else f"No {what} of {title(side)}'s can be taken and taken back."
        )
        return Judgement(
            Outcome.HOLDS if pairs else Outcome.FAILS, because, (), claim.spot, {}, instead=None if pairs else because
        )  # fmt: skip
    start = claim.spot.earlier(min(1, len(claim.spot.moves)))
    shown = end_of_shown_line(claim.place, claim.spot)
    if _exchanged(start, shown, own, enemy, side, claim.params["square"]):
        because = f"The {what} come off in the line shown."
        line = _until(claim, start, shown.moves[len(claim.spot.moves) :])
        return Judgement(Outcome.HOLDS, because, line, claim.spot, {})
    final = settled(ask, shown, side)
    line = (*shown.moves[len(claim.spot.moves) :], *final.moves)
    if _exchanged(start, final.spot, own, enemy, side, claim.params["square"]):
        because = f"The {what} come off with best play from the end of the line shown."
        line = _until(claim, start, line)
        return Judgement(Outcome.HOLDS, because, line, claim.spot, {}, 100.0)
    because = f"The {what} do not come off in the line shown, nor in best play after it."
    return Judgement(Outcome.FAILS, because, line[:SHOWN], claim.spot, {}, 100.0, because)


def _until(claim: Claim, start: Spot, line: tuple[str, ...]) -> tuple[str, ...]:
    """The line up to the moment at which the pieces are off."""
    side, params = claim.side or "white", claim.params
    at = claim.spot
    for plies, uci in enumerate(line, 1):
        at = at.play(uci)
        if _exchanged(start, at, params["own"], params["enemy"], side, params["square"]):
            return line[:plies]
    return line


def _exchanged(
    start: Spot, end: Spot, own: tuple[str, ...], enemy: tuple[str, ...], side: str, square: str | None
) -> bool:  # fmt: skip
    """Whether one each of the pieces has left the board between two positions, on the square if one is named."""
    for who, letters in ((side, own), (other(side), enemy)):
        before, after = counts(start.board, who), counts(end.board, who)
        if any(_count(before, k) - _count(after, k) < 1 for k in letters):
            return False
    if square is None:
        return True
    return any(
        uci[2:4] == square and board.piece_at(square) is not None
        for uci, board in zip(
            end.moves[len(start.moves) :], end.boards[len(start.moves) :], strict=False
        )
    )


def _meetings(spot: Spot, side: str, letters: tuple[str, ...]) -> list[tuple[str, str]]:
    """Pieces of one kind that stand opposite each other so that either side's capture can be answered on the square."""
    board = spot.board
    found: list[tuple[str, str]] = []
    for at, letter in board.pieces():
        if side_of(letter) != side or not _is(letter, letters):
            continue
        for taker in board.attackers(other(side), at):
            if _is(board.piece_at(taker) or "", letters) and board.attackers(side, at, [taker]):
                found.append(
                    (f"{NAMES[(board.piece_at(taker) or 'p').lower()]} on {taker}", f"{NAMES[letter.lower()]} on {at}")
                )  # fmt: skip
    return found


def _is(letter: str, letters: tuple[str, ...]) -> bool:
    small = letter.lower()
    return small in letters or ("m" in letters and small in "nb")


def _count(found: dict[str, int], letter: str) -> int:
    return found["b"] + found["n"] if letter == "m" else found[letter]


def _full(letter: str) -> int:
    return 4 if letter == "m" else FULL[letter]


def _list(found: dict[str, int], letters: tuple[str, ...]) -> str:
    parts = []
    for letter in dict.fromkeys(letters):
        n = _count(found, letter)
        word = NAMES.get(letter, "minor piece")
        parts.append(f"{'no' if n == 0 else n} {word}{'' if n == 1 else 's'}")
    return " and ".join(parts)


KIND = Kind(
    id="exchange",
    title="Exchange",
    version=2,
    definition=(
        "One each of the pieces named leaves the board between the position before the last move and the end of the line shown, or of best play after it until no capture gains a pawn. Said to be off: of queens none is left; of other pieces each side has lost one at least, "
        "'all' means none is left, and of bishops of one colour none of that colour. Offered: such pieces stand so that one can take the other and be taken back."
    ),
    frames=FRAMES,
    tests={
        "both": lambda n: (
            n.text if n.type == "side" and n.text.split()[0] in {"both", "each"} else None
        ),
        "pointer": lambda n: n.text if n.head in {"that", "this", "it"} else None,
        "each": lambda n: (
            f"the {n.head}s"
            if n.type == "piece" and not n.plural and n.head not in {"king", "pawn"}
            else None
        ),
        "pieces": _men,
        "trade": _trade,
        "shade": _shade,
        "gave": SLOTS["target"],
        "got": SLOTS["target"],
    },
    read=read,
    check=check,
    flips=True,
)
