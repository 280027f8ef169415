"""A study, and the answer to a question, as the published JSON."""

from __future__ import annotations

from typing import Any

from lineproof.claims.claim import Spot
from lineproof.claims.cost import Cost
from lineproof.lesson import Place
from lineproof.replies import Study
from lineproof.replies.answering import Answer
from lineproof.replies.detours import Detour
from lineproof.replies.ideas import Occurrence
from lineproof.replies.likely import Reply
from lineproof.replies.model_games import ModelGames

from .detoured import detoured

FORMAT = 1


def _place(place: Place) -> dict[str, Any]:
    line, column = place.lesson.locate(place.span[0]) if place.span else (None, None)
    return {"label": place.label, "line": line, "column": column, "fen": place.board.fen}


def _reply(reply: Reply) -> dict[str, Any]:
    return {
        "move": reply.san,
        "share": round(reply.share, 3),
        "interval": {"low": reply.interval.low, "high": reply.interval.high},
        "natural": round(reply.natural, 3),
        "games": reply.games,
        "of": reply.of,
    }


def _cost(cost: Cost | None, spot: Spot) -> dict[str, Any] | None:
    if cost is None:
        return None
    return {
        "side": cost.side,
        "move": cost.san,
        "best": cost.better,
        "cost": cost.points,
        "points": cost.played,
        "best_points": cost.best,
        "line": spot.board.san_line(list(cost.line)),
        "best_line": spot.board.san_line(list(cost.best_line)),
    }


def study_json(found: Study) -> dict[str, Any]:
    return {
        "format": FORMAT,
        "lesson": found.lesson.name,
        "side": found.side,
        "audience": found.rating,
        "effort": str(found.effort),
        "games_counted": found.games,
        "beginnings": [
            {
                "place": _place(one.place),
                "answered": [
                    {"to_move": move, "share": round(percent, 3)} for move, percent in one.answered
                ],
                "other_roads": [
                    {
                        "moves": list(road.san),
                        "opening": str(road.opening) if road.opening else None,
                    }
                    for road in one.roads
                ],
            }
            for one in found.beginnings
        ],
        "open": [
            {
                "place": _place(one.place),
                "reply": _reply(one.reply),
                "chance": round(one.chance, 4),
                "met": one.met,
                "dangerous": one.dangerous,
                "natural_answer": _cost(one.natural, Spot.of(one.place).play(one.reply.uci)),
            }
            for one in found.open
        ],
        "slips": [
            {
                "place": _place(one.place),
                "reply": _reply(one.reply),
                "cost": _cost(one.cost, Spot.of(one.place)),
                "seen_at_depth": one.seen,
                "forcing": one.forcing,
                "within_reach": one.within_reach,
                "shown": one.shown,
            }
            for one in found.slips
        ],
        "costly": [
            {
                "place": _place(one.place),
                "cost": _cost(one.cost, Spot.of(one.place.parent)) if one.place.parent else None,
            }
            for one in found.costly
        ],
        "pause_points": [
            {
                "place": _place(one.place),
                "find": one.best,
                "share": round(one.share, 3),
                "grade": one.grade,
                "depth": one.deep,
                "point": one.point,
                "line": Spot.of(one.place).board.san_line(list(one.line)),
                "safe_moves": list(one.safe),
                "wrong": [
                    {"reply": _reply(reply), "cost": _cost(cost, Spot.of(one.place))}
                    for reply, cost in one.wrong
                ],
            }
            for one in found.pauses
        ],
        "by_heart": [
            {"place": _place(one.place), "share": round(one.share, 3)} for one in found.by_heart
        ],
        "early_stops": [
            {
                "place": _place(one.place),
                "side": one.side,
                "to_move": one.to_move,
                "gain": one.gain,
                "line": one.spot.board.san_line(list(one.line)),
                "comes_to": one.what,
            }
            for one in found.stops
        ],
        "plans": [
            {
                "place": _place(of.place),
                "plans": [
                    {"sort": plan.sort, "what": plan.what, "cost": _cost(plan.cost, plan.spot)}
                    for plan in of.plans
                ],
            }
            for of in found.plans
        ],
        "recurring_ideas": [
            {
                "side": idea.side,
                "move": idea.move,
                "works": [_occurrence(one) for one in idea.works],
                "fails": [_occurrence(one) for one in idea.fails],
                "differs": idea.differs,
                "taught": idea.taught,
            }
            for idea in found.ideas
        ],
        "returns": [
            {
                "place": _place(one.place),
                "reply": _reply(one.reply),
                "line": list(one.line),
                "into": _place(one.into),
            }
            for one in found.returns
        ],
        "orders": [_detour(one) for one in found.detours],
        "model_games": [_model_games(one) for one in found.model_games],
    }


def _detour(one: Detour) -> dict[str, Any]:
    return {
        "place": _place(one.place),
        "reply": _reply(one.reply),
        "line": one.place.board.san_line(list(one.line)),
        "into": _place(one.into),
        "instead": one.instead,
        "answers": list(one.answers),
        "best": one.best,
        "points": one.points,
        "taught_points": one.taught,
        "points_of_the_way_back": one.back,
        "opponent_gains": one.gain,
        "sentence": detoured(one),
    }


def _model_games(of: ModelGames) -> dict[str, Any]:
    result = of.result
    return {
        "place": _place(of.place),
        "side": of.side,
        "games": of.games,
        "result": None
        if result is None
        else {
            "won": result.won,
            "drawn": result.drawn,
            "lost": result.lost,
            "points": round(result.points, 3),
            "interval": {"low": result.interval.low, "high": result.interval.high},
        },
        "line": [{"move": step.san, "games": step.games, "of": step.of} for step in of.line],
        "looked_at": of.looked_at,
        "lasted": of.lasted,
        "stood": [
            {"piece": one.piece, "square": one.square, "games": one.games} for one in of.stood
        ],
    }


def _occurrence(one: Occurrence) -> dict[str, Any]:
    return {
        "place": _place(one.place),
        "cost": _cost(one.cost, Spot.of(one.place)),
        "played": one.played,
    }


def answer_json(found: Answer) -> dict[str, Any]:
    left = found.left
    return {
        "format": FORMAT,
        "asked": found.said,
        "fen": found.fen,
        "places": [_place(place) for place in found.places],
        "left": None
        if left is None
        else {
            "place": _place(left.place),
            "reply": _reply(left.reply),
            "by_taught_side": left.by_taught,
        },
        "over": found.over or None,
        "white_points": found.points,
        "best": found.best or None,
        "line": found.board.san_line(list(found.line)),
        "comes_to": found.comes_to,
        "lesson_plays": list(found.lesson_plays),
        "sentence": found.sentence,
    }
