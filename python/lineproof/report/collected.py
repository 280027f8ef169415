"""What a collection answers, in sentences: every share with its count and its 95 % interval."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from lineproof.claims.board import other, title
from lineproof.collection.adding import Added, FileAdded
from lineproof.collection.collection import Collection
from lineproof.collection.figures import STEP, Figures, MoveFigures, Order, Score, Tally
from lineproof.collection.interval import Interval
from lineproof.collection.model_games import ModelGame
from lineproof.collection.openings import Opening
from lineproof.collection.reach import Reach, Reached

from .counted import counted, listed
from .plain import plain
from .whisker import scale, whisker

NAMED = 10
"""Broken games that are named, of each file."""
MOVES = 12
"""Moves that get a sentence of their own."""
ORDERS = 8
_NEAR = 4
"""Percent: an interval that is narrower is said with a decimal."""
SHOWN = 12
"""Moves of a model game that are shown."""


def interval(of: Interval) -> str:
    """ "51 to 57"; with a decimal where the ends are near each other: "62.5 to 63.1"."""
    places = 0 if of.high - of.low >= _NEAR else 1
    return f"{of.low:.{places}f} to {of.high:.{places}f}"


def percent(share: float, of: Interval) -> str:
    """With as many decimals as its interval."""
    return f"{share:.{0 if of.high - of.low >= _NEAR else 1}f}"


def numbered(san: Sequence[str], ply: int = 0) -> str:
    """ "1. e4 e5 2. Nc3". ply: of the first move."""
    words = []
    for index, move in enumerate(san):
        number = (ply + index) // 2 + 1
        if (ply + index) % 2 == 0:
            words.append(f"{number}. {move}")
        else:
            words.append(f"{number}... {move}" if index == 0 else move)
    return " ".join(words)


def added(report: Added, collection: str) -> str:
    lines = [line for file in report.files for line in _file(file)]
    lines.append(f"{plain(collection)} now has {counted(report.games, 'game')}.")
    return "\n".join(lines) + "\n"


def _file(file: FileAdded) -> Iterator[str]:
    name = plain(file.name)
    parts = [f"{counted(file.added, 'new game')}"]
    if file.doubles:
        parts.append(f"{counted(file.doubles, 'game')} that it had already")
    yield f"{name}: {listed(parts)}."
    apart = [
        counted(count, one, many)
        for count, one, many in (
            (file.empty, "game without moves", "games without moves"),
            (file.set_up, "game from a set-up position", "games from a set-up position"),
            (file.variants, "game by other rules", "games by other rules"),
        )
        if count
    ]
    if apart:
        yield f"  Left out: {listed(apart)}."
    if file.broken:
        yield f"  {counted(file.broken, 'game')} cannot be read and left out:"
        for broken in file.named[:NAMED]:
            yield f"    {name}:{broken.line}:{broken.column}: {plain(broken.reason)}"
        if file.broken > NAMED:
            yield f"    and {file.broken - NAMED:,} more; --json names the first thousand"
    if file.failure is not None:
        yield f"  The file could not be read to its end ({plain(file.failure)}); what came before is in."


def sources(collection: Collection) -> str:
    """What `collect list` says of a collection."""
    lines = [
        f"{plain(collection.name)}: {counted(collection.games, 'game')},"
        f" {collection.bytes / 1e6:,.1f} MB on disk, in {plain(str(collection.folder))}"
    ]
    for source in collection.sources():
        kept = collection.games_of(source)
        text = f"  {plain(source.name)}: {counted(source.read, 'game')} read"
        if kept != source.read:
            text += f", {counted(kept, 'game')} of them not known before"
        lines.append(f"{text}; first added {source.added[:10]}")
    return "\n".join(lines) + "\n"


def looked(
    figures: Figures,
    *,
    collection: str,
    said: str,
    opening: Opening | None,
    orders: Sequence[Order],
    models: Sequence[ModelGame],
    deep: bool,
) -> str:
    """What `collect look` says. said: the position in words."""
    lines = list(_looked(figures, collection, said, opening, orders, models, deep))
    return "\n".join(lines) + "\n"


def _looked(
    figures: Figures,
    collection: str,
    said: str,
    opening: Opening | None,
    orders: Sequence[Order],
    models: Sequence[ModelGame],
    deep: bool,
) -> Iterator[str]:
    yield f"{plain(said)}{f': {opening}' if opening else ''}"
    who = "" if figures.audience is None else f" between players rated {_rated(figures)}"
    if not figures.games:
        yield f"No game{who} of the collection {plain(collection)} reaches it."
        if deep:
            yield "Positions are kept for the first 20 moves of a game, so a later one is not found."
        return
    yield f"{counted(figures.games, 'game')}{who} of the collection {plain(collection)} {'reaches' if figures.games == 1 else 'reach'} it. {_score(figures.tally)}"
    if figures.moves:
        mover = "White" if figures.fen.split()[1] == "w" else "Black"
        yield ""
        yield f"{mover} plays:"
        number = int(figures.fen.split()[-1])
        dots = "." if mover == "White" else "..."
        for move in figures.moves[:MOVES]:
            yield f"  {number}{dots} {move.san} {_move(move)}"
        rest = figures.moves[MOVES:]
        if rest:
            games = sum(move.games for move in rest)
            yield f"  and {counted(len(rest), 'other move')} in {counted(games, 'game')}"
        if len(figures.moves) > 1:
            yield ""
            yield from _pictures(figures.moves[:MOVES], f"{number}{dots}")
    if figures.ended:
        yield f"{counted(figures.ended, 'game')} {'ends' if figures.ended == 1 else 'end'} here."
    if len(figures.by_rating) > 1:
        yield ""
        yield "By the average rating of both players:"
        for low, tally in figures.by_rating:
            yield f"  {low:,} to {low + STEP - 1:,}: {counted(tally.games, 'game')}{_scored(tally)}"
    if len(figures.by_year) > 1:
        yield ""
        yield "By year:"
        for year, tally in figures.by_year:
            yield f"  {year}: {counted(tally.games, 'game')}{_scored(tally)}"
    if len(orders) > 1:
        yield ""
        yield "Move orders that lead here, of all games:"
        for order in orders[:ORDERS]:
            yield f"  {numbered(order.san)}: {counted(order.games, 'game')}"
        if len(orders) > ORDERS:
            yield f"  and {counted(len(orders) - ORDERS, 'other order')}"
    if models:
        yield ""
        yield "Games to show:"
        for model in models:
            yield f"  {_model(model)}"


def _pictures(moves: Sequence[MoveFigures], number: str) -> Iterator[str]:
    """How often each move is played, drawn below one another."""
    names = [f"{number} {move.san}" for move in moves]
    room = max(map(len, names))
    yield f"The same drawn from 0 to 100, of {counted(moves[0].of, 'game')}: a dot for the share, a line for its interval:"
    yield f"  {'':{room}}  {scale()}"
    for name, move in zip(names, moves, strict=True):
        yield f"  {name:{room}}  {whisker(move.share, move.interval)}"


def _rated(figures: Figures) -> str:
    assert figures.audience is not None
    return f"{figures.audience.low} to {figures.audience.high - 1}"


def _score(tally: Tally) -> str:
    score = tally.score
    said = (
        "None of them has a known result."
        if score is None
        else f"White scores {_points(score)}"
        + ("." if score.games == tally.games else f" in the {score.games:,} whose result is known.")
    )
    if tally.rating is not None:
        said += (
            f" The average rating is {tally.rating} (of {counted(tally.rated, 'rated player')})."
        )
    return said


def _points(score: Score) -> str:
    return (
        f"{percent(score.points, score.interval)} of 100 (95 % interval {interval(score.interval)})"
    )


def _scored(tally: Tally) -> str:
    score = tally.score
    if score is None:
        return ""
    return f", White scores {percent(score.points, score.interval)} of 100 ({interval(score.interval)})"


def _move(move: MoveFigures) -> str:
    return (
        f"in {move.games:,} of {counted(move.of, 'game')},"
        f" {percent(move.share, move.interval)} of 100 ({interval(move.interval)}){_scored(move.tally)}"
    )


def _model(game: ModelGame) -> str:
    rated = (
        f" ({game.white_rating or 'unrated'} and {game.black_rating or 'unrated'})"
        if game.white_rating or game.black_rating
        else ""
    )
    where = ", ".join(part for part in (game.event, str(game.year or "")) if part not in ("", "?"))
    ply = len(game.before)
    shown = numbered(game.after[:SHOWN], ply)
    more = " ..." if len(game.after) > SHOWN else ""
    return (
        f"{plain(game.white) or '?'} and {plain(game.black) or '?'}{rated}"
        f"{f', {plain(where)}' if where else ''}: {shown}{more} {game.result},"
        f" {counted((game.plies + 1) // 2, 'move')}"
    )


def reached(reach: Reach, *, collection: str, name: str) -> str:
    """What `collect reach` says."""
    audience = f"players rated {reach.audience.low} to {reach.audience.high - 1}"
    lines = [
        f"{plain(name)}, {reach.side.capitalize()} taught, beside {counted(reach.games, 'game')} between {audience}"
        f" of the collection {plain(collection)}.",
        "Of 100 games in which the taught side plays the lesson's moves, so many come to each position:",
    ]
    lines += [f"  {_reached(one)}" for one in reach.positions]
    return "\n".join(lines) + "\n"


def comes_here(one: Reached, side: str) -> str:
    """ "Of 100 games of the audience in which White plays the lesson's moves 12.5 (8.0 to 17.1) come here, resting on 40 games or more at each of Black's moves." """
    games = f"games of the audience in which {title(side)} plays the lesson's moves"
    if one.fewest is None:
        return f"All {games} come here."
    if one.fewest == 0:
        return f"How many {games} come here is not known: none has got so far."
    return (
        f"Of 100 {games} {one.share:.1f} ({one.interval.low:.1f} to {one.interval.high:.1f}) come here,"
        f" resting on {counted(one.fewest, 'game')} or more at each of {title(other(side))}'s moves."
    )


def _reached(one: Reached) -> str:
    where = numbered(one.line) or "start"
    if one.fewest is None:
        return f"{where}: all; {counted(one.games, 'game')} at it"
    if one.fewest == 0:
        return f"{where}: not known, no game has got so far; {counted(one.games, 'game')} at it"
    return (
        f"{where}: {one.share:.1f} ({one.interval.low:.1f} to {one.interval.high:.1f}),"
        f" resting on {counted(one.fewest, 'game')} or more at each of the opponent's moves;"
        f" {counted(one.games, 'game')} at it"
    )
