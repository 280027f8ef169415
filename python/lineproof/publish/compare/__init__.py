"""Two editions of a lesson: what was added, taken out and changed, in words for the audience of the older one."""

from __future__ import annotations

from .comparison import Comparison, compare
from .notice import notice
from .sides import Side, opened, unpublished

__all__ = ["Comparison", "Side", "compare", "notice", "opened", "unpublished"]
