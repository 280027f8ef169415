"""Outside engines: any program of the user's that speaks UCI, in place of our own search.

>>> from pathlib import Path
>>> from lineproof.engine.outside import NoProgramError
>>> from lineproof.engine.outside.program import find
>>> try:
...     find(Path("no-such-folder/engine"))
... except NoProgramError as error:
...     print(error)
no-such-folder/engine: there is no such program; check the path

`pool.OutsideEngine` is what answers; it is not imported here, so that what needs no outside engine does not
wait for the UCI client. Source of the protocol: "Description of the universal chess interface (UCI)", April 2006
(from memory), as the library python-chess speaks it.
"""

from __future__ import annotations

from .errors import (
    DiedError,
    GivenUpError,
    HungError,
    NoProgramError,
    NotRunnableError,
    NotUciError,
    OutsideError,
    StartError,
    WrongAnswerError,
)

__all__ = [
    "DiedError",
    "GivenUpError",
    "HungError",
    "NoProgramError",
    "NotRunnableError",
    "NotUciError",
    "OutsideError",
    "StartError",
    "WrongAnswerError",
]
