"""As before: a move that the lesson has shown elsewhere."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.comparing import BEFORE, MOVES, ONCE_MORE, line_of
from lineproof.claims.cost import MISTAKE, weigh
from lineproof.claims.elsewhere import just_played_or, labels, same_move
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.noun import Noun

_AGAIN = dict.fromkeys((*ONCE_MORE, "again", "a second time"), True)
_PLAY = "<play/choose/go/answer with/reply with/react with/continue with>"

FRAMES = (
    "<~> {move} {once_more} if verbless",
    "<~> {move} as_in {line} if verbless",
    f"{{side}} {_PLAY} {{move}} {{again}}",
    f"{{side}} {_PLAY} {{move}} as_in {{line}}",
    "{move} <=> {same} [{again}] [as_in {line}]",
    "{pointer} <=> {same} as_in {line}",
    "{pointer} <=> {same} {before}",
    "<~> {same} as_in {line} if verbless",
    "<~> {same} {again} if verbless",
    "{move} <work> {again} ; works=yes",
    "{move} <work> as_in {line} ; works=yes",
    "{move} <=> {fine} {again} ; works=yes",
    "{move} <=> {fine} as_in {line} ; works=yes",
    "{we} <see> {move} {seen} if perfect",
    "{we} <see> {move} in {line} if perfect",
    "{we} <know/remember> {move} from {line}",
)
_LOOSE = frozenset(["idea", "plan", "motif", "trick", "recipe", "resource", "shot", "blow", "reaction"])  # fmt: skip
"""Nouns that may speak of the same idea in another move."""


def _same(noun: Noun) -> str | None:
    return noun.head if "same" in noun.adjectives and noun.head in MOVES else None


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    named = just_played_or(here, slots.get("move"))
    if "side" in slots and here.side(slots["side"]) != named.side:
        raise Unread(f"{slots['move']} is no move of that side")
    verb = slots.get("verb")
    if verb is not None and (verb.negated or verb.modal):
        raise Unread("said of what is not played, or denied")
    line = slots.get("line")
    found = same_move(here, named, line)
    if not found and slots.get("same") in _LOOSE:
        raise Unread("the same idea may be another move")
    later = [p for p in found if p.index >= here.place.index] if line is None else []
    found = [p for p in found if p not in later]
    return [
        here.claim(
            KIND.id, named.side, spot=named.before, move=named.uci, works="works" in slots, compared=line or "before",
            count=len(found), at=labels(found) if found else "", later=labels(later) if later else "",
        )
    ]  # fmt: skip


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, uci, count = claim.spot, claim.params["move"], claim.params["count"]
    san = spot.board.san(uci)
    marks = (Mark("move", (uci[:2], uci[2:4]), claim.side or "white"),)
    if not count and claim.params["later"]:
        because = f"In the order of the text {san} comes only later, after {claim.params['later']}."
        return Judgement(Outcome.UNSETTLED, because, (), spot, {"times": 0}, marks=marks)
    if not count:
        where = (
            "earlier in the lesson"
            if claim.params["compared"] == "before"
            else f"in {claim.params['compared']}"
        )
        because = f"{title(claim.side or 'white')} does not play {san} {where}."
        return Judgement(
            Outcome.FAILS, because, (), spot, {"times": 0}, instead=because, marks=marks
        )
    because = f"{title(claim.side or 'white')} plays the same move after {claim.params['at']}."
    if not claim.params["works"]:
        return Judgement(Outcome.HOLDS, because, (), spot, {"times": count}, marks=marks)
    found = weigh(ask, spot, uci)
    if not found.counted:
        return Judgement(Outcome.UNSETTLED, f"{because} What it costs here cannot be counted.")
    said = _works(found.best, found.played)
    near = edge_of_two(found.best, found.played, _works)
    because += f" Here {san} costs {found.points} points."
    return Judgement(
        said, because, found.line, spot, {"times": count, "cost": found.points}, near,
        because if said is Outcome.FAILS else None, one_off=said is Outcome.UNSETTLED, marks=marks,
    )  # fmt: skip


def _works(best: int, played: int) -> Outcome:
    if is_safe(best, played):
        return Outcome.HOLDS
    return Outcome.FAILS if best - played >= MISTAKE else Outcome.UNSETTLED


KIND = Kind(
    id="as-before",
    title="As before",
    version=1,
    definition=(
        "The same piece of the same side goes to the same square earlier in the lesson, or in the line named. 'Works here too' asks in addition that it costs at most 5 points here; from 12 it fails."
    ),
    frames=FRAMES,
    slots={
        "again": _AGAIN,
        "once_more": dict.fromkeys(ONCE_MORE, True),
        "before": dict.fromkeys(BEFORE, True),
        "fine": dict.fromkeys(("good", "strong"), True),
        "seen": dict.fromkeys(("before", "already", "above"), True),
    },
    tests={
        "line": line_of,
        "same": _same,
        "pointer": lambda n: n.text if n.head in {"this", "that", "it"} else None,
        "we": lambda n: n.text if n.text in {"we", "you"} else None,
    },
    read=read,
    check=check,
    gives_way=frozenset({"transposes", "same-position", "same-structure"}),
)  # fmt: skip
