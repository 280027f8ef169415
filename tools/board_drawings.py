"""Writes web/src/board/drawn.ts: the board's drawings and colours, and the printed signs, for the page.

    .venv/bin/python tools/board_drawings.py            writes it anew
    .venv/bin/python tools/board_drawings.py --check    fails when it is stale

The page's board and the diagrams of the report, the handout and the pictures are the same drawings, kept once.
"""

from __future__ import annotations

import argparse
import json
import sys
from dataclasses import fields
from pathlib import Path
from typing import get_args

from lineproof.diagram import PIECES, THEMES, Side, Theme
from lineproof.diagram import mark_drawing as marks
from lineproof.diagram.glyphs import COORDINATES
from lineproof.diagram.pieces import UNIT
from lineproof.diagram.placement import LETTERS
from lineproof.diagram.sprite import definitions
from lineproof.report.printed import SIGNS

ROOT = Path(__file__).resolve().parent.parent
DRAWN = ROOT / "web" / "src" / "board" / "drawn.ts"

COLOURS = [field.name for field in fields(Theme) if field.name != "name"]

HEAD = """\
// Written by tools/board_drawings.py from lineproof.diagram and lineproof.report; `make lint` fails when it is stale.
"""


def variable(colour: str) -> str:
    """The CSS variable that stands for a colour of the theme."""
    return f"--board-{colour.replace('_', '-')}"


def sprite() -> str:
    """The parts of a board, drawn in variables in place of one theme's colours."""
    stand_ins = {colour: f"#00000{index:x}" for index, colour in enumerate(COLOURS)}
    text = definitions(
        Theme(name="board", **stand_ins), "board", pieces=LETTERS, glyphs=COORDINATES
    )
    for colour, stand_in in stand_ins.items():
        text = text.replace(f'"{stand_in}"', f'"var({variable(colour)})"')
    return text


def rules(theme: Theme) -> str:
    """A theme as the values of the variables; what it does not draw is transparent."""
    return "".join(
        f"{variable(colour)}:{getattr(theme, colour) or 'transparent'};" for colour in COLOURS
    )


def drawn() -> str:
    """The module's text."""
    dashes = {
        stroke: {side: marks.dash_pattern(stroke, side) for side in get_args(Side)}
        for stroke in get_args(marks.Stroke)
    }
    sizes = {
        "unit": UNIT,
        "halo": marks.HALO,
        "cornerWidth": marks.WIDTHS["corner"],
        "moveWidth": marks.WIDTHS["move"],
        "pinWidth": marks.WIDTHS["pin"],
        "cornerInset": marks.CORNER_INSET,
        "cornerArm": marks.CORNER_ARM,
        "ringRadius": marks.RING_RADIUS,
        "ringAway": marks.RING_AWAY,
        "wedgeAway": marks.WEDGE_AWAY,
        "wedgeLength": marks.WEDGE_LENGTH,
        "wedgeHalf": marks.WEDGE_HALF,
        "pinAway": marks._PIN_AWAY,
        "dotInset": marks._DOT_INSET,
        "dotRadius": marks._DOT_RADIUS,
    }
    values = {
        "SIZES": sizes,
        "DASHES": dashes,
        "NAMES": {kind: drawing.name for kind, drawing in PIECES.items()},
        "SIGNS": SIGNS,
        "THEMES": {theme.name: rules(theme) for theme in THEMES},
        "SPRITE": sprite(),
    }
    return HEAD + "".join(
        f"export const {name} = {json.dumps(value, indent=2)} as const;\n"
        for name, value in values.items()
    )


def main() -> int:
    """Writes or checks the module. Exit status 1: it is stale."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--check", action="store_true", help="change nothing; fail when stale")
    options = parser.parse_args()
    text = drawn()
    written = DRAWN.read_text(encoding="utf-8") if DRAWN.exists() else ""
    if text == written:
        return 0
    if options.check:
        print(
            "web/src/board/drawn.ts is not what the code says; run: python tools/board_drawings.py"
        )
        return 1
    DRAWN.parent.mkdir(parents=True, exist_ok=True)
    DRAWN.write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
