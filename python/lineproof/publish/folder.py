"""Writing products into a folder: all of a run together, or nothing.

Each product has a folder of its own there, with a list of its files and their SHA-256 sums in the form of `sha256sum`
(common practice). New folders are made whole beside the old ones and then take their names; an error before the last has
its name gives every old one back. Files in such a folder that are not in its list are the author's and stay; one that is in
it and was changed since is not written over.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import re
import secrets
import shutil
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from lineproof.lesson.disk import reason

from .product import Files, PublishError

SUMS: Final = "SHA256SUMS"
STAGING: Final = ".publishing-"
_STAGED = re.compile(re.escape(STAGING) + "[0-9a-f]{16}")
_SUM = re.compile(r"(?P<sum>[0-9a-f]{64})  (?P<name>[^/\\]+)")


def with_sums(files: Files) -> Files:
    """The files and their list; nothing for no files."""
    if not files:
        return {}
    lines = (f"{hashlib.sha256(files[name]).hexdigest()}  {name}\n" for name in sorted(files))
    return {**files, SUMS: "".join(lines).encode()}


def check_folder(out: Path) -> None:
    """Refuses early what cannot become a folder of products.

    :raises PublishError: when it is a file, or may not be written.
    """
    if out.exists() and not out.is_dir():
        raise PublishError("this is a file", path=str(out), hint="give a folder with --out")
    there = next(path for path in (out, *out.absolute().parents) if path.exists())
    if not there.is_dir() or not os.access(there, os.W_OK | os.X_OK):
        raise _refused(out, "permission denied" if there.is_dir() else f"{there} is a file")


def write(out: Path, products: Mapping[str, Files]) -> None:
    """Writes products, each by its name, in place of what stands there of them. A product without files goes away.

    :raises PublishError: when they cannot be written; all that was there is whole then.
    """
    from filelock import FileLock

    missing = [path for path in (out, *out.absolute().parents) if not path.exists()]
    staging = out / f"{STAGING}{secrets.token_hex(8)}"
    try:
        out.mkdir(parents=True, exist_ok=True)
        _clear_up(out)
        staging.mkdir()
        with FileLock(staging / "lock", timeout=0):
            for name, files in products.items():
                kept = _authors(out / name, files)
                _stage(staging / "new" / name, files, kept)
            (staging / "old").mkdir(exist_ok=True)
            _exchange(out, staging, tuple(products))
            missing = []
    except OSError as error:
        raise _refused(out, reason(error)) from error
    finally:
        shutil.rmtree(staging, ignore_errors=True)
        for path in missing:
            with contextlib.suppress(OSError):
                path.rmdir()


def _refused(out: Path, why: str) -> PublishError:
    return PublishError(
        f"the files cannot be written ({why}); what was there is whole",
        path=str(out),
        hint="make room, make the folder writable, or choose another with --out",
    )


def _authors(folder: Path, files: Files) -> tuple[Path, ...]:
    """What somebody else put into a product's folder.

    :raises PublishError: when it would be written over, or a file of ours was changed there.
    """
    if not folder.exists() and not folder.is_symlink():
        return ()
    if not folder.is_dir() or folder.is_symlink():
        raise _in_the_way(folder, "this is no folder of ours")
    ours = _listed(folder)
    kept = []
    for path in sorted(folder.iterdir()):
        if path.name == SUMS:
            continue
        if path.name not in ours:
            if path.name in files:
                raise _in_the_way(path, "this was not published by us")
            kept.append(path)
        elif not path.is_file() or hashlib.sha256(path.read_bytes()).hexdigest() != ours[path.name]:
            raise _in_the_way(path, "this was changed since it was published")
    return tuple(kept)


def _in_the_way(path: Path, what: str) -> PublishError:
    return PublishError(
        f"{what}, and would be written over",
        path=str(path),
        hint="move it away, or choose another folder with --out",
    )


def _listed(folder: Path) -> dict[str, str]:
    try:
        text = (folder / SUMS).read_text(encoding="utf-8")
    except (FileNotFoundError, UnicodeDecodeError):
        return {}
    return {found["name"]: found["sum"] for found in map(_SUM.fullmatch, text.split("\n")) if found}


def _stage(folder: Path, files: Files, kept: tuple[Path, ...]) -> None:
    if not files and not kept:
        return
    folder.mkdir(parents=True)
    for name, data in files.items():
        with (folder / name).open("xb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
    for path in kept:
        if path.is_dir() and not path.is_symlink():
            shutil.copytree(path, folder / path.name, symlinks=True)
        else:
            shutil.copy2(path, folder / path.name, follow_symlinks=False)


def _exchange(out: Path, staging: Path, names: tuple[str, ...]) -> None:
    begun: list[str] = []
    try:
        for name in names:
            begun.append(name)
            here, new = out / name, staging / "new" / name
            if here.exists():
                here.rename(staging / "old" / name)
            if new.exists():
                new.rename(here)
    except BaseException:
        for name in begun:
            _give_back(out, staging, name)
        raise


def _give_back(out: Path, staging: Path, name: str) -> None:
    """Puts an old folder where it was; a new one that is there goes."""
    here, new, old = out / name, staging / "new" / name, staging / "old" / name
    if here.exists() and not new.exists():
        here.rename(new)
    if old.exists():
        old.rename(here)


def _clear_up(out: Path) -> None:
    """Takes away what a process that was killed has left; an old folder that had lost its name gets it back."""
    from filelock import FileLock, Timeout

    for left in out.iterdir():
        if not _STAGED.fullmatch(left.name) or left.is_symlink() or not left.is_dir():
            continue
        try:
            with FileLock(left / "lock", timeout=0):
                for old in (left / "old").glob("*"):
                    if not (out / old.name).exists():
                        old.rename(out / old.name)
        except Timeout:
            continue  # another process is at work there
        shutil.rmtree(left, ignore_errors=True)
