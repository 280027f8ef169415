"""The published shapes of the JSON that the commands print.

>>> schema("proof")["title"]
'Proof of a lesson'
"""

from __future__ import annotations

import json
from importlib.resources import files
from typing import Any, Literal

Name = Literal[
    "proof",
    "new",
    "opinion",
    "where",
    "perft",
    "solve",
    "speed",
    "study",
    "answer",
    "follow",
    "publish",
    "compare",
    "weigh",
    "order",
    "collect-add",
    "collect-look",
    "collect-reach",
    "collect-list",
    "collect-forget",
    "collect-fit",
    "collect-fit-check",
]


def schema(name: Name) -> Any:
    """A JSON Schema (2020-12) as plain values."""
    text = files(__package__).joinpath("schema", f"{name}.schema.json").read_text(encoding="utf-8")
    return json.loads(text)
