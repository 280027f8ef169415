"""Making a film: each picture is drawn, encoded and let go; what is not finished leaves nothing behind."""

from __future__ import annotations

import tempfile
from collections.abc import Sequence
from pathlib import Path

import av

from lineproof.lesson.disk import reason
from lineproof.publish.captioning import Caption, Chapter
from lineproof.publish.product import Choices, PublishError

from .art import Art
from .film import Film
from .layout import Page
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
    """The bytes of an MP4 file.

    :raises PublishError: when it cannot be made.
    """
    wide, high = choices.filming.size
    page = Page(high, wide) if choices.filming.vertical else Page(wide, high)
    art = Art(page, flipped)
    end = scenes[-1].ends
    with tempfile.TemporaryDirectory(prefix="lineproof-") as folder:
        file = Path(folder) / "film.mp4"
        try:
            with Film(
                file,
                page,
                choices.filming.codec,
                captions=captions,
                chapters=chapters,
                end=end,
                title=title,
                voice=voice,
            ) as made:
                for scene in scenes:
                    if choices.progress is not None:
                        choices.progress(scene.begins, end)
                    for number, picture in enumerate(art.pictures(scene)):
                        lasts = scene.ends - scene.begins if scene.kind == "still" else 1
                        made.show(
                            picture, scene.begins + number, lasts, key=scene.key and number == 0
                        )
            return file.read_bytes()
        except (OSError, av.error.FFmpegError) as error:
            why = reason(error) if isinstance(error, OSError) else str(error)
            raise PublishError(
                f"the video cannot be made ({why})",
                path=folder,
                hint="make room in the folder for temporary files, or name another with TMPDIR",
            ) from error
