"""Who stands better, and by how much."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.bands import Band, band, edge, limits, seen_from, spoken
from lineproof.claims.board import other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind

BETTER, UNCLEAR = "better", "unclear"

_DEGREES: dict[str, Any] = {
    **dict.fromkeys(("better", "for choice", "preferable"), BETTER),
    **dict.fromkeys(("slightly better", "a little better", "a bit better", "somewhat better", "a shade better", "slightly ahead", "a touch better", "a trifle better", "just slightly better"), Band.SLIGHT),
    **dict.fromkeys(("clearly better", "much better", "far better", "distinctly better", "a lot better", "substantially better", "well ahead", "obviously better", "considerably better", "clearly ahead", "very much better", "significantly better"), Band.CLEAR),
    **dict.fromkeys(("winning", "completely winning", "won", "totally winning", "simply winning", "easily winning", "close to winning", "just winning", "clearly winning", "already winning", "technically winning"), Band.WINNING),
    **dict.fromkeys(("worse", "worse off now"), "worse"),
    **dict.fromkeys(("slightly worse", "a little worse", "a bit worse", "somewhat worse", "a shade worse"), Band.SLIGHTLY_WORSE),
    **dict.fromkeys(("clearly worse", "much worse", "far worse", "a lot worse", "in serious trouble", "in deep trouble", "in big trouble"), Band.CLEARLY_WORSE),
    **dict.fromkeys(("lost", "losing", "completely lost", "busted", "dead lost", "already lost", "simply lost", "totally lost", "hopelessly lost", "just lost"), Band.LOSING),
}  # fmt: skip
_NOUNS: dict[str, Any] = {
    **dict.fromkeys(("the better position", "the better game", "the better chances", "the better of it", "the upper hand", "the edge", "an advantage", "the advantage", "an edge", "a plus", "better chances", "a better position", "a better game", "the more pleasant position", "the more pleasant game"), BETTER),
    **dict.fromkeys(("a slight edge", "a small edge", "a slight advantage", "a small advantage", "a small plus", "a slight plus", "a little edge", "slightly the better game", "slightly the better position", "a modest advantage", "a minimal advantage", "a slight pull", "slightly better chances", "a shade the better of it"), Band.SLIGHT),
    **dict.fromkeys(("a clear advantage", "a clear plus", "a big advantage", "a large advantage", "a clear edge", "a great advantage", "a serious advantage", "a big edge", "a huge advantage", "a substantial advantage", "much the better game", "a pleasant advantage and more"), Band.CLEAR),
    **dict.fromkeys(("a winning position", "a decisive advantage", "a winning advantage", "a won position", "a won game", "a winning attack", "a winning game", "a decisive attack"), Band.WINNING),
    **dict.fromkeys(("the worse position", "the worse game", "the worse of it"), "worse"),
    **dict.fromkeys(("a lost position", "a lost game", "a losing position"), Band.LOSING),
}  # fmt: skip
_LEVELS: dict[str, Any] = {
    **dict.fromkeys(("level", "equal", "balanced", "even", "roughly level", "roughly equal", "about equal", "about level", "approximately equal", "dead level", "dead equal", "completely equal", "completely level", "more or less equal", "more or less level", "in balance", "near enough level", "as good as level", "fairly level", "entirely level", "perfectly level", "close to equal", "close to level", "still level", "objectively level", "objectively equal"), Band.LEVEL),
    **dict.fromkeys(("unclear", "very unclear", "not clear", "messy", "anybody's game", "anyone's game", "completely unclear"), UNCLEAR),
}  # fmt: skip

_HEDGES = {
    k: k
    for k in (
        "may be",
        "might be",
        "should be",
        "seems",
        "seem",
        "seems to be",
        "seem to be",
        "looks",
        "look",
        "appears to be",
        "must be",
        "ought to be",
    )
}
"""Softer than "is": the band is widened."""

_ROUGHLY = re.compile(
    r"\b(?:roughly|about|approximately|more or less|near enough|as good as|close to|fairly)\b"
)
"""Hedges before "level"."""

PHRASES = (
    "{side} {is} [{very}] {degree}",
    "{side} {is} [{very}] {degree} [,] (despite|in spite of) [{the}] [missing|extra|lost] (pawn|material)",
    "{side} (is|are|stands|stand) [{very}] {degree} (a|the) (pawn|piece|exchange) (up|down) (or not|or no)",
    "{side} {hedge} [{very}] {degree}",
    "(the position|the game|this|it|the chances) {hedge} [{very}] {level}",
    "(i|we) (make|call|judge|would call|consider) (it|this|the position|that) [{very}] {degree} for {side}",
    "(i|we) (make|call|judge|would call|consider) (it|this|the position|that) [{very}] {level}",
    "{noun} for {side}",
    "[{very}] {degree} for {side}",
    "{side} {is} not [yet|really|actually] [{very}] {degree} [yet]",
    "{side} ({has}|{gets}) [{very}] {noun}",
    "({has}|{gets}) [{very}] {noun}",
    "{is} [{very}] {degree}",
    "{side} {has} [{very}] {noun} [for|in] [{the}] [small] (pawn|endgame|ending|middlegame)",
    "{side} (stands|stand|does|do) [{very}] {degree}",
    "(this|that|it|the position|the game|the ending|the endgame) {is} [{very}] {degree} for {side}",
    "(this|that|it|which) (gives|leaves|promises|offers|secures) {side} [with] [{very}] {noun}",
    "(this|that|it|which) leaves {side} [{very}] {degree}",
    "(giving|leaving|with) {side} [with] [{very}] {noun}",
    "with [{very}] {noun} [for {side}]",
    "(there is|we reach|we have|the result is) {noun} for {side}",
    "(the position|the game|this|it|that|everything|the ending|the endgame|chances|the chances|things|matters) {is} [{very}] {level}",
    "(with|in|reaching|we have|we reach|leading to|which leads to|this leads to) (a|an) {level} (position|game|ending|endgame)",
    "(the chances|chances) {is} {level}",
    "{side} (has|have) (equalised|equalized|reached equality|full equality|complete equality|equality) [already|completely|comfortably]",
    "(the sides|both sides|the two sides) {is} {level}",
    "(neither side|nobody|no one) {is} better",
)  # fmt: skip

_GLYPHS: dict[int, tuple[str, Any]] = {
    10: ("white", Band.LEVEL), 11: ("white", Band.LEVEL), 12: ("white", Band.LEVEL), 13: ("white", UNCLEAR),
    14: ("white", Band.SLIGHT), 15: ("black", Band.SLIGHT), 16: ("white", Band.CLEAR), 17: ("black", Band.CLEAR),
    18: ("white", Band.WINNING), 19: ("black", Band.WINNING), 20: ("white", Band.WINNING), 21: ("black", Band.WINNING),
}  # fmt: skip
"""PGN standard (1994), NAG table of section 10."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "hedge" in slots:
        here = replace(here, hedged=True)
    if "level" in slots:
        if _ROUGHLY.search(here.said):
            here = replace(here, hedged=True)
        return [here.claim(KIND.id, "white", degree=slots["level"])]
    if "equalised" in here.said or "equalized" in here.said or "equality" in here.said:
        return [here.claim(KIND.id, here.side(slots.get("side")), degree=Band.LEVEL)]
    degree = slots.get("degree", slots.get("noun"))
    if degree is None:
        return [here.claim(KIND.id, "white", degree=Band.LEVEL)]  # "neither side is better"
    if "side" not in slots and (here.subject is None or here.after_unread):
        raise Unread("it is not clear who stands so")
    side = here.side(slots.get("side"))
    denied = here.denied
    if degree == "worse":
        side, degree = other(side), BETTER
    elif isinstance(degree, Band) and degree < 0:
        side, degree = other(side), Band(-degree)
    return [here.claim(KIND.id, side, negated=denied, degree=degree)]


def read_glyph(here: Here, nag: int, value: tuple[str, Any]) -> list[Claim]:
    side, degree = value
    return [here.claim(KIND.id, side, degree=degree, glyph=nag)]


def outcome(degree: Any, points: int, hedged: bool, denied: bool = False) -> tuple[Outcome, bool]:
    """What a score of the side spoken of says of the claimed degree; and whether it is one band off.

    denied: the side does not even reach the degree.
    """
    if denied:
        least = 53 if degree == BETTER else limits(degree)[0]
        return (Outcome.HOLDS if points < least else Outcome.FAILS), False
    slack = 5 if hedged else 0
    if degree == BETTER:
        # hedged: five points wider, but never the wrong side
        holds, one_off = points >= max(53 - slack, 50), 45 <= points < 53
    elif degree == UNCLEAR:
        holds, one_off = 30 - slack <= points <= 70 + slack, False
    else:
        lower, upper = limits(degree)
        wide = lower - slack <= points < upper + slack
        # a hedge never forgives a wrong result class; the wrong side is further off than it reaches
        same_class = (degree is Band.WINNING) == (points >= 85) and points >= 15
        holds = lower <= points < upper or (wide and same_class)
        one_off = abs(band(points) - degree) == 1
    if holds:
        return Outcome.HOLDS, False
    return (Outcome.UNSETTLED, True) if one_off else (Outcome.FAILS, False)


def check(claim: Claim, ask: Ask) -> Judgement:
    side = claim.side or "white"
    board = claim.spot.board
    line = ask.best(claim.spot)
    if line is None:
        points = 50
        if board.is_checkmate:
            points = 0 if board.turn == side else 100
        moves: tuple[str, ...] = ()
        ends = "the game is over here: " + ("checkmate" if board.is_checkmate else "a draw")
        found = f"{title(side)} scores {points} of 100; {ends}"
    else:
        points = seen_from(side, line.points)
        moves = line.moves[:SHOWN]
        found = spoken(side, points)
        if line.mate is not None:
            winner = "White" if line.mate > 0 else "Black"
            found = f"{winner} mates in {abs(line.mate)}"
    degree, hedged = claim.params["degree"], claim.hedged
    said, one_off = outcome(degree, points, hedged, claim.negated)
    because = f"Best play shows that {found}."
    if (
        said is Outcome.HOLDS
        and hedged
        and outcome(degree, points, False, claim.negated)[0] is not said
    ):
        because += " That is within the five points that a hedge allows."
    if one_off:
        because += " That is one band off the claim."
    return Judgement(
        said,
        because,
        moves,
        claim.spot,
        {"points": points, "side": side},
        edge(points, lambda p: outcome(degree, p, hedged, claim.negated)),
        None if said is Outcome.HOLDS else f"{found[0].upper()}{found[1:]}.",
        one_off,
    )


KIND = Kind(
    id="verdict",
    title="Verdict",
    version=1,
    definition=(
        "Expected score of a side after best play: level 45 to 55 of 100, slightly better 55 to 65, clearly better 65 to 85, winning 85 and more; "
        "'better' alone 53 and more; 'unclear' fails only outside 30 to 70. One band off is unsettled, two bands or the wrong side fails; a hedge widens a band by five points."
    ),
    phrases=PHRASES,
    slots={"degree": _DEGREES, "noun": _NOUNS, "level": _LEVELS, "hedge": _HEDGES},
    vocabulary=frozenset(
        [
            "better",
            "worse",
            "winning",
            "won",
            "lost",
            "losing",
            "busted",
            "level",
            "equal",
            "balanced",
            "even",
            "unclear",
            "messy",
            "clear",
            "advantage",
            "edge",
            "plus",
            "upper",
            "position",
            "game",
            "chances",
            "equalised",
            "equalized",
            "equality",
            "ahead",
            "trouble",
            "attack",
            "preferable",
            "choice",
        ]
    ),
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
)
