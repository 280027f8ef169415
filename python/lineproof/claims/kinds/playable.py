"""Playable moves: nothing is wrong with them."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import Mark as Earned
from lineproof.claims.bands import edge_of_two, mark
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, taught, told, weigh
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, members
from lineproof.claims.noun import Noun
from lineproof.claims.played import played

NOT_ON = 10
"""Points from which a move that "cannot be played" costs too much."""

_NOUNS = frozenset(
    {"move", "alternative", "option", "possibility", "try", "choice", "reply", "answer"}
)
_PRAISE = members("playable", JUDGEMENTS) | {"worthy"}


def option(noun: Noun) -> str | None:
    """ "Another option", "a reasonable alternative"; "a move" alone says nothing."""
    general = noun.head in {"move", "reply", "answer", "choice"}
    praised = not _PRAISE.isdisjoint(noun.adjectives)
    one_of = noun.det in {"a", "an", "another", "1 of", "no"} and noun.count is None
    return noun.text if noun.head in _NOUNS and one_of and (praised or not general) else None


_LATELY = "now|at_last|finally|already|only|at_this_moment|right_now|yet|any_more|any_longer|not_yet|no_longer"
"""With these it is said that the move works now, which is another kind."""
FRAMES = (
    f"{{deed}} <=> {{playable}} [for {{side}}] if without={_LATELY}",
    "{deed} <=> {option} [for {side}]",
    "{option} <=> {deed}",
    "{side} <have> {deed} as {option}",
    f"{{side}} <play> {{choice}} if modal=can|may|could without={_LATELY} active",
    f"<be:play> {{deed}} if modal=can|may without=in|before|after|{_LATELY}",
    "{deed} <come into consideration>",
    "{deed} <deserve> attention|consideration|try|look",
    "<~> {nobody} (wrong|amiss) with {deed} ; sound=yes",
    "{nobody} <=> (wrong|amiss) with {deed} ; sound=yes",
    f"{{choice}} <work> if without=too|again|once_more|as_well|either|after|{_LATELY}",
    "<be:call/consider/judge> {deed} {playable} if modal=|must|may|can|would",
    "{nobody} <speak/say> against {deed} ; sound=yes",
    "<~> {nobody} against {deed} ; sound=yes",
    "{deed} <=> unplayable [for {side}] ; not=yes",
    "{side} <recapture/capture> (with|by) {takers} if modal=may|can|could",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    if "takers" in slots:
        return _recaptures(here, slots["takers"], here.side(slots["side"]))
    move = played(here, slots.get("deed", slots.get("choice")))
    if "side" in slots and slots["side"] != "you" and here.side(slots["side"]) != move.side:
        raise Unread("the move is not that side's")
    verb = slots.get("verb")
    negated = verb is not None and verb.negated and "sound" not in slots
    negated = negated != ("not" in slots)
    return [here.claim(KIND.id, move.side, spot=move.before, negated=negated, move=move.uci)]


def _recaptures(here: Here, takers: str, side: str) -> list[Claim]:
    """ "May recapture with queen or pawn": each of the two.

    :raises Unread: when one of them cannot take back.
    """
    if here.board.turn != side or not here.spot.moves:
        raise Unread("it is not that side's move")
    found = []
    for taker in takers.split(" and "):
        move = played(here, f"recapturing with {taker}")
        found.append(here.claim(KIND.id, side, spot=move.before, move=move.uci))
    return found


def outcome(best: int, points: int, negated: bool) -> Outcome:
    """What best and played say. A move in a lost position is not counted."""
    if best < LOST:
        return Outcome.UNSETTLED
    sound = mark(best, points) <= Earned.DUBIOUS
    if not negated:
        return Outcome.HOLDS if sound else Outcome.FAILS
    return Outcome.HOLDS if not sound or best - points >= NOT_ON else Outcome.FAILS


def check(claim: Claim, ask: Ask) -> Judgement:
    move = claim.params["move"]
    cost = weigh(ask, claim.spot, move)
    said = outcome(cost.best, cost.played, claim.negated)
    because = told(cost)
    if cost.best < LOST:
        because = f"{title(cost.side)} is lost whatever he plays ({cost.best} of 100), so what {cost.san} costs is not counted."
    instead = None
    if said is Outcome.FAILS:
        instead = f"{cost.san} can be played." if claim.negated else f"{cost.better} is better than {cost.san}."  # fmt: skip
    near = edge_of_two(cost.best, cost.played, lambda b, p: outcome(b, p, claim.negated))
    return Judgement(
        said, because, cost.line, claim.spot, cost.numbers, near, instead,
        marks=(Mark("move", (move[:2], move[2:4]), cost.side),), second=taught(cost, claim.spot),
    )  # fmt: skip


KIND = Kind(
    id="playable",
    title="Playable",
    version=1,
    definition=(
        "A playable move is no mistake: it costs less than 12 points and loses no result class, or costs at most 5 (the marks ! and ?!). 'Cannot be played' speaks of a bad move, not of an illegal one: "
        "it costs 10 points or more. With the best move below 15 nothing is counted."
    ),
    formula=f"cost = best - played; playable: earns no worse than ?!; cannot be played: cost >= {NOT_ON}; best < {LOST}: not counted",
    slots={"playable": dict.fromkeys(members("playable", JUDGEMENTS), True)},
    tests={
        "takers": lambda n: n.text if len(n.parts) > 1 and n.type == "piece" else None,
        "option": option,
        "choice": lambda n: deed(n) if n.type != "pronoun" else None,
    },
    frames=FRAMES,
    gives_way=frozenset({"as-before", "unlike-before", "nothing-to-fear"}),
    read=read,
    check=check,
)
