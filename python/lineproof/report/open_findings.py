"""The sections of findings that the author must look at: each a quotation with its diagram beside it."""

from __future__ import annotations

from typing import Final

from lineproof.diagram import PRINT, PRINT_DARK, diagram

from .figure import caption, marks_of
from .located import Group, Located
from .markup import Html, join, tag
from .section import Section, beside, flat, sign_of

THEMES: Final = ((PRINT, "by-day"), (PRINT_DARK, "by-night"))
"""Themes of the diagrams with the class of the page that shows each."""


def open_findings(group: Group, *, flipped: bool) -> Section:
    """One group of findings. flipped: diagrams as Black sees them."""
    return Section(group.id, group.title, tuple(_finding(f, flipped) for f in group.findings))


def _finding(f: Located, flipped: bool) -> Html:
    rows = (*f.said(), ("Where", f.address))
    return tag(
        "article",
        tag(
            "div",
            tag(
                "h3",
                sign_of(f.outcome),
                tag("span", f"{beside(f.label)}", class_="moves"),
                id=f"finding-{f.number}-title",
            ),
            tag("blockquote", tag("p", _quotation(f))),
            tag(
                "dl",
                *(
                    join((tag("dt", term), tag("dd", what, class_=term.lower())))
                    for term, what in rows
                ),
                class_="proof",
            ),
        ),
        _figure(f, flipped),
        class_=f"finding {f.outcome}",
        id=f"finding-{f.number}",
        aria_labelledby=f"finding-{f.number}-title",
    )


def _quotation(f: Located) -> Html:
    """The sentence with the words of this claim marked."""
    if f.reading is None:
        return tag("mark", f.words, class_=str(f.outcome))
    claim, sentence = f.finding.claim, f.reading.sentence
    first, last = claim.start - sentence.start, claim.end - sentence.start
    return join(
        (
            "“",
            flat(sentence.text[:first]),
            tag("mark", flat(sentence.text[first:last]), class_=str(f.outcome)),
            flat(sentence.text[last:]),
            "”",
        )
    )


def _figure(f: Located, flipped: bool) -> Html:
    finding = f.finding
    said = caption(finding)
    drawn = [
        tag(
            "div",
            Html(
                diagram(
                    finding.line_from.board.fen,
                    marks=marks_of(finding),
                    theme=theme,
                    flipped=flipped,
                    title=said,
                    id_prefix=f"{kind}-{f.number}",
                    use_sprite=True,
                )
            ),
            class_=kind,
        )
        for theme, kind in THEMES
    ]
    return tag("figure", *drawn, tag("figcaption", said))
