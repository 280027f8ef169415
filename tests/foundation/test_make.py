"""The Makefile: every step is explained and well-formed, and nothing is done twice.

Steps are only asked what they would do (`make --dry-run`), in a copy with empty sources.
"""

from __future__ import annotations

import os
import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
MAKEFILE = (ROOT / "Makefile").read_text(encoding="utf-8")
STEPS = re.findall(r"^([a-z-]+):.* ## ", MAKEFILE, re.MULTILINE)
SOURCES = (
    "Cargo.toml",
    "Cargo.lock",
    "rust-toolchain.toml",
    "pyproject.toml",
    "LICENSE",
    "THIRD_PARTY.md",
    "README.md",
    "tools/requirements-build.txt",
    "tools/requirements-test.txt",
    "web/package.json",
    "web/package-lock.json",
    "crates/engine/src/lib.rs",
    "python/lineproof/__init__.py",
    "python/lineproof/old.py",
)
# In the order in which they are made.
STAMPS = (
    ".venv/build.stamp",
    ".venv/test.stamp",
    "web/node_modules/npm.stamp",
    "dist/wheel.stamp",
    ".venv/lineproof.stamp",
)


@pytest.fixture
def built(tmp_path: Path) -> Path:
    """A folder in which everything was built after its sources were written."""
    shutil.copy(ROOT / "Makefile", tmp_path)
    for name in SOURCES:
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("")
    for path in [tmp_path, *tmp_path.rglob("*")]:
        os.utime(path, (1000, 1000))
    for time, name in enumerate(STAMPS, 2000):
        (tmp_path / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / name).write_text("")
        os.utime(tmp_path / name, (time, time))
    return tmp_path


def would_do(folder: Path, *steps: str) -> str:
    # The variables of the make that runs these tests are not for this one.
    environment = {k: v for k, v in os.environ.items() if k not in {"MAKEFLAGS", "MAKELEVEL"}}
    command = ["make", "--dry-run", *steps]
    run = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True)
    assert run.returncode == 0, run.stderr
    return run.stdout


def test_help_explains_every_step(built: Path) -> None:
    run = subprocess.run(["make", "help"], cwd=built, capture_output=True, text=True)
    explained = [line.split()[1] for line in run.stdout.splitlines() if line.startswith("make ")]
    assert explained == STEPS
    assert {"demo", "test", "wheel", "lint", "format", "bench", "clean", "help"} <= set(STEPS)


@pytest.mark.parametrize("step", STEPS)
def test_every_step_is_well_formed(built: Path, step: str) -> None:
    assert would_do(built, step)


def test_nothing_is_built_again_when_nothing_has_changed(built: Path) -> None:
    assert "Nothing to be done" in would_do(built, "setup")
    assert "Nothing to be done" not in would_do(built, "demo")
    assert "maturin" not in would_do(built, "demo")


@pytest.mark.parametrize("name", ["crates/engine/src/lib.rs", "python/lineproof/__init__.py"])
def test_a_changed_source_is_built_and_installed(built: Path, name: str) -> None:
    os.utime(built / name)
    steps = would_do(built, "setup")
    assert "maturin build" in steps
    assert "--force-reinstall" in steps
    assert "requirements" not in steps


def test_a_deleted_source_is_built_without(built: Path) -> None:
    (built / "python/lineproof/old.py").unlink()
    assert "maturin build" in would_do(built, "setup")


def test_what_building_and_running_leave_behind_is_no_source(built: Path) -> None:
    folder = built / "python/lineproof"
    (folder / "_engine.abi3.so").write_text("")
    (folder / "__pycache__").mkdir()
    (folder / "__pycache__" / "old.pyc").write_text("")
    os.utime(folder, (1000, 1000))
    assert "Nothing to be done" in would_do(built, "setup")


def test_a_changed_lock_is_installed(built: Path) -> None:
    os.utime(built / "tools/requirements-test.txt")
    assert "-r tools/requirements-test.txt" in would_do(built, "test-setup")
    assert "-r tools/requirements-build.txt" not in would_do(built, "test-setup")


def test_a_changed_lock_of_the_page_is_installed(built: Path) -> None:
    assert "npm ci" not in would_do(built, "desk")
    os.utime(built / "web/package-lock.json")
    assert "npm ci" in would_do(built, "desk")
    assert "npm ci" not in would_do(built, "demo")


def test_tests_fail_when_a_check_fails() -> None:
    """No step of `make test` swallows a failure."""
    for step in ("test", "lint"):
        recipe = MAKEFILE.split(f"\n{step}: ")[1].split("\n\n")[0]
        assert len(recipe.splitlines()) > 2
        assert not re.search(r"^\t-|\|\| true|; *true", recipe, re.MULTILINE)
