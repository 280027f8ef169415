"""A kind of claim: its frames, its definition, its check."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from typing import TYPE_CHECKING, Any, Literal, TypeAlias

from .claim import Ask, Claim, Judgement, Outcome
from .frame import Frame
from .framing import compiled
from .slot import Test

if TYPE_CHECKING:
    from .here import Here
    from .sentence import Sentence

_TURNED = {
    Outcome.HOLDS: Outcome.FAILS,
    Outcome.FAILS: Outcome.HOLDS,
    Outcome.UNSETTLED: Outcome.UNSETTLED,
}
Slots = Mapping[str, Mapping[str, Any]]
Scan: TypeAlias = "Callable[[Here, Sentence], list[Claim]]"


@dataclass(frozen=True)
class Kind:
    """One file in `kinds` holds one `KIND`; the registry finds it there.

    id: as in findings and JSON. version: raised whenever the meaning changes, so that old evidence is not reused.
    definition: one sentence with its numbers. source: where the definition comes from. formula: the same as a formula, where
    something is reckoned.
    frames: what a plain clause must say, see `frame`. tests: slots of the kind's own that look at a noun phrase.
    slots: tables from words to values.
    read: from the slots of a frame to claims. glyphs: standard NAGs that make a claim of this kind.
    read_glyph: from such a NAG to claims. scan: looks at every sentence, read or not.
    check: the answer at the effort of `ask`.
    gives_way: kinds which, read of the same clause, say it better.
    tactic: of a tactical kind, whether it speaks for the claim's side (who forks) or against it (whose piece is trapped).
    flips: the claim may be denied ("does not win"): `check` is then asked of the claim without its denial, and holds and fails change
    places. Kinds that weigh a denial in their own way leave it out.
    """

    id: str
    title: str
    version: int
    definition: str
    check: Callable[[Claim, Ask], Judgement]
    source: str = "common practice"
    formula: str = ""
    frames: tuple[str, ...] = ()
    tests: Mapping[str, Test] = field(default_factory=dict)
    slots: Slots = field(default_factory=dict)
    read: Callable[[Here, dict[str, Any]], list[Claim]] | None = None
    glyphs: Mapping[int, Any] = field(default_factory=dict)
    read_glyph: Callable[[Here, int, Any], list[Claim]] | None = None
    scan: Scan | None = None
    flips: bool = False
    gives_way: frozenset[str] = frozenset()
    tactic: Literal["", "for", "against"] = ""

    def judge(self, claim: Claim, ask: Ask) -> Judgement:
        """The answer for a claim as spoken, its denial included."""
        if not (self.flips and claim.negated):
            found = self.check(claim, ask)
            return found if found.outcome is not Outcome.HOLDS else replace(found, instead=None)
        found = self.check(replace(claim, negated=False), ask)
        turned = _TURNED[found.outcome]
        instead = (found.instead or found.because) if turned is Outcome.FAILS else None
        return replace(found, outcome=turned, instead=instead, second=None)

    @cached_property
    def framed(self) -> tuple[Frame, ...]:
        """The frames, ready to match.

        :raises FrameError: when one is written wrongly.
        """
        return tuple(compiled(f, self.slots, self.tests) for f in self.frames)
