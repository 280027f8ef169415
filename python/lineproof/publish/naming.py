"""Names of files: plain letters, digits and hyphens, which every system, page and archive takes.

>>> slug("The Vienna Gambit: 3. f4!")
'the-vienna-gambit-3-f4'
"""

from __future__ import annotations

import re
import unicodedata
from typing import Final

from lineproof.lesson import Lesson, Place
from lineproof.report.title import title_of

LONGEST: Final = 60
"""Characters that a title gives to a name."""


def slug(title: str) -> str:
    """A title as the beginning of a file name; "lesson" where it has no letters that can stand there."""
    plain = (
        unicodedata.normalize("NFKD", re.sub("['’]", "", title))
        .encode("ascii", "ignore")
        .decode()
        .lower()
    )
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:LONGEST].strip("-") or "lesson"


def slug_of(lesson: Lesson) -> str:
    """The beginning of the names of a lesson's files."""
    return slug(title_of(lesson))


def move_slug(place: Place) -> str:
    """ "5-black-Bxd1", "start"; what a name cannot hold in every place (+ # =) is left out."""
    if place.san is None:
        return "start"
    side = "black" if place.number.endswith("...") else "white"
    san = re.sub(r"[^A-Za-z0-9-]", "", place.san).strip("-") or "pass"
    return f"{place.number.rstrip('.')}-{side}-{san}"
