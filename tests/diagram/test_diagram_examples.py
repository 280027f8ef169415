"""The examples in the module texts run as they are printed."""

from __future__ import annotations

import doctest
import pkgutil
from importlib import import_module

import pytest

from lineproof import diagram

MODULES = [
    "lineproof.diagram",
    *(f"lineproof.diagram.{found.name}" for found in pkgutil.iter_modules(diagram.__path__)),
]


@pytest.mark.parametrize("name", MODULES)
def test_each_module_shows_itself_in_use(name: str) -> None:
    result = doctest.testmod(import_module(name))
    assert result.attempted > 0
    assert result.failed == 0
