"""An HTML page as a tree, read by the standard library."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from itertools import pairwise

EMPTY = frozenset({"meta", "br", "hr", "img", "link", "input"})


@dataclass
class Node:
    """An element. parts: text and elements in order."""

    name: str
    attributes: dict[str, str]
    parts: list[Node | str] = field(default_factory=list)

    def __iter__(self) -> Iterator[Node]:
        """Every element inside, in document order, itself first."""
        yield self
        for part in self.parts:
            if isinstance(part, Node):
                yield from part

    def all(self, name: str, class_: str | None = None) -> list[Node]:
        return [n for n in self if n.name == name and (class_ is None or class_ in n.classes)]

    def one(self, name: str, class_: str | None = None) -> Node:
        (found,) = self.all(name, class_)
        return found

    @property
    def classes(self) -> list[str]:
        return self.attributes.get("class", "").split()

    @property
    def text(self) -> str:
        return "".join(p if isinstance(p, str) else p.text for p in self.parts)

    def text_without(self, *names: str) -> str:
        """The text outside elements of these names or classes."""
        return "".join(
            p
            if isinstance(p, str)
            else ""
            if p.name in names or set(p.classes) & set(names)
            else p.text_without(*names)
            for p in self.parts
        )


class _Reader(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.root = Node("", {})
        self.open = [self.root]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        node = Node(tag, {key: value or "" for key, value in attrs})
        self.open[-1].parts.append(node)
        if tag not in EMPTY:
            self.open.append(node)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].parts.append(Node(tag, {key: value or "" for key, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        assert self.open[-1].name == tag, f"</{tag}> closes <{self.open[-1].name}>"
        self.open.pop()

    def handle_data(self, data: str) -> None:
        self.open[-1].parts.append(data)


def parsed(page: str) -> Node:
    """The tree; asserts that every element is closed in its order."""
    reader = _Reader()
    reader.feed(page)
    reader.close()
    assert len(reader.open) == 1, f"<{reader.open[-1].name}> is not closed"
    return reader.root


def assert_one_file(text: str) -> None:
    """Nothing in a page is fetched or run, and every link leads to a place in it."""
    page = parsed(text)
    names = {n.name for n in page}
    assert not names & {
        "script", "link", "iframe", "object", "embed", "img", "form", "base", "audio",
        "video", "source", "image", "foreignobject", "animate", "set",
    }  # fmt: skip
    policy = next(
        n for n in page.all("meta") if n.attributes.get("http-equiv") == "Content-Security-Policy"
    )
    assert policy.attributes["content"] == (
        "default-src 'none'; style-src 'unsafe-inline'; img-src data:"
    )
    ids = [n.attributes["id"] for n in page if "id" in n.attributes]
    assert len(ids) == len(set(ids))
    for node in page:
        for key, value in node.attributes.items():
            assert not key.startswith("on"), (node.name, key)
            if key in {"href", "xlink:href", "src"}:
                assert value.startswith("#") and value[1:] in ids, value
            if key in {"aria-labelledby", "aria-describedby"}:
                assert set(value.split()) <= set(ids), value
    style = page.one("style").text
    assert "@import" not in style and "url(" not in style


def assert_in_order(text: str) -> None:
    """Headings go down by one level at a time, the landmarks are there, and each link of the contents has words."""
    page = parsed(text)
    assert page.one("html").attributes["lang"] == "en-GB"
    levels = [int(n.name[1]) for n in page if re.fullmatch(r"h[1-6]", n.name)]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(deeper <= level + 1 for level, deeper in pairwise(levels)), levels
    for landmark in ("header", "nav", "main", "footer"):
        page.one(landmark)
    for link in page.one("nav").all("a"):
        assert link.text
