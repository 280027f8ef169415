"""What a study found, as the lists of its sheet."""

from __future__ import annotations

from collections.abc import Iterator

from lineproof.claims.bands import spoken
from lineproof.claims.board import title, upper
from lineproof.claims.claim import Spot
from lineproof.claims.cost import spelled
from lineproof.claims.showing import numbered
from lineproof.replies import Study
from lineproof.replies.likely import Reply
from lineproof.replies.pauses import ByHeart, Pause
from lineproof.replies.slips import Costly, Slip
from lineproof.replies.stops import Stop
from lineproof.replies.unanswered import Unanswered

from .counted import rare
from .item import Figure, Item, Listing, captioned, played, shown
from .study_ends import ends

LINE = 6
"""Plies of a line that are shown."""
_ASIDE = 0
"""Items with a diagram in a list that has none."""


def listings(found: Study) -> tuple[Listing, ...]:
    """Every list that has something in it, in the order of the sheet."""
    return tuple(listing for listing in (*_lists(found), *ends(found)) if listing.items)


def _lists(found: Study) -> Iterator[Listing]:
    side = title(found.side)
    yield Listing(
        "dangerous",
        "Dangerous replies left open",
        f"The natural answer to each costs {side} 15 points or more. The heaviest stand first: how often it is met, times what it costs.",
        tuple(_open(one) for one in found.dangerous),
    )
    yield Listing(
        "met",
        "Other likely replies left open",
        "Harmless, but 5 of 100 players or more choose them, and somebody will ask.",
        tuple(_open(one) for one in found.met if not one.dangerous),
        _ASIDE,
    )
    slips = [slip for slip in found.slips if slip.within_reach]
    yield Listing(
        "slips",
        "Slips: tempting moves that cost much",
        "Of either side, those met most often first. Each costs 15 points or more, and this audience can see why.",
        tuple(_slip(one) for one in slips),
    )
    yield Listing(
        "footnotes",
        "Slips for a footnote",
        "Their refutation lies too deep for this audience.",
        tuple(_slip(one) for one in found.slips if not one.within_reach),
        _ASIDE,
    )
    yield Listing(
        "costly",
        "Moves of the lesson that cost something",
        "The lesson recommends them, and something better is there.",
        tuple(_costly(one) for one in found.costly),
    )
    yield Listing(
        "pauses",
        "Pause points",
        "Where the audience can be asked to find the move, those met most often first. The grade runs from 1, easy, to 5.",
        tuple(_pause(one) for one in found.pauses),
    )
    yield Listing(
        "heart",
        "To be known by heart",
        "Only moves that few would find unaided.",
        tuple(_heart(one) for one in found.by_heart),
    )
    yield Listing(
        "stops",
        "Lines that stop early",
        "They end in the middle of a fight, and the words do not tell of it.",
        tuple(_stop(one) for one in found.stops),
    )


def chance(reply: Reply) -> str:
    """ "about 13 in 100 players choose it; 5 of 40 counted games"."""
    counts = f"; {reply.games:,} of {reply.of:,} counted games" if reply.of else ""
    return f"about {reply.share:.0f} in 100 players choose it{counts}"


def _open(one: Unanswered) -> Item:
    spot = Spot.of(one.place)
    after = spot.play(one.reply.uci)
    move = numbered(spot, (one.reply.uci,))
    rows = [("Chance", f"{chance(one.reply)}; met in {rare(one.chance)} games")]
    marks = played(after)
    if one.natural is None:
        rows.append(("Then", "the game is over"))
    else:
        answer = one.natural
        if one.dangerous:
            rows.append(
                ("Natural", f"{numbered(after, answer.line[:1])} costs {spelled(answer.points)}")
            )
        line = numbered(after, answer.best_line[:LINE])
        rows.append(("Teach", f"{line}: {spoken(answer.side, answer.best)}"))
        marks += shown(after, answer.best_line[:1])
    kind = "dangerous" if one.dangerous else "open"
    return Item(one.place, kind, move, tuple(rows), (Figure(after, marks),), f"{move} is left open")


def _slip(one: Slip) -> Item:
    spot = Spot.of(one.place)
    after = spot.play(one.reply.uci)
    move = numbered(spot, (one.reply.uci,))
    line = one.cost.line[1 : LINE + 1]
    refuted = numbered(after, line) if line else "the game is over"
    told = "the lesson shows it" if one.shown else "the lesson does not show it"
    rows = (
        ("Chance", chance(one.reply)),
        ("Costs", f"{spelled(one.cost.points)}; {told}"),
        ("Refuted", refuted),
        ("Better", numbered(spot, one.cost.best_line[:LINE])),
    )
    figure = Figure(after, played(after) + shown(after, line[:1]))
    return Item(one.place, "slip", move, rows, (figure,), f"{move} is a slip")


def _costly(one: Costly) -> Item:
    spot = Spot.of(one.place).earlier(1)
    better = numbered(spot, one.cost.best_line[:LINE])
    rows = (
        ("Costs", f"{spelled(one.cost.points)}: {spoken(one.cost.side, one.cost.played)}"),
        ("Better", f"{better}: {spoken(one.cost.side, one.cost.best)}"),
    )
    figure = Figure(spot, shown(spot, one.cost.best_line[:1]))
    return Item(
        one.place, "costs something", one.place.label, rows, (figure,), "it costs something"
    )


def _pause(one: Pause) -> Item:
    spot = Spot.of(one.place)
    answer = numbered(spot, one.line[:1])
    wrong = "; ".join(
        f"{reply.san} costs {spelled(cost.points)} (about {reply.share:.0f} in 100)"
        for reply, cost in one.wrong
    )
    other = [san for san in one.safe if san != one.best]
    rows = [
        ("Answer", f"{answer}{f', or {other[0]}' if other else ''}"),
        ("Point", upper(one.point)),
    ]
    rows.append(("Wrong", wrong))
    if len(one.line) > 1:
        rows.append(("Line", numbered(spot, one.line)))
    words = f"Find {title(spot.board.turn)}'s move."
    figure = Figure(spot, played(spot))
    label = f"pause point, {one.grade} of 5"
    return Item(one.place, label, words, tuple(rows), (figure,), f"{label}: find {answer}")


def _heart(one: ByHeart) -> Item:
    spot = Spot.of(one.place).earlier(1)
    rows = (("Chance", f"about {one.share:.0f} in 100 would find it unaided"),)
    figure = Figure(spot, shown(spot, (one.place.uci or "",)))
    return Item(one.place, "by heart", one.place.label, rows, (figure,), "to be known by heart")


def _stop(one: Stop) -> Item:
    line = numbered(one.spot, one.line)
    words = f"{title(one.side)} {'can still play' if one.to_move else 'threatens'} {numbered(one.spot, one.line[:1])}"
    rows = [("Line", line)]
    if one.what:
        rows.append(("Comes to", one.what))
    spot = Spot.of(one.place)
    caption = "" if one.to_move else captioned(spot, "A threat.")
    figure = Figure(one.spot, played(spot) + shown(one.spot, one.line[:1]), caption)
    return Item(one.place, "early stop", words, tuple(rows), (figure,), "the line stops early here")
