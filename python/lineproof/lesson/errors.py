"""What can be wrong with a lesson: every error names the place and the way out."""

from __future__ import annotations

QUOTED = 60
"""Longest quotation of a text in a message, in characters."""


def quoted(value: object) -> str:
    """A value as a message quotes it: as Python writes it, shortened."""
    try:
        text = repr(value)
    except (ValueError, RecursionError):  # more digits, or more levels, than can be written
        return "too long to show"
    return shortened(text)


def shortened(text: str) -> str:
    """A text of at most `QUOTED` characters."""
    return text if len(text) <= QUOTED else text[: QUOTED - 1] + "…"


def _printable(path: str) -> str:
    """A path on one line, in characters that can be written as UTF-8."""
    if path.isprintable():
        return path
    return "".join(c if c.isprintable() else c.encode("unicode_escape").decode() for c in path)


class LessonError(ValueError):
    """Something is wrong with a lesson.

    Its text is ``file:line:column: what is wrong; what to do``. ``line`` and ``column`` count from
    1 and are None where the whole file is meant. ``more`` holds what else is wrong with the same
    text, in text order.
    """

    hint = ""

    def __init__(
        self,
        message: str,
        *,
        path: str,
        line: int | None = None,
        column: int | None = None,
        hint: str | None = None,
        more: tuple[LessonError, ...] = (),
    ) -> None:
        super().__init__(message)
        self.message = message
        self.path = path
        self.line = line
        self.column = column
        self.hint = type(self).hint if hint is None else hint
        self.more = more

    def __str__(self) -> str:
        where = _printable(self.path)
        if self.line is not None:
            where = f"{where}:{self.line}:{self.column}"
        return f"{where}: {self.message}" + (f"; {self.hint}" if self.hint else "")

    def __reduce__(self) -> tuple[object, ...]:
        state = dict(self.__dict__)
        return (_again, (type(self), self.message, state))


def _again(kind: type[LessonError], message: str, state: dict[str, object]) -> LessonError:
    error = kind(message, path="")
    error.__dict__.update(state)
    return error


# Reading a file


class NoSuchFileError(LessonError):
    """There is no file or folder of that name."""

    hint = "check the name"


class UnreadableError(LessonError):
    """The system does not let the file be read."""

    hint = "check who may read it"


class OutsideTextError(LessonError):
    """An offset is outside of the text."""

    hint = "offsets are from 0 to the length of the text"


class EmptyFileError(LessonError):
    """The file holds nothing."""

    hint = "a lesson needs at least one game in PGN"


class BinaryFileError(LessonError):
    """The file is no text."""

    hint = "give the PGN file itself, unpacked"


class NulByteError(LessonError):
    """A zero byte stands in the text."""

    hint = "delete it, or save UTF-16 text with its byte order mark"


class EncodingError(LessonError):
    """The text breaks the encoding that its mark names, or has a character that it lacks."""

    hint = "save the file as UTF-8"


class NotPgnError(LessonError):
    """The text holds no game."""

    hint = "a lesson is a PGN file, or a folder with lines.pgn"


class NotALessonError(LessonError):
    """The folder has neither lesson.toml nor lines.pgn."""

    hint = "make a lesson with `lineproof new`, or give a PGN file"


class MissingLinesError(LessonError):
    """The folder has lesson.toml, but no lines.pgn."""

    hint = "put the lines there as lines.pgn"


# Reading PGN


class PgnError(LessonError):
    """The PGN text has a mistake."""


class IllegalMoveError(PgnError):
    """A move cannot be played."""

    hint = "correct it, or a move before it"


class AmbiguousMoveError(PgnError):
    """A move can mean several."""

    hint = ""


class NotAMoveError(PgnError):
    """A word stands where a move is expected."""

    hint = "put words between { and }, and write moves as in Nf3, exd5, O-O, e8=Q"


class UnclosedCommentError(PgnError):
    """A brace comment runs to the end of the file."""

    hint = "write } where it ends"


class StrayBraceError(PgnError):
    """``}`` without ``{``; braces do not nest."""

    hint = "delete it, or write { where the comment begins; a comment cannot hold braces"


class UnclosedVariationError(PgnError):
    """``(`` without ``)``."""

    hint = "write ) where it ends"


class StrayCloseError(PgnError):
    """``)`` without ``(``."""

    hint = "delete it, or write ( where the variation begins"


class VariationBeforeMoveError(PgnError):
    """A variation replaces the move before it, and there is none."""

    hint = "write the main move first"


class UnclosedTagError(PgnError):
    """A tag pair does not end on its line."""

    hint = 'write it as [Name "value"]'


class WrongFenError(PgnError):
    """The FEN tag is no legal position."""

    hint = "correct the FEN tag"


class VariantError(PgnError):
    """The game follows other rules than those of chess."""

    hint = "a lesson holds games of standard chess only"


PGN_ERRORS: dict[str, type[LessonError]] = {
    "illegal move": IllegalMoveError,
    "ambiguous move": AmbiguousMoveError,
    "not a move": NotAMoveError,
    "unclosed comment": UnclosedCommentError,
    "stray brace": StrayBraceError,
    "unclosed variation": UnclosedVariationError,
    "stray close": StrayCloseError,
    "variation before move": VariationBeforeMoveError,
    "unclosed tag": UnclosedTagError,
    "wrong fen": WrongFenError,
    "variant": VariantError,
    "no game": NotPgnError,
}


# Settings


class SettingsError(LessonError):
    """lesson.toml is wrong."""


class VersionError(SettingsError):
    """The lesson folder has a format that this version does not read."""


class FolderNotEmptyError(LessonError):
    """A new lesson is asked for where something already is."""

    hint = "choose a new or an empty folder"


# Editing and saving


class EditError(LessonError):
    """The edit cannot be made; nothing has changed."""


class SaveError(LessonError):
    """The lesson could not be saved; the old file is whole."""


class ChangedOnDiskError(SaveError):
    """The file was changed by someone else since it was read; nothing was written."""

    hint = "open it again and repeat the edit, or save under another name"


class LockedError(SaveError):
    """Another process is writing this lesson."""

    hint = "close the lesson there, or wait"
