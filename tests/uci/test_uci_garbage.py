"""No line, however wrong, ends the process or makes it deaf."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from .talk import Talk

VOCABULARY = """
    uci isready ucinewgame position startpos fen moves setoption name value go depth nodes movetime wtime btime
    winc binc movestogo mate searchmoves infinite ponder ponderhit stop debug register on MultiPV Ponder Clear
    Without Hash e2e4 e7e5 g1f3 a7a8q 0000 e1g1 - w b KQkq 8/8/8/8/8/8/8/K6k 4k3/8/8/8/8/8/8/4K2R
    rnbqkbnr/pppppppp/8/8/8/8/PPPPPPPP/RNBQKBNR 0 1 2 3 -1 99999999999999999999 null-move
"""
WORDS = st.sampled_from(VOCABULARY.split())
LINES = st.one_of(
    st.lists(WORDS, max_size=12).map(lambda words: " ".join(words).encode()),
    st.lists(st.one_of(WORDS, st.text(max_size=8)), max_size=8).map(
        lambda words: " ".join(words).encode("utf-8", "surrogatepass")
    ),
    st.binary(max_size=60),
)


def harmless(line: bytes) -> bool:
    """Not one that ends the process as it should, nor one that asks for more memory or threads than a test may take."""
    words = line.split()
    return b"quit" not in words and not (b"Hash" in words and b"99999999999999999999" in words)


@pytest.fixture(scope="module")
def begun(command: list[str]) -> Iterator[Talk]:
    with Talk(command) as talk:
        yield talk


@given(lines=st.lists(LINES.filter(harmless), min_size=1, max_size=6))
@settings(
    max_examples=300,
    deadline=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture],
)
def test_it_answers_after_any_garbage(begun: Talk, lines: list[bytes]) -> None:
    begun.send(b"\n".join(lines) + b"\nstop\nisready\n")
    begun.until("readyok")
    # Garbage may ask for isready too; what is left is read before the next question.
    begun.tell("setoption name no such option", "isready")
    begun.until("info string there is no option no such option")
    begun.until("readyok")
    assert begun.process.poll() is None


def test_a_line_of_a_million_characters_is_left_out(command: list[str]) -> None:
    with Talk(command) as talk:
        talk.send(b"position startpos moves " + b"e2e4 " * 500_000 + b"\nisready\n")
        assert talk.until("readyok")[0] == "info string a line is too long; it is left out"
