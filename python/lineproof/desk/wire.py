"""The shapes of what the desk's page and its server say to each other: plain values, checked on the way in.

Offsets count characters of a comment's text from 0.
"""

from __future__ import annotations

from base64 import b64decode
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from lineproof.diagram.board import LARGEST
from lineproof.publish.product import WIDTH

Side = Literal["white", "black"]
Id = Annotated[str, Field(pattern=r"^[0-9a-f]{16}$")]
"""Of a place: made of the road there, and the same in every version that has the road."""
Version = Annotated[int, Field(ge=0)]
Window = Annotated[str, Field(max_length=64)]
"""Any name that a browser window gives itself; events say whose edit they tell of."""
Move = Annotated[str, Field(min_length=1, max_length=16)]
"""In SAN or UCI."""

Sort = Literal["dangerous", "met", "slips", "ideas", "stops", "stale"]
"""Lists of things to do: replies left open, of which some are dangerous; slips; recurring ideas; lines that stop early; stale words, which are found by the checks."""
Decided = Literal["dismissed", "later"]

Status = Literal["read", "left alone", "not understood", "other language", "your opinion"]
"""What became of a sentence."""
Spend = Literal["sketch", "normal", "thorough"]
Counts = Literal["step", "product", "frame"]
ReportOf = Literal["proof", "study", "games"]
CollectionName = Annotated[str, Field(max_length=60)]
"""Of one of the user's collections; "" for none."""

WORDS = 1_000_000
"""Characters of a comment at most."""
LINE = 400
"""Moves that one edit may add."""


class Shape(BaseModel):
    """What has no other fields than those named, and takes no value for another: false is no 0."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=True)


# What is asked


class AddLine(Shape):
    """Moves after a place, following those already there."""

    op: Literal["add_line"]
    place: Id
    moves: Annotated[list[Move], Field(min_length=1, max_length=LINE)]


class Cut(Shape):
    """A move and all that follows it goes."""

    op: Literal["cut"]
    place: Id


class Promote(Shape):
    """The variation that a place is in moves up one level."""

    op: Literal["promote"]
    place: Id


class BringForward(Shape):
    """The variation that a place is in moves before the variation before it."""

    op: Literal["bring_forward"]
    place: Id


class Join(Shape):
    """What follows `other` is copied under `place`, where the same position stands."""

    op: Literal["join"]
    place: Id
    other: Id


class ChangeWords(Shape):
    """A comment gets another text."""

    op: Literal["change_words"]
    comment: Annotated[int, Field(ge=0)]
    text: Annotated[str, Field(max_length=WORDS)]


class RemoveComment(Shape):
    """A comment goes."""

    op: Literal["remove_comment"]
    comment: Annotated[int, Field(ge=0)]


class AddComment(Shape):
    """A comment after a move and its comments; for a root, before the first move."""

    op: Literal["add_comment"]
    place: Id
    text: Annotated[str, Field(max_length=WORDS)]


class SetMarks(Shape):
    """A move gets these glyph numbers; signs written as text stay."""

    op: Literal["set_marks"]
    place: Id
    nags: Annotated[list[Annotated[int, Field(ge=0, le=999_999_999)]], Field(max_length=20)]


class Undo(Shape):
    """The last edit is taken back."""

    op: Literal["undo"]


class Redo(Shape):
    """What was taken back last is done again."""

    op: Literal["redo"]


class SetLesson(Shape):
    """Title, side taught and audience; what is not named stays."""

    op: Literal["settings"]
    title: Annotated[str, Field(max_length=500)] | None = None
    side: Side | None = None
    audience: Annotated[int, Field(ge=400, le=2900)] | None = None


class MarkOpinion(Shape):
    """The sentence that stands at start..end of a comment is the author's opinion, which is not checked; or it is one no more."""

    op: Literal["opinion"]
    comment: Annotated[int, Field(ge=0)]
    start: Annotated[int, Field(ge=0)]
    end: Annotated[int, Field(ge=0)]
    opinion: bool


class TakeBack(Shape):
    """A sentence is the author's opinion no more, by the mark's name; it may be gone from the lesson."""

    op: Literal["take_back"]
    name: Annotated[str, Field(min_length=1, max_length=WORDS)]


class GivenFile(Shape):
    """A file as it was chosen in the browser, or is handed to it. base64: its bytes, as RFC 4648, section 4, spells them."""

    name: Annotated[str, Field(min_length=1, max_length=300)]
    base64: Annotated[
        str, Field(pattern=r"^([A-Za-z0-9+/]{4})*([A-Za-z0-9+/]{2}==|[A-Za-z0-9+/]{3}=)?$")
    ]

    @property
    def data(self) -> bytes:
        """Its bytes."""
        return b64decode(self.base64)


Files = Annotated[list[GivenFile], Field(min_length=1, max_length=50)]


class Import(Shape):
    """The games of these files come after those of the lesson. joined: those that begin as one before them are written into its lines."""

    op: Literal["import"]
    files: Files
    joined: bool = False


class Source(Shape):
    """Where a line comes from. words: the book and page, the players and year, and so on."""

    sort: Literal["book", "game", "analysis", "pupil"]
    words: Annotated[str, Field(max_length=300)]


class SetSource(Shape):
    """Where the line from this place on comes from; None: nothing is said of it. It stands in lesson.toml."""

    op: Literal["source"]
    place: Id
    source: Source | None


class PutDiagram(Shape):
    """A diagram stands after a place and its words, or stands there no more. It is noted in lesson.toml."""

    op: Literal["diagram"]
    place: Id
    wanted: bool


class Decide(Shape):
    """A thing to do is put off, dismissed, or open again. What is decided stands in lesson.toml."""

    op: Literal["decide"]
    sort: Sort
    place: Id
    about: Annotated[str, Field(min_length=1, max_length=500)]
    decided: Decided | None


Op = Annotated[
    AddLine
    | Cut
    | Promote
    | BringForward
    | Join
    | ChangeWords
    | RemoveComment
    | AddComment
    | SetMarks
    | Undo
    | Redo
    | SetLesson
    | MarkOpinion
    | TakeBack
    | Decide
    | Import
    | SetSource
    | PutDiagram,
    Field(discriminator="op"),
]


class EditAsked(Shape):
    """An edit of the version that the window shows."""

    version: Version
    window: Window = ""
    edit: Op


class SettleAsked(Shape):
    """What is to stay where another program changed the same place."""

    version: Version
    window: Window = ""
    keep: Literal["ours", "theirs"]


FilePath = Annotated[str, Field(min_length=1, max_length=2000)]
"""A file or folder of this machine."""


class OpenLessonAt(Shape):
    """A lesson folder or a PGN file that is there."""

    how: Literal["open"]
    path: FilePath


class NewLesson(Shape):
    """A lesson in a new or empty folder: of these files, from this position, or from the beginning of a game. title: by default that of the files, or the folder's name."""

    how: Literal["new"]
    path: FilePath
    title: Annotated[str, Field(max_length=500)] = ""
    side: Side | None = None
    audience: Annotated[int, Field(ge=400, le=2900)] | None = None
    files: Files | None = None
    fen: Annotated[str, Field(min_length=1, max_length=200)] | None = None


class DemoLesson(Shape):
    """A copy of the demo lesson in a new or empty folder."""

    how: Literal["demo"]
    path: FilePath


class StartAsked(Shape):
    """How a lesson comes on the desk."""

    start: Annotated[OpenLessonAt | NewLesson | DemoLesson, Field(discriminator="how")]


# What is answered


class CommentShown(Shape):
    """index: which comment of the lesson, in this version. to_line_end: it cannot hold a line end."""

    index: int
    text: str
    to_line_end: bool


class PlaceShown(Shape):
    """A place. depth: 0 on the main line. signs: those written as text.

    before: comments that open the variation that begins with this move. after: those that follow the move; at a root, those
    that open the game. joins: the first other place with the same position. source: where the line from here on comes from.
    diagram: the text alternative of the diagram that the author has put here, where there is one.
    """

    id: Id
    parent: Id | None
    game: int
    ply: int
    number: str
    san: str | None
    uci: str | None
    fen: str
    depth: int
    nags: list[int]
    signs: list[str]
    before: list[CommentShown]
    after: list[CommentShown]
    joins: Id | None
    source: Source | None
    diagram: str | None


class GameShown(Shape):
    """A game of the file. result: its marker as written."""

    root: Id
    tags: list[tuple[str, str]]
    result: str | None


class ConflictShown(Shape):
    """Where another program changed what was changed here, too: both texts from the first difference to the last, shortened."""

    ours: str
    theirs: str


class StaleDecided(Shape):
    """What the author decided of words that may be stale. places: with their position."""

    places: list[Id]
    about: str
    decided: Decided


class OpinionShown(Shape):
    """A sentence that the author marked as his opinion. name: of the mark. move: beside which it stood; "" where that is not known."""

    name: str
    words: str
    move: str


class LessonShown(Shape):
    """A lesson. places: in spoken order; the children of a place are those whose parent it is, in this order. opinions: also of sentences that are gone.

    notice: what was met when it was opened. unwritable: why it can only be looked at. undo, redo: steps that there are. folder: False for a bare PGN file, which has no place for settings.
    """

    key: str
    version: Version
    title: str
    side: Side | None
    audience: int
    name: str
    folder: bool
    undo: int
    redo: int
    conflict: ConflictShown | None
    notice: str | None
    unwritable: str | None
    games: list[GameShown]
    places: list[PlaceShown]
    opinions: list[OpinionShown]
    stale_decided: list[StaleDecided]


class Opened(Shape):
    """A lesson that is open in this run."""

    key: str
    title: str
    name: str


class LessonsShown(Shape):
    """Those that are open, the one given at the start first. outside: the outside engine that this run was started with."""

    lessons: list[Opened]
    outside: str | None


class Edited(Shape):
    """What an edit made. at: where it was. said: what became of moves that were added. joins: the place whose position they reach."""

    lesson: LessonShown
    at: Id
    said: Literal["extended", "branched", "known", ""]
    joins: Id | None


class Entry(Shape):
    """kind: a lesson folder, a PGN file, or another folder."""

    name: str
    path: str
    kind: Literal["lesson", "file", "folder"]


class FolderShown(Shape):
    """What a folder has that may be a lesson or lead to one. parent: None at the top. more: whether there is more than is shown."""

    path: str
    parent: str | None
    entries: list[Entry]
    more: bool


class LegalMove(Shape):
    uci: str
    san: str
    fen: str


class PositionShown(Shape):
    """alternative: what a diagram of it says to a screen reader."""

    fen: str
    turn: Side
    check: bool
    legal: list[LegalMove]
    alternative: str


class Evidence(Shape):
    """A line that shows a finding. text: with move numbers."""

    fen: str
    moves: list[LegalMove]
    text: str


class Moves(Shape):
    """Moves in UCI that may be added after a place."""

    place: Id
    moves: list[str]


class QuestionAsked(Shape):
    """ "What about ...?" question: moves from a place, or from the beginning where none is named; or a FEN."""

    place: Id | None = None
    question: Annotated[str, Field(min_length=1, max_length=2000)]


class AnswerShown(Shape):
    """said: sentences. places: those with this position. evidence: what follows. add: what would take the answer into the lesson."""

    fen: str
    said: list[str]
    places: list[Id]
    evidence: Evidence | None
    add: Moves | None


class Row(Shape):
    """A term, and what is said to it."""

    term: str
    text: str


class ThingShown(Shape):
    """A thing to do. title: of its list. about: what tells it from others of its list at its position. add: what would answer it.

    decided: whether the author has put it off or dismissed it.
    """

    sort: Sort
    title: str
    place: Id
    about: str
    words: str
    rows: list[Row]
    evidence: Evidence | None
    add: Moves | None
    decided: Decided | None


class PauseShown(Shape):
    """A pause point: where the audience can be asked to find the move. grade: 1, easy, to 5. best: the move, in SAN; point: what shows on the board."""

    place: Id
    grade: int
    best: str
    point: str


class StudyShown(Shape):
    """version: the one that is studied. done, of: positions. basis: where it is known from how likely a reply is. things, pauses: of the present version."""

    state: Literal["none", "running", "done", "failed"]
    version: Version
    done: int
    of: int
    problem: str | None
    basis: str | None
    things: list[ThingShown]
    pauses: list[PauseShown]


class FollowAsked(Shape):
    """Students' games to follow. player: the student, by name or a part of it; "" for whoever had the taught side."""

    file: GivenFile
    player: Annotated[str, Field(max_length=200)] = ""


class DepartureShown(Shape):
    """Where a game, or several, left the lesson. evidence: how it went on. add: what to teach there, where the opponent left it."""

    place: Id
    words: str
    evidence: Evidence | None
    add: Moves | None


class FollowedShown(Shape):
    """What came of students' games. done, of: games. said: of all of them together. common: the commonest departures first.

    Nothing of the games is written down; they are forgotten with the run, or when that is asked for.
    """

    state: Literal["none", "running", "done", "failed"]
    done: int
    of: int
    problem: str | None
    said: list[str]
    common: list[DepartureShown]
    games: list[DepartureShown]


class WeighAsked(Shape):
    """Openings to weigh: moves from the initial position, or FENs; lessons by their keys. audience: a rating. collection: games to count; "" for none.

    outside: whether the outside engine of this run answers the searches, in place of ours.
    """

    moves: Annotated[list[Annotated[str, Field(max_length=2000)]], Field(max_length=12)] = []
    lessons: Annotated[list[Annotated[str, Field(max_length=16)]], Field(max_length=12)] = []
    audience: Annotated[int, Field(ge=400, le=2900)]
    collection: CollectionName = ""
    outside: bool = False


class CandidateShown(Shape):
    """A candidate: its name and side, and what it asks and gives."""

    name: str
    said: list[str]


class WeighedShown(Shape):
    """done, of: candidates. said: of all of them."""

    state: Literal["none", "running", "done", "failed"]
    done: int
    of: int
    problem: str | None
    said: list[str]
    candidates: list[CandidateShown]


class CollectionShown(Shape):
    name: str
    games: int


class CollectionsShown(Shape):
    """The user's collections of games."""

    collections: list[CollectionShown]


class FigureShown(Shape):
    """A move and how often it was played: in `games` of `of`, in percent with its 95 % interval."""

    move: LegalMove
    games: int
    of: int
    share: float
    low: float
    high: float


class FiguresShown(Shape):
    """What a collection says of a position. said: the same in sentences, and more."""

    collection: str
    games: int
    said: list[str]
    moves: list[FigureShown]


Minutes = Annotated[float, Field(gt=0, allow_inf_nan=False)]
"""What a lesson is to fit into."""


class OrderShown(Shape):
    """How the lesson is best told. said: in sentences; script: what is said and done, with the time of each cue."""

    said: list[str]
    script: str


class ProductShown(Shape):
    """What a lesson can be published as. needs_study: only once it has been studied. usual: whether it is made where nothing is chosen."""

    name: str
    summary: str
    needs_study: bool
    usual: bool


class ProductsShown(Shape):
    products: list[ProductShown]


class LooksAsked(Shape):
    """How products look. width: of pictures, in pixels. language: of the pieces' letters. notation, paper, columns, large: of the handout; columns: None as its type asks for.

    minutes, pauses: of captions and video, as of the running order. The rest is of the video; voice: a recording's path, "" for none; loop: a line's number.
    """

    width: Annotated[int, Field(ge=1, le=LARGEST)] = WIDTH
    language: Literal["en", "de", "fr", "es", "nl"] = "en"
    notation: Literal["letters", "figurine"] = "letters"
    paper: Literal["a4", "letter"] = "a4"
    columns: Literal[1, 2] | None = None
    large: bool = False
    vertical: bool = False
    burn_captions: bool = False
    constant_rate: bool = False
    codec: Literal["h264", "av1"] = "h264"
    loop: Annotated[int, Field(ge=1)] | None = None
    voice: Annotated[str, Field(max_length=4096)] = ""
    minutes: Minutes | None = None
    pauses: bool = False


class PublishAsked(Shape):
    """path: the folder to publish into. only: names of products. anyway: also where claims fail."""

    path: FilePath
    only: Annotated[list[Annotated[str, Field(max_length=50)]], Field(min_length=1, max_length=20)]
    anyway: bool = False
    looks: LooksAsked = LooksAsked()


class EditionShown(Shape):
    """number: from 1. words: with its day."""

    number: int
    words: str


class EditionsShown(Shape):
    """What has been published of a lesson."""

    editions: list[EditionShown]


class NoticeShown(Shape):
    """What is new for the audience of an edition, as text in lines."""

    text: str


class ProductFile(Shape):
    """name: with its product's folder. size: in bytes."""

    product: str
    name: str
    size: int


class PublishingShown(Shape):
    """How far publishing is, and what came of it. done, of: what `what` says: steps of the study that must come first, products, or frames of a video.

    published: what was published last, until something else is begun.
    """

    state: Literal["none", "running", "done", "failed"]
    what: Counts
    done: int
    of: int
    problem: str | None
    published: PublishedShown | None


class PublishedShown(Shape):
    """What was published. empty: products with nothing to show. failing: claims that fail and were published all the same.

    edition: its number and day, in words. notes: sentences on what could not be kept.
    """

    folder: str
    files: list[ProductFile]
    empty: list[str]
    failing: int
    edition: str
    notes: list[str]


class MarkShown(Shape):
    kind: Literal["square", "move", "pin"]
    squares: list[str]
    side: Side


class FindingShown(Shape):
    """start..end: of the words in the comment; 0..0 for a glyph, which has no comment. outcome: "waiting" until search has answered."""

    id: str
    place: Id
    comment: int | None
    start: int
    end: int
    words: str
    kind: str
    title: str
    outcome: Literal["holds", "fails", "unsettled", "waiting"]
    why: str
    instead: str | None
    second: str | None
    evidence: Evidence | None
    marks: list[MarkShown]


class SentenceShown(Shape):
    """findings: their ids. why: the reason where it was not read, or not wholly."""

    place: Id
    comment: int
    start: int
    end: int
    status: Status
    why: str | None
    findings: list[str]


class ContradictionShown(Shape):
    """Two findings, by their ids in the order of the text, whose claims cannot both be true. why: one sentence or two."""

    findings: tuple[str, str]
    why: str


class OutsideShown(Shape):
    """The outside engine that this run was started with. asked: whether it answers for the lesson, in place of ours."""

    name: str
    asked: bool


class WayShown(Shape):
    """How a lesson is checked. effort: of each check. looking: of each search for what the lesson leaves open, for a question, and of students' games.

    outside: None where the run has no outside engine. collection: the games that are counted; "" for none.
    """

    effort: Spend
    looking: Spend
    outside: OutsideShown | None
    collection: str


class FindingsShown(Shape):
    """What is found of a version so far. done: findings that wait no more; complete: all are there.

    contradictions: None until all findings are there and were looked at together.
    """

    version: Version
    way: WayShown
    done: int
    of: int
    complete: bool
    findings: list[FindingShown]
    contradictions: list[ContradictionShown] | None
    sentences: list[SentenceShown]


class PassageShown(Shape):
    """What is found in a comment, or of the signs of a move. key: the same in every version that has it unchanged.

    The numbers of the comment in it are of some version; those of the present one stand in `FindingsNews.order`.
    """

    key: str
    findings: list[FindingShown]
    sentences: list[SentenceShown]


class FindingsNews(Shape):
    """What has changed since the last such event of the same window; with the first one all.

    order: the keys of all passages as they stand, each with the number of its comment, null for signs; null where it is as it was.
    passages: those that are new or found out more of. The rest as in `FindingsShown`.
    """

    version: Version
    way: WayShown
    done: int
    of: int
    complete: bool
    order: list[tuple[str, int | None]] | None
    passages: list[PassageShown]
    contradictions: list[ContradictionShown] | None


class Problem(Shape):
    """kind: the error's name. hint: what to do."""

    kind: str
    message: str
    hint: str


class Refused(Shape):
    """lesson: how it stands now, where an edit was of an older version."""

    error: Problem
    lesson: LessonShown | None = None


class WayAsked(Shape):
    """How the lesson is checked from now on, in this run. outside: whether the outside engine of this run answers, in place of ours. The rest as in `WayShown`."""

    effort: Spend
    looking: Spend = "sketch"
    outside: bool = False
    collection: CollectionName = ""


class LessonEvent(Shape):
    """A version has come about. window: whose edit made it; "" for a change on the disk."""

    version: Version
    window: Window


class SavedEvent(Shape):
    """version: the one on the disk. problem: why a newer one is not there yet."""

    version: Version
    problem: str | None
