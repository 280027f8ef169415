"""Publishing from the desk: the lesson as it stands, once all that it says has been checked."""

from __future__ import annotations

from lineproof.lesson import Lesson
from lineproof.proof import EvidenceStore, prove
from lineproof.publish import Choices, Filming, Found, PublishError, chosen, publish
from lineproof.publish.publishing import check, check_choices, refuse
from lineproof.publish.registry import all_products
from lineproof.replies import Study

from .folders import named
from .prover import Way
from .wire import LooksAsked, ProductFile, ProductShown, ProductsShown, PublishAsked, PublishedShown


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


def published(
    lesson: Lesson,
    way: Way,
    store: EvidenceStore,
    study: Study | None,
    asked: PublishAsked,
) -> PublishedShown:
    """Publishes a lesson whose findings are all in the store. study: of this very text, where there is one.

    :raises RefusedError: when claims fail.
    :raises PublishError: when it cannot be published, or not written there.
    """
    out = named(asked.path)
    products = chosen(asked.only)
    check(lesson, out)
    choices = choices_of(asked.looks)
    check_choices(lesson, products, choices)
    lacking = [product.name for product in products if product.needs_study]
    if lacking and study is None:
        raise PublishError(
            f"{' and '.join(lacking)} needs a study of the lesson as it is now",
            path=lesson.name,
            hint="study it first, or leave that out",
        )
    proof = prove(lesson, way.effort, store=store, engine=way.outside)
    refuse(proof, asked.anyway)
    done = publish(Found(proof, study), out, products, choices, anyway=asked.anyway)
    return PublishedShown(
        folder=str(done.out),
        files=[ProductFile(product=f.product, name=f.name, size=f.size) for f in done.files],
        empty=list(done.empty),
        failing=len(done.failing),
        edition="" if done.edition is None else done.edition.words,
        notes=[f"{product}: {note}." for product, note in done.notes],
    )


def choices_of(looks: LooksAsked) -> Choices:
    """What the author chose on the page."""
    return Choices(
        language=looks.language,
        notation=looks.notation,
        paper=looks.paper,
        columns=looks.columns,
        large=looks.large,
        filming=Filming(vertical=looks.vertical, burn_captions=looks.burn_captions),
    )
