"""What to do about a refusal, in the page's words: the other parts name options and commands, which a page has not."""

from __future__ import annotations

HERE = (
    (
        "mark an opinion with `lineproof opinion`, or publish all the same with --anyway",
        "mark them as your opinion, or choose “also where claims fail”",
    ),
    ("make a folder of it with `lineproof new FOLDER --from FILE`", "make a lesson of it there"),
    (
        "make a lesson with `lineproof new`, or give a PGN file",
        "begin a lesson, or choose a PGN file",
    ),
    ("`lineproof prove LESSON --show read` lists every sentence", "choose a sentence of the text"),
    ("say which with --at LINE, or --at LINE:COLUMN", "choose one of them in the text"),
    ("`lineproof opinion LESSON` lists those that are", "look under “About this lesson”"),
    (", or mark the sentence with `lineproof opinion`", ""),
    ("say it with --side", "say it under “About this lesson”"),
    ("leave out --voice or --loop", "leave out the recording or the loop"),
    (" with --only", ""),
    (" with --out", ""),
    (" with --voice", ""),
)
"""What stands there, and what the page says."""


def hint_here(hint: str) -> str:
    """The hint as the page gives it."""
    for there, here in HERE:
        hint = hint.replace(there, here)
    return hint
