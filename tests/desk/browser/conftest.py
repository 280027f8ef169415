"""A real browser, and the real server in a process of its own."""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
import urllib.request
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browsing import browser

ROOT = Path(__file__).resolve().parents[3]
RUN = "import sys; from lineproof.cli import main; sys.exit(main())"
AXE = ROOT / "web" / "node_modules" / "axe-core" / "axe.min.js"

expect.set_options(timeout=15_000)

__all__ = ["browser"]


@dataclass(frozen=True)
class Desk:
    """A desk that runs: its address with the token, its process, the lesson's file of lines."""

    address: str
    process: subprocess.Popen[str]
    lines: Path

    @property
    def text(self) -> str:
        return self.lines.read_text(encoding="utf-8")


@pytest.fixture
def new_page(browser: Browser) -> Iterator[Callable[..., Page]]:
    """Opens windows of their own; an error in one of them fails the test."""
    wrong: list[str] = []
    contexts = []

    def opened(**options: object) -> Page:
        context = browser.new_context(
            viewport={"width": 1440, "height": 900}, reduced_motion="reduce", **options
        )
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda error: wrong.append(str(error)))
        page.on(
            "console",
            lambda message: (
                wrong.append(message.text)
                if message.type == "error" and "Content Security" in message.text
                else None
            ),
        )
        return page

    yield opened
    for context in contexts:
        context.close()
    assert not wrong


def process_of(given: list[str], home: Path) -> tuple[subprocess.Popen[str], str]:
    """A desk of its own, and its address."""
    command = [sys.executable, "-c", RUN, "desk", *given, "--no-browser", "--effort", "sketch"]
    environment = {**os.environ, "HOME": str(home), "LINEPROOF_DATA": str(home / "data")}
    process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=environment)
    assert process.stdout
    found = re.search(r"http://\S+", process.stdout.readline())
    assert found, "the desk has not told its address"
    return process, found[0]


@pytest.fixture
def run(tmp_path: Path) -> Iterator[Callable[..., Desk]]:
    """Starts a desk of its own on what lies at a path, or in an empty home folder."""
    running: list[subprocess.Popen[str]] = []
    home = tmp_path / "home"
    home.mkdir()

    def started(path: Path | None) -> Desk:
        process, address = process_of([] if path is None else [str(path)], home)
        running.append(process)
        lesson = home if path is None else path
        return Desk(address, process, lesson / "lines.pgn" if lesson.is_dir() else lesson)

    yield started
    for process in running:
        process.terminate()
        process.wait(20)


@pytest.fixture(scope="session")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """The desk on which most tests open a lesson of their own."""
    process, address = process_of([], tmp_path_factory.mktemp("home"))
    yield process, address
    process.terminate()
    process.wait(20)


@pytest.fixture
def start(tmp_path: Path, shared: tuple[subprocess.Popen[str], str]) -> Callable[..., Desk]:
    """Opens a lesson: a text of PGN; with a side to teach it becomes a folder."""

    def started(lesson: str, side: str | None = None) -> Desk:
        path = tmp_path / ("lesson" if side else "lesson.pgn")
        lines = path / "lines.pgn" if side else path
        if side:
            path.mkdir()
            settings = f'format = 1\ntitle = "A lesson"\nside = "{side}"\naudience = 1400\n'
            (path / "lesson.toml").write_text(settings, encoding="utf-8")
        lines.write_text(lesson, encoding="utf-8")
        process, address = shared
        origin, _, token = address.partition("/#token=")
        asked = urllib.request.Request(
            f"{origin}/api/lessons",
            json.dumps({"start": {"how": "open", "path": str(path)}}).encode(),
            {
                "Authorization": f"Bearer {token}",
                "Content-Type": "application/json",
                "Origin": origin,
            },
        )
        with urllib.request.urlopen(asked) as answer:
            key = json.load(answer)["key"]
        return Desk(f"{address}&lesson={key}", process, lines)

    return started


@pytest.fixture
def start_copy(tmp_path: Path, run: Callable[..., Desk]) -> Callable[..., Desk]:
    """Starts a desk of its own on a copy of a lesson."""

    def started(lesson: Path) -> Desk:
        if lesson.is_dir():
            copy = tmp_path / lesson.name
            shutil.copytree(lesson, copy, ignore=shutil.ignore_patterns(".lineproof"))
        else:
            copy = Path(shutil.copy(lesson, tmp_path))
        return run(copy)

    return started


def violations(page: Page) -> list[str]:
    """What axe finds wrong with a page: rule and element."""
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found = page.evaluate("axe.run(document, {resultTypes: ['violations']})")
    return [
        f"{rule['id']}: {node['target']}" for rule in found["violations"] for node in rule["nodes"]
    ]


@pytest.fixture
def accessible() -> Callable[[Page], list[str]]:
    return violations
