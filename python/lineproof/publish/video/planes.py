"""A picture as brightness and colour in the planes of a video (ITU-R BT.709, 4:2:0): only what has changed is reckoned anew."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, Final

import av
import numpy as np

from .layout import Page

if TYPE_CHECKING:
    from numpy.typing import NDArray

    from .art import Pixels

GRAIN: Final = 16
"""Pixels to which a changed part is widened, and half of which at its edges are reckoned but not taken."""


class Planes:
    """Of one film, picture after picture."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self._before: Pixels | None = None
        self._planes = np.zeros((page.height * 3 // 2, page.width), np.uint8)

    def of(self, picture: Pixels) -> Pixels:
        """The planes of a picture, one below the other. They change with the next call."""
        if self._before is None:
            self._take(picture, 0, 0, self.page.height, self.page.width)
        elif (box := changed(self._before, picture)) is not None:
            self._take(picture, *box)
        self._before = picture
        return self._planes

    def _take(self, picture: Pixels, top: int, left: int, bottom: int, right: int) -> None:
        """Takes over a part of a picture."""
        height, width = self.page.height, self.page.width
        outer_top, outer_left = max(top - GRAIN, 0), max(left - GRAIN, 0)
        outer = picture[
            outer_top : min(bottom + GRAIN, height), outer_left : min(right + GRAIN, width)
        ]
        y, *colours = _converted(outer)
        y_top, y_left = top - outer_top, left - outer_left
        part = (slice(y_top, y_top + bottom - top), slice(y_left, y_left + right - left))
        self._planes[top:bottom, left:right] = y[part]
        half = tuple(slice(one.start // 2, one.stop // 2) for one in part)
        for number, plane in enumerate(colours):
            place = self._planes[height:].reshape(2, height // 2, width // 2)[number]
            place[top // 2 : bottom // 2, left // 2 : right // 2] = plane[half]


def changed(before: Pixels, after: Pixels) -> tuple[int, int, int, int] | None:
    """The box around all pixels that differ, widened to whole grains: top, left, bottom, right; None where none does."""
    if before is after:
        return None
    # eight bytes are compared at once, which are a part of three or four pixels
    height, width = after.shape[:2]
    differ = before.reshape(height, -1).view(np.uint64) != after.reshape(height, -1).view(np.uint64)
    rows, columns = (np.flatnonzero(differ.any(axis=axis)) for axis in (1, 0))
    if not rows.size:
        return None
    top, bottom = _grains(rows[0], rows[-1], height)
    left, right = _grains(8 * columns[0] // 3, (8 * columns[-1] + 7) // 3, width)
    return top, left, bottom, right


def _grains(first: int, last: int, end: int) -> tuple[int, int]:
    return int(first) // GRAIN * GRAIN, min((int(last) // GRAIN + 1) * GRAIN, end)


def _converted(part: Pixels) -> list[NDArray[Any]]:
    frame = av.VideoFrame.from_ndarray(np.ascontiguousarray(part), format="rgb24").reformat(
        format="yuv420p", src_color_range="JPEG", dst_colorspace="ITU709", dst_color_range="MPEG"
    )
    return [
        np.frombuffer(memoryview(plane), np.uint8).reshape(plane.height, plane.line_size)[
            :, : plane.width
        ]
        for plane in frame.planes
    ]
