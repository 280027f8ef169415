"""The published page is opened as a reader opens it."""

from __future__ import annotations

from tests.browsing import browser

__all__ = ["browser"]
