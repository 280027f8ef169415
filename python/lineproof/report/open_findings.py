"""The sections of findings that the author must look at: each a quotation with its diagram beside it."""

from __future__ import annotations

from .board_figure import board_figure
from .figure import caption, marks_of
from .located import Group, Located
from .markup import Html, join, tag
from .section import Section, beside, flat, sign_of


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
    return board_figure(
        finding.line_from.board.fen,
        marks_of(finding),
        caption(finding),
        name=str(f.number),
        flipped=flipped,
    )
