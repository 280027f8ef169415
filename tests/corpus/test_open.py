"""The open corpus: 160 sentences with readings and truth made by hand, by a writer who had not seen the grammar.

It was used to develop the grammar, so what it measures is no more than that nothing got worse; the sealed corpus
measures. Truth by `common practice` and by hand; see README.md.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from lineproof.claims import Claim, Outcome, read_lesson
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, settle

from .corpora import load, measure

OPEN = [
    json.loads(line)
    for line in Path(__file__).with_name("open.jsonl").read_text(encoding="utf-8").splitlines()
]
MARKED = {w["kind"] for item in OPEN for w in item["claims"]}
"""The kinds that the corpus marks: claims of any other kind in a sentence are not judged here."""
SEARCHED = {"verdict", "only-move", "move-mark", "wins-material", "mate-in", "mate-threat"}


def matched(item: dict[str, Any]) -> Iterator[tuple[Claim, dict[str, Any] | None]]:
    """Each claim read from a sentence, with the hand-made one that it is, if any."""
    wanted = list(item["claims"])
    for claim in read_lesson(Lesson.from_text(item["pgn"], side=item["taught"])).claims:
        same = next((w for w in wanted if _is(claim, w)), None)
        if same is not None:
            wanted.remove(same)
        yield claim, same


def _is(claim: Claim, wanted: dict[str, Any]) -> bool:
    sides = claim.side is None or wanted["side"] in (None, claim.side)
    return wanted["kind"] == claim.kind and sides and wanted["negated"] == claim.negated


def test_no_sentence_is_read_wrongly() -> None:
    wrong = [
        (item["id"], claim.kind, claim.side, claim.words)
        for item in OPEN
        for claim, same in matched(item)
        if same is None and claim.kind in MARKED
    ]
    assert wrong == []


def test_three_claims_in_five_are_read() -> None:
    """What was reached so far; the rest is listed as not understood, never guessed at."""
    read = sum(same is not None for item in OPEN for _, same in matched(item))
    assert read / sum(len(item["claims"]) for item in OPEN) >= 0.6


def test_of_the_four_developed_corpora_most_is_read_and_little_wrongly() -> None:
    found = measure(item for name in ("open", "second", "third", "fourth") for item in load(name))
    assert found.recall >= 0.85
    assert found.true_precision >= 0.98


@pytest.fixture(scope="module")
def store() -> EvidenceStore:
    return EvidenceStore(None)


DISPUTED = {32: "Taking back with the knight isn't the best move"}
"""What the search says otherwise than the writer. 32, Two Knights Defence: 5... Nxd5 costs nothing at normal effort and 4 points against 5... Na5 at a thorough one, with the
network; the writer calls it no best move, as the handbooks do (from memory), and the hand-made evaluation agreed."""


@pytest.mark.parametrize("exact", [True, False], ids=["board facts", "search facts"])
def test_no_finding_says_the_opposite_of_what_is_true(exact: bool, store: EvidenceStore) -> None:
    opposite, unsettled, right = {}, 0, 0
    for item in OPEN:
        for claim, same in matched(item):
            if same is None or same["true"] is None or (claim.kind in SEARCHED) == exact:
                continue
            # a stale sentence is found as a claim that fails
            expected = Outcome.HOLDS if same["true"] and claim.kind != "stale" else Outcome.FAILS
            outcome = settle(claim, Effort.NORMAL, store).outcome
            if outcome is Outcome.UNSETTLED:
                unsettled += 1
            elif outcome is expected:
                right += 1
            else:
                opposite[item["id"]] = claim.words
    assert right >= 30
    assert opposite == ({} if exact else DISPUTED)
    assert unsettled <= (0 if exact else 3)
