"""The corpora of sentences, and how far the grammar reads them as their writers did.

`python -m tests.corpus.corpora [second third ...]` prints what was read, what was not, and by kind.
"""

from __future__ import annotations

import hashlib
import json
import lzma
import sys
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from lineproof.claims import Claim, all_kinds, read_lesson
from lineproof.lesson import Lesson

HERE = Path(__file__).parent
Item = dict[str, Any]

OURS = {
    "best-move": "move-mark",
    "good-move": "move-mark",
    "dubious-move": "move-mark",
    "mistake": "move-mark",
    "loses-material": "wins-material",
}
"""Kinds of the corpora that are one kind here."""


def load(name: str) -> list[Item]:
    """The sentences of a corpus, by its name, each with its `corpus`."""
    text = sealed() if name == "sealed" else (HERE / f"{name}.jsonl").read_text(encoding="utf-8")
    return [_item({"corpus": name, **json.loads(line)}) for line in text.splitlines()]


def sealed() -> str:
    """The corpus that was sealed before the grammar existed (sealed.jsonl), as it was then.

    :raises ValueError: when it was changed since.
    """
    data = lzma.decompress((HERE / "sealed.jsonl.xz").read_bytes())
    written, *_ = (HERE / "sealed.sha256").read_text(encoding="utf-8").split()
    if hashlib.sha256(data).hexdigest() != written:
        raise ValueError("the sealed corpus is not the one that was sealed")
    return data.decode("utf-8")


def _item(item: Item) -> Item:
    """The sealed corpus has its moves apart: put together, the sentence stands after the move that it speaks of."""
    if "pgn" not in item:
        item["pgn"] = f"{item['moves']} {{{item['sentence']}}} {item['next']} *"
    return item


@cache
def judged() -> dict[tuple[str, int, str, str], str]:
    """What a second reader says of readings that nobody had marked: "said", "wrong" or "doubtful", by corpus, id, kind and words."""
    text = (HERE / "judged.jsonl").read_text(encoding="utf-8")
    return {
        (one["corpus"], one["id"], one["kind"], one["words"]): one["judged"]
        for one in map(json.loads, text.splitlines())
    }


@dataclass
class Measure:
    """What was found in a corpus: claims read as marked, claims read that nobody marked, claims not read."""

    right: list[tuple[Item, Item, Claim]] = field(default_factory=list)
    unmarked: list[tuple[Item, Claim]] = field(default_factory=list)
    missed: list[tuple[Item, Item, str]] = field(default_factory=list)

    @property
    def precision(self) -> float:
        read = len(self.right) + len(self.unmarked)
        return len(self.right) / read if read else 1.0

    @property
    def said(self) -> list[tuple[Item, Claim]]:
        """Claims that nobody marked and that the sentence does make, as a second reader says."""
        return [
            (item, claim)
            for item, claim in self.unmarked
            if judged().get((item["corpus"], item["id"], claim.kind, claim.words)) == "said"
        ]

    @property
    def true_precision(self) -> float:
        """As `precision`, with the claims that a second reader found to be said; what he did not see or doubts counts as wrong."""
        read = len(self.right) + len(self.unmarked)
        return (len(self.right) + len(self.said)) / read if read else 1.0

    @property
    def recall(self) -> float:
        wanted = len(self.right) + len(self.missed)
        return len(self.right) / wanted if wanted else 1.0


def same(claim: Claim, wanted: Item, item: Item) -> bool:
    """Whether a claim is the one that is marked: kind, side, denial, and words that overlap."""
    kind = OURS.get(wanted["kind"], wanted["kind"])
    side = wanted["side"]
    if wanted["kind"] == "loses-material" and side is not None:
        side = "black" if side == "white" else "white"
    sides = claim.side is None or side is None or side == claim.side
    start = item["pgn"].index(item["sentence"]) + item["sentence"].index(wanted["words"])
    meets = claim.start < start + len(wanted["words"]) and start < claim.end
    return kind == claim.kind and sides and wanted["negated"] == claim.negated and meets


def measure(items: Iterable[Item], kinds: frozenset[str] | None = None) -> Measure:
    """Reads every sentence. kinds: judge claims of these alone; without, of every kind that there is."""
    known = kinds or frozenset(kind.id for kind in all_kinds())
    found = Measure()
    for item in items:
        wanted = list(item["claims"])
        reading = read_lesson(Lesson.from_text(item["pgn"], side=item["taught"]))
        for claim in reading.claims:
            mark = next((w for w in wanted if same(claim, w, item)), None)
            if mark is not None:
                wanted.remove(mark)
                found.right.append((item, mark, claim))
            elif claim.kind in known:
                found.unmarked.append((item, claim))
        why = "; ".join(r.why for r in reading.sentences)
        found.missed.extend((item, mark, why) for mark in wanted)
    return found


def lines(name: str, found: Measure) -> Iterator[str]:
    read, wanted = len(found.right) + len(found.unmarked), len(found.right) + len(found.missed)
    yield f"{name}: read {read}, of them as marked {len(found.right)} ({found.precision:.1%}), as marked or truly said {found.true_precision:.1%}; marked {wanted}, read {found.recall:.1%}"
    for item, claim in found.unmarked:
        judgement = judged().get(
            (item["corpus"], item["id"], claim.kind, claim.words), "not judged"
        )
        yield f"  unmarked ({judgement}) {item['id']} {claim.kind} {claim.side} {'not ' if claim.negated else ''}| {claim.words} | {item['sentence']}"
    for item, mark, why in found.missed:
        yield f"  missed {item['id']} {mark['kind']} {mark['side']} {'not ' if mark['negated'] else ''}| {mark['words']} | {item['sentence']} | {why}"
    right = Counter(mark["kind"] for _, mark, _ in found.right)
    missed = Counter(mark["kind"] for _, mark, _ in found.missed)
    for kind in sorted(right | missed):
        yield f"  {kind} {right[kind]} of {right[kind] + missed[kind]}"


if __name__ == "__main__":
    for name in sys.argv[1:] or ["open", "second", "third"]:
        print("\n".join(lines(name, measure(load(name)))))
