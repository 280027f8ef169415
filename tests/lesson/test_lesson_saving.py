"""Saving on real disks: whole or not at all, one writer, nothing lost."""

from __future__ import annotations

import errno
import hashlib
import os
import random
import signal
import stat
import subprocess
import sys
import tempfile
import textwrap
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

from lineproof.lesson import Lesson, edit, errors
from lineproof.lesson.lock import WriterLock
from lineproof.lesson.save import replace_file, save, save_as, versions
from lineproof.lesson.where import VARIABLE

TEXT = "1. e4 e5\r\n{caf\u00e9} 2. Nc3 *\r\n"


@pytest.fixture(autouse=True)
def data_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv(VARIABLE, str(tmp_path / "data"))
    return tmp_path / "data"


@pytest.fixture
def lesson(tmp_path: Path) -> Lesson:
    folder = tmp_path / "vienna"
    folder.mkdir()
    (folder / "lines.pgn").write_bytes(TEXT.encode())
    return Lesson.open(folder)


def file_of(lesson: Lesson) -> Path:
    assert lesson.path is not None
    return lesson.path


def left_over(folder: Path) -> list[str]:
    return [path.name for path in folder.rglob("*.saving")]


def longer(lesson: Lesson) -> Lesson:
    return edit.add_line(lesson.lines()[-1], ["Nf6", "f4"])[0]


@pytest.mark.parametrize(
    "mark_and_encoding", [("", "utf-8"), ("", "latin-1"), ("\ufeff", "utf-16-be")]
)
def test_an_untouched_lesson_is_saved_byte_for_byte(
    tmp_path: Path, mark_and_encoding: tuple[str, str]
) -> None:
    mark, encoding = mark_and_encoding
    data = (mark + TEXT).encode(encoding)
    file = tmp_path / "a.pgn"
    file.write_bytes(data)
    before = file.stat()
    save(Lesson.open(file))
    assert file.read_bytes() == data
    assert file.stat().st_mtime_ns == before.st_mtime_ns
    assert file.stat().st_ino == before.st_ino


def test_only_the_edit_is_written(lesson: Lesson) -> None:
    saved = save(longer(lesson))
    assert file_of(lesson).read_bytes() == TEXT.replace(" *", " Nf6 3. f4 *").encode()
    assert Lesson.open(lesson.folder or "").text == saved.text
    assert left_over(lesson.folder or Path()) == []


def test_the_newest_version_is_always_the_text_before(lesson: Lesson) -> None:
    first = save(longer(lesson))
    back = save(first.with_text(lesson.text))
    save(back.with_text("1. d4 *"))
    kept = versions(lesson)
    texts = [v.path.read_bytes() for v in kept]
    assert texts == [TEXT.encode(), first.source.encode(), TEXT.encode()]
    assert kept[0].digest == hashlib.sha256(TEXT.encode()).hexdigest()[:16]
    assert kept[0].saved <= kept[1].saved


def test_a_text_kept_by_a_save_that_failed_is_kept_once(
    lesson: Lesson, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(made: Path, to: Path) -> None:
        if to == file_of(lesson):
            raise OSError(errno.ENOSPC, "no space left on device")
        made.rename(to)

    with monkeypatch.context() as patched:
        patched.setattr(Path, "replace", refuse)
        with pytest.raises(errors.SaveError):
            save(longer(lesson))
    assert [v.path.read_bytes() for v in versions(lesson)] == [TEXT.encode()]
    save(longer(lesson))
    assert [v.path.read_bytes() for v in versions(lesson)] == [TEXT.encode()]


def test_the_order_of_versions_does_not_hang_on_the_clock(lesson: Lesson) -> None:
    first = save(longer(lesson))
    (kept,) = versions(lesson)
    later = kept.path.name.replace(kept.saved.strftime("%Y"), "2999", 1)
    kept.path.rename(kept.path.with_name(later))
    save(first.with_text("1. d4 *"))
    assert [v.path.read_bytes() for v in versions(lesson)] == [TEXT.encode(), first.source.encode()]


def test_a_file_of_another_origin_in_the_history_is_no_version(lesson: Lesson) -> None:
    save(longer(lesson))
    (kept,) = versions(lesson)
    impossible = f"lines-99999999T999999999999Z-{kept.digest}.pgn"
    (kept.path.parent / impossible).write_bytes(b"1. d4 *")
    assert versions(lesson) == (kept,)


def test_the_history_of_a_linked_file_is_found(tmp_path: Path, lesson: Lesson) -> None:
    folder = tmp_path / "linked"
    folder.mkdir()
    (folder / "lines.pgn").symlink_to(file_of(lesson).rename(tmp_path / "elsewhere.pgn"))
    linked = Lesson.open(folder)
    save(longer(linked))
    assert [v.path.read_bytes() for v in versions(linked)] == [TEXT.encode()]


def test_only_what_was_left_of_the_same_file_is_cleaned_up(tmp_path: Path) -> None:
    file = tmp_path / "a.pgn"
    file.write_bytes(TEXT.encode())
    digits = "0123456789abcdef"
    others = [f".ab.pgn.{digits}.saving", f".a.b.pgn.{digits}.saving", ".a notes.saving"]
    for name in (*others, f".a.pgn.{digits}.saving"):
        (tmp_path / name).write_bytes(b"")
    save(longer(Lesson.open(file)))
    assert sorted(left_over(tmp_path)) == sorted(others)


def test_the_history_of_a_bare_file_is_in_the_user_folder(
    tmp_path: Path, data_folder: Path
) -> None:
    file = tmp_path / "a [1].pgn"
    file.write_bytes(TEXT.encode())
    lesson = Lesson.open(file)
    save(longer(lesson))
    (kept,) = versions(lesson)
    assert kept.path.is_relative_to(data_folder / "bare")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["a [1].pgn", "data"]


def test_permissions_stay(lesson: Lesson) -> None:
    file = file_of(lesson)
    file.chmod(0o640)
    save(longer(lesson))
    assert stat.S_IMODE(file.stat().st_mode) == 0o640


def test_a_linked_file_stays_a_link(tmp_path: Path) -> None:
    real = tmp_path / "real.pgn"
    real.write_bytes(TEXT.encode())
    link = tmp_path / "link.pgn"
    link.symlink_to(real)
    save(longer(Lesson.open(link)))
    assert link.is_symlink()
    assert b"Nf6" in real.read_bytes()


def test_a_file_changed_since_is_not_written_over(lesson: Lesson) -> None:
    file = file_of(lesson)
    file.write_bytes(b"1. d4 *")
    with pytest.raises(errors.ChangedOnDiskError) as caught:
        save(longer(lesson))
    assert str(caught.value) == (
        f"{lesson.name}: the file was changed since it was read;"
        " open it again and repeat the edit, or save under another name"
    )
    assert file.read_bytes() == b"1. d4 *"


def test_a_file_deleted_since_is_told(lesson: Lesson) -> None:
    file_of(lesson).unlink()
    with pytest.raises(errors.ChangedOnDiskError, match="deleted"):
        save(longer(lesson))


def test_two_saves_in_a_row_know_each_other(lesson: Lesson) -> None:
    save(edit.add_move(save(longer(lesson)).lines()[-1], "exf4")[0])
    assert b"3. f4 exf4 *" in file_of(lesson).read_bytes()


def test_save_as_makes_a_new_file_and_no_other(lesson: Lesson, tmp_path: Path) -> None:
    copy = save_as(lesson, tmp_path / "copy.pgn")
    assert (tmp_path / "copy.pgn").read_bytes() == TEXT.encode()
    save(longer(copy))
    with pytest.raises(errors.ChangedOnDiskError, match="has come about"):
        save_as(lesson, tmp_path / "copy.pgn")


def test_a_character_that_the_encoding_lacks_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "a.pgn"
    file.write_bytes("{caf\u00e9 } 1. e4 *".encode("latin-1"))
    lesson = Lesson.open(file)
    with pytest.raises(errors.EncodingError) as caught:
        edit.add_comment(lesson.places[1], "\u221e")
    assert str(caught.value) == (
        f"{file}:1:14: the file's encoding (latin-1) has no '\u221e'; save the file as UTF-8"
    )


def test_a_lesson_can_be_turned_into_utf8(tmp_path: Path) -> None:
    file = tmp_path / "a.pgn"
    file.write_bytes("{caf\u00e9 } 1. e4 *".encode("latin-1"))
    lesson = Lesson.open(file).as_utf8()
    save(edit.add_comment(lesson.places[1], "\u221e")[0])
    assert file.read_bytes() == "{caf\u00e9 } 1. e4 {\u221e} *".encode()


def test_latin_text_that_would_read_back_as_utf8_is_refused(tmp_path: Path) -> None:
    file = tmp_path / "a.pgn"
    file.write_bytes("{\u00c3\u00a9} {caf\u00e9 } 1. e4 *".encode("latin-1"))
    lesson = Lesson.open(file)
    changed, _ = edit.change_words(lesson.comments[1], "coffee")
    with pytest.raises(errors.EncodingError, match="read back as UTF-8"):
        save(changed)


@pytest.mark.parametrize("encoding", ["utf-8", "latin-1"])
def test_what_could_not_be_opened_again_is_not_saved(tmp_path: Path, encoding: str) -> None:
    file = tmp_path / "a.pgn"
    old = "1. e4 {caf\u00e9 } *".encode(encoding)
    file.write_bytes(old)
    changed = Lesson.open(file).with_text("1. e4 {caf\u00e9 \x01\x02\x03} *")
    with pytest.raises(errors.EncodingError, match="could not be opened again: this is no text"):
        save(changed)
    assert file.read_bytes() == old


def test_text_that_begins_like_a_mark_is_not_saved(tmp_path: Path) -> None:
    file = tmp_path / "a.pgn"
    file.write_bytes(b"1. e4 *")
    lesson = Lesson.open(file)
    with pytest.raises(errors.EncodingError, match="would be read back as"):
        save(lesson.with_text("\ufeff1. e4 *"))
    assert file.read_bytes() == b"1. e4 *"


def test_a_lesson_in_no_file_cannot_be_saved() -> None:
    with pytest.raises(errors.SaveError, match="in no file"):
        save(Lesson.from_text("1. e4 *"))


# Disks that refuse


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    """A real file system of 64 KiB."""
    place = tmp_path / "disk"
    place.mkdir()
    made = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=64k", "tmpfs", place], capture_output=True
    )
    if made.returncode:
        pytest.skip("file systems can be mounted here by root only")
    yield place
    subprocess.run(["umount", "-l", place], check=True)


def test_a_full_disk_leaves_the_old_file_whole(small_disk: Path) -> None:
    folder = small_disk / "vienna"
    folder.mkdir()
    old = b"1. e4 e5 *\n" + b"{" + b"x" * 20_000 + b"}\n"
    (folder / "lines.pgn").write_bytes(old)
    lesson = Lesson.open(folder)
    big, _ = edit.add_comment(lesson.places[1], "y" * 60_000)
    with pytest.raises(errors.SaveError) as caught:
        save(big)
    assert str(caught.value) == (
        f"{lesson.name}: the file could not be saved (no space left on device);"
        " the old one is whole; make room, or make the folder writable, and save again"
    )
    assert (folder / "lines.pgn").read_bytes() == old
    assert left_over(folder) == []
    small, _ = edit.add_comment(lesson.places[1], "fits")
    save(small)
    assert b"{fits}" in (folder / "lines.pgn").read_bytes()


def test_a_disk_full_already_for_the_history_leaves_the_old_file_whole(small_disk: Path) -> None:
    folder = small_disk / "vienna"
    folder.mkdir()
    old = b"1. e4 e5 *\n" + b"{" + b"x" * 45_000 + b"}\n"
    (folder / "lines.pgn").write_bytes(old)
    lesson = Lesson.open(folder)
    with pytest.raises(errors.SaveError, match="no space left"):
        save(edit.add_comment(lesson.places[1], "fits not")[0])
    assert (folder / "lines.pgn").read_bytes() == old
    assert left_over(folder) == []


def test_a_read_only_disk_is_named(small_disk: Path) -> None:
    folder = small_disk / "vienna"
    folder.mkdir()
    (folder / "lines.pgn").write_bytes(TEXT.encode())
    lesson = Lesson.open(folder)
    subprocess.run(["mount", "-o", "remount,ro", small_disk], check=True)
    with pytest.raises(errors.SaveError) as caught:
        save(longer(lesson))
    assert str(caught.value) == (
        f"{lesson.name}: the lesson cannot be locked for writing (read-only file system);"
        " make its folder writable"
    )
    assert (folder / "lines.pgn").read_bytes() == TEXT.encode()
    assert Lesson.open(folder).text == TEXT  # readers need no lock


def test_a_folder_that_may_not_be_written_is_named() -> None:
    """In a child as another user where the tests run as root, whom permissions do not stop."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        file = folder / "lines.pgn"
        file.write_bytes(TEXT.encode())
        folder.chmod(0o555)
        read_end, write_end = os.pipe()
        child = os.fork()
        if child == 0:
            try:
                if os.geteuid() == 0:
                    os.setuid(65534)
                replace_file(file, b"1. d4 *", name="lines.pgn", expected=TEXT.encode())
                message = "written"
            except Exception as error:
                message = str(error)
            os.write(write_end, message.encode())
            os._exit(0)
        os.close(write_end)
        with os.fdopen(read_end, "rb") as pipe:
            message = pipe.read().decode()
        os.waitpid(child, 0)
        folder.chmod(0o755)
        assert message == (
            "lines.pgn: the file could not be saved (permission denied); the old one is whole;"
            " make room, or make the folder writable, and save again"
        )
        assert file.read_bytes() == TEXT.encode()
        assert left_over(folder) == []


# Other processes


def run(code: str, *arguments: str) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", textwrap.dedent(code), *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )


SAVER = """
    import sys
    from lineproof.lesson import Lesson
    from lineproof.lesson.save import save
    lesson = Lesson.open(sys.argv[1])
    body = "{" + "x" * 200_000 + "} *"
    number = 0
    while True:
        number += 1
        lesson = save(lesson.with_text(f"1. e4 e5 2. Nc3 {{{number}}} {body} ; {number}"))
        if number == 1:
            print("ready", flush=True)
"""


def test_a_writer_killed_at_any_moment_leaves_the_old_file_or_the_new(lesson: Lesson) -> None:
    folder = lesson.folder
    assert folder is not None
    seen = set()
    rng = random.Random(1)
    for _ in range(20):
        writer = run(SAVER, str(folder))
        assert writer.stdout is not None
        assert writer.stdout.readline() == "ready\n"
        time.sleep(rng.uniform(0, 0.05))
        writer.send_signal(signal.SIGKILL)
        writer.wait(timeout=60)
        writer.stdout.close()
        text = Lesson.open(folder).text
        number = text[text.index("{") + 1 : text.index("}")]
        body = "{" + "x" * 200_000 + "} *"
        assert text == f"1. e4 e5 2. Nc3 {{{number}}} {body} ; {number}"
        seen.add(number)
        for version in versions(lesson):
            data = version.path.read_bytes()
            assert hashlib.sha256(data).hexdigest()[:16] == version.digest
    assert len(seen) > 1  # they were killed at different saves
    # The lock is free, what was left half written is cleaned up by the next save.
    save(Lesson.open(folder).with_text("1. d4 *"))
    assert left_over(folder) == []


HOLDER = """
    import sys, time
    from lineproof.lesson import Lesson
    from lineproof.lesson.lock import WriterLock
    with WriterLock(Lesson.open(sys.argv[1])):
        print("held", flush=True)
        time.sleep(600)
"""


def test_a_second_writer_is_refused_until_the_first_dies(lesson: Lesson) -> None:
    assert lesson.folder is not None
    holder = run(HOLDER, str(lesson.folder))
    try:
        assert holder.stdout is not None
        assert holder.stdout.readline() == "held\n"
        with pytest.raises(errors.LockedError) as caught:
            save(longer(lesson))
        message = str(caught.value)
        assert message.startswith(
            f"{lesson.name}: another process is writing this lesson (process {holder.pid}, since 2"
        )
        assert message.endswith("; close the lesson there, or wait")
        assert file_of(lesson).read_bytes() == TEXT.encode()
        # Readers never wait.
        started = time.monotonic()
        assert Lesson.open(lesson.folder).text == TEXT
        assert time.monotonic() - started < 5
    finally:
        holder.kill()
        holder.wait(timeout=60)
        if holder.stdout is not None:
            holder.stdout.close()
    save(longer(lesson))
    assert file_of(lesson).read_bytes() != TEXT.encode()


def test_one_process_does_not_lock_itself_out(lesson: Lesson) -> None:
    with WriterLock(lesson):
        save(longer(lesson))
    with WriterLock(lesson):
        pass


def test_replacing_a_file_checks_what_it_held(tmp_path: Path) -> None:
    file = tmp_path / "a"
    replace_file(file, b"one", name="a")
    replace_file(file, b"two", name="a", expected=b"one")
    with pytest.raises(errors.ChangedOnDiskError):
        replace_file(file, b"three", name="a", expected=b"one")
    assert file.read_bytes() == b"two"
