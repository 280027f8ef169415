"""The lesson in print: a PDF to hand out, by Typst."""

from __future__ import annotations

from lineproof.lesson import Lesson
from lineproof.publish.handout.fitting import fitted
from lineproof.publish.handout.typeset import typeset
from lineproof.publish.naming import slug_of
from lineproof.publish.product import Choices, Files, Found, Product


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:
    pdf = typeset(fitted(lesson, found, choices), lesson.name)
    return {f"{slug_of(lesson)}.pdf": pdf}


PRODUCT = Product("handout", "the lesson in print, with exercises: PDF", make, needs_study=True)
