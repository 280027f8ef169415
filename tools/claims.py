"""Writes docs/claims.md: what every kind of claim means, from the code.

    .venv/bin/python tools/claims.py            writes it anew
    .venv/bin/python tools/claims.py --check    fails when it is stale

Numbers are read from the constants of the code, examples from the tests of the kinds.
"""

from __future__ import annotations

import argparse
import ast
import inspect
import sys
from collections.abc import Iterator
from pathlib import Path

from example_phrases import examples

from lineproof.claims import all_kinds
from lineproof.claims.amounts import LEAST, MOST, WORTH
from lineproof.claims.bands import Band, Mark, limits, mark
from lineproof.claims.board import VALUES
from lineproof.claims.cost import LOST, SAFE
from lineproof.claims.gain import HORIZON, QUIET
from lineproof.claims.kind import Kind
from lineproof.claims.passing import PAWN, POINTS
from lineproof.proof.contradictions import RULES
from lineproof.proof.effort import NEAR, Effort

ROOT = Path(__file__).resolve().parent.parent
PAGE = ROOT / "docs" / "claims.md"
EXAMPLES = 4
"""Examples of a kind at most."""

_BANDS = {
    Band.LEVEL: "level",
    Band.SLIGHT: "slightly better",
    Band.CLEAR: "clearly better",
    Band.WINNING: "winning",
}
_SIGNS = {1: "!", 2: "?", 3: "!!", 4: "??", 5: "!?", 6: "?!", 7: "□", 8: "□ (singular)"}
"""PGN standard (1994-03-12), section 10: signs of the moves. The others are named by number."""


def page() -> str:
    """The whole document."""
    kinds = sorted(all_kinds(), key=lambda kind: kind.title)
    return (
        "\n".join(
            [
                *_opening(kinds),
                *(line for kind in kinds for line in _kind(kind)),
                *_contradictions(),
            ]
        )
        + "\n"
    )


def _opening(kinds: list[Kind]) -> Iterator[str]:
    yield "# What a claim means"
    yield ""
    yield "Made from the code by `tools/claims.py`; `make lint` fails when the two differ. Every number is `common"
    yield "practice` unless a source is named: handbooks give few."
    yield ""
    yield "## What the numbers are made of"
    yield ""
    yield "| name | what it is |"
    yield "|---|---|"
    for name, meaning in _terms():
        yield f"| {name} | {meaning} |"
    yield ""
    yield "| verdict | points of the side spoken of |"
    yield "|---|---|"
    for of, name in _BANDS.items():
        low, high = limits(of)
        yield f"| {name} | {low} up to {'100' if of is Band.WINNING else high} |"
    yield ""
    yield "A lower edge belongs to its band, an upper edge to the next; for the other side the bands are mirrored."
    yield ""
    yield "| mark | whole points of cost from which, where no result class is lost |"
    yield "|---|---|"
    signs = {Mark.GOOD: "!", Mark.DUBIOUS: "?!", Mark.MISTAKE: "?", Mark.BLUNDER: "??"}
    for earned, sign in signs.items():
        # from 84 down to 15 no result class is lost
        yield f"| {sign} | {next(cost for cost in range(70) if mark(84, 84 - cost) is earned)} |"
    yield ""
    yield "| amount | pawns net from which it counts as won | from which without a note | at most | its value |"
    yield "|---|---|---|---|---|"
    for name, (least, clean) in LEAST.items():
        value = WORTH.get(name, "")
        yield f"| {name} | {least:g} | {clean:g} | {MOST.get(name, '')} | {value} |"
    yield ""
    yield "A finding **holds**, **fails** or is **unsettled**. A verdict one band off and a mark one mark off are unsettled, and"
    yield "counted apart. The effort is raised where a number stands near an edge, and the last two steps must agree."
    yield ""
    yield f"## The {len(kinds)} kinds"


def _contradictions() -> Iterator[str]:
    yield ""
    yield "## What contradicts"
    yield ""
    yield "Two claims in different sentences or glyphs that cannot both be true. Positions are the same by FIDE's Laws (9.2.3),"
    yield "on whatever road they are reached. What both checks let hold is no contradiction, but for two moves that words call the best."
    yield ""
    for rule, meaning in RULES.items():
        yield f"* **{rule}**: {meaning}"


def _terms() -> Iterator[tuple[str, str]]:
    values = ", ".join(f"{VALUES[piece]}" for piece in "pnbrq")
    yield (
        "points",
        "expected score out of 100 after best play, from a table fitted to games ([engine.md](engine.md)); of the side spoken of",
    )
    yield (
        "material",
        f"values {values} for pawn, knight, bishop, rook and queen; own less the enemy's",
    )
    yield (
        "best, played",
        "points after the best move and after the move spoken of, each searched alone at the same nodes",
    )
    yield "cost", f"best - played; not counted with best < {LOST}"
    yield "safe move", f"cost <= {SAFE}, or best > 90 and played >= 85"
    yield "result class", f"win: points >= 85; hold: >= {LOST}; loss: below"
    yield (
        "end of best play",
        f"best play until for {QUIET} plies running no capture gains a pawn, at most {HORIZON} plies",
    )
    yield (
        "exchange(square)",
        "what capturing there gains in pawns, each side with its cheapest piece, stopping when that pays better",
    )
    yield (
        "pass",
        f"the other side does nothing for a move; what is gained is a threat from {PAWN} pawn or {POINTS} points on",
    )
    for effort in Effort:
        steps = ", then ".join(f"{step:,}" for step in effort.steps)
        yield f"{effort} effort", f"{steps} nodes a search"
    yield (
        "near an edge",
        f"at most {NEAR:g} points from the next outcome, or a pawn short of an amount: the effort is raised to its next step",
    )


def _kind(kind: Kind) -> Iterator[str]:
    yield ""
    yield f"### {kind.title}"
    yield ""
    yield f"`{kind.id}`, version {kind.version}, {_sort(kind)}"
    yield ""
    yield kind.definition
    yield ""
    if kind.formula:
        yield f"* Formula: `{kind.formula}`"
    numbers = list(_numbers(kind))
    if numbers:
        yield f"* Numbers: {'; '.join(numbers)}"
    yield f"* Source: {kind.source}"
    if kind.glyphs:
        signs = [_SIGNS.get(nag, f"${nag}") for nag in kind.glyphs]
        yield f"* Glyphs: {', '.join(signs)}"
    if kind.flips:
        yield "* A denial turns holds and fails round."
    said = examples(kind, EXAMPLES)
    if said:
        yield f"* Said like this: {'; '.join(f'“{text}”' for text in said)}"
    elif kind.scan is not None:
        yield "* Looked for in every sentence, whatever its words."


def _sort(kind: Kind) -> str:
    """A board fact or a search fact, by whether the kind's code asks anything."""
    if kind.id == "frequency":
        return "a collection fact"
    source = inspect.getsource(inspect.getmodule(kind.check) or kind.check)
    asks = any(
        isinstance(node, ast.Name) and node.id == "ask" for node in ast.walk(ast.parse(source))
    )
    return "a search fact" if asks else "a fact of the board, exact"


def _numbers(kind: Kind) -> Iterator[str]:
    """The whole numbers that the kind's file names, each with what is said of it there."""
    module = inspect.getmodule(kind.check)
    assert module is not None
    body = ast.parse(inspect.getsource(module)).body
    for node, after in zip(body, [*body[1:], None], strict=True):
        if not isinstance(node, ast.Assign) or not isinstance(node.targets[0], ast.Name):
            continue
        value = getattr(module, node.targets[0].id)
        if isinstance(value, bool) or not isinstance(value, int | float):
            continue
        if isinstance(after, ast.Expr) and isinstance(after.value, ast.Constant):
            said = str(after.value.value).split("\n")[0].rstrip(".")
            yield f"{value:,} ({said[0].lower()}{said[1:]})"


def main() -> int:
    """Writes or checks the document. Exit status 1: it is stale."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--check", action="store_true", help="change nothing; fail when stale")
    options = parser.parse_args()
    text = page()
    written = PAGE.read_text(encoding="utf-8") if PAGE.exists() else ""
    if text == written:
        return 0
    if options.check:
        print("docs/claims.md is not what the code says; run: python tools/claims.py")
        return 1
    PAGE.write_text(text, encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
