"""What a proved lesson becomes: files to hand on, one product a module of `products`.

>>> from lineproof.publish import all_products
>>> "pgn" in [product.name for product in all_products()]
True
"""

from __future__ import annotations

from .product import Choices, Files, Filming, Found, Product, PublishError, UnknownProductError
from .publishing import Published, RefusedError, Written, publish, refuse
from .registry import all_products, chosen

__all__ = [
    "Choices",
    "Files",
    "Filming",
    "Found",
    "Product",
    "PublishError",
    "Published",
    "RefusedError",
    "UnknownProductError",
    "Written",
    "all_products",
    "chosen",
    "publish",
    "refuse",
]
