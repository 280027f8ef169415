"""The answer in the terminal: opening sentence first, fits 80 columns, and plain text where it must be."""

from __future__ import annotations

import dataclasses
import io
import re

import pytest
from rich.console import Console

from lineproof.claims import Outcome
from lineproof.facade import Lesson, Proof
from lineproof.proof import Change
from lineproof.report import answer, located
from lineproof.report.terminal import Show, terminal
from lineproof.report.wording import turned


def shown(proof: Proof, show: Show | None = None, *, width: int = 80, colour: bool = False) -> str:
    console = Console(
        file=io.StringIO(),
        width=width,
        force_terminal=colour,
        color_system="truecolor" if colour else None,
        _environ={},
    )
    return terminal(proof, console, show)


def flat(text: str) -> str:
    return " ".join(text.split())


def test_it_opens_with_the_title_and_the_answer(proof: Proof) -> None:
    lines = shown(proof).splitlines()
    assert lines[0] == "The Vienna Gambit for White"
    assert flat("\n".join(lines[1:4])).startswith(answer(proof).checked)


def test_each_failing_claim_has_place_words_reason_and_true_wording(proof: Proof) -> None:
    text = shown(proof, width=400)
    for f in located(proof):
        if f.outcome is Outcome.FAILS:
            begins = text.index(f"▲ fails  {f.address}  {f.label}")
            block = flat(text[begins:].split("\n\n")[0])
            assert f.sentence in block
            assert f.evidence in block
            assert f.instead in block
            assert f.why in block


def test_the_address_is_that_of_the_words(proof: Proof) -> None:
    text = shown(proof, width=400)
    line, column = proof.lesson.locate(proof.lesson.text.index("The knight on f6 is pinned"))
    assert f"vienna/lines.pgn:{line}:{column}  3. f4" in text


def test_what_holds_is_shown_only_when_asked_for(proof: Proof) -> None:
    assert "● holds" not in shown(proof)
    assert shown(proof, "all").count("● holds") == proof.count(Outcome.HOLDS)


def test_show_read_lists_every_sentence_with_what_became_of_it(proof: Proof) -> None:
    text = flat(shown(proof, "read", width=400))
    for reading in proof.reading.sentences:
        assert f"“{flat(reading.sentence.text)}” {str(reading.status).capitalize()}" in text
        assert reading.why in text


def test_no_line_is_wider_than_the_terminal_but_addresses(proof: Proof) -> None:
    for line in shown(proof, "read").splitlines():
        assert len(line) <= 80 or "vienna/lines.pgn:" in line
        assert line == line.rstrip()


def test_a_pipe_gets_no_control_codes(proof: Proof, hostile: Proof) -> None:
    for some in (proof, hostile):
        for show in (None, "read", "all"):
            text = shown(some, show)  # type: ignore[arg-type]
            assert not re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u202e]", text)


def test_the_authors_control_codes_never_reach_a_terminal(hostile: Proof) -> None:
    text = shown(hostile, "read", colour=True)
    assert "\x1b[" in text  # our own
    assert "\x1b[31mWhite is a queen up" not in text
    assert "�[31m" in text


def test_no_part_of_a_finding_commands_the_terminal(proof: Proof) -> None:
    """Reasons and kept places may quote the author, and a cache may have been written by anyone."""
    evil = "a\x1b[31mb\u202ec\x9b1md"
    judgement = dataclasses.replace(
        proof.findings[0].judgement, because=f"{evil}.", instead=evil, second=evil
    )
    finding = dataclasses.replace(proof.findings[0], outcome=Outcome.FAILS, judgement=judgement)
    change = Change(evil, "holds", "fails", evil, evil)
    text = shown(
        dataclasses.replace(proof, findings=(finding,), changes=(change,)), "all", width=200
    )
    assert not re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u202e]", text)
    assert text.count("a\ufffd[31mb\ufffdc\ufffd1md") == 6


def test_colour_is_never_alone(proof: Proof) -> None:
    """Without its colours the text is the same: the word and the glyph say what the colour says."""
    coloured = shown(proof, "all", colour=True)
    assert re.sub(r"\x1b\[[\d;]*m", "", coloured) == shown(proof, "all")


def test_what_changed_is_said_with_its_reason(proof: Proof) -> None:
    turned = Change("Black wins a piece.", "holds", "fails", "the line around it was edited")
    text = flat(shown(dataclasses.replace(proof, changes=(turned,))))
    assert "“Black wins a piece.” held, and now fails: the line around it was edited." in text


@pytest.mark.parametrize(
    ("change", "said"),
    [
        (Change("$4", "unsettled", "holds", "r"), "“??” was unsettled, and now holds: r."),
        (Change("$14", "holds", "", "r"), "“+=”, which held, is gone: r."),
        (Change("$250", "", "fails", "r"), "“$250” is new and fails."),
        (Change("a\n b", "", "unsettled", "r"), "“a b” is new and is unsettled."),
    ],
)
def test_each_sort_of_change_in_words(change: Change, said: str) -> None:
    assert turned(change) == said


def test_unsettled_claims_are_parted_by_their_reason(proof: Proof) -> None:
    first, second = proof.findings[:2]
    open_ = dataclasses.replace(
        first, outcome=Outcome.UNSETTLED, why_unsettled="the last two steps disagree"
    )
    off = dataclasses.replace(second, outcome=Outcome.UNSETTLED, why_unsettled="one off")
    some = dataclasses.replace(proof, findings=(open_, off))
    text = shown(some)
    assert text.index("only one band or one mark off\n\n◐ unsettled") < text.index(
        "search could not settle it\n\n◐ unsettled"
    )
    assert "Open: The last two steps of search disagree." in text
    counts = answer(some)
    assert (counts.unsettled, counts.one_off, counts.open) == (2, 1, 1)


def test_a_lesson_that_does_not_say_its_side_asks_for_it() -> None:
    proof = Lesson.from_text("1. e4 e5 2. f4 {We are a pawn up.} *").prove("sketch")
    assert "--side white or --side black" in shown(proof)


@pytest.mark.parametrize("width", [1, 20, 40, 200])
def test_any_width_will_do(proof: Proof, width: int) -> None:
    assert flat(answer(proof).checked) in flat(shown(proof, width=width))


def test_evidence_that_could_not_be_kept_is_said(proof: Proof) -> None:
    said = "The evidence could not be kept, so the next run computes it again."
    assert said in flat(shown(dataclasses.replace(proof, kept=False)))
    assert said not in flat(shown(proof))


@pytest.mark.parametrize(
    ("text", "heading"),
    [
        ("1. e4 {White is a pawn up.} *", "True"),
        ("1. e4 {White is winning.} *", "Search says"),
        ("1. f3 e5 2. g4 $1 Qh4# *", "Search says"),
    ],
)
def test_a_true_wording_says_whether_the_board_or_search_gave_it(text: str, heading: str) -> None:
    proof = Lesson.from_text(text).prove("sketch")
    (finding,) = located(proof)
    assert finding.instead
    assert (heading, finding.instead) in finding.said()
    assert f"  {heading}: {finding.instead}" in shown(proof)


def test_a_mark_is_put_right_in_the_words_of_the_trade() -> None:
    (finding,) = located(Lesson.from_text("1. f3 e5 2. g4 $1 Qh4# *").prove("sketch"))
    assert finding.instead == "For White g4 is a very poor move."
