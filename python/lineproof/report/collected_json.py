"""What a collection answers, as the published JSON."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from lineproof.collection.adding import Added
from lineproof.collection.collection import Collection
from lineproof.collection.figures import STEP, Figures, Order, Score, Tally
from lineproof.collection.interval import Interval
from lineproof.collection.model_games import ModelGame
from lineproof.collection.openings import Opening
from lineproof.collection.reach import Reach

FORMAT = 1


def _interval(of: Interval) -> dict[str, float]:
    return {"low": of.low, "high": of.high}


def _score(score: Score | None) -> dict[str, Any] | None:
    if score is None:
        return None
    return {
        "games": score.games,
        "white": score.white,
        "draws": score.draws,
        "black": score.black,
        "points": round(score.points, 3),
        "interval": _interval(score.interval),
    }


def _tally(tally: Tally) -> dict[str, Any]:
    return {
        "games": tally.games,
        "score": _score(tally.score),
        "rating": tally.rating,
        "rated_players": tally.rated,
    }


def added_json(report: Added, collection: str) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "collection": collection,
        "games": report.games,
        "files": [
            {
                "name": file.name,
                "added": file.added,
                "doubles": file.doubles,
                "empty": file.empty,
                "set_up": file.set_up,
                "variants": file.variants,
                "broken": file.broken,
                "broken_named": [
                    {"line": one.line, "column": one.column, "reason": one.reason}
                    for one in file.named
                ],
                "bytes": file.bytes,
                "failure": file.failure,
            }
            for file in report.files
        ],
    }


def list_json(collections: Sequence[Collection]) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "collections": [
            {
                "name": one.name,
                "folder": str(one.folder),
                "games": one.games,
                "bytes": one.bytes,
                "sources": [
                    {
                        "name": source.name,
                        "added": source.added,
                        "read": source.read,
                        "games": one.games_of(source),
                        "broken": source.broken,
                        "empty": source.empty,
                        "set_up": source.set_up,
                        "variants": source.variants,
                    }
                    for source in one.sources()
                ],
            }
            for one in collections
        ],
    }


def forget_json(collection: str, source: str, gone: int, games: int) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "collection": collection,
        "source": source,
        "forgotten": gone,
        "games": games,
    }


def look_json(
    figures: Figures,
    *,
    collection: str,
    opening: Opening | None,
    orders: Sequence[Order],
    models: Sequence[ModelGame],
) -> dict[str, Any]:
    audience = figures.audience
    return {
        "format": FORMAT,
        "collection": collection,
        "fen": figures.fen,
        "audience": None if audience is None else {"low": audience.low, "below": audience.high},
        "opening": None
        if opening is None
        else {"name": opening.name, "first": opening.first, "last": opening.last},
        **_tally(figures.tally),
        "ended": figures.ended,
        "moves": [
            {
                "uci": move.uci,
                "san": move.san,
                "share": {
                    "percent": round(move.share, 3),
                    "of": move.of,
                    "interval": _interval(move.interval),
                },
                **_tally(move.tally),
            }
            for move in figures.moves
        ],
        "by_rating": [
            {"low": low, "below": low + STEP, **_tally(tally)} for low, tally in figures.by_rating
        ],
        "by_year": [{"year": year, **_tally(tally)} for year, tally in figures.by_year],
        "orders": [{"san": list(order.san), "games": order.games} for order in orders],
        "models": [
            {
                "event": game.event,
                "site": game.site,
                "date": game.date,
                "round": game.round,
                "white": game.white,
                "black": game.black,
                "result": game.result,
                "white_rating": game.white_rating,
                "black_rating": game.black_rating,
                "year": game.year,
                "source": game.source,
                "before": list(game.before),
                "after": list(game.after),
            }
            for game in models
        ],
    }


def reach_json(reach: Reach, collection: str, lesson: str) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "collection": collection,
        "lesson": lesson,
        "side": reach.side,
        "audience": {"low": reach.audience.low, "below": reach.audience.high},
        "games": reach.games,
        "positions": [
            {
                "fen": one.fen,
                "line": list(one.line),
                "percent": round(one.share, 3),
                "interval": _interval(one.interval),
                "fewest": one.fewest,
                "games": one.games,
            }
            for one in reach.positions
        ],
    }
