"""What of a sentence asks, corrects or speaks of what others think, and what of it is said all the same."""

from __future__ import annotations

import re

from .around import CORRECTED


def replaced_from(line: str) -> int:
    """How many words of a sentence its speaker takes back; 0 when he says nothing instead."""
    end = max(match.end() for match in CORRECTED.finditer(line))
    rest = line[end:]
    opening = _NO_MORE.match(rest)
    while opening is not None and opening.end():
        end += opening.end()
        rest = line[end:]
        opening = _NO_MORE.match(rest)
    return len(line[:end].split()) if len(rest.split()) > 2 else 0


_NO_MORE = re.compile(
    r"^ (?:[,;:-]|well|no|sorry|wait|rather|actually|(?:this|that|it) (?:is|was|'s) (?:not |quite |all |completely |just )*(?:right|wrong|true|false|nonsense|rubbish|incorrect))(?= |$)"
)
"""What stands before the words that are said instead."""

_TAG = re.compile(
    r" (?:,|;|:|-)(?: (?:and|but|so|or))? (?:(?:is|are|does|do|did|can|could|would|will|have|has|was|were|should)(?: not)? (?:it|he|she|we|they|you|there|that|this|not)|"
    r"(?:which|whom) [^,;:]*|(?:when|why|how|what|who|where)(?: (?:'s|is|are|on|else|about|do|does|did|can|will|has|have|would|now|next)|$)|right|okay|ok|yes|no|eh|see|remember|got it|agreed|hm|(?:do )?you see(?: it| that)?|see (?:it|that)|all right|am i right|is that clear|got that)(?: [^,;:]*)?$"
)
"""A question behind a statement: ", is it not?", ", but when will it run?"."""

_TURNED = re.compile(
    r" (?:,|;|:|-)(?: (?:and|but|so|or))? (?:(?:is|are|was|were|does|did|can|could|has|have) (?:the|our|his|a|an|my|your|that|this|white|black) [^,;:]*"
    r"|(?:and|but|so) [^,;]* (?:by )?(?:what|how many|how much)(?: ,)? [^;:]*"
    r"|(?:because|since|and|but) (?:[a-z]+ing|what about) [^,;:]*)$"
)
"""A question of its own behind a statement: ", so was the knight free?", ", and he is behind by what, two pieces?", ", because taking the bishop?"."""

_ASKS = re.compile(r"^(?: (?:and|but|so|now|well|okay))*(?: ,)? (?:is|are|does|do|did|can|could|would|will|have|has|was|were|should|shall|may|might|must|when|why|how|what|who|where|which|whose|if|or)(?= )")  # fmt: skip


def said_first(line: str) -> int:
    """How many words of a question are a statement before it; 0 when it asks from the start."""
    line = line.removesuffix(" ?")
    tag = _TAG.search(line) or _TURNED.search(line)
    if tag is None or _ASKS.match(line):
        return 0
    before = line[: tag.start()].split()
    return len(before) if len(before) > 2 else 0


_ASIDE = re.compile(
    r" , (?:is|are|does|do|did|can|could|would|will|has|have|was|were|should)(?: not)? (?:it|he|she|we|they|you|there|that|this)(?: not)? ,(?= )"
)
"""A tag within what is said: "playable, isn't it, this retreat", "the point, is it not, of the move"."""
_GOES_ON = frozenset({"of", "to", "for", "in", "on", "at", "by", "with", "than", "that"})


_AS_WHOM = re.compile(
    r" , (?:(?<= we , )|(?<= us , )|(?<= he , )|(?<= you , )|(?<= they , ))(?:playing|as|playing as|with) (?:the )?(?:white|black)(?: (?:pieces|men|side))? ,(?= (?!and\b|but\b|or\b))"
)
"""Which side somebody plays, said beside: "what we, playing Black, enjoy"."""


def tag_within(line: str) -> tuple[int, int] | None:
    """From which word to which a tag stands within a sentence, or who plays whom; the end not counted; None without one."""
    whom = _AS_WHOM.search(line)
    if whom is not None:
        return len(line[: whom.start()].split()), len(line[: whom.end()].split())
    found = _ASIDE.search(line)
    if found is None or _ASKS.match(line):
        return None
    first, last = len(line[: found.start()].split()), len(line[: found.end()].split())
    goes_on = line[found.end() :].split()[0] in _GOES_ON
    return first, last if goes_on else last - 1


__all__ = ["replaced_from", "said_first", "tag_within"]
