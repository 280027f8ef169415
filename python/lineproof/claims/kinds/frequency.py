"""Frequency: how often a move is played, counted in a collection of games."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Played
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS, members
from lineproof.claims.noun import Noun
from lineproof.claims.played import named_before
from lineproof.claims.shares import (
    ABOUT,
    BEGINNERS,
    HARDLY,
    LIKELY,
    MASTERS,
    MOST,
    NEARLY_ALWAYS,
    OFTEN,
    RANGES,
    between,
    counted,
    inside,
    meaning,
    share,
    wording,
)
from lineproof.claims.showing import numbered

MAIN = "main"
"""The most played move: a comparison with another, not a range."""
_NAMED = "named"
"""What a table says of words that mean the main move with "the", and a frequent one with "a"."""

_PLAY = "<play/choose/take/go for/reply/answer/prefer/pick/see/have/continue with/go>"
_NOT_HOW = "without=badly|well|wrongly|too_early|correctly|too_late"
"""How a move is played is another thing than how often."""
FRAMES = (
    "{played} <=> {commonest} [(in|among|at) {whose_games}]",
    "{commonest} <=> {move}",
    "{move} <=> {usual} [(in|among|at) {whose_games}]",
    "<be:play/see/choose/meet/try> {played} {often} [(in|among|at) {whose_games}] if modal=|almost",
    "<be:play/see/choose/meet/try> {played} +never [(in|among|at) {whose_games}] if negated modal=|almost ; never=yes",
    "<be:play/see/choose/meet/try> {played} in {games} if modal=|almost",
    "<be:play/see/choose/meet/try> {played} by {games}",
    "<be:play/see/choose/meet/try> {played} in {percent} of {crowd}",
    "<be:play> {played} by {everyone}",
    "{move} <occur/appear/happen/come up> {often} if modal=|almost",
    "{everyone} <play/choose> {played}",
    f"{{games}} {_PLAY} {{played}} if {_NOT_HOW}",
    f"{{percent}} {_PLAY} {{played}} of {{crowd}} if {_NOT_HOW}",
    f"{{percent}} {_PLAY} {{played}} if {_NOT_HOW}",
    f"{{side}} <play/choose/reply/answer/answer with/reply with> {{move}} {{often}} if modal=|almost {_NOT_HOW}",
    "{you} <meet> {move} {often} if modal=|almost|will",
    "{you} <meet> {move} if modal=will",
    "{you} <expect to meet> {move}",
)
_OFTEN: dict[str, str | int] = {
    **dict.fromkeys(("nearly always", "almost always", "always"), "nearly always"),
    **dict.fromkeys(("usually", "mostly", "generally", "normally", "more often than not", "by most"), "usually"),
    **dict.fromkeys(("often", "very often", "quite often", "frequently", "commonly", "a lot", "all the time", "again and again"), "often"),
    **dict.fromkeys(("most often", "most frequently"), MAIN),
    **dict.fromkeys(("occasionally", "now and then", "sometimes"), "sometimes"),
    **dict.fromkeys(("less often", "not often"), "not often"),
    **dict.fromkeys(("rarely", "seldom", "very rarely", "very seldom"), "rarely"),
    **dict.fromkeys(("hardly ever", "almost never", "scarcely ever"), "hardly ever"),
    **dict.fromkeys(("9 times out of 10", "nine times out of ten"), 90),
    "in every other game": 50,
}  # fmt: skip
_USUAL = {
    **dict.fromkeys(("common", "very common", "popular", "very popular", "usual", "fashionable", "rage", "fashion", "frequent"), "often"),
    "rule": "usually",
    **dict.fromkeys(("the most popular", "the most common"), MAIN),
    **dict.fromkeys(("rare", "very rare", "unusual", "uncommon", "rarity", "a rare guest", "unpopular", "a rare bird", "exception", "out of fashion"), "rarely"),
}  # fmt: skip
_COMMON = {
    **dict.fromkeys(("main", "most common", "most popular", "most frequent", "commonest", "most usual"), MAIN),
    **dict.fromkeys(("usual", "popular", "common", "customary", "fashionable", "favourite", "standard"), _NAMED),
    **dict.fromkeys(("rare", "rarest", "unusual", "uncommon", "unpopular"), "rarely"),
    **dict.fromkeys(("rarer", "less common"), "not often"),
}  # fmt: skip
_MOST: dict[str, str | int] = {
    **dict.fromkeys(("nearly all", "almost all"), "nearly always"),
    **dict.fromkeys(("most", "most of", "the majority of", "the great majority of"), "usually"),
    **dict.fromkeys(("many", "many of", "lots of", "plenty of"), "often"),
    "not many": "not often",
    **dict.fromkeys(("few", "very few", "only a few"), "rarely"),
    **dict.fromkeys(("hardly any", "almost no"), "hardly ever"),
    "9 out of 10": 90,
    "8 out of 10": 80,
    "half of": 50,
    "a third of": 33,
    "a quarter of": 25,
}
_SCOPES = {
    **dict.fromkeys(("master", "grandmaster", "strong player", "top"), "masters"),
    "beginner": "beginners",
}
_RATINGS = {"masters": MASTERS, "beginners": BEGINNERS}
_POINTERS = frozenset({"it", "this", "that"})
_EVERYONE = frozenset({"everyone", "everybody"})
_CROWD = frozenset(["player", "people", "amateur", "opponent", "pupil", "club player", "game", "level", "practice", *members("club level", NOUNS), *_SCOPES])  # fmt: skip


def _scope(noun: Noun) -> str | None:
    """Whose games are meant: "masters", "beginners", "" for anybody's; None for no games at all."""
    head = "club player" if noun.text.endswith(("club players", "club player")) else noun.head
    if head not in _CROWD:
        return None
    return next(
        (_SCOPES[word] for word in (head, *head.split(), *noun.adjectives) if word in _SCOPES), ""
    )


def _crowd(noun: Noun) -> tuple[str | int, str] | None:
    """How many of whose games: "most beginners", "9 out of 10 players"."""
    degree, scope = _MOST.get(noun.det), _scope(noun)
    return (degree, scope) if degree is not None and scope is not None else None


def _commonest(noun: Noun) -> str | None:
    """The degree of a noun such as "the most popular reply"."""
    if noun.head not in members("move", NOUNS) or noun.no:
        return None
    for first in range(len(noun.adjectives)):
        found = _COMMON.get(" ".join(noun.adjectives[first:]))
        if found == _NAMED and noun.det in {"a", "an", "one", "another"}:
            return "often"
        if found is not None:
            found = MAIN if found == _NAMED else found
            return found if noun.det == "the" or noun.whose or found == "rarely" else None
    return None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    named = here.agent(slots["played"]).move if "played" in slots else here.named(slots["move"])
    if named is None:
        raise Unread("it is not clear which move is meant")
    other = named_before(here) if slots.get("played") in _POINTERS else None
    if other is not None and here.named(other).uci != named.uci:
        raise Unread(f"it may be said of {other}")
    if "side" in slots and here.side(slots["side"]) != named.side:
        raise Unread(f"{slots['move']} is no move of that side")
    degree, scope = slots.get("games", ("likely", ""))
    if "never" in slots:
        degree = "hardly ever"
    elif "everyone" in slots:
        degree = "usually"
    degree = next((slots[k] for k in ("often", "usual", "commonest") if k in slots), degree)
    percent = slots.get("percent", degree if isinstance(degree, int) else None)
    if percent is not None and percent > 100:
        raise Unread("more than all is no share")
    return [
        here.claim(
            KIND.id,
            named.side,
            spot=named.before,
            move=named.uci,
            degree=None if percent is not None else degree,
            share=percent,
            scope=slots.get("whose_games") or slots.get("crowd") or scope or None,
        )
    ]


def check(claim: Claim, ask: Ask) -> Judgement:
    params = claim.params
    move = numbered(claim.spot, (params["move"],))
    found = ask.played(claim.spot, params["move"], _RATINGS.get(params["scope"]))
    if found is None:
        because = f"There is no collection of games here, so how often {move} is played cannot be counted."
        return Judgement(Outcome.UNSETTLED, because, (), claim.spot)
    if not found.games:
        return Judgement(
            Outcome.UNSETTLED, _not_reached(found), (), claim.spot, _numbers(found), too_few=True
        )
    said = _as_main if params["degree"] == MAIN else _as_share
    outcome, because = said(claim, found, move)
    open_ = outcome is Outcome.UNSETTLED
    if open_:
        because += " The interval reaches over a limit, so these games are too few to tell."
    return Judgement(
        outcome,
        because,
        (),
        claim.spot,
        _numbers(found),
        instead=wording(found, move, params["degree"]) if outcome is not Outcome.HOLDS else None,
        too_few=open_,
    )


def _as_share(claim: Claim, found: Played, move: str) -> tuple[Outcome, str]:
    degree, percent = claim.params["degree"], claim.params["share"]
    if percent is not None:
        low, high = percent - ABOUT, percent + ABOUT
        means = f"“{percent} of 100” is meant within {ABOUT}"
    else:
        low, high = RANGES[degree]
        means = f"“{degree.capitalize()}” means {meaning(degree)}"
    if claim.hedged:
        low, high = low - ABOUT, high + ABOUT
        means += f", and with a hedge {ABOUT} to either side"
    return inside(found.share, low, high), f"{counted(found, move)}. {means}."


def _as_main(claim: Claim, found: Played, move: str) -> tuple[Outcome, str]:
    """Whether no other move is played more often: by the games with this move or the most played other one."""
    limit = MOST - ABOUT * claim.hedged
    low, high = found.ahead
    if found.rival is None:
        beside = "No other move was played"
    else:
        beside = f"The most played other move, {numbered(claim.spot, (found.rival,))}, was played in {found.rival_times:,}"
    both = found.times + found.rival_times
    ahead = f"of these {both:,} games {move} has {share(found.times, both)} of 100 ({low:.1f} to {high:.1f}), and the main move has more than {limit}"
    outcome = Outcome.HOLDS if low > limit else Outcome.FAILS if high < limit else Outcome.UNSETTLED
    return outcome, f"{counted(found, move)}. {beside}; {ahead}."


def _not_reached(found: Played) -> str:
    if found.beyond:
        return f"The collection {found.collection} keeps the first 20 moves of each game, and this position comes later."
    return f"In no game{between(found)} of the collection {found.collection} was a move played in this position."


def _numbers(found: Played) -> Mapping[str, int | float | str]:
    low, high = found.share
    return {
        "collection": found.collection,
        "games": found.games,
        "played": found.times,
        "low": low,
        "high": high,
    }


KIND = Kind(
    id="frequency",
    title="Frequency",
    version=2,
    definition=(
        f"Of the audience's games of a collection in which any move was played in the position, the share with this one: nearly always {NEARLY_ALWAYS} of 100 and more, "
        f"usually, most {MOST} and more, often, popular {OFTEN} and more, what one will meet {LIKELY} and more, sometimes {HARDLY} up to {MOST}, rarely below {LIKELY}, "
        f"hardly ever, never below {HARDLY}; a number is meant within {ABOUT}, and a hedge widens a range by {ABOUT} to either side; the main move is played more often than any other. "
        "It holds when the whole 95 % interval (Wilson, 1927) is in the range, fails when all of it is outside, and else is unsettled; so it is without a collection, "
        f"where no game gets there, and beyond the first 20 moves. Masters are rated {MASTERS[0]} and more, beginners below {BEGINNERS[1]}."
    ),
    formula="share = 100 * games with the move / games in which any move was played; main: games with it / (games with it + games with the most played other move) > 1/2",
    frames=FRAMES,
    slots={"often": _OFTEN, "usual": _USUAL},
    tests={
        "commonest": _commonest,
        "everyone": lambda n: n.head if n.head in _EVERYONE else None,
        "games": _crowd,
        "crowd": _scope,
        "whose_games": _scope,
        "percent": lambda n: n.count if n.head in {"percent", "%"} else None,
        "you": lambda n: n.text if n.text == "you" else None,
    },
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
