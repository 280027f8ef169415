"""The sign of each outcome: always a glyph and a word, so that nothing hangs on colour."""

from __future__ import annotations

from typing import Final

from lineproof.claims import Outcome

GLYPHS: Final = {Outcome.HOLDS: "●", Outcome.FAILS: "▲", Outcome.UNSETTLED: "◐"}

ORDER: Final = (Outcome.FAILS, Outcome.UNSETTLED, Outcome.HOLDS)
"""What the author must look at comes first."""


def sign(outcome: Outcome) -> str:
    """ "▲ fails"."""
    return f"{GLYPHS[outcome]} {outcome}"
