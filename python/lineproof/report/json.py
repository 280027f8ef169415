"""A proof as JSON. Its shape is `schema/proof.schema.json`; what it holds is the same at every run but `run`."""

from __future__ import annotations

from dataclasses import asdict
from typing import Any, Final

from lineproof.claims import Reading, kind_of
from lineproof.proof import Proof

from .answer import answer
from .contradicting import contradicting
from .located import Located, located
from .title import title_of

FORMAT: Final = 1
"""Raised when a reader of the older shape would go wrong."""


def proof_json(proof: Proof) -> dict[str, Any]:
    """The proof as plain values, ready for `json.dumps`.

    Offsets count characters of the lesson's text from 0, lines and columns from 1. `run` alone depends on when
    and where the run took place.
    """
    lesson, said = proof.lesson, answer(proof)
    findings = located(proof)
    numbers = {id(f.finding.claim): f.number for f in findings}
    return {
        "format": FORMAT,
        "lesson": {
            "name": lesson.name,
            "title": title_of(lesson),
            "side": lesson.settings.side,
            "audience": lesson.settings.audience,
        },
        "effort": {"name": str(proof.effort), "steps": list(proof.effort.steps)},
        "engine": proof.engine,
        "outside": _outside(proof),
        "collection": _collection(proof),
        "answer": {**asdict(said), "said": list(said.sentences_said())},
        "findings": [_finding(f) for f in findings],
        "sentences": [_sentence(r, numbers) for r in proof.reading.sentences],
        "contradictions": [
            {
                "rule": both.rule,
                "findings": [f.number for f in both.pair],
                "places": [f.address for f in both.pair],
                "why": both.why,
            }
            for both in contradicting(proof, findings)
        ],
        "opinions": [
            {"words": opinion.words, "move": opinion.move, "sentences": len(found)}
            for opinion, found in proof.opinions
        ],
        "changes": [asdict(change) for change in proof.changes],
        "run": {"seconds": round(proof.seconds, 3), "kept": proof.kept},
    }


def _outside(proof: Proof) -> dict[str, Any] | None:
    program = proof.outside
    if program is None:
        return None
    return {
        "name": program.name,
        "program": program.path.name,
        "sha256": program.sha256,
        "options": dict(sorted(program.options.items())),
        "may_differ": True,
    }


def _collection(proof: Proof) -> dict[str, Any] | None:
    games = proof.games
    if games is None:
        return None
    return {
        "name": games.name,
        "games": games.games,
        "ratings": None if games.ratings is None else list(games.ratings),
    }


def _finding(located: Located) -> dict[str, Any]:
    finding, claim = located.finding, located.finding.claim
    line, column = located.at
    return {
        "number": located.number,
        "kind": claim.kind,
        "kind_version": kind_of(claim.kind).version,
        "outcome": str(finding.outcome),
        "words": claim.words,
        "glyph": located.is_glyph,
        "start": claim.start,
        "end": claim.end,
        "line": line,
        "column": column,
        "place": claim.place.label,
        "position": claim.spot.board.fen,
        "side": claim.side,
        "hedged": claim.hedged,
        "negated": claim.negated,
        "because": finding.because,
        "evidence": _evidence(located),
        "numbers": dict(finding.judgement.numbers),
        "instead": finding.judgement.instead,
        "second": finding.judgement.second,
        "why_unsettled": finding.why_unsettled or None,
        "nodes": finding.nodes,
        "steps": finding.steps,
    }


def _evidence(located: Located) -> dict[str, Any] | None:
    moves = list(located.finding.judgement.line)
    if not moves:
        return None
    board = located.finding.line_from.board
    return {"from": board.fen, "san": board.san_line(moves), "uci": moves}


def _sentence(reading: Reading, numbers: dict[int, int]) -> dict[str, Any]:
    sentence = reading.sentence
    line, column = reading.place.lesson.locate(sentence.start)
    return {
        "text": sentence.text,
        "status": str(reading.status),
        "why": reading.why or None,
        "start": sentence.start,
        "end": sentence.end,
        "line": line,
        "column": column,
        "place": reading.place.label,
        "findings": sorted(numbers[id(claim)] for claim in reading.claims),
    }
