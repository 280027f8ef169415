"""`lineproof desk` as a command: what it says when it cannot begin."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
from pathlib import Path

import pytest

RUN = "from lineproof.cli import main; sys.exit(main(sys.argv[1:]))"


def desk(*arguments: str, before: str = "") -> subprocess.CompletedProcess[str]:
    """Runs it where it must end by itself."""
    command = [sys.executable, "-c", f"import sys; {before}{RUN}", "desk", "--no-browser"]
    return subprocess.run(
        [*command, *arguments], capture_output=True, text=True, timeout=120, env=dict(os.environ)
    )


def refused(ran: subprocess.CompletedProcess[str]) -> str:
    """The one line that it says."""
    assert (ran.returncode, ran.stdout) == (2, "")
    assert ran.stderr.count("\n") == 1
    return ran.stderr


def test_a_lesson_that_is_not_there_is_named(tmp_path: Path) -> None:
    assert "no such file" in refused(desk(str(tmp_path / "nothing")))


@pytest.mark.parametrize("port", ["-1", "65536"])
def test_a_port_that_cannot_be_is_refused(port: str) -> None:
    assert "0 to 65535" in refused(desk("--port", port))


def test_a_port_that_is_taken_is_said_to_be(path: Path) -> None:
    with socket.socket() as other:
        other.bind(("127.0.0.1", 0))
        other.listen()
        port = other.getsockname()[1]
        assert f"--port {port}" in refused(desk(str(path), "--port", str(port)))


@pytest.mark.parametrize("package", ["fastapi", "pydantic", "starlette", "uvicorn"])
def test_without_its_packages_it_says_how_to_get_them(path: Path, package: str) -> None:
    said = refused(desk(str(path), before=f"sys.modules[{package!r}] = None; "))
    assert "pip install 'lineproof[desk]'" in said


def test_an_engine_that_is_none_is_named(path: Path) -> None:
    said = refused(desk(str(path), "--engine", str(path / "nothing")))
    assert "--engine" in said and "nothing" in said


def test_a_collection_that_is_none_is_named(path: Path) -> None:
    said = refused(desk(str(path), "--collection", "nothing"))
    assert "there is no collection nothing" in said
