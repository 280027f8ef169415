"""A lesson proved with an outside engine: its answers never mix with ours, and what it leaves open is said."""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import jsonschema
import pytest

import lineproof
from lineproof.claims import Outcome
from lineproof.engine.outside.pool import OutsideEngine, Patience
from lineproof.proof import NOT_ANSWERED, EvidenceStore, Proof
from lineproof.report.json import proof_json
from lineproof.report.method import method
from lineproof.report.schemas import schema
from lineproof.report.wording import turned
from tests.report.test_terminal import flat, shown

from .engines import Made, made

pytestmark = pytest.mark.skipif(os.name != "posix", reason="the programs are shell scripts")

TEXT = """1. e4 e5 2. Nc3 {White is winning.} Nf6 3. f4 {The position is level. Material is level.}
3... d5 {Black is winning.} 4. fxe5 {Black is winning.} *
"""
LEGAL = "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 {White is winning.} *"
"""Légal's mate: ours finds it; the boat counts the queen that White has lost."""
MATE = "1. f3 e5 2. g4 {Black has mate in one. White has mate in one.} *"


def prove(
    program: Made | None, store: EvidenceStore | None = None, text: str = TEXT, **more: Any
) -> Proof:
    lesson = lineproof.Lesson.from_text(text, side="white")
    store = store or EvidenceStore(None)
    if program is None:
        return lesson.prove("sketch", store=store)
    patience = Patience(start=5, answer=1, slowest=10**9)
    with OutsideEngine(program.path, processes=2, patience=patience) as engine:
        return lesson.prove("sketch", store=store, engine=engine, **more)


def outcomes(proof: Proof) -> list[str]:
    return [str(finding.outcome) for finding in proof.findings]


def test_searches_are_answered_by_it_and_facts_of_the_board_are_not(tmp_path: Path) -> None:
    boat = made(tmp_path)
    proof = prove(boat)
    assert proof.outside is not None and proof.outside.name == "Paper Boat 2"
    searched = [finding for finding in proof.findings if finding.nodes]
    assert boat.asked() == len(searched) == 4
    assert {finding.engine for finding in searched} == {proof.outside.identity}
    (fact,) = [finding for finding in proof.findings if not finding.nodes]
    assert (fact.claim.words, fact.engine) == ("Material is level", proof.engine)


def test_a_path_is_enough(tmp_path: Path) -> None:
    boat = made(tmp_path)
    lesson = lineproof.Lesson.from_text(TEXT)
    assert lesson.prove("sketch", engine=boat.path).outside is not None
    assert lesson.prove("sketch", engine=str(boat.path)).outside is not None
    assert boat.alive() == []


def test_a_mate_in_n_is_for_our_own_solver_to_say(tmp_path: Path) -> None:
    """The engine announces a mate in one in every position; it is true for Black only."""
    boat = made(tmp_path, "announces a mate")
    proof = prove(boat, text=MATE)
    assert outcomes(proof) == ["holds", "fails"]


def test_the_same_findings_whatever_the_number_of_workers(tmp_path: Path) -> None:
    boat = made(tmp_path)
    one, four = prove(boat, workers=1), prove(boat, workers=4)
    assert [f.because for f in one.findings] == [f.because for f in four.findings]


def test_answers_are_kept_and_never_mix(tmp_path: Path) -> None:
    store = EvidenceStore(None)
    boat = made(tmp_path)
    ours, first = prove(None, store), prove(boat, store)
    asked = boat.asked()
    again, ours_again = prove(boat, store), prove(None, store)
    assert asked == 4
    assert boat.asked() == asked
    assert [f.because for f in again.findings] == [f.because for f in first.findings]
    assert [f.because for f in ours_again.findings] == [f.because for f in ours.findings]
    assert [f.because for f in first.findings] != [f.because for f in ours.findings]
    other = made(tmp_path, name="other")
    prove(other, store)
    assert other.asked() == asked  # another file: another engine


def test_what_it_does_not_answer_is_unsettled_with_the_reason_and_asked_again_next_time(
    tmp_path: Path,
) -> None:
    store = EvidenceStore(None)
    boat = made(tmp_path, "dies after four")
    asked = boat.folder / "asked"
    asked.write_text("xx")  # two were answered in an earlier run
    proof = prove(boat, store, workers=1)
    assert [f.why_unsettled for f in proof.findings if f.nodes][:2] != [NOT_ANSWERED] * 2
    left = proof.not_answered()
    assert len(left) == 2
    assert all(f.outcome is Outcome.UNSETTLED for f in left)
    assert all("killed by SIGKILL" in f.because for f in left)
    assert "Material is level" in [f.claim.words for f in proof.of(Outcome.HOLDS)]
    asked.write_text("")
    before = boat.asked()
    again = prove(boat, store, workers=1)
    assert again.not_answered() == ()
    assert boat.asked() - before == 2  # only those
    assert {c.why for c in again.changes} == {"the outside engine had not answered"}


def test_what_changed_names_the_other_engine(tmp_path: Path) -> None:
    store = EvidenceStore(None)
    assert outcomes(prove(None, store, text=LEGAL)) == ["holds"]
    proof = prove(made(tmp_path), store, text=LEGAL)
    assert outcomes(proof) == ["fails"]
    assert proof.changes
    assert {change.why for change in proof.changes} == {"another engine was asked"}
    assert turned(proof.changes[0]).endswith("another engine was asked.")
    dead = prove(made(tmp_path, "dies", "dead"), store, text=LEGAL)
    assert {c.why for c in dead.changes} == {"the outside engine did not answer this time"}


def test_the_reports_say_who_answered_and_that_it_may_differ(tmp_path: Path) -> None:
    proof = prove(made(tmp_path))
    closing = flat(shown(proof))
    assert "Sketch effort, outside engine Paper Boat 2, " in closing
    assert "The answers of an outside engine may differ from run to run." in closing
    page = str(method(proof, ()).parts[0])
    assert proof.outside is not None
    for said in ("Outside engine Paper Boat 2", "may differ from run to run", proof.outside.sha256):
        assert said in page
    ours = prove(None)
    assert f"Sketch effort, engine {ours.engine}, " in flat(shown(ours))
    assert "outside" not in flat(shown(ours)) + str(method(ours, ()).parts[0])


def test_the_json_has_the_published_shape_with_and_without(tmp_path: Path) -> None:
    shape = jsonschema.Draft202012Validator(schema("proof"))
    for proof in (prove(made(tmp_path)), prove(made(tmp_path, "dies", "dead")), prove(None)):
        value = json.loads(json.dumps(proof_json(proof)))
        shape.validate(value)
        if proof.outside is None:
            assert value["outside"] is None
        else:
            assert value["outside"]["name"] == "Paper Boat 2"
            assert value["outside"]["may_differ"] is True
            assert value["outside"]["options"] == {"Hash": 32, "Threads": 1}


def test_a_name_that_would_command_a_terminal_does_not(tmp_path: Path) -> None:
    boat = made(tmp_path)
    source = tmp_path / "wild"
    program = boat.path.read_text().split("exec ", 1)[1].strip()
    source.write_text(f"#!/bin/sh\n{program} | sed -u 's/Paper Boat 2/\\x1b[31mRed/'\n")
    source.chmod(0o755)
    with OutsideEngine(source) as engine:
        assert engine.program.name == "[31mRed"
    assert boat.alive() == []
