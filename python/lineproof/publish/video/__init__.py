"""A lesson as a film: the running order on the stage board, as MP4.

The libraries of the extra `[video]` are imported only where they are used.
"""

from __future__ import annotations

from .claimed import Claimed
from .scenes import FRAMES, Scene, Still, extended, looped, scenes

__all__ = ["FRAMES", "Claimed", "Scene", "Still", "extended", "looped", "scenes"]
