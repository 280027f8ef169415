"""Lessons: lines and words in a PGN file or a lesson folder, read and written without loss.

>>> from lineproof.lesson import Lesson
>>> lesson = Lesson.from_text("1. e4 e5 (1... c5) 2. Nf3 *")
>>> [place.label for place in lesson.lines()]
['1... c5', '2. Nf3']
"""

from __future__ import annotations

from lineproof.lesson.errors import LessonError
from lineproof.lesson.lesson import Lesson
from lineproof.lesson.places import Comment, Game, Place
from lineproof.lesson.settings import Settings, Side

__all__ = ["Comment", "Game", "Lesson", "LessonError", "Place", "Settings", "Side"]
