"""Students' games against the lesson."""

from .departures import Common, Departure, Followed, follow
from .games import FollowError, Played, of_player, played, played_in

__all__ = [
    "Common",
    "Departure",
    "FollowError",
    "Followed",
    "Played",
    "follow",
    "of_player",
    "played",
    "played_in",
]
