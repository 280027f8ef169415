"""A product: a call from a lesson, what was found of it and the author's choices to files."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Final, Literal

from lineproof.lesson import Lesson, LessonError
from lineproof.order import RunningOrder
from lineproof.proof import Progress, Proof
from lineproof.replies import Study

from .editions import Edition
from .letters import Language, Signs

Paper = Literal["a4", "letter"]

Files = Mapping[str, bytes]
"""Contents by name; a name has no folder in it, and sorts as the lesson goes."""

WIDTH: Final = 720
"""Pixels of a picture where nothing is said: the width of a column of text on most pages (common practice)."""


class PublishError(LessonError):
    """The lesson, or a product of it, cannot be published; nothing was written."""


class UnknownProductError(PublishError):
    """There is no product of that name."""


@dataclass(frozen=True)
class Filming:
    """What the author chooses of the video. voice: a recording to lay under it. vertical: higher than wide.
    loop: the number of a line, from 1, which alone is shown. burn_captions: draws them into the pictures.
    constant_rate: each of the 30 frames a second is in the file, though it has not changed. size: in pixels, wide; multiples of 16."""

    voice: Path | None = None
    vertical: bool = False
    loop: int | None = None
    burn_captions: bool = False
    constant_rate: bool = False
    codec: Literal["h264", "av1"] = "h264"
    size: tuple[int, int] = (1920, 1080)


@dataclass(frozen=True)
class Choices:
    """What the author chooses. width: of pictures, in pixels. language: of the letters of the pieces, in moves only.

    Of the handout: notation: those letters or figurines; paper; columns, 1 or 2, by default one of large type and two of small; large: type.
    progress: told how far a product is that takes long.
    """

    width: int = WIDTH
    language: Language = "en"
    notation: Signs = "letters"
    paper: Paper = "a4"
    columns: int | None = None
    large: bool = False
    filming: Filming = Filming()
    progress: Progress | None = field(default=None, compare=False)


@dataclass(frozen=True)
class Found:
    """What was found of a lesson. study: None unless a product of the run asks for it. order: the running order that captions and
    video follow; None for the whole lesson's, without a study. edition: None for a lesson in no file."""

    proof: Proof
    study: Study | None = None
    order: RunningOrder | None = None
    edition: Edition | None = None

    @property
    def studied(self) -> Study:
        """The study, for a product that asks for it."""
        if self.study is None:
            raise ValueError("this product needs the study of the lesson")
        return self.study


@dataclass(frozen=True)
class Product:
    """One product. name: its folder, and its word after `--only`. needs_study: whether it asks for pause points.

    make: the same lesson, findings and choices give the same bytes. It raises `PublishError` where the lesson lacks what
    the product is made of, and gives no files where there is merely nothing to show.
    check: refuses before any work what the choices ask of it and cannot be had.
    notes: sentences for the author alone, on what could not be kept. on_request: made only where it is named, as it takes long.
    """

    name: str
    summary: str
    make: Callable[[Lesson, Found, Choices], Files]
    needs_study: bool = False
    notes: Callable[[Lesson, Found, Choices], tuple[str, ...]] | None = None
    on_request: bool = False
    check: Callable[[Lesson, Choices], None] | None = None
