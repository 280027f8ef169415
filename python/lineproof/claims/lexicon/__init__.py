"""The lexicon: the words of the trade and of plain English, with their synonyms, shared by every kind of claim.

One line is one idea: `attack: attack, hit, strike at, bear down on`. A phrase writes `<attack>` or `fork` and means every word of the line.
Adding a synonym is one word in one of these tables; a word may stand on several lines.

>>> "bear down on" in members("attack", VERBS)
True
>>> members("win", VERBS) >= {"win", "net", "pick up"}
True
"""

from __future__ import annotations

from .adjectives import ADJECTIVES
from .adverbs import ADVERBS
from .judgements import JUDGEMENTS
from .nouns import NOUNS
from .standings import STANDINGS
from .table import members
from .verbs import VERBS

__all__ = ["ADJECTIVES", "ADVERBS", "JUDGEMENTS", "NOUNS", "STANDINGS", "VERBS", "members"]
