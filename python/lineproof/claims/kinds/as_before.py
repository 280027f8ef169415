"""As before: a move that the lesson has shown elsewhere."""

from __future__ import annotations

import re
from typing import Any

from lineproof.claims.bands import edge_of_two, is_safe
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import MISTAKE, weigh
from lineproof.claims.elsewhere import LINE, just_played_or, labels, same_move
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind

_AS = "(as before|as in {line}|just as before|just as in {line}|like before|as last time|the same as before|as we saw before|as above|as after {line}|just like in {line}|like in {line})"
_TOO = "(again|once more|once again|yet again|as before|here too|here as well|as in {line}|just as in {line}|as after {line}|as last time|one more time|for the second time|like before|like in {line}|, as in {line}|, as before|, just as in {line})"
_SAME = "(move|idea|answer|reply|reaction|recipe|trick|motif|resource|response|blow|shot|sacrifice|capture|follow up|plan)"

PHRASES = (
    f"{_AS} [,] [{{side}} <play>] {{move}}",
    "(again|once more|once again|yet again|here too|here as well|here again) [,] {move}",
    "(again|once more|once again|yet again|here too|here as well|here again) [,] {side} <play> {move}",
    f"{{side}} <play/choose/go/answer with/reply with/react with/continue with> {{move}} {_TOO}",
    f"{{move}} {_TOO}",
    f"{{move}} <be> [{{very}}] the same {_SAME} [as before|as in {{line}}|as after {{line}}|as last time|again]",
    f"(this|that|it) <be> [{{very}}] the same {_SAME} (as before|as in {{line}}|as after {{line}}|as last time)",
    f"[once more|again] the same {_SAME} (as before|as in {{line}}|as last time|as after {{line}}|again)",
    f"[once more|again] the same {_SAME} [as before|as in {{line}}|as last time|again] (:|,|-) {{move}}",
    f"{{move}} <work/be good/be strong> {_TOO}",
    "we have seen {move} (before|already|above|in {line})",
    "we (know|remember) {move} from {line}",
    "you (know|remember) {move} from {line}",
)  # fmt: skip


_LOOSE = re.compile(r"\b(?:idea|plan|motif|trick|recipe|resource|shot|blow|reaction)\b")
"""Words that may speak of the same idea in another move."""


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    named = just_played_or(here, slots.get("move"))
    if "side" in slots and here.side(slots["side"]) != named.side:
        raise Unread(f"{slots['move']} is no move of that side")
    verb = slots.get("verb")
    if verb is not None and (verb.negated or verb.modal):
        raise Unread("said of what is not played, or denied")
    line = slots.get("line")
    found = same_move(here, named, line)
    words = here.said
    if not found and _LOOSE.search(words):
        raise Unread("the same idea may be another move")
    if line is None and not re.search(
        r"\bsame\b|\bbefore\b|\bagain\b|\bonce more\b|\btoo\b|\bas well\b|\blast time\b|\babove\b|\balready\b|\bsecond time\b|\bone more\b",
        words,
    ):
        raise Unread("it is not clear what it is compared with")
    later = [p for p in found if p.index >= here.place.index] if line is None else []
    found = [p for p in found if p not in later]
    works = re.search(r"\bworks?\b|\bgood\b|\bstrong\b", words) is not None
    return [
        here.claim(
            KIND.id, named.side, spot=named.before, move=named.uci, works=works, compared=line or "before",
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
    phrases=PHRASES,
    patterns={"line": LINE},
    vocabulary=frozenset(
        ["before", "again", "once", "same", "too", "well", "as", "like", "seen", "know", "remember", "time", "just"]
    ),
    read=read,
    check=check,
    gives_way=frozenset({"transposes", "same-position", "same-structure"}),
)  # fmt: skip
