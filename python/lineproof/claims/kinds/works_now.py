"""Works now: a move whose moment has come, or not yet."""

from __future__ import annotations

from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome, Spot
from lineproof.claims.cost import spelled, weigh
from lineproof.claims.deed import deed
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, NOUNS, members
from lineproof.claims.passing import POINTS, parsed
from lineproof.claims.patterns import MOVE
from lineproof.claims.played import around, played
from lineproof.claims.sentence import sentences
from lineproof.claims.worded import fitting

_NOW = "+now|at_last|finally|now_at_last|at_this_moment|right_now|already|suddenly|well_now|but_now|and_now|so_now"
_YET = "+yet|not_yet|any_more|any_longer|no_longer|no_more|now"
_ON = (
    "on",
    "possible",
    "playable",
    "in order",
    "available",
    "feasible",
    "safe",
    "good",
    "right",
    "strong",
)
FRAMES = (
    "(moment|time) <come/arrive> for {deed}",
    "<=> (moment|time) for {deed} +now",
    f"{{side}} <take_on> {{square}} {_NOW} if modal=can|may",
    f"{{side}} <capture> (on) {{square}} {_NOW} if modal=can|may",
    "{it} <=> (moment|time) for {deed}",
    "{deed} <be> +on [+now]",
    f"{{deed}} <=> {{on}} {_NOW}",
    f"{{deed}} <work/succeed/come off> {_NOW}",
    f"{{deed}} <=> {{threat}} {_NOW}",
    f"{{same}} <work/succeed/come off> {_NOW} ; elsewhere=yes",
    f"{{same}} <work/succeed/come off> {_YET} ; elsewhere=yes if negated",
    f"{{same}} <=> {{on}} {_NOW} ; elsewhere=yes",
    f"{{deed}} <=> {{on}} {_YET}",
    f"{{deed}} <be> +on {_YET}",
    f"{{deed}} <work/succeed/come off> {_YET}",
    f"{{side}} <play> {{deed}} {_NOW} if modal=can|may",
    "{deed} <=> {untimely} ; early=yes",
    "{deed} <come> {untimely} ; early=yes",
    "{it} <=> {untimely} for {deed} ; early=yes",
    "<~> {deed} +not_yet",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    verb = slots.get("verb")
    if verb is not None and (
        verb.past or verb.modal in {"could", "would", "might", "may", "almost"}
    ):
        raise Unread("said of what may come")
    if "same" in slots:
        slots["deed"] = _named(here)
    if "square" in slots:
        slots["deed"] = f"taking on {slots['square']}"
    spot, side, move = _moment(here, slots["deed"])
    if "side" in slots and here.side(slots["side"]) != side:
        raise Unread(f"{move} is no move of that side")
    return [here.claim(KIND.id, side, spot=spot, negated="early" in slots, move=move)]


def _named(here: Here) -> str:
    """What "it" is that works now: the move named before, here or in the sentence before.

    :raises Unread: when none was.
    """
    before = around(here)[0]
    said = [w for s in sentences(before, 0)[-2:] for w in s.words if w.move is not None]
    if not said or len({w.norm for w in said}) > 1:
        raise Unread("it is not said what works now")
    return said[-1].norm


def _moment(here: Here, text: str) -> tuple[Spot, str, str]:
    """The position in which the move is to be played: here, after a pass, or before it when it has just been played; its side; its SAN.

    :raises Unread: when the move is legal in none of them.
    """
    if MOVE.fullmatch(text) is None:
        coming = fitting(here.spot, text)  # what is to be played, sooner than what has been
        if here.shown_next in coming:
            coming = [here.shown_next or ""]
        if len(coming) == 1:
            return here.spot, here.board.turn, here.board.san(coming[0])
        move = played(here, text)
        return move.before, move.side, move.before.board.san(move.uci)
    san = text.split(".")[-1]
    spot = here.spot
    if spot.moves:
        before = spot.earlier(1)
        if parsed(before, text) == spot.moves[-1]:
            return before, before.board.turn, san
    free = spot.passed()
    for at in (spot, free):
        if at is not None and parsed(at, text) is not None:
            return (spot if at is spot else free or spot), at.board.turn, san
    raise Unread(f"{text} is not legal here")


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, side = claim.spot, claim.side or "white"
    uci = parsed(spot, claim.params["move"])
    if uci is None:
        return Judgement(Outcome.FAILS, f"{claim.params['move']} is not legal here.", (), spot)
    found = weigh(ask, spot, uci)
    san = spot.board.san(uci)
    if not found.counted:
        because = f"{title(side)} is lost whatever he plays, so what {san} costs is not counted."
        return Judgement(Outcome.UNSETTLED, because)
    said = outcome(found.best, found.played)
    near = edge_of_two(found.best, found.played, outcome)
    because = f"{san} costs {title(side)} {spelled(found.points)} here"
    because += "." if found.is_best else f" against {found.better}."
    second = None
    if said is Outcome.HOLDS and not claim.negated:
        second = _before(claim, ask, san)
    return Judgement(
        said, because, found.line, spot, {"cost": found.points}, near,
        because if said is Outcome.FAILS else None, one_off=said is Outcome.UNSETTLED, second=second,
        marks=(Mark("move", (uci[:2], uci[2:4]), side),),
    )  # fmt: skip


def outcome(best: int, played: int) -> Outcome:
    """What the points of best and played say of a move that is said to work."""
    if is_safe(best, played):
        return Outcome.HOLDS
    return Outcome.FAILS if best - played >= POINTS else Outcome.UNSETTLED


def _before(claim: Claim, ask: Ask, san: str) -> str | None:
    """The second finding: whether the move worked a move earlier as well."""
    if len(claim.spot.moves) < 2:
        return None
    earlier = claim.spot.earlier(2)
    uci = parsed(earlier, claim.params["move"])
    if uci is None:
        return f"A move earlier {san} was not possible."
    was = weigh(ask, earlier, uci)
    if is_safe(was.best, was.played):
        return f"A move earlier {san} would have worked as well."
    return f"A move earlier {san} would have cost {was.points} points."


KIND = Kind(
    id="works-now",
    title="Works now",
    version=1,
    definition=(
        "The move costs at most 5 points here (after a pass by the other side when that is to move), or keeps 85 of more than 90; from 15 it does not work, between it is unsettled. "
        "Whether it worked a move earlier is a second finding. 'Not yet', 'no longer' and 'too early' say that it does not work."
    ),
    formula=f"cost = best - played; works: safe move; unsettled: cost < {POINTS}; does not: cost >= {POINTS}",
    slots={"on": dict.fromkeys(_ON, True), "untimely": dict.fromkeys(members("untimely", JUDGEMENTS), True)},
    tests={
        "deed": lambda n: deed(n) if n.type != "pronoun" else None,
        "same": lambda n: n.text if n.type == "pronoun" and n.head in {"it", "that", "this"} else None,
        "threat": lambda n: n.text if n.head in NOUNS["threat"] and not (n.no or n.plural) else None,
        "it": lambda n: n.text if n.head in {"it", "this", "now"} else None,
    },
    gives_way=frozenset({"as-before", "unlike-before", "refuted-by"}),
    frames=FRAMES,
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
