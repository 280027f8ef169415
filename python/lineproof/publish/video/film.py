"""An MP4 file: pictures, a voice, captions and chapters.

A picture that does not change is one frame with its time. A fixed number of threads gives the same bytes each time.
"""

from __future__ import annotations

import os
import struct
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from heapq import merge
from math import inf
from operator import itemgetter
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final, cast

import av
from av.video.frame import PictureType

from lineproof.publish.captioning import Caption, Chapter

from .layout import Page
from .planes import Planes
from .scenes import FRAMES

if TYPE_CHECKING:
    from .art import Pixels
    from .voice import Voice

THREADS: Final = 2
CODECS: Final = {
    "h264": (
        "libx264",
        {
            "preset": "veryfast",
            "crf": "18",
            "forced-idr": "1",
            "x264-params": "scenecut=0:keyint=600",
        },
    ),
    "av1": (
        "libsvtav1",
        {"preset": "9", "crf": "30", "svtav1-params": f"lp={THREADS}:scd=0:keyint=600"},
    ),
}
"""By the name of a codec: who encodes it, and how."""
_STYLE: Final = b"[Script Info]\nScriptType: v4.00+\n\n[V4+ Styles]\nFormat: Name, Fontname, Fontsize\nStyle: Default,Sans,18\n\n[Events]\nFormat: Layer, Start, End, Style, Text\n"
"""What the encoder of captions asks for; the captions themselves are written by us, as plain text."""
_MILLI: Final = Fraction(1, 1000)
_TICK: Final = Fraction(1, FRAMES)


class Film:
    """A file that is being written; use it as a context, or nothing is at its end."""

    def __init__(
        self,
        file: Path,
        page: Page,
        codec: str = "h264",
        *,
        captions: Sequence[Caption] = (),
        chapters: Sequence[Chapter] = (),
        end: int = 0,
        title: str = "",
        voice: Voice | None = None,
        constant_rate: bool = False,
        tell: Callable[[int], None] = lambda _: None,
    ) -> None:
        """end: in frames. constant_rate: whether a picture is in the file as often as it has frames. tell: called with the frames that are
        done, with each picture and each second; what it raises ends the film."""
        self.constant_rate = constant_rate
        self._tell = tell
        if codec == "av1":  # whose encoder tells its settings otherwise
            os.environ.setdefault("SVT_LOG", "1")
        flags = {"movflags": "+faststart", "fflags": "+bitexact"}
        self.container = av.open(str(file), "w", format="mp4", options=flags)
        self.container.metadata["title"] = title
        encoder, options = CODECS[codec]
        self.stream = cast(
            Any, self.container.add_stream(encoder, rate=FRAMES, options=dict(options))
        )
        self.stream.width, self.stream.height = page.width, page.height
        self.stream.pix_fmt = "yuv420p"
        self.stream.time_base = _TICK
        context = self.stream.codec_context
        context.time_base = _TICK
        context.thread_count = THREADS
        if codec == "h264":
            context.max_b_frames = 0
        context.color_primaries = context.color_trc = context.colorspace = 1  # ITU-R BT.709
        context.color_range = 1
        sound: Iterator[tuple[float, Any]] = (
            iter(()) if voice is None else voice.into(self.container)
        )
        self._beside = merge(sound, self._captions(captions), key=itemgetter(0))
        """Sound and captions, by the second at which they begin."""
        self._next: tuple[float, Any] | None = None
        if chapters:
            self.container.set_chapters(_chapters(chapters, end))
        self.planes = Planes(page)
        self._frames: dict[int, int] = {}

    def __enter__(self) -> Film:
        self._next = next(self._beside, None)
        return self

    def __exit__(self, *error: object) -> None:
        try:
            if error[0] is None:
                self._mux(self.stream.encode(None))
                self._mux_beside()
        finally:
            self.container.close()

    def show(self, picture: Pixels, begins: int, frames: int, *, key: bool = False) -> None:
        """Shows a picture. begins, frames: its time, in frames. key: whether a player can begin here."""
        frame = av.VideoFrame.from_ndarray(self.planes.of(picture), format="yuv420p")
        frame.time_base = _TICK
        frame.pict_type = PictureType.I if key else PictureType.NONE
        lasts = 1 if self.constant_rate else frames
        for at in range(begins, begins + frames, lasts):
            if (at - begins) % FRAMES == 0:
                self._tell(at)
            frame.pts = at
            self._frames[at] = lasts
            self._mux(self.stream.encode(frame))
            frame.pict_type = PictureType.NONE

    def _mux(self, packets: Sequence[Any]) -> None:
        for packet in packets:
            begins = packet.pts * packet.time_base
            lasts = self._frames.pop(round(begins * FRAMES)) * _TICK
            packet.duration = round(lasts / packet.time_base)
            # what is seen, heard and read together lies together
            self._mux_beside(float(begins))
            self.container.mux(packet)

    def _mux_beside(self, until: float = inf) -> None:
        while self._next is not None and self._next[0] <= until:
            self.container.mux(self._next[1])
            self._next = next(self._beside, None)

    def _captions(self, captions: Sequence[Caption]) -> Iterator[tuple[float, Any]]:
        if not captions:
            return iter(())
        stream = cast(Any, self.container.add_stream("mov_text"))
        stream.time_base = _MILLI
        stream.codec_context.time_base = _MILLI
        stream.codec_context.subtitle_header = _STYLE
        stream.codec_context.open()
        stream.metadata["language"] = "eng"

        def packets() -> Iterator[tuple[float, Any]]:
            for one in captions:
                text = "\n".join(one.lines).encode()
                packet = av.Packet(struct.pack(">H", len(text)) + text)
                packet.stream, packet.time_base = stream, _MILLI
                packet.pts = packet.dts = one.begins
                packet.duration = one.ends - one.begins
                yield one.begins / 1000, packet

        return packets()


def _chapters(chapters: Sequence[Chapter], end: int) -> list[Any]:
    begins = [1000 * one.begins for one in chapters]
    ends = [*begins[1:], round(end * 1000 / FRAMES)]
    return [
        {
            "id": number,
            "start": start,
            "end": until,
            "time_base": _MILLI,
            "metadata": {"title": one.title},
        }
        for number, (one, start, until) in enumerate(zip(chapters, begins, ends, strict=True))
    ]
