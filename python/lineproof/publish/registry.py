"""The registry: every module in `products` is a product. Adding one touches no other file."""

from __future__ import annotations

import importlib
import pkgutil
from collections.abc import Sequence
from functools import cache

from . import products
from .product import Product, UnknownProductError


@cache
def all_products() -> tuple[Product, ...]:
    """Every product, by name."""
    modules = sorted(m.name for m in pkgutil.iter_modules(products.__path__))
    found: list[Product] = [
        importlib.import_module(f"{products.__name__}.{module}").PRODUCT for module in modules
    ]
    return tuple(sorted(found, key=lambda product: product.name))


def chosen(names: Sequence[str] | None) -> tuple[Product, ...]:
    """The products of these names, each once; for None all of them but those that are made on request.

    :raises UnknownProductError: for a name that no product has, or no name at all.
    """
    known = {product.name: product for product in all_products()}
    if names is None:
        return tuple(product for product in known.values() if not product.on_request)
    listed = ", ".join(known)
    for name in names:
        if name not in known:
            raise UnknownProductError(
                f"there is no product {name!r}" if name else "a product has no name",
                path="--only",
                hint=f"choose from {listed}",
            )
    if not names:
        raise UnknownProductError(
            "no product is named", path="--only", hint=f"choose from {listed}"
        )
    return tuple(product for name, product in known.items() if name in names)
