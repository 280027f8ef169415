"""The wheel works where there is no compiler, outside the repository, and brings all its files.

LINEPROOF_WHEEL names a wheel to test; without it one is built from the sources here.
"""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import tarfile
import venv
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
COMPILERS = ("cc", "gcc", "clang", "c++", "g++", "cl", "ld", "cargo", "rustc", "maturin")
SCRIPTS = "Scripts" if os.name == "nt" else "bin"
TRUE_LESSON = "1. f3 e5 2. g4 {Black has mate in one.} 2... Qh4# {This is mate.} *\n"
FALSE_LESSON = "1. e4 e5 2. Qh5 {Black is checkmated.} 2... Nc6 {This is mate.} *\n"


def maturin(*arguments: str) -> None:
    command = [sys.executable, "-m", "maturin", *arguments]
    run = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    assert run.returncode == 0, run.stderr


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    given = os.environ.get("LINEPROOF_WHEEL")
    if given:
        return Path(given).resolve()
    out = tmp_path_factory.mktemp("wheel")
    maturin("build", "--release", "--locked", "--interpreter", sys.executable, "--out", str(out))
    (built,) = out.glob("lineproof-*.whl")
    return built


@pytest.fixture(scope="module")
def bare_environment(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """The environment of a machine whose PATH leads to no compiler."""
    empty = tmp_path_factory.mktemp("bin")
    dropped = ("CARGO", "RUST", "CC", "CXX", "PYTHON", "VIRTUAL_ENV")
    kept = {key: value for key, value in os.environ.items() if not key.startswith(dropped)}
    environment = kept | {"PATH": str(empty)}
    for compiler in COMPILERS:
        assert shutil.which(compiler, path=environment["PATH"]) is None
    return environment


@pytest.fixture(scope="module")
def installed(
    wheel: Path, bare_environment: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> Path:
    """The scripts folder of a new venv into which only the wheel was installed."""
    folder = tmp_path_factory.mktemp("clean")
    venv.create(folder, with_pip=True, symlinks=os.name != "nt")
    scripts = folder / SCRIPTS
    command = [str(scripts / "python"), "-m", "pip", "install", "--quiet", "--only-binary", ":all:"]
    # it comes as sources only, all of them Python; there is no compiler here that could hide anything else
    command += ["--no-binary", "chess"]
    command += ["--constraint", str(ROOT / "tools" / "requirements-build.txt"), str(wheel)]
    run = subprocess.run(
        command, cwd=folder, env=bare_environment, capture_output=True, text=True, timeout=300
    )
    assert run.returncode == 0, run.stderr
    return scripts


def lineproof(
    scripts: Path, environment: dict[str, str], cwd: Path, *arguments: str
) -> subprocess.CompletedProcess[str]:
    command = [str(scripts / "lineproof"), *arguments]
    # The user data of whoever runs the tests stays as it is.
    home = {"LINEPROOF_DATA": str(cwd / "data")}
    return subprocess.run(
        command, cwd=cwd, env=environment | home, capture_output=True, encoding="utf-8", timeout=300
    )


def test_the_wheel_is_for_every_python_from_3_11_on(wheel: Path) -> None:
    assert "-cp311-abi3-" in wheel.name


def test_the_wheel_brings_all_its_files(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        inside = set(archive.namelist())
    sources = ROOT / "python"
    expected = {
        path.relative_to(sources).as_posix()
        for path in (sources / "lineproof").rglob("*")
        if path.suffix in {".py", ".pyi", ".json", ".typed", ".ttf", ".txt"}
    }
    assert {"lineproof/py.typed", "lineproof/_engine.pyi"} <= expected
    assert "lineproof/report/schema/proof.schema.json" in expected
    assert expected - inside == set()
    assert any(name.startswith("lineproof/_engine.") and "abi3" in name for name in inside) or (
        "lineproof/_engine.pyd" in inside
    )
    for name in ("LICENSE", "THIRD_PARTY.md"):
        assert any(entry.endswith(f".dist-info/licenses/{name}") for entry in inside)


def test_the_wheel_brings_nothing_else(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        tops = {name.split("/")[0] for name in archive.namelist()}
    assert {top for top in tops if not top.endswith(".dist-info")} == {"lineproof"}


def test_no_text_in_the_wheel_names_the_folder_it_was_built_in(wheel: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        for name in archive.namelist():
            if not name.endswith((".so", ".pyd")):
                assert str(ROOT).encode() not in archive.read(name), name


def test_the_installed_program_proves_a_true_lesson(
    installed: Path, bare_environment: dict[str, str], tmp_path: Path
) -> None:
    (tmp_path / "short.pgn").write_text(TRUE_LESSON, encoding="utf-8")
    run = lineproof(
        installed,
        bare_environment,
        tmp_path,
        "prove",
        "short.pgn",
        "--effort",
        "sketch",
        "--strict",
    )
    assert run.returncode == 0, run.stderr
    assert "all hold" in run.stdout or "both hold" in run.stdout


def test_the_installed_program_finds_a_false_claim(
    installed: Path, bare_environment: dict[str, str], tmp_path: Path
) -> None:
    (tmp_path / "wrong.pgn").write_text(FALSE_LESSON, encoding="utf-8")
    arguments = ("prove", "wrong.pgn", "--effort", "sketch", "--strict", "--json")
    run = lineproof(installed, bare_environment, tmp_path, *arguments)
    assert run.returncode == 1, run.stderr
    outcomes = {
        finding["place"]: finding["outcome"] for finding in json.loads(run.stdout)["findings"]
    }
    assert outcomes["2... Nc6"] == "fails"


def test_the_installed_package_is_the_one_in_the_venv(
    installed: Path, bare_environment: dict[str, str], tmp_path: Path
) -> None:
    code = "import lineproof, lineproof._engine; print(lineproof._engine.__file__)"
    run = subprocess.run(
        [str(installed / "python"), "-c", code],
        cwd=tmp_path,
        env=bare_environment,
        capture_output=True,
        text=True,
    )
    assert run.returncode == 0, run.stderr
    assert Path(run.stdout.strip()).is_relative_to(installed.parent.resolve())


@pytest.mark.skipif("LINEPROOF_WHEEL" in os.environ, reason="the wheel to test is given")
def test_the_source_archive_has_the_sources_and_the_lock(tmp_path: Path) -> None:
    maturin("sdist", "--out", str(tmp_path))
    (archive,) = tmp_path.glob("lineproof-*.tar.gz")
    with tarfile.open(archive) as files:
        inside = {name.split("/", 1)[1] for name in files.getnames() if "/" in name}
    expected = {"Cargo.lock", "Cargo.toml", "LICENSE", "THIRD_PARTY.md", "pyproject.toml"}
    for folder, suffixes in (("crates", {".rs", ".toml"}), ("python", {".py", ".pyi", ".json"})):
        expected |= {
            path.relative_to(ROOT).as_posix()
            for path in (ROOT / folder).rglob("*")
            if path.suffix in suffixes
        }
    assert expected - inside == set()
