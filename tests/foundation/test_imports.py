"""The import-direction check passes on the parts as they are and fails on planted imports."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
LINT_IMPORTS = shutil.which("lint-imports", path=str(Path(sys.executable).parent))


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    shutil.copytree(
        ROOT / "python", tmp_path / "python", ignore=shutil.ignore_patterns("*.so", "__pycache__")
    )
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    return tmp_path


def lint(folder: Path) -> subprocess.CompletedProcess[str]:
    assert LINT_IMPORTS, "import-linter is not installed: make setup"
    environment = os.environ | {"PYTHONPATH": str(folder / "python"), "COLUMNS": "200"}
    return subprocess.run(
        [LINT_IMPORTS, "--no-logo", "--no-cache"],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
    )


def plant(copy: Path, module: str, line: str) -> None:
    path = copy / "python" / "lineproof" / f"{module}.py"
    path.parent.mkdir(exist_ok=True)
    if not path.parent.joinpath("__init__.py").exists():
        path.parent.joinpath("__init__.py").write_text("")
    path.write_text(line + "\n")


def test_the_parts_as_they_are_pass(copy: Path) -> None:
    run = lint(copy)
    assert run.returncode == 0, run.stdout
    assert "2 kept, 0 broken" in run.stdout


@pytest.mark.parametrize(
    ("module", "line", "said"),
    [
        (
            "engine/planted",
            "from lineproof.proof import prove",
            "lineproof.engine is not allowed to import lineproof.proof",
        ),
        (
            "lesson/planted",
            "import lineproof.claims",
            "lineproof.lesson is not allowed to import lineproof.claims",
        ),
        (
            "claims/planted",
            "def late() -> None:\n    import lineproof.proof.store",
            "lineproof.claims is not allowed to import lineproof.proof",
        ),
        (
            "diagram/planted",
            "from lineproof import claims",
            "lineproof.diagram is not allowed to import lineproof.claims",
        ),
        (
            "proof/planted",
            "from lineproof import Lesson",
            "lineproof.proof.planted is not allowed to import lineproof",
        ),
        ("oddments/planted", "", "lineproof.oddments"),
    ],
)
def test_a_planted_wrong_import_fails(copy: Path, module: str, line: str, said: str) -> None:
    plant(copy, module, line)
    run = lint(copy)
    assert run.returncode == 1
    assert said in run.stdout


def test_an_import_of_an_earlier_part_passes(copy: Path) -> None:
    plant(copy, "proof/planted", "from lineproof.lesson import Lesson")
    assert lint(copy).returncode == 0
