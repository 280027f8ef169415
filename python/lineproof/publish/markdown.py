"""Markdown in which the author's words stay words, whatever marks they hold.

Source: CommonMark 0.31, "Backslash escapes": any ASCII punctuation may be escaped (from memory). Escaped is what begins a
construct of it or of its common extensions (tables, strikethrough, mathematics, addresses, mentions).

>>> words("1. <b>*Not* bold</b> [x](y) & so_on")
'1\\\\. \\\\<b\\\\>\\\\*Not\\\\* bold\\\\</b\\\\> \\\\[x\\\\](y) \\\\& so\\\\_on'
"""

from __future__ import annotations

import re
from typing import Final

from lineproof.report.plain import plain

_ANYWHERE: Final = re.compile(
    r"[\\`*_{}\[\]<>&~|$^@]"  # emphasis, code, links, HTML, entities, tables, mathematics, mentions
    r"|\#(?<![A-Za-z0-9]\#)"  # headings, references; not the sign of mate
    r"|:(?=[^\s])"  # addresses, short names of pictures
    r"|(?<=www)\.|==",
    re.IGNORECASE,
)
_AT_START: Final = re.compile(r"(?P<number>\d+)(?P<point>[.)])|[-+=]")
"""What begins a list, or underlines a heading."""


def words(text: str) -> str:
    """Any text as one line of Markdown that shows just this text."""
    line = _ANYWHERE.sub(lambda found: "".join(f"\\{c}" for c in found[0]), plain(text))
    begins = _AT_START.match(line)
    if begins is None:
        return line
    if begins["number"]:
        return f"{begins['number']}\\{line[begins.start('point') :]}"
    return "\\" + line


def heading(level: int, text: str) -> str:
    return f"{'#' * level} {words(text)}"


def bold(moves: str) -> str:
    """Moves and their numbers, which hold nothing that Markdown reads but in the middle of a word."""
    return f"**{moves}**"


def picture(text: str, file: str) -> str:
    """A picture with its text alternative. file: a name of letters, digits, hyphens and points."""
    return f"![{words(text)}]({file})"
