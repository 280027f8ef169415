"""Licences: ours is whole, others' are listed, and what ships goes with ours."""

from __future__ import annotations

import hashlib
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
TOOL = ROOT / "tools" / "third_party.py"


@pytest.fixture
def third_party(monkeypatch: pytest.MonkeyPatch):
    monkeypatch.syspath_prepend(str(TOOL.parent))
    import third_party

    return third_party


def check(file: Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(TOOL), "--check", "--file", str(file)]
    return subprocess.run(command, capture_output=True, text=True)


def test_the_licence_is_the_whole_text_of_the_gpl_3() -> None:
    # The sum of /usr/share/common-licenses/GPL-3 of Debian 12 (package base-files).
    whole = "3972dc9744f6499f0f9b2dbf76696f2ae7ad8af9b23dde66d6af86c9dfb36986"
    assert hashlib.sha256((ROOT / "LICENSE").read_bytes()).hexdigest() == whole


def test_every_manifest_says_gpl_3_or_later() -> None:
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    workspace = tomllib.loads((ROOT / "Cargo.toml").read_text(encoding="utf-8"))["workspace"]
    assert project["license"] == workspace["package"]["license"] == "GPL-3.0-or-later"
    for member in workspace["members"]:
        manifest = tomllib.loads((ROOT / member / "Cargo.toml").read_text(encoding="utf-8"))
        assert manifest["package"]["license"] == {"workspace": True}


def test_the_list_is_complete() -> None:
    run = check(ROOT / "THIRD_PARTY.md")
    assert run.returncode == 0, run.stderr


@pytest.mark.parametrize(
    "name",
    [
        "shakmaty",
        "Rust standard library",
        "DejaVu Sans, a part of it",
        "lit",
        "rich",
        "pytest",
        "vite",
    ],
)
def test_a_missing_entry_is_named(tmp_path: Path, name: str) -> None:
    lines = (ROOT / "THIRD_PARTY.md").read_text(encoding="utf-8").splitlines(keepends=True)
    kept = [line for line in lines if not line.startswith(f"| {name} |")]
    assert len(kept) == len(lines) - 1
    shorter = tmp_path / "THIRD_PARTY.md"
    shorter.write_text("".join(kept), encoding="utf-8")
    run = check(shorter)
    assert run.returncode == 1
    assert f"THIRD_PARTY.md lacks: | {name} |" in run.stderr


def test_a_stale_version_is_named(tmp_path: Path) -> None:
    text = (ROOT / "THIRD_PARTY.md").read_text(encoding="utf-8")
    stale = tmp_path / "THIRD_PARTY.md"
    stale.write_text(text.replace("| shakmaty | ", "| shakmaty | 9."), encoding="utf-8")
    run = check(stale)
    assert run.returncode == 1
    assert "has, wrongly: | shakmaty | 9." in run.stderr


@pytest.mark.parametrize(
    "expression",
    [
        "MIT",
        "MIT/Apache-2.0",
        "Apache-2.0 WITH LLVM-exception",
        "(MIT OR Apache-2.0) AND Unicode-3.0",
        "GPL-2.0-only OR MIT",
    ],
)
def test_a_compatible_licence_passes(third_party, expression: str) -> None:
    assert third_party.is_compatible(expression)


@pytest.mark.parametrize(
    "expression",
    [
        "",
        "Proprietary",
        "GPL-2.0-only",
        "MIT AND GPL-2.0-only",
        "(MIT OR Apache-2.0) AND BUSL-1.1",
        "CC-BY-NC-4.0",
        "(MIT",
        "MIT Apache-2.0",
    ],
)
def test_an_incompatible_or_unknown_licence_does_not_pass(third_party, expression: str) -> None:
    assert not third_party.is_compatible(expression)


def test_an_incompatible_component_that_ships_is_a_problem(third_party) -> None:
    bad = third_party.Component("tin", "1.0", "BUSL-1.1", "https://example.org", text="No.")
    inventory = third_party.Inventory((bad,), (), (), (), (), ())
    found = third_party.problems(inventory, third_party.document(inventory))
    assert found == ["tin ships under BUSL-1.1, which does not go with GPL-3.0-or-later"]


def test_a_package_without_a_licence_is_an_error(third_party) -> None:
    from email.message import Message

    with pytest.raises(third_party.UnknownLicenceError, match="tin declares no known licence"):
        third_party.package_licence("tin", Message())


def test_what_only_an_extra_of_another_package_needs_does_not_count(third_party) -> None:
    # scipy's metadata: ninja; sys_platform != "emscripten" and extra == "test"
    assert third_party.requirements_of("scipy") == ["numpy"]
