"""The examples in the texts of modules and functions run as they are printed."""

from __future__ import annotations

import doctest
import pkgutil
from importlib import import_module

import pytest

import lineproof

MODULES = [
    found.name
    for found in pkgutil.walk_packages(lineproof.__path__, "lineproof.")
    if not found.ispkg and found.name != "lineproof._engine"
]


@pytest.mark.parametrize("name", MODULES)
def test_what_a_text_shows_is_so(name: str) -> None:
    result = doctest.testmod(import_module(name))
    assert result.failed == 0, f"{result.failed} of {result.attempted} examples of {name}"


def test_there_are_examples() -> None:
    finder = doctest.DocTestFinder()
    found = [test for name in MODULES for test in finder.find(import_module(name)) if test.examples]
    assert len(found) > 60
