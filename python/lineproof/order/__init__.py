"""The running order of a lesson: in which order it is best told, the script, the times, and what to cut."""

from __future__ import annotations

from .acts import Measure
from .cues import Cue
from .fitting import Cut
from .order import OrderError, Telling
from .running import RunningOrder, running_order

__all__ = ["Cue", "Cut", "Measure", "OrderError", "RunningOrder", "Telling", "running_order"]
