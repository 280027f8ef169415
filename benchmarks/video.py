"""How fast a video is made: `python benchmarks/video.py [LESSON]`.

Seconds of video for each second of work at 1920x1080, H.264, without the proof. Baseline, in the same run: a still of
a minute with each of its 30 frames a second encoded, which is what `--constant-rate` asks for.
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

from lineproof.lesson import Lesson
from lineproof.order import running_order
from lineproof.proof import Effort, Proof
from lineproof.publish import Choices
from lineproof.publish.captioning import captions, chapters
from lineproof.publish.video import FRAMES, Claimed, Still, scenes
from lineproof.publish.video.art import Art
from lineproof.publish.video.film import Film
from lineproof.publish.video.filming import film
from lineproof.publish.video.layout import Page

EXAMPLE = Path(__file__).resolve().parent.parent / "examples" / "vienna"
MINUTE = 60
ROUNDS = 3


def of_lesson(path: Path) -> tuple[float, float]:
    """Seconds of video, and of work."""
    lesson = Lesson.open(path)
    begins = time.perf_counter()
    order = running_order(lesson)
    shown = scenes(order, Claimed(_unproved(lesson)))
    film(
        shown,
        Choices(),
        flipped=lesson.settings.side == "black",
        title="",
        captions=captions(order),
        chapters=chapters(order),
    )
    return order.seconds, time.perf_counter() - begins


def of_stills() -> tuple[float, float]:
    """The baseline."""
    page = Page(1920, 1080)
    picture = Art(page, False).still(Still("8/8/8/8/8/8/8/8 w - - 0 1"))
    with tempfile.TemporaryDirectory() as folder:
        begins = time.perf_counter()
        with Film(Path(folder) / "film.mp4", page, constant_rate=True) as made:
            made.show(picture, 0, MINUTE * FRAMES)
        return MINUTE, time.perf_counter() - begins


def _unproved(lesson: Lesson) -> Proof:
    from lineproof.claims import LessonReading

    return Proof(lesson, Effort.SKETCH, "", LessonReading((), ()), (), (), 0.0, True)


def main() -> None:
    path = Path(sys.argv[1]) if len(sys.argv) > 1 else EXAMPLE
    for number in range(1, ROUNDS + 1):
        (seconds, work), (base_seconds, base_work) = of_lesson(path), of_stills()
        mine, base = seconds / work, base_seconds / base_work
        print(
            f"round {number}: {seconds:.0f} s of video in {work:.1f} s: {mine:.1f} times real time;"
            f" every frame encoded: {base:.1f}; ratio {mine / base:.1f}"
        )


if __name__ == "__main__":
    main()
