"""An outside engine on the desk: named when it is started, chosen on the page."""

from __future__ import annotations

import os
import signal
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from lineproof.desk.lessons import Lessons
from lineproof.engine.outside.pool import OutsideEngine
from lineproof.proof import Effort
from tests.outside.engines import Made, made

from .conftest import Desk
from .test_games import game, given
from .test_saving import Running
from .waiting import until

pytestmark = pytest.mark.skipif(os.name != "posix", reason="the programs are shell scripts")

LEGAL = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 {White is winning.} *\n"
"""Légal's mate: ours finds it; the boat counts the queen that White has lost."""


@pytest.fixture
def boat(tmp_path: Path) -> Made:
    return made(tmp_path)


@pytest.fixture
def lines() -> str:
    return LEGAL


@pytest.fixture
def desk(path: Path, boat: Made, lines: str) -> Iterator[Desk]:
    (path / "lines.pgn").write_text(lines, encoding="utf-8")
    with OutsideEngine(boat.path, processes=1) as engine:
        lessons = Lessons(Effort.SKETCH, engine)
        try:
            yield Desk(lessons, path)
        finally:
            lessons.close()


def outcome(desk: Desk, *, asked: bool) -> Any:
    """Of the one claim, once the engine that is wanted has answered."""

    def there() -> Any:
        found = desk.findings()
        return found if found["way"]["outside"]["asked"] is asked else None

    (finding,) = until(there)["findings"]
    return finding["outcome"]


def choose(desk: Desk, *, outside: bool) -> None:
    asked = {"effort": "sketch", "outside": outside}
    assert desk.client.post("/api/lessons/1/way", json=asked).status_code == 200


def test_it_answers_until_ours_is_chosen_and_again_when_it_is(desk: Desk, boat: Made) -> None:
    assert outcome(desk, asked=True) == "fails"
    assert desk.findings()["way"]["outside"]["name"].startswith("Paper Boat")
    asked = boat.asked()
    assert asked > 0
    choose(desk, outside=False)
    assert outcome(desk, asked=False) == "holds"
    assert boat.asked() == asked
    # Its answers are kept: what it has said it is not asked again.
    choose(desk, outside=True)
    assert outcome(desk, asked=True) == "fails"
    assert boat.asked() == asked


def test_one_that_fails_leaves_the_claim_unsettled_with_the_reason(
    path: Path, tmp_path: Path
) -> None:
    (path / "lines.pgn").write_text(LEGAL, encoding="utf-8")
    with OutsideEngine(made(tmp_path, "dies").path, processes=1) as engine:
        lessons = Lessons(Effort.SKETCH, engine)
        try:
            desk = Desk(lessons, path)
            (finding,) = desk.findings()["findings"]
            assert finding["outcome"] == "unsettled"
            assert "Paper Boat" in finding["why"]
            choose(desk, outside=False)
            assert outcome(desk, asked=False) == "holds"
        finally:
            lessons.close()


def test_without_one_there_is_none_to_choose(path: Path) -> None:
    lessons = Lessons(Effort.SKETCH)
    try:
        desk = Desk(lessons, path)
        assert desk.findings()["way"]["outside"] is None
        choose(desk, outside=True)
        assert desk.findings()["way"]["outside"] is None
    finally:
        lessons.close()


@pytest.mark.parametrize("number", [signal.SIGINT, signal.SIGTERM])
def test_no_process_of_it_is_left_when_the_desk_is_stopped(
    path: Path, boat: Made, number: int
) -> None:
    running = Running(path, "--engine", str(boat.path))
    until(boat.asked)
    running.words(0, "The last words.")
    running.end(number)
    assert boat.processes() and boat.alive() == []
    assert "The last words." in (path / "lines.pgn").read_text()


@pytest.mark.parametrize("lines", ["1. f3 e5 2. g4 {White is winning.} *"])
def test_it_answers_questions_and_what_is_looked_for_and_weighed(desk: Desk, boat: Made) -> None:
    assert desk.get("/api/lessons")["outside"] == desk.findings()["way"]["outside"]["name"]

    def asked(act: Callable[[], object]) -> int:
        before = boat.asked()
        act()
        return boat.asked() - before

    def ask() -> None:
        body = {"place": None, "question": "1. d4 d5 2. e4"}
        assert desk.client.post("/api/lessons/1/questions", json=body).status_code == 200

    def study() -> None:
        assert desk.client.post("/api/lessons/1/study").status_code == 200
        until(lambda: desk.get("/api/lessons/1/study")["state"] == "done")

    def follow() -> None:
        assert given(desk, game("1. f3 e5 2. d4 d6", "Ann Quay", "Ben Jetty", "1-0")).is_success
        until(lambda: desk.get("/api/lessons/1/games")["state"] == "done")

    def weigh(moves: str, *, outside: bool) -> None:
        body = {"moves": [moves], "audience": 1500, "outside": outside}
        assert desk.client.post("/api/weighing", json=body).status_code == 200
        until(lambda: desk.get("/api/weighing")["state"] == "done")

    assert asked(ask) > 0
    assert asked(follow) > 0
    assert asked(study) > 0
    assert asked(lambda: weigh("1. f3 e5 2. g4", outside=False)) == 0
    assert asked(lambda: weigh("1. f3 e5 2. g4", outside=True)) > 0
    choose(desk, outside=False)
    desk.edit(op="add_line", place=desk.place("f3")["id"], moves=["d5"])
    assert asked(study) == 0


def test_what_is_looked_for_says_that_it_has_died(desk: Desk, boat: Made) -> None:
    assert outcome(desk, asked=True) == "fails"
    boat.path.write_text("#!/bin/sh\nexit 1\n", encoding="utf-8")
    for number in boat.processes():
        os.kill(number, signal.SIGKILL)
    body = {"place": None, "question": "1. d4 d5 2. e4"}
    answer = desk.client.post("/api/lessons/1/questions", json=body)
    assert answer.status_code == 422, answer.text
    assert answer.json()["error"]["kind"] == "OutsideError"
