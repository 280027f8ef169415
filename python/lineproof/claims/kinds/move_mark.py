"""Move marks: what a move costs."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import Mark as Earned
from lineproof.claims.bands import edge, edge_of_two, mark
from lineproof.claims.board import NAMES, title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, spelled, taught, told, weigh
from lineproof.claims.frame import SLOTS
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import PLAYED, contrasted, played

_GLYPHS = {1: "!", 2: "?", 3: "!!", 4: "??", 5: "!?", 6: "?!"}
"""PGN standard (1994), NAG table of section 10."""

_WORDS: dict[str, Any] = {
    **dict.fromkeys(("a mistake", "an error", "a bad move", "bad", "wrong", "a serious mistake", "a real mistake", "a bad mistake", "the wrong move", "simply bad", "a clear mistake", "simply a mistake", "just a mistake", "already a mistake", "the decisive mistake", "a well known mistake", "a natural mistake", "a typical mistake", "a poor move", "poor", "a weak move", "a positional mistake", "a big mistake", "a grave mistake", "a grave error", "a serious error", "a faulty move", "faulty", "a bad idea", "mistaken", "an outright mistake", "a common mistake", "a tactical mistake", "a clear error", "a real error", "no good", "too greedy", "a false step", "a poor choice", "the wrong choice", "the wrong idea", "the wrong way"), "?"),
    **dict.fromkeys(("a blunder", "a terrible blunder", "a terrible mistake", "a horrible mistake", "a gross blunder", "a bad blunder", "a serious blunder", "a horrible blunder", "a dreadful blunder", "a catastrophe", "a disaster", "a simple blunder", "a straightforward blunder", "a huge mistake", "a very poor move", "a very bad move"), "??"),
    **dict.fromkeys(("dubious", "inaccurate", "an inaccuracy", "imprecise", "a dubious move", "questionable", "a small mistake", "slightly inaccurate", "doubtful", "a doubtful move", "suspect", "suspicious", "a questionable move", "a slight inaccuracy", "a small inaccuracy", "a slip", "a minor slip", "a slight mistake", "careless", "of doubtful value", "shaky", "inexact", "a little dubious", "a bit dubious", "slightly dubious"), "?!"),
    **dict.fromkeys(("a good move", "good", "correct", "the right move", "best", "the best move", "strong", "a strong move", "the correct move", "fine", "the right answer", "the best reply", "the right reply", "the best answer", "very strong", "very good", "a very strong move", "a very good move", "excellent", "an excellent move", "the correct reply", "the strongest move", "the strong reply", "the strong move", "the strong answer", "the strongest reply", "the right continuation", "the right reaction", "strongest", "the move", "sound", "perfectly good", "perfectly sound", "a perfectly good move", "the move to play", "the best choice", "the right choice", "the best continuation", "the most accurate move", "most accurate", "accurate", "the most precise", "spot on", "superb", "a fine move", "a superb move", "a good idea", "the right idea", "the right plan", "just right", "exactly right", "well played", "a good choice", "the best there is", "the strongest there is", "clearly best", "by far the best", "the most exact", "the best defence", "the right defence", "the right way", "the correct way", "a sound move", "a clever move", "quite right", "right"), "!"),
    **dict.fromkeys(("a brilliant move", "brilliant", "a beautiful move"), "!!"),
}  # fmt: skip

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
    "{agent} <be> [{very}] {mark} [here|now] [for {side}]",
    "(here|now) {agent} <be> [{very}] {mark}",
    "{agent} <look/seem> [{very}] {mark} [here|now] [for {side}]",
    "{agent} <be:consider/reckon> {mark}",
    "[the] (best|strongest|right|correct) (move|reply|answer|continuation|choice|defence|way) [for {side}] [here|now] <be> [{very}] {best}",
    "[the|{whose}] (best|strongest) <be> [{very}] {best}",
    "(the|{whose}) [{sort}] {fault} <be> {best}",
    "nothing (beats|is better than) {agent} [here|now]",
    "there is nothing better than {agent} [here|now]",
    "(you|we|{side}) can not do better than {agent}",
    "{side} <have> nothing better [here|now] than {agent}",
    "{side} <make> [{very}] {slip} with {best}",
    "{side} <make> [{very}] {slip} [here|now]",
    "{side} <blunder/err> [with {best}]",
    "(a|an|the|another) {praise} (move|reply|answer|choice|idea|{man} (move|lift|manoeuvre|sortie|jump|check|retreat)) [,] {best}",
    "(i|we) [{very}] recommend {agent}",
    "{agent} <be> [{very}] what i recommend",
)


FRAMES = (
    "{agent} <=> {mark}",
    "{agent} <be> {mark}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    named = played(here, slots.get("agent", slots.get("best")))
    if "side" in slots and here.side(slots["side"]) != named.side:
        raise Unread("the move is not that side's")
    verb = slots.get("verb")
    if _LOOKS.search(here.said) and (
        slots.get("mark") in {"!", "!!"}
        or slots["agent"] in {"this", "that", "it", "which"}
        or contrasted(here)
    ):
        raise Unread("what looks so need not be so")
    if re.search(r"\bnever\b", here.said):
        raise Unread("it is said of what is so in general")
    if verb is not None and verb.modal in {"can", "must"}:
        raise Unread("it is guessed, not said")
    denied = here.denied or (verb is not None and bool(verb.negated))
    if _NOTHING.search(here.said):
        denied = False
    written = slots.get("mark") or slots.get("slip") or slots.get("fault") or _verb(here.said)
    return [
        here.claim(
            KIND.id, named.side, spot=named.before, negated=denied, move=named.uci, mark=written
        )
    ]


_NOTHING = re.compile(r"\bbetter (?:here |now )?than\b|\bnothing beats\b")
"""Words in which "not better" and "nothing" say that a move is the best."""


_LOOKS = re.compile(r"\b(?:look|seem)")


def _verb(said: str) -> str:
    """The mark of a clause whose verb judges: "White blunders"."""
    if re.search(r"\bblunder", said):
        return "??"
    return "?" if re.search(r"\berr(?:s|ed|ing)?\b", said) else "!"


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


def denied(written: str, best: int, played: int) -> bool:
    """Whether the points of best and played agree with the denial of a mark: "no mistake", "not the best move"."""
    earned = mark(best, played)
    if _CLAIMED[written] is Earned.GOOD:
        return earned is not Earned.GOOD
    return earned < _CLAIMED[written]


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move, written = claim.spot, claim.params["move"], claim.params["mark"]
    side = spot.board.turn
    san = spot.board.san(move)
    weighed = weigh(ask, spot, move)
    best, played_points = weighed.best, weighed.played
    liked = ask.shallow(spot) if written == "!!" else None
    shallow = liked is not None and liked.moves[0] == move
    if claim.negated:
        return _denied(claim, best, played_points, weighed.better, weighed.best_line)
    if best < LOST:
        because = f"{title(side)} is lost whatever he plays ({best} of 100), so what {san} costs is not counted."
        return Judgement(
            Outcome.UNSETTLED,
            because,
            weighed.line,
            spot,
            {"points": played_points},
            edge(best, lambda b: b < LOST),
        )
    said, one_off = outcome(written, best, played_points, shallow)
    earned = mark(best, played_points)
    because = told(weighed)
    if written == "!!" and one_off and shallow:
        because += " A shallow search finds it at once."
    elif one_off:
        because += " That is one mark off."
    near = edge_of_two(best, played_points, lambda b, p: outcome(written, b, p, shallow)[0])
    return Judgement(
        said, because, weighed.line, spot, weighed.numbers, near,
        None if said is Outcome.HOLDS else f"For {title(side)} {san} is {_WORDING[earned]}.", one_off,
        marks=(Mark("move", (move[:2], move[2:4]), side),), second=taught(weighed, spot),
    )  # fmt: skip


def _denied(claim: Claim, best: int, played: int, better: str, line: tuple[str, ...]) -> Judgement:
    """ "Not the best move", "no mistake": whether the cost says otherwise."""
    written, san = claim.params["mark"], claim.spot.board.san(claim.params["move"])
    good = _CLAIMED[written] is Earned.GOOD
    cost = best - played
    because = f"{san} costs {spelled(cost)} against {better}." if cost else f"{san} costs nothing."
    instead = f"{san} is {'a good move' if good else 'as bad as that'}: it costs {spelled(cost)}."
    near = edge_of_two(best, played, lambda b, p: denied(written, b, min(b, p)))
    said = Outcome.HOLDS if denied(written, best, played) else Outcome.FAILS
    return Judgement(
        said,
        because,
        line,
        claim.spot,
        {"cost": cost},
        float(near),
        None if said is Outcome.HOLDS else instead,
    )


KIND = Kind(
    id="move-mark",
    title="Move mark",
    version=2,
    definition=(
        "Cost of a move: best less played in points, each searched alone at the same nodes. ! at most 5; ?! 5 to 12; ? 12 to 30, or a result class lost at a cost above 5; "
        "?? 30 and more, or win or hold turned to loss at 15 or more; !? fails only from 15; !! as !, and not the first move that a shallow search likes. "
        "A safe move (cost at most 5, or best above 90 and still 85) costs nothing; with the best below 15 nothing is counted. One mark off is unsettled."
    ),
    formula=f"cost = best - played; good: safe move; ?!: cost < 12; ?: 12 <= cost < 30, or a result class lost; ??: cost >= 30, or turned to loss at cost >= 15; one mark off: unsettled; best < {LOST}: not counted",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "mark": _WORDS,
        "slip": {
            k: v
            for k, v in _WORDS.items()
            if v in {"?", "??", "?!"} and k.startswith(("a ", "an "))
        },
        "fault": {"mistake": "?", "error": "?", "blunder": "??", "inaccuracy": "?!"},
        "sort": {k: k for k in ("first", "real", "big", "serious", "bad", "main")},
        "praise": {
            k: k
            for k in (
                "strong",
                "good",
                "fine",
                "excellent",
                "very strong",
                "superb",
                "powerful",
                "brilliant",
                "beautiful",
                "very good",
                "correct",
                "clever",
            )
        },
        "man": {k: k for k in NAMES.values()},
    },
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
            "sound",
            "doubtful",
            "suspect",
            "suspicious",
            "careless",
            "shaky",
            "inexact",
            "slip",
            "weak",
            "poor",
            "faulty",
            "mistaken",
            "greedy",
            "step",
            "idea",
            "plan",
            "choice",
            "way",
            "accurate",
            "precise",
            "spot",
            "superb",
            "well",
            "catastrophe",
            "disaster",
            "err",
            "errs",
            "erred",
            "blunders",
            "blundered",
            "nothing",
            "better",
            "recommend",
            "powerful",
            "clever",
            "questionable",
            "exact",
            "value",
            "recommended",
            "defence",
        ]
    ),
    frames=FRAMES,
    gives_way=frozenset(
        {"losing-move", "not-recommended", "better-is", "as-before", "unlike-before"}
    ),
    tests={"agent": SLOTS["played"]},
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
)
