"""Reading files that a user names: every refusal of the system is an error of a lesson.

>>> read_file(Path("no such file"), "no such file")
Traceback (most recent call last):
...
lineproof.lesson.errors.NoSuchFileError: no such file: there is no such file; check the name
"""

from __future__ import annotations

import stat
from pathlib import Path

from lineproof.lesson.errors import LessonError, NoSuchFileError, UnreadableError


def read_file(file: Path, name: str) -> bytes:
    """The bytes of an ordinary file.

    :param name: the path as it was given, for messages.
    :raises NoSuchFileError: when there is none, or the name cannot be one.
    :raises UnreadableError: when the system refuses, or it is a folder, a pipe or a device, whose
        end might never come.
    """
    try:
        mode = file.stat().st_mode
        if stat.S_ISDIR(mode):
            raise UnreadableError("this is a folder", path=name, hint="give a file")
        if not stat.S_ISREG(mode):
            raise UnreadableError(
                "this is no ordinary file", path=name, hint="put the text into a file"
            )
        return file.read_bytes()
    except (OSError, ValueError) as error:
        raise unreadable(error, name) from error


def is_folder(path: Path, name: str) -> bool:
    """Whether this is a folder, or leads to one; not so for a path at which there is nothing.

    :raises NoSuchFileError, UnreadableError: as `read_file`.
    """
    try:
        return stat.S_ISDIR(path.stat().st_mode)
    except (FileNotFoundError, NotADirectoryError):
        return False
    except (OSError, ValueError) as error:
        raise unreadable(error, name) from error


def is_there(path: Path, name: str) -> bool:
    """Whether anything has this name, be it a link that leads nowhere.

    :raises NoSuchFileError, UnreadableError: as `read_file`.
    """
    try:
        path.lstat()
    except (FileNotFoundError, NotADirectoryError):
        return False
    except (OSError, ValueError) as error:
        raise unreadable(error, name) from error
    return True


def unreadable(error: OSError | ValueError, name: str) -> LessonError:
    """The named error for what the system says about a file."""
    if isinstance(error, LessonError):
        return error
    if isinstance(error, (FileNotFoundError, NotADirectoryError)):
        return NoSuchFileError("there is no such file", path=name)
    if not isinstance(error, OSError):  # a zero character, or one that no name can have
        return NoSuchFileError("no file can have such a name", path=name)
    return UnreadableError(f"the file cannot be read ({reason(error)})", path=name)


def reason(error: OSError | ValueError) -> str:
    """What the system says, in a few words."""
    if isinstance(error, OSError):
        return (error.strerror or str(error)).lower()
    return "no file can have such a name"
