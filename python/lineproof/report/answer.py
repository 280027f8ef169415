"""The opening answer of every report: what was checked, what came of it, what was not read.

>>> import lineproof
>>> proof = lineproof.Lesson.from_text("1. f3 e5 2. g4 Qh4# {This is mate.} *").prove("sketch")
>>> print(answer(proof).checked)
1 claim in 1 sentence was checked: it holds.
"""

from __future__ import annotations

from dataclasses import dataclass

from lineproof.claims import Outcome, Status
from lineproof.proof import Change, Proof

from .counted import counted, listed
from .located import ONE_OFF, located


@dataclass(frozen=True)
class Answer:
    """The counts of a run.

    claims: in words and glyphs together; of them glyphs in signs beside moves. sentences: all there are.
    sentences_checked: those with at least one claim; in_part: those of them of which a part was not read.
    left_alone, not_understood, other_language, opinions (marked by the author): sentences without any claim, so that with the checked ones
    they add up to all. one_off: unsettled claims one band or one mark off; want_games: those that only more
    games could settle; the other unsettled ones are those that search could not settle.
    """

    claims: int
    glyphs: int
    sentences: int
    sentences_checked: int
    in_part: int
    holds: int
    fails: int
    unsettled: int
    one_off: int
    left_alone: int
    not_understood: int
    other_language: int
    opinions: int = 0
    contradictions: int = 0
    want_games: int = 0

    @property
    def open(self) -> int:
        """Unsettled claims that search could not settle."""
        return self.unsettled - self.one_off - self.want_games

    @property
    def checked(self) -> str:
        """ "52 claims in 41 sentences were checked: 47 hold, 3 fail, 2 are unsettled." """
        if not self.claims:
            return (
                "There are no words and no glyphs to check."
                if not self.sentences
                else "Nothing was found that can be checked."
            )
        spoken = self.claims - self.glyphs
        was = "was" if self.claims == 1 else "were"
        sentences, glyphs = (
            counted(self.sentences_checked, "sentence"),
            counted(self.glyphs, "glyph"),
        )
        if not self.glyphs:
            what = f"{counted(spoken, 'claim')} in {sentences} {was} checked"
        elif not spoken:
            what = f"{glyphs} {was} checked"
        else:
            what = f"{counted(self.claims, 'claim')} {was} checked, {spoken:,} in {sentences} and {glyphs}"
        return f"{what}: {self._outcomes()}."

    def _outcomes(self) -> str:
        counts = (
            (self.holds, "holds", "hold"),
            (self.fails, "fails", "fail"),
            (self.unsettled, "is unsettled", "are unsettled"),
        )
        said = [(number, one if number == 1 else many) for number, one, many in counts if number]
        if len(said) == 1:
            number, verb = said[0]
            return f"it {verb}" if number == 1 else f"{'both' if number == 2 else 'all'} {verb}"
        return ", ".join(f"{number:,} {verb}" for number, verb in said)

    @property
    def unsettled_apart(self) -> str:
        """The sorts of unsettled claims, "" when there are none."""
        one = self.unsettled == 1
        off, it = "is" if self.one_off == 1 else "are", "it" if one else "them"
        sorts = (
            (
                self.one_off,
                f"{self.one_off:,} {off} only one band or one mark off",
                f"The unsettled one{' is' if one else 's are'} only one band or one mark off.",
            ),
            (
                self.open,
                f"search could not settle {self.open:,}",
                f"Search could not settle {it}.",
            ),
            (
                self.want_games,
                f"only more games could settle {self.want_games:,}",
                f"Only more games could settle {it}.",
            ),
        )
        said = [(part, whole) for number, part, whole in sorts if number]
        if len(said) == 1:
            return said[0][1]
        parts = [part for part, _ in said]
        return f"Of the {self.unsettled:,} unsettled, {listed(parts)}." if parts else ""

    @property
    def contradicting(self) -> str:
        """How many pairs of claims contradict each other, "" when none do."""
        if not self.contradictions:
            return ""
        if self.contradictions == 1:
            return "In one place the lesson contradicts itself."
        return f"In {self.contradictions:,} places the lesson contradicts itself."

    @property
    def not_checked(self) -> str:
        """What was not read, "" when all was."""
        parts = []
        if self.left_alone:
            parts.append((self.left_alone, "left alone"))
        if self.not_understood:
            parts.append((self.not_understood, "not understood"))
        if self.other_language:
            parts.append((self.other_language, "in another language"))
        if self.opinions:
            parts.append((self.opinions, "marked as your opinion"))
        said = []
        for place, (number, what) in enumerate(parts):
            was = "was" if number == 1 else "were"
            if what in {"in another language", "marked as your opinion"}:
                was = "is" if number == 1 else "are"
            noun = counted(number, "sentence") if place == 0 else f"{number:,}"
            said.append(f"{noun} {was} {what}")
        ends = [f"{', '.join(said)}."] if said else []
        if self.in_part:
            was = "was" if self.in_part == 1 else "were"
            ends.append(f"{counted(self.in_part, 'checked sentence')} {was} read only in part.")
        return " ".join(ends)

    def sentences_said(self) -> tuple[str, ...]:
        """The answer in full."""
        parts = (self.checked, self.unsettled_apart, self.contradicting, self.not_checked)
        return tuple(part for part in parts if part)


def answer(proof: Proof) -> Answer:
    """Counts a proof."""
    findings = located(proof)
    checked = [r for r in proof.reading.sentences if r.claims]
    silent = [r for r in proof.reading.sentences if not r.claims]

    def count(status: Status) -> int:
        return sum(r.status is status for r in silent)

    return Answer(
        claims=len(findings),
        glyphs=sum(f.is_glyph for f in findings),
        sentences=len(proof.reading.sentences),
        sentences_checked=len(checked),
        in_part=sum(r.status is not Status.READ or bool(r.why) for r in checked),
        holds=proof.count(Outcome.HOLDS),
        fails=proof.count(Outcome.FAILS),
        unsettled=proof.count(Outcome.UNSETTLED),
        one_off=sum(f.finding.why_unsettled == ONE_OFF for f in findings),
        left_alone=count(Status.LEFT_ALONE),
        not_understood=count(Status.NOT_UNDERSTOOD),
        other_language=count(Status.OTHER_LANGUAGE),
        opinions=count(Status.OPINION),
        contradictions=len(proof.contradictions),
        want_games=sum(f.wants_games for f in findings),
    )


@dataclass(frozen=True)
class Changed:
    """What is not as in the last run. turned: claims with another outcome; new, gone: claims that were or are not there."""

    turned: tuple[Change, ...]
    new: tuple[Change, ...]
    gone: tuple[Change, ...]

    def __bool__(self) -> bool:
        return bool(self.turned or self.new or self.gone)

    @property
    def said(self) -> str:
        """One sentence, "" when nothing changed."""
        parts = []
        if self.turned:
            parts.append(f"{counted(len(self.turned), 'claim')} turned")
        if self.new:
            parts.append(f"{counted(len(self.new), 'claim')} {_is(self.new)} new")
        if self.gone:
            parts.append(f"{counted(len(self.gone), 'claim')} {_is(self.gone)} gone")
        return f"Since the last run {listed(parts)}." if parts else ""


def _is(things: tuple[Change, ...]) -> str:
    return "is" if len(things) == 1 else "are"


def changed(proof: Proof) -> Changed:
    """The changes of a proof, sorted apart."""
    return Changed(
        tuple(c for c in proof.changes if c.before and c.after),
        tuple(c for c in proof.changes if not c.before),
        tuple(c for c in proof.changes if not c.after),
    )
