"""What is said in a lesson as captions and chapters: WebVTT, SRT, a plain list."""

from __future__ import annotations

from .breaking import Caption, captions
from .chapters import Chapter, chapter_list, chapters
from .formats import srt, webvtt
from .reading import unkept

__all__ = ["Caption", "Chapter", "captions", "chapter_list", "chapters", "srt", "unkept", "webvtt"]
