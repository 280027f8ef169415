"""Nothing is lost, nothing is doubled, whatever happens."""

from __future__ import annotations

import hashlib
import json
import os
import random
import signal
import subprocess
import sys
import threading
import time
from pathlib import Path

import pytest

from lineproof._engine import Stop, StoppedError, invent_games
from lineproof.collection import (
    BrokenCollectionError,
    Collection,
    CollectionError,
    CollectionLockedError,
    NoSuchCollectionError,
    NoSuchSourceError,
)
from lineproof.collection.adding import _alike, writing
from lineproof.collection.collection import collections
from lineproof.collection.manifest import Segment

from .conftest import Make


def games_of(text: str) -> list[str]:
    return [f"[Event {part}" for part in text.split("[Event ")[1:]]


def fingerprint(folder: Path) -> dict[str, str]:
    """Every file of the segments and its digest."""
    return {
        str(path.relative_to(folder)): hashlib.sha256(path.read_bytes()).hexdigest()
        for path in sorted((folder / "segments").rglob("*"))
        if path.is_file()
    }


def answers(collection: Collection) -> list[object]:
    """What a collection says of a few positions."""
    start = collection.look("")
    said: list[object] = [start]
    for move in start.moves[:3]:
        said += [collection.look(move.san), collection.orders(move.san)]
    return said


# Adding


def test_the_same_file_twice_counts_once(make: Make, invented: dict[str, Path]) -> None:
    collection = make("twice")
    collection.add([invented["shared"]])
    before = fingerprint(collection.folder)
    report = collection.add([invented["shared"]]).files[0]
    assert (report.added, report.doubles) == (0, 2400)
    assert collection.games == 2400
    assert fingerprint(collection.folder) == before
    assert len(collection.sources()) == 1


def test_a_file_that_has_grown_adds_what_is_new(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    collection = make("grown")
    games = games_of(invented["shared"].read_text())
    file = tmp_path / "growing.pgn"
    for count, new in ((500, 500), (800, 300), (800, 0)):
        file.write_text("".join(games[:count]))
        report = collection.add([file]).files[0]
        assert (report.added, report.doubles) == (new, count - new)
    assert collection.games == 800
    whole = make("whole")
    whole.add([file])
    assert answers(collection) == answers(whole)


def test_a_game_that_comes_twice_in_a_file_counts_once(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    games = games_of(invented["shared"].read_text())[:50]
    file = tmp_path / "double.pgn"
    file.write_text("".join(games + games[10:20]))
    report = make("double").add([file]).files[0]
    assert (report.added, report.doubles) == (50, 10)


def test_games_that_differ_in_a_name_or_a_move_are_two(make: Make, tmp_path: Path) -> None:
    file = tmp_path / "two.pgn"
    file.write_text(
        '[White "Ann"]\n\n1. e4 e5 1-0\n\n[White "Ben"]\n\n1. e4 e5 1-0\n\n[White "Ann"]\n\n1. e4 c5 1-0\n\n'
        '[White "Ann"]\n[WhiteElo "1500"]\n\n1. e4 e5 1-0\n'
    )
    assert make("two").add([file]).files[0].added == 4


def test_one_core_and_two_write_the_same_bytes(make: Make, invented: dict[str, Path]) -> None:
    written = []
    for threads in (1, 2, 5):
        collection = make(f"by {threads}")
        collection.add(invented.values(), threads=threads)
        written.append(fingerprint(collection.folder))
    assert written[0] == written[1] == written[2]
    assert len(written[0]) >= 6


def test_a_stop_leaves_the_collection_as_it_was(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    collection = make("stopped")
    collection.add([invented["random"]])
    before, said = fingerprint(collection.folder), answers(collection)
    stop = Stop()
    stop.set()
    with pytest.raises(StoppedError):
        collection.add([invented["shared"]], stop=stop)
    assert fingerprint(collection.folder) == before
    assert answers(collection) == said


@pytest.mark.parametrize("error", [StoppedError("stopped"), OSError(28, "no space left")])
def test_games_are_in_when_making_one_segment_of_four_fails(
    make: Make,
    invented: dict[str, Path],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    error: Exception,
) -> None:
    collection = make("unsettled")
    games = games_of(invented["shared"].read_text())
    files = [tmp_path / f"{number}.pgn" for number in range(5)]
    for number, file in enumerate(files):
        file.write_text("".join(games[100 * number : 100 * number + 100]))

    def fails(*_: object, **__: object) -> None:
        raise error

    with monkeypatch.context() as patched:
        patched.setattr("lineproof.collection.adding.rebuild_segment", fails)
        for file in files[:4]:
            assert collection.add([file]).files[0].added == 100
    assert collection.games == 400
    assert len(list((collection.folder / "segments").iterdir())) == 4
    before = answers(collection)
    assert collection.add([files[0]]).files[0].doubles == 100
    assert len(list((collection.folder / "segments").glob("0*"))) == 1
    assert answers(collection) == before


KILLED = """
import sys
from lineproof.collection import Collection
collection = Collection.open("killed", sys.argv[1])
print("ready", flush=True)
collection.add([sys.argv[2]], threads=2)
print("done", flush=True)
"""


def test_a_kill_at_any_moment_loses_and_doubles_nothing(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    """Twenty kills at moments spread over the whole import, each followed by a whole one at times."""
    file = tmp_path / "killed.pgn"
    invent_games(file, 6000, seed=3, plies=60, shared=True)
    folder = tmp_path / "collections"
    environment = os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)}

    def start() -> subprocess.Popen[str]:
        process = subprocess.Popen(
            [sys.executable, "-c", KILLED, str(folder), str(file)],
            env=environment,
            stdout=subprocess.PIPE,
            text=True,
        )
        assert process.stdout is not None and process.stdout.readline() == "ready\n"
        return process

    collection = make("killed")
    collection.add([invented["random"]])
    invented_only = answers(collection)
    process = start()
    began = time.monotonic()
    process.wait()
    length = time.monotonic() - began
    assert collection.games == 6300
    after = answers(collection)
    assert collection.forget(str(file)) == 6000
    assert answers(collection) == invented_only
    moments = random.Random(2)
    states, halves = set(), 0
    for _ in range(20):
        process = start()
        time.sleep(moments.uniform(0, 1.1 * length))
        process.send_signal(signal.SIGKILL)
        process.wait()
        found = collection.games
        assert found in (300, 6300)
        assert answers(collection) == (after if found == 6300 else invented_only)
        states.add(found)
        names = {segment.name for segment in collection._manifest().segments}
        halves += {path.name for path in (collection.folder / "segments").iterdir()} > names
        if found == 6300:
            # what a finished import leaves is the same as if nothing had been killed before it
            assert collection.forget(str(file)) == 6000
    # and several hit while something was half written
    assert 300 in states and halves >= 3
    report = collection.add([file]).files[0]
    assert report.added == 6000
    assert answers(collection) == after
    # leftovers of the killed ones are gone
    names = {segment.name for segment in collection._manifest().segments}
    assert {path.name for path in (collection.folder / "segments").iterdir()} == names


# Forgetting


def test_forget_takes_what_only_that_source_holds(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    games = games_of(invented["shared"].read_text())
    one, two = tmp_path / "one.pgn", tmp_path / "two.pgn"
    one.write_text("".join(games[:600]))
    two.write_text("".join(games[400:1000]))
    collection = make("forgetful")
    collection.add([one])
    report = collection.add([two]).files[0]
    assert (report.added, report.doubles) == (400, 200)
    assert collection.forget(str(one)) == 400
    assert collection.games == 600
    rest = make("rest")
    rest.add([two])
    assert answers(collection) == answers(rest)
    assert [source.name for source in collection.sources()] == [str(two)]
    assert collection.games_of(collection.sources()[0]) == 600
    # and what is left can be forgotten too, and come again
    assert collection.forget(str(two)) == 600
    assert collection.games == 0
    assert collection.add([one]).files[0].added == 600


def test_forget_in_a_segment_of_several_sources(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    games = games_of(invented["shared"].read_text())
    files = []
    for number in range(3):
        files.append(tmp_path / f"{number}.pgn")
        # each shares 100 games with the one before
        files[-1].write_text("".join(games[number * 200 : number * 200 + 300]))
    collection = make("several")
    collection.add(files)
    assert collection.games == 700
    assert len(collection._manifest().segments) == 1
    assert collection.forget(str(files[0])) == 200
    rest = make("others")
    rest.add(files[1:])
    assert answers(collection) == answers(rest)
    assert collection.forget(str(files[2])) == 200
    rest = make("middle")
    rest.add([files[1]])
    assert answers(collection) == answers(rest)


def test_forget_what_is_not_there_says_so(make: Make, invented: dict[str, Path]) -> None:
    collection = make("there")
    collection.add([invented["random"]])
    with pytest.raises(NoSuchSourceError, match="has no games from there"):
        collection.forget("nowhere.pgn")


def test_a_source_has_the_name_that_it_was_given(make: Make, invented: dict[str, Path]) -> None:
    collection = make("named")
    collection.add([invented["random"], invented["clocks"]], source="club evenings")
    assert [source.name for source in collection.sources()] == ["club evenings"]
    assert collection.sources()[0].read == 600
    assert collection.forget("club evenings") == 600


# Together


def test_a_second_writer_is_told(make: Make, invented: dict[str, Path]) -> None:
    collection = make("locked")
    collection.add([invented["random"]])
    code = (
        "import sys; from lineproof.collection import Collection, CollectionLockedError\n"
        "try: Collection.open('locked', sys.argv[1]).add([sys.argv[2]])\n"
        "except CollectionLockedError as error: print(error)"
    )
    with writing(collection.folder):
        done = subprocess.run(
            [sys.executable, "-c", code, collection.folder.parent, invented["clocks"]],
            env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
            capture_output=True,
            text=True,
            check=True,
        )
        assert "another process is writing this collection" in done.stdout
        # a reader does not wait
        assert collection.look("").games == 300
    assert issubclass(CollectionLockedError, CollectionError)


def test_a_reader_beside_a_writer_sees_whole_states(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    games = games_of(invented["shared"].read_text())
    reader, writer = make("beside"), make("beside")
    writer.add([invented["random"]])
    seen: list[int] = []
    failures: list[BaseException] = []
    over = threading.Event()

    def read() -> None:
        try:
            while not over.is_set():
                seen.append(reader.look("").games)
        except BaseException as error:
            failures.append(error)

    thread = threading.Thread(target=read)
    thread.start()
    sizes = [300]
    for number in range(9):  # often enough that segments are made one meanwhile
        file = tmp_path / f"{number}.pgn"
        file.write_text("".join(games[number * 40 : number * 40 + 40]))
        writer.add([file])
        sizes.append(300 + 40 * (number + 1))
    over.set()
    thread.join()
    assert not failures
    assert seen == sorted(seen)
    assert set(seen) <= set(sizes)


# Names and damage


@pytest.mark.parametrize("name", ["", "a/b", "..", ".hidden", "x" * 61, "a\nb", "dot.", "a\\b"])
def test_a_name_that_no_collection_can_have_is_refused(tmp_path: Path, name: str) -> None:
    with pytest.raises(CollectionError, match="is no name for a collection"):
        Collection.open(name, tmp_path)


def test_a_collection_that_is_not_there_says_how_to_make_it(make: Make) -> None:
    with pytest.raises(NoSuchCollectionError, match="lineproof collect add"):
        make("nothing").look("")
    assert not make("nothing").exists


def test_collections_are_listed_by_name(
    make: Make, invented: dict[str, Path], tmp_path: Path
) -> None:
    for name in ("b", "a"):
        make(name).add([invented["random"]])
    (tmp_path / "collections" / "empty").mkdir()
    assert [one.name for one in collections(tmp_path / "collections")] == ["a", "b"]


@pytest.mark.parametrize("text", ["", "{", "[]", '{"format": 1}', '{"format": 1, "sources": 3}'])
def test_a_damaged_manifest_is_told(make: Make, invented: dict[str, Path], text: str) -> None:
    collection = make("damaged")
    collection.add([invented["random"]])
    (collection.folder / "collection.json").write_text(text)
    with pytest.raises(BrokenCollectionError, match="it is damaged"):
        collection.look("")
    with pytest.raises(BrokenCollectionError, match="it is damaged"):
        collection.add([invented["random"]])


def test_a_later_format_is_refused(make: Make, invented: dict[str, Path]) -> None:
    collection = make("later")
    collection.add([invented["random"]])
    file = collection.folder / "collection.json"
    file.write_text(json.dumps(json.loads(file.read_text()) | {"format": 2}))
    with pytest.raises(BrokenCollectionError, match="it has format 2, and this version reads 1"):
        collection.look("")


DAMAGES = [
    (kind, how)
    for kind in ("games.bin", "games.idx", "totals-00.parquet", "rare-00.parquet")
    for how in ("gone", "short", "changed")
    # in a Parquet file a changed byte may be one of a number, which nothing guards
    if how != "changed" or kind.startswith("games")
]


@pytest.mark.parametrize(("kind", "how"), DAMAGES)
def test_a_damaged_segment_is_told(
    make: Make, invented: dict[str, Path], kind: str, how: str
) -> None:
    collection = make("damaged")
    collection.add([invented["shared"]])
    # a game through the middle of the file, by a position that it has alone
    model = collection.model_games("", most=1)[0]
    moves = " ".join([*model.before, *model.after][:38])
    assert collection.look(moves).games == 1
    collection.close()
    (segment,) = (collection.folder / "segments").iterdir()
    file = segment / kind
    data = file.read_bytes()
    if how == "gone":
        file.unlink()
    elif how == "short":
        file.write_bytes(data[:10])
    else:
        file.write_bytes(bytes(byte ^ 0x55 for byte in data))
    with pytest.raises(BrokenCollectionError, match="forget the source"):
        collection.look(moves)


def test_segments_are_made_one_by_fours_of_like_size_and_not_beyond_8_million() -> None:
    def of(*games: int) -> list[Segment]:
        return [Segment(str(n), count, {1: count}, 0, 0) for n, count in enumerate(games)]

    def chosen(*games: int) -> list[int] | None:
        found = _alike(of(*games))
        return None if found is None else [segment.games for segment in found]

    assert chosen(100, 100, 100) is None
    assert chosen(100, 5000, 100, 100, 120) == [100, 100, 100, 120]
    assert chosen(64, 255, 64, 256, 64) == [64, 255, 64, 64]
    assert chosen(63, 64, 255, 256, 1000) is None
    assert chosen(2_000_000, 2_000_000, 2_000_000, 2_000_000) == [2_000_000] * 4
    assert chosen(2_000_000, 2_000_000, 2_000_000, 2_000_001) is None
