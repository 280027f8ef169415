"""A proof as one HTML file: nothing in it is fetched, run or left unescaped.

It opens with the answer, then shows what fails and what is unsettled, then the whole script with its proofs, and
ends with what was not read and how the rest was checked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

from lineproof.proof import Proof

from .answer import answer
from .contradicting import contradiction_section
from .located import groups, located
from .markup import Html, join, tag, text
from .method import changes, method
from .open_findings import open_findings
from .plain import plain
from .proved_script import proved_script
from .section import Section
from .sheet import Sheet, whom
from .title import title_of
from .unread import unread
from .writing import write_whole


def html(proof: Proof) -> str:
    """The page as text, to be written as UTF-8."""
    said = list(answer(proof).sentences_said())
    if proof.lesson.settings.side is None:
        said.append(
            "The lesson does not say which side it teaches, so nothing that “we” and “you” do was read."
        )
    title = plain(title_of(proof.lesson))
    return Sheet(
        kind="Proof sheet of a lesson",
        whom=whom(proof.lesson),
        page=f"{title}: the proof",
        title=title,
        answer=_emphasised(said[0]),
        rest=tuple(said[1:]),
        sections=tuple(_sections(proof)),
        source=proof.lesson.name,
    ).html()


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
