"""A file's text: decoded for reading, and back to the very same bytes.

>>> source = Source.decode(b"1. e4 *", "demo.pgn")
>>> source.encoding, source.encode() == b"1. e4 *"
('utf-8', True)
"""

from __future__ import annotations

import bisect
import codecs
import re
from dataclasses import dataclass, replace
from functools import cached_property

from lineproof.lesson.errors import (
    BinaryFileError,
    EmptyFileError,
    EncodingError,
    LessonError,
    NulByteError,
    OutsideTextError,
    quoted,
)

# (byte order mark, encoding after it)
MARKS = (
    (codecs.BOM_UTF8, "utf-8"),
    (codecs.BOM_UTF16_LE, "utf-16-le"),
    (codecs.BOM_UTF16_BE, "utf-16-be"),
)

# First bytes of files that are often given by mistake: archives, pictures, documents.
MAGIC = (b"PK\x03\x04", b"\x1f\x8b", b"7z\xbc\xaf", b"\x89PNG", b"\xff\xd8\xff", b"%PDF-", b"Rar!")

# Control bytes that text does not hold; more than a few of them mean that it is none.
CONTROL = bytes(b for b in range(32) if b not in b"\t\n\v\f\r\x1a\x00")
SAMPLE = 8192

LINE_END = re.compile(r"\r\n|\r|\n")


@dataclass(frozen=True)
class Source:
    """A text with what is needed to write it back byte for byte; its line ends stay as they are."""

    text: str
    name: str
    encoding: str = "utf-8"
    mark: bytes = b""

    @staticmethod
    def decode(data: bytes, name: str) -> Source:
        """Reads bytes by their mark, else as UTF-8, else as Latin-1 (the PGN standard's own set).

        :raises EmptyFileError, BinaryFileError, NulByteError, EncodingError:
        """
        mark, encoding = next((known for known in MARKS if data.startswith(known[0])), (b"", ""))
        if not data[len(mark) :].strip():
            raise EmptyFileError("the file is empty", path=name)
        if not encoding.startswith("utf-16"):
            _refuse_binary(data, name)
        if mark:
            try:
                return Source(data[len(mark) :].decode(encoding), name, encoding, mark).checked()
            except UnicodeDecodeError as error:
                raise EncodingError(
                    f"the text is marked as {encoding.upper()} and is not"
                    f" (byte {error.start + len(mark)})",
                    path=name,
                ) from error
        try:
            return Source(data.decode("utf-8"), name).checked()
        except UnicodeDecodeError:
            return Source(data.decode("latin-1"), name, "latin-1").checked()

    def checked(self) -> Source:
        """The source itself.

        :raises NulByteError: when the text holds a zero character.
        """
        at = self.text.find("\0")
        if at >= 0:
            line, column = self.locate(at)
            raise NulByteError(
                "a zero byte stands in the text", path=self.name, line=line, column=column
            )
        return self

    def with_text(self, text: str) -> Source:
        """The same file with another text."""
        return replace(self, text=text)

    def encode(self) -> bytes:
        """The bytes of the file.

        :raises EncodingError: when the file's encoding has no such character, or the bytes would
            not be read back as the same text.
        """
        try:
            data = self.mark + self.text.encode(self.encoding)
        except UnicodeEncodeError as error:
            raise self._lacking(self.text[error.start], error.start) from error
        self._refuse_unreadable(data)
        return data

    def _refuse_unreadable(self, data: bytes) -> None:
        """Makes sure that bytes to be written are read back as this text.

        What is left after an edit may look like another encoding, or like no text at all.
        """
        try:
            again = Source.decode(data, self.name)
        except LessonError as error:
            raise EncodingError(
                f"the text could not be opened again: {error.message}",
                path=self.name,
                hint="undo the last edit",
            ) from error
        if again.text != self.text:
            read_as = again.encoding.upper()
            if (again.encoding, again.mark) == (self.encoding, self.mark):
                read_as = "another text"
            raise EncodingError(f"the text would be read back as {read_as}", path=self.name)

    def refuse_lacking(self, text: str, offset: int) -> None:
        """Makes sure that the encoding has the characters of a text that is to stand at an offset.

        :raises EncodingError:
        """
        try:
            text.encode(self.encoding)
        except UnicodeEncodeError as error:
            raise self._lacking(text[error.start], offset) from error

    def _lacking(self, character: str, offset: int) -> EncodingError:
        line, column = self.locate(offset)
        return EncodingError(
            f"the file's encoding ({self.encoding}) has no {character!r}",
            path=self.name,
            line=line,
            column=column,
        )

    def as_utf8(self) -> Source:
        """The same text, to be written as UTF-8 without a mark."""
        return replace(self, encoding="utf-8", mark=b"")

    @cached_property
    def line_starts(self) -> list[int]:
        """Offset of the first character of every line."""
        return [0, *(found.end() for found in LINE_END.finditer(self.text))]

    def locate(self, offset: int) -> tuple[int, int]:
        """(line, column), both from 1, of an offset of the text.

        :raises OutsideTextError: for an offset below 0 or above the length of the text.
        """
        self.refuse_outside(offset)
        line = bisect.bisect_right(self.line_starts, offset)
        return line, offset - self.line_starts[line - 1] + 1

    def refuse_outside(self, offset: int) -> None:
        """:raises OutsideTextError: for an offset that the text does not have."""
        if not 0 <= offset <= len(self.text):
            raise OutsideTextError(
                f"offset {quoted(offset)} is outside of the text", path=self.name
            )

    @cached_property
    def line_end(self) -> str:
        """The line end that the text uses first; a line feed where it has none."""
        found = LINE_END.search(self.text)
        return found.group() if found else "\n"


def _refuse_binary(data: bytes, name: str) -> None:
    sample = data[:SAMPLE]
    controls = len(sample) - len(sample.translate(None, CONTROL))
    if sample.startswith(MAGIC) or controls * 50 > len(sample):
        raise BinaryFileError("this is no text file", path=name)
