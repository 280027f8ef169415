"""Writes THIRD_PARTY.md: every component by others, apart those that only build and test.

    .venv/bin/python tools/third_party.py            writes it anew
    .venv/bin/python tools/third_party.py --check    fails when it is incomplete or stale, or when
                                                     something that ships has a licence that does
                                                     not go with GPL-3.0-or-later

Crates come from `cargo metadata`, Python packages from the locks of tools/ and from the metadata of
what is installed, npm packages from the lock of web/ and from what is installed there. A licence that neither declares is an error, never a guess.
"""

from __future__ import annotations

import argparse
import difflib
import json
import re
import subprocess
import sys
import tomllib
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from importlib.metadata import PackageNotFoundError, distribution
from pathlib import Path
from typing import Any

from packaging.markers import default_environment
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

ROOT = Path(__file__).resolve().parent.parent
LETTERS = ROOT / "python" / "lineproof" / "publish" / "video" / "letters"

# Licences that may be combined into a work under GPL-3.0-or-later. Source: Free Software
# Foundation, "Various Licenses and Comments about Them", "GPL-Compatible Free Software Licenses".
COMPATIBLE = frozenset(
    {
        "0BSD",
        "Apache-2.0",
        "Apache-2.0 WITH LLVM-exception",
        "BSD-2-Clause",
        "BSD-3-Clause",
        "BSL-1.0",
        "CC0-1.0",
        "GPL-2.0-or-later",
        "GPL-3.0-only",
        "GPL-3.0-or-later",
        "ISC",
        "LGPL-2.1-or-later",
        "LGPL-3.0-or-later",
        "MIT",
        "MPL-2.0",
        "PSF-2.0",
        "Unicode-3.0",
        "Unlicense",
        "Zlib",
    }
)

# Licences that the list above does not name, and whose every condition is one of a licence that it does name. The four of
# bzip2-1.0.6: keep the notice, and do not use the author's name (BSD-3-Clause); do not claim to have written it, and mark
# changed versions (Zlib).
# Those of Bitstream-Vera, for fonts: keep the notice (MIT), give changed ones another name than its own (Zlib), do not use the
# authors' names (BSD-3-Clause), do not sell a font by itself (OFL-1.1, which the list above's source calls free).
OF_THE_SAME_CONDITIONS = frozenset({"bzip2-1.0.6", "Bitstream-Vera"})

# What older metadata says, as an SPDX identifier.
SPELLINGS = {
    "MIT": "MIT",
    "MIT License": "MIT",
    "GPL-3.0+": "GPL-3.0-or-later",
    "BSD 2-Clause License": "BSD-2-Clause",
    "2-clause BSD": "BSD-2-Clause",
    "BSD-3-Clause": "BSD-3-Clause",
    "Apache 2.0": "Apache-2.0",
    "Apache-2.0": "Apache-2.0",
    "Mozilla Public License 2.0 (MPL 2.0)": "MPL-2.0",
}

# Packages whose metadata name no licence; read in the licence file inside the package.
READ_BY_HAND = {"resvg-py": "MIT", "scipy": "BSD-3-Clause"}

# The platforms for which there are wheels (.github/workflows/release.yml).
PLATFORMS = (
    "x86_64-unknown-linux-gnu",
    "aarch64-unknown-linux-gnu",
    "x86_64-apple-darwin",
    "aarch64-apple-darwin",
    "x86_64-pc-windows-msvc",
)

# What no package manager lists: name, licence, homepage, what for.
TOOLS = (
    (
        "Rust compiler and cargo",
        "MIT OR Apache-2.0",
        "https://www.rust-lang.org",
        "builds the engine",
    ),
    ("Python", "PSF-2.0", "https://www.python.org", "runs Lineproof"),
    ("pip", "MIT", "https://pip.pypa.io", "installs the packages"),
    ("GNU Make", "GPL-3.0-or-later", "https://www.gnu.org/software/make/", "runs the steps"),
    ("Node.js", "MIT", "https://nodejs.org", "builds the desk's page"),
    ("npm", "Artistic-2.0", "https://www.npmjs.com", "installs the npm packages"),
    ("Git", "GPL-2.0-only", "https://git-scm.com", "the tests copy the sources with it"),
    ("Chromium", "BSD-3-Clause", "https://www.chromium.org", "the tests look at pages in it"),
    ("FFmpeg", "GPL-2.0-or-later", "https://ffmpeg.org", "the tests look into videos with it"),
    ("DejaVu fonts", "Bitstream-Vera", "https://dejavu-fonts.github.io", "pictures in the tests"),
)

# npm packages that the page's packages ask for, and of which nothing is in the page: types; Lit under Node.js.
NOT_IN_PAGE = ("@types/trusted-types", "@lit-labs/ssr-dom-shim")

# cargo names no crate for it, yet it is compiled into every wheel.
STANDARD_LIBRARY = "Rust standard library"

INTRO = """\
# Components by others

Written by `make third-party` (tools/third_party.py); `make test` fails when it is incomplete or
stale. Lineproof itself is under GPL-3.0-or-later (LICENSE). Licences are SPDX identifiers.
"""
SHIPS_IN = """\
## In the wheel

Rust crates compiled into the wheel, on one platform or another, and the standard library; the letters of captions.
"""
SHIPS_IN_PAGE = """\
## In the desk's page

npm packages whose code is in the page that the wheel carries.
"""
SHIPS_BESIDE = """\
## Beside the wheel

Python packages that pip installs with Lineproof, each under its own licence. "Allowed" is what
pyproject.toml asks for (empty: asked for by another package), "tested" what the tests ran with.
"""
ONLY_BUILDS = """\
## Only to build and test

Nothing of these is in what users get. Of npm packages with a part for each platform only the package itself is named.
"""
TEXTS = """\
## Licence texts of what is in the wheel

Where a crate offers a choice, its text under the MIT licence is given. The text of GPL-3.0-or-later
is in LICENSE.
"""


class UnknownLicenceError(ValueError):
    """A component declares no licence, or one that is not known here by its SPDX identifier."""


class NotInstalledError(LookupError):
    """A package of the lock is not installed, so that nothing can be read about it."""


@dataclass(frozen=True)
class Component:
    """Something by others. `allowed` and `version` are empty where they say nothing."""

    name: str
    version: str
    licence: str
    homepage: str
    allowed: str = ""
    text: str = ""


@dataclass(frozen=True)
class Inventory:
    """All components, by where they end up."""

    in_wheel: tuple[Component, ...]
    in_page: tuple[Component, ...]
    beside: tuple[Component, ...]
    building_crates: tuple[Component, ...]
    building_packages: tuple[Component, ...]
    building_page: tuple[Component, ...]


def is_compatible(expression: str) -> bool:
    """Whether an SPDX expression lets its component be part of a GPL-3.0-or-later work."""
    tokens = re.findall(r"\(|\)|[^\s()]+", expression.replace("/", " OR "))

    def alternatives() -> bool:
        held = [all_of()]
        while tokens and tokens[0] == "OR":
            tokens.pop(0)
            held.append(all_of())
        return any(held)

    def all_of() -> bool:
        held = [one()]
        while tokens and tokens[0] == "AND":
            tokens.pop(0)
            held.append(one())
        return all(held)

    def one() -> bool:
        if not tokens:
            return False
        name = tokens.pop(0)
        if name == "(":
            held = alternatives()
            return bool(tokens) and tokens.pop(0) == ")" and held
        if len(tokens) > 1 and tokens[0] == "WITH":
            name = f"{name} WITH {tokens[1]}"
            del tokens[:2]
        return name in COMPATIBLE | OF_THE_SAME_CONDITIONS

    return alternatives() and not tokens


def crates() -> tuple[tuple[Component, ...], tuple[Component, ...]]:
    """The crates in the wheel, and those that only build or test it; all platforms of ours."""
    command = ["cargo", "metadata", "--format-version", "1", "--locked"]
    for platform in PLATFORMS:
        command += ["--filter-platform", platform]
    output = subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.PIPE, text=True).stdout
    metadata = json.loads(output)
    packages = {package["id"]: package for package in metadata["packages"]}
    nodes = {node["id"]: node for node in metadata["resolve"]["nodes"]}
    (top,) = (id_ for id_, package in packages.items() if package["name"] == "lineproof-bindings")

    inside: set[str] = set()
    open_ids = [top]
    while open_ids:
        id_ = open_ids.pop()
        if id_ in inside:
            continue
        inside.add(id_)
        for dependency in nodes[id_]["deps"]:
            # A procedural macro runs in the compiler; it and what it needs stay there.
            is_macro = any(
                "proc-macro" in t["kind"] for t in packages[dependency["pkg"]]["targets"]
            )
            kinds = {kind["kind"] for kind in dependency["dep_kinds"]}
            if None in kinds and not is_macro:
                open_ids.append(dependency["pkg"])

    foreign = {id_: package for id_, package in packages.items() if package["source"]}
    compiled_in = [crate(package) for id_, package in foreign.items() if id_ in inside]
    compiled_in.append(standard_library())
    building = [crate(package) for id_, package in foreign.items() if id_ not in inside]
    return by_name(compiled_in), by_name(building)


def crate(package: Mapping[str, Any]) -> Component:
    """:raises UnknownLicenceError: if the crate declares none"""
    if not package["license"]:
        raise UnknownLicenceError(f"crate {package['name']} declares no licence")
    return Component(
        name=package["name"],
        version=package["version"],
        licence=package["license"].replace("/", " OR "),
        homepage=package["homepage"] or package["repository"] or package["documentation"] or "",
        text=licence_text(Path(package["manifest_path"]).parent, package["license"]),
    )


def licence_text(folder: Path, licence: str) -> str:
    """The text that must go with the binary; empty under the GPL, whose text LICENSE has."""
    if licence == "GPL-3.0-or-later":
        return ""
    files = [
        file
        for pattern in ("LICEN[CS]E*", "licen[cs]e*", "COPYING*")
        for file in sorted(folder.glob(pattern))
        if file.is_file()
    ]
    preferred = [file for file in files if "MIT" in file.name.upper()] or files
    return preferred[0].read_text(encoding="utf-8") if preferred else ""


def standard_library() -> Component:
    """The standard library of the pinned compiler."""
    pinned = tomllib.loads((ROOT / "rust-toolchain.toml").read_text(encoding="utf-8"))
    return Component(
        name=STANDARD_LIBRARY,
        version=pinned["toolchain"]["channel"],
        licence="MIT OR Apache-2.0",
        homepage="https://www.rust-lang.org",
        text=f"Copyright (c) The Rust Project Contributors\n\n{MIT}",
    )


def letters() -> Component:
    """The font that captions of a video are drawn in."""
    text = (LETTERS / "LICENCE.txt").read_text(encoding="utf-8")
    return Component(
        name="DejaVu Sans, a part of it",
        version="2.37",
        licence="Bitstream-Vera",
        homepage="https://dejavu-fonts.github.io",
        text=text,
    )


def packages() -> tuple[tuple[Component, ...], tuple[Component, ...]]:
    """The packages that pip installs with Lineproof, and those that only build or test it."""
    locked = read_lock(ROOT / "tools" / "requirements-test.txt")
    project = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    wanted = list(project["dependencies"])
    for extra in project["optional-dependencies"].values():
        wanted += [
            requirement for requirement in extra if Requirement(requirement).name != "lineproof"
        ]
    allowed: dict[str, str] = {}
    for requirement in map(Requirement, wanted):
        allowed[canonicalize_name(requirement.name)] = str(requirement.specifier)

    beside: set[str] = set()
    open_names = list(allowed)
    while open_names:
        name = open_names.pop()
        if name in beside:
            continue
        beside.add(name)
        open_names += [canonicalize_name(needed) for needed in requirements_of(name)]
    missing = beside - set(locked)
    if missing:
        raise NotInstalledError(
            f"not in tools/requirements-test.txt: {', '.join(sorted(missing))}; run make lock"
        )
    components = {
        name: package(name, version, allowed.get(name, "")) for name, version in locked.items()
    }
    return (
        by_name(component for name, component in components.items() if name in beside),
        by_name(component for name, component in components.items() if name not in beside),
    )


def npm_packages() -> tuple[tuple[Component, ...], tuple[Component, ...]]:
    """The npm packages in the page, and those that only build or test it."""
    web = ROOT / "web"
    locked = json.loads((web / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    inside: list[Component] = []
    building: list[Component] = []
    for path, entry in locked.items():
        if not path or entry.get("optional"):
            continue
        name = path.rpartition("node_modules/")[2]
        ships = not entry.get("dev") and name not in NOT_IN_PAGE
        (inside if ships else building).append(npm_package(web / path, name, entry, ships))
    return by_name(inside), by_name(building)


def npm_package(folder: Path, name: str, entry: Mapping[str, Any], ships: bool) -> Component:
    """:raises UnknownLicenceError: if the package declares none"""
    manifest = folder / "package.json"
    if not manifest.exists():
        raise NotInstalledError(f"npm package {name} is not installed; run make test-setup")
    declared = json.loads(manifest.read_text(encoding="utf-8"))
    if not isinstance(declared.get("license"), str):
        raise UnknownLicenceError(f"npm package {name} declares no licence")
    return Component(
        name=name,
        version=entry["version"],
        licence=declared["license"],
        homepage=str(declared.get("homepage") or ""),
        text=licence_text(folder, declared["license"]) if ships else "",
    )


def read_lock(path: Path) -> dict[str, str]:
    """Canonical name to version."""
    rows = [line for line in path.read_text(encoding="utf-8").splitlines() if "==" in line]
    return {canonicalize_name(name): version for name, version in (row.split("==") for row in rows)}


def requirements_of(name: str) -> list[str]:
    """Names that the installed package needs, on any platform, without its extras."""
    needed = []
    environment = {key: str(value) for key, value in default_environment().items()}
    for requirement in map(Requirement, installed(name).requires or ()):
        marker = requirement.marker
        # Platforms do not count: what ships on one of them ships.
        of_extra = marker is not None and "extra" in str(marker)
        of_other_platform = (
            marker is not None and not of_extra and re.search("platform|os_name", str(marker))
        )
        if marker is None or of_other_platform or marker.evaluate(environment | {"extra": ""}):
            needed.append(requirement.name)
    return needed


def installed(name: str) -> Any:
    """:raises NotInstalledError: if the package is not here"""
    try:
        return distribution(name)
    except PackageNotFoundError as error:
        raise NotInstalledError(f"{name} is not installed; run make setup") from error


def package(name: str, version: str, allowed: str) -> Component:
    """:raises UnknownLicenceError: if the package declares none that is known here"""
    metadata = installed(name).metadata
    return Component(
        name=name,
        version=version,
        licence=package_licence(name, metadata),
        homepage=package_homepage(metadata),
        allowed=allowed,
    )


def package_licence(name: str, metadata: Any) -> str:
    """The SPDX expression: declared, or by its older spelling, or read by hand."""
    declared: str | None = metadata["License-Expression"]
    if declared:
        return declared
    classifiers = metadata.get_all("Classifier") or []
    old = [
        metadata["License"] or "",
        *(c.rsplit(" :: ", 1)[-1] for c in classifiers if c.startswith("License")),
    ]
    for spelling in old:
        if spelling in SPELLINGS:
            return SPELLINGS[spelling]
    if name in READ_BY_HAND:
        return READ_BY_HAND[name]
    raise UnknownLicenceError(
        f"{name} declares no known licence (it says {old}); add it to SPELLINGS or READ_BY_HAND"
    )


def package_homepage(metadata: Any) -> str:
    """The homepage, or else where the sources are."""
    rows = (row.split(", ", 1) for row in metadata.get_all("Project-URL") or ())
    links = {label.lower().replace("-", " "): url for label, url in rows}
    for label in ("homepage", "source", "source code", "repository", "github", "documentation"):
        if label in links:
            return str(links[label])
    return str(metadata["Home-page"] or "")


def by_name(components: Iterable[Component]) -> tuple[Component, ...]:
    """In alphabetical order."""
    return tuple(
        sorted(components, key=lambda component: (component.name.lower(), component.version))
    )


def take_inventory() -> Inventory:
    """Everything that the project uses now."""
    in_wheel, building_crates = crates()
    beside, building_packages = packages()
    in_page, building_page = npm_packages()
    in_wheel = (*in_wheel, letters())
    return Inventory(in_wheel, in_page, beside, building_crates, building_packages, building_page)


def document(inventory: Inventory) -> str:
    """THIRD_PARTY.md as it should be."""
    plain = ("component", "version", "licence", "homepage")
    parts = [
        INTRO,
        SHIPS_IN,
        table(plain, [row(c) for c in inventory.in_wheel]),
        SHIPS_IN_PAGE,
        table(plain, [row(c) for c in inventory.in_page]),
        SHIPS_BESIDE,
        table(
            ("component", "allowed", "tested", "licence", "homepage"),
            [(c.name, c.allowed, c.version, c.licence, c.homepage) for c in inventory.beside],
        ),
        ONLY_BUILDS,
        table(plain, [row(c) for c in inventory.building_crates]),
        table(plain, [row(c) for c in inventory.building_packages]),
        table(plain, [row(c) for c in inventory.building_page]),
        table(("tool", "licence", "homepage", "what for"), TOOLS),
        TEXTS,
        *licence_texts((*inventory.in_wheel, *inventory.in_page)),
    ]
    return "\n".join(parts)


def row(component: Component) -> tuple[str, str, str, str]:
    """One row of the plain tables."""
    return component.name, component.version, component.licence, component.homepage


def table(heads: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A Markdown table."""
    ruled = [heads, ["---"] * len(heads), *rows]
    return "".join(f"| {' | '.join(cells)} |\n" for cells in ruled)


def licence_texts(components: Iterable[Component]) -> list[str]:
    """Each different text once, under the names of the components that it belongs to."""
    names: dict[str, list[str]] = {}
    for component in components:
        if component.licence == "GPL-3.0-or-later":
            continue
        if not component.text:
            raise UnknownLicenceError(f"{component.name} brings no licence text")
        tidy = "\n".join(line.rstrip() for line in component.text.strip().splitlines())
        names.setdefault(tidy, []).append(component.name)
    return [f"### {', '.join(owners)}\n\n```text\n{text}\n```\n" for text, owners in names.items()]


def problems(inventory: Inventory, written: str) -> list[str]:
    """What is wrong with the written document, and with the licences of what ships."""
    found = []
    for component in (*inventory.in_wheel, *inventory.in_page, *inventory.beside):
        if not is_compatible(component.licence):
            found.append(
                f"{component.name} ships under {component.licence}, "
                "which does not go with GPL-3.0-or-later"
            )
    wanted = document(inventory)
    for line in difflib.unified_diff(written.splitlines(), wanted.splitlines(), lineterm="", n=0):
        if line.startswith("+") and not line.startswith("+++"):
            found.append(f"THIRD_PARTY.md lacks: {line[1:]}")
        elif line.startswith("-") and not line.startswith("---"):
            found.append(f"THIRD_PARTY.md has, wrongly: {line[1:]}")
    return found


MIT = """\
Permission is hereby granted, free of charge, to any person obtaining a copy of this software
and associated documentation files (the "Software"), to deal in the Software without
restriction, including without limitation the rights to use, copy, modify, merge, publish,
distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the
Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or
substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING
BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND
NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM,
DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM,
OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
"""


def main(arguments: Sequence[str] | None = None) -> int:
    """Writes or checks the document. Exit status 1: the check failed."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").partition("\n")[0])
    parser.add_argument("--check", action="store_true", help="change nothing; fail when stale")
    parser.add_argument("--file", type=Path, default=ROOT / "THIRD_PARTY.md", help="the document")
    options = parser.parse_args(arguments)
    try:
        inventory = take_inventory()
        text = document(inventory)
    except (UnknownLicenceError, NotInstalledError) as error:
        print(error, file=sys.stderr)
        return 1
    written = options.file.read_text(encoding="utf-8") if options.file.exists() else ""
    if not options.check and written != text:  # an unchanged file keeps its date: no new wheel
        options.file.write_text(text, encoding="utf-8")
        written = text
    found = problems(inventory, written)
    for problem in found:
        print(problem, file=sys.stderr)
    if found:
        print("to write it anew: make third-party", file=sys.stderr)
        return 1
    ships = len(inventory.in_wheel) + len(inventory.in_page) + len(inventory.beside)
    print(f"licences: {ships} components ship, each compatible with GPL-3.0-or-later and listed")
    return 0


if __name__ == "__main__":
    sys.exit(main())
