"""The same position by another way."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from lineproof.claims.claim import Ask, Claim, Judgement
from lineproof.claims.here import Here
from lineproof.claims.kind import Kind
from lineproof.claims.kinds import transposes

_THIS = "(this|that|it|the position|this position|what we have here|the result|the diagram|which)"

PHRASES = (
    f"{_THIS} <be> [{{very}}] identical (to|with) [the position (in|after|of|from)|that (in|after|of|from)|what we had (in|after)|what we had] {{line}}",
    f"{_THIS} <be> [{{very}}] (no different from|not different from|the same as) [the position (in|after|of|from)|that (in|after|of|from)|after|in] {{line}}",
    f"{_THIS} [also] (arises|comes about|can arise|can come about|could arise|may arise|is reached|can be reached|is also reached|can also be reached|could also be reached) [also|too] (after|from|via|by|through|by way of|out of|by playing) {{line}}",
    "we <know/have seen> this position [already] from {line}",
    "we have [already] (seen|met|had) this position (before|already|in {line}|after {line})",
    "we have [already] been here (before|in {line}|after {line})",
    "(the very same|exactly the same|precisely the same|the identical) position (as|that) [we had|arose|stood] [in|after] {line}",
    "{line} (leads|lead|comes|come|gets|get|brings us|takes us) to the same (position|place|thing)",
    "{line} (reaches|reach|gives|give) the same position",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    found = transposes.KIND.read
    assert found is not None  # it has phrases, and so it reads
    wanted = {"line": slots["line"]} if "line" in slots else {}
    return [replace(claim, kind=KIND.id, negated=False) for claim in found(here, wanted)]


def check(claim: Claim, ask: Ask) -> Judgement:
    return transposes.check(replace(claim, negated=False), ask)


KIND = Kind(
    id="same-position",
    title="The same position",
    version=1,
    definition="The position here is the same as at the end of the line named, or as one that stands elsewhere in the lesson: placement, side to move, castling rights and legal en passant.",
    source="FIDE Laws of Chess, article 9.2.3",
    phrases=PHRASES,
    patterns=transposes.KIND.patterns,
    vocabulary=frozenset({"identical", "same", "different", "arises", "arise", "reached", "reach", "reaches", "here", "position", "comes"}),
    read=read,
    check=check,
    flips=True,
)  # fmt: skip
