"""What nobody foresaw is one line with the file and the way out, and status 2: never 1, never a traceback."""

from __future__ import annotations

import errno
from pathlib import Path

import pytest

from lineproof.cli import main
from lineproof.facade import Lesson

from .command import lineproof

FAULT = "the program has a fault here"


class Panic(BaseException):
    """As the engine's own, which is no Exception."""


@pytest.mark.parametrize("at", ["open", "evidence", "prove"])
@pytest.mark.parametrize(
    ("error", "said"),
    [
        (ValueError("boom"), f"{FAULT} (ValueError: boom); take out"),
        (KeyError(), f"{FAULT} (KeyError); take out"),
        (Panic("over"), f"{FAULT} (Panic: over); take out"),
        (RecursionError("too deep"), "it is nested too deeply; take some levels out of it"),
        (MemoryError(), "it does not fit into memory; split it into smaller files"),
        (PermissionError(errno.EACCES, "Permission denied", "/x"), "(permission denied: /x); check the name"),
        (OSError(errno.ENOSPC, "No space left on device"), "(no space left on device); check the name"),
        (OSError("odd"), "the system refuses it (odd); check the name"),
    ],
)  # fmt: skip
def test_an_error_anywhere_in_prove_is_one_line(
    home: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    at: str,
    error: BaseException,
    said: str,
) -> None:
    def fails(*_: object, **__: object) -> None:
        raise error

    monkeypatch.setenv("LINEPROOF_DATA", str(home / "data"))
    monkeypatch.setattr(Lesson, at, fails)
    file = str(home / "vienna.pgn")
    for strict in ([], ["--strict"]):
        assert main(["prove", file, "--effort", "sketch", *strict]) == 2
        out, err = capsys.readouterr()
        assert out == ""
        assert err.startswith(f"{file}: ") and said in err
        assert err.count("\n") == 1


@pytest.mark.parametrize("module", ["terminal.terminal", "json.proof_json", "html.html"])
def test_an_error_of_a_report_is_one_line(
    home: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    module: str,
) -> None:
    def fails(*_: object) -> None:
        raise IndexError("boom")

    monkeypatch.setenv("LINEPROOF_DATA", str(home / "data"))
    monkeypatch.setattr(f"lineproof.report.{module}", fails)
    options = {"json.proof_json": ["--json"], "html.html": ["--report", str(home / "a.html")]}
    file = str(home / "vienna.pgn")
    assert main(["prove", file, "--effort", "sketch", *options.get(module, [])]) == 2
    err = capsys.readouterr().err
    assert err.startswith(f"{file}: {FAULT} (IndexError: boom)")
    assert err.count("\n") == 1


def test_ctrl_c_stays_what_it_is(
    home: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def stopped(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(Lesson, "open", stopped)
    assert main(["prove", str(home / "vienna.pgn")]) == 130
    assert capsys.readouterr().err == "\nStopped.\n"


def test_real_refusals_of_the_system(home: Path) -> None:
    (home / "closed").mkdir(mode=0)
    try:
        ran = lineproof(home, "prove", "closed/lines.pgn", as_user=True)
    finally:
        (home / "closed").chmod(0o755)
    assert (ran.status, ran.out, ran.err.count("\n")) == (2, "", 1)
    assert ran.err.startswith("closed/lines.pgn: ") and "permission denied" in ran.err
    ran = lineproof(home, "prove", "x" * 5000)
    assert (ran.status, ran.out, ran.err.count("\n")) == (2, "", 1)
    assert "file name too long" in ran.err


def test_a_setting_nested_too_deeply(home: Path) -> None:
    lineproof(home, "new", "deep", "--from", "vienna.pgn")
    (home / "deep" / "lesson.toml").write_text(f"format = 1\ndecisions = {'[' * 9000}\n")
    ran = lineproof(home, "prove", "deep", "--strict")
    assert (ran.status, ran.out) == (2, "")
    assert ran.err.startswith("deep/lesson.toml:2:")
    assert "nested more than 20 levels deep; write it flatter" in ran.err


def test_the_other_commands_have_the_same(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def fails() -> None:
        raise RuntimeError("no home")

    monkeypatch.setattr("lineproof.lesson.where.where", fails)
    assert main(["where"]) == 2
    assert capsys.readouterr().err.startswith(f"lineproof where: {FAULT} (RuntimeError: no home)")
