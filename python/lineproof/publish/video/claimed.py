"""The marks of claims that hold: by the sentence that makes the claim, and by the position."""

from __future__ import annotations

from bisect import bisect_left

from lineproof.claims import Outcome
from lineproof.diagram import JustPlayed, Mark
from lineproof.lesson import Place
from lineproof.order import Cue
from lineproof.proof import Proof
from lineproof.report.figure import marks_of


class Claimed:
    """Of one proof."""

    def __init__(self, proof: Proof) -> None:
        found = sorted(
            (
                (finding.claim.start, finding.line_from.board.key, marks)
                for finding in proof.findings
                if finding.outcome is Outcome.HOLDS
                and finding.judgement.marks
                and (marks := tuple(m for m in marks_of(finding) if not isinstance(m, JustPlayed)))
            ),
            key=lambda one: one[0],
        )
        self._starts = [start for start, _, _ in found]
        self._found = [(key, marks) for _, key, marks in found]

    def by(self, cue: Cue) -> tuple[Mark, ...]:
        """Marks of the claims that a sentence makes of the position on the board."""
        if cue.start is None:
            return ()
        first = bisect_left(self._starts, cue.start)
        last = bisect_left(self._starts, cue.start + len(cue.words))
        return self._of(first, last, cue.place)

    def at(self, place: Place) -> tuple[Mark, ...]:
        """Marks of all claims of a position."""
        return self._of(0, len(self._found), place)

    def _of(self, first: int, last: int, place: Place) -> tuple[Mark, ...]:
        marks = (m for key, some in self._found[first:last] if key == place.key for m in some)
        return tuple(dict.fromkeys(marks))
