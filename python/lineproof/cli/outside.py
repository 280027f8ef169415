"""The outside engine that `--engine PATH` names."""

from __future__ import annotations

import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

from .failures import CommandError

if TYPE_CHECKING:
    from lineproof.engine.outside.pool import OutsideEngine
    from lineproof.proof import Proof


@contextmanager
def opened(path: str | None) -> Iterator[OutsideEngine | None]:
    """The engine, started; None where none was asked for. No process of it is left at the end.

    :raises CommandError: when it cannot be started or is no UCI engine
    """
    if path is None:
        yield None
        return
    from lineproof.engine.outside import StartError
    from lineproof.engine.outside.pool import OutsideEngine

    with _ending_cleanly():
        try:
            engine = OutsideEngine(path)
        except StartError as error:
            raise CommandError(f"--engine {error}") from error
        with engine:
            yield engine


@contextmanager
def _ending_cleanly() -> Iterator[None]:
    """To be ended, or to lose the terminal, is like Ctrl-C: a process that hears nothing must not be left behind."""
    if threading.current_thread() is not threading.main_thread():
        yield
        return
    ends = [getattr(signal, name) for name in ("SIGTERM", "SIGHUP") if hasattr(signal, name)]
    # what is ignored, as under nohup, stays ignored
    ends = [end for end in ends if signal.getsignal(end) is signal.SIG_DFL]
    for end in ends:
        signal.signal(end, signal.default_int_handler)
    try:
        yield
    finally:
        for end in ends:
            signal.signal(end, signal.SIG_DFL)


def unanswered(proof: Proof) -> str | None:
    """The line to say when the engine left claims unanswered."""
    left = proof.not_answered()
    if not left:
        return None
    claims = "1 claim is" if len(left) == 1 else f"{len(left):,} claims are"
    # the first in the text may only say that the engine was given up; what led to that says more
    reasons = [finding.because for finding in left]
    first = next((reason for reason in reasons if "is asked no more" not in reason), reasons[0])
    return f"--engine: {claims} unsettled, and what was answered is kept. {first.removesuffix('.')}"
