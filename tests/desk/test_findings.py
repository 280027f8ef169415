"""What is found of a lesson while it is written."""

from __future__ import annotations

from typing import Any

import chess

from lineproof.desk import passages, prover
from lineproof.facade import Lesson

from .conftest import Desk
from .waiting import until

FALSE = "This is mate."


def say(desk: Desk, text: str, *sans: str) -> dict[str, Any]:
    """Adds a comment to a place; the comment."""
    desk.edit(op="add_comment", place=desk.place(*sans)["id"], text=text)
    return desk.place(*sans)["after"][-1]


def test_a_false_sentence_fails_with_the_reason_beside_its_words(desk: Desk) -> None:
    comment = say(desk, f"We go on. {FALSE}", "e4", "e5", "Nc3", "Nf6", "f4")
    found = desk.finding("This is mate")
    assert found["outcome"] == "fails"
    assert found["why"] == "Black is not even in check."
    assert found["comment"] == comment["index"]
    assert found["place"] == desk.place("e4", "e5", "Nc3", "Nf6", "f4")["id"]
    assert comment["text"][found["start"] : found["end"]] == "This is mate"


def test_the_evidence_is_a_line_that_can_be_played_and_taken_into_the_lesson(desk: Desk) -> None:
    say(desk, "White wins the queen.", "e4", "e5", "Nc3", "Nf6", "f4", "d5", "fxe5", "Nxe4")
    found = desk.finding("White wins the queen")
    assert found["outcome"] == "fails"
    evidence = found["evidence"]
    board = chess.Board(evidence["fen"])
    for move in evidence["moves"]:
        assert board.parse_san(move["san"]).uci() == move["uci"]
        board.push_uci(move["uci"])
        assert board.fen(en_passant="legal").split()[0] == move["fen"].split()[0]
    place = next(p for p in desk.lesson["places"] if p["fen"] == evidence["fen"])
    desk.edit(op="add_line", place=place["id"], moves=[m["uci"] for m in evidence["moves"]])
    assert board.fen().split()[0] in {p["fen"].split()[0] for p in desk.lesson["places"]}


def test_the_desk_finds_what_a_proof_finds(desk: Desk) -> None:
    say(desk, FALSE, "e4", "e5")
    shown = {(f["words"], f["outcome"], f["why"]) for f in desk.findings()["findings"] if f["comment"] is not None}  # fmt: skip
    desk.on_desk.opened.save()
    proof = Lesson.open(desk.path).prove("sketch")
    glyphs = {id(claim) for claim in proof.reading.glyphs}
    proved = {
        (f.claim.words, str(f.outcome), f.because)
        for f in proof.findings
        if id(f.claim) not in glyphs
    }
    assert shown == proved
    assert len(desk.findings()["findings"]) == len(proof.findings)


def test_a_glyph_is_a_claim_without_a_comment(desk: Desk) -> None:
    (found,) = (f for f in desk.findings()["findings"] if f["comment"] is None)
    assert (found["words"], found["start"], found["end"]) == ("3... d5!", 0, 0)
    assert found["outcome"] == "holds"


def test_words_that_an_edit_elsewhere_leaves_behind_are_told_of(desk: Desk) -> None:
    say(desk, "Later 4. fxe5 follows.", "e4", "e5", "Nc3")
    assert "stale" not in {f["kind"] for f in desk.findings()["findings"]}
    desk.edit(op="cut", place=desk.place("e4", "e5", "Nc3", "Nf6", "f4")["id"])
    (stale,) = (f for f in desk.findings()["findings"] if f["kind"] == "stale")
    assert (stale["words"], stale["outcome"]) == ("4. fxe5", "fails")
    asked = {"sort": "stale", "place": stale["place"], "about": stale["words"]}
    desk.edit(op="decide", **asked, decided="dismissed")
    (decided,) = desk.lesson["stale_decided"]
    assert (decided["about"], decided["decided"]) == ("4. fxe5", "dismissed")
    assert stale["place"] in decided["places"]
    assert desk.finding("4. fxe5")["outcome"] == "fails"  # it is off the list, and no less false
    desk.edit(op="decide", **asked, decided=None)
    assert desk.lesson["stale_decided"] == []
    for _ in range(3):
        desk.edit(op="undo")
    assert "stale" not in {f["kind"] for f in desk.findings()["findings"]}


def test_findings_stay_beside_their_words_while_others_are_edited(desk: Desk) -> None:
    say(desk, FALSE, "e4", "e5", "Nc3", "Nf6", "f4")
    before = desk.finding("This is mate")
    comment = say(desk, "The king's pawn.", "e4")
    after = desk.finding("This is mate")
    assert after["id"] == before["id"]
    assert after["comment"] == before["comment"] + 1 > comment["index"]
    assert {**after, "comment": before["comment"]} == before


def test_a_sentence_that_is_an_opinion_is_not_checked_until_that_is_taken_back(desk: Desk) -> None:
    comment = say(desk, f"We go on. {FALSE}", "e4", "e5", "Nc3", "Nf6", "f4")
    assert desk.finding("This is mate")["outcome"] == "fails"
    at = {"comment": comment["index"], "start": 10, "end": 23}
    done = desk.edit(op="opinion", **at, opinion=True)
    assert done["at"] == desk.place("e4", "e5", "Nc3", "Nf6", "f4")["id"]
    found = desk.findings()
    assert "This is mate" not in {f["words"] for f in found["findings"]}
    marked = [s for s in found["sentences"] if s["status"] == "your opinion"]
    assert [(s["comment"], s["start"], s["end"]) for s in marked] == [(comment["index"], 10, 23)]
    assert FALSE in (desk.path / "lesson.toml").read_text()
    desk.edit(op="opinion", **at, opinion=False)
    assert desk.finding("This is mate")["outcome"] == "fails"


def test_a_mark_whose_sentence_is_gone_is_listed_and_taken_back(desk: Desk) -> None:
    comment = say(desk, f"We go on. {FALSE}", "e4")
    desk.edit(op="opinion", comment=comment["index"], start=10, end=23, opinion=True)
    desk.edit(op="change_words", comment=comment["index"], text="We go on.")
    (mark,) = desk.lesson["opinions"]
    assert (mark["words"], mark["move"]) == (FALSE, "1. e4")
    desk.edit(op="take_back", name=mark["name"])
    assert desk.lesson["opinions"] == []
    assert FALSE not in (desk.path / "lesson.toml").read_text()
    assert desk.ask(op="take_back", name=mark["name"]).status_code == 422
    desk.edit(op="change_words", comment=comment["index"], text=f"We go on. {FALSE}")
    assert desk.finding("This is mate")["outcome"] == "fails"


def test_only_a_sentence_can_be_an_opinion(desk: Desk) -> None:
    answer = desk.ask(op="opinion", comment=0, start=27, end=40, opinion=True)
    assert answer.status_code == 422
    answer = desk.ask(op="opinion", comment=99, start=0, end=5, opinion=True)
    assert answer.status_code == 422


def test_a_check_that_breaks_says_so_and_ends_no_other(desk: Desk, monkeypatch) -> None:
    real = prover.settle

    def broken(claim, *rest):
        if claim.kind == "mate":
            raise ZeroDivisionError
        return real(claim, *rest)

    monkeypatch.setattr(prover, "settle", broken)
    say(desk, FALSE, "e4", "e5", "Nc3", "Nf6", "f4")
    say(desk, "The knight on c3 is pinned.", "e4", "e5", "Nc3", "Nf6", "f4", "d5")
    found = desk.finding("This is mate")
    assert found["outcome"] == "unsettled"
    assert "fault" in found["why"]
    assert desk.finding("The knight on c3 is pinned")["outcome"] == "fails"


def test_what_the_prover_kept_of_old_versions_is_forgotten(desk: Desk) -> None:
    for number in range(5):
        desk.edit(op="change_words", comment=1, text=f"White has {number} knights.")
    desk.findings()
    prover_ = desk.on_desk.prover
    keys = {said.id for passage in prover_._table.values() for said in passage.said}
    assert set(prover_._answers) <= keys
    assert len(prover_._table) == len(desk.on_desk.opened.lesson.comments) + 1


def test_two_claims_that_cannot_both_be_true_are_told_of_together(desk: Desk) -> None:
    place = ("e4", "e5", "Nc3", "Nf6", "f4", "d5", "fxe5", "Nxe4")
    say(desk, "White is winning.", *place)
    say(desk, "Black is winning.", *place)
    found = until(lambda: desk.findings() if desk.findings()["contradictions"] else None)
    (both,) = found["contradictions"]
    words = {f["id"]: f["words"] for f in found["findings"]}
    assert [words[id_] for id_ in both["findings"]] == ["White is winning", "Black is winning"]
    assert both["why"]
    proof = desk.on_desk.opened.save() or Lesson.open(desk.path).prove("sketch")
    assert [c.said for c in proof.contradictions] == [both["why"]]
    desk.edit(op="undo")
    assert until(lambda: desk.findings()["contradictions"] == [])


def test_words_that_break_the_reading_are_said_to_and_end_no_other(desk: Desk, monkeypatch) -> None:
    real = passages.read_comment

    def broken(lesson, comment, *rest):
        if "knight" in comment.text:
            raise ZeroDivisionError
        return real(lesson, comment, *rest)

    monkeypatch.setattr(passages, "read_comment", broken)
    say(desk, "The knight is pinned.", "e4", "e5")
    say(desk, FALSE, "e4", "e5", "Nc3", "Nf6", "f4")
    assert desk.finding("This is mate")["outcome"] == "fails"
    comment = desk.place("e4", "e5")["after"][0]["index"]
    (sentence,) = (s for s in desk.findings()["sentences"] if s["comment"] == comment)
    assert sentence["status"] == "not understood"
    assert "fault" in sentence["why"]
