"""How quickly the desk answers on a lesson of 2,000 positions: `python benchmarks/desk.py [--positions 2000] [--keys 200]`.

The lesson is made up: legal moves drawn by a fixed seed, a branch at every seventh move, words at every third that say something that
can be checked. In Debian's Chromium: the time from asking for the page to its first paint, and to the lesson's words being there; then keys are
typed into the words of a comment, 12 a second, and the time from each key to the frame that shows it is taken. The same keys are typed into an
empty page with a plain text field: the ratio to that is what the desk adds.
"""

from __future__ import annotations

import argparse
import os
import random
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from lineproof.engine import Board

RUN = "import sys; from lineproof.cli import main; sys.exit(main())"
SAID = (
    "White is a pawn up.",
    "The knight on f6 is pinned to the king.",
    "Black cannot castle any more, and that is a lasting cost.",
    "I have always liked this move; it asks a question.",
)
SEED = 8
BRANCH, SPEAK, LONGEST = 7, 3, 60
GAP = 1000 / 12
"""Milliseconds between keys: 12 a second, a fast typist (common practice)."""

LISTEN = """() => {
  window.taken = [];
  addEventListener("keydown", () => {
    const at = performance.now();
    requestAnimationFrame(() => { const frame = new MessageChannel(); frame.port1.onmessage = () => window.taken.push(performance.now() - at); frame.port2.postMessage(0); });
  }, {capture: true});
}"""


def lesson(positions: int) -> str:
    """The PGN text of a lesson of so many positions."""
    draw = random.Random(SEED)
    made = 0

    def line(board: Board, ply: int, length: int, depth: int) -> str:
        nonlocal made
        words: list[str] = []
        spoken = True
        for _ in range(length):
            moves = board.legal_moves()
            if made >= positions or not moves:
                break
            uci = draw.choice(moves)
            number = f"{ply // 2 + 1}." if ply % 2 == 0 else f"{ply // 2 + 1}..." if spoken else ""
            words.append(f"{number} {board.san(uci)}".strip())
            made += 1
            spoken = made % SPEAK == 0
            if spoken:
                words.append("{%s}" % " ".join(draw.sample(SAID, 2)))
            others = [other for other in moves if other != uci]
            if made % BRANCH == 0 and depth < 3 and others:
                other = draw.choice(others)
                made += 1
                head = f"{ply // 2 + 1}{'.' if ply % 2 == 0 else '...'} {board.san(other)}"
                rest = line(board.play(other), ply + 1, draw.randint(4, 14), depth + 1)
                words.append(f"({head} {rest})".replace(" )", ")"))
                spoken = True
            board, ply = board.play(uci), ply + 1
        return " ".join(words)

    games = []
    while made < positions:
        games.append(f'[Event "Part {len(games) + 1}"]\n\n{line(Board(), 0, LONGEST, 0)} *\n')
    return "\n".join(games)


def typed(page: Page, keys: int) -> list[float]:
    """Milliseconds from each key to its frame."""
    page.evaluate(LISTEN)
    for index in range(keys):
        page.keyboard.press("abcde "[index % 6])
        page.wait_for_timeout(GAP)
    page.wait_for_timeout(300)
    taken: list[float] = page.evaluate("window.taken")
    return taken


def percentile(values: list[float], part: int) -> float:
    return statistics.quantiles(values, n=100)[part - 1]


def main() -> int:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--positions", type=int, default=2000)
    parser.add_argument("--keys", type=int, default=200)
    options = parser.parse_args()
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        print("no Chromium: apt-get install chromium", file=sys.stderr)
        return 1
    with tempfile.TemporaryDirectory() as name, sync_playwright() as playwright:
        folder = Path(name)
        path = folder / "long.pgn"
        path.write_text(lesson(options.positions), encoding="utf-8")
        process = subprocess.Popen(
            [sys.executable, "-c", RUN, "desk", str(path), "--no-browser", "--effort", "sketch"],
            stdout=subprocess.PIPE, text=True, env={**os.environ, "LINEPROOF_DATA": str(folder / "data")},
        )  # fmt: skip
        try:
            assert process.stdout
            found = re.search(r"http://\S+", process.stdout.readline())
            assert found, "the desk has not told its address"
            browser = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
            page = browser.new_page(viewport={"width": 1440, "height": 900})
            page.goto(found[0])
            page.locator("desk-words").nth(3).wait_for(state="attached")
            ready = page.evaluate("performance.now()")
            painted = page.evaluate(
                "performance.getEntriesByName('first-contentful-paint')[0].startTime"
            )
            count = page.locator(".counted").inner_text()
            print(f"{options.positions} positions; {count}")
            print(f"first paint {painted:.0f} ms, the lesson's words {ready:.0f} ms")
            words = page.locator("desk-words").nth(40)
            words.scroll_into_view_if_needed()
            words.click()
            page.keyboard.press("End")
            desk = typed(page, options.keys)
            plain_page = browser.new_page()
            plain_page.set_content("<textarea autofocus></textarea>")
            plain_page.locator("textarea").click()
            plain = typed(plain_page, options.keys)
            browser.close()
        finally:
            process.terminate()
            process.wait(30)
    for label, values in (("the desk", desk), ("a plain text field", plain)):
        print(
            f"a key in {label}: median {statistics.median(values):.0f} ms, "
            f"95th percentile {percentile(values, 95):.0f} ms, longest {max(values):.0f} ms"
        )
    print(f"ratio of the 95th percentiles: {percentile(desk, 95) / percentile(plain, 95):.1f}")
    return 0


if __name__ == "__main__":
    sys.exit(main())
