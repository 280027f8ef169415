"""What is said as captions (WebVTT and SRT), and the chapters as a plain list, with the times of the running order."""

from __future__ import annotations

from lineproof.lesson import Lesson
from lineproof.publish.captioning import captions, chapter_list, chapters, srt, unkept, webvtt
from lineproof.publish.naming import slug_of
from lineproof.publish.product import Choices, Files, Found, Product
from lineproof.publish.told import left_out, told


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:  # noqa: ARG001 - one shape for all
    order = told(lesson, found, "captions")
    shown = captions(order)
    name = slug_of(lesson)
    return {
        f"{name}.vtt": webvtt(shown).encode(),
        f"{name}.srt": srt(shown).encode(),
        f"{name}-chapters.txt": chapter_list(chapters(order)).encode(),
    }


def notes(lesson: Lesson, found: Found, choices: Choices) -> tuple[str, ...]:  # noqa: ARG001 - one shape for all
    order = told(lesson, found, "captions")
    return left_out(order) + unkept(captions(order))


PRODUCT = Product(
    "captions", "what is said, as WebVTT and SRT, and a list of chapters", make, notes=notes
)
