"""Noun phrases: a piece, a square, a move, a side or a thing, with whose it is, how many, and what is said of it.

Its `text` is the same thing in plain words, whatever the author wrote around it: "that poor brave horse of ours on f6" becomes
"our knight on f6", as [`Reference`][lineproof.claims.reference.Reference] reads it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from typing import Any

from .token import Token

_WHOSE = {
    "ours": "our", "mine": "our", "my": "our", "yours": "our", "your": "our", "his": "his", "hers": "his", "her": "his", "theirs": "their",
    "white": "white 's", "black": "black 's", "our": "our", "their": "their", "opponent": "his",
}  # fmt: skip
_SIDES = {
    "himself": "he", "herself": "he", "themselves": "they", "ourselves": "we", "us": "we", "yourself": "you", "me": "i", "them": "they", "she": "he",
}  # fmt: skip
_LETTER_NOUNS = {
    "lady": "queen", "her majesty": "queen", "her ladyship": "queen", "ladyship": "queen", "horse": "knight", "steed": "knight", "monarch": "king", "his majesty": "king",
}  # fmt: skip
_AMOUNT = frozenset(
    {
        "some",
        "more",
        "fewer",
        "less",
        "most",
        "enough",
        "another",
        "same",
        "few",
        "more than enough",
        "too little",
        "precious little",
        "little",
        "not enough",
    }
)
"""Determiners that tell one thing from another."""
_FLANKED = frozenset({"bishop", "knight", "rook", "pawn"})
"""Pieces of which a side has one on either wing: "the king's bishop"."""
_OF_A_MOVE = frozenset(
    {"move", "advance", "push", "capture", "recapture", "reply", "answer", "retreat", "thrust"}
)
_COUNTS = {**{f"{n} of": n for n in range(2, 10)}, "a couple of": 2, "a pair of": 2, "both of": 2}
"""How many a determiner says."""
_NO_ADJECTIVE = frozenset({"det", "poss", "file", "square", "number", "side"})
_JOINTS = frozenset({"'s", "or", "to"})
_LEADS = {"both": "both", "both of": "both", "an": "a", "a": "a", "another": "a"}
"""What stands before a piece in plain words; "the" where nothing else does."""
_NOBODY = frozenset(
    {
        "nothing",
        "nobody",
        "no one",
        "noone",
        "neither",
        "nowhere",
        "no piece",
        "neither side",
        "neither player",
    }
)
_NO = frozenset(
    {
        "no",
        "not a single",
        "not 1",
        "not a",
        "not any",
        "neither",
        "neither of",
        "none of",
        "not 1 of",
        "not a single 1 of",
        "not even 1 of",
    }
)


@dataclass(frozen=True, slots=True)
class Noun:
    """A noun phrase.

    type: "piece", "square", "move", "side", "file", "pronoun" or "noun". head: the noun in the singular, or the words of the rest.
    text: in plain words. whose: "our", "his", "white 's" ... or "". adjectives: before it. count: how many, where said.
    no: whether it is denied ("no knight", "nobody"). parts: the members of a list. first, last: its words.
    """

    type: str
    head: str
    text: str
    first: int
    last: int
    whose: str = ""
    adjectives: tuple[str, ...] = ()
    count: int | None = None
    plural: bool = False
    no: bool = False
    det: str = ""
    file: str = ""
    square: str = ""
    parts: tuple[Noun, ...] = ()

    @property
    def members(self) -> tuple[Noun, ...]:
        """The members of a list; itself when it is none."""
        return self.parts or (self,)


def listed(parts: list[Noun], joint: str = "and") -> Noun:
    """Several as one: "the king and the rook"."""
    types = {p.type for p in parts}
    text = f" {joint} ".join(p.text for p in parts)
    kind = types.pop() if len(types) == 1 else "piece"
    alike = kind == "file" and len({p.adjectives for p in parts}) == 1
    said = parts[0].adjectives if alike else ()  # "the half-open d-file and the half-open c-file"
    return Noun(
        kind, "file" if alike else "", text, parts[0].first, parts[-1].last, plural=True, no=parts[0].no, det=parts[0].det,
        count=len(parts), parts=tuple(m for p in parts for m in p.members),
        adjectives=said, file="".join(p.file for p in parts) if alike else "",
    )  # fmt: skip


@dataclass
class Run:
    """Tokens that belong to one noun phrase, the head last."""

    items: list[Token]
    owner: Noun | None = None

    def build(self) -> Noun | None:
        """The noun phrase, or None when they make none."""
        items = self.items
        head = items[-1]
        det = items[0].norm if items[0].is_("det", "poss") else ""
        whose = self._whose()
        before = items[:-1]
        file, square, count, counted = "", "", _COUNTS.get(det), False
        adjectives: tuple[str, ...] = ()
        for token in before:
            norm, tags = token.norm, token.tags
            if "file" in tags:
                file = file or norm
            if "square" in tags:
                square = square or norm
            if "number" in tags and not counted and det not in _COUNTS:
                count, counted = int(norm), True
            if (tags.isdisjoint(_NO_ADJECTIVE) or norm in _AMOUNT) and norm not in _JOINTS:
                adjectives = (*adjectives, norm)
        no = det in _NO
        common: dict[str, Any] = {
            "whose": whose,
            "adjectives": adjectives,
            "count": count,
            "no": no,
            "det": det,
            "first": items[0].first,
            "last": head.last,
        }
        if ("move" in head.tags and (len(items) == 1 or "square" not in head.tags)) or (
            "move" in head.tags and det in {"the", "his", "our", "this"} and not before[1:]
        ):
            kind = "square" if "square" in head.tags else "move"
            return Noun(
                kind,
                head.norm,
                head.norm,
                square=head.norm if "square" in head.tags else "",
                **common,
            )
        if "square" in head.tags and any(t.noun in _OF_A_MOVE for t in before):
            return Noun("move", head.norm, head.norm, **common)  # "the quiet pawn move e3"
        if "square" in head.tags:
            piece = next((t for t in before if "piece" in t.tags), None)
            if piece is not None:
                return self._piece(piece.noun, piece.plural, file, head.norm, common)
            return Noun("square", head.norm, head.norm, square=head.norm, **common)
        if "piece" in head.tags:
            return self._piece(head.noun, head.plural, file, square, common)
        if head.norm in {"1", "one", "ones"} and len(items) > 1:
            return Noun("noun", "one", " ".join(adjectives) + " one", **common)
        flank = next((a for a in adjectives if a in {"king", "queen"}), "")
        if head.noun in {"side", "wing", "flank"} and flank:
            return Noun("noun", f"{flank}side", f"{flank}side", **common)
        if head.noun in {"square", "point", "spot"} and square and not head.plural:
            return Noun("square", square, square, square=square, **common)
        if "noun" in head.tags:
            if head.noun in _LETTER_NOUNS:
                return self._piece(_LETTER_NOUNS[head.noun], head.plural, file, square, common)
            if head.noun == "file" and file:
                return Noun("file", "file", file, file=_files(before), plural=head.plural, **common)
            words = " ".join(w for w in (*adjectives, head.norm) if w)
            lead = whose or (det if det in {"a", "an", "the", "no", "both", "this"} else "")
            number = f"{count} " if count is not None else ""
            return Noun(
                "noun",
                head.noun,
                f"{lead} {number}{words}".strip(),
                plural=head.plural,
                file=file,
                square=square,
                **common,
            )
        return Noun("noun", head.norm, " ".join(t.norm for t in items), **common)

    def _whose(self) -> str:
        if self.owner is not None:
            return _WHOSE.get(self.owner.head, "")
        for token in self.items[:-1]:
            if "poss" in token.tags:
                return _WHOSE.get(token.norm, "")
            if token.norm in {"white", "black"}:
                return f"{token.norm} 's"
            if token.norm in {"enemy", "opposing", "hostile"}:
                return "his"  # as the pupil sees it
        return ""

    def _piece(
        self, name: str, plural: bool, file: str, square: str, common: dict[str, Any]
    ) -> Noun:
        adjectives: tuple[str, ...] = common["adjectives"]
        colour = ""
        for shade in ("light", "dark") if adjectives else ():
            if shade in adjectives or f"{shade} squared" in adjectives:
                colour = f"{shade} squared "
                break
        if name in _FLANKED:
            colour = next((f"{a} 's " for a in ("king", "queen") if a in adjectives), "") + colour
        whose = common["whose"] or _LEADS.get(common["det"], "the")
        where = f"{file} " if file else f"{square} " if square and name == "pawn" else ""
        on = f" on {square}" if square and name != "pawn" else ""
        text = f"{whose} {colour}{where}{name}{'s' if plural else ''}{on}"
        return Noun("piece", name, text, file=file, square=square, plural=plural, **common)


def _files(before: list[Token]) -> str:
    return "".join(t.norm for t in before if "file" in t.tags)


def on_square(noun: Noun, square: str, last: int) -> Noun:
    """The noun phrase with the square on which it stands."""
    if noun.type == "piece":
        return replace(noun, square=square, text=f"{noun.text} on {square}", last=last)
    return replace(noun, last=last)


def owned(noun: Noun, owner: str, last: int) -> Noun:
    """The noun phrase with "of ours", "of Black's" behind it."""
    whose = _WHOSE.get(owner, "")
    text = re.sub(r"^(?:the |both )?", f"{whose} ", noun.text, count=1) if whose else noun.text
    return replace(noun, whose=whose or noun.whose, text=text, last=last)


def pointer(token: Token) -> Noun:
    """A pronoun, or a side."""
    norm = token.norm
    if norm in _NOBODY:
        return Noun("pronoun", norm, norm, token.first, token.last, no=True)
    if "side" in token.tags:
        plain = _SIDES.get(norm, norm)
        return Noun(
            "side",
            norm if norm == "she" else plain,
            plain,
            token.first,
            token.last,
            plural=plain in {"we", "they", "you", "i"} or "both" in plain,
            det=norm if norm in {"us", "him", "them", "me"} else "",
        )
    plural = norm in {"these", "those", "both", "ones"}
    return Noun("pronoun", norm, norm, token.first, token.last, plural=plural)


__all__ = ["Noun", "Run", "listed", "on_square", "owned", "pointer"]
