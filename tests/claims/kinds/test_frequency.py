"""Frequency: read, and judged by counts that stand on both sides of every limit."""

from __future__ import annotations

from dataclasses import dataclass

import pytest

from lineproof.claims import Outcome, Played, Spot, kind_of
from lineproof.claims.shares import RANGES
from lineproof.collection import wilson
from tests.claims.conftest import Judge, Scripted, claims_of
from tests.claims.kinds.sketching import kinds_of

ITALIAN = "1. e4 e5 2. Nf3 Nc6 3. Bc4 {%s} Nf6 4. d3 *"


@pytest.mark.parametrize(
    ("words", "side", "degree"),
    [
        ("Bc4 is often played.", "white", "often"),
        ("Bc4 is usually played.", "white", "usually"),
        ("Most people play Nf6 here.", "black", "usually"),
        ("Nearly all players choose Nf6.", "black", "nearly always"),
        ("Nf6 is the most common reply.", "black", "main"),
        ("Nf6 is the usual reply.", "black", "main"),
        ("Nf6 is a usual reply.", "black", "often"),
        ("Nf6 is a very popular reply.", "black", "often"),
        ("Nf6 is the most popular reply.", "black", "main"),
        ("Bc4 is rarely seen among club players.", "white", "rarely"),
        ("You will meet Nf6.", "black", "likely"),
        ("You will often meet Nf6.", "black", "often"),
        ("You will rarely meet Nf6.", "black", "rarely"),
        ("The most popular move is Nf6.", "black", "main"),
        ("This move is seldom seen.", "white", "rarely"),
        ("Few players choose Qh4.", "black", "rarely"),
        ("Nf6 is rare.", "black", "rarely"),
        ("Nf6 is hardly ever played.", "black", "hardly ever"),
        ("Nf6 is sometimes played.", "black", "sometimes"),
        ("Nf6 is played in most games.", "black", "usually"),
        ("Nf6 is chosen by most players.", "black", "usually"),
        ("The majority of club players choose Nf6.", "black", "usually"),
        ("Black often answers with Nf6.", "black", "often"),
        ("You can expect to meet Nf6.", "black", "likely"),
        ("Nf6 is all the rage.", "black", "often"),
    ],
)
def test_how_often_a_move_is_played_waits_for_a_collection(
    judge: Judge, words: str, side: str, degree: str
) -> None:
    finding = judge(ITALIAN % words)
    assert (finding.claim.kind, finding.claim.side) == ("frequency", side)
    assert finding.claim.params["degree"] == degree
    assert finding.outcome is Outcome.UNSETTLED
    assert "no collection" in finding.because


@pytest.mark.parametrize(
    ("words", "share"),
    [
        ("80 percent of players choose Nf6.", 80),
        ("Nf6 is played in half of the games.", 50),
        ("9 out of 10 players choose Nf6.", 90),
        ("Nf6 is seen in 80 % of the games.", 80),
        ("80% of the games continue with Nf6.", 80),
    ],
)
def test_a_share_is_kept(judge: Judge, words: str, share: int) -> None:
    params = judge(ITALIAN % words).claim.params
    assert (params["share"], params["degree"]) == (share, None)


@pytest.mark.parametrize(
    ("words", "scope"),
    [
        ("Nf6 is often played in master games.", "masters"),
        ("Most beginners play Nf6.", "beginners"),
        ("Nf6 is the most popular reply at master level.", "masters"),
        ("Nf6 is often played at our level.", None),
    ],
)
def test_whose_games_are_meant_is_kept(judge: Judge, words: str, scope: str | None) -> None:
    assert judge(ITALIAN % words).claim.params["scope"] == scope


@dataclass
class Counted(Scripted):
    """A collection in which the move was played so often, and the most played other one so often."""

    games: int = 0
    times: int = 0
    rival_times: int = 0
    beyond: bool = False
    asked_for: tuple[int, int] | None = None

    def played(self, spot: Spot, uci: str, ratings: tuple[int, int] | None = None) -> Played:
        self.asked_for = ratings
        share = wilson(self.times, self.games) if self.games else None
        both = self.times + self.rival_times
        ahead = wilson(self.times, both) if both else None
        return Played(
            "club",
            ratings or (1300, 1700),
            self.beyond,
            self.games,
            self.times,
            (share.low, share.high) if share else (0, 100),
            "f8c5" if self.rival_times else None,
            self.rival_times,
            (ahead.low, ahead.high) if ahead else (0, 100),
        )


def counted(words: str, games: int, times: int, rival: int = 0) -> tuple[Outcome, str, str | None]:
    (claim,) = claims_of(ITALIAN % words)
    found = kind_of("frequency").judge(
        claim, Counted({}, "", games=games, times=times, rival_times=rival)
    )
    assert found.too_few == (found.outcome is Outcome.UNSETTLED)
    return found.outcome, found.because, found.instead


HOLDS, FAILS, UNSETTLED = Outcome.HOLDS, Outcome.FAILS, Outcome.UNSETTLED


@pytest.mark.parametrize(
    ("words", "of_1000"),
    [
        # where it holds, cannot be told, and fails, of 1,000 games: Wilson's interval (1927) is 1.2 to 3.2 points wide to
        # either side of shares from 5 to 50 of 100
        ("Nf6 is always played.", {930: HOLDS, 900: UNSETTLED, 870: FAILS}),
        ("Nf6 is usually played.", {540: HOLDS, 500: UNSETTLED, 460: FAILS}),
        ("Nf6 is often played.", {230: HOLDS, 200: UNSETTLED, 170: FAILS}),
        ("You will meet Nf6.", {70: HOLDS, 50: UNSETTLED, 30: FAILS}),
        ("Nf6 is sometimes played.", {20: HOLDS, 460: HOLDS, 10: UNSETTLED, 500: UNSETTLED, 1: FAILS, 540: FAILS}),
        ("Nf6 is less often played.", {170: HOLDS, 200: UNSETTLED, 230: FAILS}),
        ("Nf6 is rarely played.", {30: HOLDS, 50: UNSETTLED, 70: FAILS, 0: HOLDS}),
        ("Nf6 is never played.", {2: HOLDS, 0: HOLDS, 10: UNSETTLED, 20: FAILS}),
        ("60 percent of players choose Nf6.", {600: HOLDS, 630: UNSETTLED, 570: UNSETTLED, 690: FAILS, 510: FAILS}),
        ("99 percent of players choose Nf6.", {1000: HOLDS, 900: FAILS}),
    ],
)  # fmt: skip
def test_the_whole_interval_must_stand_on_one_side_of_a_limit(
    words: str, of_1000: dict[int, Outcome]
) -> None:
    assert {times: counted(words, 1000, times)[0] for times in of_1000} == of_1000


def test_every_word_has_its_limits_tested() -> None:
    said = test_the_whole_interval_must_stand_on_one_side_of_a_limit.pytestmark[0].args[1]  # type: ignore[attr-defined]
    degrees = {claims_of(ITALIAN % words)[0].params["degree"] for words, _ in said}
    assert degrees == {*RANGES, None}


def test_few_games_are_too_few_and_more_with_the_same_share_are_not() -> None:
    assert counted("Nf6 is often played.", 10, 4)[0] is UNSETTLED
    assert counted("Nf6 is often played.", 100, 40)[0] is HOLDS
    assert counted("Nf6 is rarely played.", 20, 0)[0] is UNSETTLED


@pytest.mark.parametrize(
    ("times", "rival", "outcome"),
    [(300, 200, HOLDS), (260, 240, UNSETTLED), (240, 260, UNSETTLED), (200, 300, FAILS)],
)
def test_the_main_move_is_played_more_often_than_any_other(
    times: int, rival: int, outcome: Outcome
) -> None:
    assert counted("Nf6 is the main move.", 1000, times, rival)[0] is outcome


def test_a_hedge_widens_by_five() -> None:
    plain, hedged = "Nf6 is often played.", "I think Nf6 is often played."
    assert (counted(plain, 1000, 170)[0], counted(hedged, 1000, 180)[0]) == (FAILS, HOLDS)
    assert counted(hedged, 1000, 120)[0] is FAILS
    main = "I think Nf6 is the main move."
    assert counted(main, 1000, 250, 250)[0] is HOLDS


def test_a_denial_turns_it_round() -> None:
    assert counted("Nf6 is not played often.", 1000, 100)[0] is HOLDS
    assert counted("Nf6 is not played often.", 1000, 300)[0] is FAILS
    assert counted("Nf6 is not played often.", 1000, 200)[0] is UNSETTLED


def test_it_says_counts_interval_and_what_the_word_means() -> None:
    outcome, because, instead = counted("Nf6 is often played.", 1204, 60)
    assert outcome is FAILS
    assert because == (
        "3... Nf6 was played in 60 of 1,204 games between players rated 1300 to 1699 of the collection club,"
        " 5.0 of 100 (95 % interval 3.9 to 6.4). “Often” means 20 of 100 or more."
    )
    assert instead == "3... Nf6 is sometimes played here: in 60 of 1,204 games."
    because = counted("Nf6 is the main move.", 900, 240, 260)[1]
    assert because == (
        "3... Nf6 was played in 240 of 900 games between players rated 1300 to 1699 of the collection club,"
        " 26.7 of 100 (95 % interval 23.9 to 29.6). The most played other move, 3... Bc5, was played in 260;"
        " of these 500 games 3... Nf6 has 48.0 of 100 (43.7 to 52.4), and the main move has more than 50."
        " The interval reaches over a limit, so these games are too few to tell."
    )


def test_without_a_game_it_is_unsettled_and_says_why() -> None:
    outcome, because, _ = counted("Nf6 is often played.", 0, 0)
    assert outcome is UNSETTLED
    assert because == (
        "In no game between players rated 1300 to 1699 of the collection club was a move played in this position."
    )
    (claim,) = claims_of(ITALIAN % "Nf6 is often played.")
    deep = kind_of("frequency").judge(claim, Counted({}, "", beyond=True))
    assert deep.outcome is UNSETTLED
    assert "first 20 moves" in deep.because


def test_masters_and_beginners_are_asked_for_by_their_ratings() -> None:
    for words, ratings in (
        ("Nf6 is often played in master games.", (2200, 4000)),
        ("Most beginners play Nf6.", (50, 1200)),
        ("Nf6 is often played.", None),
    ):
        (claim,) = claims_of(ITALIAN % words)
        ask = Counted({}, "", games=100, times=60)
        kind_of("frequency").judge(claim, ask)
        assert ask.asked_for == ratings


@pytest.mark.parametrize(
    "words",
    [
        "White usually wins.",
        "Bc4 is never bad.",
        "I often lose here.",
        "120 percent of players choose Nf6.",
        "Most people play Nf3 badly.",
        "Nc6 was a mistake, and half of the beginners play it.",  # Nc6, not the move before the words
        "Most of the pawns choose Nf6.",
    ],
)
def test_other_habits_are_not_read(words: str) -> None:
    assert "frequency" not in kinds_of(ITALIAN % words)
