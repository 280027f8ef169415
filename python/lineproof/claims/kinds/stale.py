"""Stale words: a sentence left behind by an edit, that names what the board beside it makes impossible."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from lineproof.claims.board import side_of
from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.move_numbers import miscounted
from lineproof.claims.patterns import WHOSE
from lineproof.claims.reference import Reference
from lineproof.claims.sentence import Sentence, spelt
from lineproof.claims.word import Word
from lineproof.engine import AmbiguousMoveError, Board
from lineproof.lesson import Lesson, LessonError, Place
from lineproof.lesson.save import versions

_ELSEWHERE = frozenset(
    [
        "transposes",
        "transpose",
        "transposed",
        "transposing",
        "transposition",
        "line",
        "lines",
        "variation",
        "variations",
        "as",
        "like",
        "unlike",
        "same",
        "before",
        "compare",
        "instead",
        "saw",
        "seen",
        "above",
        "earlier",
        "remember",
        "later",
        "another",
        "other",
        "version",
        "order",
        "orders",
        "met",
    ]
)
"""Words with which a sentence points to another line of the lesson."""

_BARRED = frozenset({"impossible", "illegal"})
_REGRETS = frozenset({"should", "ought", "better", "instead", "could"})
"""Words with which a side's own move before the reply may be judged."""

BELOW = 300
"""Moves below a place that are looked through at most."""

CHANGED = "the move beside these words was"
"""How the reason begins where the words can still be true."""

_SQUARE = re.compile("[a-h][1-8]")
_PLACED = re.compile(
    rf"(?:{WHOSE})? (?:\w+ )??(?:king|queen|rook|bishop|knight|pawn) (?:on|at) [a-h][1-8]|(?: the| his| our| her| your| a)? [a-h][1-8] (?:queen|rook|bishop|knight|pawn)(?= |$)"
)
"""A piece named with its square. The king and plural forms are too loose to hold an author to."""

_LINES = frozenset({"line", "lines", "variation", "variations", "games", "openings"})
_PIECE = r"(?:king|queen|rook|bishop|knight|pawn)"
_MOVED = re.compile(
    rf"(?P<piece>(?:{WHOSE}| the) {_PIECE})(?: (?:which|that|has|have|'s))?(?: (?:now|just|already|still|simply))*"
    r" (?:(?:arrived|landed|settled|stands|sits|stays|waits) (?:on|at)|reached|(?:moved|gone|come|returned|retreated) to) (?P<square>[a-h][1-8])"
    rf"|(?P<driven>(?:{WHOSE}| the) {_PIECE}) from (?:its|his|the|this|that)(?: \w+)? (?:post|outpost|square|place|perch) on (?P<post>[a-h][1-8])"
    rf"|(?:from|on) (?P<from>[a-h][1-8]) (?P<thing>(?:{WHOSE}| the) {_PIECE})(?= (?!on |at |to |takes ))"
)
"""A piece said to have come to a square, to stand there, or to do something from there."""

_FUTURE = frozenset(
    [
        "if",
        "would",
        "could",
        "should",
        "put",
        "puts",
        "place",
        "putting",
        "placing",
        "imagine",
        "were",
        "once",
        "when",
        "until",
        "wants",
        "want",
        "belongs",
        "dream",
        "dreams",
        "dreaming",
        "ideal",
        "ideally",
        "picture",
        "suppose",
        "prefer",
        "before",
        "was",
        "had",
        "stood",
        "cost",
        "captured",
        "fell",
        "exchanged",
        "swapped",
        "sacrificed",
        "give",
        "gives",
        "gave",
        "given",
        "giving",
        "lose",
        "loses",
        "lost",
        "costs",
        "earlier",
        "used",
        "came",
        "come",
        "arrive",
        "arrives",
        "will",
        "soon",
        "eventually",
        "later",
        "get",
        "gets",
        "bring",
        "brings",
        "mate",
        "mating",
    ]
)
"""Words that make a piece on a square a plan or a memory."""
_PAST = frozenset(
    ["was", "had", "stood", "cost", "captured", "fell", "exchanged", "swapped", "sacrificed", "earlier", "came", "were", "would", "could", "should"]
)  # fmt: skip
"""Words that make it one behind it too; "will" says what the piece does that stands there."""


def scan(here: Here, sentence: Sentence) -> list[Claim]:
    """A claim for each thing named that cannot be placed; none when all can."""
    said = {w.norm for w in sentence.words}
    if said & _BARRED or ("not" in said and said & {"possible", "legal"}):
        return []  # a move that is named because it cannot be played
    reasons: list[tuple[str, Word, Word]] = []
    near = _Near(here, 3 if said & _REGRETS else 2)
    elsewhere = bool(said & _ELSEWHERE)
    norms = ["", "", *(w.norm for w in sentence.words)]
    for number, word in enumerate(sentence.words):
        if word.san is None or word.spoken:
            continue  # a move in words may be said loosely
        if norms[number] in _LINES and norms[number + 1] in {"with", "after", "of"}:
            continue  # "unlike the lines with Nc3": other lines, perhaps of no lesson
        reason = _misplaced(here, word, near, elsewhere)
        if reason is not None:
            reasons.append((reason, word, word))
    line = spelt(sentence.words)
    reasons.extend(_absent(here, sentence, line, near, elsewhere))
    if "move" in said:
        reasons.extend(miscounted(here, sentence))
    changed = _changed(here, sentence)
    if changed is not None:
        reasons.append((changed, sentence.words[0], sentence.words[-1]))
    claims: list[Claim] = []
    for reason, first, last in reasons[:1]:
        told = reason.startswith(CHANGED)
        belongs = None if told else _belongs(here, sentence, first, last)
        start, end = sentence.start + first.start, sentence.start + last.end
        claims.append(
            Claim(
                kind=KIND.id, place=here.place, spot=here.spot, words=sentence.text[first.start : last.end], start=start, end=end,
                params={"reason": reason, "belongs": belongs}, sentence=here.sentence,
            )
        )  # fmt: skip
    return claims


def _since(words: list[str]) -> list[str]:
    """The words since another clause has begun that the ones before it do not govern."""
    cut = max((i + 1 for i, w in enumerate(words) if w in {";", "whereas"}), default=0)
    return words[cut:]


def _planned(before: list[str], after: list[str]) -> bool:
    """Whether the words around a piece on its square make it a plan or a memory ("at once" is neither)."""
    before, after = (
        [
            w
            for w, last in zip(words, ["", *words], strict=False)
            if (last, w) not in {("at", "once"), ("or", "later")}
        ]
        for words in (before, after)
    )
    return any(w in _FUTURE for w in before) or any(
        w in _PAST or w in {"if", "once"} for w in after
    )


class _Near:
    """The positions from which a move named here may be meant: here, before the last move, after the moves named before, and after a
    pass from any of them. They are found when asked for; most sentences name nothing.
    """

    def __init__(self, here: Here, most: int = 2) -> None:
        self._here, self._most = here, most
        self._boards: dict[int, Board] | None = None
        self._played: list[tuple[Board, str]] = []

    @property
    def boards(self) -> list[Board]:
        if self._boards is None:
            self._boards = {}
            for board in self._here.spot.boards[-self._most :][::-1]:
                self._put(board)
        for before, uci in self._played:
            self._put(before.play(uci))
        self._played = []
        return list(self._boards.values())

    def _put(self, board: Board) -> None:
        """Adds a position and the one after a pass."""
        assert self._boards is not None
        for found in (board, board.passed()):
            if found is not None:
                self._boards.setdefault(found.key, found)

    def with_earlier(self, number: int, turn: str) -> list[Board]:
        """The same, with an earlier position of this road: "instead of this 3... Nf6 4. d3"."""
        boards = {board.key: board for board in self.boards}
        for board in self._here.spot.boards:
            if (board.move_number, board.turn) == (number, turn):
                boards.setdefault(board.key, board)
        self._boards = boards
        return list(boards.values())

    def play(self, moves: list[tuple[Board, str]]) -> None:
        """Adds the positions after some moves."""
        self._played += moves


def _misplaced(here: Here, word: Word, near: _Near, elsewhere: bool) -> str | None:
    """Why a named move cannot be meant here, or None. The positions after it are near then."""
    move = word.move
    assert move is not None  # asked of moves only
    san, number = move["san"], int(move["number"]) if move["number"] else None
    dots = bool(move["dots"]) or (number is None and word.norm.startswith("..."))
    plain_square = number is None and not dots and re.fullmatch(r"[a-h][1-8]", san)
    played: list[tuple[Board, str]] = []
    right = False
    seen_number: set[str] = set()
    turn = "black" if dots else "white"
    boards = near.boards if number is None else near.with_earlier(number, turn)
    for board in boards:
        try:
            uci = board.parse_san(san)
        except AmbiguousMoveError:
            return None  # one of two can be played, and it is not said which
        except ValueError:
            continue
        played.append((board, uci))
        if number is not None and (board.move_number, board.turn) != (number, turn):
            seen_number.add(f"{board.move_number}{'.' if board.turn == 'white' else '...'}")
            continue
        right = right or not (dots and board.turn == "white")
    near.play(played)
    if right:
        return None
    clean = _clean(san)
    for place in _line(here.place):
        shown = place.san
        if shown is None or shown.rstrip("+#") != clean:
            continue
        here_number, white = _numbered(place)
        if number is None or (here_number == number and white != dots):
            if place.parent is not None and place.uci is not None:
                near.play([(place.parent.board, place.uci)])
            return None
        seen_number.add(f"{here_number}{'.' if white else '...'}")
    if plain_square:
        return None
    if elsewhere:
        for here_number, white in _index(here.lesson).get(clean, ()):
            if number is None or (here_number == number and white != dots):
                return None
    if number is not None and seen_number:
        return f"{word.norm} has the wrong move number or side: here it would be {sorted(seen_number)[0]}{clean}"
    return f"{word.norm} can be played neither here nor a move before, and is no move of this line"


@lru_cache(4)
def _index(lesson: Lesson) -> dict[str, list[tuple[int, bool]]]:
    """Every move of a lesson by its SAN: (number, whether White's)."""
    found: dict[str, list[tuple[int, bool]]] = {}
    for place in lesson.places:
        if place.san is not None:
            found.setdefault(_clean(place.san), []).append(_numbered(place))
    return found


def _clean(san: str) -> str:
    return san.rstrip("+#").replace("0-0-0", "O-O-O").replace("0-0", "O-O")


def _numbered(place: Place) -> tuple[int, bool]:
    match = re.match(r"(\d+)(\.\.\.)?", place.label)
    return (int(match[1]), match[2] is None) if match else (0, True)


def _line(place: Place) -> Iterator[Place]:
    """The moves on the way to a place and below it; those below are looked for only when those on the way are used up."""
    yield from place.path()
    yield from _ahead(place)


def _ahead(place: Place) -> list[Place]:
    """The moves below a place, on whatever road its position, or one below it, is reached."""
    found: list[Place] = []
    stack, seen = [place], set[int]()
    while stack and len(found) < BELOW:
        at = stack.pop()
        found.append(at)
        if at.key in seen:
            continue
        seen.add(at.key)
        twins = (twin for twin in at.lesson.positions[at.key] if twin != at)
        stack[:0] = [child for twin in twins for child in twin.children]
        stack.extend(at.children)  # its own line first
    return found[1:]


def _belongs(here: Here, sentence: Sentence, first: Word, last: Word) -> str | None:
    """Where else the lesson plays the move, or has the piece, that the words name: they may have been written there."""
    for place in here.lesson.places:
        if first.san is not None and not first.spoken:
            fits = place.san is not None and _clean(place.san) == _clean(first.san)
            says = "The lesson plays"
        else:
            words = [w.norm for w in sentence.words if first.start <= w.start <= last.start]
            fits = bool(Reference.read(" ".join(words)).squares(place.board, None))
            says = "In the lesson such a piece stands there after"
        if fits and place.uci is not None:
            line, _ = here.lesson.locate(place.span[0] if place.span else 0)
            before = place.parent
            after = f" after {before.label}" if before and before.uci and "plays" in says else ""
            return f"{says} {place.label}{after}, in line {line}: the words may belong there."
    return None


def _absent(
    here: Here, sentence: Sentence, line: str, near: _Near, elsewhere: bool
) -> list[tuple[str, Word, Word]]:
    """Pieces named with their square that stand there neither here nor on this line."""
    if not _SQUARE.search(line):
        return []
    offsets = [0]
    for word in sentence.words[:-1]:
        offsets.append(offsets[-1] + 1 + len(word.norm))
    found: list[tuple[str, Word, Word]] = []
    for match in (*_PLACED.finditer(line), *_MOVED.finditer(line)):
        text = match.group().strip()
        if match.re is _MOVED:
            piece = match["piece"] or match["thing"] or match["driven"]
            text = f"{piece.strip()} on {match['square'] or match['from'] or match['post']}"
        if text.startswith(("a ", "an ", "no ", "another ", "whole ", "entire ", "full ")):
            continue  # any such piece, not one that stands there
        reference = Reference.read(text)
        try:
            side = here.owner(reference)
        except Unread:
            side = None  # who is meant is unknown: the colour is not checked
        if any(reference.squares(b, side) for b in (*near.boards, *_fought_over(here, reference))):
            continue
        places = here.lesson.places if elsewhere else _ahead(here.place)
        if any(reference.squares(p.board, side) for p in places):
            continue
        first = max(
            i
            for i, o in enumerate(offsets)
            if o <= match.start() + (1 if line[match.start()] != " " else 0)
        )
        last = max(i for i, o in enumerate(offsets) if o < match.end())
        norms = [w.norm for w in sentence.words]
        if _planned(_since(norms[:first]), norms[last + 1 :]):
            continue
        if _retakes(here, reference):
            continue  # "the queen on f6": with which it might be taken back
        letter = here.board.piece_at(reference.square or "a1")
        stands = (
            f"; a {'white' if side_of(letter) == 'white' else 'black'} piece stands there"
            if letter
            else ""
        )
        reason = f"no such piece ({text}) stands there, here or in this line{stands}"
        found.append((reason, sentence.words[first], sentence.words[last]))
    return found


def _fought_over(here: Here, reference: Reference) -> tuple[Board, ...]:
    """The positions since the captures on a square began that led here: "the pawn on d4 was poisoned"."""
    boards, moves = here.spot.boards, here.spot.moves
    at = len(moves)
    while (
        at
        and moves[at - 1][2:4] == reference.square
        and boards[at - 1].piece_at(moves[at - 1][2:4])
    ):
        at -= 1
    return tuple(boards[at:])


def _retakes(here: Here, reference: Reference) -> bool:
    """Whether such a piece could take back on that square."""
    last = here.spot.moves[-1] if here.spot.moves else ""
    if not last or last[2:4] != reference.square:
        return False
    if "x" not in here.spot.earlier(1).board.san(last):
        return False
    board = here.board
    return any(
        uci[2:4] == last[2:4] and (board.piece_at(uci[:2]) or "").lower() == reference.letter
        for uci in board.legal_moves()
    )


def _changed(here: Here, sentence: Sentence) -> str | None:
    """Why the first sentence of a comment is to be read again: since it was written the move beside it has changed."""
    if not _earlier(here.lesson):
        return None
    for comment in here.place.comments:
        if not comment.start <= sentence.start < comment.end or comment.text.lstrip() == "":
            continue
        if comment.text[: sentence.start - comment.start].strip():
            return None  # only the first sentence of a comment
        roads = _earlier(here.lesson).get(comment.text)
        parent = comment.anchor.parent
        if roads is None or parent is None or comment.anchor.uci is None:
            return None
        if any(uci == comment.anchor.uci for _, uci, _ in roads):
            return None
        moves = [san for key, _, san in roads if key == parent.key]
        return f"{CHANGED} {moves[0]} when they were last saved" if moves else None
    return None


@lru_cache(4)
def _earlier(lesson: Lesson) -> dict[str, list[tuple[int, str, str]]]:
    """The comments of the version before, with the position and the move that they stood beside."""
    found: dict[str, list[tuple[int, str, str]]] = {}
    kept = versions(lesson)
    if not kept:
        return found
    try:
        before = Lesson.open(kept[-1].path)
    except LessonError:
        return found
    for comment in before.comments:
        anchor = comment.anchor
        if anchor.parent is not None and anchor.uci is not None:
            found.setdefault(comment.text, []).append(
                (anchor.parent.key, anchor.uci, anchor.san or "")
            )
    return found


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - a board fact asks no search
    reason = claim.params["reason"]
    if reason.startswith(CHANGED):
        return Judgement(
            Outcome.UNSETTLED, f"{reason[0].upper()}{reason[1:]}: read them again.", (), claim.spot
        )
    return Judgement(
        Outcome.FAILS,
        f"{reason[0].upper()}{reason[1:]}.",
        (),
        Spot(claim.spot.root_fen, claim.spot.moves, claim.spot.board),
        second=claim.params["belongs"],
    )


KIND = Kind(
    id="stale",
    title="Stale words",
    version=3,
    definition=(
        "The sentence names a move that is legal neither before nor after the move beside it, nor after a pass, nor next in the sentence's own sequence, nor played on this line or below, on whatever road the position is reached; "
        "or a wrong move number or side; or a piece with its square that stands there neither here nor on this line. Unsettled: since the words were saved the move beside them has changed. Where the lesson plays the move, or has the piece, elsewhere, a second finding says where."
    ),
    scan=scan,
    check=check,
)
