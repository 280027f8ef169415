"""The page as `make desk` built it: files in the folder `page` beside this module, found by their names alone."""

from __future__ import annotations

from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable

from starlette.responses import PlainTextResponse, Response

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
