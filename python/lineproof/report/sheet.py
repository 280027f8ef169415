"""A sheet: the page that every report is, with its masthead, its sections and nothing that is fetched or run."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from importlib.resources import files
from string import Template
from typing import Final

from lineproof.diagram import sprite
from lineproof.lesson import Lesson

from .board_figure import THEMES
from .counted import listed
from .markup import Html, tag, text
from .plain import plain
from .section import Section

_HATCHING: Final = Html(
    '<svg class="hatching" width="100%" height="12" aria-hidden="true" focusable="false"><defs>'
    '<pattern id="hatching" patternUnits="userSpaceOnUse" width="4" height="4">'
    '<path d="M-1 1L1 -1M0 4L4 0M3 5L5 3" fill="none" stroke="currentColor" stroke-width=".6"/>'
    '</pattern></defs><rect width="100%" height="12" fill="url(#hatching)"/></svg>'
)
"""The hatching of the diagrams' dark squares, as a band under the masthead."""


def whom(lesson: Lesson) -> str:
    """ "for White, players of about 1400"."""
    settings = lesson.settings
    side = f"for {settings.side.capitalize()}, " if settings.side else ""
    return f"{side}players of about {settings.audience}"


@dataclass(frozen=True)
class Sheet:
    """One report. kind, whom: the two lines above the title. page: the title of the page as browsers show it.

    answer: the sentence that it opens with; rest: those that follow. source: what it was made from.
    """

    kind: str
    whom: str
    page: str
    title: str
    answer: Html
    rest: tuple[str, ...]
    sections: Sequence[Section]
    source: str

    def html(self) -> str:
        """The page as text, to be written as UTF-8."""
        made = f"Made by Lineproof from {plain(self.source)}. This sheet is one file and needs no network."
        body = tag(
            "div",
            self._masthead(),
            tag("main", *(section.html() for section in self.sections), id="main"),
            tag("footer", tag("p", made)),
            class_="sheet",
        )
        folder = files(__package__).joinpath("page")
        return Template(folder.joinpath("page.html").read_text(encoding="utf-8")).substitute(
            title=text(self.page),
            style=folder.joinpath("page.css").read_text(encoding="utf-8"),
            sprites="".join(sprite(theme) for theme, _ in THEMES),
            body=body,
        )

    def _masthead(self) -> Html:
        links = [
            tag("a", section.title[0].lower() + section.title[1:], href=f"#{section.id}")
            for section in self.sections
        ]
        return tag(
            "header",
            tag(
                "div",
                tag("span", self.kind),
                tag("span", self.whom),
                class_="imprint small-caps",
            ),
            _HATCHING,
            tag("h1", self.title),
            tag("p", self.answer, class_="answer"),
            tag("div", *(tag("p", sentence) for sentence in self.rest), class_="rest"),
            tag(
                "nav",
                tag("p", "On this sheet: ", Html(listed(links)), "."),
                class_="contents",
                aria_label="On this sheet",
            ),
            class_="masthead",
        )
