"""Proving a lesson: the same findings every time, only what an edit touched searched again, nothing lost by a stop."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from lineproof.claims import Outcome
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, Proof, prove
from lineproof.proof.asker import Asker

TEXT = """[Event "Test"]

1. e4 {White is winning.} e5 2. Nc3 Nf6 3. f4 {The position is about level.} d5 {The knight on f6 is pinned.}
(3... exf4 4. e5 Qe7 5. Qe2 Ng8 {Black is slightly worse. White is a pawn down.}) 4. fxe5 Nxe4 {Material is level.} *
"""


def summary(proof: Proof) -> list[tuple[str, str, str, str]]:
    return [(f.claim.words, str(f.outcome), f.because, f.evidence()) for f in proof.findings]


@pytest.fixture
def file(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("LINEPROOF_DATA", str(tmp_path / "data"))
    path = tmp_path / "lesson.pgn"
    path.write_text(TEXT)
    return path


def test_the_same_findings_on_one_thread_and_on_three() -> None:
    lesson = Lesson.from_text(TEXT, side="white")
    one = prove(lesson, Effort.SKETCH, workers=1, store=EvidenceStore(None))
    three = prove(lesson, Effort.SKETCH, workers=3, store=EvidenceStore(None))
    assert summary(one) == summary(three)
    assert [f.nodes for f in one.findings] == [f.nodes for f in three.findings]


def test_findings_come_in_the_order_of_the_text() -> None:
    proof = prove(Lesson.from_text(TEXT, side="white"), Effort.SKETCH, store=EvidenceStore(None))
    starts = [f.claim.start for f in proof.findings]
    assert starts == sorted(starts)
    assert all(
        proof.lesson.text[f.claim.start : f.claim.end] == f.claim.words for f in proof.findings
    )


def test_a_second_run_searches_nothing(file: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first = prove(Lesson.open(file, side="white"), Effort.SKETCH)

    def forbidden(*_: object, **__: object) -> object:
        pytest.fail("searched again")

    monkeypatch.setattr("lineproof.proof.asker.search", forbidden)
    second = prove(Lesson.open(file, side="white"), Effort.SKETCH)
    assert summary(first) == summary(second)
    assert second.changes == ()


def test_after_an_edit_only_what_it_touched_is_searched(
    file: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    prove(Lesson.open(file, side="white"), Effort.SKETCH)
    file.write_text(
        TEXT.replace("White is winning.", "Black is winning.").replace(
            "Material is level.", "Black is winning."
        )
    )
    searched: list[object] = []
    real = Asker._search

    def counting(
        self: Asker, question: str, spot: object, nodes: int, root_moves: object
    ) -> object:
        searched.append(spot)
        return real(self, question, spot, nodes, root_moves)  # type: ignore[arg-type]

    computed: list[object] = []
    from lineproof.engine import search

    def spy(*args: object, **kwargs: object) -> object:
        computed.append(args)
        return search(*args, **kwargs)  # type: ignore[arg-type]

    monkeypatch.setattr(Asker, "_search", counting)
    monkeypatch.setattr("lineproof.proof.asker.search", spy)
    proof = prove(Lesson.open(file, side="white"), Effort.SKETCH)
    assert (
        len(computed) == 1
    )  # after 4... Nxe4 a verdict is new; after 1. e4 the position was searched before
    assert {(c.words, c.before, c.after) for c in proof.changes} == {
        ("White is winning", "fails", ""),
        ("Black is winning", "", "fails"),
        ("Material is level", "holds", ""),
    }


def test_what_changed_names_the_effort_as_the_reason(file: Path) -> None:
    file.write_text("1. e4 {White is slightly better.} *")  # 55 points, then 52
    prove(Lesson.open(file), Effort.SKETCH)
    proof = prove(Lesson.open(file), Effort.NORMAL)
    assert len(proof.changes) == 1
    assert "effort" in proof.changes[0].why


def test_transposed_roads_share_their_searches() -> None:
    """After the pawn move 4. d3 nothing before it can be repeated, so both roads are one position to search."""
    text = "1. e4 e5 2. Nf3 (2. Nc3 Nc6 3. Nf3 Nf6 4. d3 {White is winning.}) Nc6 3. Nc3 Nf6 4. d3 {White is winning.} *"
    asked: list[str] = []
    store = EvidenceStore(None)
    real = store.answer

    def spy(key: str, compute: object, valid: object) -> object:
        value, new = real(key, compute, valid)  # type: ignore[arg-type]
        if new:
            asked.append(key)
        return value, new

    store.answer = spy  # type: ignore[method-assign,assignment]
    proof = prove(Lesson.from_text(text, side="white"), Effort.SKETCH, store=store)
    assert [f.outcome for f in proof.findings] == [Outcome.FAILS] * 2
    assert len(asked) == 1


@pytest.mark.skipif(not hasattr(os, "fork"), reason="kill -9 is a matter of POSIX systems")
def test_a_killed_run_goes_on_from_where_it_was(
    file: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    program = (
        "from lineproof.lesson import Lesson; from lineproof.proof import prove, Effort\n"
        f"prove(Lesson.open({str(file)!r}, side='white'), Effort.NORMAL, workers=1)\n"
    )
    database = next(iter((tmp_path / "data").glob("**/evidence.sqlite")), None)
    assert database is None
    child = subprocess.Popen([sys.executable, "-c", program])
    kept = 0
    deadline = time.monotonic() + 60
    while kept == 0 and time.monotonic() < deadline and child.poll() is None:
        time.sleep(0.05)
        for found in (tmp_path / "data").glob("**/evidence.sqlite"):
            store = EvidenceStore(found)
            kept = store._connection.execute("SELECT COUNT(*) FROM answers").fetchone()[0]
            store.close()
    child.send_signal(signal.SIGKILL)
    child.wait()
    assert kept >= 1
    resumed, proof = _searches(file, monkeypatch, None)
    fresh, whole = _searches(file, monkeypatch, EvidenceStore(None))
    assert summary(proof) == summary(whole)
    assert 0 < resumed <= fresh - kept


def _searches(
    file: Path, monkeypatch: pytest.MonkeyPatch, store: EvidenceStore | None
) -> tuple[int, Proof]:
    """How many searches a run makes, and its proof."""
    from lineproof.engine import search

    computed: list[object] = []

    def spy(*args: object, **kwargs: object) -> object:
        computed.append(args)
        return search(*args, **kwargs)  # type: ignore[arg-type]

    with monkeypatch.context() as patch:
        patch.setattr("lineproof.proof.asker.search", spy)
        proof = prove(Lesson.open(file, side="white"), Effort.NORMAL, store=store)
    return len(computed), proof


def test_another_engine_searches_anew(monkeypatch: pytest.MonkeyPatch) -> None:
    lesson = Lesson.from_text("1. e4 e5 {White is winning.} *")
    store = EvidenceStore(None)
    prove(lesson, Effort.SKETCH, store=store)
    before = store._connection.execute("SELECT COUNT(*) FROM answers").fetchone()[0]
    monkeypatch.setattr("lineproof.proof.asker.ENGINE_VERSION", "another")
    prove(lesson, Effort.SKETCH, store=store)
    assert store._connection.execute("SELECT COUNT(*) FROM answers").fetchone()[0] == 2 * before
