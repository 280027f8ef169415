"""What a collection consists of: one small file, which is replaced whole.

Whatever the manifest does not name is not part of the collection: a segment counts from the moment at which the manifest
that names it is on the disk, and no earlier.
"""

from __future__ import annotations

import json
import os
from dataclasses import asdict, dataclass, replace
from pathlib import Path

from lineproof.collection.errors import BrokenCollectionError

FORMAT = 1
MANIFEST = "collection.json"
SEGMENTS = "segments"


@dataclass(frozen=True)
class Source:
    """Where games came from. Counts are of all times that it was added."""

    number: int
    name: str
    added: str
    """When first, in ISO 8601."""
    read: int = 0
    """Games that could be read: those kept, and those that were there already."""
    broken: int = 0
    empty: int = 0
    variants: int = 0
    set_up: int = 0


@dataclass(frozen=True)
class Segment:
    """A folder of games that never changes."""

    name: str
    games: int
    sources: dict[int, int]
    """Games of each source."""
    bits: int
    """Bits of the key by which its files are parted."""
    bytes: int


@dataclass(frozen=True)
class Shared:
    """Hashes of games that a source holds and that stand under another."""

    source: int
    name: str
    games: int


@dataclass(frozen=True)
class Manifest:
    """All of a collection."""

    sources: tuple[Source, ...] = ()
    segments: tuple[Segment, ...] = ()
    shared: tuple[Shared, ...] = ()
    serial: int = 0
    """Of the last segment that was written, ever."""

    @property
    def games(self) -> int:
        return sum(segment.games for segment in self.segments)

    @property
    def bytes(self) -> int:
        return sum(segment.bytes for segment in self.segments) + 8 * sum(
            shared.games for shared in self.shared
        )

    @property
    def next_number(self) -> int:
        """Of a new source."""
        return 1 + max((source.number for source in self.sources), default=0)

    def source(self, name: str) -> Source | None:
        return next((source for source in self.sources if source.name == name), None)

    def games_of(self, number: int) -> int:
        """Games that stand under a source."""
        return sum(segment.sources.get(number, 0) for segment in self.segments)

    def with_source(self, source: Source) -> Manifest:
        """With a source in place of the one of its number, or as a new one."""
        others = [old for old in self.sources if old.number != source.number]
        return replace(self, sources=tuple(sorted([*others, source], key=lambda one: one.number)))

    def names(self) -> set[str]:
        """Of the files and folders that belong to it."""
        return {segment.name for segment in self.segments} | {one.name for one in self.shared}


def read(folder: Path) -> Manifest | None:
    """The manifest of a collection's folder; None when there is none.

    :raises BrokenCollectionError: when it is damaged, or of a later version.
    """
    file = folder / MANIFEST
    try:
        value = json.loads(file.read_text(encoding="utf-8"))
        if value["format"] != FORMAT:
            raise BrokenCollectionError(
                f"{file}: it has format {value['format']}, and this version reads {FORMAT};"
                " use the version that wrote it"
            )
        return Manifest(
            sources=tuple(Source(**source) for source in value["sources"]),
            segments=tuple(_segment(segment) for segment in value["segments"]),
            shared=tuple(Shared(**shared) for shared in value["shared"]),
            serial=value["serial"],
        )
    except (FileNotFoundError, NotADirectoryError):
        return None
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        if isinstance(error, BrokenCollectionError):
            raise
        raise BrokenCollectionError(
            f"{file}: it is damaged; delete the folder {folder} and add the games again"
        ) from error


def _segment(value: dict[str, object]) -> Segment:
    sources = value["sources"]
    assert isinstance(sources, dict)
    return Segment(**{**value, "sources": {int(k): v for k, v in sources.items()}})  # type: ignore[arg-type]


def write(folder: Path, manifest: Manifest) -> None:
    """Replaces the manifest in one step; when this returns, it is on the disk.

    :raises OSError: when it cannot be written; the old one stays.
    """
    value = {
        "format": FORMAT,
        "serial": manifest.serial,
        "sources": [asdict(source) for source in manifest.sources],
        "segments": [asdict(segment) for segment in manifest.segments],
        "shared": [asdict(shared) for shared in manifest.shared],
    }
    new = folder / f"{MANIFEST}.new"
    with new.open("w", encoding="utf-8") as stream:
        json.dump(value, stream, ensure_ascii=False, indent=1)
        stream.flush()
        os.fsync(stream.fileno())
    new.replace(folder / MANIFEST)
    _sync(folder)


def _sync(folder: Path) -> None:
    """Has the names in a folder on the disk; Windows does so without being told, and opens no folder."""
    if os.name == "posix":
        handle = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)


def tidy(folder: Path, manifest: Manifest) -> None:
    """Takes away what belongs to no state of the collection any more, as of a process that was killed."""
    import shutil

    wanted = manifest.names()
    place = folder / SEGMENTS
    if not place.is_dir():
        return
    for path in place.iterdir():
        if path.name in wanted:
            continue
        if path.is_dir():
            shutil.rmtree(path, ignore_errors=True)
        else:
            path.unlink(missing_ok=True)
