"""Names and files that no lesson can have: each is refused by its own error, and at once."""

from __future__ import annotations

import os
import tempfile
from pathlib import Path

import pytest

from lineproof.lesson import Lesson, errors, folder
from lineproof.lesson.save import replace_file, save_as


def refused(path: Path | str, kind: type[errors.LessonError]) -> str:
    with pytest.raises(kind) as caught:
        Lesson.open(path)
    assert type(caught.value) is kind
    return str(caught.value).removeprefix(os.fspath(path))


def test_a_name_that_is_too_long_is_refused() -> None:
    message = refused("x" * 5000, errors.UnreadableError)
    assert message == ": the file cannot be read (file name too long); check who may read it"


@pytest.mark.parametrize("name", ["a\0b.pgn", "\ud800.pgn"])
def test_a_name_that_no_file_can_have_is_refused(name: str, tmp_path: Path) -> None:
    with pytest.raises(errors.NoSuchFileError, match="no file can have such a name"):
        Lesson.open(name)
    lesson = Lesson.from_text("1. e4 *")
    with pytest.raises(errors.SaveError, match="no file can have such a name"):
        save_as(lesson, tmp_path / name)
    with pytest.raises(errors.LessonError, match="no file can have such a name"):
        folder.new(tmp_path / name)


def test_messages_show_any_name_on_one_line_of_text() -> None:
    error = errors.NoSuchFileError("there is no such file", path="a\n\udce9\u00e9.pgn")
    assert str(error) == "a\\n\\udce9\u00e9.pgn: there is no such file; check the name"


def test_a_file_is_not_looked_for_below_a_file(tmp_path: Path) -> None:
    (tmp_path / "a.pgn").write_text("1. e4 *")
    refused(tmp_path / "a.pgn" / "b.pgn", errors.NoSuchFileError)


def test_devices_and_pipes_are_not_read(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.pgn")
    for path in (tmp_path / "pipe.pgn", Path("/dev/zero")):
        message = refused(path, errors.UnreadableError)
        assert message == ": this is no ordinary file; put the text into a file"


@pytest.mark.parametrize("name", ["lines.pgn", "lesson.toml"])
def test_a_folder_in_place_of_a_file_of_the_lesson_is_refused(tmp_path: Path, name: str) -> None:
    (tmp_path / "lines.pgn").write_text("1. e4 *")
    (tmp_path / name).unlink(missing_ok=True)
    (tmp_path / name).mkdir()
    message = refused(tmp_path, errors.UnreadableError)
    assert message == f"/{name}: this is a folder; give a file"


@pytest.mark.parametrize("name", ["lines.pgn", "lesson.toml"])
def test_a_link_that_leads_nowhere_is_refused(tmp_path: Path, name: str) -> None:
    (tmp_path / "lines.pgn").write_text("1. e4 *")
    (tmp_path / name).unlink(missing_ok=True)
    (tmp_path / name).symlink_to("nowhere")
    message = refused(tmp_path, errors.NoSuchFileError)
    assert message == f"/{name}: there is no such file; check the name"


def test_links_that_lead_to_each_other_are_refused(tmp_path: Path) -> None:
    (tmp_path / "a.pgn").symlink_to("b.pgn")
    (tmp_path / "b.pgn").symlink_to("a.pgn")
    assert "too many levels" in refused(tmp_path / "a.pgn", errors.UnreadableError)


def test_a_pipe_in_the_place_of_a_saved_file_is_not_read(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "a.pgn")
    with pytest.raises(errors.UnreadableError, match="no ordinary file"):
        replace_file(tmp_path / "a.pgn", b"1. d4 *", name="a.pgn", expected=b"1. e4 *")


def test_a_folder_that_may_not_be_entered_is_named() -> None:
    """In a child as another user where the tests run as root, whom permissions do not stop."""
    with tempfile.TemporaryDirectory() as name:
        closed = Path(name) / "closed"
        closed.mkdir(mode=0o700)
        (closed / "lines.pgn").write_text("1. e4 *")
        closed.chmod(0)
        Path(name).chmod(0o755)
        read_end, write_end = os.pipe()
        child = os.fork()
        if child == 0:
            shown = []
            try:
                if os.geteuid() == 0:
                    os.setuid(65534)
                for path in (closed, closed / "lines.pgn"):
                    try:
                        Lesson.open(path)
                        shown.append("opened")
                    except Exception as error:
                        shown.append(f"{type(error).__name__} {error}")
                try:
                    folder.new(Path(name) / "closed" / "new" / "lesson")
                    shown.append("made")
                except Exception as error:
                    shown.append(f"{type(error).__name__} {error}")
            finally:
                os.write(write_end, "\n".join(shown).encode())
                os._exit(0)
        os.close(write_end)
        with os.fdopen(read_end, "rb") as pipe:
            shown = pipe.read().decode().splitlines()
        os.waitpid(child, 0)
        closed.chmod(0o755)
    assert len(shown) == 3
    for line in shown:
        assert line.startswith(f"UnreadableError {name}/closed")
        assert "the file cannot be read (permission denied); check who may read it" in line
