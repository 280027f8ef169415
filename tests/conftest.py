"""What all tests share: a signal that ends programs reaches those that they start."""

from __future__ import annotations

import signal

# A shell that starts the tests in the background, or for good, has these ignored, and so would every program started from them.
signal.signal(signal.SIGINT, signal.default_int_handler)
if hasattr(signal, "SIGHUP"):
    signal.signal(signal.SIGHUP, signal.SIG_DFL)
