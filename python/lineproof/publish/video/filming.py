"""Making a film: each picture is drawn, encoded and let go; what is not finished leaves nothing behind."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from itertools import pairwise
from pathlib import Path

import av

from lineproof.lesson.disk import reason
from lineproof.publish.captioning import Caption, Chapter
from lineproof.publish.product import Choices, PublishError

from .art import Art
from .film import Film
from .layout import Page
from .lettering import Lettering
from .scenes import Scene
from .voice import Voice


def film(
    scenes: Sequence[Scene],
    choices: Choices,
    *,
    flipped: bool,
    title: str,
    captions: Sequence[Caption] = (),
    chapters: Sequence[Chapter] = (),
    voice: Voice | None = None,
) -> bytes:
    """The bytes of an MP4 file. captions: a stream of their own, or in the pictures where the choices say so.

    :raises PublishError: when it cannot be made.
    """
    wide, high = choices.filming.size
    if choices.filming.vertical:
        wide, high = high, wide
    burnt = choices.filming.burn_captions and bool(captions)
    page = Page(wide, high, burnt)
    lettering = Lettering(page, captions if burnt else ())
    art = Art(page, flipped)
    end = scenes[-1].ends

    def tell(done: int) -> None:
        if choices.progress is not None:
            choices.progress(done, end)

    with tempfile.TemporaryDirectory(prefix="lineproof-") as folder:
        file = Path(folder) / "film.mp4"
        try:
            with Film(
                file,
                page,
                choices.filming.codec,
                captions=() if burnt else captions,
                chapters=chapters,
                end=end,
                title=title,
                voice=voice,
                constant_rate=choices.filming.constant_rate,
                tell=tell,
            ) as made:
                for scene in scenes:
                    for number, picture in enumerate(art.pictures(scene)):
                        at = scene.begins + number
                        until = scene.ends if scene.kind == "still" else at + 1
                        for begins, ends in pairwise(lettering.cuts(at, until)):
                            made.show(
                                lettering.on(picture, begins),
                                begins,
                                ends - begins,
                                key=scene.key and begins == scene.begins,
                            )
            return file.read_bytes()
        except (OSError, av.error.FFmpegError) as error:
            why = reason(error) if isinstance(error, OSError) else str(error)
            raise PublishError(
                f"the video cannot be made ({why})",
                path=tempfile.gettempdir(),
                hint="make room in the folder for temporary files, or name another with TMPDIR",
            ) from error
