"""A proof as one HTML file: nothing in it is fetched, run or left unescaped.

It opens with the answer, then shows what fails and what is unsettled, then the whole script with its proofs, and
ends with what was not read and how the rest was checked.
"""

from __future__ import annotations

import contextlib
import errno
import os
import re
from collections.abc import Iterable, Sequence
from importlib.resources import files
from pathlib import Path
from string import Template
from typing import Final

from lineproof.claims import Outcome, Reading, Status, kind_of
from lineproof.diagram import PRINT, PRINT_DARK, diagram, sprite
from lineproof.lesson import Lesson, Place
from lineproof.proof import Proof

from .answer import Answer, answer, changed
from .counted import counted, listed
from .figure import caption, marks_of
from .located import Group, Located, groups, located
from .markup import Child, Html, join, tag, text
from .plain import plain
from .printed import signs_of
from .script import Passage, Stretch, script
from .signs import GLYPHS
from .title import title_of
from .wording import seconds, turned

_THEMES: Final = ((PRINT, "by-day"), (PRINT_DARK, "by-night"))

_WORDS_OF_A_NOTE: Final = 9
"""Moves and move numbers of a line in a note; the finding and the JSON have it whole."""

_DEPTHS: Final = ("variation", "deep", "deeper")
"""Classes of a stretch by how many variations it is inside of; more are not told apart."""

_HATCHING: Final = Html(
    '<svg class="hatching" width="100%" height="12" aria-hidden="true" focusable="false"><defs>'
    '<pattern id="hatching" patternUnits="userSpaceOnUse" width="4" height="4">'
    '<path d="M-1 1L1 -1M0 4L4 0M3 5L5 3" fill="none" stroke="currentColor" stroke-width=".6"/>'
    '</pattern></defs><rect width="100%" height="12" fill="url(#hatching)"/></svg>'
)
"""The hatching of the diagrams' dark squares, as a band under the masthead."""


def html(proof: Proof) -> str:
    """The page as text, to be written as UTF-8."""
    return _Page(proof).text()


def save_html(proof: Proof, file: Path) -> None:
    """Writes the page as one step: a report that was there stays whole when the new one cannot be written.

    :raises OSError: when it cannot be written.
    """
    data = html(proof).encode()
    if file.exists() and not file.is_file():
        file.write_bytes(data)  # a pipe or a device; a folder is refused here
        return
    if file.exists() and not os.access(file, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))
    beside = file.with_name(f".{file.name}.new")
    try:
        beside.write_bytes(data)
        beside.replace(file)
    except OSError:
        with contextlib.suppress(OSError):
            beside.unlink()
        raise


class _Page:
    def __init__(self, proof: Proof) -> None:
        self.proof = proof
        self.lesson: Lesson = proof.lesson
        self.answer: Answer = answer(proof)
        self.findings = located(proof)
        self.by_claim = {id(f.finding.claim): f for f in self.findings}
        self.by_glyph = {f.finding.claim.start: f for f in self.findings if f.is_glyph}
        self.flipped = proof.lesson.settings.side == "black"

    def text(self) -> str:
        sections = [
            *(self.group_section(g) for g in groups(self.findings) if g.id != "holds"),
            self.script_section(),
            self.unread_section(),
            self.changes_section(),
            self.method_section(),
        ]
        body = tag(
            "div",
            self.masthead(list(_headings(sections))),
            tag("main", *sections, id="main"),
            tag("footer", self.footer()),
            class_="sheet",
        )
        folder = files(__package__).joinpath("page")
        return Template(folder.joinpath("page.html").read_text(encoding="utf-8")).substitute(
            title=text(f"{plain(title_of(self.lesson))}: the proof"),
            style=folder.joinpath("page.css").read_text(encoding="utf-8"),
            sprites="".join(sprite(theme) for theme, _ in _THEMES),
            body=body,
        )

    # The opening

    def masthead(self, headings: Sequence[tuple[str, str]]) -> Html:
        settings = self.lesson.settings
        taught = f"for {settings.side.capitalize()}, " if settings.side else ""
        links = [tag("a", title[0].lower() + title[1:], href=f"#{id_}") for id_, title in headings]
        said = self.answer.sentences_said()
        return tag(
            "header",
            tag(
                "div",
                tag("span", "Proof sheet of a lesson"),
                tag("span", f"{taught}players of about {settings.audience}"),
                class_="imprint small-caps",
            ),
            _HATCHING,
            tag("h1", plain(title_of(self.lesson))),
            tag("p", _emphasised(said[0]), class_="answer"),
            tag(
                "div",
                *(tag("p", sentence) for sentence in (*said[1:], *self.advice())),
                class_="rest",
            ),
            tag(
                "nav",
                tag("p", "On this sheet: ", _listed_html(links), "."),
                class_="contents",
                aria_label="On this sheet",
            ),
            class_="masthead",
        )

    def advice(self) -> Iterable[str]:
        if self.lesson.settings.side is None:
            yield "The lesson does not say which side it teaches, so sentences with “we” and “you” were not read."

    # What fails, what is unsettled

    def group_section(self, group: Group) -> Html:
        return tag(
            "section",
            tag("h2", group.title, id=f"{group.id}-title"),
            *(self.finding(f) for f in group.findings),
            id=group.id,
            aria_labelledby=f"{group.id}-title",
        )

    def finding(self, f: Located) -> Html:
        rows = (*f.said(), ("Where", f.address))
        return tag(
            "article",
            tag(
                "div",
                tag(
                    "h3",
                    _sign(f.outcome),
                    tag("span", f"{_beside(f.label)}", class_="moves"),
                    id=f"finding-{f.number}-title",
                ),
                tag("blockquote", tag("p", self.quotation(f))),
                tag(
                    "dl",
                    *(
                        join((tag("dt", term), tag("dd", what, class_=term.lower())))
                        for term, what in rows
                    ),
                    class_="proof",
                ),
            ),
            self.figure(f),
            class_=f"finding {f.outcome}",
            id=f"finding-{f.number}",
            aria_labelledby=f"finding-{f.number}-title",
        )

    def quotation(self, f: Located) -> Html:
        """The sentence with the words of this claim marked."""
        if f.reading is None:
            return tag("mark", f.words, class_=str(f.outcome))
        claim, sentence = f.finding.claim, f.reading.sentence
        first, last = claim.start - sentence.start, claim.end - sentence.start
        return join(
            (
                "“",
                _flat(sentence.text[:first]),
                tag("mark", _flat(sentence.text[first:last]), class_=str(f.outcome)),
                _flat(sentence.text[last:]),
                "”",
            )
        )

    def figure(self, f: Located) -> Html:
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
                        flipped=self.flipped,
                        title=said,
                        id_prefix=f"{kind}-{f.number}",
                        use_sprite=True,
                    )
                ),
                class_=kind,
            )
            for theme, kind in _THEMES
        ]
        return tag("figure", *drawn, tag("figcaption", said))

    # The script

    def script_section(self) -> Html | None:
        stretches = script(self.lesson, self.proof.reading.sentences)
        if not stretches:
            return None
        parts: list[Html] = []
        game = -1
        for stretch in stretches:
            if stretch.game.index != game:
                game = stretch.game.index
                if len(self.lesson.games) > 1:
                    parts.append(tag("h3", _game_title(stretch), class_="game-title"))
            parts.append(self.stretch(stretch))
        return tag(
            "section",
            tag("h2", "The script, with its proofs", id="script-title"),
            tag(
                "p",
                "Every sentence in its order. Behind a claim stands what came of it, and in the note why.",
                class_="lead",
            ),
            *parts,
            id="script",
            aria_labelledby="script-title",
        )

    def stretch(self, stretch: Stretch) -> Html:
        level = "h4" if len(self.lesson.games) > 1 else "h3"
        return tag(
            "div",
            tag(level, stretch.heading, class_="stretch-title"),
            *(self.passage(p) for p in stretch.passages),
            class_=" ".join(("stretch", *_DEPTHS[: stretch.begins.depth])),
        )

    def passage(self, passage: Passage) -> Html:
        noted: list[Located] = []
        parts: list[Child] = []
        for number, place in enumerate(passage.moves):
            parts.append(self.played(place, number == 0, noted))
        for reading in passage.readings:
            parts.append(self.sentence(reading, noted))
        notes = tag("ol", *(self.note(f) for f in noted), class_="notes") if noted else None
        return tag("div", tag("p", join(parts, " "), class_="said"), notes, class_="passage")

    def played(self, place: Place, first: bool, noted: list[Located]) -> Html:
        number = place.number if first or not place.number.endswith("...") else ""
        move: list[Child] = [f"{number} {place.san}".strip()]
        signs: list[Child] = []
        for start, _, sign in signs_of(place):
            move.append(sign if set(sign) <= set("!?") else f" {sign}")
            f = self.by_glyph.get(start)
            if f is not None:
                noted.append(f)
                signs.append(self.sign_link(f))
        return join((tag("span", *move, class_="played"), *signs), " ")

    def sentence(self, reading: Reading, noted: list[Located]) -> Html:
        sentence = reading.sentence
        here = [self.by_claim[id(c)] for c in reading.claims]
        here.sort(key=lambda f: f.number)
        noted.extend(here)
        parts: list[Child] = []
        at = sentence.start
        for start, end, some in _groups(here):
            parts.append(_flat(sentence.text[at - sentence.start : start - sentence.start]))
            worst = min((f.outcome for f in some), key=_SEVERITY.index)
            words = _flat(sentence.text[start - sentence.start : end - sentence.start])
            parts.append(tag("mark", words, class_=str(worst)))
            for f in some:
                parts.extend((Html("&nbsp;"), self.sign_link(f)))
            at = end
        parts.append(_flat(sentence.text[at - sentence.start :]))
        return join(parts)

    def sign_link(self, f: Located) -> Html:
        return tag(
            "a",
            tag("span", GLYPHS[f.outcome], class_="glyph", aria_hidden="true"),
            Html("&nbsp;"),
            tag("span", str(f.outcome), class_="word"),
            tag("sup", str(f.number)),
            class_=f"sign {f.outcome}",
            href=f"#note-{f.number}",
        )

    def note(self, f: Located) -> Html:
        parts: list[Child] = [
            tag("span", str(f.number), class_="number"),
            _sign(f.outcome),
            ": ",
        ]
        if f.outcome is Outcome.HOLDS:
            parts.append(" ".join(p for p in (f.why, f.second) if p))
            if f.evidence:
                parts += [" ", tag("span", _begun(f.evidence), class_="line")]
        else:
            parts.append(tag("a", f"the finding after {f.label}", href=f"#finding-{f.number}"))
        return tag("li", *parts, id=f"note-{f.number}")

    # The rest

    def unread_section(self) -> Html | None:
        readings = self.proof.reading.sentences
        groups = (
            (
                "Not understood",
                [r for r in readings if not r.claims and r.status is Status.NOT_UNDERSTOOD],
            ),
            (
                "Read only in part",
                [r for r in readings if r.claims and (r.why or r.status is not Status.READ)],
            ),
            (
                "In another language",
                [r for r in readings if not r.claims and r.status is Status.OTHER_LANGUAGE],
            ),
            ("Left alone", [r for r in readings if not r.claims and r.status is Status.LEFT_ALONE]),
        )
        if not any(some for _, some in groups):
            return None
        return tag(
            "section",
            tag("h2", "What was not read, and why", id="unread-title"),
            tag(
                "p",
                "A sentence is read only when every word of it is understood; nothing is guessed.",
                class_="lead",
            ),
            *(
                join(
                    (
                        tag("h3", f"{title} ({len(some)})", class_="group"),
                        tag("ul", *(self.unread(r) for r in some), class_="plain columns"),
                    )
                )
                for title, some in groups
                if some
            ),
            id="unread",
            aria_labelledby="unread-title",
        )

    def unread(self, reading: Reading) -> Html:
        line, _ = self.lesson.locate(reading.sentence.start)
        why = reading.why or str(reading.status)
        return tag(
            "li",
            f"“{plain(reading.sentence.text)}”",
            tag("span", f"{_beside(reading.place.label)}, line {line}: {why}", class_="reason"),
        )

    def changes_section(self) -> Html | None:
        what = changed(self.proof)
        if not what:
            return None
        return tag(
            "section",
            tag("h2", "What changed since the last run", id="changes-title"),
            tag("p", what.said, class_="lead"),
            tag("ul", *(tag("li", turned(c)) for c in self.proof.changes), class_="plain columns"),
            id="changes",
            aria_labelledby="changes-title",
        )

    def method_section(self) -> Html:
        kinds = [kind_of(id_) for id_ in sorted({f.finding.claim.kind for f in self.findings})]
        kinds.sort(key=lambda kind: kind.title)
        definitions = [
            tag(
                "div",
                tag("dt", kind.title),
                tag(
                    "dd",
                    kind.definition,
                    " ",
                    tag("span", f"Source: {kind.source}. Version {kind.version}.", class_="source"),
                ),
            )
            for kind in kinds
        ]
        return tag(
            "section",
            tag("h2", "How it was checked", id="method-title"),
            tag("p", self.method(), class_="lead"),
            tag("h3", "What the claims mean", class_="group") if kinds else None,
            tag("dl", *definitions, class_="kinds columns") if kinds else None,
            id="method",
            aria_labelledby="method-title",
        )

    def method(self) -> str:
        proof, steps = self.proof, self.proof.effort.steps
        searched = sum(f.finding.nodes > 0 for f in self.findings)
        nodes = sum(f.finding.nodes for f in self.findings)
        said = [
            f"At {proof.effort} effort a search looks at {steps[0]:,} positions"
            + (
                f", and at up to {steps[-1]:,} where the answer is close to an edge."
                if len(steps) > 1
                else "."
            ),
            f"{counted(searched, 'claim')} needed search, {nodes:,} positions in all; the others are facts of the board."
            if searched
            else "No claim needed search.",
            f"Engine version {proof.engine}; the run took {seconds(proof.seconds)}.",
            "Points are expected score out of 100.",
        ]
        if not proof.kept:
            said.append("The evidence could not be kept, so the next run computes it again.")
        return " ".join(said)

    def footer(self) -> Html:
        return tag(
            "p",
            f"Made by Lineproof from {plain(self.lesson.name)}. This sheet is one file and needs no network.",
        )


_SEVERITY = (Outcome.FAILS, Outcome.UNSETTLED, Outcome.HOLDS)


def _headings(sections: Iterable[Html | None]) -> Iterable[tuple[str, str]]:
    for section in sections:
        found = re.search(r'<h2 id="([a-z]+)-title">([^<]*)</h2>', section or "")
        if found:
            yield found[1], found[2]


def _listed_html(parts: Sequence[Html]) -> Html:
    return Html(listed(parts))


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


def _sign_parts(outcome: Outcome) -> tuple[Html, ...]:
    return (
        tag("span", GLYPHS[outcome], class_="glyph", aria_hidden="true"),
        Html("&nbsp;"),
        tag("span", str(outcome), class_="word"),
    )


def _sign(outcome: Outcome) -> Html:
    return tag("span", *_sign_parts(outcome), class_=f"sign {outcome}")


def _beside(label: str) -> str:
    return "at the start" if label == "start" else f"after {label}"


def _begun(line: str) -> str:
    """The first moves of a line: a note has room for no more."""
    words = line.split(" ")
    if len(words) <= _WORDS_OF_A_NOTE:
        return line
    kept = words[:_WORDS_OF_A_NOTE]
    if kept[-1].endswith("."):
        kept.pop()  # a number without its move
    return " ".join(kept) + " …"


def _flat(words: str) -> str:
    """Line ends inside a sentence become blanks; its length stays."""
    return re.sub(r"\s", " ", words)


def _groups(findings: Sequence[Located]) -> list[tuple[int, int, list[Located]]]:
    """Claims whose words overlap are marked together."""
    groups: list[tuple[int, int, list[Located]]] = []
    for f in findings:
        start, end = f.finding.claim.start, f.finding.claim.end
        if groups and start < groups[-1][1]:
            first, last, some = groups[-1]
            groups[-1] = (first, max(last, end), [*some, f])
        else:
            groups.append((start, end, [f]))
    return groups


def _game_title(stretch: Stretch) -> str:
    game = stretch.game
    title = game.tag("Event") or f"Game {game.index + 1}"
    return plain(title)
