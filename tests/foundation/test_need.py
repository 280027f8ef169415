"""tools/need.sh finds a Python that serves, and names what is missing with the way to get it."""

from __future__ import annotations

import os
import shutil
import subprocess
from pathlib import Path

import pytest

NEED = Path(__file__).resolve().parents[2] / "tools" / "need.sh"
SHELL_TOOLS = ("awk", "dirname", "id", "sh")

# What need.sh asks a Python is answered by its exit status alone.
SERVES = "exit 0"
TOO_OLD = "exit 1"
NO_VENV = 'case "$2" in *ensurepip*) exit 1 ;; esac'


@pytest.fixture
def machine(tmp_path: Path) -> Path:
    """A folder to be the whole PATH: the shell's own tools, and what a test puts there."""
    folder = tmp_path / "bin"
    folder.mkdir()
    for name in SHELL_TOOLS:
        found = shutil.which(name)
        assert found, f"{name} is missing here"
        (folder / name).symlink_to(Path(found).resolve())
    return folder


def put(machine: Path, name: str, script: str) -> None:
    path = machine / name
    path.write_text(f"#!/bin/sh\n{script}\n")
    path.chmod(0o755)


def need(machine: Path, what: str, **environment: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        ["sh", str(NEED), what],
        env={"PATH": str(machine), "HOME": str(machine)} | environment,
        capture_output=True,
        text=True,
    )


def put_all_for_a_build(machine: Path) -> None:
    put(machine, "python3", SERVES)
    put(machine, "cargo", "echo 'cargo 1.95.0 (f2d3ce0bd 2026-03-21)'")
    put(machine, "cc", "")


def test_python3_is_taken_when_it_serves(machine: Path) -> None:
    put(machine, "python3", SERVES)
    put(machine, "python3.12", SERVES)
    assert need(machine, "python").stdout == f"{machine}/python3\n"


def test_a_newer_python_is_found_beside_an_old_python3(machine: Path) -> None:
    put(machine, "python3", TOO_OLD)
    put(machine, "python3.12", SERVES)
    assert need(machine, "python").stdout == f"{machine}/python3.12\n"


def test_the_chosen_python_goes_first(machine: Path) -> None:
    put(machine, "python3", SERVES)
    put(machine, "mine", SERVES)
    assert need(machine, "python", PYTHON=str(machine / "mine")).stdout == f"{machine}/mine\n"


def test_a_python_that_does_not_run_is_passed_over(machine: Path) -> None:
    put(machine, "python3", "echo 'command not found' >&2; exit 127")
    put(machine, "python3.11", SERVES)
    assert need(machine, "python").stdout == f"{machine}/python3.11\n"


def test_a_python_without_venv_is_named(machine: Path) -> None:
    put(machine, "python3", NO_VENV)
    run = need(machine, "python")
    assert run.returncode == 1
    assert "missing: the venv module of python3" in run.stderr
    assert "apt-get install python3-venv" in run.stderr


def test_an_old_python_alone_is_not_enough(machine: Path) -> None:
    put(machine, "python3", TOO_OLD)
    run = need(machine, "python")
    assert run.returncode == 1
    assert "missing: Python 3.11 or newer" in run.stderr


def test_a_machine_with_everything_needs_nothing(machine: Path) -> None:
    put_all_for_a_build(machine)
    run = need(machine, "build")
    assert (run.returncode, run.stderr) == (0, "")


@pytest.mark.parametrize(
    ("absent", "missing", "way"),
    [
        ("python3", "Python 3.11 or newer", "apt-get install python3 python3-venv"),
        ("cargo", "cargo (Rust 1.95 or newer)", "rustup"),
        ("cc", "a C linker (cc)", "apt-get install gcc libc6-dev"),
    ],
)
def test_a_missing_tool_is_named_with_the_way_to_get_it(
    machine: Path, absent: str, missing: str, way: str
) -> None:
    put_all_for_a_build(machine)
    (machine / absent).unlink()
    run = need(machine, "build")
    assert run.returncode == 1
    assert run.stderr.splitlines()[0] == f"missing: {missing}"
    assert way in run.stderr.splitlines()[1]
    assert len(run.stderr.splitlines()) == 2


@pytest.mark.parametrize(("version", "status"), [("1.94.1", 1), ("1.95.0", 0), ("1.101.0", 0)])
def test_rust_is_new_enough_from_1_95_on(machine: Path, version: str, status: int) -> None:
    put_all_for_a_build(machine)
    put(machine, "cargo", f"echo 'cargo {version} (0123456 2026-01-01)'")
    run = need(machine, "build")
    assert run.returncode == status
    assert (f"here is {version}" in run.stderr) == bool(status)


def test_a_cargo_that_does_not_run_is_named(machine: Path) -> None:
    put_all_for_a_build(machine)
    put(machine, "cargo", "exit 1")
    run = need(machine, "build")
    assert run.returncode == 1
    assert "rustup toolchain install 1.95.0" in run.stderr


def test_the_tests_need_a_browser_and_ffmpeg_and_fonts_and_git(machine: Path) -> None:
    put_all_for_a_build(machine)
    run = need(machine, "test")
    assert run.returncode == 1
    for command in (
        "install git",
        "install chromium",
        "install ffmpeg",
        "install nodejs npm",
        "install fontconfig fonts-dejavu-core",
        "install poppler-utils",
    ):
        assert f"apt-get {command}" in run.stderr


@pytest.mark.skipif(os.geteuid() != 0, reason="need.sh installs only as root")
def test_as_root_the_missing_test_tools_are_installed(machine: Path) -> None:
    put_all_for_a_build(machine)
    put(machine, "chromium", "")
    put(machine, "fc-list", "echo 'DejaVu Serif'")
    put(machine, "npm", "")
    put(machine, "node", "")
    put(machine, "ffmpeg", "")
    put(machine, "ffprobe", "")
    put(machine, "pdftotext", "")
    put(machine, "pdftoppm", "")
    git = f"printf '#!/bin/sh\\n' > {machine}/git; /bin/chmod +x {machine}/git"
    put(machine, "apt-get", f'echo "$@" >> {machine}/asked; case "$1" in install) {git} ;; esac')
    run = need(machine, "test")
    assert run.returncode == 0, run.stderr
    asked = (machine / "asked").read_text().splitlines()
    assert asked == ["update -q", "install -y -q --no-install-recommends git"]


@pytest.mark.skipif(shutil.which("node") is None, reason="asked of a real Node.js")
@pytest.mark.parametrize(
    ("version", "status"),
    [("20.18.3", 1), ("20.19.0", 0), ("21.9.0", 1), ("22.11.0", 1), ("22.12.0", 0), ("24.0.0", 0)],
)
def test_node_is_new_enough_as_the_page_s_builder_asks(
    machine: Path, version: str, status: int
) -> None:
    node = shutil.which("node")
    put(machine, "npm", "")
    put(
        machine,
        "node",
        f"exec {node} -e \"Object.defineProperty(process.versions, 'node', {{value: '{version}'}}); $2\"",
    )
    run = need(machine, "page")
    assert run.returncode == status
    assert ("missing: Node.js 20.19 or newer" in run.stderr) == bool(status)


def test_a_wrong_question_is_refused(machine: Path) -> None:
    assert need(machine, "everything").returncode == 2
