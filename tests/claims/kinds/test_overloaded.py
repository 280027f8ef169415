"""Overloaded pieces. Definition: common practice."""

from __future__ import annotations

import pytest

TWO = "6k1/3q1ppp/8/1b6/6n1/7P/5PP1/1R1Q2K1 w - - 0 1"
"""The queen on d7 alone protects the bishop on b5 and the knight on g4."""
BOTH = "{%s} 1. hxg4 *"
SETUP = "4r1k1/5ppp/8/1b1q2n1/8/8/5PPP/1R2R1K1 w - - 0 1"


@pytest.fixture(scope="module")
def overload() -> str:
    # black queen d7 guards b5 (attacked by the rook) and the back rank square e8 against the rook
    return "6k1/3q1ppp/8/1b6/8/7P/5PP1/1R2R1K1 w - - 0 1"
