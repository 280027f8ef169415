"""The JSON of a proof: the published shape, and the same at every run."""

from __future__ import annotations

import json
from typing import Any, get_args

import jsonschema
import pytest

from lineproof.engine import Board
from lineproof.facade import Lesson, Proof
from lineproof.report.json import proof_json
from lineproof.report.schemas import Name, schema

from .lessons import LESSON


def valid(value: Any) -> Any:
    shape = schema("proof")
    jsonschema.Draft202012Validator.check_schema(shape)
    jsonschema.Draft202012Validator(shape).validate(value)
    return json.loads(json.dumps(value))


def test_it_has_the_published_shape(proof: Proof, hostile: Proof) -> None:
    valid(proof_json(proof))
    valid(proof_json(hostile))
    valid(proof_json(Lesson.from_text("1. e4 *").prove("sketch")))


@pytest.mark.parametrize("wrong", ["outcome", "position", "evidence", "start", "because"])
def test_the_shape_is_no_empty_promise(proof: Proof, wrong: str) -> None:
    value = proof_json(proof)
    del value["findings"][0][wrong]
    with pytest.raises(jsonschema.ValidationError):
        valid(value)


def test_an_unsettled_finding_needs_its_reason_and_a_settled_one_has_none(proof: Proof) -> None:
    value = proof_json(proof)
    value["findings"][0].update(outcome="unsettled", why_unsettled=None)
    with pytest.raises(jsonschema.ValidationError):
        valid(value)
    value["findings"][0].update(outcome="holds", why_unsettled="one off")
    with pytest.raises(jsonschema.ValidationError):
        valid(value)


def test_spans_lines_and_columns_lead_to_the_words(proof: Proof) -> None:
    value = valid(proof_json(proof))
    text = proof.lesson.text
    lines = text.split("\n")
    for found in value["findings"]:
        assert text[found["start"] : found["end"]] == found["words"]
        assert lines[found["line"] - 1][found["column"] - 1 :].startswith(
            found["words"].split("\n")[0]
        )
    for sentence in value["sentences"]:
        assert text[sentence["start"] : sentence["end"]] == sentence["text"]


def test_the_evidence_can_be_played_from_its_position(proof: Proof) -> None:
    lines = [f["evidence"] for f in proof_json(proof)["findings"] if f["evidence"]]
    assert lines
    for line in lines:
        board = Board(line["from"])
        assert board.san_line(line["uci"]) == line["san"]


def test_sentences_and_findings_point_at_each_other(proof: Proof) -> None:
    value = proof_json(proof)
    numbers = [f["number"] for f in value["findings"]]
    assert numbers == list(range(1, len(numbers) + 1))
    spoken = [n for s in value["sentences"] for n in s["findings"]]
    glyphs = [f["number"] for f in value["findings"] if f["glyph"]]
    assert sorted([*spoken, *glyphs]) == numbers
    by_number = {f["number"]: f for f in value["findings"]}
    for sentence in value["sentences"]:
        for number in sentence["findings"]:
            assert sentence["start"] <= by_number[number]["start"]
            assert by_number[number]["end"] <= sentence["end"]


def test_two_runs_differ_in_nothing_but_the_run(proof: Proof) -> None:
    again = proof_json(
        Lesson.from_text(LESSON, name="vienna/lines.pgn", side="white", audience=1400).prove(
            "sketch", workers=1
        )
    )
    value = proof_json(proof)
    assert {**again, "run": None} == {**value, "run": None}


def test_every_schema_is_valid() -> None:
    for name in get_args(Name):
        jsonschema.Draft202012Validator.check_schema(schema(name))
