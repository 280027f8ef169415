"""Every theme keeps WCAG 2.2, success criterion 1.4.11: 3:1 for what must be told apart."""

from __future__ import annotations

from dataclasses import replace

import pytest

from lineproof.diagram import (
    PRINT,
    STAGE,
    THEMES,
    DiagramError,
    Theme,
    contrast_ratio,
    relative_luminance,
)
from lineproof.diagram.contrast import NON_TEXT_MINIMUM, TEXT_MINIMUM

Pairs = dict[str, tuple[str, str]]


def piece_pairs(theme: Theme) -> Pairs:
    """What makes the shape of a piece: its ink against each square and its own paper."""
    pairs = {
        "ink on light squares": (theme.ink, theme.light),
        "ink on dark squares": (theme.ink, theme.dark),
        "ink outline of a White piece on its paper": (theme.ink, theme.paper),
    }
    if theme.hatching:
        assert theme.knock_out, "hatching may not touch the outline of a piece"
        pairs["hairline on hatching"] = (theme.knock_out, theme.hatching)
    if theme.knock_out:
        pairs["ink on hairline"] = (theme.ink, theme.knock_out)
    return pairs


def mark_pairs(theme: Theme) -> Pairs:
    pairs = {
        "White's ideas on their halo": (theme.white_idea, theme.paper),
        "Black's ideas on their halo": (theme.black_idea, theme.paper),
        "dots of the move just played on their halo": (theme.ink, theme.paper),
    }
    if theme.hatching:
        pairs["halo on hatching"] = (theme.paper, theme.hatching)
    return pairs


def too_weak(pairs: Pairs, minimum: float = NON_TEXT_MINIMUM) -> dict[str, float]:
    ratios = {name: contrast_ratio(*pair) for name, pair in pairs.items()}
    return {name: ratio for name, ratio in ratios.items() if ratio < minimum}


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_each_piece_stands_out_from_each_square(theme: Theme) -> None:
    assert too_weak(piece_pairs(theme)) == {}


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_each_mark_stands_out_from_its_halo(theme: Theme) -> None:
    assert too_weak(mark_pairs(theme)) == {}


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_coordinates_and_rule_stand_out_from_the_page(theme: Theme) -> None:
    if theme.page is None:
        assert (theme.coordinates, theme.rule) == (None, None)
        return
    assert theme.coordinates is not None
    assert theme.rule is not None
    assert too_weak({"coordinates": (theme.coordinates, theme.page)}, TEXT_MINIMUM) == {}
    assert too_weak({"rule": (theme.rule, theme.page)}) == {}


@pytest.mark.parametrize("theme", THEMES, ids=lambda theme: theme.name)
def test_the_hairline_around_a_piece_is_of_its_paper(theme: Theme) -> None:
    assert theme.knock_out == theme.paper


def test_a_pale_ink_would_be_caught() -> None:
    assert "ink on dark squares" in too_weak(piece_pairs(replace(STAGE, ink="#8A7078")))


def test_a_pale_mark_would_be_caught() -> None:
    assert "White's ideas on their halo" in too_weak(
        mark_pairs(replace(PRINT, white_idea="#D9A441"))
    )


def test_black_on_white_is_the_largest_ratio() -> None:
    # WCAG 2.2, "contrast ratio": ratios range from 1 to 21.
    assert contrast_ratio("#000000", "#FFFFFF") == pytest.approx(21)
    assert contrast_ratio("#9A5200", "#9A5200") == pytest.approx(1)


def test_the_order_of_the_colours_does_not_matter() -> None:
    assert contrast_ratio("#9A5200", "#FBF7EE") == contrast_ratio("#FBF7EE", "#9A5200")


def test_the_known_edge_greys_on_white() -> None:
    # From memory: on white, #767676 is the lightest grey with 4.5:1 and #949494 that with 3:1.
    assert contrast_ratio("#767676", "#FFFFFF") >= 4.5 > contrast_ratio("#777777", "#FFFFFF")
    assert contrast_ratio("#949494", "#FFFFFF") >= 3 > contrast_ratio("#959595", "#FFFFFF")


def test_luminance_weighs_the_channels() -> None:
    # WCAG 2.2, "relative luminance": L = 0.2126 R + 0.7152 G + 0.0722 B (from memory).
    assert relative_luminance("#FF0000") == pytest.approx(0.2126)
    assert relative_luminance("#00FF00") == pytest.approx(0.7152)
    assert relative_luminance("#0000FF") == pytest.approx(0.0722)


@pytest.mark.parametrize("colour", ["red", "#FFF", "#GGGGGG", "#12345", '#000000"/><script>', ""])
def test_what_is_no_colour_is_refused(colour: str) -> None:
    with pytest.raises(DiagramError, match="is not a colour"):
        relative_luminance(colour)
    with pytest.raises(DiagramError, match="is not a colour"):
        replace(PRINT, dark=colour)
