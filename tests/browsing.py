"""The browser of the tests: Debian's Chromium through Playwright."""

from __future__ import annotations

import shutil
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, sync_playwright


@pytest.fixture(scope="package")
def browser() -> Iterator[Browser]:
    """Closed behind the last test of the package: while it is open, an event loop runs, and other tests run their own."""
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        pytest.fail("no Chromium to open pages in: apt-get install chromium")
    with sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        yield opened
        opened.close()
