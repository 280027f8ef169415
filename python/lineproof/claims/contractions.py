"""Contractions: "can't", "we've", and "'s", which is "is", "has" or whose a thing is."""

from __future__ import annotations

from functools import lru_cache

from .word import Word

KEPT = 4096
"""Words that are kept with their spelling."""
_NUMBERS = {
    "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6", "seven": "7", "eight": "8", "nine": "9", "ten": "10",
}  # fmt: skip

_CONTRACTIONS = {
    "can't": ("can", "not"), "cannot": ("can", "not"), "won't": ("will", "not"), "shan't": ("shall", "not"), "ain't": ("is", "not"),
}  # fmt: skip

_ENDINGS = {
    "n't": "not",
    "'s": "'s",
    "'re": "are",
    "'ve": "have",
    "'ll": "will",
    "'d": "'d",
    "'m": "am",
}

_IS_AFTER = frozenset(
    [
        "he",
        "she",
        "it",
        "that",
        "there",
        "here",
        "what",
        "who",
        "which",
        "where",
        "this",
        "everything",
        "nobody",
        "nothing",
        "everybody",
        "king",
        "queen",
        "rook",
        "bishop",
        "knight",
        "pawn",
    ]
)

_PARTICIPLES = frozenset(
    [
        "given",
        "lost",
        "won",
        "got",
        "been",
        "castled",
        "moved",
        "taken",
        "grabbed",
        "transposed",
        "gone",
        "played",
        "put",
        "left",
        "had",
        "made",
        "made",
        "forfeited",
        "reached",
        "equalised",
        "attacked",
        "mated",
        "trapped",
    ]
)

_PREDICATES = frozenset(
    [
        "a",
        "an",
        "the",
        "not",
        "no",
        "already",
        "still",
        "simply",
        "just",
        "better",
        "worse",
        "winning",
        "lost",
        "losing",
        "pinned",
        "short",
        "behind",
        "ahead",
        "clearly",
        "slightly",
        "much",
        "completely",
        "up",
        "down",
        "in",
        "out",
        "on",
        "off",
        "attacked",
        "unprotected",
        "undefended",
        "protected",
        "mated",
        "fine",
        "safe",
        "dead",
        "trapped",
        "stuck",
        "about",
        "level",
        "equal",
        "forced",
        "now",
        "really",
        "quite",
        "only",
    ]
)

_AHEAD = frozenset({"up", "down", "ahead", "behind", "short", "clear", "good", "bad", "shy", "light", "extra", "away", "front", "off", "from", "more", "fewer", "less", "too", "for"})  # fmt: skip
"""Words of what a side is, behind a number: "White's a pawn to the good"."""
_ONLY = frozenset({"move", "reply", "answer", "defence", "chance", "way", "resource", "retreat", "square", "try", "option", "good", "decent", "sensible", "legal", "saving", "safe", "defender", "protector", "minder", "guard", "guardian", "support", "cover", "protection", "remaining", "real", "active", "developed", "piece", "hope", "escape"})  # fmt: skip


def opened_s(words: list[Word], text: str) -> list[Word]:
    """Opens "'s": "White's winning" is, "Black's castled" has, "Black's knight" stays a possessive."""
    if "'s" not in [word.norm for word in words]:
        return words
    opened: list[Word] = []
    for number, word in enumerate(words):
        if word.norm == "'s" and number and number + 1 < len(words):
            before, after = words[number - 1].norm, words[number + 1].norm
            says_is = before in _IS_AFTER or before in {"white", "black"}
            if after == "a" and text[words[number + 1].end : words[number + 1].end + 1] in "-–":
                says_is = False  # "White's a-pawn"
            if number > 1 and words[number - 2].norm in {"is", "are", "was", "were"}:
                says_is = False  # "these are White's only pieces"
            ahead = {w.norm for w in words[number + 2 : number + 6]}
            if after.isdigit() and ahead.isdisjoint(_AHEAD):
                says_is = False  # "two of Black's three pieces", but "Black's two pawns up"
            behind = words[number + 2].norm if number + 2 < len(words) else ""
            if after == "only" and behind in _ONLY:
                says_is = False  # "the queen's only defender"
            if (
                says_is
                and after == "lost"
                and behind in {"a", "an", "the", "his", "two", "2", "time"}
            ):
                opened.append(word._replace(norm="has"))
                continue
            if (
                says_is
                and after in _PARTICIPLES
                and after not in {"pinned", "lost", "attacked", "mated", "trapped"}
            ):
                opened.append(word._replace(norm="has"))
                continue
            if says_is and (
                after in _PREDICATES
                or after.isdigit()
                or (after.endswith("ing") and after not in {"king", "opening"})
            ):
                opened.append(word._replace(norm="is"))
                continue
        opened.append(word)
    return opened


@lru_cache(KEPT)
def norm_of(raw: str) -> str | None:
    """A word as the reading spells it; None for a contraction, which is several."""
    lower = raw.lower()
    if lower in _CONTRACTIONS or "'" in lower or "’" in lower:
        return None
    return "-" if lower in {"–", "—"} else _NUMBERS.get(lower, lower)


def spelled(raw: str, start: int, end: int) -> list[Word]:
    """The words of a contraction."""
    lower = raw.lower().replace("’", "'")
    if lower in _CONTRACTIONS:
        return [Word(part, start, end) for part in _CONTRACTIONS[lower]]
    if "'" in lower:
        for ending, meaning in _ENDINGS.items():
            if lower.endswith(ending) and len(lower) > len(ending):
                cut = end - len(ending)
                return [Word(lower[: -len(ending)], start, cut), Word(meaning, cut, end)]
    return [Word(_NUMBERS.get(lower, lower), start, end)]


__all__ = ["norm_of", "opened_s", "spelled"]
