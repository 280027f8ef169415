"""Sentences and words: where they end and what they are."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lineproof.claims.sentence import sentences


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("Here 3. f4 is played. Good.", ["Here 3. f4 is played.", "Good."]),
        ("After 3... exf4 4. e5 he retreats. Now?", ["After 3... exf4 4. e5 he retreats.", "Now?"]),
        ("It costs 1.5 pawns. Nf3! wins.", ["It costs 1.5 pawns.", "Nf3! wins."]),
        ("Nf3! White is better.", ["Nf3!", "White is better."]),
        ("A knight, e.g. on f7, forks. Yes", ["A knight, e.g. on f7, forks.", "Yes"]),
        ("He waits... and waits. So", ["He waits... and waits.", "So"]),
        ("He plays ...Nxe4. We win.", ["He plays ...Nxe4.", "We win."]),
        ('"Take it!" he said. No.', ['"Take it!" he said.', "No."]),
        ("   ", []),
        ("", []),
    ],
)
def test_where_sentences_end(text: str, expected: list[str]) -> None:
    assert [s.text for s in sentences(text, 0)] == expected


@given(st.text(max_size=200))
def test_every_sentence_is_a_piece_of_the_text_at_its_place(text: str) -> None:
    end = 0
    for sentence in sentences(text, 0):
        assert text[sentence.start : sentence.end] == sentence.text
        assert sentence.start >= end
        end = sentence.end
        for word in sentence.words:
            assert 0 <= word.start <= word.end <= len(sentence.text)


@given(st.text(alphabet="abcdefgh12345678NBRQK.! ?,…O-x=+#'’", max_size=60))
def test_nothing_that_looks_like_chess_breaks_the_reader(text: str) -> None:
    for sentence in sentences(text, 7):
        assert sentence.start >= 7


def test_contractions_are_parted() -> None:
    (sentence,) = sentences("He can't castle, and White's king isn't safe", 0)
    assert [w.norm for w in sentence.words] == [
        "he", "can", "not", "castle", ",", "and", "white", "'s", "king", "is", "not", "safe",
    ]  # fmt: skip
