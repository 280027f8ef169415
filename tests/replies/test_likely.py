"""Likely replies: counted games and the model in one."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from statsmodels.stats.proportion import proportion_confint

from lineproof.claims import Spot
from lineproof.collection import Collection
from lineproof.engine import Board
from lineproof.proof import EvidenceStore
from lineproof.replies import Replies
from lineproof.replies.likely import blended

START = Board()
EVEN = dict.fromkeys(START.legal_moves(), 1 / 20)


@given(st.dictionaries(st.sampled_from(sorted(EVEN)), st.integers(0, 10**6)), st.floats(0.5, 200))
def test_shares_sum_to_a_hundred(counted: dict[str, int], alpha: float) -> None:
    found = blended(START, EVEN, counted, alpha, 1500)
    assert sum(reply.share for reply in found.replies) == pytest.approx(100)
    assert found.games == sum(counted.values())
    assert [r.share for r in found.replies] == sorted(
        (r.share for r in found.replies), reverse=True
    )


def test_more_games_move_the_shares_toward_the_counts() -> None:
    away = []
    for times in (0, 1, 10, 100, 10_000):
        found = blended(START, EVEN, {"e2e4": 3 * times, "d2d4": times}, 20, 1500)
        away.append(abs(found.reply("e2e4").share - 75))
    assert away == sorted(away, reverse=True)
    assert away[0] == pytest.approx(70) and away[-1] < 0.1


def test_the_interval_is_that_of_wilson_for_all_games_together() -> None:
    """statsmodels as reference; 40 games and 20 of the model's."""
    found = blended(START, EVEN, {"e2e4": 25, "d2d4": 15}, 20, 1500).reply("e2e4")
    low, high = proportion_confint(26, 60, method="wilson")
    assert (found.interval.low, found.interval.high) == pytest.approx(
        (100 * low, 100 * high), abs=0.001
    )
    assert found.share == pytest.approx(100 * 26 / 60)


def test_a_move_that_is_not_legal_there_has_no_share() -> None:
    with pytest.raises(KeyError):
        blended(START, EVEN, {}, 20, 1500).reply("e2e5")


GAMES = "".join(
    f'[White "A"]\n[Black "B"]\n[WhiteElo "{rating}"]\n[BlackElo "{rating}"]\n[Round "{number}"]\n[Result "*"]\n\n1. {move} *\n\n'
    for number, (move, rating) in enumerate([("b4", 1500)] * 300 + [("h4", 2500)] * 500)
)


def test_games_near_the_rating_are_counted_and_no_others(tmp_path: Path) -> None:
    file = tmp_path / "games.pgn"
    file.write_text(GAMES)
    with Collection.open("club", tmp_path / "all") as games:
        games.add([file])
        replies = Replies(1500, EvidenceStore(None), collection=games)
        found = replies.at(Spot(START.fen, (), START))
    first = found.replies[0]
    assert (first.san, first.games, first.of, found.games) == ("b4", 300, 300, 300)
    assert first.share > 90 > first.natural
    assert found.reply("h2h4").games == 0


def test_without_games_the_model_alone_speaks() -> None:
    found = Replies(1500, EvidenceStore(None)).at(Spot(START.fen, (), START))
    assert all(reply.games == reply.of == 0 for reply in found.replies)
    assert all(reply.share == pytest.approx(reply.natural) for reply in found.replies)
