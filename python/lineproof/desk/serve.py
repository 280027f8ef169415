"""Serving the desk: on this machine only, until it is stopped."""

from __future__ import annotations

import socket
import webbrowser
from collections.abc import Callable

import uvicorn

from .app import guarded
from .guard import new_token
from .lessons import Lessons

HOST = "127.0.0.1"


class PortError(OSError):
    """The port cannot be had."""


def serve(
    lessons: Lessons,
    *,
    port: int = 0,
    browser: bool = True,
    started: Callable[[str], None] = lambda _: None,
) -> None:
    """Serves until it is interrupted, then saves and closes all lessons.

    port: 0 for one that is free. browser: whether to open the page. started: called with the address, which holds the token of this run.
    :raises PortError: when the port is taken.
    """
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as listener:
        try:
            listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            listener.bind((HOST, port))
            listener.listen(128)
        except OSError as error:
            raise PortError(error.errno, error.strerror) from error
        bound = listener.getsockname()[1]
        token = new_token()
        address = f"http://{HOST}:{bound}/#token={token}"
        server = _Server(
            uvicorn.Config(
                guarded(lessons, token, bound),
                log_config=None,
                access_log=False,
                server_header=False,
                timeout_graceful_shutdown=1,
                lifespan="off",
                ws="none",
            ),
            lessons,
        )
        started(address)
        if browser:
            webbrowser.open(address)
        try:
            server.run(sockets=[listener])
        finally:
            lessons.close()


class _Server(uvicorn.Server):
    """Ends the windows' event streams when it is asked to stop, and saves before it does."""

    def __init__(self, config: uvicorn.Config, lessons: Lessons) -> None:
        super().__init__(config)
        self._lessons = lessons

    async def shutdown(self, sockets: list[socket.socket] | None = None) -> None:
        self._lessons.end_events()
        await super().shutdown(sockets)
        self._lessons.close()  # a signal may leave no time after this
