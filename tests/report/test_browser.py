"""The HTML reports in a real browser: they are drawn, fit a phone, and follow the reader's theme."""

from __future__ import annotations

import html as markup
import json
import re
import shutil
import struct
import subprocess
from pathlib import Path

import pytest
from playwright.sync_api import sync_playwright

from lineproof.facade import Proof, Study
from lineproof.report.html import html
from lineproof.report.studied_html import study_html

HARNESS = """<!DOCTYPE html><meta charset="utf-8"><body><script>
const frame = document.createElement("iframe");
frame.style.cssText = "border:0;width:%(width)dpx;height:800px";
frame.onload = () => {
  const page = frame.contentDocument, look = (e) => frame.contentWindow.getComputedStyle(e);
  const shown = (c) => [...page.querySelectorAll("figure ." + c)].filter((e) => look(e).display !== "none").length;
  const told = JSON.stringify({
    wide: page.documentElement.scrollWidth, text: look(page.body).fontSize,
    day: shown("by-day"), night: shown("by-night"), paper: look(page.body).backgroundColor,
  });
  document.body.innerHTML = '<pre id="found"></pre>';
  document.getElementById("found").textContent = told;
};
frame.srcdoc = document.getElementById("page").textContent;
document.body.append(frame);
</script></body>"""


FOCUSED = """() => {
  const at = document.activeElement, style = getComputedStyle(at);
  const seen = style.outlineStyle === "solid" && parseFloat(style.outlineWidth) >= 2;
  return seen ? [...document.querySelectorAll("a")].indexOf(at) : -1;
}"""
"""Which link has the focus; -1 where none has, or it is not seen."""


@pytest.fixture(scope="module")
def chromium() -> str:
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    if found is None:
        pytest.fail("no Chromium to draw the report with: apt-get install chromium")
    return found


@pytest.fixture(scope="module", params=["proof", "study"])
def text(request: pytest.FixtureRequest, proof: Proof, study: Study) -> str:
    """A report of each sort."""
    return html(proof) if request.param == "proof" else study_html(study)


def run(chromium: str, folder: Path, *arguments: str) -> str:
    done = subprocess.run(
        [
            chromium, "--headless=new", "--no-sandbox", "--disable-gpu", "--hide-scrollbars",
            f"--user-data-dir={folder / 'profile'}", *arguments,
        ],
        capture_output=True, text=True, timeout=120, check=True,
    )  # fmt: skip
    return done.stdout


def measured(
    chromium: str, folder: Path, text: str, width: int, *arguments: str
) -> dict[str, str | int]:
    """What a browser says of the page in a frame `width` pixels wide."""
    page = f'<script type="text/plain" id="page">{text}</script>'
    harness = folder / "harness.html"
    harness.write_text(page + HARNESS % {"width": width}, encoding="utf-8")
    dom = run(
        chromium, folder, "--virtual-time-budget=5000", *arguments, "--dump-dom", harness.as_uri()
    )
    found = re.search(r'<pre id="found">(.*?)</pre>', dom)
    assert found, "the page was not loaded"
    value: dict[str, str | int] = json.loads(markup.unescape(found[1]))
    return value


def test_it_is_drawn(chromium: str, text: str, tmp_path: Path) -> None:
    file = tmp_path / "report.html"
    file.write_text(text, encoding="utf-8")
    blank = tmp_path / "blank.html"
    blank.write_text("<!DOCTYPE html><title>blank</title>")
    sizes = {}
    for page in (file, blank):
        shot = page.with_suffix(".png")
        run(chromium, tmp_path, "--window-size=1280,1600", f"--screenshot={shot}", page.as_uri())
        data = shot.read_bytes()
        assert struct.unpack(">II", data[16:24]) == (1280, 1600)
        sizes[page] = len(data)
    assert sizes[file] > 10 * sizes[blank]


@pytest.mark.parametrize("width", [320, 360, 768, 1280])
def test_it_never_scrolls_sideways(chromium: str, text: str, tmp_path: Path, width: int) -> None:
    """WCAG 2.2, success criterion 1.4.10: no scrolling in two dimensions from 320 CSS pixels on."""
    found = measured(chromium, tmp_path, text, width)
    assert found["wide"] == width
    assert float(str(found["text"]).removesuffix("px")) >= 16


def test_every_link_is_reached_by_keyboard_and_seen_when_it_is(
    chromium: str, text: str, tmp_path: Path
) -> None:
    """WCAG 2.2, success criteria 2.1.1 and 2.4.7."""
    file = tmp_path / "report.html"
    file.write_text(text, encoding="utf-8")
    links = text.count("<a ")
    assert links > 10
    reached = set()
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        page = opened.new_page(viewport={"width": 800, "height": 800})
        page.goto(file.as_uri())
        for _ in range(links):
            page.keyboard.press("Tab")
            reached.add(page.evaluate(FOCUSED))
        opened.close()
    assert reached == set(range(links))


def test_the_diagrams_follow_the_theme(chromium: str, text: str, tmp_path: Path) -> None:
    count = text.count("<figure>")
    day = measured(chromium, tmp_path, text, 800)
    night = measured(chromium, tmp_path, text, 800, "--blink-settings=preferredColorScheme=0")
    assert (day["day"], day["night"]) == (count, 0)
    assert (night["day"], night["night"]) == (0, count)
    assert day["paper"] != night["paper"]


def test_it_prints(chromium: str, text: str, tmp_path: Path) -> None:
    file, printed = tmp_path / "report.html", tmp_path / "report.pdf"
    file.write_text(text, encoding="utf-8")
    run(chromium, tmp_path, "--no-pdf-header-footer", f"--print-to-pdf={printed}", file.as_uri())
    data = printed.read_bytes()
    assert data.startswith(b"%PDF-")
    assert len(re.findall(rb"/Type\s*/Page\b", data)) >= 2
