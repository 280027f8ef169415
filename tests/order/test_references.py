"""What sentences refer to, and what comes of it for the order. All lessons are invented."""

from __future__ import annotations

import pytest

from lineproof.order import running_order
from lineproof.order.order import steps_of, telling
from lineproof.order.references import Reference, closing, references

from .lessons import lesson


def found(text: str) -> list[tuple[str, tuple[str, ...], str]]:
    steps = steps_of(lesson(text))
    return [
        (steps.label(ref.step), tuple(steps.label(n) for n in ref.to), ref.why)
        for ref in references(steps)
    ]


def order(text: str) -> list[str]:
    """The first move of each line, as it is told."""
    cues = running_order(lesson(text)).cues
    return [
        cue.place.label
        for number, cue in enumerate(cues)
        if cue.kind == "play" and cues[number - 1].kind == "go back to"
    ]


TREE = "1. e4 {A.} e5 {%s} (1... c5 {%s} 2. Nf3 {%s}) (1... e6 {%s} 2. d4 {%s}) 2. Nc3 {%s} *"


def tree(**words: str) -> str:
    order = ("e5", "c5", "nf3", "e6", "d4", "nc3")
    return TREE % tuple(words.get(move, "Words.") for move in order)


def test_a_line_that_is_named_elsewhere_is_told_before() -> None:
    text = tree(c5="As in the line 1...e6 2.d4, Black waits.")
    assert found(text) == [("1... c5", ("2. d4",), "names a line")]
    assert order(text) == ["1... e6", "1... c5"]
    assert order(tree()) == ["1... c5", "1... e6"]


@pytest.mark.parametrize(
    "words",
    [
        "After 1...e6 2.d4 we shall see more.",  # put off
        "He could play 1...e6 here.",  # an alternative, nothing that was said
        "As in the line 1...e5 2.Nc3 d5, fine.",  # leads on to what nobody shows, but names the main line
        "The same as ever.",  # names nothing
    ],
)
def test_what_refers_to_no_line_told_before_waits_for_nothing_but_the_main_line(words: str) -> None:
    assert all(to in [("2. Nc3",), ()] for _, to, _ in found(tree(c5=words)))
    assert order(tree(c5=words)) == ["1... c5", "1... e6"]


def test_a_move_below_or_on_the_own_road_is_no_reference() -> None:
    assert found(tree(c5="As always 1...c5 2.Nf3 was best.")) == []
    assert found(tree(nf3="After 1...c5 the same was true.")) == []


def test_the_same_move_in_a_named_line_is_found_there() -> None:
    text = "1. e4 {A.} e5 {B.} (1... c5 {C.} 2. Nf3 {After 1...e6 the same move was slow.}) (1... e6 {D.} 2. d4 (2. Nf3 {E.})) 2. Nc3 *"
    assert found(text)[0] == ("2. Nf3", ("2. Nf3",), "names a line")
    assert order(text)[-1] == "1... c5"


def test_as_we_saw_wants_all_that_the_file_has_before() -> None:
    ((step, to, why),) = found(tree(e6="As we saw, Black waits."))
    assert (step, why) == ("1... e6", "As we saw")
    assert set(to) == {"1... e5", "1... c5", "2. Nf3"}


def test_as_we_saw_with_a_move_wants_that_move() -> None:
    assert found(tree(e6="We saw Nf3 already.")) == [("1... e6", ("2. Nf3",), "We saw")]


def test_sentences_that_compare_keep_their_order() -> None:
    text = tree(
        c5="By contrast, this is slow.",
        nf3="As in 1...e6 2.d4, fine.",
        d4="Once more White builds.",
    )
    refs = found(text)
    assert ("2. d4", ("1... c5",), "Once more") in refs
    told = telling(steps_of(lesson(text)))
    at = [told.steps.label(a.number) for a in told.acts if a.number is not None]
    assert at.index("1... c5") < at.index("2. d4") < at.index("2. Nf3")


def test_the_last_line_is_the_one_that_the_file_has_before() -> None:
    assert found(tree(e6="Unlike the last line, this is solid.")) == [
        ("1... e6", ("2. Nf3",), "Unlike, last line")
    ]


def test_the_main_line_is_told_before_a_sentence_that_speaks_of_it() -> None:
    assert ("2. d4", ("1... e5",), "main line") in found(tree(d4="Better than in the main line."))


def test_a_move_that_is_to_be_learnt_first_comes_first() -> None:
    text = tree(e6="Learn this one first.")
    assert order(text)[0] in ("1... e5", "1... c5")
    told = telling(steps_of(lesson(text)))
    at = [told.steps.label(a.number) for a in told.acts if a.number is not None]
    assert at.index("1... e6") < at.index("1... c5") and at.index("1... e6") < at.index("1... e5")


def test_a_circle_is_told_and_never_hides_a_sentence() -> None:
    text = tree(c5="As in the line 1...e6 2.d4, fine.", e6="As in the line 1...c5 2.Nf3, fine.")
    told = telling(steps_of(lesson(text)))
    assert len({ref.sentence.start for ref in told.early}) == 1
    assert len(told.file_early) == 1
    assert {a.number for a in told.acts if a.number is not None} >= told.steps.wanted_set


def test_words_that_take_leave_come_last_with_all_that_follows_them() -> None:
    text = (
        "1. e4 {A.} e5 {B.} (1... c5 {C.}) 2. Nc3 {Good. That is all for tonight. Mind the step.} *"
    )
    assert [s.text for s in closing(steps_of(lesson(text)))] == [
        "That is all for tonight.",
        "Mind the step.",
    ]
    said = [cue.words for cue in running_order(lesson(text)).cues if cue.kind == "say"]
    assert said == ["A.", "B.", "Good.", "C.", "That is all for tonight.", "Mind the step."]


def test_words_that_take_leave_in_the_middle_stay_there() -> None:
    text = (
        "1. e4 {That is all there is to it. On we go.} e5 {B.} (1... c5 {C.}) 2. Nc3 {The end.} *"
    )
    said = [cue.words for cue in running_order(lesson(text)).cues if cue.kind == "say"]
    assert said == ["That is all there is to it.", "On we go.", "B.", "The end.", "C."]


def test_references_come_in_the_order_of_the_text() -> None:
    refs = references(steps_of(lesson(tree(c5="As in the line 1...e6 2.d4.", e6="As we saw."))))
    assert refs == sorted(refs, key=lambda ref: (ref.sentence.start, ref.to))
    assert all(isinstance(ref, Reference) for ref in refs)
