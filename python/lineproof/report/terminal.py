"""The answer of a run in the terminal: sentences first, then what fails, then what is unsettled.

It is plain text in a pipe and under NO_COLOR, and fits 80 columns.
"""

from __future__ import annotations

from typing import Literal

from rich.console import Console
from rich.text import Text

from lineproof.claims import Outcome, Reading, Status
from lineproof.proof import Proof

from .answer import answer, changed
from .contradicting import CONTRADICTS, contradicting
from .counted import counted
from .located import Located, groups, located
from .plain import harmless, plain
from .signs import sign
from .title import title_of
from .wording import MAY_DIFFER, gone, seconds, turned

Show = Literal["read", "all"]
"""What to show beside the findings that fail or are unsettled: every sentence, or every finding too."""

_STYLES = {Outcome.HOLDS: "", Outcome.FAILS: "bold red", Outcome.UNSETTLED: "bold"}
_WIDEST = 92
_NARROWEST = 20
"""Columns of a readable line."""

_NEW_LISTED = 5
"""New and vanished claims are counted, not listed, when there are more."""


def terminal(proof: Proof, console: Console, show: Show | None = None) -> str:
    """The report as text for the console: with its colours, in its width."""
    page = _Page(console)
    with console.capture() as captured:
        page.opening(proof)
        findings = located(proof)
        for group in groups(findings):
            if group.id == "holds" and show != "all":
                continue
            page.heading(group.title)
            for finding in group.findings:
                page.finding(finding)
        page.contradictions(proof, findings)
        if show == "read":
            page.sentences(proof, findings)
        page.changes(proof)
        page.gone(proof)
        page.closing(proof, show)
    return captured.get()


class _Page:
    def __init__(self, console: Console) -> None:
        self.console = console
        self.width = max(_NARROWEST, min(console.width, _WIDEST))

    def write(self, text: Text | str, indent: int = 0) -> None:
        text = Text(text) if isinstance(text, str) else text
        # wrapped here and not by a padding, which would fill every line up with blanks
        for line in text.wrap(self.console, self.width - indent):
            line.rstrip()
            self.unbroken(Text(" " * indent) + line)

    def unbroken(self, text: Text) -> None:
        """A line that is never wrapped, so that an address in it can be followed."""
        # whatever a line is made of, nothing in it commands the terminal; offsets stay, and so do the styles
        text.plain = harmless(text.plain)
        self.console.print(text, soft_wrap=True, highlight=False)

    def gap(self) -> None:
        self.console.print()

    def heading(self, title: str) -> None:
        self.gap()
        self.write(Text(title, "bold"))

    def opening(self, proof: Proof) -> None:
        self.write(Text(plain(title_of(proof.lesson)), "bold"))
        said = answer(proof)
        self.write(Text(said.checked, "bold" if said.fails else ""))
        for sentence in said.sentences_said()[1:]:
            self.write(sentence)
        if said.claims and not said.fails and not said.unsettled:
            self.write("Every claim that was read holds.")
        if proof.lesson.settings.side is None and any(
            "which side it teaches" in r.why for r in proof.reading.sentences
        ):
            self.write("Say which side is taught (--side white or --side black) to have more read.")

    def finding(self, finding: Located) -> None:
        self.gap()
        head = Text(sign(finding.outcome), _STYLES[finding.outcome])
        head.append(f"  {finding.address}", "")
        head.append(f"  {_beside(finding.label)}", "dim")
        self.unbroken(head)
        self.write(_quoted(finding), 2)
        for heading, text in finding.said():
            self.write(f"{heading}: {text}", 2)

    def contradictions(self, proof: Proof, findings: tuple[Located, ...]) -> None:
        if not proof.contradictions:
            return
        self.heading(CONTRADICTS)
        for both in contradicting(proof, findings):
            self.gap()
            self.write(both.why)
            for finding in both.pair:
                head = Text(finding.address)
                head.append(f"  {_beside(finding.label)}", "dim")
                self.unbroken(Text("  ") + head)
                self.write(_quoted(finding) + f" ({sign(finding.outcome)})", 2)

    def sentences(self, proof: Proof, findings: tuple[Located, ...]) -> None:
        self.heading("Every sentence, as it was read")
        by_claim = {id(f.finding.claim): f for f in findings}
        glyphs = [f for f in findings if f.is_glyph]
        lesson = proof.lesson
        for reading in proof.reading.sentences:
            self.gap()
            line, column = lesson.locate(reading.sentence.start)
            head = Text(f"{plain(lesson.name)}:{line}:{column}")
            head.append(f"  {_beside(reading.place.label)}", "dim")
            self.unbroken(head)
            self.write(f"“{plain(reading.sentence.text)}”", 2)
            self.write(_status(reading), 2)
            for claim in reading.claims:
                self._short(by_claim[id(claim)])
        if glyphs:
            self.heading("The glyphs")
            for finding in glyphs:
                self._short(finding)

    def _short(self, finding: Located) -> None:
        text = Text(sign(finding.outcome), _STYLES[finding.outcome])
        text.append(f"  {finding.kind_title}, “{finding.words}”: {finding.why}", "")
        self.write(text, 4)

    def changes(self, proof: Proof) -> None:
        what = changed(proof)
        if not what:
            return
        self.heading(what.said)
        for change in what.turned:
            self.write(turned(change), 2)
        for some in (what.new, what.gone):
            if len(some) <= _NEW_LISTED:
                for change in some:
                    self.write(turned(change), 2)

    def gone(self, proof: Proof) -> None:
        for opinion in proof.newly_gone:
            self.gap()
            self.write(gone(opinion))

    def closing(self, proof: Proof, show: Show | None) -> None:
        self.gap()
        who = (
            f"engine {proof.engine}"
            if proof.outside is None
            else f"outside engine {plain(proof.outside.name)}"
        )
        if proof.games is not None:
            who += f", collection {plain(proof.games.name)} ({counted(proof.games.games, 'game')})"
        text = f"{str(proof.effort).capitalize()} effort, {who}, {seconds(proof.seconds)}."
        if proof.outside is not None:
            text += f" {MAY_DIFFER}"
        if not proof.kept:
            text += " The evidence could not be kept, so the next run computes it again."
        self.write(Text(text, "dim"))
        if show is None and proof.reading.sentences:
            self.write(Text("--show read lists every sentence and what became of it.", "dim"))


def _beside(label: str) -> str:
    return "at the start" if label == "start" else label


def _status(reading: Reading) -> str:
    if reading.status is Status.READ and not reading.why:
        return "Read."
    return (
        f"{str(reading.status).capitalize()}: {reading.why}."
        if reading.why
        else f"{str(reading.status).capitalize()}."
    )


def _quoted(finding: Located) -> Text:
    """The sentence as a quotation, the claim's own words in it emphasised."""
    text = Text(f"“{finding.sentence}”")
    at = finding.sentence.find(finding.words)
    if at >= 0:
        text.stylize("bold", 1 + at, 1 + at + len(finding.words))
    return text
