"""A running order as the published JSON (`order.schema.json`)."""

from __future__ import annotations

from typing import Any

from lineproof.lesson import Place

from .acts import Measure
from .cues import Cue
from .running import RunningOrder

FORMAT = 1


def order_json(order: RunningOrder) -> dict[str, Any]:
    telling = order.telling
    return {
        "format": FORMAT,
        "lesson": order.lesson.name,
        "title": order.lesson.settings.title,
        "words_a_minute": order.words_a_minute,
        "seconds": round(order.seconds, 1),
        "whole_seconds": round(order.whole, 1),
        "minutes": order.minutes,
        "fits": order.fits,
        "studied": order.studied,
        "measure": _measure(telling.measure),
        "file_measure": _measure(telling.file),
        "least_ways_back": telling.least.ways_back,
        "proven": telling.proven,
        "told_early": [
            {
                "line": order.lesson.locate(ref.sentence.start)[0],
                "sentence": ref.sentence.text,
                "refers_to": [telling.steps.label(number) for number in ref.to],
            }
            for ref in telling.early
        ],
        "file_told_early": len({ref.sentence.start for ref in telling.file_early}),
        "cues": [_cue(cue) for cue in order.cues],
        "cuts": [
            {
                "place": _place(telling.steps.all[cut.step].place),
                "moves": len(cut.steps),
                "seconds": round(cut.seconds, 1),
                "chance": round(cut.chance, 4),
                "footnote": cut.footnote,
            }
            for cut in order.cuts
        ],
    }


def _measure(found: Measure) -> dict[str, int]:
    return {
        "ways_back": found.ways_back,
        "moves_again": found.plies_again,
        "mistake_to_punishment": found.distance,
    }


def _place(place: Place) -> dict[str, Any]:
    line, column = place.lesson.locate(place.span[0]) if place.span else (None, None)
    return {"label": place.label, "line": line, "column": column, "fen": place.board.fen}


def _cue(cue: Cue) -> dict[str, Any]:
    return {
        "cue": cue.kind,
        "begins": round(cue.begins, 1),
        "seconds": round(cue.seconds, 1),
        "place": _place(cue.place),
        "words": cue.words,
        "offset": cue.start,
        "move": cue.san,
        "uci": cue.uci,
        "shown_before": cue.again,
        "glyphs": cue.note,
        "squares": list(cue.squares),
        "main_line": cue.main,
        "silence": cue.silence,
    }
