"""The moments that matter as pictures: SVG and PNG, seen from either side, each with its text alternative."""

from __future__ import annotations

from lineproof.diagram import DiagramError, RendererMissingError, diagram, png
from lineproof.lesson import Lesson
from lineproof.publish.moments import Moment, moments
from lineproof.publish.product import Choices, Files, Found, Product, PublishError

SIDES = (("white", False), ("black", True))


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:
    files: dict[str, bytes] = {}
    for moment in moments(lesson, found):
        files[f"{moment.name}.txt"] = f"{moment.title}\n{moment.text}\n".encode()
        for side, flipped in SIDES:
            svg = drawn(moment, choices.width, flipped=flipped)
            files[f"{moment.name}-from-{side}.svg"] = svg.encode()
            files[f"{moment.name}-from-{side}.png"] = _png(lesson, svg, choices.width)
    return files


def drawn(moment: Moment, width: int, *, flipped: bool) -> str:
    """The SVG of a moment; its title and description are the text alternative."""
    return diagram(
        moment.place.board.fen,
        marks=moment.marks,
        flipped=flipped,
        size=width,
        title=moment.title,
    )


def _png(lesson: Lesson, svg: str, width: int) -> bytes:
    try:
        return png(svg, width)
    except RendererMissingError as missing:
        raise PublishError(
            "PNG pictures need resvg-py",
            path=lesson.name,
            hint="pip install 'lineproof[publish]', or leave diagrams out with --only",
        ) from missing
    except DiagramError as wrong:
        raise PublishError(str(wrong), path=lesson.name) from wrong


PRODUCT = Product(
    "diagrams", "pause points, branch points and changes of the verdict as pictures", make, True
)
