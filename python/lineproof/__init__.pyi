from lineproof.facade import Collection as Collection
from lineproof.facade import Effort as Effort
from lineproof.facade import Finding as Finding
from lineproof.facade import Lesson as Lesson
from lineproof.facade import LessonError as LessonError
from lineproof.facade import Outcome as Outcome
from lineproof.facade import Proof as Proof

__all__ = ["Collection", "Effort", "Finding", "Lesson", "LessonError", "Outcome", "Proof"]
