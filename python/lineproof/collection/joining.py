"""Joining collections that were built apart: the games of others, and what is known of their sources, come into one."""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

from lineproof._engine import Stop, StoppedError
from lineproof.collection import manifest as manifests
from lineproof.collection.adding import Added, FileAdded, Progress, cores, settle, take_in, writing
from lineproof.collection.errors import CollectionError, NoSuchCollectionError
from lineproof.collection.manifest import MANIFEST, SEGMENTS, Manifest


def join(
    folder: Path,
    others: Sequence[Path],
    *,
    threads: int | None = None,
    stop: Stop | None = None,
    progress: Progress | None = None,
) -> Added:
    """Takes the games of other collections into one; of all of them or, when it fails, of none. The others stay as they are.

    Sources of the same name become one. What is there already is not counted again, so that joining twice is joining once.

    :raises CollectionError: when a folder is no collection, or is the one itself.
    :raises BrokenCollectionError: when a file is damaged.
    """
    threads = threads or cores()
    others = list(dict.fromkeys(others))
    there = [(other, _manifest(folder, other)) for other in others]
    with writing(folder) as before:
        manifest = before
        numbers: list[dict[int, int]] = []
        for _, theirs in there:
            manifest = _with_sources(manifest, theirs)
            ours = {source.name: source.number for source in manifest.sources}
            numbers.append({source.number: ours[source.name] for source in theirs.sources})
        pairs = list(zip(there, numbers, strict=True))
        taken = [
            (other / SEGMENTS / segment.name, ours)
            for (other, theirs), ours in pairs
            for segment in theirs.segments
        ]
        names = [str(other) for other, theirs in there for _ in theirs.segments]
        report, manifest = take_in(
            folder,
            manifest,
            names,
            taken=taken,
            shared=[
                (ours[one.source], other / SEGMENTS / one.name)
                for (other, theirs), ours in pairs
                for one in theirs.shared
            ],
            threads=threads,
            stop=stop,
            progress=progress,
        )
        manifest = _with_counts(before, manifest)
        if _told(manifest) != _told(before):
            manifests.write(folder, manifest)
            # the games are in; what is not put in order now is put in order by the next change
            with suppress(StoppedError, OSError):
                manifest = settle(folder, manifest, threads=threads, stop=stop)
        return Added(tuple(_added(str(other), report) for other in others), manifest.games)


def _manifest(folder: Path, other: Path) -> Manifest:
    if other.resolve() == folder.resolve():
        raise CollectionError(f"{other}: this is the collection itself; give another one's folder")
    manifest = manifests.read(other)
    if manifest is None:
        raise NoSuchCollectionError(
            f"{other}: this is no collection; give a folder that holds {MANIFEST}"
        )
    return manifest


def _with_sources(manifest: Manifest, theirs: Manifest) -> Manifest:
    """With the other's sources. One that is there already keeps its number, and the higher of both counts of what is left out."""
    for source in theirs.sources:
        own = manifest.source(source.name)
        if own is None:
            manifest = manifest.with_source(replace(source, number=manifest.next_number))
            continue
        left_out = {
            name: max(getattr(own, name), getattr(source, name))
            for name in ("broken", "empty", "variants", "set_up")
        }
        manifest = manifest.with_source(
            replace(own, added=min(own.added, source.added), **left_out)
        )
    return manifest


def _with_counts(before: Manifest, manifest: Manifest) -> Manifest:
    """Of a source that was there before, the games that are new count as read."""
    for source in before.sources:
        new = manifest.games_of(source.number) - before.games_of(source.number)
        own = manifest.source(source.name)
        assert own is not None
        manifest = manifest.with_source(replace(own, read=own.read + new))
    return manifest


def _told(manifest: Manifest) -> object:
    """What a manifest says, apart from names of files and numbers of changes."""
    held = sorted((one.source, one.games) for one in manifest.shared)
    return manifest.sources, manifest.segments, held


def _added(name: str, report: Sequence[FileAdded]) -> FileAdded:
    """What became of all segments of a collection."""
    own = [one for one in report if one.name == name]
    return FileAdded(
        name=name,
        added=sum(one.added for one in own),
        doubles=sum(one.doubles for one in own),
        broken=0,
        named=(),
        empty=0,
        variants=0,
        set_up=0,
        bytes=sum(one.bytes for one in own),
        failure=None,
    )
