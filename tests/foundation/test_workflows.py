"""The workflow files are YAML and say what the documents say of them. Nothing here runs them."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

ROOT = Path(__file__).resolve().parents[2]
WORKFLOWS = sorted((ROOT / ".github" / "workflows").glob("*.yml"))


def read(name: str) -> dict[str, Any]:
    # In YAML 1.1, which PyYAML reads, the key `on` is the truth value True.
    return yaml.safe_load((ROOT / ".github" / "workflows" / name).read_text(encoding="utf-8"))


def steps(name: str) -> list[dict[str, Any]]:
    return [step for job in read(name)["jobs"].values() for step in job["steps"]]


@pytest.mark.parametrize("path", WORKFLOWS, ids=lambda path: path.name)
def test_every_job_has_a_runner_and_steps_that_do_something(path: Path) -> None:
    workflow = read(path.name)
    assert workflow[True], "says when it runs"
    for job in workflow["jobs"].values():
        assert job["runs-on"]
        assert all(("uses" in step) != ("run" in step) for step in job["steps"])


def test_ci_runs_what_is_run_here() -> None:
    assert {"name": "Test", "run": ".ci/run"} in steps("ci.yml")
    script = ROOT / ".ci" / "run"
    assert script.stat().st_mode & 0o111
    assert "set -euo pipefail" in script.read_text(encoding="utf-8")
    assert "make test" in script.read_text(encoding="utf-8")


def test_wheels_are_built_for_five_platforms() -> None:
    rows = read("release.yml")["jobs"]["wheels"]["strategy"]["matrix"]["include"]
    assert {row["target"] for row in rows} == {
        "x86_64-unknown-linux-gnu",
        "aarch64-unknown-linux-gnu",
        "x86_64-apple-darwin",
        "aarch64-apple-darwin",
        "x86_64-pc-windows-msvc",
    }
    for row in rows:
        assert (row["manylinux"] != "off") == ("linux" in row["target"])


def test_each_wheel_is_tested_before_it_is_published() -> None:
    jobs = read("release.yml")["jobs"]
    tests = [s for s in jobs["wheels"]["steps"] if "test_wheel.py" in s.get("run", "")]
    assert len(tests) == 1
    assert "LINEPROOF_WHEEL=" in tests[0]["run"]
    assert {"wheels", "source"} <= set(jobs["publish"]["needs"])


def test_wheels_are_built_as_locked() -> None:
    (build,) = [s for s in steps("release.yml") if "target" in s.get("with", {})]
    assert "--locked" in build["with"]["args"]
    assert "--release" in build["with"]["args"]
