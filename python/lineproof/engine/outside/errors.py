"""What can go wrong with an outside engine. Each text is one line: what happened, at what, what to do."""

from __future__ import annotations


class OutsideError(Exception):
    """An outside engine that cannot be used, or did not answer."""


class StartError(OutsideError):
    """It cannot be started, so it was asked nothing."""


class NoProgramError(StartError):
    """There is no such file."""


class NotRunnableError(StartError):
    """The system does not run it."""


class NotUciError(StartError):
    """It runs, but does not answer as a UCI engine does."""


class DiedError(OutsideError):
    """The process ended while it was asked."""


class HungError(OutsideError):
    """No answer came within the time that even a slow engine needs."""


class WrongAnswerError(OutsideError):
    """The answer breaks the rules of chess or of the protocol, or says nothing."""


class GivenUpError(OutsideError):
    """Too many questions in a row were not answered, so it is asked no more."""
