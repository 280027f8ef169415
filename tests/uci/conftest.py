from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from .talk import Talk

ROOT = Path(__file__).resolve().parents[2]
BUILD = ("cargo", "build", "--release", "--locked", "--quiet", "--message-format=json")


@pytest.fixture(scope="session")
def engine_program() -> str:
    """The engine's own program, built from these sources."""
    built = subprocess.run(
        [*BUILD, "--package", "lineproof-engine", "--bin", "lineproof-engine"],
        cwd=ROOT,
        capture_output=True,
        text=True,
        check=True,
    )
    messages = [json.loads(line) for line in built.stdout.splitlines()]
    programs = [message["executable"] for message in messages if message.get("executable")]
    assert len(programs) == 1
    return str(programs[0])


@pytest.fixture(scope="session", params=["lineproof engine uci", "lineproof-engine"])
def command(request: pytest.FixtureRequest) -> list[str]:
    """Both ways in: the command line of lineproof, and the engine's own program."""
    if request.param == "lineproof-engine":
        return [request.getfixturevalue("engine_program")]
    return [str(Path(sys.executable).with_name("lineproof")), "engine", "uci"]


@pytest.fixture
def talk(command: list[str]) -> Iterator[Talk]:
    with Talk(command) as begun:
        yield begun
