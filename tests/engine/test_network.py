"""The weights that ship are those whose training `crates/engine/network/network.json` records."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path
from typing import Any

import pytest

FOLDER = Path(__file__).parents[2] / "crates" / "engine" / "network"


@pytest.fixture(scope="module")
def content() -> bytes:
    return (FOLDER / "network.bin").read_bytes()


@pytest.fixture(scope="module")
def account() -> dict[str, Any]:
    found: dict[str, Any] = json.loads((FOLDER / "network.json").read_text(encoding="utf-8"))
    return found


def header(content: bytes) -> str:
    """The text in the file: its length stands at byte 36, itself from byte 120 on (`training/network/quantised.py`)."""
    length = int.from_bytes(content[36:40], "little")
    return content[120 : 120 + length].decode("utf-8")


def test_the_checksum_is_that_of_the_training(content: bytes, account: dict[str, Any]) -> None:
    assert hashlib.sha256(content).hexdigest() == account["sha256"]


def test_the_file_itself_names_the_same_records_and_settings(
    content: bytes, account: dict[str, Any]
) -> None:
    text = header(content)
    records = account["records"]
    assert f"Records: {records['count']}, sha256 {records['sha256']}" in text
    for name, value in account["settings"].items():
        assert f"{name} {value}" in text
    assert f"Passes: {len(account['passes'])}." in text
    assert int.from_bytes(content[20:24], "little") == account["settings"]["width"]


def test_the_training_went_through_and_rounding_changed_little(account: dict[str, Any]) -> None:
    passes = account["passes"]
    assert len(passes) == account["settings"]["passes"]
    assert passes[-1]["validation"] < passes[0]["validation"]
    assert account["yardsticks"]["search score"]["loss"] < account["quantised"]["loss"]
    assert account["quantised"]["loss"] < account["yardsticks"]["level"]["loss"] / 10
    assert account["rounding_centipawns"]["mean"] < 5


def test_the_weights_are_small_enough_to_ship(content: bytes) -> None:
    assert len(content) <= 6_000_000
