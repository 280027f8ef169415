"""Collections that were built apart and joined answer as one that was built at once."""

from __future__ import annotations

import os
import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from lineproof._engine import Stop, StoppedError
from lineproof.collection import (
    BrokenCollectionError,
    Collection,
    CollectionError,
    NoSuchCollectionError,
)

from .conftest import Make
from .test_guarantees import fingerprint, games_of


def everything(collection: Collection) -> list[object]:
    """What a collection answers, by all its kinds of question, at positions of many games and of few."""
    start = collection.look("")
    said: list[object] = [start, collection.look("", audience=1500)]
    lines = [[move.san] for move in start.moves]
    deeper = [collection.look(" ".join(line)).moves for line in lines]
    lines += [
        [*line, move.san] for line, moves in zip(lines, deeper, strict=True) for move in moves
    ]
    for line in lines[:40] + lines[-40:]:
        position = " ".join(line)
        said += [
            collection.look(position),
            collection.look(position, audience=1400),
            collection.orders(position),
            collection.model_games(position),
        ]
    return said


def held(collection: Collection) -> dict[str, int]:
    return {source.name: collection.games_of(source) for source in collection.sources()}


@pytest.fixture
def parts(invented: dict[str, Path], tmp_path: Path) -> dict[str, Path]:
    """Three files of games that overlap: "one" and "two" have 300 games in common, "two" and "three" 100."""
    games = games_of(invented["shared"].read_text())
    files = {name: tmp_path / f"{name}.pgn" for name in ("one", "two", "three")}
    files["one"].write_text("".join(games[:900]))
    files["two"].write_text("".join(games[600:1500]))
    files["three"].write_text("".join(games[1400:]) + invented["random"].read_text())
    return files


def test_two_built_apart_and_joined_answer_exactly_as_one_built_at_once(
    make: Make, parts: dict[str, Path]
) -> None:
    at_once = make("at once")
    for name, file in parts.items():
        at_once.add([file], source=name)
    left, right = make("left"), make("right")
    left.add([parts["one"]], source="one")
    right.add([parts["two"]], source="two")
    right.add([parts["three"]], source="three")
    before = fingerprint(right.folder)
    (file,) = left.join([right.folder]).files
    assert (file.added, file.doubles) == (1800, 300)
    assert fingerprint(right.folder) == before
    assert left.games == at_once.games == 2700
    assert everything(left) == everything(at_once)
    assert held(left) == held(at_once) == {"one": 900, "two": 600, "three": 1200}
    reads = [
        {source.name: source.read for source in one.sources()} for one in (left, right, at_once)
    ]
    assert reads[0] == {**reads[2], "three": reads[1]["three"]}


@pytest.mark.parametrize("gone", ["one", "two", "three"])
def test_after_joining_a_source_is_forgotten_as_after_adding(
    make: Make, parts: dict[str, Path], gone: str
) -> None:
    at_once = make("at once")
    for name, file in parts.items():
        at_once.add([file], source=name)
    left, right, joined = make("left"), make("right"), make("joined")
    left.add([parts["one"]], source="one")
    right.add([parts["two"]], source="two")
    right.add([parts["three"]], source="three")
    assert sum(file.added for file in joined.join([left.folder, right.folder]).files) == 2700
    assert joined.forget(gone) == at_once.forget(gone)
    assert everything(joined) == everything(at_once)
    assert held(joined) == held(at_once)
    for name in parts:
        if name != gone:
            assert joined.forget(name) == at_once.forget(name)
            assert joined.games == at_once.games


def test_what_the_other_knew_of_shared_games_is_taken_over(
    make: Make, parts: dict[str, Path]
) -> None:
    both, joined = make("both"), make("joined")
    both.add([parts["one"]], source="one")
    both.add([parts["two"]], source="two")  # 300 games stand under "one" and are held by both
    joined.join([both.folder])
    assert joined.forget("one") == 600
    assert joined.games == 900
    assert joined.forget("two") == 900


def test_joining_twice_is_joining_once(make: Make, parts: dict[str, Path]) -> None:
    left, right = make("left"), make("right")
    left.add([parts["one"]], source="one")
    right.add([parts["two"]], source="two")
    left.join([right.folder])
    files, said, sources = fingerprint(left.folder), everything(left), left.sources()
    (again,) = left.join([right.folder]).files
    assert (again.added, again.doubles) == (0, 900)
    assert fingerprint(left.folder) == files
    assert (everything(left), left.sources()) == (said, sources)
    right.add([parts["three"]], source="three")
    (grown,) = left.join([right.folder, right.folder]).files
    assert (grown.added, left.games) == (1200, 2700)


def test_sources_of_one_name_become_one(make: Make, parts: dict[str, Path]) -> None:
    left, right = make("left"), make("right")
    left.add([parts["one"]], source="club")
    right.add([parts["two"]], source="club")
    left.join([right.folder])
    assert held(left) == {"club": 1500}
    assert [source.read for source in left.sources()] == [1500]
    assert left.forget("club") == 1500


def test_one_core_and_three_join_to_the_same_bytes(make: Make, parts: dict[str, Path]) -> None:
    other = make("other")
    other.add(parts.values())
    written = []
    for threads in (1, 3):
        collection = make(f"by {threads}")
        collection.join([other.folder], threads=threads)
        written.append(fingerprint(collection.folder))
    assert written[0] == written[1]
    assert len(written[0]) >= 6


JOINED = """
import sys
from pathlib import Path
from lineproof.collection import Collection
folder = Path(sys.argv[1])
print("ready", flush=True)
Collection.open("killed", folder).join([folder / "other"], threads=2)
print("done", flush=True)
"""


def test_a_kill_at_any_moment_leaves_it_as_before_or_as_after(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    other = make("other")
    other.add([invented["shared"], invented["clocks"]])
    collection = make("killed")
    collection.add([invented["random"]])
    before = everything(collection)
    folder = tmp_path / "collections"
    environment = os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)}

    def start() -> subprocess.Popen[str]:
        process = subprocess.Popen(
            [sys.executable, "-c", JOINED, str(folder)],
            env=environment,
            stdout=subprocess.PIPE,
            text=True,
        )
        assert process.stdout is not None and process.stdout.readline() == "ready\n"
        return process

    began = time.monotonic()
    start().wait()
    length = time.monotonic() - began
    assert collection.games == 3000
    after = everything(collection)
    joined = [source.name for source in other.sources()]
    moments = random.Random(5)
    states = set()
    for _ in range(10):
        for name in joined:
            if name in held(collection):
                collection.forget(name)
        assert everything(collection) == before
        process = start()
        time.sleep(moments.random() * length * 1.1)
        process.send_signal(signal.SIGKILL)
        process.wait()
        states.add(collection.games)
        assert everything(collection) == (before if collection.games == 300 else after)
    assert states <= {300, 3000}
    assert 300 in states  # some kills came in time
    collection.join([other.folder])
    assert everything(collection) == after


def test_a_stop_leaves_it_as_it_was(make: Make, parts: dict[str, Path]) -> None:
    left, right = make("left"), make("right")
    left.add([parts["one"]])
    right.add([parts["two"]])
    before = fingerprint(left.folder)
    stop = Stop()
    stop.set()
    with pytest.raises(StoppedError):
        left.join([right.folder], stop=stop)
    assert fingerprint(left.folder) == before


def test_what_cannot_be_joined_is_refused_and_nothing_changes(
    make: Make, parts: dict[str, Path], tmp_path: Path
) -> None:
    left, right = make("left"), make("right")
    left.add([parts["one"]])
    right.add([parts["two"]])
    before = fingerprint(left.folder)
    with pytest.raises(NoSuchCollectionError, match=r"this is no collection"):
        left.join([right.folder, tmp_path])
    with pytest.raises(CollectionError, match="this is the collection itself"):
        left.join([left.folder])
    (games,) = right.folder.glob("segments/*/games.bin")
    data = bytearray(games.read_bytes())
    data[len(data) // 2] ^= 255
    games.write_bytes(data)
    with pytest.raises(BrokenCollectionError, match="damaged"):
        left.join([right.folder])
    assert fingerprint(left.folder) == before
    assert left.games == 900
