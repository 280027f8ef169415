"""A finding with what every output says of it: where it is, what was said there, why it is so."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from lineproof.claims import Outcome, Reading, kind_of
from lineproof.proof import NO_GAMES, NOT_ANSWERED, TOO_FEW, Finding, Proof

from .plain import plain
from .printed import signs_of, with_sign

ONE_OFF = "one off"
"""`Finding.why_unsettled` of a claim that is one band or one mark off."""


@dataclass(frozen=True)
class Located:
    """A finding and its place. number: from 1, in the order of the text.

    reading: the sentence that the claim was read in; None for the claim of a glyph.
    """

    number: int
    finding: Finding
    reading: Reading | None

    @property
    def outcome(self) -> Outcome:
        return self.finding.outcome

    @property
    def is_glyph(self) -> bool:
        return self.reading is None

    @property
    def kind_title(self) -> str:
        return kind_of(self.finding.claim.kind).title

    @cached_property
    def at(self) -> tuple[int, int]:
        """(line, column) of the claim's first word."""
        return self.finding.claim.place.lesson.locate(self.finding.claim.start)

    @property
    def address(self) -> str:
        """ "file:line:column"."""
        line, column = self.at
        return f"{plain(self.finding.claim.place.lesson.name)}:{line}:{column}"

    @property
    def label(self) -> str:
        """The move that the words stand beside."""
        return self.finding.claim.place.label

    @property
    def words(self) -> str:
        """What is claimed, on one line: the author's words, or the move with its printed sign."""
        claim = self.finding.claim
        if not self.is_glyph:
            return plain(claim.words)
        for start, _, sign in signs_of(claim.place):
            if start == claim.start:
                return with_sign(claim.place.label, sign)
        return plain(claim.words)

    @property
    def sentence(self) -> str:
        """The whole sentence on one line; for a glyph the move with its sign."""
        return self.words if self.reading is None else plain(self.reading.sentence.text)

    @property
    def why(self) -> str:
        return self.finding.because

    @property
    def evidence(self) -> str:
        return self.finding.evidence()

    @property
    def is_one_off(self) -> bool:
        """Whether it is unsettled only because it is one band or one mark off."""
        return self.finding.why_unsettled == ONE_OFF

    @property
    def wants_games(self) -> bool:
        """Whether it is unsettled because only more games could settle it."""
        return self.finding.why_unsettled in {NO_GAMES, TOO_FEW}

    @property
    def instead(self) -> str:
        """A true wording beside a claim that does not hold; "" where there is none."""
        return "" if self.outcome is Outcome.HOLDS else self.finding.judgement.instead or ""

    @property
    def second(self) -> str:
        return self.finding.judgement.second or ""

    @property
    def unsettled_because(self) -> str:
        """Why it could not be settled, as a sentence; "" for any other claim, and for one that is one band or one mark off."""
        return _UNSETTLED.get(self.finding.why_unsettled, "")

    def said(self) -> tuple[tuple[str, str], ...]:
        """What is said of the finding, as (heading, text): why, and what else there is."""
        wording = "True" if self.finding.nodes == 0 else "Search says"
        if self.outcome is Outcome.UNSETTLED:
            wording = "Safer"
        rows = (
            ("Why", self.why if self.why != self.instead else ""),
            ("Open", self.unsettled_because),
            ("Also", self.second),
            ("Line", self.evidence),
            (wording, self.instead),
        )
        return tuple((heading, text) for heading, text in rows if text)


_UNSETTLED = {
    "the last two steps disagree": "The last two steps of search disagree.",
    "the effort ran out": "The effort ran out before search could settle it.",
    "it cannot be asked here": "It is no question for search.",
    TOO_FEW: "The games are too few to tell.",
    NO_GAMES: "It can only be counted, and there is no collection of games.",
    NOT_ANSWERED: "The outside engine did not answer.",
}


@dataclass(frozen=True)
class Group:
    """Findings that belong together in a report. id: a word for links."""

    id: str
    title: str
    findings: tuple[Located, ...]


def groups(findings: tuple[Located, ...]) -> tuple[Group, ...]:
    """What fails, what is one band or mark off, what search left open, what only games could settle, what holds; none empty."""
    sorts: tuple[tuple[str, str, Callable[[Located], bool]], ...] = (
        ("fails", "What fails", lambda f: f.outcome is Outcome.FAILS),
        ("off", "Unsettled: only one band or one mark off", lambda f: f.is_one_off),
        (
            "open",
            "Unsettled: search could not settle it",
            lambda f: f.outcome is Outcome.UNSETTLED and not (f.is_one_off or f.wants_games),
        ),
        ("games", "Unsettled: only more games could settle it", lambda f: f.wants_games),
        ("holds", "What holds", lambda f: f.outcome is Outcome.HOLDS),
    )
    found = (
        Group(id_, title, tuple(f for f in findings if belongs(f))) for id_, title, belongs in sorts
    )
    return tuple(group for group in found if group.findings)


def located(proof: Proof) -> tuple[Located, ...]:
    """Every finding of a proof, in the order of the text."""
    read_in = {
        id(claim): reading for reading in proof.reading.sentences for claim in reading.claims
    }
    return tuple(
        Located(number, finding, read_in.get(id(finding.claim)))
        for number, finding in enumerate(proof.findings, 1)
    )
