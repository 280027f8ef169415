"""Reports: the answer of a proof in the terminal, as one HTML file, as JSON."""

from __future__ import annotations

from .answer import Answer, Changed, answer, changed
from .located import Located, located

__all__ = ["Answer", "Changed", "Located", "answer", "changed", "located"]
