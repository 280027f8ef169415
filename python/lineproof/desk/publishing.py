"""Publishing from the desk: the lesson as it stands, once all that it says has been checked."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from lineproof.lesson import Lesson
from lineproof.order import OrderError, RunningOrder, running_order
from lineproof.proof import EvidenceStore, Proof, prove
from lineproof.publish import Choices, Filming, Found, Published, chosen, publish
from lineproof.publish.compare import Side, compare, notice, unpublished
from lineproof.publish.editions import edition, editions
from lineproof.publish.publishing import check, check_choices, refuse
from lineproof.publish.registry import all_products
from lineproof.replies import Replies, Study
from lineproof.report.plain import harmless

from .folders import named
from .publishings import Tell, Work
from .ways import Way, collection_of
from .wire import (
    EditionShown,
    EditionsShown,
    LooksAsked,
    NoticeShown,
    ProductFile,
    ProductShown,
    ProductsShown,
    PublishAsked,
    PublishedShown,
)


def products_shown() -> ProductsShown:
    """What a lesson can be published as."""
    usual = {each.name for each in chosen(None)}
    return ProductsShown(
        products=[
            ProductShown(
                name=each.name,
                summary=each.summary,
                needs_study=each.needs_study,
                usual=each.name in usual,
            )
            for each in all_products()
        ]
    )


def to_publish(
    lesson: Lesson,
    way: Way,
    store: EvidenceStore,
    study: Callable[[Tell], Study],
    asked: PublishAsked,
) -> Work:
    """What publishing a lesson comes to whose findings are all in the store. study: of this very text; made where it is not there yet.

    :raises RefusedError: when claims fail.
    :raises PublishError: when it cannot be published, or not written there.
    """
    out = named(asked.path)
    products = chosen(asked.only)
    check(lesson, out)
    choices = choices_of(asked.looks)
    check_choices(lesson, products, choices)
    proof = proof_of(lesson, way, store)
    refuse(proof, asked.anyway)
    minutes, pauses = asked.looks.minutes, asked.looks.pauses
    studied = pauses or any(product.needs_study for product in products)
    long = any(product.on_request for product in products)

    def make(tell: Tell) -> PublishedShown:
        found = study(tell) if studied else None
        told = None
        if minutes is not None or pauses:
            told = order_of(lesson, store, found, minutes, pauses, way.collection)

        def frame(done: int, of: int) -> None:
            tell("frame", done, of)

        def product(done: int, of: int) -> None:
            tell("product", done, of)

        done = publish(
            Found(proof, found, told),
            out,
            products,
            replace(choices, progress=frame) if long else choices,
            anyway=asked.anyway,
            progress=product,
        )
        return _published(done)

    return Work(lesson.name, "step" if studied else "product", make)


def proof_of(lesson: Lesson, way: Way, store: EvidenceStore) -> Proof:
    """The proof of a lesson whose findings are all in the store."""
    return prove(lesson, way.effort, store=store, engine=way.outside, games=way.games)


def _published(done: Published) -> PublishedShown:
    return PublishedShown(
        folder=str(done.out),
        files=[ProductFile(product=f.product, name=f.name, size=f.size) for f in done.files],
        empty=list(done.empty),
        failing=len(done.failing),
        edition="" if done.edition is None else done.edition.words,
        notes=[f"{product}: {note}." for product, note in done.notes],
    )


def order_of(
    lesson: Lesson,
    store: EvidenceStore,
    study: Study | None,
    minutes: float | None,
    pauses: bool,
    collection: str = "",
) -> RunningOrder:
    """How a lesson is best told. minutes: what it is to fit into. pauses: asks at pause points of the study, too. collection: whose games say what is seldom met.

    :raises OrderError: when it cannot be told, or has not been studied where that is asked for.
    """
    if pauses and study is None:
        raise OrderError("pause points need a study of the lesson as it is now; study it first")
    asked = study if pauses else None
    if minutes is None:
        return running_order(lesson, study=asked)
    with collection_of(collection) as games:
        replies = Replies(lesson.settings.audience, store, collection=games)
        return running_order(lesson, minutes=minutes, replies=replies, study=asked)


def editions_shown(lesson: Lesson) -> EditionsShown:
    """What has been published of a lesson."""
    return EditionsShown(
        editions=[EditionShown(number=e.number, words=e.words) for e in editions(lesson)]
    )


def notice_shown(lesson: Lesson, number: int, until: int | None = None) -> NoticeShown:
    """What is new since an edition, up to another or to now.

    :raises EditionError: when there is none of that number.
    """
    new = (
        unpublished(lesson, "the lesson as it is now") if until is None else _edition(lesson, until)
    )
    return NoticeShown(text=harmless(notice(compare(_edition(lesson, number), new))))


def _edition(lesson: Lesson, number: int) -> Side:
    found = edition(lesson, number)
    name = f"{lesson.name}@{number}"
    return Side(name, found.lesson(name), found)


def choices_of(looks: LooksAsked) -> Choices:
    """What the author chose on the page."""
    return Choices(
        looks.width,
        language=looks.language,
        notation=looks.notation,
        paper=looks.paper,
        columns=looks.columns,
        large=looks.large,
        filming=Filming(
            voice=named(looks.voice) if looks.voice else None,
            vertical=looks.vertical,
            loop=looks.loop,
            burn_captions=looks.burn_captions,
            constant_rate=looks.constant_rate,
            codec=looks.codec,
        ),
    )
