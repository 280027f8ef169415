"""The engine: rules, search, and what a number of centipawns is worth.

>>> from lineproof.engine import search
>>> search("6k1/5ppp/8/8/8/8/8/R3K3 w - - 0 1", nodes=10_000).lines[0].san
('Ra8#',)
"""

from __future__ import annotations

from lineproof._engine import (
    AmbiguousMoveError,
    Board,
    FenError,
    IllegalMoveError,
    InCheckError,
    LimitError,
    MatchSettingError,
    MatchSummary,
    MoveSyntaxError,
    Stop,
    chances,
    mate,
    perft,
    play_match,
    points,
    uci,
)
from lineproof.engine.answer import Answer, Line, MoveCost
from lineproof.engine.searching import ENGINE_VERSION, safe_moves, search, threat

__all__ = [
    "ENGINE_VERSION",
    "AmbiguousMoveError",
    "Answer",
    "Board",
    "FenError",
    "IllegalMoveError",
    "InCheckError",
    "LimitError",
    "Line",
    "MatchSettingError",
    "MatchSummary",
    "MoveCost",
    "MoveSyntaxError",
    "Stop",
    "chances",
    "mate",
    "perft",
    "play_match",
    "points",
    "safe_moves",
    "search",
    "threat",
    "uci",
]
