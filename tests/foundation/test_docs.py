"""The documents tell the truth: their commands run, and the paths and steps that they name exist.

`console` and `python` blocks are run, in one folder with a copy of examples/ and with my-lines.pgn
in it. In a `console` block a line with `$ ` is a command, the lines after it are what it prints; `…`
stands for anything, and a command with nothing after it may print what it likes. `sh` blocks build
this very folder, so they are not run; their `make` steps must exist.
"""

from __future__ import annotations

import json
import os
import re
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
CORPUS = ROOT / "tests" / "corpus"
PAGES = [ROOT / "README.md", ROOT / "CONTRIBUTING.md", *sorted((ROOT / "docs").glob("*.md"))]
BLOCK = re.compile(r"^```(?P<kind>\w+)\n(?P<body>.*?)^```$", re.MULTILINE | re.DOTALL)
ANYTHING = "…"
MY_LINES = """[Event "My lines"]

1. e4 e5 2. Nc3 Nf6 3. f4 {White offers a pawn.} d5 (3... exf4 4. e5 {The pawn on e5 attacks the knight.} 4... Ng8)
4. fxe5 Nxe4 {The knight on e4 attacks the knight on c3.} 5. Nf3 *
"""
"""What a reader has; short, for it is proved at normal effort."""


@dataclass(frozen=True)
class Command:
    """A command of a page, and what the page says that it prints."""

    page: str
    line: int
    words: str
    printed: str


def commands_of(page: Path) -> list[Command]:
    text = page.read_text(encoding="utf-8")
    found = []
    for block in BLOCK.finditer(text):
        first = text.count("\n", 0, block.start("body")) + 1
        lines = block["body"].splitlines()
        if block["kind"] == "console":
            starts = [n for n, line in enumerate(lines) if line.startswith("$ ")]
            assert starts and starts[0] == 0, f"{page.name}:{first}: begins with no command"
            for start, end in zip(starts, [*starts[1:], len(lines)], strict=True):
                printed = "\n".join(lines[start + 1 : end])
                found.append(Command(page.name, first + start, lines[start][2:], printed))
        elif block["kind"] == "python":
            words = f"{sys.executable} - <<'PYTHON'\n{block['body']}PYTHON"
            found.append(Command(page.name, first, words, ""))
    return found


COMMANDS = [command for page in PAGES for command in commands_of(page)]


def fits(printed: str, expected: str) -> bool:
    """Whether what was printed is what the page says, `…` standing for anything."""
    parts = (re.escape(part) for part in expected.split(ANYTHING))
    return re.fullmatch(".*".join(parts) + r"\n?", printed, re.DOTALL) is not None


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder as a reader has it beside the page."""
    folder = tmp_path_factory.mktemp("reader")
    shutil.copytree(
        ROOT / "examples", folder / "examples", ignore=shutil.ignore_patterns(".lineproof")
    )
    return folder


@pytest.mark.parametrize("command", COMMANDS, ids=lambda c: f"{c.page}:{c.line}")
def test_each_command_does_what_the_page_says(command: Command, desk: Path) -> None:
    # Each page begins anew: its reader has not read the others.
    folder = desk / command.page.removesuffix(".md")
    if not folder.exists():
        shutil.copytree(desk / "examples", folder / "examples")
        (folder / "my-lines.pgn").write_text(MY_LINES, encoding="utf-8")
    environment = os.environ | {
        "PATH": f"{Path(sys.executable).parent}{os.pathsep}{os.environ['PATH']}",
        "LINEPROOF_DATA": str(folder / "data"),
        "COLUMNS": "100",
    }
    run = subprocess.run(
        ["bash", "-c", command.words],
        cwd=folder,
        env=environment,
        capture_output=True,
        encoding="utf-8",
    )
    assert run.returncode == 0, run.stderr
    if command.printed:
        assert fits(run.stdout, command.printed), run.stdout


def test_the_pages_have_commands_to_run() -> None:
    assert {"README.md", "files.md", "architecture.md"} <= {command.page for command in COMMANDS}


@pytest.mark.parametrize(
    ("printed", "expected", "whether"),
    [
        ("a\nb\n", "a\nb", True),
        ("a\nb\nc\n", "a\n…\nc", True),
        ("a\nb\n", "a", False),
        ("xay\n", "…a…", True),
        ("xby\n", "…a…", False),
    ],
)
def test_what_a_page_says_is_compared(printed: str, expected: str, whether: bool) -> None:
    assert fits(printed, expected) == whether


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_every_link_of_a_page_leads_somewhere(page: Path) -> None:
    text = page.read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)#:]+)\)", text):
        assert (page.parent / target).exists(), target


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.name)
def test_every_path_that_a_page_names_exists(page: Path) -> None:
    text = BLOCK.sub("", page.read_text(encoding="utf-8"))
    for path in re.findall(
        r"`((?:benchmarks|crates|docs|examples|tests|tools|\.github)/[\w./-]+)`", text
    ):
        assert (ROOT / path).exists(), path


def test_every_make_step_that_a_page_names_exists() -> None:
    steps = set(re.findall(r"^([a-z-]+):.* ## ", (ROOT / "Makefile").read_text(), re.MULTILINE))
    named = {
        step
        for page in PAGES
        for step in re.findall(r"(?:^|`)make ([a-z-]+)", page.read_text(), re.MULTILINE)
    }
    assert {"demo", "test", "wheel"} <= named <= steps


def test_every_step_is_explained() -> None:
    table = (ROOT / "docs" / "building.md").read_text(encoding="utf-8")
    steps = re.findall(r"^([a-z-]+):.* ## ", (ROOT / "Makefile").read_text(), re.MULTILINE)
    for step in set(steps) - {"help"}:
        assert f"| `make {step}` |" in table


def test_what_the_documents_say_of_the_command_line_is_there() -> None:
    """Each `--option` that a page names for lineproof is one of its commands' options."""
    run = Path(sys.executable).parent / "lineproof"
    helps = "".join(
        subprocess.run([run, name, "--help"], capture_output=True, text=True, check=True).stdout
        for name in ("prove", "new", "opinion", "where")
    )
    for option in re.findall(r"`(--[a-z]+)`", (ROOT / "README.md").read_text(encoding="utf-8")):
        assert option in helps


def flat(page: str) -> str:
    return " ".join((ROOT / page).read_text(encoding="utf-8").split())


def test_after_the_wheel_the_readme_needs_nothing_of_the_repository() -> None:
    """Whoever installs the wheel has no examples/ folder."""
    readme = ROOT / "README.md"
    wheel = readme.read_text(encoding="utf-8").split("pip install")[0].count("\n") + 1
    after = [command for command in commands_of(readme) if command.line > wheel]
    assert after and after[0].words == "lineproof prove my-lines.pgn --side white"
    assert not [command.words for command in after if "examples" in command.words]


def test_the_first_command_of_the_readme_proves_the_demo_lesson_in_the_repository() -> None:
    readme = ROOT / "README.md"
    first = commands_of(readme)[0]
    assert first.words == "lineproof prove examples/vienna"
    assert (ROOT / "examples" / "vienna" / "lines.pgn").is_file()
    text = readme.read_text(encoding="utf-8")
    assert text.index("make demo") < text.index(first.words) < text.index("pip install")


def test_a_demo_lesson_that_does_not_exist_is_said_not_to() -> None:
    said = "Budapest Gambit for Black, does not exist yet" in flat("docs/words.md")
    assert said == (not (ROOT / "examples" / "budapest").exists())


def test_each_corpus_is_named_with_what_it_measures() -> None:
    page = flat("docs/checks.md")
    tests = sorted(CORPUS.glob("test_*.py"))
    assert tests
    for test in tests:
        assert f"`tests/corpus/{test.name}`" in page
    opened = any("sealed.jsonl" in test.read_text(encoding="utf-8") for test in tests)
    assert ("not measured yet" in page) == (not opened)
    lines = (CORPUS / "open.jsonl").read_text(encoding="utf-8").splitlines()
    assert f"{len([json.loads(line) for line in lines])} sentences with readings" in page
