"""Frames: how they are written, and that what they demand of a clause bars nothing that they would take."""

from __future__ import annotations

import pytest

from lineproof.claims.demand import Beside, Holds, Names, Patient, Room, Subject
from lineproof.claims.framing import FrameError, compiled
from lineproof.claims.plain import plain
from lineproof.claims.registry import all_kinds
from lineproof.claims.seen import Seen
from lineproof.claims.sentence import sentences
from lineproof.claims.shelf import shelf
from tests.corpus.corpora import load

OF_THE_PARTS = (Beside, Holds, Names, Patient, Room, Subject)
"""Demands that only spare the frame from looking at what it could not take."""


@pytest.mark.parametrize(
    "source",
    [
        "{side} <win> {amount} ; negated",
        "{side} <win> {amount} ; modal=can",
        "{side} <win> {amount} if free=yes",
        "{side} {amount}",
        "{side} <win> {nothing_of_the_kind}",
        "{side} <win> for",
    ],
)
def test_a_frame_that_is_written_wrongly_is_refused(source: str) -> None:
    with pytest.raises(FrameError):
        compiled(source)


def test_slots_and_conditions_may_stand_in_any_order() -> None:
    one = compiled("{side} <win> {amount} ; free=yes if modal=can negated")
    two = compiled("{side} <win> {amount} if modal=can ; free=yes if negated")
    assert one.fixed == two.fixed == {"free": "yes"}
    assert one.conditions == two.conditions == {"modal": "can", "negated": ""}


def test_a_slot_may_have_the_name_of_what_is_no_condition() -> None:
    assert compiled("{side} <win> {amount} ; plain=yes").fixed == {"plain": "yes"}


def test_no_demand_bars_what_a_frame_would_take() -> None:
    taken = 0
    for item in load("open")[:60]:
        for sentence in sentences(item["sentence"], 0):
            for clause in plain(sentence):
                seen = Seen(clause)
                fitting = {id(frame) for _, frame in shelf().fitting(clause)}
                for kind in all_kinds():
                    for frame in kind.framed:
                        if not frame.takes(clause.lemma) or frame.fill(clause) is None:
                            continue
                        barred = [d for d in frame.demands if not d.met(seen)]
                        assert not [d for d in barred if isinstance(d, OF_THE_PARTS)]
                        if not barred:
                            assert id(frame) in fitting, (frame.source, sentence.text)
                            taken += 1
    assert taken > 50
