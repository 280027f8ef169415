"""Captions as WebVTT and as SRT. What the author writes stays text in both.

Source: WebVTT: The Web Video Text Tracks Format (W3C), section 4 (from memory). SRT has no standard: common practice.

>>> from .breaking import Caption
>>> print(webvtt([Caption(0, 1500, ("1 --> 2 & <b>",))]))
WEBVTT
<BLANKLINE>
1
00:00:00.000 --> 00:00:01.500
1 --&gt; 2 &amp; &lt;b&gt;
<BLANKLINE>
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Final

from .breaking import Caption

_HIDDEN: Final = "\u2060"
"""Word joiner: nobody sees it, and no player takes what it stands in for a tag or an arrow."""
_MARKUP = re.compile(r"<(?=\S)|(?<=--)>|\{(?=\S)")


def webvtt(captions: Sequence[Caption]) -> str:
    """A WebVTT file."""
    return "WEBVTT\n\n" + "\n".join(
        f"{number}\n{_time(one.begins, '.')} --> {_time(one.ends, '.')}\n"
        + "".join(f"{_escaped(line)}\n" for line in one.lines)
        for number, one in enumerate(captions, 1)
    )


def srt(captions: Sequence[Caption]) -> str:
    """An SRT file, which has no escapes: a hidden character breaks up what could be a tag, a command or an arrow."""
    return "\n".join(
        f"{number}\n{_time(one.begins, ',')} --> {_time(one.ends, ',')}\n"
        + "".join(f"{_broken_up(line)}\n" for line in one.lines)
        for number, one in enumerate(captions, 1)
    )


def _escaped(line: str) -> str:
    return line.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;")


def _broken_up(line: str) -> str:
    return _MARKUP.sub(
        lambda found: found[0] + _HIDDEN if found[0] in "<{" else _HIDDEN + found[0], line
    )


def _time(milliseconds: int, point: str) -> str:
    seconds, rest = divmod(milliseconds, 1000)
    return f"{seconds // 3600:02d}:{seconds // 60 % 60:02d}:{seconds % 60:02d}{point}{rest:03d}"
