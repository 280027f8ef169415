"""Effort: how much search a check may spend, and when it is raised."""

from __future__ import annotations

from enum import StrEnum

NEAR = 3.0
"""Points from an edge up to which the effort is raised."""


class Effort(StrEnum):
    """How much search a check may spend."""

    SKETCH = "sketch"
    NORMAL = "normal"
    THOROUGH = "thorough"

    @property
    def steps(self) -> tuple[int, ...]:
        """Nodes a search, step by step: each step is four times the one before, up to the cap."""
        return _STEPS[self]


_STEPS = {
    Effort.SKETCH: (40_000,),
    Effort.NORMAL: (400_000, 1_600_000, 6_400_000),
    Effort.THOROUGH: (4_000_000, 16_000_000, 64_000_000),
}
