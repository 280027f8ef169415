"""A real browser, and the real server in a process of its own."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect, sync_playwright

ROOT = Path(__file__).resolve().parents[3]
RUN = "import sys; from lineproof.cli import main; sys.exit(main())"
AXE = ROOT / "web" / "node_modules" / "axe-core" / "axe.min.js"

expect.set_options(timeout=15_000)


@dataclass(frozen=True)
class Desk:
    """A desk that runs: its address with the token, its process, the lesson's file of lines."""

    address: str
    process: subprocess.Popen[str]
    lines: Path

    @property
    def text(self) -> str:
        return self.lines.read_text(encoding="utf-8")


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        pytest.fail("no Chromium to open the desk in: apt-get install chromium")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        yield opened
        opened.close()


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


@pytest.fixture
def run(tmp_path: Path) -> Iterator[Callable[..., Desk]]:
    """Starts the desk on what lies at a path, or in an empty home folder."""
    running: list[subprocess.Popen[str]] = []
    home = tmp_path / "home"
    home.mkdir()

    def started(path: Path | None) -> Desk:
        given = [] if path is None else [str(path)]
        command = [sys.executable, "-c", RUN, "desk", *given, "--no-browser", "--effort", "sketch"]
        environment = {
            **os.environ,
            "HOME": str(home),
            "LINEPROOF_DATA": str(tmp_path / "data"),
        }
        process = subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=environment)
        running.append(process)
        assert process.stdout
        found = re.search(r"http://\S+", process.stdout.readline())
        assert found, "the desk has not told its address"
        lesson = home if path is None else path
        return Desk(found[0], process, lesson / "lines.pgn" if lesson.is_dir() else lesson)

    yield started
    for process in running:
        process.terminate()
        process.wait(20)


@pytest.fixture
def start(tmp_path: Path, run: Callable[..., Desk]) -> Callable[..., Desk]:
    """Starts the desk on a lesson: a text of PGN, or a folder or file to copy; a text with a side to teach becomes a folder.

    Without a lesson it starts in a home folder of its own.
    """

    def started(lesson: str | Path | None, side: str | None = None) -> Desk:
        if lesson is None:
            return run(None)
        if isinstance(lesson, str) and side:
            path = tmp_path / "lesson"
            path.mkdir()
            (path / "lines.pgn").write_text(lesson, encoding="utf-8")
            settings = f'format = 1\ntitle = "A lesson"\nside = "{side}"\naudience = 1400\n'
            (path / "lesson.toml").write_text(settings, encoding="utf-8")
        elif isinstance(lesson, str):
            path = tmp_path / "lesson.pgn"
            path.write_text(lesson, encoding="utf-8")
        elif lesson.is_dir():
            path = tmp_path / lesson.name
            shutil.copytree(lesson, path, ignore=shutil.ignore_patterns(".lineproof"))
        else:
            path = Path(shutil.copy(lesson, tmp_path))
        return run(path)

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
