"""Verbs: their forms, and what a form says beside the verb: whether it is denied, only possible, over.

>>> forms("win")
('win', 'wins', 'won', 'won', 'winning')
"""

from __future__ import annotations

import re
from functools import cache
from typing import NamedTuple

_IRREGULAR: dict[str, tuple[str, str]] = {
    "arise": ("arose", "arisen"), "be": ("was", "been"), "beat": ("beat", "beaten"), "become": ("became", "become"), "begin": ("began", "begun"), "bite": ("bit", "bitten"), "break": ("broke", "broken"),
    "bring": ("brought", "brought"), "build": ("built", "built"), "buy": ("bought", "bought"), "catch": ("caught", "caught"), "choose": ("chose", "chosen"), "come": ("came", "come"),
    "cost": ("cost", "cost"), "cut": ("cut", "cut"), "do": ("did", "done"), "draw": ("drew", "drawn"), "drive": ("drove", "driven"), "eat": ("ate", "eaten"), "fall": ("fell", "fallen"),
    "feel": ("felt", "felt"), "fight": ("fought", "fought"), "find": ("found", "found"), "flee": ("fled", "fled"), "forbid": ("forbade", "forbidden"), "forget": ("forgot", "forgotten"),
    "get": ("got", "got"), "give": ("gave", "given"), "go": ("went", "gone"), "hang": ("hung", "hung"), "have": ("had", "had"), "hide": ("hid", "hidden"), "hit": ("hit", "hit"),
    "hold": ("held", "held"), "keep": ("kept", "kept"), "know": ("knew", "known"), "lag": ("lagged", "lagged"), "lead": ("led", "led"), "leave": ("left", "left"), "let": ("let", "let"),
    "lie": ("lay", "lain"), "lose": ("lost", "lost"), "make": ("made", "made"), "mean": ("meant", "meant"), "meet": ("met", "met"), "overlook": ("overlooked", "overlooked"),
    "put": ("put", "put"), "run": ("ran", "run"), "say": ("said", "said"), "see": ("saw", "seen"), "seize": ("seized", "seized"), "set": ("set", "set"), "shut": ("shut", "shut"),
    "sit": ("sat", "sat"), "spend": ("spent", "spent"), "stand": ("stood", "stood"), "stick": ("stuck", "stuck"), "strike": ("struck", "struck"), "take": ("took", "taken"),
    "tear": ("tore", "torn"), "throw": ("threw", "thrown"), "tie": ("tied", "tied"), "win": ("won", "won"), "withdraw": ("withdrew", "withdrawn"), "withstand": ("withstood", "withstood"),
}  # fmt: skip
"""Past and participle."""
_SHORT = re.compile("[^aeiou]+[aeiou][^aeiouwxy]")
"""Verbs of one short syllable, which double their last letter: "hem", "hug"."""
_DOUBLED = frozenset(
    [
        "compel",
        "repel",
        "expel",
        "commit",
        "permit",
        "spot",
        "win",
        "get",
        "set",
        "put",
        "hit",
        "cut",
        "let",
        "shut",
        "sit",
        "run",
        "begin",
        "pin",
        "grab",
        "drop",
        "snap",
        "skip",
        "trap",
        "pop",
        "swap",
        "net",
        "slip",
        "step",
        "stop",
        "plan",
        "skewer",
        "jam",
        "hem",
        "plug",
    ]
) - {"skewer"}
"""Verbs whose last letter is doubled before -ing and, if regular, before -ed."""


class Verb(NamedTuple):
    """What a form says beside the verb itself.

    negated: "not", "never", "no longer". modal: "can", "would", "must" ..., or "will" for any future, or nothing. done: a perfect, or
    a past. past: "was", "had won".
    """

    negated: bool = False
    modal: str = ""
    done: bool = False
    past: bool = False

    @property
    def supposed(self) -> bool:
        """Whether it speaks of what is not there: "would", "could", "might", "should", "almost"."""
        return self.modal in {"would", "could", "might", "should", "may"} or self.modal == "almost"


@cache
def forms(verb: str) -> tuple[str, str, str, str, str]:
    """Base, third person, past, participle and -ing of a verb, perhaps with words after it ("pick up").

    >>> forms("pick up")
    ('pick up', 'picks up', 'picked up', 'picked up', 'picking up')
    >>> forms("pin")[2:]
    ('pinned', 'pinned', 'pinning')
    """
    first, _, rest = verb.partition(" ")
    tail = f" {rest}" if rest else ""
    if first.endswith(("s", "x", "ch", "sh", "o")):
        third = first + "es"
    elif first.endswith("y") and first[-2] not in "aeiou":
        third = first[:-1] + "ies"
    else:
        third = {"have": "has", "be": "is"}.get(first, first + "s")
    stem = first + first[-1] if first in _DOUBLED or _SHORT.fullmatch(first) else first
    if first in _IRREGULAR:
        past, participle = _IRREGULAR[first]
    elif first.endswith("e"):
        past = participle = first + "d"
    elif first.endswith("y") and first[-2] not in "aeiou":
        past = participle = first[:-1] + "ied"
    else:
        past = participle = stem + "ed"
    if first in {"lie", "tie", "die"}:
        ing = first[:-2] + "ying"
    elif first.endswith("e") and not first.endswith("ee") and first != "be":
        ing = first[:-1] + "ing"
    else:
        ing = stem + "ing"
    return (first + tail, third + tail, past + tail, participle + tail, ing + tail)
