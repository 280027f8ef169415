"""Who stands better, and by how much."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.amounts import pawns
from lineproof.claims.bands import Band, band, edge, limits, seen_from, spoken
from lineproof.claims.board import material, other, title
from lineproof.claims.claim import SHOWN, Ask, Claim, Judgement, Outcome, Spot
from lineproof.claims.here import Here, Unread, but
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS, STANDINGS, members
from lineproof.claims.noun import Noun
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import played
from lineproof.claims.showing import comes_to, shortest

BETTER, UNCLEAR = "better", "unclear"

_LITTLE = frozenset(
    [
        "slightly",
        "a little",
        "a bit",
        "a little bit",
        "a tiny bit",
        "somewhat",
        "a shade",
        "a touch",
        "a trifle",
        "marginally",
        "a fraction",
        "minimally",
        "just slightly",
        "a tad",
        "a smidge",
        "a whisker",
        "a hair",
        "a notch",
        "very slightly",
        "only slightly",
        "only very slightly",
        "ever so slightly",
        "just a little",
        "only a little",
        "a wee bit",
        "slight",
    ]
)
_MUCH = frozenset(
    [
        "clearly",
        "much",
        "far",
        "distinctly",
        "a lot",
        "substantially",
        "obviously",
        "considerably",
        "very much",
        "significantly",
        "comfortably",
        "markedly",
        "definitely",
        "a good deal",
        "vastly",
        "way",
        "decidedly",
        "very clearly",
        "miles",
        "streets",
        "plainly",
        "visibly",
        "clear",
        "big",
        "large",
        "great",
        "serious",
        "huge",
        "substantial",
        "significant",
        "considerable",
        "strong",
        "marked",
        "obvious",
        "sizeable",
        "solid",
        "massive",
        "enormous",
    ]
)
_SMALL = _LITTLE | {
    "small",
    "little",
    "modest",
    "minimal",
    "tiny",
    "nagging",
    "marginal",
    "microscopic",
    "faint",
    "minor",
    "mini",
    "slender",
}


def _degrees() -> dict[str, Any]:
    found: dict[str, Any] = dict.fromkeys(STANDINGS["better"], BETTER)
    found |= dict.fromkeys(STANDINGS["worse"], "worse")
    for word in ("better", "ahead", "preferable", "for choice", "worse"):
        ill = word == "worse"
        found |= dict.fromkeys(
            (f"{a} {word}" for a in _LITTLE), Band.SLIGHTLY_WORSE if ill else Band.SLIGHT
        )
        found |= dict.fromkeys(
            (f"{a} {word}" for a in _MUCH | {"well"}), Band.CLEARLY_WORSE if ill else Band.CLEAR
        )
    found |= dict.fromkeys(STANDINGS["clearly better"], Band.CLEAR)
    found |= dict.fromkeys(STANDINGS["clearly worse"], Band.CLEARLY_WORSE)
    found |= dict.fromkeys(STANDINGS["winning"], Band.WINNING)
    return found | dict.fromkeys(STANDINGS["lost"], Band.LOSING)


_DEGREES = _degrees()
_EVEN = STANDINGS["level"]
_WON: dict[str, Any] = {w: d for w, d in _DEGREES.items() if d is Band.WINNING}
_LEVELS: dict[str, Any] = {
    **dict.fromkeys(_EVEN, (Band.LEVEL, False)),
    **dict.fromkeys((f"{r} {e}" for r in STANDINGS["roughly"] for e in _EVEN), (Band.LEVEL, True)),
    **dict.fromkeys(STANDINGS["unclear"], (UNCLEAR, False)),
}
_SIZES = (
    dict.fromkeys(_SMALL, Band.SLIGHT)
    | dict.fromkeys(_MUCH, Band.CLEAR)
    | dict.fromkeys(("decisive", "winning"), Band.WINNING)
)
_EDGES = frozenset(STANDINGS["advantage"]) | {"better"}
_GAMES = members("position", NOUNS) | {"chance", "prospect", "attack"}
_BOARD = members("position", NOUNS) | {
    "it",
    "this",
    "that",
    "chance",
    "thing",
    "matter",
    "everything",
    "fight",
    "struggle",
    "battle",
    "result",
    "outcome",
    "side",
    "balance",
}


def standing(noun: Noun) -> Any:
    """What a side has: "a slight edge" (slight), "the better game" (better), "a lost position" (losing)."""
    said = list(noun.adjectives)
    if noun.head in _EDGES:
        sizes = [_SIZES[a] for a in said if a in _SIZES]
        return sizes[-1] if sizes else BETTER
    if noun.head not in _GAMES:
        return None
    quality = next(
        (
            a
            for a in said
            if a
            in {
                "better",
                "superior",
                "preferable",
                "pleasant",
                "nicer",
                "worse",
                "inferior",
                "winning",
                "won",
                "lost",
                "losing",
                "decisive",
            }
        ),
        None,
    )
    if quality is None or (noun.head == "attack" and quality not in {"winning", "decisive"}):
        return None
    if quality in {"winning", "won", "decisive"}:
        return Band.WINNING
    if quality in {"lost", "losing"}:
        return Band.LOSING
    size = next((_SIZES[a] for a in said if a in _SIZES), None)
    if quality in {"worse", "inferior"}:
        return "worse" if size is None else Band(-size)
    return BETTER if size is None else size


def even_game(noun: Noun) -> Any:
    """ "A level position"."""
    games = noun.head in members("position", NOUNS) and not noun.no
    return next((_LEVELS[a] for a in noun.adjectives if a in _EVEN), None) if games else None


def _equal_chances(noun: Noun) -> str | None:
    """ "Equal chances", "chances for both sides" is less."""
    equal = not set(STANDINGS["level"]).isdisjoint(noun.adjectives)
    return noun.text if noun.head in {"chance", "prospect"} and equal and not noun.no else None


def _board(noun: Noun) -> str | None:
    return (
        noun.text
        if noun.head in _BOARD and not noun.no and not noun.whose and noun.type != "move"
        else None
    )


_FIXED: dict[str, Any] = {"won": Band.WINNING, "lost": Band.LOSING, "worse": "worse"}
"""What a frame says without a word of its own for it."""
_MAY = "; hedge=yes if modal=may|might|should|must"
FRAMES = (
    "{side} <=> {degree}",
    f"{{side}} <=> {{degree}} {_MAY}",
    "{side} <have> {standing}",
    "{camp} <=> {degree}",
    "{pointer} <=> {won} ; won=yes",
    "{board} <=> {level} [for {both}]",
    f"{{board}} <=> {{level}} [for {{both}}] {_MAY}",
    "{board} <=> {degree} for {side}",
    "{board} <=> {even_game}",
    "<~> {even_game}",
    "{cause} <lead to/give> {even_game}",
    "{author} <call/consider/judge/make/deem/prefer> {board} {level} if modal=|would",
    "{author} <call/consider/judge/make/deem> {board} {degree} for {side} if modal=|would",
    "{author} <prefer> {camp} if modal=|would",
    "<be:call/judge/consider> {board} {level} if modal=|may|can",
    "{author} <call/consider/judge/make/deem> {board} {standing} for {side} if modal=|would",
    "{author} <call/consider/judge/make/deem/rate> {board} {even_game} if modal=|would",
    "{moved} <have/maintain/preserve> {standing}",
    "{cause} <lead to> {standing} for {side}",
    "{cause} <give> {side} {standing}",
    "{cause} <give> {side} (with|in) {standing}",
    "{cause} <leave> {side} {degree}",
    "<give> {side} (with|in) {standing}",
    "<give> {side} {standing}",
    "<~> {standing} for {side}",
    "<~> {degree} for {side}",
    "{standing} <=> with {side}",
    "{edge} <=> {size}",
    "<be:call/judge> {edge} {size} if modal=|may|can",
    "{side} <equalise> ; equal=yes",
    "{cause} <equalise> ; equal=yes",
    "{side} <have/reach> equality ; equal=yes",
    "{nobody} <=> better ; nobody_better=yes",
    "{neither} <=> better ; nobody_better=yes",
    "{neither} <have/claim/boast/show/point_to> {standing} ; nobody_better=yes if modal=|can",
    "{side} <have/hope/count> {level_game} ; equal=yes",
    "{side} <have> {more} than {level_game} ; equal=yes if negated",
    "{side} <have> than {level_game} +no_more|nothing_more ; equal=yes",
    "{side} <solve> {problems} ; equal=yes",
    "{side} <hold/keep/maintain> {level_game} ; equal=yes",
    "{board} <=> in {level_game} ; even=yes",
    "{level_game} <=> {kept} ; even=yes",
    "<~> {level_game} ; even=yes",
    "<~> {nobody} (in|between) {it} ; even=yes",
    "<=> {level} if verbless lone",
    "<=> {even_game} if verbless",
    "{author} <call/rate/assess/judge/regard/see/evaluate> {board} as {level} if modal=|would",
    "{author} <call/rate/assess/judge/regard/see/evaluate> {board} as {degree} for {side} if modal=|would",
    "<be:assess/rate/evaluate/regard/judge/see/describe> {board} as {level} if modal=|may|can|must|should",
    "{author} <call/consider/judge/make/deem> {board} {degree} if modal=|would|can",
    "{side} <have> {equal_chances} ; even=yes",
    "<~> {equal_chances} [for {side}] ; even=yes",
    "{side} <win> [game] +easily|comfortably|by_force|outright|simply|quickly|trivially ; won=yes",
    "{side} <win> [game] ; won=yes if lone active",
    "{board} <=> (win|victory) for {side} ; won=yes",
    "{board} <=> (win|victory) ; won=yes if lone",
    "<=> (win|victory) for {side} ; won=yes if verbless",
    "{side} <resign> ; lost=yes if modal=can|should|may|might|must|could",
    "{decided} <=> +over for {side} ; lost=yes",
    "{side} <struggle/suffer> ; worse=yes if lone",
    "{side} <fight/struggle> for {life} ; worse=yes",
    "{side} <hang> by thread ; worse=yes",
    "<be:prefer> {side} if modal=can|must|should|may",
    "<be:prefer> {camp} if modal=can|must|should|may",
    "{standing} <belong_to> {side}",
    "{standing} <lie/rest> with {side}",
    "{standing} <=> {side}",
    "{side} <come_out/emerge/end_up/finish> +on_top",
    "{side} <have> {standing} much",
    "<=> {standing} (for|to) {side} if verbless",
)
_GLYPHS: dict[int, tuple[str, Any]] = {
    10: ("white", Band.LEVEL), 11: ("white", Band.LEVEL), 12: ("white", Band.LEVEL), 13: ("white", UNCLEAR),
    14: ("white", Band.SLIGHT), 15: ("black", Band.SLIGHT), 16: ("white", Band.CLEAR), 17: ("black", Band.CLEAR),
    18: ("white", Band.WINNING), 19: ("black", Band.WINNING), 20: ("white", Band.WINNING), 21: ("black", Band.WINNING),
}  # fmt: skip
"""PGN standard (1994), NAG table of section 10."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    equal = "equal" in slots
    if verb is not None and verb.done and not equal:
        raise Unread("it is said of what was, not of what is")
    if verb is not None and verb.modal not in {"", "will", "would"}:
        raise Unread("it is not said of the position itself")
    if re.search(r"\b(?:on|in) material\b", here.said):
        raise Unread("it is said of the material")
    denied = bool(verb is not None and verb.negated)
    if "cause" in slots and MOVE.fullmatch(slots["cause"]):
        here = here.at(played(here, slots["cause"]).after)
    if "moved" in slots:
        move = played(here, slots["moved"])
        here, slots["side"] = here.at(move.after), move.side
    if "hedge" in slots or "seems" in slots:
        here = but(here, hedged=True)
    level = slots.get("level", slots.get("even_game"))
    if level is not None:
        here = but(here, hedged=here.hedged or level[1])
        return [here.claim(KIND.id, "white", negated=denied, degree=level[0], either=True)]
    if equal:
        side = here.side(slots["side"]) if "side" in slots else here.mover
        return [here.claim(KIND.id, side, negated=denied, degree=Band.LEVEL)]
    if "even" in slots:
        return [here.claim(KIND.id, "white", negated=denied, degree=Band.LEVEL, either=True)]
    if "nobody_better" in slots:
        return [here.claim(KIND.id, "white", degree=Band.LEVEL)]
    if "pointer" in slots and not here.neutral:
        slots["side"] = "we"  # "we are a piece ahead, that's winning"
    degree = next((slots[s] for s in ("degree", "standing", "size") if s in slots), BETTER)
    owner = slots.get("side", slots.get("camp", slots.get("edge")))
    if owner is None and here.subject is None:
        raise Unread("it is not clear who stands so")
    degree = next((d for word, d in _FIXED.items() if word in slots), degree)
    well = degree == BETTER or (isinstance(degree, Band) and degree > 0)
    side = _owner(here, owner) if well else here.side(owner)
    if degree == "worse":
        side, degree = other(side), BETTER
    elif isinstance(degree, Band) and degree < 0:
        side, degree = other(side), Band(-degree)
    return [here.claim(KIND.id, side, negated=denied, degree=degree)]


def _owner(here: Here, text: str | None) -> str:
    """Whose verdict it is; "he" is the side that the clause before speaks of by its name."""
    named = here.third if here.neutral and here.third == here.subject else None
    if named is not None and text in {"he", "she", "they", "his", "their"}:
        return named
    return here.side(text)


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
    slots={"degree": _DEGREES, "won": _WON, "level": _LEVELS, "size": _SIZES},
    tests={
        "standing": standing,
        "even_game": even_game,
        "board": _board,
        "camp": lambda n: n.whose if n.head in _GAMES and n.whose else None,
        "edge": lambda n: n.whose if n.head in _EDGES and n.whose else None,
        "both": lambda n: n.text if n.type == "side" and "both" in n.text else None,
        "neither": lambda n: (
            n.text if n.text in {"neither side", "neither player", "nobody"} else None
        ),
        "author": lambda n: n.text if n.type == "side" and n.text in {"i", "we"} else None,
        "cause": lambda n: n.text if n.type != "side" else None,
        "pointer": lambda n: n.text if n.text in {"that", "this"} else None,
        "moved": lambda n: n.text if n.type == "move" and not n.plural else None,
        "level_game": lambda n: n.text if n.head in STANDINGS["equality"] else None,
        "equal_chances": _equal_chances,
        "more": lambda n: n.text if n.head in {"nothing", "anything", "more"} else None,
        "problems": lambda n: (
            n.text if n.head in {"problem", "difficulty", "opening problem"} else None
        ),
        "kept": lambda n: n.text if n.head in {"kept", "preserved"} else None,
        "it": lambda n: n.text if n.type in {"pronoun", "side"} else None,
        "decided": lambda n: (
            n.text if n.head in {*STANDINGS["game"], "it", "this", "that"} else None
        ),
        "life": lambda n: n.text if n.head in {"life", "survival", "draw", "equality"} else None,
    },
    frames=FRAMES,
    gives_way=frozenset(
        [
            "losing-move",
            "by-force",
            "mate-in",
            "better-is",
            "move-mark",
            "bishop-pair",
            "compensation",
            "development-lead",
            "space",
            "material-count",
            "majority",
        ]
    ),
    read=read,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
)
