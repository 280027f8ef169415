"""Frequency: how often a move is played. Read and counted; there is no collection of games to ask."""

from __future__ import annotations

from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement, Outcome
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import NOUNS, members
from lineproof.claims.noun import Noun

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
    "you (will|'ll|can expect to) [{very}] [often|mostly|usually|nearly always|rarely|seldom|hardly ever] (meet|see|face|run into) {move} [most often|often|a lot|all the time|again and again|in every other game|rarely] [here|in practice]",
    f"{{n}} (percent|per cent|%) [of {_WHO}|of all {_WHO}|of the games|of all games] [here] (play|choose|see|have|continue with|go) {{move}}",
    "{move} <be:play> in {n} (percent|per cent|%) of [all|the] games",
    "{move} <be:play> in (half|a third|a quarter|most|nearly all|almost all|the majority|the great majority) of [all|the] games",
    f"{{move}} [{{very}}] [often|usually|mostly] (scores|occurs|appears|happens|comes up) [{{very}}] [{{often}}] {_SCOPE}",
    "{side} [{very}] {often} (plays|play|chooses|choose|replies|reply|answers|answer) {move} [here|in practice|at our level]",
)  # fmt: skip
FRAMES = (
    "{played} <=> {commonest}",
    "{commonest} <=> {move}",
    "{side} <meet> {move} {often}",
    "{everyone} <play/choose> {played}",
    "<be:play> {played} by {everyone}",
)
_OFTEN = {
    **dict.fromkeys(("often", "very often", "most often", "quite often", "frequently", "most frequently", "usually", "mostly", "nearly always", "almost always", "always", "commonly", "a lot", "all the time", "generally", "normally", "more often than not", "by most", "9 times out of 10", "nine times out of ten"), "most"),
    **dict.fromkeys(("rarely", "seldom", "very rarely", "very seldom", "hardly ever", "almost never", "never", "scarcely ever", "less often", "not often", "occasionally", "now and then", "sometimes"), "rare"),
}  # fmt: skip
_USUAL = {
    **dict.fromkeys(("common", "very common", "popular", "very popular", "the most popular", "usual", "fashionable", "all the rage", "the most common", "the fashion", "frequent", "the rule"), "most"),
    **dict.fromkeys(("rare", "very rare", "unusual", "uncommon", "a rarity", "a rare guest", "unpopular", "a rare bird", "the exception", "out of fashion"), "rare"),
}  # fmt: skip
_COMMON = {
    **dict.fromkeys(("main", "most common", "most popular", "most frequent", "usual", "commonest", "most usual", "popular", "common", "customary", "fashionable", "favourite", "standard"), "most"),
    **dict.fromkeys(("rare", "rarest", "unusual", "uncommon", "rarer", "less common", "unpopular"), "rare"),
}  # fmt: skip
_MOST = {
    **dict.fromkeys(("most", "nearly all", "almost all", "many", "the majority of", "9 out of 10", "lots of", "plenty of", "8 out of 10", "the great majority of"), "most"),
    **dict.fromkeys(("few", "very few", "only a few", "hardly any", "not many", "almost no"), "rare"),
}  # fmt: skip


def _commonest(noun: Noun) -> str | None:
    """ "Most" or "rare" of a noun such as "the most popular reply"."""
    if noun.head not in members("move", NOUNS) or noun.no:
        return None
    for first in range(len(noun.adjectives)):
        found = _COMMON.get(" ".join(noun.adjectives[first:]))
        if found is not None:
            return found if noun.det == "the" or noun.whose or found == "rare" else None
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
        slots["common"] = "most"
    if "commonest" in slots:
        slots["common"] = slots["commonest"]
    degree = next((slots[k] for k in ("often", "usual", "common", "most") if k in slots), None)
    share = int(slots["n"]) if "n" in slots else None
    if share is not None and share > 100:
        raise Unread("more than all is no share")
    return [
        here.claim(
            KIND.id, named.side, spot=named.before, move=named.uci, degree=degree, share=share
        )
    ]


def check(claim: Claim, ask: Ask) -> Judgement:  # noqa: ARG001 - no search tells how often a move is played
    san = claim.spot.board.san(claim.params["move"])
    because = (
        f"There is no collection of games here, so how often {san} is played cannot be counted."
    )
    return Judgement(Outcome.UNSETTLED, because, (), claim.spot)


KIND = Kind(
    id="frequency",
    title="Frequency",
    version=1,
    definition="How often the move is played at the position in a collection of games; without a collection it is always unsettled.",
    phrases=PHRASES,
    slots={"often": _OFTEN, "usual": _USUAL, "common": _COMMON, "most": _MOST},
    vocabulary=frozenset(
        ["often", "frequently", "usually", "mostly", "always", "commonly", "rarely", "seldom", "ever", "never", "common", "popular", "usual", "fashionable", "rage", "fashion", "rare", "unusual", "uncommon", "rarity", "commonest", "most",
         "majority", "many", "few", "nearly", "almost", "percent", "cent", "%", "games", "meet", "see", "face", "standard", "favourite", "frequent", "unpopular", "occasionally", "sometimes", "lots", "plenty", "out", "exception", "rule", "rarest", "customary", "generally", "normally", "then"]
    ),
    frames=FRAMES,
    tests={"commonest": _commonest, "everyone": lambda n: n.head if n.head in {"everyone", "everybody"} else None},
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
