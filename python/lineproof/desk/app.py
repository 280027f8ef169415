"""The application: what the page asks for, and the page itself."""

from __future__ import annotations

import asyncio
from typing import Annotated, Any

from fastapi import FastAPI, Path, Query, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse, Response, StreamingResponse
from fastapi.routing import APIRoute
from starlette.exceptions import HTTPException

from lineproof.collection import CollectionError, NotAPositionError
from lineproof.diagram.errors import DiagramError
from lineproof.engine import Board, FenError
from lineproof.engine.outside import OutsideError
from lineproof.follow import FollowError
from lineproof.lesson.errors import LessonError
from lineproof.order import OrderError
from lineproof.proof import Effort
from lineproof.replies import NaturalError

from .figures import collections_shown
from .folders import folder_shown
from .guard import Guard
from .hints import hint_here
from .lessons import Lessons, NotOpenError
from .opened import StaleError
from .page import Page
from .publishing import products_shown
from .shown import position_shown
from .wire import (
    AnswerShown,
    CollectionsShown,
    EditAsked,
    Edited,
    EditionsShown,
    FiguresShown,
    FindingsNews,
    FindingsShown,
    FolderShown,
    FollowAsked,
    FollowedShown,
    GivenFile,
    LessonEvent,
    LessonShown,
    LessonsShown,
    NoticeShown,
    Opened,
    OrderShown,
    PositionShown,
    Problem,
    ProductsShown,
    PublishAsked,
    PublishingShown,
    QuestionAsked,
    Refused,
    ReportOf,
    SavedEvent,
    SettleAsked,
    StartAsked,
    StudyShown,
    WayAsked,
    WeighAsked,
    WeighedShown,
)

API = "1"
"""Version of the API; raised when a page of the older one would go wrong."""
REFUSALS: dict[int | str, dict[str, Any]] = {
    status: {"model": Refused} for status in (400, 401, 403, 404, 409, 413, 421, 422)
}


def application(lessons: Lessons) -> FastAPI:
    """The application without its guard."""
    app = FastAPI(
        title="Lineproof's desk",
        version=API,
        docs_url=None,
        redoc_url=None,
        openapi_url=None,
        responses=REFUSALS,
    )
    _add_refusals(app)

    @app.get("/api/lessons", operation_id="lessons")
    def every_lesson() -> LessonsShown:
        """The lessons that are open."""
        return lessons.shown()

    @app.post("/api/lessons", operation_id="start")
    def start(asked: StartAsked) -> Opened:
        """Opens a lesson, or makes a new one and opens it."""
        return lessons.start(asked.start)

    @app.get("/api/folder", operation_id="folder")
    def folder(path: Annotated[str, Query(max_length=2000)] = "") -> FolderShown:
        """The lessons, PGN files and folders in a folder; without a path in the user's own."""
        return folder_shown(path)

    @app.get("/api/lessons/{key}", operation_id="lesson")
    def lesson(key: str) -> LessonShown:
        """A lesson as it is now."""
        return lessons[key].opened.shown()

    @app.delete("/api/lessons/{key}", operation_id="take_off")
    def take_off(key: str) -> LessonsShown:
        """Takes a lesson off the desk, once it is saved; its files stay."""
        return lessons.take_off(key)

    @app.post("/api/lessons/{key}/edits", operation_id="edit")
    def edit(key: str, asked: EditAsked) -> Edited:
        """Makes an edit of the version that the window shows."""
        found = lessons[key].opened
        try:
            return found.edit(asked.version, asked.window, asked.edit)
        except StaleError as error:
            raise _Stale(error, found.shown()) from error

    @app.post("/api/lessons/{key}/conflict", operation_id="settle")
    def settle(key: str, asked: SettleAsked) -> LessonShown:
        """Says which text is to stay where another program changed the same place."""
        found = lessons[key].opened
        try:
            return found.settle(asked.version, asked.window, asked.keep)
        except StaleError as error:
            raise _Stale(error, found.shown()) from error

    @app.get("/api/lessons/{key}/findings", operation_id="findings")
    def findings(key: str) -> FindingsShown:
        """What is found by now."""
        return lessons[key].prover.snapshot().whole()

    @app.post("/api/lessons/{key}/way", operation_id="choose")
    def choose(key: str, asked: WayAsked) -> WayAsked:
        """Says how the lesson is checked in this run; where that is another way than before, all of it is checked anew."""
        lessons[key].prover.choose(
            Effort(asked.effort), Effort(asked.looking), asked.outside, asked.collection
        )
        return asked

    @app.get(
        "/api/lessons/{key}/events",
        operation_id="events",
        response_class=StreamingResponse,
        responses={200: {"content": {"text/event-stream": {}}}},
    )
    async def events(key: str) -> StreamingResponse:
        """News as they come, as described under webhooks; first how it stands."""
        found = await asyncio.to_thread(lessons.__getitem__, key)
        return StreamingResponse(
            found.opened.events.stream(found.standing), media_type="text/event-stream"
        )

    @app.post("/api/lessons/{key}/questions", operation_id="ask")
    def ask(key: str, asked: QuestionAsked) -> AnswerShown:
        """Answers "what about ...?"."""
        return lessons[key].ask(asked)

    @app.post("/api/lessons/{key}/study", operation_id="begin_study")
    def begin_study(key: str) -> StudyShown:
        """Begins to look for what the audience will really play; `study` events tell how far it is."""
        return lessons[key].begin_study()

    @app.get("/api/lessons/{key}/study", operation_id="study")
    def study(key: str) -> StudyShown:
        """What the study has found, as things to do."""
        return lessons[key].study()

    @app.post("/api/lessons/{key}/games", operation_id="follow")
    def follow(key: str, asked: FollowAsked) -> FollowedShown:
        """Begins to look where students' games left the lesson; `followed` events tell how far it is."""
        return lessons[key].follow(asked)

    @app.get("/api/lessons/{key}/games", operation_id="followed")
    def followed(key: str) -> FollowedShown:
        """What came of the students' games."""
        return lessons[key].followings.shown()

    @app.delete("/api/lessons/{key}/games", operation_id="forget")
    def forget(key: str) -> FollowedShown:
        """Forgets the students' games."""
        return lessons[key].followings.forget()

    @app.get("/api/lessons/{key}/figures", operation_id="figures")
    def figures(
        key: str,
        place: Annotated[str, Query(max_length=16)],
        collection: Annotated[str, Query(max_length=60)],
        of_audience: bool = False,
    ) -> FiguresShown:
        """What a collection of games says of a place of the lesson."""
        return lessons[key].figures(place, collection, of_audience)

    @app.get("/api/lessons/{key}/pgn", operation_id="pgn")
    def pgn(key: str) -> GivenFile:
        """The lesson's lines as a PGN file, byte for byte as they are saved."""
        return lessons[key].pgn()

    @app.get("/api/lessons/{key}/order", operation_id="order")
    def order(
        key: str,
        minutes: Annotated[float | None, Query(gt=0, allow_inf_nan=False)] = None,
        pauses: bool = False,
    ) -> OrderShown:
        """How the lesson is best told. minutes: what it is to fit into. pauses: asks at pause points of the study, too."""
        return lessons[key].order(minutes, pauses)

    @app.get("/api/lessons/{key}/editions", operation_id="editions")
    def every_edition(key: str) -> EditionsShown:
        """What has been published of the lesson."""
        return lessons[key].editions()

    @app.get("/api/lessons/{key}/editions/{number}/news", operation_id="news")
    def news(
        key: str,
        number: Annotated[int, Path(ge=1, le=999_999_999)],
        until: Annotated[int | None, Query(ge=1, le=999_999_999)] = None,
    ) -> NoticeShown:
        """What is new since an edition, for its audience: up to another edition, or to the lesson as it is now."""
        return lessons[key].notice(number, until)

    @app.post("/api/lessons/{key}/publish", operation_id="publish")
    def publish(key: str, asked: PublishAsked) -> PublishingShown:
        """Begins to publish the lesson into a folder, once all that it says has been checked; `publishing` events tell how far it is."""
        return lessons[key].publish(asked)

    @app.get("/api/lessons/{key}/publish", operation_id="publishing")
    def publishing(key: str) -> PublishingShown:
        """How far publishing is, or what came of it."""
        return lessons[key].publishings.shown()

    @app.delete("/api/lessons/{key}/publish", operation_id="break_off")
    def break_off(key: str) -> PublishingShown:
        """Breaks publishing off, and nothing of it is written, unless it is done already."""
        return lessons[key].publishings.end()

    @app.get("/api/lessons/{key}/report", operation_id="report")
    def report(key: str, of: ReportOf = "proof") -> GivenFile:
        """A report as one HTML page: of all that was checked, of what the lesson leaves open, or of students' games."""
        return lessons[key].report(of)

    _add_events(app)

    @app.post("/api/weighing", operation_id="weigh")
    def weigh(asked: WeighAsked) -> WeighedShown:
        """Begins to weigh candidate openings; how far it is, is asked for."""
        return lessons.weigh(asked)

    @app.get("/api/weighing", operation_id="weighed")
    def weighed() -> WeighedShown:
        """What the openings that were weighed last ask and give."""
        return lessons.weighings.shown()

    @app.get("/api/weighing/report", operation_id="weighed_report")
    def weighed_report() -> GivenFile:
        """The report of the openings that were weighed last, as one HTML page."""
        return lessons.weighed_report()

    @app.get("/api/products", operation_id="products")
    def products() -> ProductsShown:
        """What a lesson can be published as."""
        return products_shown()

    @app.get("/api/collections", operation_id="collections")
    def every_collection() -> CollectionsShown:
        """The collections of games that there are."""
        return collections_shown()

    @app.get("/api/position", operation_id="position")
    def position(fen: Annotated[str, Query(max_length=200)]) -> PositionShown:
        """The legal moves of a position."""
        return position_shown(Board(fen))

    return app


def _add_events(app: FastAPI) -> None:
    """Describes what the stream of events brings, as what the server sends of itself: OpenAPI calls it webhooks."""

    @app.webhooks.post("lesson")
    def lesson(news: LessonEvent) -> None:
        """A version has come about."""

    @app.webhooks.post("saved")
    def saved(news: SavedEvent) -> None:
        """What is on the disk."""

    @app.webhooks.post("findings")
    def findings(news: FindingsNews) -> None:
        """What has changed of the findings."""

    @app.webhooks.post("study")
    def study(news: StudyShown) -> None:
        """How far the study is; what it has found is asked for."""

    @app.webhooks.post("publishing")
    def publishing(news: PublishingShown) -> None:
        """How far publishing is, or what came of it."""

    @app.webhooks.post("followed")
    def followed(news: FollowedShown) -> None:
        """How far the students' games are followed; what came of them is asked for."""


def guarded(lessons: Lessons, token: str, port: int) -> Guard:
    """The application as it is served."""
    return Guard(Page(application(lessons)), token, port)


class _Stale(Exception):  # noqa: N818 - carries an answer
    def __init__(self, error: StaleError, lesson: LessonShown) -> None:
        super().__init__(str(error))
        self.answer = Refused(error=_problem(error), lesson=lesson)


def _add_refusals(app: FastAPI) -> None:
    @app.exception_handler(_Stale)
    def stale(_: Request, error: _Stale) -> Response:
        return JSONResponse(error.answer.model_dump(), 409)

    @app.exception_handler(LessonError)
    def of_a_lesson(_: Request, error: LessonError) -> Response:
        status = 404 if isinstance(error, NotOpenError) else 422
        return JSONResponse(Refused(error=_problem(error)).model_dump(), status)

    @app.exception_handler(NotAPositionError)
    def neither(_: Request, error: NotAPositionError) -> Response:
        return _refusal(422, "NotAPositionError", str(error), "give moves, or a FEN")

    @app.exception_handler(CollectionError)
    def of_a_collection(_: Request, error: CollectionError) -> Response:
        return _refusal(422, type(error).__name__, str(error), "choose another collection")

    @app.exception_handler(OutsideError)
    def not_answered(_: Request, error: OutsideError) -> Response:
        return _refusal(422, "OutsideError", str(error), "let Lineproof answer the searches")

    @app.exception_handler(NaturalError)
    def no_weights(_: Request, error: NaturalError) -> Response:
        return _refusal(422, "NaturalError", str(error), "choose another collection, or none")

    @app.exception_handler(FollowError)
    def not_followed(_: Request, error: FollowError) -> Response:
        return _refusal(422, "FollowError", str(error), "choose other games")

    @app.exception_handler(OrderError)
    def no_order(_: Request, error: OrderError) -> Response:
        return _refusal(422, "OrderError", str(error), "write the lines and the words first")

    @app.exception_handler(OSError)
    def of_the_system(_: Request, error: OSError) -> Response:
        reason = (error.strerror or str(error)).lower()
        return _refusal(
            422, "SystemError", f"the system refuses it ({reason})", "choose another place"
        )

    @app.exception_handler(FenError)
    @app.exception_handler(DiagramError)
    def no_position(_: Request, error: ValueError) -> Response:
        return _refusal(422, "FenError", str(error), "give a FEN of a legal position")

    @app.exception_handler(RequestValidationError)
    def malformed(_: Request, error: RequestValidationError) -> Response:
        first = error.errors()[0]
        where = ".".join(str(part) for part in first["loc"])
        return _refusal(422, "MalformedError", f"{where}: {first['msg']}", "look at the API")

    @app.exception_handler(HTTPException)
    def other(asked: Request, error: HTTPException) -> Response:
        answer = _refusal(error.status_code, "HttpError", str(error.detail), "look at the API")
        if error.status_code == 405:
            routes = [each for each in app.routes if isinstance(each, APIRoute)]
            path = asked.url.path
            found = [each.methods or set() for each in routes if each.path_regex.match(path)]
            allowed = set().union(*found)
            answer.headers["Allow"] = ", ".join(sorted(allowed))
        return answer

    @app.exception_handler(Exception)
    def fault(_: Request, error: Exception) -> Response:
        what = f"the program has a fault here ({type(error).__name__})"
        return _refusal(
            500,
            "FaultError",
            what,
            "what you wrote is kept; do something else, or open the desk again",
        )


def _problem(error: LessonError) -> Problem:
    return Problem(kind=type(error).__name__, message=error.message, hint=hint_here(error.hint))


def _refusal(status: int, kind: str, message: str, hint: str) -> Response:
    answer = Refused(error=Problem(kind=kind, message=message, hint=hint))
    return JSONResponse(answer.model_dump(), status)
