"""Example phrases of a kind: sentences that its own tests let be read.

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
from lineproof.claims.plain import plain
from lineproof.claims.sentence import sentences

TESTS = Path(__file__).resolve().parent.parent / "tests" / "claims" / "kinds"
_LONGEST = 70
"""Characters of an example."""
_SENTENCE = re.compile(r"[A-Z0-9][^%{}]*\w[.!]")
_COMMENT = re.compile(r"\{([^{}]+)\}")
_OF_SOMETHING_ELSE = re.compile("unread|not_read|left_alone|fails|near_miss")
"""Names of tests whose sentences are no examples."""


def examples(kind: Kind, most: int) -> list[str]:
    """At most so many, such as begin differently before such as begin alike."""
    if kind.read is None:
        return []  # it has no frames
    found: dict[str, str] = {}
    spare: list[str] = []
    for text in _sentences(TESTS / f"test_{kind.id.replace('-', '_')}.py"):
        begins = " ".join(text.split()[:2])
        if not _accepts(kind, text):
            continue  # a reason that is expected, not words that are read
        if begins not in found:
            found[begins] = text
        elif text not in found.values() and text not in spare:
            spare.append(text)
    return [*found.values(), *spare][:most]


def _accepts(kind: Kind, text: str) -> bool:
    """Whether a frame of the kind fits a clause of the text."""
    clauses = [clause for sentence in sentences(text, 0) for clause in plain(sentence)]
    return any(frame.match(clause) is not None for frame in kind.framed for clause in clauses)


def _sentences(test: Path) -> Iterator[str]:
    """The sentences that a test file gives to the reader, not those that it expects of a finding."""
    if not test.exists():
        return
    for function in ast.parse(test.read_text(encoding="utf-8")).body:
        if not isinstance(function, ast.FunctionDef) or _OF_SOMETHING_ELSE.search(function.name):
            continue
        nodes = list(ast.walk(function))
        expected = {id(c) for n in nodes if isinstance(n, ast.Compare) for c in ast.walk(n)}
        given = {
            id(c) for n in nodes if isinstance(n, ast.Call) for a in n.args for c in ast.walk(a)
        }
        for node in nodes:
            if not isinstance(node, ast.Constant) or not isinstance(node.value, str):
                continue
            if id(node) in expected and id(node) not in given:
                continue
            for text in _COMMENT.findall(node.value) or [node.value]:
                if _SENTENCE.fullmatch(text) and " " in text and len(text) <= _LONGEST:
                    yield text
