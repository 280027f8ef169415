"""What can be wrong with a collection: every error names it and the way out."""

from __future__ import annotations


class CollectionError(ValueError):
    """Something is wrong with a collection, or with what it is asked."""


class NoSuchCollectionError(CollectionError):
    """There is no collection of that name."""


class NoSuchSourceError(CollectionError):
    """The collection has no games from there."""


class NotAPositionError(CollectionError):
    """The text is neither moves nor a FEN."""


class CollectionLockedError(CollectionError):
    """Another process is writing the collection."""


class BrokenCollectionError(CollectionError):
    """A file of the collection is damaged, or of a version that this program does not read."""
