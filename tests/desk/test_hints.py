"""Ways out are told in the page's words: no hint that can come there names an option or a command."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import lineproof
from lineproof.desk.hints import HERE, hint_here

PACKAGE = Path(lineproof.__file__).parent
PARTS = ("lesson", "proof", "order", "publish", "desk")
"""Parts whose errors are a `LessonError` and may come to the page."""


def hints() -> Iterator[str]:
    """Every text that the code gives as a hint; what it puts into it stands as "...'"."""
    for part in PARTS:
        for file in sorted((PACKAGE / part).rglob("*.py")):
            for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
                if isinstance(node, ast.keyword) and node.arg == "hint":
                    yield from texts(node.value)
                elif isinstance(node, ast.Assign):
                    names = {each.id for each in node.targets if isinstance(each, ast.Name)}
                    if names & {"hint", "_HINT"}:
                        yield from texts(node.value)


def texts(value: ast.expr) -> Iterator[str]:
    for node in ast.walk(value):
        if isinstance(node, ast.JoinedStr):
            yield "".join(
                str(part.value) if isinstance(part, ast.Constant) else "..." for part in node.values
            )
        elif isinstance(node, ast.Constant) and isinstance(node.value, str):
            yield node.value


def test_no_hint_names_an_option_or_a_command() -> None:
    found = list(hints())
    assert len(found) > 100
    assert [hint for hint in map(hint_here, found) if "--" in hint or "`lineproof" in hint] == []


def test_every_replacement_is_of_a_hint_that_there_is() -> None:
    found = list(hints())
    assert [there for there, _ in HERE if not any(there in hint for hint in found)] == []
