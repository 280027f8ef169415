"""A proof as one HTML file: nothing in it is fetched, run or left unescaped.

It opens with the answer, then shows what fails and what is unsettled, then the whole script with its proofs, and
ends with what was not read and how the rest was checked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from importlib.resources import files
from pathlib import Path
from string import Template
from typing import Final

from lineproof.diagram import sprite
from lineproof.proof import Proof

from .answer import answer
from .contradicting import contradiction_section
from .counted import listed
from .located import groups, located
from .markup import Html, join, tag, text
from .method import changes, method
from .open_findings import THEMES, open_findings
from .plain import plain
from .proved_script import proved_script
from .section import Section
from .title import title_of
from .unread import unread
from .writing import write_whole

_HATCHING: Final = Html(
    '<svg class="hatching" width="100%" height="12" aria-hidden="true" focusable="false"><defs>'
    '<pattern id="hatching" patternUnits="userSpaceOnUse" width="4" height="4">'
    '<path d="M-1 1L1 -1M0 4L4 0M3 5L5 3" fill="none" stroke="currentColor" stroke-width=".6"/>'
    '</pattern></defs><rect width="100%" height="12" fill="url(#hatching)"/></svg>'
)
"""The hatching of the diagrams' dark squares, as a band under the masthead."""


def html(proof: Proof) -> str:
    """The page as text, to be written as UTF-8."""
    sections = tuple(_sections(proof))
    name = plain(proof.lesson.name)
    body = tag(
        "div",
        _masthead(proof, sections),
        tag("main", *(section.html() for section in sections), id="main"),
        tag(
            "footer",
            tag(
                "p", f"Made by Lineproof from {name}. This sheet is one file and needs no network."
            ),
        ),
        class_="sheet",
    )
    folder = files(__package__).joinpath("page")
    return Template(folder.joinpath("page.html").read_text(encoding="utf-8")).substitute(
        title=text(f"{plain(title_of(proof.lesson))}: the proof"),
        style=folder.joinpath("page.css").read_text(encoding="utf-8"),
        sprites="".join(sprite(theme) for theme, _ in THEMES),
        body=body,
    )


def _sections(proof: Proof) -> Iterator[Section]:
    findings = located(proof)
    flipped = proof.lesson.settings.side == "black"
    for group in groups(findings):
        if group.id != "holds":
            yield open_findings(group, flipped=flipped)
    for section in (
        contradiction_section(proof, findings),
        proved_script(proof, findings),
        unread(proof.reading.sentences),
        changes(proof),
        method(proof, findings),
    ):
        if section is not None:
            yield section


def save_html(proof: Proof, file: Path) -> None:
    """Writes the page as one step: a report that was there stays whole when the new one cannot be written.

    :raises OSError: when it cannot be written.
    """
    write_whole(file, html(proof).encode())


def _masthead(proof: Proof, sections: Sequence[Section]) -> Html:
    settings = proof.lesson.settings
    taught = f"for {settings.side.capitalize()}, " if settings.side else ""
    links = [
        tag("a", section.title[0].lower() + section.title[1:], href=f"#{section.id}")
        for section in sections
    ]
    said = list(answer(proof).sentences_said())
    if settings.side is None:
        said.append(
            "The lesson does not say which side it teaches, so nothing that “we” and “you” do was read."
        )
    return tag(
        "header",
        tag(
            "div",
            tag("span", "Proof sheet of a lesson"),
            tag("span", f"{taught}players of about {settings.audience}"),
            class_="imprint small-caps",
        ),
        _HATCHING,
        tag("h1", plain(title_of(proof.lesson))),
        tag("p", _emphasised(said[0]), class_="answer"),
        tag(
            "div",
            *(tag("p", sentence) for sentence in said[1:]),
            class_="rest",
        ),
        tag(
            "nav",
            tag("p", "On this sheet: ", Html(listed(links)), "."),
            class_="contents",
            aria_label="On this sheet",
        ),
        class_="masthead",
    )


def _emphasised(sentence: str) -> Html:
    """The answer with the number of failures in the second ink; the word says it too."""
    found = re.search(r"[\d,]+ fails?\b", sentence)
    if not found:
        return text(sentence)
    return join(
        (
            sentence[: found.start()],
            tag("strong", found[0], class_="fails"),
            sentence[found.end() :],
        )
    )
