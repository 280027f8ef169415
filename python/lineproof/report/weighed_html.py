"""Candidate openings one below the other as one HTML file."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from lineproof.claims.bands import spoken
from lineproof.claims.board import title
from lineproof.follow.weighing import MOVES, Weight

from .counted import counted, rare
from .item import Figure, Item, Listing, played
from .markup import text
from .plain import plain
from .sheet import Sheet
from .studied import GUESSED
from .weighed import needs, played_by
from .writing import write_whole


def weighed_html(found: Sequence[Weight], rating: int, *, uncounted: str) -> str:
    """The page as text, to be written as UTF-8. uncounted: why no games were counted, "" where some were."""
    listing = Listing(
        "candidates",
        "The candidates",
        "In the order in which they were given. The diagram shows where each begins.",
        tuple(_candidate(one, uncounted) for one in found),
        len(found),
    )
    least = min(found, key=lambda one: (not one.whole, one.positions))
    asks = f"{plain(least.candidate.name)} asks for"
    if len(found) == 1:
        answer = f"{asks} {counted(least.positions, 'position')}."
    else:
        answer = f"Of {len(found):,} candidates {asks} the fewest positions: {least.positions:,}."
    return Sheet(
        kind="Candidate openings side by side",
        whom=f"players of about {rating}",
        page="Candidate openings side by side",
        title="What each opening asks, and what it gives",
        answer=text(answer),
        rest=(
            f"To answer 80 of 100 games for {MOVES} moves.",
            *((f"{GUESSED}: {uncounted}.",) if uncounted else ()),
        ),
        sections=(listing.section(flipped=False),),
        source=", ".join(one.candidate.name for one in found),
    ).html()


def save_weighed_html(found: Sequence[Weight], rating: int, uncounted: str, file: Path) -> None:
    """Writes the page as one step.

    :raises OSError: when it cannot be written.
    """
    write_whole(file, weighed_html(found, rating, uncounted=uncounted).encode())


def _candidate(one: Weight, uncounted: str) -> Item:
    side = one.candidate.side
    rows = [
        ("Opening", str(one.opening) if one.opening else "no name"),
        ("Comes up", f"in about {rare(one.reach)} games in which {title(side)} plays for it"),
        ("To learn", needs(one)),
        ("By heart", counted(one.by_heart, "unnatural only move")),
        ("Verdict", f"{spoken(side, one.points)}; at worst {spoken(side, one.worst)}"),
    ]
    if one.score is not None or not uncounted:
        rows.append(("Games", played_by(one)))
    spot = one.candidate.spot
    figure = Figure(spot, played(spot), flipped=side == "black")
    return Item(None, f"for {title(side)}", plain(one.candidate.name), tuple(rows), (figure,))
