"""A section of the page, and the small parts that several sections show."""

from __future__ import annotations

import re
from dataclasses import dataclass

from lineproof.claims import Outcome

from .markup import Child, Html, tag
from .signs import GLYPHS


@dataclass(frozen=True)
class Section:
    """A section with its heading. id: a word for links."""

    id: str
    title: str
    parts: tuple[Child, ...]

    def html(self) -> Html:
        """The section as markup."""
        return tag(
            "section",
            tag("h2", self.title, id=f"{self.id}-title"),
            *self.parts,
            id=self.id,
            aria_labelledby=f"{self.id}-title",
        )


def lead(sentence: str) -> Html:
    """The sentence under a heading."""
    return tag("p", sentence, class_="lead")


def sign_parts(outcome: Outcome) -> tuple[Html, ...]:
    """The glyph, hidden from screen readers, and the word."""
    return (
        tag("span", GLYPHS[outcome], class_="glyph", aria_hidden="true"),
        Html("&nbsp;"),
        tag("span", str(outcome), class_="word"),
    )


def sign_of(outcome: Outcome) -> Html:
    """ "▲ fails" as markup."""
    return tag("span", *sign_parts(outcome), class_=f"sign {outcome}")


def beside(label: str) -> str:
    """Where words stand, from a place's label."""
    return "at the start" if label == "start" else f"after {label}"


def flat(words: str) -> str:
    """Line ends inside a sentence become blanks; its length stays."""
    return re.sub(r"\s", " ", words)
