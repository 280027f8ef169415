"""The lesson as an article: Markdown with its diagrams beside it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from lineproof.claims.claim import Spot
from lineproof.claims.showing import numbered
from lineproof.lesson import Lesson, Place
from lineproof.publish.exercises import also_safe
from lineproof.publish.letters import in_letters
from lineproof.publish.markdown import bold, heading, picture, words
from lineproof.publish.moments import Moment, moments
from lineproof.publish.naming import slug_of
from lineproof.publish.product import Choices, Files, Found, Product, PublishError
from lineproof.publish.products.diagrams import drawn
from lineproof.publish.sources import sources
from lineproof.publish.spoken_words import headed, said_words
from lineproof.publish.verdict_words import with_verdict
from lineproof.report.script import Passage, Stretch, script
from lineproof.report.title import title_of


def make(lesson: Lesson, found: Found, choices: Choices) -> Files:
    readings = found.proof.reading.sentences
    if not readings:
        raise PublishError(
            "the lesson has no words, and an article is made of them",
            path=lesson.name,
            hint="write comments, or leave the article out with --only",
        )
    writer = _Writer(lesson, found, choices)
    paragraphs = [*writer.head(), *writer.body(script(lesson, readings)), *writer.end()]
    article = "\n\n".join(paragraphs) + "\n"
    return {f"{slug_of(lesson)}.md": article.encode(), **writer.pictures}


ASKED: Final = 12
"""Pauses of an article at most: its reader wants to read on. The diagrams and the EPD have them all."""


def _shown(lesson: Lesson, found: Found) -> list[Moment]:
    """The moments of an article: of the pauses those of the taught side that are met most often."""
    own = [p for p in found.studied.pauses if p.place.board.turn == lesson.settings.side]
    asked = {pause.place.index for pause in own[:ASKED]}
    return [m for m in moments(lesson, found) if m.pause is None or m.place.index in asked]


class _Writer:
    def __init__(self, lesson: Lesson, found: Found, choices: Choices) -> None:
        self.lesson = lesson
        self.choices = choices
        self.edition = found.edition
        self.flipped = lesson.settings.side == "black"
        self.pictures: dict[str, bytes] = {}
        self.asked: list[Moment] = []
        # one diagram a position: where the reader is asked, the marks would give the answer away
        self.shown = {moment.place.index: moment for moment in reversed(_shown(lesson, found))}

    def head(self) -> Iterator[str]:
        settings = self.lesson.settings
        yield heading(1, title_of(self.lesson))
        taught = f" who have {settings.side.capitalize()}" if settings.side else ""
        edition = "" if self.edition is None else f" {self.edition.words}."
        yield f"*For players of about {settings.audience}{taught}.{edition}*"

    def body(self, stretches: Sequence[Stretch]) -> Iterator[str]:
        for stretch, begins, titles in headed(self.lesson, stretches, self.moves):
            for depth, title in titles:
                yield heading(depth, title)
            if stretch.begins.ply == 0 or (begins and stretch.after is not None):
                yield from self.moment(stretch.begins.game.root)
            silent: tuple[Place, ...] = ()
            for passage in stretch.passages:
                said = self.said(passage)
                silent += passage.moves
                if said:
                    yield from self.passage(silent, said)
                    silent = ()
            if silent:
                yield from self.passage(silent, [])

    def said(self, passage: Passage) -> list[str]:
        return [words(self.moves(text)) for text in said_words(passage.readings)]

    def passage(self, moves: Sequence[Place], said: list[str]) -> Iterator[str]:
        """Moves and words; a position to show ends the paragraph."""
        run: list[Place] = []
        for place in moves:
            run.append(place)
            if place.index in self.shown and place != moves[-1]:
                yield self.played(run)
                yield from self.moment(place)
                run = []
        yield " ".join(([self.played(run)] if run else []) + said)
        if run:
            yield from self.moment(run[-1])

    def played(self, places: Sequence[Place]) -> str:
        """Moves in bold, each verdict in words behind its move."""
        parts: list[str] = []
        run: list[str] = []
        for place in places:
            number = place.number if not run or not place.number.endswith("...") else ""
            move, verdict = with_verdict(f"{number} {place.san}".strip(), place)
            run.append(self.moves(move))
            if verdict:
                parts += [bold(" ".join(run)), f"({verdict})"]
                run = []
        return " ".join([*parts, *([bold(" ".join(run))] if run else [])])

    def moment(self, place: Place) -> Iterator[str]:
        moment = self.shown.get(place.index)
        if moment is None:
            return
        file = f"{moment.name}.svg"
        self.pictures[file] = drawn(moment, self.choices.width, flipped=self.flipped).encode()
        yield picture(f"{moment.title} {moment.text}", file)
        mover = place.board.turn.capitalize()
        if moment.pause is None:
            at = "The start" if place.ply == 0 else f"After {self.moves(place.label)}"
            yield f"*{at}. {mover} to move.*"
        else:
            self.asked.append(moment)
            yield f"*Pause {len(self.asked)}: find {mover}’s move.*"

    def end(self) -> Iterator[str]:
        if self.asked:
            yield heading(2, "Answers")
            yield "\n".join(
                f"{number}. {self.answer(moment)}" for number, moment in enumerate(self.asked, 1)
            )
        cited = sources(self.lesson)
        if cited:
            yield heading(2, "Sources")
            yield "\n".join(f"* {words(source)}" for source in cited)

    def answer(self, moment: Moment) -> str:
        pause = moment.pause
        assert pause is not None
        line = numbered(Spot.of(pause.place), pause.line)
        also = self.moves(f" {also_safe(self.lesson, pause)}".rstrip())
        at = "At the start" if pause.place.ply == 0 else f"After {self.moves(pause.place.label)}"
        return f"{at}: {bold(self.moves(line))}: {words(self.moves(pause.point))}.{also}"

    def moves(self, text: str) -> str:
        return in_letters(text, self.choices.language)


PRODUCT = Product("article", "Markdown with the diagrams beside it", make, needs_study=True)
