"""Openings by name, against ECO ranges of the printed Encyclopaedia, A00 to E99 (from memory)."""

from __future__ import annotations

import re

import pytest

from lineproof.collection import opening
from lineproof.collection.asked import asked
from lineproof.collection.openings import by_key, table


@pytest.mark.parametrize(
    ("moves", "name"),
    [
        ("1. e4 e5 2. Nc3", "Vienna Game (C25 to C29)"),
        ("1. e4 e5 2. Nc3 Nf6 3. f4", "Vienna Gambit (C29)"),
        ("1. Nc3 e5 2. e4", "Vienna Game (C25 to C29)"),
        ("1. f4 e5 2. e4 Nf6 3. Nc3", "Vienna Gambit (C29)"),
        ("1. e4 e5 2. f4", "King's Gambit (C30 to C39)"),
        ("1. d4 Nf6 2. c4 e5", "Budapest Gambit (A51 to A52)"),
        ("1. c4 Nf6 2. d4 e5 3. dxe5 Ng4", "Budapest Gambit (A51 to A52)"),
        ("1. Nf3 c5 2. e4", "Sicilian Defence (B27 to B99)"),
        ("1. c4 e6 2. Nf3 d5 3. d4 Nf6 4. Nc3", "Queen's Gambit Declined (D37 to D69)"),
        (
            "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4 Nf6 5. O-O Nxe4 6. d4",
            "Ruy Lopez, Open (C80 to C83)",
        ),
        ("1. Nf3 d5 2. d4 Nf6 3. c4 g6 4. Nc3", "Grünfeld Defence (D90 to D99)"),
    ],
)
def test_an_opening_is_known_by_its_position(moves: str, name: str) -> None:
    assert str(opening(asked(moves).uci)) == name


def test_a_start_without_a_name_has_none() -> None:
    assert opening(asked("1. h4 h5").uci) is None
    assert opening(()) is None


def test_the_table_is_sound() -> None:
    lines = table()
    assert len(by_key()) == len(lines) > 100
    volumes = set()
    for one in by_key().values():
        assert re.fullmatch(r"[A-E]\d\d", one.first) and re.fullmatch(r"[A-E]\d\d", one.last)
        assert one.first[0] == one.last[0] and one.first <= one.last
        volumes.add(one.first[0])
    assert volumes == set("ABCDE")


def test_a_line_under_another_has_codes_within_its_range() -> None:
    """A variation's codes lie within those of the opening that its name begins with."""
    ranges: dict[str, list[str]] = {}
    for one in by_key().values():
        ranges.setdefault(one.name, []).extend((one.first, one.last))
    under = [one for one in by_key().values() if one.name.split(",")[0] in ranges]
    assert len(under) > len(ranges)
    for one in under:
        codes = ranges[one.name.split(",")[0]]
        assert min(codes) <= one.first and one.last <= max(codes), one
