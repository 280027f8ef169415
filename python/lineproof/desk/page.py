"""The page as `make desk` built it: files in the folder `page` beside this module, found by their names alone."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from typing import TYPE_CHECKING

from starlette.responses import PlainTextResponse, Response

from .guard import API

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Receive, Scope, Send

INDEX = "index.html"
TYPES = {
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".svg": "image/svg+xml",
    ".woff2": "font/woff2",
    ".png": "image/png",
    ".ico": "image/x-icon",
}


@dataclass(frozen=True)
class Page:
    """Wraps the application: what is not asked of the API is a file of the page."""

    app: ASGIApp

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        path = scope["path"]
        if f"{path}/".startswith(API):
            await self.app(scope, receive, send)
        elif scope["method"] in {"GET", "HEAD"}:
            await page_file(path.removeprefix("/"))(scope, receive, send)
        else:
            refusal = PlainTextResponse("The page can only be read.\n", 405, {"Allow": "GET, HEAD"})
            await refusal(scope, receive, send)


def page_file(path: str) -> Response:
    """A file of the page by its path; what is not in the list of its files is not there."""
    found = _all().get(path or INDEX)
    if found is None:
        return PlainTextResponse("There is nothing of that name.\n", 404)
    ending = found.name[found.name.rfind(".") :]
    return Response(found.read_bytes(), media_type=TYPES[ending])


@cache
def _all() -> dict[str, Traversable]:
    folder = files(__package__).joinpath("page")
    return dict(_below(folder, "")) if folder.is_dir() else {}


def _below(folder: Traversable, path: str) -> list[tuple[str, Traversable]]:
    found: list[tuple[str, Traversable]] = []
    for each in folder.iterdir():
        name = path + each.name
        if each.is_dir():
            found += _below(each, name + "/")
        elif each.name[each.name.rfind(".") :] in TYPES:
            found.append((name, each))
    return found
