"""Captions that are drawn into pictures: every character is there, and every line fits."""

from __future__ import annotations

import unicodedata
from xml.sax.saxutils import escape

import numpy as np
import pytest

from lineproof.diagram import png
from lineproof.publish.captioning import Caption
from lineproof.publish.video.art import Art, decoded
from lineproof.publish.video.characters import COVERED, LACKING, lacking, shown
from lineproof.publish.video.layout import Page
from lineproof.publish.video.lettering import FAMILY, FONT, Lettering
from lineproof.publish.video.scenes import Still

EMPTY = Still("8/8/8/8/8/8/8/8 w - - 0 1")


def inked(text: str) -> np.ndarray:  # type: ignore[type-arg]
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="48" height="48"><text x="12" y="36" font-family="{FAMILY}"'
        f' font-size="24">{escape(text)}</text></svg>'
    )
    return decoded(png(svg, 48, fonts=(FONT,)))[:, :, 3]


def test_every_character_that_is_said_to_be_there_is_drawn() -> None:
    sign = inked(LACKING)
    assert sign.any()
    drawn = 0
    for first, last in COVERED:
        for code in range(first, last + 1):
            character = chr(code)
            if unicodedata.category(character) in ("Zs", "Cf", "Cn") or code == 0xFFFD:
                continue
            mine = inked(f"o{character}" if unicodedata.combining(character) else character)
            assert mine.any() and (mine != sign).any(), hex(code)
            drawn += 1
    assert drawn > 600


def test_a_character_that_is_not_there_is_shown_as_one_sign() -> None:
    assert shown("Le\u0301gal’s — ♞ <b>") == "Légal’s — ♞ <b>"
    assert shown("\u5c06\U0001f468!") == f"{LACKING}{LACKING}!"
    assert lacking(["\u5c06 a \u05d0", "\u5c06"]) == ["\u5c06", "\u05d0"]
    for first, last in COVERED:
        assert not lacking([chr(first), chr(last)]) or unicodedata.normalize(
            "NFC", chr(first)
        ) != chr(first)


@pytest.mark.parametrize("size", [(1920, 1080), (1080, 1920), (640, 384)])
def test_two_lines_of_broad_letters_fit_below_the_board(size: tuple[int, int]) -> None:
    page = Page(*size, words=True)
    empty = Art(page, False).still(EMPTY)
    for lines in (("W" * 42, "W" * 42), ("(Légal’s jpqyg)", "<b>&amp;</b> jpqyÅ")):
        lettering = Lettering(page, [Caption(0, 1000, lines)])
        made = lettering.on(empty, 0)
        differ = (made != empty).any(axis=2)
        rows, columns = (np.flatnonzero(differ.any(axis=axis)) for axis in (1, 0))
        assert rows[0] >= page.top + page.board + page.square // 12 * 2
        assert rows[-1] < page.height - 4
        assert 0.02 * page.width < columns[0] and columns[-1] < 0.98 * page.width
        assert abs(columns[0] + columns[-1] - page.width) < 0.02 * page.width


def test_a_caption_stands_from_its_first_frame_to_its_last() -> None:
    page = Page(640, 384, words=True)
    empty = Art(page, False).still(EMPTY)
    lettering = Lettering(page, [Caption(500, 1000, ("One",)), Caption(1000, 1100, ("Two",))])
    assert lettering.cuts(0, 60) == [0, 15, 30, 33, 60]
    assert lettering.cuts(20, 25) == [20, 25]
    with_words = [bool((lettering.on(empty, at) != empty).any()) for at in range(60)]
    assert with_words == [False] * 15 + [True] * 18 + [False] * 27
