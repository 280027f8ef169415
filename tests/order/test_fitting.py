"""What is left out to fit into so many minutes."""

from __future__ import annotations

from collections.abc import Callable

import pytest

from lineproof.order import OrderError, running_order
from lineproof.order.cues import cues
from lineproof.order.fitting import Fitted, chances, fitted, seconds
from lineproof.order.order import steps_of, telling

from .lessons import lesson

FILLER = "We talk and talk about this line. " * 12
"""84 words: 33.6 seconds at 150 words a minute."""

LINES = f"""1. e4 {{A.}} e5 {{B.}} (1... c5 {{Likely. {FILLER}}} 2. Nf3 {{C.}}) (1... a6 {{Seldom. {FILLER}}})
(1... e6 {{Likelier. {FILLER}}} 2. d4 {{D.}} d5 {{E.}} (2... Bb4+ {{Hardly ever. {FILLER}}})) 2. Nc3 *"""

SHARES = {"e7e5": 0.4, "c7c5": 0.2, "a7a6": 0.01, "e7e6": 0.3, "f8b4": 0.02, "d7d5": 0.9}


def fit(
    text: str, limit: float, shares: dict[str, float] = SHARES, footnotes: tuple[int, ...] = ()
) -> Fitted:
    steps = steps_of(lesson(text))
    first = telling(steps)
    chance = chances(steps, lambda _, uci: shares.get(uci, 0.5), "white", frozenset())

    def retell(cut: frozenset[int]) -> tuple[object, object]:
        told = telling(steps.without(cut))
        return told, cues(told, 150)

    return fitted(first, cues(first, 150), limit, chance, retell, footnotes)  # type: ignore[arg-type]


def cut(found: Fitted) -> list[str]:
    return [found.telling.steps.label(one.step) for one in found.cuts]


def length(text: str) -> float:
    return seconds(cues(telling(steps_of(lesson(text))), 150))


def test_the_seldom_met_goes_first() -> None:
    # chances: 2...Bb4+ 0.3 x 0.02, 1...a6 0.01, 1...c5 0.2, 1...e6 0.3; each takes more than 40 seconds
    whole = length(LINES)
    assert cut(fit(LINES, whole + 1)) == []
    assert cut(fit(LINES, whole - 1)) == ["2... Bb4+"]
    assert cut(fit(LINES, whole - 60)) == ["2... Bb4+", "1... a6"]
    assert cut(fit(LINES, whole - 120)) == ["2... Bb4+", "1... a6", "1... c5"]


def test_a_line_cut_whole_takes_its_own_branches_with_it() -> None:
    found = fit(LINES, 10)
    assert cut(found) == ["1... a6", "1... c5", "1... e6"]
    assert found.fits and seconds(found.cues) <= 10


def test_a_footnote_goes_before_everything() -> None:
    steps = steps_of(lesson(LINES))
    (likely,) = [step.number for step in steps.all if step.place.label == "1... e6"]
    found = fit(LINES, length(LINES) - 1, footnotes=(likely,))
    assert cut(found) == ["1... e6"]


def test_what_was_cut_and_need_not_be_comes_back() -> None:
    """A short line that is seldom met does not go when a long one must go anyway."""
    text = f"1. e4 {{A.}} e5 {{B.}} (1... a6 {{Short.}}) (1... c5 {{{FILLER * 3}}}) 2. Nc3 *"
    assert cut(fit(text, length(text) - 60)) == ["1... c5"]


def test_the_punishment_of_a_mistake_that_is_shown_stays() -> None:
    text = f"""1. e4 {{A.}} e5 {{B.}} 2. Bc4 {{C.}} Nc6 {{D.}} 3. Qh5 {{E.}} Nf6 $4 {{F.}} 4. d3 {{Too kind.}}
    (4. Qxf7# $1 {{{FILLER}}}) 4... d6 {{G.}} (4... Bc5 {{{FILLER}}}) *"""
    found = fit(text, 20)
    assert cut(found) == ["4... Bc5"] and not found.fits
    assert any(cue.san == "Qxf7#" for cue in found.cues)


def test_a_mistake_may_go_with_its_punishment() -> None:
    text = f"1. f3 {{A.}} e5 {{B.}} (1... e6 {{C.}} 2. g4 $4 {{D.}} Qh4# $1 {{{FILLER}}}) 2. e4 *"
    found = fit(text, 20)
    assert cut(found) == ["1... e6"] and found.fits


def test_a_line_that_another_refers_to_stays_with_it() -> None:
    text = f"""1. e4 {{A.}} e5 {{B.}} (1... a6 {{Seldom. {FILLER}}} 2. d4 {{C.}}) (1... c5 {{As after 1...a6 2.d4, fine. {FILLER}}}) 2. Nc3 *"""
    assert cut(fit(text, length(text) - 1)) == ["1... c5"]
    assert set(cut(fit(text, 15))) == {"1... c5", "1... a6"}


def test_the_main_line_stays_whatever_it_takes() -> None:
    text = f"1. e4 {{{FILLER}}} e5 {{{FILLER}}} (1... c5 {{C.}}) 2. Nc3 {{{FILLER}}} *"
    found = fit(text, 30)
    assert not found.fits and cut(found) == ["1... c5"]
    assert [cue.san for cue in found.cues if cue.san] == ["e4", "e5", "Nc3"]


def test_chances_multiply_along_the_opponent_s_moves() -> None:
    steps = steps_of(lesson(LINES))
    chance: Callable[[int], float] = chances(
        steps, lambda _, uci: SHARES.get(uci, 0.5), "white", frozenset()
    )
    by_label = {step.place.label: chance(step.number) for step in steps.all}
    assert by_label["1. e4"] == 1 and by_label["1... e6"] == 0.3 == by_label["2. d4"]
    assert by_label["2... Bb4+"] == pytest.approx(0.006)


@pytest.mark.parametrize("minutes", [0, -1, 1001, float("nan")])
def test_minutes_out_of_range_are_refused(minutes: float) -> None:
    with pytest.raises(OrderError, match="give a number from 1 to 1000"):
        running_order(lesson(LINES), minutes=minutes)
