"""The section of the script: every sentence in its order, each claim with its sign, and the notes in the margin."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from lineproof.claims import Outcome, Reading
from lineproof.lesson import Place
from lineproof.proof import Proof

from .located import Located
from .markup import Child, Html, join, tag
from .plain import plain
from .printed import signs_of
from .script import Passage, Stretch, script
from .section import Section, beside, flat, lead, sign_of, sign_parts

_WORDS_OF_A_NOTE: Final = 9
"""Moves and move numbers of a line in a note; the finding and the JSON have it whole."""

DEPTHS: Final = ("variation", "deep", "deeper")
"""Classes of a stretch by how many variations it is inside of; more are not told apart."""

_SEVERITY: Final = (Outcome.FAILS, Outcome.UNSETTLED, Outcome.HOLDS)


def proved_script(proof: Proof, findings: Sequence[Located]) -> Section | None:
    """The whole lesson as prose; None for one without words."""
    stretches = script(proof.lesson, proof.reading.sentences)
    if not stretches:
        return None
    return Section(
        "script",
        "The script, with its proofs",
        (
            lead(
                "Every sentence in its order. Behind a claim stands what came of it, and in the note why."
            ),
            *_Script(proof, findings).parts(stretches),
        ),
    )


class _Script:
    def __init__(self, proof: Proof, findings: Sequence[Located]) -> None:
        self.several = len(proof.lesson.games) > 1
        self.by_claim = {id(f.finding.claim): f for f in findings}
        self.by_glyph: dict[int, list[Located]] = {}
        for f in findings:
            if f.is_glyph:
                self.by_glyph.setdefault(f.finding.claim.start, []).append(f)

    def parts(self, stretches: Sequence[Stretch]) -> Iterator[Html]:
        game = -1
        for stretch in stretches:
            if stretch.game.index != game:
                game = stretch.game.index
                if self.several:
                    yield tag("h3", game_title(stretch), class_="game-title")
            yield self.stretch(stretch)

    def stretch(self, stretch: Stretch) -> Html:
        level = "h4" if self.several else "h3"
        return tag(
            "div",
            tag(level, stretch.heading, class_="stretch-title"),
            *(self.passage(p) for p in stretch.passages),
            class_=" ".join(("stretch", *DEPTHS[: stretch.begins.depth])),
        )

    def passage(self, passage: Passage) -> Html:
        noted: list[Located] = []
        parts: list[Child] = []
        for number, place in enumerate(passage.moves):
            parts.append(self.played(place, number == 0, noted))
        for reading in passage.readings:
            parts.append(self.sentence(reading, noted))
        notes = tag("ol", *(_note(f) for f in noted), class_="notes") if noted else None
        return tag("div", tag("p", join(parts, " "), class_="said"), notes, class_="passage")

    def played(self, place: Place, first: bool, noted: list[Located]) -> Html:
        number = place.number if first or not place.number.endswith("...") else ""
        move: list[Child] = [f"{number} {place.san}".strip()]
        signs: list[Child] = []
        for start, _, sign in signs_of(place):
            move.append(sign if set(sign) <= set("!?") else f" {sign}")
            for f in self.by_glyph.get(start, ()):
                noted.append(f)
                signs.append(_sign_link(f))
        return join((tag("span", *move, class_="played"), *signs), " ")

    def sentence(self, reading: Reading, noted: list[Located]) -> Html:
        sentence = reading.sentence
        here = [self.by_claim[id(c)] for c in reading.claims]
        here.sort(key=lambda f: f.number)
        noted.extend(here)
        parts: list[Child] = []
        at = sentence.start
        for start, end, some in _groups(here):
            parts.append(flat(sentence.text[at - sentence.start : start - sentence.start]))
            worst = min((f.outcome for f in some), key=_SEVERITY.index)
            words = flat(sentence.text[start - sentence.start : end - sentence.start])
            parts.append(tag("mark", words, class_=str(worst)))
            for f in some:
                parts.extend((Html("&nbsp;"), _sign_link(f)))
            at = end
        parts.append(flat(sentence.text[at - sentence.start :]))
        return join(parts)


def _sign_link(f: Located) -> Html:
    return tag(
        "a",
        *sign_parts(f.outcome),
        tag("sup", str(f.number)),
        class_=f"sign {f.outcome}",
        href=f"#note-{f.number}",
    )


def _note(f: Located) -> Html:
    parts: list[Child] = [
        tag("span", str(f.number), class_="number"),
        sign_of(f.outcome),
        ": ",
    ]
    if f.outcome is Outcome.HOLDS:
        parts.append(" ".join(p for p in (f.why, f.second) if p))
        if f.evidence:
            parts += [" ", tag("span", _begun(f.evidence), class_="line")]
    else:
        parts.append(tag("a", f"the finding {beside(f.label)}", href=f"#finding-{f.number}"))
    return tag("li", *parts, id=f"note-{f.number}")


def _begun(line: str) -> str:
    """The first moves of a line: a note has room for no more."""
    words = line.split(" ")
    if len(words) <= _WORDS_OF_A_NOTE:
        return line
    kept = words[:_WORDS_OF_A_NOTE]
    if kept[-1].endswith("."):
        kept.pop()  # a number without its move
    return " ".join(kept) + " …"


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


def game_title(stretch: Stretch) -> str:
    """The heading of a game of a lesson that has several."""
    game = stretch.game
    title = game.tag("Event") or f"Game {game.index + 1}"
    return plain(title)
