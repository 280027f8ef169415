"""Tokens: the words of a sentence with what each may be, turns of several words put together.

>>> from lineproof.claims.sentence import sentences
>>> [(t.norm, sorted(t.tags)) for t in tokens(sentences("Of course the pawn on e5 is still en prise.", 0)[0])][:3]
[('of course', ['adverb']), ('the', ['det']), ('pawn', ['piece'])]
"""

from __future__ import annotations

from .dictionary import Turn, of_word, opening_names, turns, verb_forms
from .sentence import Sentence
from .token import Token

_SQUARES = frozenset(file + rank for file in "abcdefgh" for rank in "12345678")

_NOUN = frozenset({"noun"})

_MOVE = frozenset({"move"})

_FILE = frozenset({"file"})

_PRONOUN = frozenset({"pron"})

_SQUARE_OR_MOVE = frozenset({"square", "move"})

_BEHIND = frozenset(
    [
        ",",
        ".",
        ";",
        ":",
        "here",
        "now",
        "at",
        "because",
        "because of",
        "on",
        "owing",
        "in",
        "for",
        "to",
        "and",
        "either",
        "since",
        "as",
    ]
)

_CLAUSE_OR_END = frozenset({",", ".", "white", "black", "we", "he", "you", "they", "the", "it"})

_BARE = frozenset(
    {
        ("with", "this"),
        ("with", "that"),
        ("after", "this"),
        ("after", "that"),
        ("like", "this"),
        ("like", "that"),
    }
)
"""Turns that are none when a noun follows."""


_ADJ = frozenset({"adj"})
_COMPOUND = frozenset({"looking", "seeming", "placed", "timed", "judged", "earned", "deserved", "minded", "hearted", "sighted", "handed", "headed", "ranging", "reaching", "lasting", "sounding", "fashioned", "played"})  # fmt: skip
"""Second words of adjectives with a hyphen."""


def _hyphened(sentence: Sentence, at: int) -> bool:
    """Whether a hyphen ties a word to the next."""
    return sentence.text[sentence.words[at].end : sentence.words[at + 1].start] in {
        "-",
        "\u2010",
        "\u2011",
    }


def tokens(sentence: Sentence) -> list[Token]:
    """The tokens of a sentence, in order."""
    words = sentence.words
    norms = [w.norm for w in words]
    found: list[Token] = []
    beginnings, openings = turns(), opening_names()
    at, count = 0, len(words)
    while at < count:
        norm = norms[at]
        following = norms[at + 1] if at + 1 < count else ""
        size = 1
        if norm in {"we", "you"} and at and norms[at - 1] == "what":
            pass  # "what we see" is no "as we see"
        elif norm == "in" and norms[at + 1 : at + 3] == ["order", "to"]:
            found.append(Token("in order", frozenset({"adverb"}), at, at + 1))
            at += 2
            continue
        elif norm in openings and (named := _opening(sentence, at, openings[norm])):
            norm = " ".join(norms[at : at + named])
            found.append(Token(norm, _NOUN, at, at + named - 1, noun="opening"))
            at += named
            continue
        elif following in _COMPOUND and _hyphened(sentence, at):
            norm = f"{norm} {following}"
            found.append(Token(norm, _ADJ, at, at + 1))  # "natural-looking"
            at += 2
            continue
        elif (norm, following) in beginnings:
            size = _turn(beginnings[norm, following], norms, at)
            norm = " ".join(norms[at : at + size])
        found.append(_token(sentence, norm, at, at + size - 1))
        at += size
    return found


def _opening(sentence: Sentence, at: int, names: tuple[Turn, ...]) -> int:
    """How many words from here on name an opening; names have capitals: "the Two Knights", but "the two knights"."""
    words = sentence.words
    for name in names:
        said = words[at : at + len(name)]
        if tuple(w.norm for w in said) == name and all(
            sentence.text[w.start].isupper() for w in said if w.norm not in _SMALL
        ):
            return len(name)
    return 0


_OWNS = frozenset({"the", "this", "that", "his", "her", "our", "your", "my", "their", "'s"})

_INSTANTS = frozenset({("the", "second"), ("the", "instant"), ("the", "minute")})

_OPENS = frozenset({"the", "that", "this", "his", "our", "your", "my", "their", "he", "we", "you", "she", "it", "they", "white", "black"})  # fmt: skip
"""Words with which a clause begins."""

_SMALL = frozenset({"'s", "defence", "defense", "game", "variation", "system", "attack"})


def _turn(turns: tuple[Turn, ...], norms: list[str], at: int) -> int:
    """How many words from here on are one of some turns; 1 when none is there."""
    before, after = norms[at - 1] if at else "", norms[at + 2] if at + 2 < len(norms) else ""
    for turn in turns:
        if tuple(norms[at : at + len(turn)]) == turn and not _misled(turn, before, after):
            return len(turn)
    return 1


def _misled(turn: Turn, before: str, after: str) -> bool:
    """Whether words that look like a turn are none. before, after: the words around its first two."""
    if turn[1:] == ("on",) and turn[0] in {"up", "out", "over"}:
        # "was given up on e5"
        return before in verb_forms() or before.endswith(("self", "selves"))
    if turn == ("last", "move"):
        return before in _OWNS  # "his last move"
    if not after:
        return False
    if turn in _BARE:
        return after not in _CLAUSE_OR_END  # "with this capture"
    if turn == ("no", "good"):
        return after not in _BEHIND  # "no good square"
    if turn == ("the", "moment"):
        return after in {"for", "to", "of", "has"}  # "the moment for e4 has come"
    if turn in _INSTANTS:
        return after not in _OPENS  # "the second rank"
    if turn in {("so", "that"), ("now", "that")}:
        return after in {"'s", "is", "was"}  # "so that's a pawn"
    return False


def _token(sentence: Sentence, norm: str, first: int, last: int) -> Token:
    if first == last:
        said = sentence.words[first]
        square = norm in _SQUARES
        if square or said.move is not None:
            tags = _SQUARE_OR_MOVE if square and not said.spoken else _MOVE
            return Token(norm, tags, first, last)
        if norm in "abcdefgh" and _is_file(sentence, first):
            return Token(norm, _FILE, first, last)
    if norm == "nowhere" and _leads_on(sentence, last + 1):
        return Token(norm, _PRONOUN, first, last)  # "has nowhere to go"
    word = of_word(norm, first == last)
    return Token(norm, word.tags, first, last, word.verbs, word.noun, word.plural)


def _leads_on(sentence: Sentence, at: int) -> bool:
    """Whether "to go", "safe to go" follows."""
    norms = [w.norm for w in sentence.words[at : at + 2]]
    return norms[:1] == ["to"] or (
        norms[:1] in (["safe"], ["left"], ["else"]) and norms[1:] == ["to"]
    )


def _is_file(sentence: Sentence, at: int) -> bool:
    """Whether a single letter is a file: "e-pawn", "the c file", "c- and d-files"."""
    words, text = sentence.words, sentence.text
    tied = text[words[at].end : words[at].end + 1] in {"-", "–"}
    follows = words[at + 1].norm if at + 1 < len(words) else ""
    if follows in {"pawn", "pawns", "file", "files"}:
        before = words[at - 1].norm if at else ""
        return (
            tied
            or words[at].norm != "a"
            or before in {"the", "'s", "his", "her", "our", "your", "their", "my"}
        )
    return tied


__all__ = ["tokens"]
