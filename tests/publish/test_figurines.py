"""The figurine fonts: complete, and made of the pieces of the diagrams."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest
from fontTools.pens.areaPen import AreaPen
from fontTools.ttLib import TTFont

from lineproof.publish.handout.typeset import FONTS
from lineproof.publish.letters import FIGURINES

TOOL = Path(__file__).parents[2] / "tools" / "figurines.py"
FILES = ("figurine-regular.ttf", "figurine-bold.ttf")


def area(font: TTFont, sign: str) -> float:
    """Of the ink, in font units."""
    glyphs = font.getGlyphSet()
    pen = AreaPen(glyphs)
    glyphs[font.getBestCmap()[ord(sign)]].draw(pen)
    return abs(float(pen.value))


def test_the_committed_fonts_are_those_that_the_tool_makes() -> None:
    pytest.importorskip("pathops")
    subprocess.run([sys.executable, str(TOOL), "--check"], check=True)


@pytest.mark.parametrize("file", FILES)
def test_a_font_has_every_figurine_and_a_complete_name_table(file: str) -> None:
    font = TTFont(FONTS / file)
    assert set(map(ord, FIGURINES)) <= set(font.getBestCmap())
    for number in (1, 2, 3, 4, 5, 6):  # OpenType specification, "name": what every font has
        assert font["name"].getDebugName(number)
    assert font["OS/2"].fsType == 0
    for sign in FIGURINES:
        assert 0 < area(font, sign) < 800 * 1000 / 2


def test_bold_figurines_have_more_ink() -> None:
    regular, bold = (TTFont(FONTS / file) for file in FILES)
    assert all(area(bold, sign) > 1.15 * area(regular, sign) for sign in FIGURINES)


def test_no_two_figurines_are_alike() -> None:
    font = TTFont(FONTS / FILES[0])
    assert len({area(font, sign) for sign in FIGURINES}) == len(FIGURINES)
