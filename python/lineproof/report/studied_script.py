"""The section of a lesson's lines on a sheet: what is said in its order, each move a place that can be linked to, and in the margin what was found there."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from lineproof.claims import read_lesson
from lineproof.lesson import Lesson, Place

from .item import Notes, place_id
from .markup import Child, Html, join, tag
from .plain import plain
from .printed import signs_of
from .proved_script import DEPTHS, game_title
from .script import Passage, Stretch, script
from .section import Section, flat, lead


def studied_script(lesson: Lesson, notes: Notes) -> Section | None:
    """The whole lesson; None for one without moves and words."""
    stretches = script(lesson, read_lesson(lesson).sentences)
    if not stretches:
        return None
    said = "Every line in its order. In the margin stands what was found at a move."
    written = _Written(lesson, notes)
    return Section(
        "script", "The lines, with what was found", (lead(said), *written.parts(stretches))
    )


class _Written:
    def __init__(self, lesson: Lesson, notes: Notes) -> None:
        self._several = len(lesson.games) > 1
        self._notes = notes

    def parts(self, stretches: Sequence[Stretch]) -> Iterator[Html]:
        game = -1
        for stretch in stretches:
            if stretch.game.index != game:
                game = stretch.game.index
                if self._several:
                    yield tag("h3", game_title(stretch), class_="game-title")
                first = self._margin((stretch.game.root,))
                if first is not None:
                    yield tag("div", tag("p", class_="said"), first, class_="passage")
            yield tag(
                "div",
                tag("h4" if self._several else "h3", stretch.heading, class_="stretch-title"),
                *(self._passage(passage) for passage in stretch.passages),
                class_=" ".join(("stretch", *DEPTHS[: stretch.begins.depth])),
            )

    def _passage(self, passage: Passage) -> Html:
        parts: list[Child] = [
            _played(place, number == 0) for number, place in enumerate(passage.moves)
        ]
        parts += [flat(plain(reading.sentence.text)) for reading in passage.readings]
        return tag(
            "div",
            tag("p", join(parts, " "), class_="said"),
            self._margin(passage.moves),
            class_="passage",
        )

    def _margin(self, places: Sequence[Place]) -> Html | None:
        rows = []
        for place in places:
            found = self._notes.get(place.index, ())
            links = [tag("a", words, href=f"#{name}") for words, name in found]
            if links:
                label = tag("span", _label(place), class_="moves")
                rows.append(tag("li", label, ": ", join(links, "; ")))
        return tag("ol", *rows, class_="notes links") if rows else None


def _label(place: Place) -> str:
    return "The start" if place.uci is None else place.label


def _played(place: Place, first: bool) -> Html:
    number = place.number if first or not place.number.endswith("...") else ""
    signs = "".join(
        sign if set(sign) <= set("!?") else f" {sign}" for _, _, sign in signs_of(place)
    )
    return tag("span", f"{number} {place.san}{signs}".strip(), class_="played", id=place_id(place))
