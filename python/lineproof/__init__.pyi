from lineproof.facade import Answer as Answer
from lineproof.facade import Collection as Collection
from lineproof.facade import Effort as Effort
from lineproof.facade import Finding as Finding
from lineproof.facade import Followed as Followed
from lineproof.facade import Lesson as Lesson
from lineproof.facade import LessonError as LessonError
from lineproof.facade import Outcome as Outcome
from lineproof.facade import Proof as Proof
from lineproof.facade import Study as Study

__all__ = [
    "Answer",
    "Collection",
    "Effort",
    "Finding",
    "Lesson",
    "LessonError",
    "Outcome",
    "Proof",
    "Study",
]
