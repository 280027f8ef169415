"""What the opponent will really play: likely replies, what the lesson leaves open, slips, pause points."""

from .likely import Likely, Replies, Reply
from .natural import Natural, NaturalError
from .study import Study, StudyError, study

__all__ = ["Likely", "Natural", "NaturalError", "Replies", "Reply", "Study", "StudyError", "study"]
