"""The evidence store: kept through kills, damage and full disks."""

from __future__ import annotations

import os
import signal
import sqlite3
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from lineproof.proof import EvidenceStore


def test_an_answer_is_kept_and_not_computed_again(tmp_path: Path) -> None:
    store = EvidenceStore(tmp_path / "cache" / "evidence.sqlite")
    assert store.answer("q", lambda: {"a": 1}) == ({"a": 1}, True)
    store.close()
    again = EvidenceStore(tmp_path / "cache" / "evidence.sqlite")
    assert again.answer("q", lambda: pytest.fail("computed again")) == ({"a": 1}, False)


def test_a_stopped_search_is_not_kept(tmp_path: Path) -> None:
    store = EvidenceStore(tmp_path / "e.sqlite")
    assert store.answer("q", lambda: None) == (None, True)
    assert store.get("q") is None


def test_two_threads_that_ask_the_same_compute_it_once(tmp_path: Path) -> None:
    store = EvidenceStore(tmp_path / "e.sqlite")
    computed: list[int] = []

    def slow() -> int:
        computed.append(1)
        time.sleep(0.1)
        return 7

    threads = [threading.Thread(target=lambda: store.answer("q", slow)) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(computed) == 1


def test_a_damaged_store_is_set_aside(tmp_path: Path) -> None:
    path = tmp_path / "e.sqlite"
    path.write_bytes(b"this is no database at all" * 100)
    store = EvidenceStore(path)
    store.put("q", 1)
    assert store.kept
    assert store.get("q") == 1
    assert path.with_suffix(".damaged").exists()


def test_a_store_of_another_format_is_set_aside(tmp_path: Path) -> None:
    path = tmp_path / "e.sqlite"
    connection = sqlite3.connect(path)
    connection.execute("PRAGMA user_version=99")
    connection.close()
    store = EvidenceStore(path)
    store.put("q", 1)
    assert store.get("q") == 1
    assert store.kept


def test_where_nothing_can_be_written_answers_are_kept_in_memory(tmp_path: Path) -> None:
    blocker = tmp_path / "file"
    blocker.write_text("in the way")
    store = EvidenceStore(blocker / "cache" / "e.sqlite")
    assert not store.kept
    store.put("q", 1)
    assert store.get("q") == 1


@pytest.mark.skipif(not hasattr(os, "fork"), reason="kill -9 is a matter of POSIX systems")
def test_kill_9_leaves_every_committed_answer(tmp_path: Path) -> None:
    path = tmp_path / "e.sqlite"
    program = (
        "from pathlib import Path; from lineproof.proof import EvidenceStore\n"
        f"store = EvidenceStore(Path({str(path)!r}))\n"
        "for n in range(10**6):\n    store.put(str(n), n); print(n, flush=True)\n"
    )
    for _ in range(5):
        child = subprocess.Popen([sys.executable, "-c", program], stdout=subprocess.PIPE, text=True)
        assert child.stdout is not None
        last = -1
        for line in child.stdout:
            last = int(line)
            if last >= 50:
                break
        child.send_signal(signal.SIGKILL)
        child.wait()
        store = EvidenceStore(path)
        assert store.kept
        assert all(store.get(str(n)) == n for n in range(last + 1))
        store.close()


def test_damage_in_the_middle_is_set_aside_and_built_anew(tmp_path: Path) -> None:
    path = tmp_path / "e.sqlite"
    store = EvidenceStore(path)
    for number in range(2000):
        store.put(str(number), {"nodes": number, "line": None})
    store.close()
    with path.open("r+b") as file:
        file.seek(4096)
        file.write(os.urandom(8192))
    again = EvidenceStore(path)
    for number in range(2000):
        again.get(str(number))
    again.put("new", 1)
    assert again.get("new") == 1
    assert again.kept
    assert path.with_suffix(".damaged").exists()


@pytest.mark.parametrize("value", ["{bad", "[]", "{}", "null", '"text"'])
def test_a_kept_value_that_is_no_answer_is_computed_again(tmp_path: Path, value: str) -> None:
    path = tmp_path / "e.sqlite"
    store = EvidenceStore(path)
    store._connection.execute("INSERT INTO answers VALUES ('q', ?)", (value,))
    valid = lambda v: isinstance(v, dict) and "nodes" in v  # noqa: E731
    assert store.answer("q", lambda: {"nodes": 1}, valid) == ({"nodes": 1}, True)


def test_a_store_that_another_holds_is_waited_for_once(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("lineproof.proof.store.WAIT", 0.2)
    path = tmp_path / "e.sqlite"
    store = EvidenceStore(path)
    other = sqlite3.connect(path, isolation_level=None)
    other.execute("BEGIN IMMEDIATE")
    began = time.monotonic()
    for number in range(50):
        store.put(str(number), number)
    assert time.monotonic() - began < 5
    assert not store.kept
