"""The lesson as one page: a file that needs no network and asks nothing of anybody, with its board and its exercises inside."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Iterator, Sequence
from importlib.resources import files
from typing import Any, Final

from lineproof.diagram import JustPlayed, Mark, MarkedSquare, Pin, alternative
from lineproof.lesson import Lesson, Place
from lineproof.publish.exercises import Exercise, exercises
from lineproof.publish.letters import in_letters
from lineproof.publish.moments import proved_marks
from lineproof.publish.naming import slug_of
from lineproof.publish.product import Choices, Files, Found, Product
from lineproof.publish.sources import sources
from lineproof.publish.spoken_words import headed, said_words
from lineproof.publish.verdict_words import with_verdict
from lineproof.report.markup import Html, join, tag
from lineproof.report.script import Passage, Stretch, script
from lineproof.report.sheet import whom
from lineproof.report.title import title_of


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:
    asked = exercises(lesson, found)
    writer = _Writer(lesson, choices)
    readers = whom(lesson)
    edition = "" if found.edition is None else f" {found.edition.words}."
    body = join(
        [
            tag("header", tag("h1", title_of(lesson)), tag("p", f"{readers[0].upper()}{readers[1:]}.{edition}", class_="whom")),
            tag(
                "div",
                _BOARD,
                tag("main", *writer.body(script(lesson, found.proof.reading.sentences)), *writer.asked(asked)),
                class_="lesson",
            ),
            tag("footer", *writer.cited(), tag("p", "One file, which needs no network and asks nothing of anybody.")),
        ]
    )  # fmt: skip
    page = _page(title_of(lesson), body, _data(lesson, found, asked, choices))
    return {f"{slug_of(lesson)}.html": page.encode()}


_BOARD: Final = tag(
    "aside",
    tag("lesson-board", label="Position"),
    tag(
        "div",
        tag("p", id="caption"),
        tag("p", id="told", role="status"),
        tag("button", "Show the answer", id="show", type="button", hidden=""),
        tag(
            "div",
            tag("button", "Back", type="button", data_step="ArrowLeft"),
            tag("button", "On", type="button", data_step="ArrowRight"),
            tag("button", "Other move", type="button", data_step="ArrowDown"),
            tag("button", "Turn the board", type="button", id="turn"),
            class_="tools",
        ),
        class_="beside",
    ),
    aria_label="Board",
)


class _Writer:
    def __init__(self, lesson: Lesson, choices: Choices) -> None:
        self.lesson, self.language = lesson, choices.language

    def body(self, stretches: Sequence[Stretch]) -> Iterator[Html]:
        for stretch, _, titles in headed(self.lesson, stretches, self.moves):
            for depth, title in titles:
                yield tag(f"h{depth}", title)
            for passage in stretch.passages:
                yield self.passage(passage)

    def passage(self, passage: Passage) -> Html:
        said = [self.moves(words) for words in said_words(passage.readings)]
        return tag("p", join([*self.played(passage.moves), *said], " "))

    def played(self, places: Sequence[Place]) -> Iterator[Html]:
        """Each move as a button, its verdict in words behind it."""
        for number, place in enumerate(places):
            san = f"{place.number} {place.san}"
            if number and place.number.endswith("..."):
                san = place.san or ""
            move, verdict = with_verdict(san, place)
            yield tag("button", self.moves(move), class_="move", type="button", data_place=str(place.index))  # fmt: skip
            if verdict:
                yield Html(f"({verdict})")

    def asked(self, asked: Sequence[Exercise]) -> Iterator[Html]:
        if not asked:
            return
        yield tag("h2", "Find the move")
        yield tag(
            "p",
            "Choose a position; play your move on the board. The grades go from 1, easy, to 5, hard.",
            class_="only-alive",
        )
        yield tag(
            "ol",
            *(self.exercise(number, exercise) for number, exercise in enumerate(asked)),
            class_="exercises",
        )

    def exercise(self, number: int, exercise: Exercise) -> Html:
        place = exercise.pause.place
        at = "The start" if place.ply == 0 else f"After {place.label}"
        question = f"{at}: {place.board.turn.capitalize()} to move, grade {exercise.pause.grade}"
        answer = tag("p", self.answer(exercise))
        return tag(
            "li",
            tag("button", self.moves(question), class_="ask only-alive", type="button", data_exercise=str(number)),
            tag("span", self.moves(question), class_="without"),
            tag("details", tag("summary", "Answer"), answer),
        )  # fmt: skip

    def answer(self, exercise: Exercise) -> str:
        return self.moves(" ".join(filter(None, (exercise.answer, exercise.also))))

    def cited(self) -> Iterator[Html]:
        found = sources(self.lesson)
        if found:
            yield tag("h2", "Sources")
            yield tag("ul", *(tag("li", source) for source in found))

    def moves(self, words: str) -> str:
        return in_letters(words, self.language)


def _data(
    lesson: Lesson, found: Found, asked: Sequence[Exercise], choices: Choices
) -> dict[str, Any]:
    """What the page's script shows on the board (web/src/page/lesson-page.ts)."""
    marks = proved_marks(found)

    def spelled(words: str) -> str:
        return in_letters(words, choices.language)

    def shown(place: Place) -> dict[str, Any]:
        drawn = marks.get(place.key, ())
        values = {
            "fen": place.board.fen,
            "parent": place.parent.index if place.parent else None,
            "children": [child.index for child in place.children],
            "label": spelled(place.label),
            "alternative": alternative(place.board.fen, drawn),
            "marks": [_mark(mark) for mark in drawn if not isinstance(mark, JustPlayed)],
        }
        return values if place.uci is None else {**values, "uci": place.uci, "san": place.san}

    def exercise(one: Exercise) -> dict[str, Any]:
        board = one.pause.place.board
        safe = [board.parse_san(san) for san in one.pause.safe]
        after = [board.play(uci).fen for uci in safe]
        return {
            "place": one.pause.place.index,
            "moves": [{"uci": uci, "san": spelled(board.san(uci))} for uci in board.legal_moves()],
            "safe": safe,
            "after": [{"fen": fen, "alternative": alternative(fen, ())} for fen in after],
            "answer": spelled(" ".join(filter(None, (one.answer, one.also)))),
            "wrong": {uci: spelled(why) for uci, why in one.wrong.items()},
        }

    return {
        "flipped": lesson.settings.side == "black",
        "places": [shown(place) for place in lesson.places],
        "exercises": [exercise(one) for one in asked],
    }


def _mark(mark: Mark) -> dict[str, Any]:
    """A mark as `<lesson-board>` takes it."""
    assert not isinstance(mark, JustPlayed)
    if isinstance(mark, MarkedSquare):
        return {"kind": "square", "squares": [mark.square], "side": mark.side}
    kind = "pin" if isinstance(mark, Pin) else "move"
    return {"kind": kind, "squares": [mark.start, mark.end], "side": mark.side}


def _page(title: str, body: Html, data: dict[str, Any]) -> str:
    """The whole file. Only its own style and script are let run; nothing is fetched."""
    folder = files("lineproof.publish").joinpath("page")
    style = folder.joinpath("lesson-page.css").read_text(encoding="utf-8")
    # what an HTML parser would take for the end of the script is spelled otherwise; the script means the same
    code = folder.joinpath("lesson-page.js").read_text(encoding="utf-8").replace("</", "<\\/")
    values = json.dumps(data, separators=(",", ":"), ensure_ascii=False).replace("<", "\\u003c")
    policy = (
        f"default-src 'none'; style-src 'sha256-{_sum(style)}'; script-src 'sha256-{_sum(code)}';"
        " img-src data:; base-uri 'none'; form-action 'none'"
    )
    head = join(
        [
            Html('<meta charset="utf-8">'),
            Html(f'<meta http-equiv="Content-Security-Policy" content="{policy}">'),
            Html('<meta name="viewport" content="width=device-width, initial-scale=1">'),
            tag("title", title),
            Html(f"<style>{style}</style>"),
        ],
        "\n",
    )
    scripts = f'<script type="application/json" id="lesson">{values}</script>\n<script type="module">{code}</script>'
    return f'<!doctype html>\n<html lang="en">\n<head>\n{head}\n</head>\n<body>\n{body}\n{scripts}\n</body>\n</html>\n'


def _sum(code: str) -> str:
    return base64.b64encode(hashlib.sha256(code.encode()).digest()).decode()


PRODUCT = Product("page", "one HTML file with board and exercises, for any web host", make, needs_study=True)  # fmt: skip
