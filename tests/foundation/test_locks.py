"""The locks of Python packages fit pyproject.toml, and what is installed is what they say."""

from __future__ import annotations

import tomllib
from importlib.metadata import version
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parents[2]
PYPROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def read_lock(name: str) -> dict[str, str]:
    lines = (ROOT / "tools" / name).read_text(encoding="utf-8").splitlines()
    rows = [line.split("==") for line in lines if not line.startswith("#")]
    return {canonicalize_name(name): version for name, version in rows}


BUILD = read_lock("requirements-build.txt")
TEST = read_lock("requirements-test.txt")
FOR_BUILD = [*PYPROJECT["project"]["dependencies"], *PYPROJECT["build-system"]["requires"]]
EXTRAS = [
    requirement
    for extra in PYPROJECT["project"]["optional-dependencies"].values()
    for requirement in extra
    if Requirement(requirement).name != "lineproof"
]
FOR_TESTS = [*EXTRAS, *PYPROJECT["dependency-groups"]["dev"]]


@pytest.mark.parametrize("requirement", [Requirement(line) for line in FOR_BUILD], ids=str)
def test_the_build_lock_has_what_a_build_needs(requirement: Requirement) -> None:
    assert requirement.specifier.contains(BUILD[canonicalize_name(requirement.name)])


@pytest.mark.parametrize("requirement", [Requirement(line) for line in FOR_TESTS], ids=str)
def test_the_test_lock_has_what_the_tests_need(requirement: Requirement) -> None:
    assert requirement.specifier.contains(TEST[canonicalize_name(requirement.name)])


def test_the_test_lock_holds_the_build_lock() -> None:
    assert BUILD.items() <= TEST.items()


@pytest.mark.parametrize("name", TEST)
def test_what_is_installed_is_what_is_locked(name: str) -> None:
    assert version(name) == TEST[name]
