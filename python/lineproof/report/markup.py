"""Markup in which nothing is left unescaped by oversight: plain text is escaped, only `Html` is not.

>>> tag("p", "a < b ", tag("b", "c"), class_="x")
'<p class="x">a &lt; b <b>c</b></p>'
"""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from .plain import harmless


class Html(str):
    """Text that is markup already."""

    __slots__ = ()


Child = str | Html | None


def text(content: str) -> Html:
    """Plain text as markup."""
    return content if isinstance(content, Html) else Html(escape(harmless(content), quote=False))


def join(children: Iterable[Child], between: str = "") -> Html:
    """Children one after the other."""
    return Html(text(between).join(text(child) for child in children if child))


def tag(name: str, *children: Child, **attributes: str | None) -> Html:
    """An element. An attribute's name is written `class_` or `aria_label`; None leaves it out."""
    written = "".join(
        f' {key.rstrip("_").replace("_", "-")}="{escape(harmless(value))}"'
        for key, value in attributes.items()
        if value is not None
    )
    return Html(f"<{name}{written}>{join(children)}</{name}>")
