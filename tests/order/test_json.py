"""The JSON of a running order: the published shape."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from lineproof.lesson import Lesson
from lineproof.order import running_order
from lineproof.order.json import order_json
from lineproof.report.schemas import schema

VIENNA = Path(__file__).resolve().parents[2] / "examples" / "vienna"
SHAPE = schema("order")


@pytest.fixture
def value() -> dict[str, Any]:
    return order_json(running_order(Lesson.open(VIENNA)))


def valid(value: Any) -> None:
    jsonschema.Draft202012Validator.check_schema(SHAPE)
    jsonschema.Draft202012Validator(SHAPE).validate(json.loads(json.dumps(value)))


def test_it_has_the_published_shape(value: dict[str, Any]) -> None:
    valid(value)
    assert {cue["cue"] for cue in value["cues"]} == {"say", "play", "go back to", "mark", "pause"}


@pytest.mark.parametrize("key", sorted(SHAPE["required"]))
def test_every_key_is_promised(value: dict[str, Any], key: str) -> None:
    del value[key]
    with pytest.raises(jsonschema.ValidationError):
        valid(value)


@pytest.mark.parametrize(
    ("kind", "key", "wrong"),
    [("play", "move", None), ("say", "move", "e4"), ("mark", "squares", []), ("play", "cue", "wave"), ("say", "seconds", -1)],
)  # fmt: skip
def test_a_cue_has_what_its_kind_needs(
    value: dict[str, Any], kind: str, key: str, wrong: object
) -> None:
    cue = next(one for one in value["cues"] if one["cue"] == kind)
    cue[key] = wrong
    with pytest.raises(jsonschema.ValidationError):
        valid(value)
