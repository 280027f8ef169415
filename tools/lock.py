"""Writes the locks of the Python packages: what a fresh clone installs is what was tested.

    .venv/bin/python tools/lock.py

`tools/requirements-build.txt` has what a build and a run need (`make demo`),
`tools/requirements-test.txt` all that the tests need besides. Both come from pyproject.toml, which
says what is allowed; the locks say what was tested.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tomllib
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
BUILD_LOCK = ROOT / "tools" / "requirements-build.txt"
TEST_LOCK = ROOT / "tools" / "requirements-test.txt"
HEAD = "# Written by tools/lock.py from pyproject.toml. Do not edit.\n"


def resolve(requirements: Sequence[str], options: Sequence[str] = ()) -> dict[str, str]:
    """Name to version of everything that pip would install, in alphabetical order.

    :raises subprocess.CalledProcessError: if pip finds no set of versions that fits
    """
    command = [sys.executable, "-m", "pip", "install", "--quiet", "--dry-run", "--ignore-installed"]
    command += ["--report", "-", *options, *requirements]
    report = json.loads(
        subprocess.run(command, check=True, stdout=subprocess.PIPE, text=True).stdout
    )
    found = {
        item["metadata"]["name"].lower(): item["metadata"]["version"] for item in report["install"]
    }
    return dict(sorted(found.items()))


def main() -> None:
    """Resolves anew and writes both locks."""
    pyproject = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    project = pyproject["project"]
    build = [*project["dependencies"], *pyproject["build-system"]["requires"]]
    own = project["name"]
    extras = [
        requirement
        for group in project["optional-dependencies"].values()
        for requirement in group
        if not requirement.startswith(own)
    ]
    versions = resolve([*build, *extras, *pyproject["dependency-groups"]["dev"]])
    TEST_LOCK.write_text(HEAD + lines(versions), encoding="utf-8")
    versions = resolve(build, ["--constraint", str(TEST_LOCK)])
    BUILD_LOCK.write_text(HEAD + lines(versions), encoding="utf-8")


def lines(versions: dict[str, str]) -> str:
    """The lock's lines, `name==version` each."""
    return "".join(f"{name}=={version}\n" for name, version in versions.items())


if __name__ == "__main__":
    main()
