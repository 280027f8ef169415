"""Packed files are read as they are, also those of several parts, and those that are damaged as far as they go."""

from __future__ import annotations

import bz2
import gzip
import shutil
import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from .conftest import Make


def zstd(data: bytes) -> bytes:
    """By the reference program; the Python library has it from 3.14 on."""
    program = shutil.which("zstd")
    if program is None:
        pytest.skip("the program zstd is not installed")
    return subprocess.run([program, "-q", "-c"], input=data, capture_output=True, check=True).stdout


PACKERS: dict[str, Callable[[bytes], bytes]] = {
    "gzip": gzip.compress,
    "bzip2": lambda data: bz2.compress(data, 1),
    "zstd": zstd,
}


@pytest.mark.parametrize("kind", PACKERS)
def test_a_packed_file_has_the_same_games(
    make: Make, invented: dict[str, Path], tmp_path: Path, kind: str
) -> None:
    plain = invented["clocks"].read_bytes()
    file = tmp_path / "games"  # the name says nothing of how it is packed
    half = plain.index(b"[Event", len(plain) // 2)
    file.write_bytes(PACKERS[kind](plain[:half]) + PACKERS[kind](plain[half:]))
    report = make(kind).add([file]).files[0]
    assert (report.added, report.broken, report.failure) == (300, 0, None)
    assert report.bytes == len(plain)


@pytest.mark.parametrize("kind", PACKERS)
def test_of_a_file_that_is_cut_off_what_came_before_is_read(
    make: Make, invented: dict[str, Path], tmp_path: Path, kind: str
) -> None:
    plain = invented["shared"].read_bytes()
    packed = PACKERS[kind](plain)
    file = tmp_path / "cut"
    file.write_bytes(packed[: len(packed) * 2 // 3])
    report = make(kind).add([file]).files[0]
    assert report.failure
    # bzip2 gives nothing of a block that is not whole: 100,000 bytes here
    assert report.added > 300
    assert report.added + report.broken == plain[: report.bytes].count(b"[Event ")
    assert report.broken <= 1
    for broken in report.named:
        assert broken.reason == "the file breaks off in this game"


@pytest.mark.parametrize("kind", PACKERS)
def test_damage_inside_is_told(
    make: Make, invented: dict[str, Path], tmp_path: Path, kind: str
) -> None:
    packed = bytearray(PACKERS[kind](invented["shared"].read_bytes()))
    middle = len(packed) // 2
    packed[middle : middle + 40] = b"\x55" * 40
    file = tmp_path / "damaged"
    file.write_bytes(packed)
    report = make(kind).add([file]).files[0]
    assert report.failure


def test_plain_text_that_is_cut_off_ends_in_a_game_or_a_broken_one(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    file = tmp_path / "cut.pgn"
    file.write_bytes(invented["clocks"].read_bytes()[:30_001])
    report = make("plain").add([file]).files[0]
    assert report.failure is None
    assert report.added + report.broken == file.read_bytes().count(b"[Event ")
