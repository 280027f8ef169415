"""The signature of the search is a sum of nodes that is the same at every run."""

from __future__ import annotations

import pytest

from lineproof.engine import Board, Stop, search
from lineproof.engine.speed import HASH_MB, POSITIONS, runs

SHORT = tuple((fen, 6) for fen, _ in POSITIONS)


def test_every_position_is_searched_to_its_depth(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("lineproof.engine.speed.POSITIONS", SHORT)
    found = list(runs())
    assert [(run.fen, run.depth) for run in found] == list(SHORT)
    alone = [search(fen, depth=depth, hash_mb=HASH_MB).nodes for fen, depth in SHORT]
    assert [run.nodes for run in found] == alone


def test_two_runs_have_the_same_nodes(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("lineproof.engine.speed.POSITIONS", SHORT)
    assert [run.nodes for run in runs()] == [run.nodes for run in runs()]


def test_the_positions_are_legal_and_none_is_over() -> None:
    for fen, depth in POSITIONS:
        assert Board(fen).legal_moves()
        assert depth >= 10


def test_a_stop_ends_the_runs() -> None:
    stop = Stop()
    stop.set()
    assert list(runs(stop)) == []
