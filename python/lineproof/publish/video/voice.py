"""A recording that is laid under a film: WAV, MP3, M4A, FLAC and whatever else the library reads, as AAC.

Its stereo or mono stays; more channels become two.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from itertools import chain
from pathlib import Path
from typing import Any, Final

import av

from lineproof.publish.product import PublishError

RATE: Final = 48_000
"""Samples a second (common practice for video)."""
BITS: Final = 64_000
"""Bits a second of each channel (common practice for speech)."""


class Voice:
    """The first sound of a file.

    :raises PublishError: when the file cannot be read, or has no sound.
    """

    def __init__(self, file: Path) -> None:
        self.file = file
        try:
            with av.open(str(file)) as source:
                if not source.streams.audio:
                    raise self._refused("it holds no sound")
                stream = source.streams.audio[0]
                self.layout = "mono" if stream.codec_context.layout.nb_channels == 1 else "stereo"
                lasts = (
                    packet.duration * packet.time_base
                    for packet in source.demux(stream)
                    if packet.duration and packet.time_base
                )
                self.seconds = float(sum(lasts, Fraction()))
        except (av.error.FFmpegError, OSError) as error:
            reason = (getattr(error, "strerror", None) or str(error)).lower()
            raise self._refused(reason) from error
        if not self.seconds:
            raise self._refused("it holds no sound")

    def _refused(self, why: str) -> PublishError:
        return PublishError(
            f"the voice cannot be read ({why})",
            path=str(self.file),
            hint="give a WAV, MP3, M4A or FLAC file with --voice",
        )

    def into(self, container: Any) -> Iterator[tuple[float, Any]]:
        """Adds a stream to a film, and gives its packets, each with the second at which it begins.

        :raises PublishError: when the file is damaged.
        """
        channels = 1 if self.layout == "mono" else 2
        stream = container.add_stream("aac", rate=RATE, layout=self.layout)
        stream.codec_context.bit_rate = BITS * channels
        return self._packets(stream)

    def _packets(self, stream: Any) -> Iterator[tuple[float, Any]]:
        for frame in self._frames():
            for packet in stream.encode(frame):
                yield float(packet.pts * packet.time_base), packet
        for packet in stream.encode(None):
            yield float(packet.pts * packet.time_base), packet

    def _frames(self) -> Iterator[Any]:
        resampler = av.AudioResampler(format="fltp", layout=self.layout, rate=RATE)
        samples = 0
        try:
            with av.open(str(self.file)) as source:
                for frame in chain(source.decode(source.streams.audio[0]), (None,)):
                    for made in resampler.resample(frame):
                        made.pts, made.time_base = samples, Fraction(1, RATE)
                        samples += made.samples
                        yield made
        except av.error.FFmpegError as error:
            raise self._refused(str(error.strerror or error).lower()) from error
