"""Example phrases of a kind: sentences of its own tests that one of its phrases accepts.

>>> from lineproof.claims import all_kinds
>>> fork = next(kind for kind in all_kinds() if kind.id == "fork")
>>> examples(fork, 1)
['The knight forks the queen and the rook.']
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from lineproof.claims.kind import Kind
from lineproof.claims.sentence import words

TESTS = Path(__file__).resolve().parent.parent / "tests" / "claims" / "kinds"
_LONGEST = 70
"""Characters of an example."""
_SENTENCE = re.compile(r"[A-Z0-9][^%{}]*\w[.!]")
_COMMENT = re.compile(r"\{([^{}]+)\}")
_OF_WHAT_IS_NOT_READ = re.compile("unread|not_read|left_alone|fails")
"""Names of tests whose sentences are no examples."""


def examples(kind: Kind, most: int) -> list[str]:
    """At most so many, each accepted by another phrase where the tests have that many."""
    found: dict[str, str] = {}
    spare: list[str] = []
    for text in _sentences(TESTS / f"test_{kind.id.replace('-', '_')}.py"):
        clause = "".join(f" {word.norm}" for word in words(text))
        by = next((p.source for p in kind.compiled if p.match(clause) is not None), None)
        if by is None or text in (*found.values(), *spare):
            continue
        if by in found:
            spare.append(text)
        else:
            found[by] = text
    return [*found.values(), *spare][:most]


def _sentences(test: Path) -> Iterator[str]:
    """The sentences that a test file lets be read."""
    if not test.exists():
        return
    for function in ast.parse(test.read_text(encoding="utf-8")).body:
        if not isinstance(function, ast.FunctionDef) or _OF_WHAT_IS_NOT_READ.search(function.name):
            continue
        for node in ast.walk(function):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                for text in _COMMENT.findall(node.value) or [node.value]:
                    if _SENTENCE.fullmatch(text) and " " in text and len(text) <= _LONGEST:
                        yield text
