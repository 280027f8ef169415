"""The traps, settled at normal effort, and what came of them.

`python -m tests.traps.counts` prints how many claims hold and fail as they must, how many are unsettled, and each that is not
as it must be.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from lineproof.claims import Outcome, read_lesson
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, Finding, settle

TRAPS: list[dict[str, Any]] = json.loads(
    Path(__file__).with_name("traps.json").read_text(encoding="utf-8")
)


@dataclass(frozen=True)
class Case:
    """One claim of a trap, true or a false twin. number: of its pair, from 1."""

    trap: dict[str, Any]
    number: int
    claim: dict[str, str]
    true: bool

    @property
    def name(self) -> str:
        return f"{self.trap['name']}, {self.number}, {'true' if self.true else 'false'}"

    @property
    def expected(self) -> Outcome:
        return Outcome.HOLDS if self.true else Outcome.FAILS

    def settled(self, store: EvidenceStore) -> Finding:
        """Its finding at normal effort. The sentence must be read as the one claim that it is."""
        lesson = Lesson.from_text(self.claim["pgn"], side=self.trap["taught"])
        (claim,) = read_lesson(lesson).claims
        assert self.claim["words"].startswith(claim.words)
        assert claim.kind == self.claim["kind"].replace("loses-", "wins-")
        return settle(claim, Effort.NORMAL, store)


def cases() -> Iterator[Case]:
    """Every claim, each true one before its twin."""
    for trap in TRAPS:
        for number, pair in enumerate(trap["pairs"], 1):
            yield Case(trap, number, pair["true"], True)
            yield Case(trap, number, pair["false"], False)


def main() -> int:
    """Prints the counts. Exit status 1: a wrong finding, or more than a tenth unsettled."""
    store, counts = EvidenceStore(None), Counter[tuple[bool, Outcome]]()
    for case in cases():
        finding = case.settled(store)
        counts[case.true, finding.outcome] += 1
        if finding.outcome is not case.expected:
            print(f"  {case.name}: “{case.claim['words']}” {finding.outcome}: {finding.because}")
    for true, word in ((True, "true"), (False, "false")):
        said = ", ".join(f"{counts[true, o]} {o}" for o in Outcome)
        print(f"{sum(counts[true, o] for o in Outcome)} {word} claims: {said}")
    wrong = counts[True, Outcome.FAILS] + counts[False, Outcome.HOLDS]
    open_ = counts[True, Outcome.UNSETTLED] + counts[False, Outcome.UNSETTLED]
    total = counts.total()
    print(
        f"{len(TRAPS)} traps, {total} claims: {wrong} wrong, {open_} unsettled ({open_ / total:.1%})"
    )
    return 1 if wrong or open_ > total / 10 else 0


if __name__ == "__main__":
    raise SystemExit(main())
