"""Who stands better, and by how much."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.amounts import pawns
from lineproof.claims.bands import Band, band, edge, limits, seen_from, spoken
from lineproof.claims.board import material, other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.played import PLAYED, played
from lineproof.claims.showing import comes_to, shortest

BETTER, UNCLEAR = "better", "unclear"

_DEGREES: dict[str, Any] = {
    **dict.fromkeys(("better", "for choice", "preferable"), BETTER),
    **dict.fromkeys(("slightly better", "a little better", "a bit better", "somewhat better", "a shade better", "slightly ahead", "a touch better", "a trifle better", "just slightly better", "marginally better", "a tiny bit better", "slightly preferable", "slightly for choice", "a fraction better", "a little bit better", "minimally better"), Band.SLIGHT),
    **dict.fromkeys(("clearly better", "much better", "far better", "distinctly better", "a lot better", "substantially better", "well ahead", "obviously better", "considerably better", "clearly ahead", "very much better", "significantly better", "comfortably better", "markedly better", "definitely better", "a good deal better", "vastly better", "way better", "decidedly better", "very clearly better"), Band.CLEAR),
    **dict.fromkeys(("winning", "completely winning", "won", "totally winning", "simply winning", "easily winning", "close to winning", "just winning", "clearly winning", "already winning", "technically winning", "strategically winning", "absolutely winning", "objectively winning", "trivially winning", "strategically won", "winning easily", "winning by a mile"), Band.WINNING),
    **dict.fromkeys(("worse", "worse off now"), "worse"),
    **dict.fromkeys(("slightly worse", "a little worse", "a bit worse", "somewhat worse", "a shade worse"), Band.SLIGHTLY_WORSE),
    **dict.fromkeys(("clearly worse", "much worse", "far worse", "a lot worse", "in serious trouble", "in deep trouble", "in big trouble"), Band.CLEARLY_WORSE),
    **dict.fromkeys(("lost", "losing", "completely lost", "busted", "dead lost", "already lost", "simply lost", "totally lost", "hopelessly lost", "just lost", "lost already", "beyond saving", "completely busted", "strategically lost", "technically lost", "objectively lost", "completely losing", "simply losing"), Band.LOSING),
}  # fmt: skip
_NOUNS: dict[str, Any] = {
    **dict.fromkeys(("the better position", "the better game", "the better chances", "the better of it", "the upper hand", "the edge", "an advantage", "the advantage", "an edge", "a plus", "better chances", "a better position", "a better game", "the more pleasant position", "the more pleasant game", "the better prospects", "some advantage", "the superior position", "the superior game", "better prospects", "an obvious plus"), BETTER),
    **dict.fromkeys(("a slight edge", "a small edge", "a slight advantage", "a small advantage", "a small plus", "a slight plus", "a little edge", "slightly the better game", "slightly the better position", "a modest advantage", "a minimal advantage", "a slight pull", "slightly better chances", "a shade the better of it", "a tiny edge", "a tiny advantage", "a nagging edge", "a slightly better position", "a slightly better game", "a slightly better ending", "a slightly better endgame", "a little plus", "a minimal edge", "a marginal advantage", "a microscopic advantage", "a pull", "a faint edge"), Band.SLIGHT),
    **dict.fromkeys(("a clear advantage", "a clear plus", "a big advantage", "a large advantage", "a clear edge", "a great advantage", "a serious advantage", "a big edge", "a huge advantage", "a substantial advantage", "much the better game", "a pleasant advantage and more", "a significant advantage", "a considerable advantage", "a substantial plus", "a strong advantage", "a clearly better position", "a much better position", "a large plus", "a big plus", "a marked advantage", "a considerable plus"), Band.CLEAR),
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
    "{side} {is} [{denial}] [{very}] {degree} [yet|any more|any longer]",
    "{side} (stands|stand|does|do) [{denial}] [{very}] {degree}",
    "{side} does not stand [{very}] {degree}",
    "{side} {is} [{very}] {degree} [,] (despite|in spite of) [{the}] [missing|extra|lost] (pawn|material)",
    "{side} (is|are|stands|stand) [{very}] {degree} (a|the) (pawn|piece|exchange) (up|down) (or not|or no)",
    "{side} {hedge} [{very}] {degree}",
    "(the position|the game|this|it|the chances) {hedge} [{very}] {level}",
    "(i|we) (make|call|judge|would call|consider) (it|this|the position|that) [{very}] {degree} for {side}",
    "(i|we) (make|call|judge|would call|consider) (it|this|the position|that) [{very}] {level}",
    "(i|we) (prefer|would prefer) {whose} (position|game|chances)",
    "{noun} for {side}",
    "[{very}] {degree} for {side}",
    "{side} <have/get/hold/enjoy/keep/retain/obtain/reach/claim/secure/end up with/come out with> [{very}] {noun} [here|now]",
    "({has}|{gets}) [{very}] {noun}",
    "{is} [{very}] {degree}",
    "{side} <have/keep/enjoy> [{very}] {noun} [for|in] [{the}] [small] (pawn|endgame|ending|middlegame)",
    "(this|that|it|the position|the game|the ending|the endgame) {is} [{denial}] [{very}] {degree} for {side}",
    "{agent} <give/leave/promise/offer/secure/bring> {side} [with] [{very}] {noun}",
    "{agent} <leave> {side} [{very}] {degree}",
    "{agent} <lead to/result in/end in> {noun} for {side}",
    "(giving|leaving|with) {side} [with] [{very}] {noun}",
    "with [{very}] {noun} [for {side}]",
    "(there is|we reach|we have|the result is|the outcome is) {noun} for {side}",
    "(the position|the game|this|it|that|everything|the ending|the endgame|chances|the chances|things|matters|the fight) {is} [{denial}] [{very}] {level} [yet|any more]",
    "(with|in|reaching|we have|we reach|leading to|which leads to|this leads to) (a|an) {level} (position|game|ending|endgame)",
    "{agent} <lead to/result in/end in/give> (a|an) {level} (position|game|ending|endgame)",
    "(it|this|that) {is} (a|an) {level} (position|game|ending|endgame)",
    "(the chances|chances) {is} {level}",
    "{side} (has|have) (equalised|equalized|reached equality|full equality|complete equality|equality) [already|completely|comfortably|fully]",
    "{agent} <equalise/equalize> [at once|completely|comfortably|fully|easily]",
    "{side} <equalise/equalize> [at once|completely|comfortably|fully|easily]",
    "(the sides|both sides|the two sides) {is} [{denial}] [{very}] {level}",
    "(neither side|nobody|no one) {is} better",
    "{whose} (position|game) {is} [{denial}] [{very}] {won}",
    "(the advantage|the edge|the upper hand|the initiative and the advantage) {is} with {side}",
)  # fmt: skip

_GLYPHS: dict[int, tuple[str, Any]] = {
    10: ("white", Band.LEVEL), 11: ("white", Band.LEVEL), 12: ("white", Band.LEVEL), 13: ("white", UNCLEAR),
    14: ("white", Band.SLIGHT), 15: ("black", Band.SLIGHT), 16: ("white", Band.CLEAR), 17: ("black", Band.CLEAR),
    18: ("white", Band.WINNING), 19: ("black", Band.WINNING), 20: ("white", Band.WINNING), 21: ("black", Band.WINNING),
}  # fmt: skip
"""PGN standard (1994), NAG table of section 10."""


FRAMES = (
    "{side} <=> {degree}",
    "{side} <have> {noun}",
    "position <=> {level}",
    "(position|game|it) <=> {level}",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if verb is not None and verb.done and not _EQUAL.search(here.said):
        raise Unread("it is said of what was, not of what is")
    if verb is not None and (verb.modal not in {"", "will", "would"}):
        raise Unread("it is not said of the position itself")
    if "agent" in slots:
        here = here.at(played(here, slots["agent"]).after)
    if "whose" in slots:
        return [_of_whose(here, slots)]
    if "hedge" in slots:
        here = replace(here, hedged=True)
    if "level" in slots:
        if _ROUGHLY.search(here.said):
            here = replace(here, hedged=True)
        return [
            here.claim(
                KIND.id, "white", negated=_no(here, verb), degree=slots["level"], either=True
            )
        ]
    if _EQUAL.search(here.said):
        side = here.side(slots["side"]) if "side" in slots else here.mover
        return [here.claim(KIND.id, side, negated=_no(here, verb), degree=Band.LEVEL)]
    degree = slots.get("degree", slots.get("noun"))
    if degree is None:
        return [here.claim(KIND.id, "white", degree=Band.LEVEL)]  # "neither side is better"
    if "side" not in slots and (here.subject is None or here.after_unread):
        raise Unread("it is not clear who stands so")
    side = here.side(slots.get("side"))
    denied = _no(here, verb)
    if degree == "worse":
        side, degree = other(side), BETTER
    elif isinstance(degree, Band) and degree < 0:
        side, degree = other(side), Band(-degree)
    return [here.claim(KIND.id, side, negated=denied, degree=degree)]


_EQUAL = re.compile(r"\bequali[sz]|\bequality\b")


def _no(here: Here, verb: Any) -> bool:
    """Whether the clause denies what it says."""
    longer = re.search(r"\bno longer\b|\bnever\b|\bby no means\b", here.said) is not None
    return here.denied or longer or (verb is not None and bool(verb.negated))


def _of_whose(here: Here, slots: dict[str, Any]) -> Claim:
    """ "Black's position is winning", "I prefer White's game"."""
    side, degree = here.side(slots["whose"]), slots.get("won", BETTER)
    if degree == "worse":
        side, degree = other(side), BETTER
    elif isinstance(degree, Band) and degree < 0:
        side, degree = other(side), Band(-degree)
    return here.claim(KIND.id, side, negated=_no(here, slots.get("verb")), degree=degree)


def read_glyph(here: Here, nag: int, value: tuple[str, Any]) -> list[Claim]:
    side, degree = value
    return [here.claim(KIND.id, side, degree=degree, glyph=nag)]


def outcome(
    degree: Any, points: int, hedged: bool, denied: bool = False, either: bool = False
) -> tuple[Outcome, bool]:
    """What a score of the side spoken of says of the claimed degree; and whether it is one band off.

    denied: the side does not even reach the degree. either: the denial speaks of both sides ("not level").
    """
    if denied and either:
        lower, upper = (30, 71) if degree == UNCLEAR else limits(degree)
        return (Outcome.FAILS if lower <= points < upper else Outcome.HOLDS), False
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
        if abs(band(points)) >= Band.CLEAR:
            moves = shortest(claim.spot, line.moves, most=SHOWN)
        found = spoken(side, points)
        if line.mate is not None:
            winner = "White" if line.mate > 0 else "Black"
            found = f"{winner} mates in {abs(line.mate)}"
    degree, hedged = claim.params["degree"], claim.hedged
    either = claim.negated and bool(claim.params.get("either"))
    said, one_off = outcome(degree, points, hedged, claim.negated, either)
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
        edge(points, lambda p: outcome(degree, p, hedged, claim.negated, either)),
        None if said is Outcome.HOLDS else f"{found[0].upper()}{found[1:]}.",
        one_off,
        _reason(claim.spot, moves, points, side),
    )


def _reason(spot: Spot, moves: tuple[str, ...], points: int, side: str) -> str | None:
    """Why a side is clearly better or winning, where material says it: what stands on the board, or what falls in the line."""
    if abs(band(points)) < Band.CLEAR:
        return None
    better = side if points > 50 else other(side)
    ahead = material(spot.board, better)
    stands = f"On the board {title(better)} is {pawns(ahead)} ahead." if ahead >= 1 else ""
    what = comes_to(spot, moves, better)
    falling = f"In best play {what}." if what and what != "it ends in mate" else ""
    return " ".join(part for part in (stands, falling) if part) or None


KIND = Kind(
    id="verdict",
    title="Verdict",
    version=2,
    definition=(
        "Expected score of a side after best play: level 45 to 55 of 100, slightly better 55 to 65, clearly better 65 to 85, winning 85 and more; "
        "'better' alone 53 and more; 'unclear' fails only outside 30 to 70. One band off is unsettled, two bands or the wrong side fails; a hedge widens a band by five points."
    ),
    formula="points = expected score after best play; holds: in the band said; unsettled: one band off; fails: two bands, or the wrong side",
    phrases=PHRASES,
    patterns={"agent": PLAYED},
    slots={
        "degree": _DEGREES,
        "noun": _NOUNS,
        "level": _LEVELS,
        "hedge": _HEDGES,
        "won": _DEGREES,
        "denial": {
            k: k
            for k in ("not", "not really", "not actually", "not yet", "no longer", "by no means")
        },
    },
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
    frames=FRAMES,
    gives_way=frozenset(
        {
            "bishop-pair",
            "compensation",
            "development-lead",
            "space",
            "material-count",
            "majority",
            "better-is",
        }
    ),
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
)
