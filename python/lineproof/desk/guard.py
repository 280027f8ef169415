"""The guard: what is not from the page that this run opened is refused before anything else looks at it.

The server listens on this machine only. The token, made anew for each run, keeps other users and programs of the machine out; Host
and Origin keep out pages that some other site has open in the same browser (also by a name that it lets lead to this machine).
"""

from __future__ import annotations

import secrets
from collections.abc import Iterable
from dataclasses import dataclass
from typing import TYPE_CHECKING

from starlette.responses import JSONResponse

from .wire import Problem, Refused

if TYPE_CHECKING:
    from starlette.types import ASGIApp, Message, Receive, Scope, Send

MOST = 8_000_000
"""Bytes of a request's body at most."""
API = "/api/"
NAMES = ("127.0.0.1", "localhost")
POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
    "base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)
HEADERS = (
    (b"content-security-policy", POLICY.encode()),
    (b"x-content-type-options", b"nosniff"),
    (b"referrer-policy", b"no-referrer"),
    (b"cross-origin-opener-policy", b"same-origin"),
    (b"cross-origin-resource-policy", b"same-origin"),
    (b"cache-control", b"no-store"),
)


def new_token() -> str:
    """A secret of 256 bits."""
    return secrets.token_urlsafe(32)


@dataclass(frozen=True)
class Guard:
    """Wraps an application. port: where it listens."""

    app: ASGIApp
    token: str
    port: int

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "lifespan":
            await self.app(scope, receive, send)
            return
        if scope["type"] != "http":  # no web sockets
            return
        headers = scope["headers"]
        wrong = self._wrong(scope["method"], scope["path"], headers)
        if wrong is None and _length(headers) > MOST:
            wrong = (413, "the request is too long", "send less at once")

        async def told(message: Message) -> None:
            if message["type"] == "http.response.start":
                message = {**message, "headers": [*message.get("headers", ()), *HEADERS]}
            await send(message)

        if wrong is not None:
            status, what, hint = wrong
            error = Problem(kind="RefusedError", message=what, hint=hint)
            refusal = JSONResponse(Refused(error=error).model_dump(), status)
            await refusal(scope, receive, told)
            return
        await self.app(scope, _counted(receive), told)

    def _wrong(
        self, method: str, path: str, headers: Iterable[tuple[bytes, bytes]]
    ) -> tuple[int, str, str] | None:
        """Status, message and hint, when a request is to be refused."""
        open_again = "open the address that `lineproof desk` printed"
        hosts = [value.decode("latin-1") for name, value in headers if name == b"host"]
        allowed = {f"{name}:{self.port}" for name in NAMES}
        if len(hosts) != 1 or hosts[0] not in allowed:
            return 421, "the request was meant for another host", open_again
        origins = [value.decode("latin-1") for name, value in headers if name == b"origin"]
        if any(origin != f"http://{hosts[0]}" for origin in origins):
            return 403, "the request comes from another page", open_again
        if method not in {"GET", "HEAD"} and not origins:
            return 403, "the request does not say which page it comes from", open_again
        if f"{path}/".startswith(API):
            given = [value for name, value in headers if name == b"authorization"]
            wanted = f"Bearer {self.token}".encode()
            if len(given) != 1 or not secrets.compare_digest(given[0], wanted):
                return 401, "the request has not the token of this run", open_again
        return None


def _length(headers: Iterable[tuple[bytes, bytes]]) -> int:
    for name, value in headers:
        if name == b"content-length":
            return int(value) if value.isdigit() and len(value) < 16 else MOST + 1
    return 0


def _counted(receive: Receive) -> Receive:
    """Ends a body that is longer than allowed, or than it says."""
    had = 0

    async def received() -> Message:
        nonlocal had
        message = await receive()
        had += len(message.get("body", b""))
        if had > MOST:
            return {"type": "http.disconnect"}
        return message

    return received
