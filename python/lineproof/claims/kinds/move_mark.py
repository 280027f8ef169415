"""Move marks: what a move costs."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import Mark as Earned
from lineproof.claims.bands import edge, edge_of_two, mark, seen_from, spoken
from lineproof.claims.board import title
from lineproof.claims.claim import SHOWN, Ask, Claim, GameOver, Judgement, Mark, Outcome
from lineproof.claims.here import Here
from lineproof.claims.kind import Kind

_GLYPHS = {1: "!", 2: "?", 3: "!!", 4: "??", 5: "!?", 6: "?!"}
"""PGN standard (1994), NAG table of section 10."""

_WORDS: dict[str, Any] = {
    **dict.fromkeys(("a mistake", "an error", "a bad move", "bad", "wrong", "a serious mistake", "a real mistake", "a bad mistake", "the wrong move", "simply bad", "a clear mistake", "simply a mistake", "just a mistake", "already a mistake", "the decisive mistake", "a losing move", "a well known mistake", "a natural mistake", "a typical mistake"), "?"),
    **dict.fromkeys(("a blunder", "a terrible blunder", "a terrible mistake", "a horrible mistake", "a gross blunder", "a bad blunder"), "??"),
    **dict.fromkeys(("dubious", "inaccurate", "an inaccuracy", "imprecise", "a dubious move", "questionable", "a small mistake", "slightly inaccurate"), "?!"),
    **dict.fromkeys(("a good move", "good", "correct", "the right move", "best", "the best move", "strong", "a strong move", "the correct move", "fine", "the right answer", "the best reply", "the right reply", "the best answer", "very strong", "very good", "a very strong move", "a very good move", "excellent", "an excellent move", "the correct reply", "the strongest move", "the strong reply", "the strong move", "the strong answer", "the strongest reply", "the right continuation", "the right reaction", "strongest", "the move", "sound", "perfectly good", "perfectly sound", "perfectly playable", "a perfectly good move", "playable", "the move to play", "quite right", "right"), "!"),
    **dict.fromkeys(("a brilliant move", "brilliant", "a beautiful move"), "!!"),
}  # fmt: skip

LOST = 15
"""Points of the best move below which what a move costs is not counted."""

_WORDING = {
    Earned.GOOD: "a good move",
    Earned.DUBIOUS: "a questionable move",
    Earned.MISTAKE: "a poor move",
    Earned.BLUNDER: "a very poor move",
}
"""As the NAG table of the PGN standard words them (section 10)."""

_CLAIMED = {
    "!": Earned.GOOD,
    "!!": Earned.GOOD,
    "?!": Earned.DUBIOUS,
    "?": Earned.MISTAKE,
    "??": Earned.BLUNDER,
}

PHRASES = (
    "{move} ({is}|was) [{very}] {mark} [here|now]",
    "{described} ({is}|was) [{very}] {mark} [here|now] [for {side}]",
    "(this|that|it) ({is}|was) [{very}] {mark} [for {side}]",
    "({move}|{described}|this|that|it) {is} not [{very}] {mark}",
    "(here|now) {move} {is} [{very}] {mark}",
    "[the] (best|strongest|right|correct) (move|reply|answer|continuation) [for {side}] [here|now] {is} [{very}] {best}",
    "(the|{whose}) (best|strongest) {is} [{very}] {best}",
    "(best|strongest) {is} {best}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    written = slots.get("mark", "!")
    text = slots.get("move", slots.get("best"))
    if "described" in slots:
        named = here.described(slots["described"])
    else:
        named = here.named(text) if text is not None else here.last()
    denied = here.denied
    return [
        here.claim(
            KIND.id, named.side, spot=named.before, negated=denied, move=named.uci, mark=written
        )
    ]


def read_glyph(here: Here, nag: int, value: str) -> list[Claim]:
    named = here.last()
    return [
        here.claim(KIND.id, named.side, spot=named.before, move=named.uci, mark=value, glyph=nag)
    ]


def outcome(written: str, best: int, played: int, shallow: bool) -> tuple[Outcome, bool]:
    """What the points of best and played say of a mark, and whether it is one mark off.

    shallow: whether the move is the first that a shallow search likes.
    """
    earned = mark(best, played)
    if written == "!?":
        return (
            (Outcome.FAILS, False)
            if best - played >= 15 and earned is not Earned.GOOD
            else (Outcome.HOLDS, False)
        )
    claimed = _CLAIMED[written]
    off = abs(claimed - earned)
    if written == "!!" and off == 0 and shallow:
        return Outcome.UNSETTLED, True
    if off == 0:
        return Outcome.HOLDS, False
    return (Outcome.UNSETTLED, True) if off == 1 else (Outcome.FAILS, False)


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move, written = claim.spot, claim.params["move"], claim.params["mark"]
    side = spot.board.turn
    san = spot.board.san(move)
    first = ask.best(spot)
    if first is None:
        raise GameOver("the game is drawn before the move")
    played_line = ask.move(spot, move)
    best_line = played_line if first.moves[0] == move else ask.move(spot, first.moves[0])
    played = seen_from(side, played_line.points)
    best = max(played, seen_from(side, best_line.points))
    liked = ask.shallow(spot) if written == "!!" else None
    shallow = liked is not None and liked.moves[0] == move
    if claim.negated:
        return _denied(claim, best, played, spot.board.san(best_line.moves[0]), best_line.moves)
    if best < LOST:
        because = f"{title(side)} is lost whatever he plays ({best} of 100), so what {san} costs is not counted."
        return Judgement(
            Outcome.UNSETTLED,
            because,
            played_line.moves[:SHOWN],
            spot,
            {"points": played},
            edge(best, lambda b: b < LOST),
        )
    said, one_off = outcome(written, best, played, shallow)
    cost = best - played
    earned = mark(best, played)
    better = spot.board.san(best_line.moves[0])
    numbers: dict[str, int | float | str] = {
        "cost": cost,
        "points": played,
        "best": better,
        "best points": best,
    }
    if earned is Earned.GOOD:
        because = f"{san} costs {_points(cost)}: after it {spoken(side, played)}."
    else:
        because = f"{san} costs {_points(cost)} against {better}: {spoken(side, played)}, after {better} {spoken(side, best)}."
    if written == "!!" and one_off and shallow:
        because += " A shallow search finds it at once."
    elif one_off:
        because += " That is one mark off."
    near = edge_of_two(best, played, lambda b, p: outcome(written, b, p, shallow)[0])
    return Judgement(
        said, because, played_line.moves[:SHOWN], spot, numbers, near,
        None if said is Outcome.HOLDS else f"For {title(side)} {san} is {_WORDING[earned]}.", one_off,
        marks=(Mark("move", (move[:2], move[2:4]), side),),
    )  # fmt: skip


def _denied(claim: Claim, best: int, played: int, better: str, line: tuple[str, ...]) -> Judgement:
    """ "Not the best move", "no mistake": whether the cost says otherwise."""
    written, san = claim.params["mark"], claim.spot.board.san(claim.params["move"])
    good = _CLAIMED[written] is Earned.GOOD

    def holds(cost: int, top: int) -> bool:
        earned = mark(top, top - cost)
        return earned is not Earned.GOOD if good else earned < _CLAIMED[written]

    cost = best - played
    because = f"{san} costs {_points(cost)} against {better}." if cost else f"{san} costs nothing."
    instead = f"{san} is {'a good move' if good else 'as bad as that'}: it costs {_points(cost)}."
    near = edge_of_two(best, played, lambda b, p: holds(max(b - p, 0), b))
    said = Outcome.HOLDS if holds(cost, best) else Outcome.FAILS
    return Judgement(
        said,
        because,
        line[:SHOWN],
        claim.spot,
        {"cost": cost},
        float(near),
        None if said is Outcome.HOLDS else instead,
    )


def _points(cost: int) -> str:
    return "nothing" if cost == 0 else f"{cost} point{'s' if cost != 1 else ''}"


KIND = Kind(
    id="move-mark",
    title="Move mark",
    version=2,
    definition=(
        "Cost of a move: best less played in points, each searched alone at the same nodes. ! at most 5; ?! 5 to 12; ? 12 to 30, or a result class lost at a cost above 5; "
        "?? 30 and more, or win or hold turned to loss at 15 or more; !? fails only from 15; !! as !, and not the first move that a shallow search likes. "
        "A safe move (cost at most 5, or best above 90 and still 85) costs nothing; with the best below 15 nothing is counted. One mark off is unsettled."
    ),
    phrases=PHRASES,
    slots={"mark": _WORDS},
    vocabulary=frozenset(
        [
            "mistake",
            "error",
            "bad",
            "wrong",
            "blunder",
            "dubious",
            "inaccurate",
            "inaccuracy",
            "imprecise",
            "questionable",
            "good",
            "correct",
            "right",
            "best",
            "strong",
            "fine",
            "excellent",
            "strongest",
            "brilliant",
            "beautiful",
            "losing",
            "move",
            "playable",
            "sound",
        ]
    ),
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
)
