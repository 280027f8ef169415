"""The sign of each outcome: always a glyph and a word, so that nothing hangs on colour."""

from __future__ import annotations

from typing import Final

from lineproof.claims import Outcome

GLYPHS: Final = {Outcome.HOLDS: "●", Outcome.FAILS: "▲", Outcome.UNSETTLED: "◐"}


def sign(outcome: Outcome) -> str:
    """ "▲ fails"."""
    return f"{GLYPHS[outcome]} {outcome}"
