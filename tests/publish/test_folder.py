"""Products are written all together or not at all, and never over what is not ours."""

from __future__ import annotations

import errno
import hashlib
import os
import subprocess
import sys
from pathlib import Path

import pytest

from lineproof.publish import PublishError, folder
from lineproof.publish.folder import SUMS, check_folder, with_sums, write

OLD = {
    "pgn": with_sums({"a.pgn": b"old a", "b.pgn": b"old b"}),
    "epd": with_sums({"c.epd": b"old c"}),
}
NEW = {
    "pgn": with_sums({"a.pgn": b"new a"}),
    "epd": with_sums({"c.epd": b"new c", "d.epd": b"new d"}),
}


def tree(out: Path) -> dict[str, bytes]:
    """Every file below a folder, hidden ones too."""
    return {str(p.relative_to(out)): p.read_bytes() for p in sorted(out.rglob("*")) if p.is_file()}


def flat(products: dict[str, dict[str, bytes]]) -> dict[str, bytes]:
    return {
        f"{product}/{name}": data
        for product, files in products.items()
        for name, data in files.items()
    }


def test_products_are_there_and_nothing_else(tmp_path: Path) -> None:
    out = tmp_path / "a" / "b"
    write(out, OLD)
    assert tree(out) == flat(OLD)
    assert [path.name for path in out.iterdir() if path.name.startswith(".")] == []


def test_the_list_of_sums_is_one_that_other_programs_check(tmp_path: Path) -> None:
    write(tmp_path, OLD)
    done = subprocess.run(
        ["sha256sum", "-c", "--strict", SUMS], cwd=tmp_path / "pgn", capture_output=True, text=True
    )
    assert (done.returncode, done.stdout) == (0, "a.pgn: OK\nb.pgn: OK\n")


def test_a_new_edition_takes_the_place_of_the_old_and_leaves_other_products(tmp_path: Path) -> None:
    write(tmp_path, OLD)
    write(tmp_path, {"pgn": NEW["pgn"]})
    assert tree(tmp_path) == flat({"pgn": NEW["pgn"], "epd": OLD["epd"]})


def test_a_product_with_nothing_to_show_goes_away(tmp_path: Path) -> None:
    write(tmp_path, OLD)
    write(tmp_path, {"epd": with_sums({})})
    assert tree(tmp_path) == flat({"pgn": OLD["pgn"]})


def test_what_the_author_put_there_stays(tmp_path: Path) -> None:
    write(tmp_path, OLD)
    (tmp_path / "notes.txt").write_text("mine")
    (tmp_path / "pgn" / "mine.txt").write_text("mine too")
    (tmp_path / "pgn" / "more").mkdir()
    (tmp_path / "pgn" / "more" / "x").write_text("and this")
    write(tmp_path, NEW)
    assert tree(tmp_path) == flat(NEW) | {
        "notes.txt": b"mine",
        "pgn/mine.txt": b"mine too",
        "pgn/more/x": b"and this",
    }
    write(tmp_path, {"pgn": with_sums({})})
    assert {n for n in tree(tmp_path) if n.startswith("pgn")} == {"pgn/mine.txt", "pgn/more/x"}


@pytest.mark.parametrize(
    ("name", "what"),
    [
        ("a.pgn", "this was changed since it was published"),
        ("d.pgn", "this was not published by us"),
    ],
)
def test_what_somebody_wrote_there_is_not_written_over(
    tmp_path: Path, name: str, what: str
) -> None:
    write(tmp_path, OLD)
    (tmp_path / "pgn" / name).write_text("edited by hand")
    before = tree(tmp_path)
    with pytest.raises(PublishError, match=f"pgn/{name}: {what}"):
        write(tmp_path, {"epd": NEW["epd"], "pgn": with_sums({"d.pgn": b"x"})})
    assert tree(tmp_path) == before


def test_a_link_in_the_place_of_a_product_is_not_followed(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "pgn").symlink_to("elsewhere")
    with pytest.raises(PublishError, match="no folder of ours"):
        write(tmp_path, OLD)
    assert tree(tmp_path) == {}


class Failing:
    """Makes one call of the system that writes or renames fail, as on a full disk; counts them."""

    def __init__(self, patch: pytest.MonkeyPatch, at: int) -> None:
        self.at = at
        self.steps = 0
        self.renamed = self.renamed_before = 0
        self.rename, self.fsync, self.mkdir = os.rename, os.fsync, os.mkdir
        patch.setattr(os, "rename", self.failing_rename)
        patch.setattr(os, "fsync", self.failing_fsync)
        patch.setattr(os, "mkdir", self.failing_mkdir)

    def count(self) -> None:
        self.steps += 1
        if self.steps == self.at:
            self.renamed_before = self.renamed
            raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    def failing_rename(self, path: Path, target: Path) -> None:
        self.count()
        self.renamed += 1
        self.rename(path, target)

    def failing_fsync(self, handle: int) -> None:
        self.count()
        self.fsync(handle)

    def failing_mkdir(self, path: Path, mode: int = 0o777) -> None:
        self.count()
        self.mkdir(path, mode)


def test_whatever_step_fails_the_old_products_are_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    renames_that_failed_after = set()
    for at in range(1, 100):
        out = tmp_path / str(at)
        write(out, OLD)
        with monkeypatch.context() as patch:
            failing = Failing(patch, at)
            try:
                write(out, NEW)
                written = NEW  # nothing failed, or only the making of a folder that is there
            except PublishError as error:
                assert "no space left on device" in str(error)
                written = OLD
                renames_that_failed_after.add(failing.renamed_before)
        assert tree(out) == flat(written)
        assert {path.name for path in out.iterdir()} == {"pgn", "epd"}
        write(out, NEW)
        assert tree(out) == flat(NEW)
        if failing.steps < at:
            break
    assert failing.steps < at
    # each of the four renames that exchange the folders has failed once
    assert {0, 1, 2, 3} <= renames_that_failed_after


def test_a_folder_that_was_made_for_nothing_goes_away(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(handle: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "fsync", full)
    with pytest.raises(PublishError):
        write(tmp_path / "a" / "b", NEW)
    assert list(tmp_path.iterdir()) == []


KILLED = """
import os, sys
from pathlib import Path
from lineproof.publish.folder import with_sums, write
rename, left = Path.rename, int(sys.argv[2])
def dying(self, target):
    global left
    left -= 1
    if left == 0:
        os._exit(9)
    return rename(self, target)
Path.rename = dying
write(Path(sys.argv[1]), {"pgn": with_sums({"a.pgn": b"new a"}), "epd": with_sums({"c.epd": b"new c"})})
"""


@pytest.mark.parametrize("at", [1, 2, 3, 4])
def test_after_a_kill_the_next_run_puts_everything_right(tmp_path: Path, at: int) -> None:
    write(tmp_path, OLD)
    done = subprocess.run([sys.executable, "-c", KILLED, str(tmp_path), str(at)], check=False)
    assert done.returncode == 9
    assert any(path.name.startswith(".publishing-") for path in tmp_path.iterdir())
    write(tmp_path, {"pgn": NEW["pgn"]})
    found = tree(tmp_path)
    assert {n: d for n, d in found.items() if n.startswith("pgn")} == flat({"pgn": NEW["pgn"]})
    rest = {n.removeprefix("epd/"): d for n, d in found.items() if not n.startswith("pgn")}
    assert rest in (OLD["epd"], with_sums({"c.epd": b"new c"}))


def test_what_another_process_is_writing_is_left_alone(tmp_path: Path) -> None:
    from filelock import FileLock

    other = tmp_path / (folder.STAGING + "0" * 16)
    (other / "new").mkdir(parents=True)
    (other / "new" / "x").write_text("in the making")
    code = "import sys; from pathlib import Path; from lineproof.publish.folder import write; write(Path(sys.argv[1]), {})"
    with FileLock(other / "lock"):
        subprocess.run([sys.executable, "-c", code, str(tmp_path)], check=True)
        assert (other / "new" / "x").exists()
    write(tmp_path, {})
    assert not other.exists()


def test_no_folder_can_be_where_a_file_is(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")
    with pytest.raises(PublishError, match="this is a file; give a folder with --out"):
        check_folder(tmp_path / "file")
    with pytest.raises(PublishError, match="is a file"):
        check_folder(tmp_path / "file" / "a" / "b")
    check_folder(tmp_path / "new" / "a")


def test_the_sums_are_those_of_the_files() -> None:
    files = with_sums({"b": b"2", "a": b"1"})
    assert files[SUMS].decode() == "".join(
        f"{hashlib.sha256(files[name]).hexdigest()}  {name}\n" for name in ("a", "b")
    )
