"""Frequency: how often a move is played, counted in a collection of games."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement, Outcome, Played
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS, members
from lineproof.claims.noun import Noun
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

_REPLY = "(move|reply|answer|choice|continuation|reaction|response|capture|defence|try|option|retreat|recapture)"
_WHO = "(people|players|club players|amateurs|opponents|strong players|masters|grandmasters|beginners|of them|of your opponents|of our opponents|opponents at our level|of my pupils)"
_SCOPE = "[here|in practice|at our level|at this level|at club level|among club players|in club games|among amateurs|in master games|at the top|these days|nowadays|in this position|at master level|by far|of all]"

PHRASES = (
    f"{{move}} <be:play/see/choose/meet/try> [{{very}}] {{often}} {_SCOPE}",
    f"{{move}} <be> [{{very}}] {{often}} (played|seen|chosen|met|tried) {_SCOPE}",
    f"(this|that|it|{{described}}) <be> [{{very}}] {{often}} (played|seen|chosen|met|tried) {_SCOPE}",
    f"{{move}} <be> [{{very}}] {{usual}} {_SCOPE}",
    f"{{move}} <be> [{{very}}] {{the}} [{{very}}] {{common}} {_REPLY} {_SCOPE}",
    f"(this|that|it) <be> [{{very}}] {{the}} [{{very}}] {{common}} {_REPLY} {_SCOPE}",
    f"{{the}} {{common}} {_REPLY} {_SCOPE} <be> [{{very}}] {{move}}",
    f"{{most}} {_WHO} [here|in this position] (play|choose|take|go for|reply|answer|answer with|prefer|pick) {{move}} {_SCOPE}",
    f"{{most}} <play/choose> {{move}} {_SCOPE}",
    "you (will|'ll|can expect to) [{very}] [{often}] (meet|see|face|run into) {move} [{often}] [here|in practice]",
    f"{{n}} (percent|per cent|%) [of {_WHO}|of all {_WHO}|of the games|of all games] [here] (play|choose|see|have|continue with|go) {{move}}",
    "{move} <be:play> in {n} (percent|per cent|%) of [all|the] games",
    "{move} <be:play> in {part} [of] [all|the] games",
    f"{{move}} [{{very}}] {{often}} (occurs|appears|happens|comes up) {_SCOPE}",
    f"{{move}} (occurs|appears|happens|comes up) [{{very}}] {{often}} {_SCOPE}",
    "{side} [{very}] {often} (plays|play|chooses|choose|replies|reply|answers|answer) {move} [here|in practice|at our level]",
)  # fmt: skip
FRAMES = (
    "{played} <=> {commonest}",
    "{commonest} <=> {move}",
    "{side} <meet> {move} {often}",
    "{everyone} <play/choose> {played}",
    "<be:play> {played} by {everyone}",
)
_OFTEN: dict[str, str | int] = {
    **dict.fromkeys(("nearly always", "almost always", "always"), "nearly always"),
    **dict.fromkeys(("usually", "mostly", "generally", "normally", "more often than not", "by most"), "usually"),
    **dict.fromkeys(("often", "very often", "quite often", "frequently", "commonly", "a lot", "all the time", "again and again"), "often"),
    **dict.fromkeys(("most often", "most frequently"), MAIN),
    **dict.fromkeys(("occasionally", "now and then", "sometimes"), "sometimes"),
    **dict.fromkeys(("less often", "not often"), "not often"),
    **dict.fromkeys(("rarely", "seldom", "very rarely", "very seldom"), "rarely"),
    **dict.fromkeys(("hardly ever", "almost never", "never", "scarcely ever"), "hardly ever"),
    **dict.fromkeys(("9 times out of 10", "nine times out of ten"), 90),
    "in every other game": 50,
}  # fmt: skip
_USUAL = {
    **dict.fromkeys(("common", "very common", "popular", "very popular", "usual", "fashionable", "all the rage", "the fashion", "frequent"), "often"),
    "the rule": "usually",
    **dict.fromkeys(("the most popular", "the most common"), MAIN),
    **dict.fromkeys(("rare", "very rare", "unusual", "uncommon", "a rarity", "a rare guest", "unpopular", "a rare bird", "the exception", "out of fashion"), "rarely"),
}  # fmt: skip
_COMMON = {
    **dict.fromkeys(("main", "most common", "most popular", "most frequent", "commonest", "most usual"), MAIN),
    **dict.fromkeys(("usual", "popular", "common", "customary", "fashionable", "favourite", "standard"), _NAMED),
    **dict.fromkeys(("rare", "rarest", "unusual", "uncommon", "unpopular"), "rarely"),
    **dict.fromkeys(("rarer", "less common"), "not often"),
}  # fmt: skip
_MOST: dict[str, str | int] = {
    **dict.fromkeys(("nearly all", "almost all"), "nearly always"),
    **dict.fromkeys(("most", "the majority of", "the great majority of"), "usually"),
    **dict.fromkeys(("many", "lots of", "plenty of"), "often"),
    "not many": "not often",
    **dict.fromkeys(("few", "very few", "only a few"), "rarely"),
    **dict.fromkeys(("hardly any", "almost no"), "hardly ever"),
    "9 out of 10": 90,
    "8 out of 10": 80,
}  # fmt: skip
_PART: dict[str, str | int] = {
    **dict.fromkeys(("nearly all", "almost all"), "nearly always"),
    **dict.fromkeys(("most", "the majority", "the great majority"), "usually"),
    "half": 50,
    "a third": 33,
    "a quarter": 25,
}
_ONE_OF_SEVERAL = re.compile(
    rf"\b(?:an?|one|another)(?: \w+)? (?:{'|'.join(word for word, degree in _COMMON.items() if degree == _NAMED)})\b"
)
_SCOPES = (
    (re.compile(r"\b(?:grand)?masters?\b|\bat the top\b|\bstrong players\b"), "masters"),
    (re.compile(r"\bbeginners?\b"), "beginners"),
)
_RATINGS = {"masters": MASTERS, "beginners": BEGINNERS}


def _commonest(noun: Noun) -> str | None:
    """The degree of a noun such as "the most popular reply"."""
    if noun.head not in members("move", NOUNS) or noun.no:
        return None
    for first in range(len(noun.adjectives)):
        found = _COMMON.get(" ".join(noun.adjectives[first:]))
        if found is not None:
            return found if noun.det == "the" or noun.whose or found == "rarely" else None
    return None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "played" in slots:
        named = here.agent(slots["played"]).move
        if named is None:
            raise Unread("it is not clear which move is meant")
    elif "described" in slots:
        named = here.described(slots["described"])
    elif "move" in slots:
        named = here.named(slots["move"])
    else:
        named = here.last()
    if "side" in slots and here.side(slots["side"]) != named.side:
        raise Unread(f"{slots['move']} is no move of that side")
    if "everyone" in slots:
        slots["common"] = "usually"
    if "commonest" in slots:
        slots["common"] = slots["commonest"]
    degree = next(
        (slots[k] for k in ("often", "usual", "common", "most", "part") if k in slots), "likely"
    )
    if degree == _NAMED:
        degree = "often" if _ONE_OF_SEVERAL.search(here.said) else MAIN
    percent = int(slots["n"]) if "n" in slots else degree if isinstance(degree, int) else None
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
            scope=next((name for pattern, name in _SCOPES if pattern.search(here.said)), None),
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
    phrases=PHRASES,
    slots={"often": _OFTEN, "usual": _USUAL, "common": _COMMON, "most": _MOST, "part": _PART},
    vocabulary=frozenset(
        ["often", "frequently", "usually", "mostly", "always", "commonly", "rarely", "seldom", "ever", "never", "common", "popular", "usual", "fashionable", "rage", "fashion", "rare", "unusual", "uncommon", "rarity", "commonest", "most",
         "majority", "many", "few", "nearly", "almost", "percent", "cent", "%", "games", "meet", "see", "face", "standard", "favourite", "frequent", "unpopular", "occasionally", "sometimes", "lots", "plenty", "out", "exception", "rule", "rarest", "customary", "generally", "normally", "then", "again", "half", "third", "quarter"]
    ),
    frames=FRAMES,
    tests={"commonest": _commonest, "everyone": lambda n: n.head if n.head in {"everyone", "everybody"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
