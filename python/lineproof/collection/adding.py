"""Changing a collection: adding files, forgetting a source, making few segments of many.

Each change writes new segments first and the manifest last; what it replaces is taken away after that. A process that is
killed leaves at most folders that the manifest does not name, and the next change takes those away.
"""

from __future__ import annotations

import os
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

from lineproof._engine import DamagedError, Stop, StoppedError, import_games, rebuild_segment
from lineproof.collection import manifest as manifests
from lineproof.collection.errors import (
    BrokenCollectionError,
    CollectionLockedError,
    NoSuchSourceError,
)
from lineproof.collection.manifest import SEGMENTS, Manifest, Segment, Shared, Source

STANDARD_INPUT = "standard input"
ALIKE = 4
"""So many segments of like size are made one: each game is then written again once for each fourfold growth."""
MERGED_MOST = 8_000_000
"""Games of a segment that is made of others: their hashes are held in memory."""

Progress = Callable[[int, int], object]
"""Called with packed bytes read and games added."""


@dataclass(frozen=True)
class BrokenGame:
    """A game that cannot be read, and why."""

    line: int
    column: int
    reason: str


@dataclass(frozen=True)
class FileAdded:
    """What became of a file."""

    name: str
    added: int
    doubles: int
    """Games that the collection had already, or that came twice."""
    broken: int
    named: tuple[BrokenGame, ...]
    """The first thousand of the broken games."""
    empty: int
    variants: int
    set_up: int
    bytes: int
    """Of plain text."""
    failure: str | None
    """Why it could not be read to its end."""


@dataclass(frozen=True)
class Added:
    """What became of files."""

    files: tuple[FileAdded, ...]
    games: int
    """In the collection now."""


@contextmanager
def writing(folder: Path) -> Iterator[Manifest]:
    """The right to change a collection, and its manifest; leftovers of a killed process are taken away.

    :raises CollectionLockedError: when another process has it.
    :raises BrokenCollectionError:
    """
    from filelock import FileLock, Timeout

    (folder / SEGMENTS).mkdir(parents=True, exist_ok=True)
    try:
        with FileLock(folder / "lock", timeout=0):
            manifest = manifests.read(folder) or Manifest()
            manifests.tidy(folder, manifest)
            try:
                yield manifest
            finally:
                manifests.tidy(folder, manifests.read(folder) or Manifest())
    except Timeout as error:
        raise CollectionLockedError(
            f"{folder.name}: another process is writing this collection; wait until it is done"
        ) from error
    except DamagedError as error:
        raise BrokenCollectionError(
            f"{error}; forget the source that its games are from, and add it again"
        ) from error


def add(
    folder: Path,
    files: Sequence[Path | None],
    names: Sequence[str],
    *,
    threads: int | None = None,
    stop: Stop | None = None,
    progress: Progress | None = None,
) -> Added:
    """Adds the games of files, None being standard input; all of them or, when it fails, none.

    names: of the sources, one for each file.
    """
    threads = threads or cores()
    with writing(folder) as manifest:
        now = datetime.now(UTC).isoformat(timespec="seconds")
        for name in names:
            if manifest.source(name) is None:
                manifest = manifest.with_source(Source(manifest.next_number, name, now))
        numbers = {source.name: source.number for source in manifest.sources}
        report, manifest = take_in(
            folder,
            manifest,
            names,
            files=[(numbers[name], file) for name, file in zip(names, files, strict=True)],
            threads=threads,
            stop=stop,
            progress=progress,
        )
        for one in report:
            source = manifest.source(one.name)
            assert source is not None
            manifest = manifest.with_source(
                replace(
                    source,
                    read=source.read + one.added + one.doubles,
                    broken=source.broken + one.broken,
                    empty=source.empty + one.empty,
                    variants=source.variants + one.variants,
                    set_up=source.set_up + one.set_up,
                )
            )
        if any(one.added or one.doubles for one in report):
            manifests.write(folder, manifest)
            # the games are in; what is not put in order now is put in order by the next change
            with suppress(StoppedError, OSError):
                manifest = settle(folder, manifest, threads=threads, stop=stop)
        return Added(report, manifest.games)


def take_in(
    folder: Path,
    manifest: Manifest,
    names: Sequence[str],
    *,
    files: Sequence[tuple[int, Path | None]] = (),
    taken: Sequence[tuple[Path, dict[int, int]]] = (),
    shared: Sequence[tuple[int, Path]] = (),
    threads: int,
    stop: Stop | None,
    progress: Progress | None,
) -> tuple[tuple[FileAdded, ...], Manifest]:
    """Writes the new games of files, and of segments of other collections, into new segments.

    names: of the files and then the segments, for the report. files, taken: with the numbers of their sources. shared:
    hashes that sources of taken segments hold of games under others.
    :returns: what became of each, and the manifest that would have the new segments; it is not written.
    """
    place = folder / SEGMENTS
    serial = manifest.serial + 1
    rows, segments, held = import_games(
        files,
        place,
        f"{serial:06}",
        taken=taken,
        seen=[_seen(place, segment) for segment in manifest.segments],
        only=[_only(segment) for segment in manifest.segments],
        shared=[*((old.source, place / old.name) for old in manifest.shared), *shared],
        threads=threads,
        stop=stop,
        tell=progress,
    )
    report = tuple(
        FileAdded(
            name=name,
            added=added,
            doubles=doubles,
            broken=broken,
            named=tuple(BrokenGame(*one) for one in named),
            empty=empty,
            variants=variants,
            set_up=set_up,
            bytes=size,
            failure=failure,
        )
        for name, (
            added,
            doubles,
            broken,
            named,
            empty,
            variants,
            set_up,
            size,
            failure,
        ) in zip(names, rows, strict=True)
    )
    return report, replace(
        manifest,
        serial=serial,
        segments=(*manifest.segments, *(_segment(row) for row in segments)),
        shared=tuple(Shared(source, path.name, count) for source, path, count in held),
    )


def forget(folder: Path, name: str, *, threads: int | None = None, stop: Stop | None = None) -> int:
    """Takes away the games that only a source holds; gives how many those were.

    :raises NoSuchSourceError:
    """
    threads = threads or cores()
    with writing(folder) as manifest:
        source = manifest.source(name)
        if source is None:
            raise NoSuchSourceError(
                f"{name}: this collection has no games from there;"
                " `lineproof collect list` names its sources"
            )
        before = manifest.games
        number = source.number
        place = folder / SEGMENTS
        others = tuple(one for one in manifest.shared if one.source != number)
        serial = manifest.serial
        kept: list[Segment] = []
        for segment in manifest.segments:
            if number not in segment.sources:
                kept.append(segment)
                continue
            if set(segment.sources) == {number} and not others:
                continue
            serial += 1
            row = rebuild_segment(
                [place / segment.name],
                place / f"{serial:06}-0",
                without=number,
                shared=[(one.source, place / one.name) for one in others],
                threads=threads,
                stop=stop,
            )
            if row[1]:
                kept.append(_segment(row))
        manifest = replace(
            manifest,
            serial=serial,
            sources=tuple(one for one in manifest.sources if one.number != number),
            segments=tuple(kept),
            shared=others,
        )
        manifests.write(folder, manifest)
        return before - manifest.games


def settle(folder: Path, manifest: Manifest, *, threads: int, stop: Stop | None = None) -> Manifest:
    """Makes one of segments of like size, until there are not too many of them; answers stay the same."""
    place = folder / SEGMENTS
    while (alike := _alike(manifest.segments)) is not None:
        serial = manifest.serial + 1
        row = rebuild_segment(
            [place / segment.name for segment in alike],
            place / f"{serial:06}-0",
            threads=threads,
            stop=stop,
        )
        at = manifest.segments.index(alike[0])
        rest = [segment for segment in manifest.segments if segment not in alike]
        rest.insert(min(at, len(rest)), _segment(row))
        manifest = replace(manifest, serial=serial, segments=tuple(rest))
        manifests.write(folder, manifest)
        manifests.tidy(folder, manifest)
    return manifest


def _alike(segments: Sequence[Segment]) -> list[Segment] | None:
    """`ALIKE` segments whose numbers of games have the same logarithm to that base, and are not too many together."""
    sizes: dict[int, list[Segment]] = {}
    for segment in segments:
        size, games = 0, segment.games
        while games >= ALIKE:
            games //= ALIKE
            size += 1
        sizes.setdefault(size, []).append(segment)
    for alike in sizes.values():
        chosen = sorted(alike, key=lambda one: one.games)[:ALIKE]
        if len(chosen) == ALIKE and sum(one.games for one in chosen) <= MERGED_MOST:
            return [one for one in segments if one in chosen]
    return None


def _seen(place: Path, segment: Segment) -> Path:
    """The file of a segment's hashes, eight bytes a game.

    :raises BrokenCollectionError: when it is missing or has another length: games would come in a second time.
    """
    file = place / segment.name / "seen.bin"
    try:
        whole = file.stat().st_size == 8 * segment.games
    except OSError:
        whole = False
    if not whole:
        raise BrokenCollectionError(
            f"{file}: it is missing or damaged; forget the source that its games are from, and add it again"
        )
    return file


def _only(segment: Segment) -> int | None:
    return next(iter(segment.sources)) if len(segment.sources) == 1 else None


def _segment(row: tuple[Path, int, dict[int, int], int, int]) -> Segment:
    path, games, sources, bits, size = row
    return Segment(path.name, games, sources, bits, size)


def cores() -> int:
    """Cores that this process may use."""
    if hasattr(os, "sched_getaffinity"):
        return len(os.sched_getaffinity(0))
    return os.cpu_count() or 1
