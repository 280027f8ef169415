"""Writes the figurine fonts of the handout from the drawings of the pieces: a regular and a bold one.

    .venv/bin/python tools/figurines.py            writes them anew
    .venv/bin/python tools/figurines.py --check    fails when they are stale

A figurine is the White piece of the diagrams, its ink as one outline without a fill. It needs fonttools and skia-pathops.
"""

from __future__ import annotations

import argparse
import io
import sys
from pathlib import Path
from typing import Any, Final

import pathops
from fontTools.fontBuilder import FontBuilder
from fontTools.pens.boundsPen import BoundsPen
from fontTools.pens.cu2quPen import Cu2QuPen
from fontTools.pens.transformPen import TransformPen
from fontTools.pens.ttGlyphPen import TTGlyphPen
from fontTools.svgLib.path import parse_path

from lineproof.diagram import PIECES

ROOT = Path(__file__).resolve().parent.parent
FONTS: Final = ROOT / "python" / "lineproof" / "publish" / "handout" / "fonts"

FAMILY: Final = "Lineproof Figurine"
VERSION: Final = "1.000"
UNITS: Final = 1000
SCALE: Final = 18.5
"""Font units of a unit of the drawings: a piece is a little higher than a capital letter."""
GROUND: Final = 42
"""Where a piece stands, in the drawings; it lies on the line of the letters, or `BELOW` it."""
BELOW: Final = 25
BESIDE: Final = 52
"""White on either side."""
WEIGHTS: Final = (("Regular", 400, 2.4), ("Bold", 700, 3.5))
"""Name, class and width of the outline in units of the drawings."""
EPOCH: Final = 2082844800
"""1970-01-01 in seconds of the fonts' clock (OpenType specification, "head"): the same drawings give the same bytes."""
SIGNS: Final = dict(zip("kqrbnp", range(0x2654, 0x265A), strict=True))
"""Unicode's white chess pieces."""


def outline(data: str) -> pathops.Path:
    path = pathops.Path()
    if data:
        parse_path(data, path.getPen())
    path.simplify(fix_winding=True)
    return path


def ink(kind: str, width: float) -> pathops.Path:
    """What is black of a White piece: its outline, its crest, its cuts."""
    drawing = next(d for k, d in PIECES.items() if k == kind)
    body = outline(drawing.body)
    wide = pathops.Path(body)
    wide.stroke(2 * width, pathops.LineCap.BUTT_CAP, pathops.LineJoin.MITER_JOIN, 3)
    around = pathops.op(wide, body, pathops.PathOp.DIFFERENCE)
    inner = pathops.op(outline(drawing.crest), outline(drawing.cuts), pathops.PathOp.UNION)
    black = pathops.op(around, inner, pathops.PathOp.UNION)
    black.simplify(fix_winding=True)
    return black


def glyph(path: pathops.Path) -> tuple[Any, int]:
    """The glyph and its advance."""
    bounds = BoundsPen(None)
    path.draw(bounds)
    left, _, right, _ = bounds.bounds
    pen = TTGlyphPen(None)
    shift = BESIDE - left * SCALE
    place = (SCALE, 0, 0, -SCALE, shift, GROUND * SCALE - BELOW)
    path.draw(TransformPen(Cu2QuPen(pen, max_err=0.6, reverse_direction=False), place))
    return pen.glyph(), round((right - left) * SCALE) + 2 * BESIDE


def font(style: str, weight: int, width: float) -> bytes:
    glyphs: dict[str, Any] = {".notdef": TTGlyphPen(None).glyph()}
    advances = {".notdef": 500}
    names = {}
    for kind, code in SIGNS.items():
        name = names[code] = PIECES[kind].name  # type: ignore[index]
        glyphs[name], advances[name] = glyph(ink(kind, width))
    builder = FontBuilder(UNITS, isTTF=True)
    builder.setupGlyphOrder(list(glyphs))
    builder.setupCharacterMap(names)
    builder.setupGlyf(glyphs)
    builder.setupHorizontalMetrics(
        {n: (advance, glyphs[n].xMin if n != ".notdef" else 0) for n, advance in advances.items()}
    )
    builder.setupHorizontalHeader(ascent=800, descent=-200)
    builder.setupNameTable(
        {
            "copyright": "Copyright the Lineproof developers. GPL-3.0-or-later.",
            "familyName": FAMILY,
            "styleName": style,
            "uniqueFontIdentifier": f"{FAMILY} {style} {VERSION}",
            "fullName": f"{FAMILY} {style}",
            "version": f"Version {VERSION}",
            "psName": f"{FAMILY.replace(' ', '')}-{style}",
            "licenseDescription": "GPL-3.0-or-later",
        }
    )
    builder.setupOS2(
        sTypoAscender=800,
        sTypoDescender=-200,
        sTypoLineGap=0,
        usWinAscent=850,
        usWinDescent=200,
        usWeightClass=weight,
        fsSelection=0x20 if weight == 700 else 0x40,
        fsType=0,
        achVendID="LNPF",
    )
    builder.setupPost()
    builder.setupHead(
        unitsPerEm=UNITS, created=EPOCH, modified=EPOCH, macStyle=1 if weight == 700 else 0
    )
    builder.font.recalcTimestamp = False
    written = io.BytesIO()
    builder.save(written)
    return written.getvalue()


def main() -> int:
    parser = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    parser.add_argument("--check", action="store_true", help="only say whether they are stale")
    check = parser.parse_args().check
    stale = False
    for style, weight, width in WEIGHTS:
        file = FONTS / f"figurine-{style.lower()}.ttf"
        made = font(style, weight, width)
        if check:
            if not file.exists() or file.read_bytes() != made:
                print(f"{file.relative_to(ROOT)} is stale: run tools/figurines.py", file=sys.stderr)
                stale = True
        else:
            FONTS.mkdir(exist_ok=True)
            file.write_bytes(made)
    return int(stale)


if __name__ == "__main__":
    sys.exit(main())
