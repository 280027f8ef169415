"""The lesson as a video: the running order on the stage board, with captions and chapters in it; or one line of it as a loop."""

from __future__ import annotations

from pathlib import Path

from lineproof.lesson import Lesson, Place
from lineproof.order import RunningOrder
from lineproof.order.timing import length
from lineproof.publish.captioning import captions, chapters
from lineproof.publish.naming import slug_of
from lineproof.publish.product import Choices, Files, Filming, Found, Product, PublishError
from lineproof.publish.told import left_out, told
from lineproof.publish.video import Claimed, Scene, extended, looped, scenes
from lineproof.publish.video.characters import LACKING, lacking
from lineproof.report.plain import plain
from lineproof.report.title import title_of

NAMED = 5
"""Characters that cannot be drawn and are named."""
NEAR = 0.5
"""Seconds by which a voice may differ from the running order and be said to fit."""


def check(lesson: Lesson, choices: Choices) -> None:
    """:raises PublishError: when a library is missing, the voice cannot be read, or there is no such line."""
    try:
        import resvg_py  # noqa: F401 - whether it can be imported

        from lineproof.publish.video import filming  # noqa: F401
        from lineproof.publish.video.voice import Voice
    except ImportError as missing:
        raise PublishError(
            f"a video needs {missing.name or 'a library'}, which is not installed",
            path=lesson.name,
            hint="pip install 'lineproof[video]', or leave video out with --only",
        ) from missing
    if choices.filming.loop is not None:
        _line(lesson, choices.filming)
    elif choices.filming.voice is not None:
        Voice(choices.filming.voice)


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:
    check(lesson, choices)
    from lineproof.publish.video.filming import film
    from lineproof.publish.video.voice import Voice

    filming = choices.filming
    claimed = Claimed(found.proof)
    name = slug_of(lesson) + "-vertical" * filming.vertical
    flipped = lesson.settings.side == "black"
    if filming.loop is not None:
        line = _line(lesson, filming)
        shown: tuple[Scene, ...] = looped(line, claimed)
        film_bytes = film(shown, choices, flipped=flipped, title=plain(title_of(lesson)))
        return {f"{name}-loop-{filming.loop:02d}.mp4": film_bytes}
    order = told(lesson, found, "video")
    voice = None if filming.voice is None else Voice(filming.voice)
    shown = scenes(order, claimed)
    if voice is not None:
        shown = extended(shown, voice.seconds)
    return {
        f"{name}.mp4": film(
            shown,
            choices,
            flipped=flipped,
            title=plain(title_of(lesson)),
            captions=captions(order),
            chapters=chapters(order),
            voice=voice,
        )
    }


def _line(lesson: Lesson, filming: Filming) -> Place:
    lines = lesson.lines()
    number = filming.loop or 0
    if not 1 <= number <= len(lines):
        raise PublishError(
            f"there is no line {number}: the lesson has {len(lines):,}",
            path=lesson.name,
            hint="their numbers are those in the names of the diagrams",
        )
    if filming.voice is not None:
        raise PublishError(
            "a loop has no voice", path=lesson.name, hint="leave out --voice or --loop"
        )
    return lines[number - 1]


def notes(lesson: Lesson, found: Found, choices: Choices) -> tuple[str, ...]:
    """How long the voice is, beside the running order; what of the captions cannot be drawn."""
    filming = choices.filming
    if filming.loop is not None:
        return ()
    order = told(lesson, found, "video")
    lengths = () if filming.voice is None else _lengths(order, filming.voice)
    return left_out(order) + lengths + (_undrawn(order) if filming.burn_captions else ())


def _undrawn(order: RunningOrder) -> tuple[str, ...]:
    missing = lacking(line for one in captions(order) for line in one.lines)
    if not missing:
        return ()
    named = " ".join(f"{c} (U+{ord(c):04X})" for c in missing[:NAMED])
    more = f" and {len(missing) - NAMED:,} more" if len(missing) > NAMED else ""
    return (f"the letters have no {named}{more}: each is shown as {LACKING}",)


def _lengths(running: RunningOrder, file: Path) -> tuple[str, ...]:
    from lineproof.publish.video.voice import Voice

    voice, order = Voice(file).seconds, running.seconds
    lasts = f"the voice lasts {length(voice)}, the running order {length(order)}"
    if abs(voice - order) < NEAR:
        return (lasts,)
    if voice < order:
        return (f"{lasts}: the last {length(order - voice)} are silent",)
    return (f"{lasts}: the last picture stands {length(voice - order)} longer",)


PRODUCT = Product(
    "video",
    "the running order on the stage board, as MP4",
    make,
    notes=notes,
    on_request=True,
    check=check,
)
