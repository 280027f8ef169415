"""The author's words made fit to show: one line, and nothing in them that could command a terminal or a page.

>>> plain("White\\n  wins \\x1b[31ma piece.")
'White wins \\ufffd[31ma piece.'
"""

from __future__ import annotations

import re
from typing import Final

_COMMANDS: Final = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffe\uffff]"
)
"""Control characters, marks that turn the direction of text, and what no XML or UTF-8 text may hold."""


def harmless(text: str) -> str:
    """The text with each such character replaced by U+FFFD; offsets stay."""
    return _COMMANDS.sub("\ufffd", text)


def plain(text: str) -> str:
    """The same on one line, with single blanks."""
    return " ".join(harmless(text).split())


def escaped(document: str) -> str:
    """A JSON document with each such character escaped, as RFC 8259, section 7, lets any be: its values stay.

    >>> escaped('"\\x9b31m"')
    '"\\\\u009b31m"'
    """
    return _COMMANDS.sub(lambda found: f"\\u{ord(found[0]):04x}", document)
