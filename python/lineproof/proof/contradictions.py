"""Contradictions: two claims of one lesson that cannot both be true, also where one position is reached by two roads.

A rule says of two claims why they exclude each other, or nothing. Which of the two is wrong, the findings say.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from lineproof.claims import Claim, Spot
from lineproof.claims.bounds import Points, is_good, move_of, points_of
from lineproof.lesson import Place

from .excluding import excluding
from .finding import Finding

GAP = 5
"""Points by which two verdicts must miss each other where moves lie between them: each of these may cost as much."""
CHAIN = 8
"""Moves that may lie between them."""


@dataclass(frozen=True)
class Contradiction:
    """Two findings, in the order of the text, whose claims cannot both be true. why: one sentence. rule: a key of `RULES`."""

    first: Finding
    second: Finding
    rule: str
    why: str

    @property
    def transposed(self) -> bool:
        """Whether the lesson reaches the position that both speak of by two roads."""
        one, other = self.first.claim.spot, self.second.claim.spot
        return one.board.key == other.board.key and one.moves != other.moves

    @property
    def said(self) -> str:
        """Why, and whether two roads lead there."""
        return f"{self.why} The lesson reaches it by two roads." if self.transposed else self.why


RULES: Mapping[str, str] = {
    "verdicts": "Two verdicts of one position (also: compensation, a mate, a move that loses) leave no score that both allow. A hedge widens by five points.",
    "verdicts in line": f"Two verdicts of one line, between which stand only moves that the lesson calls good (at most {CHAIN}), are {GAP} points or more apart beyond what such moves may cost. A move without such a word, and a marked mistake above all, says nothing of what stood before it.",
    "one move": "Two claims of one move (its mark, playable, not recommended, cannot be afforded, loses, refuted, works) leave no cost that both allow. The bad marks beside each other go together: a blunder may be called a mistake.",
    "only move": "One calls a move the only one, or forced, the other calls another move in the same position best, good, playable or worth a mark that an only move does not leave.",
    "best move": "Each calls another move in the same position the best, or better than the other's.",
    "counts": "Two counts of one thing in the same position (material, attackers or protectors of a square, tempi of development), where not both can be found so.",
    "denial": "One says what the other denies, of the same position.",
    "opposites": "Open and closed; mate and stalemate, check and stalemate, of the same position.",
    "castling": "A side has lost its castling, and castles, or has castled, later on the same line; or it has castled and can still castle.",
    "won and level": "A side has won material, and at the same position material is said to be level or the other side ahead, though it was not behind before.",
}
"""Every rule with what it says."""


def contradictions(findings: Sequence[Finding]) -> tuple[Contradiction, ...]:
    """Every pair that excludes each other, one for each two sentences or glyphs, in the order of the text."""
    found: dict[tuple[int, int], Contradiction] = {}
    for one, other, rule, why in _pairs(findings):
        first, second = sorted((one, other), key=lambda f: (f.claim.start, f.claim.end))
        ends = _said_in(first.claim), _said_in(second.claim)
        if ends[0] != ends[1]:
            found.setdefault(ends, Contradiction(first, second, rule, why))
    return tuple(sorted(found.values(), key=lambda c: (c.first.claim.start, c.second.claim.start)))


def _said_in(claim: Claim) -> int:
    """A number for the sentence, or the glyph, that a claim is made in."""
    return claim.sentence if "glyph" not in claim.params else -1 - claim.start


Found = tuple[Finding, Finding, str, str]


def _pairs(findings: Sequence[Finding]) -> Iterator[Found]:
    here: dict[int, list[Finding]] = defaultdict(list)
    for finding in findings:
        here[finding.claim.spot.board.key].append(finding)
    for some in here.values():
        for one, other in combinations(some, 2):
            why = excluding(one, other)
            if why is not None:
                yield one, other, *why
    yield from _verdicts(findings)
    yield from _castling(findings)


# Verdicts, through transpositions and along good moves


def _verdicts(findings: Sequence[Finding]) -> Iterator[Found]:
    valued: dict[int, list[tuple[Finding, Points]]] = defaultdict(list)
    spots: dict[int, Spot] = {}
    good: set[tuple[int, str]] = set()
    for finding in findings:
        known = points_of(finding.claim)
        if known is not None:
            spot, points = known
            valued[spot.board.key].append((finding, points))
            spots.setdefault(spot.board.key, spot)
        if is_good(finding.claim):
            weighed = move_of(finding.claim)
            assert weighed is not None  # what is good is weighed
            good.add((weighed.spot.board.key, weighed.move))
    for some in valued.values():
        for (one, first), (other, second) in combinations(some, 2):
            if not first & second:
                yield (
                    one,
                    other,
                    "verdicts",
                    "Two verdicts of one position, which cannot both be true.",
                )
    for key, some in valued.items():
        for before, low, high in _before(spots[key], good):
            for one, first in valued.get(before, ()):
                for other, second in some:
                    if first and second and _apart(first, second, low, high):
                        yield one, other, "verdicts in line", "Between the two only moves are played that the lesson calls good, and they do not explain the difference."  # fmt: skip


def _before(spot: Spot, good: set[tuple[int, str]]) -> Iterator[tuple[int, int, int]]:
    """Positions before, with what good moves since may have cost White and Black at most."""
    white = black = 0
    for plies in range(1, min(CHAIN, len(spot.moves)) + 1):
        at = spot.earlier(plies)
        if (at.board.key, spot.moves[-plies]) not in good:
            return
        if at.board.turn == "white":
            white += GAP
        else:
            black += GAP
        yield at.board.key, white, black


def _apart(before: Points, after: Points, white: int, black: int) -> bool:
    """Whether no score before goes with one after, when White has lost so much at most, and Black so much."""
    lowest, highest = min(before) - white, max(before) + black
    return min(after) - highest >= GAP or lowest - max(after) >= GAP


# Castling


def _castling(findings: Iterable[Finding]) -> Iterator[Found]:
    some = [f for f in findings if f.claim.kind in {"castled", "cannot-castle"}]
    for one, other in combinations(some, 2):
        for castled, right in ((one, other), (other, one)):
            if (castled.claim.kind, right.claim.kind) != ("castled", "cannot-castle"):
                continue
            if castled.claim.side != right.claim.side or castled.claim.negated:
                continue
            if not _wings_meet(castled.claim, right.claim):
                continue
            done, said = castled.claim.place, right.claim.place
            lost_before = right.claim.params["lasting"] and not right.claim.negated and _leads(said, done)  # fmt: skip
            if lost_before and not _has_castled(right.claim, castled.claim):
                yield castled, right, "castling", "One says that the side can castle no more, the other that it has castled later on this line."  # fmt: skip
            elif right.claim.negated and _leads(done, said):
                yield (
                    castled,
                    right,
                    "castling",
                    "One says that the side has castled, the other that it still can.",
                )


def _wings_meet(castled: Claim, right: Claim) -> bool:
    wing, lost = castled.params["wing"], right.params["wing"]
    return lost is None or right.negated or wing in (None, lost)


def _has_castled(right: Claim, castled: Claim) -> bool:
    """Whether the side had castled already where its right is said to be lost: then both can be true."""
    side = castled.side
    moves = zip(right.spot.boards, right.spot.moves, strict=False)
    return any(b.turn == side and b.san(uci).startswith("O-O") for b, uci in moves)


def _leads(place: Place, below: Place) -> bool:
    """Whether the line of one place goes on to the other, or to the same position."""
    return place.key in {at.key for at in below.path()}


__all__ = ["RULES", "Contradiction", "contradictions"]
