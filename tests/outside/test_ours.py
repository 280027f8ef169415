"""Our own engine, asked over UCI as an outside one, gives the findings that it gives when asked directly.

The two ways share the search but nothing of what is between it and the check, so each tests the other.
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest

import lineproof
from lineproof.proof import EvidenceStore
from tests.cli.command import COMMAND

pytestmark = pytest.mark.skipif(os.name != "posix", reason="the program is a shell script")

TEXT = """1. e4 e5 2. Nc3 Nf6 3. f4 {White is slightly better.} 3... d5! (3... exf4?? 4. e5 {White is winning.} Qe7
5. Qe2 {This is the only move.} Ng8 6. Nf3 d6 {This loses a piece.}) (3... Nc6? {Black is level.}) 4. fxe5 Nxe4
5. d3 Qh4+ 6. g3 Nxg3 7. Nf3 {White is winning.} *

1. f3 e5 2. g4 {Black has mate in one. White has mate in one.} Qh4# *
"""


def test_over_uci_and_directly_the_findings_are_the_same(tmp_path: Path) -> None:
    script = tmp_path / "ours"
    script.write_text(f"#!/bin/sh\nexec '{COMMAND}' engine uci\n")
    script.chmod(0o755)
    lesson = lineproof.Lesson.from_text(TEXT, side="white")
    directly = lesson.prove("sketch", store=EvidenceStore(None))
    over_uci = lesson.prove("sketch", store=EvidenceStore(None), engine=script)
    assert len(directly.findings) >= 10
    assert sum(finding.nodes > 0 for finding in over_uci.findings) >= 8
    for one, other in zip(directly.findings, over_uci.findings, strict=True):
        assert (str(one.outcome), one.because) == (str(other.outcome), other.because)
