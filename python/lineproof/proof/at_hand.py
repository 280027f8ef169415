"""What an evidence store has at hand: its answers without any search, for what must be answered at once."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from .store import EvidenceStore


class AtHand(EvidenceStore):
    """A store that computes nothing. A check that asks for more than is kept ends in `Interrupted`."""

    def __init__(self, store: EvidenceStore) -> None:
        self._store = store

    def get(self, key: str) -> Any | None:
        return self._store.get(key)

    def answer(
        self,
        key: str,
        compute: Callable[[], Any | None],  # noqa: ARG002 - nothing is computed
        valid: Callable[[Any], bool] = lambda _: True,
    ) -> tuple[Any, bool]:
        """The kept answer, or None."""
        kept = self._store.get(key)
        return (kept if kept is not None and valid(kept) else None), False

    def close(self) -> None:
        """The store stays open."""
