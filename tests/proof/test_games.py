"""Proof asks a collection how often moves are played: on games whose counts are known."""

from __future__ import annotations

from pathlib import Path

import pytest
from statsmodels.stats.proportion import proportion_confint

from lineproof.claims import Outcome
from lineproof.collection import Collection, NoSuchCollectionError
from lineproof.facade import Lesson
from lineproof.proof import EvidenceStore, Proof

SAYS = "1. e4 {%s} *"


def games(reply: str, count: int, rating: int, first: int = 0) -> str:
    return "".join(
        f'[Round "{number}"]\n[WhiteElo "{rating}"]\n[BlackElo "{rating}"]\n\n1. e4 {reply} 1-0\n\n'
        for number in range(first, first + count)
    )


@pytest.fixture
def club(tmp_path: Path) -> Collection:
    """At 1500, 180 of 200 reply 1... e5 and 20 reply 1... c5; at 2400, all 300 reply 1... c5."""
    file = tmp_path / "club.pgn"
    file.write_text(games("e5", 180, 1500) + games("c5", 20, 1500) + games("c5", 300, 2400))
    collection = Collection.open("club", tmp_path / "collections")
    collection.add([file], source="club")
    return collection


def prove(
    words: str, collection: Collection | None, audience: int | None = None, **more: object
) -> Proof:
    lesson = Lesson.from_text(SAYS % words, side="white", audience=audience)
    return lesson.prove("sketch", collection=collection, **more)  # type: ignore[arg-type]


def outcome(words: str, collection: Collection, audience: int | None = None) -> Outcome:
    (finding,) = prove(words, collection, audience).findings
    assert (finding.nodes, finding.steps) == (0, 1)
    return finding.outcome


@pytest.mark.parametrize(
    ("words", "all_games", "at_1500"),
    [
        # of all 500 games 36 of 100 (32 to 40), of those at 1500 90 of 100 (85 to 93)
        ("e5 is often played.", Outcome.HOLDS, Outcome.HOLDS),
        ("e5 is usually played.", Outcome.FAILS, Outcome.HOLDS),
        ("e5 is the main move.", Outcome.FAILS, Outcome.HOLDS),
        ("e5 is always played.", Outcome.FAILS, Outcome.UNSETTLED),
        ("c5 is rarely played.", Outcome.FAILS, Outcome.FAILS),
        ("d5 is rarely played.", Outcome.HOLDS, Outcome.HOLDS),
        ("c5 is often played in master games.", Outcome.HOLDS, Outcome.HOLDS),
    ],
)
def test_the_audience_narrows_the_games_where_the_lesson_says_it(
    club: Collection, words: str, all_games: Outcome, at_1500: Outcome
) -> None:
    assert (outcome(words, club), outcome(words, club, 1500)) == (all_games, at_1500)


def test_it_names_collection_counts_and_interval(club: Collection) -> None:
    (finding,) = prove("e5 is usually played.", club, 1500).findings
    assert finding.because == (
        "1... e5 was played in 180 of 200 games between players rated 1300 to 1699 of the collection club,"
        " 90.0 of 100 (95 % interval 85.1 to 93.4). “Usually” means 50 of 100 or more."
    )
    low, high = proportion_confint(180, 200, method="wilson")
    assert finding.judgement.numbers == {
        "collection": "club",
        "games": 200,
        "played": 180,
        "low": pytest.approx(100 * low, abs=0.001),
        "high": pytest.approx(100 * high, abs=0.001),
    }


def test_no_collection_no_game_and_too_deep_a_position_are_unsettled_each_with_its_reason(
    club: Collection,
) -> None:
    (finding,) = prove("e5 is often played.", None).findings
    assert (finding.outcome, finding.why_unsettled) == (
        Outcome.UNSETTLED,
        "there is no collection of games",
    )
    assert "no collection" in finding.because
    (finding,) = prove("e5 is often played.", club, 700).findings
    assert (finding.outcome, finding.why_unsettled) == (Outcome.UNSETTLED, "the games are too few")
    assert "In no game between players rated 500 to 899" in finding.because
    there_and_back = " ".join(
        f"{n}. Nf3 Nf6 {n + 1}. Ng1 Ng8" for n in range(1, 21, 2)
    )  # the same position as the first one, which all games have
    deep = f"{there_and_back} 21. e4 {{e5 is often played.}} *"
    (finding,) = Lesson.from_text(deep, side="white").prove("sketch", collection=club).findings
    assert finding.outcome is Outcome.HOLDS
    (finding,) = (
        Lesson.from_text(deep.replace("21. e4", "21. a3"), side="white")
        .prove("sketch", collection=club)
        .findings
    )
    assert finding.outcome is Outcome.UNSETTLED
    assert "first 20 moves" in finding.because


def test_nothing_counted_is_kept_when_the_collection_changes(
    club: Collection, tmp_path: Path
) -> None:
    store = EvidenceStore(None)

    def run(collection: Collection | None) -> Proof:
        return prove("e5 is usually played.", collection, 1500, store=store)

    assert run(club).findings[0].outcome is Outcome.HOLDS
    assert run(club).changes == ()
    more = tmp_path / "more.pgn"
    more.write_text(games("c5", 400, 1500, first=1000))
    club.add([more])
    changed = run(club)
    assert changed.findings[0].outcome is Outcome.FAILS
    assert [change.why for change in changed.changes] == ["other games were counted"]
    gone = run(None)
    assert gone.findings[0].outcome is Outcome.UNSETTLED
    assert [change.why for change in gone.changes] == ["no collection of games was asked"]
    assert [change.why for change in run(club).changes] == ["a collection of games was asked"]


def test_a_collection_that_is_not_there_is_an_error(tmp_path: Path) -> None:
    missing = Collection.open("nowhere", tmp_path)
    with pytest.raises(NoSuchCollectionError):
        prove("e5 is often played.", missing)


def test_many_threads_ask_one_collection(club: Collection) -> None:
    words = "e5 is often played. c5 is rarely played. e5 is the main move. d5 is rarely played."
    proofs = [prove(words, club, 1500, workers=workers) for workers in (1, 8)]
    assert len(proofs[0].findings) == 4
    assert [f.judgement for f in proofs[0].findings] == [f.judgement for f in proofs[1].findings]
