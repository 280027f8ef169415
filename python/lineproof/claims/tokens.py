"""Tokens: the words of a sentence with what each may be, turns of several words put together.

>>> from lineproof.claims.sentence import sentences
>>> [(t.norm, sorted(t.tags)) for t in tokens(sentences("Of course the pawn on e5 is still en prise.", 0)[0])][:3]
[('of course', ['adverb']), ('the', ['det']), ('pawn', ['piece'])]
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache

from .board import LETTERS
from .lexicon import ADJECTIVES, ADVERBS, JUDGEMENTS, NOUNS, VERBS
from .openings import names
from .sentence import Sentence
from .verbs import forms

_SQUARE = re.compile("[a-h][1-8]")
_PLAIN: dict[str, str] = {
    "det": "the a an this that these those no any each every some another both all either neither such many several most more enough plenty few fewer",
    "poss": "my our your his her their its whose",
    "side": "white black we us you i me he she they him them himself herself themselves ourselves yourself himself opponent",
    "pron": "it itself this that these those which who nothing nobody anything anybody something somebody everything everyone anyone someone noone mine ours yours hers theirs one ones both neither",
    "reflexive": "himself herself itself themselves ourselves yourself oneself",
    "modal": "will 'll can could would 'd may might must shall should",
    "be": "is are am was were be been being 're 'm",
    "have": "has have had having 've",
    "do": "do does did",
    "not": "not",
    "to": "to",
    "prep": "of in on at by with from to into onto for against through over under behind before after between among along down up across off out like as than without despite towards toward near beside around round upon within beyond above below inside outside about per via versus vs v till until since during except but",
    "cc": "and or but nor yet so",
    "sub": "whereupon whereby because since for as while if unless when whenever once though although whereas until till where lest whether that after before than",
    "wh": "what how why where when who whom which whose whatever whoever whichever",
    "clitic": "'s",
    "punct": ", ; : - ( ) ?",
    "particle": "off up ahead away back home down out in on over behind forward along through by apart aside gone around",
    "adj": "outside annoying troubling worrying irritating disturbing surprising embarrassing interesting promising pressing crushing devastating charming disgusting lingering striking appealing disappointing frightening terrifying amusing convincing boring tiring exciting challenging demanding rewarding free afraid compulsory obligatory mandatory imperative careless careful unable hot short long wise plain own poor great big small little large huge tiny nice lovely nasty ugly beautiful pretty fine solid strong powerful mighty brave bold greedy quiet natural simple obvious modest humble innocent careless clumsy timid hasty slow quick fast early late sharp subtle cunning clever neat elegant brilliant splendid excellent perfect ideal wonderful superb terrible awful dreadful horrible ghastly rotten serious grave gross plain outright bad good real true whole entire single sole last next same other new old young first second third fourth fifth important dangerous deadly lethal vital crucial key main central lasting permanent chronic eternal healthy extra useful useless active passive aggressive defensive tactical positional material dark light high low heavy easy hard difficult tricky typical classic classical textbook pure mere sheer total complete full half empty ready sorry happy glad busy tired lazy friendly light-squared dark-squared squared coloured colored legal illegal sensible reasonable decent sound unsound double minor major certain sure likely unlikely enormous considerable significant slight clean straight loyal faithful proud lone lonely former remaining entire gorgeous pleasant unpleasant comfortable uncomfortable cramped precise accurate correct wrong right",
}  # fmt: skip
_TURNS: dict[str, str] = {
    "prep": "such as, in front of, because of, instead of, on account of, thanks to, in view of, owing to, due to, in return for, out of, next to, on top of, in spite of, by means of, at the cost of, in reply to, ahead of, away from, in exchange for, on behalf of, close to, as for, in answer to, courtesy of, on to, short of, at the expense of, in the face of, along with, together with, free of, rid of, by virtue of, on the side of, by way of, at the hands of, over on, up on, out on, apart from, other than, aside from, except for, save for",
    "cc": "as well as, and so, and then, but also, let alone, and yet",
    "sub": "' cause, now that, so that, as soon as, as long as, so long as, given that, even though, even if, in case, provided that, seeing that, the moment, the second, the instant, the minute, only that, as if, as though, by the time, not that, in order that, except that, considering that, which is why, from where, from which, which means that, which means, from where, that is why, this is why, that 's why, this means that, it means that, that means that, this means, that means",
    "det": "not 1 of, not a single 1 of, not even 1 of, more than enough, not enough, too little, precious little, a lot of, lots of, loads of, tons of, heaps of, acres of, plenty of, 1 and the same, not a single, not 1, not a, not any, a pair of, a couple of, 1 of, both of, all of, neither of, none of, each of, any of, 2 of, 3 of, 4 of, some of, most of, many of, a bit of, a set of, a piece of, the whole of",
    "pron": "no one, no piece",
    "side": "the opponent, our opponent, your opponent, my opponent, his opponent, the other side, the other player, the first player, the second player, the enemy, both sides, both players, each side, each player, neither side, neither player, both kings, either side, both camps, either camp, neither camp, nobody",
}  # fmt: skip


_DEGREES = (
    "very ",
    "really ",
    "too ",
    "also ",
    "fully ",
    "so ",
    "still ",
    "most ",
    "more ",
    "a little ",
    "a bit ",
    "a touch ",
    "a shade ",
)
"""Adverbs that an adjective may have; the two are no one word."""
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


@dataclass(frozen=True)
class Token:
    """A word or a turn of several. tags: what it may be. first, last: its words in the sentence, last one included.

    lemma: by tag. file: it is a file, for a hyphen ties it to a pawn or a file.
    """

    norm: str
    tags: frozenset[str]
    first: int
    last: int
    verbs: tuple[tuple[str, str], ...] = ()
    noun: str = ""
    plural: bool = False

    def is_(self, *tags: str) -> bool:
        return not self.tags.isdisjoint(tags)


@cache
def _verb_forms() -> dict[str, tuple[tuple[str, str], ...]]:
    """From a word to the verbs of which it is a form: (base, form)."""
    found: dict[str, list[tuple[str, str]]] = {}
    bases = {w.split()[0] for words in VERBS.values() for w in words} - {
        "be",
        "have",
        "do",
        "can",
        "still",
        "back",
        "own",
    }
    for base in sorted(bases):
        for name, word in zip(("base", "third", "past", "part", "ing"), forms(base), strict=True):
            if (base, name) not in found.setdefault(word, []):
                found[word].append((base, name))
    found["eyeing"] = [("eye", "ing")]
    return {word: tuple(said) for word, said in found.items()}


def plural(noun: str) -> str:
    """The plural of a noun, or of the noun that a turn begins with ("bishop of opposite colours") or ends in.

    >>> [plural(n) for n in ("outpost", "majority", "bishop of opposite colours")]
    ['outposts', 'majorities', 'bishops of opposite colours']
    """
    head, joint, rest = noun.partition(" of ")
    if not joint:
        head, joint, rest = noun.partition(" on ")
    if head.endswith("y") and head[-2] not in "aeiou":
        head = head[:-1] + "ies"
    elif head.endswith(("s", "x", "ch", "sh")):
        head += "es"
    else:
        head += "s"
    return head + joint + rest


@cache
def _dictionary() -> dict[str, tuple[str, str, bool]]:
    """From a word or turn to its tag, its lemma, and whether it is a plural. Words with several tags stand in `_tags`."""
    found: dict[str, tuple[str, str, bool]] = {}
    for words in NOUNS.values():
        for word in words:
            found[word] = ("noun", word, False)
            found.setdefault(plural(word), ("noun", word, True))
    for words in ADJECTIVES.values():
        for word in words:
            found.setdefault(word, ("adj", word, False))
    for words in JUDGEMENTS.values():
        for word in words:
            if " " in word and not word.startswith(_DEGREES):
                found.setdefault(word, ("adj", word, False))
    found["men"] = ("noun", "man", True)
    for tag, words_ in _TURNS.items():
        for word in words_.split(", "):
            found[word] = (tag, word, False)
    for tag, words in ADVERBS.items():
        for word in words:
            found.setdefault(word, (tag, word, False))
    return found


@cache
def _turns() -> dict[str, tuple[tuple[str, ...], ...]]:
    """Turns of several words by their first, the longest first."""
    found: dict[str, list[tuple[str, ...]]] = {}
    for turn in _dictionary():
        words = tuple(turn.split())
        if len(words) > 1:
            found.setdefault(words[0], []).append(words)
    return {first: tuple(sorted(t, key=len, reverse=True)) for first, t in found.items()}


@cache
def _tags(norm: str) -> frozenset[str]:
    return frozenset(tag for tag, words in _PLAIN.items() if norm in words.split())


def tokens(sentence: Sentence) -> list[Token]:
    """The tokens of a sentence, in order."""
    return list(_tokens(sentence))


def _tokens(sentence: Sentence) -> Iterator[Token]:
    words = sentence.words
    at = 0
    while at < len(words):
        if at and words[at - 1].norm == "what" and words[at].norm in {"we", "you"}:
            yield _token(sentence, words[at].norm, at, at)  # "what we see" is no "as we see"
            at += 1
            continue
        size = _opening(sentence, at)
        if size:
            norm = " ".join(w.norm for w in words[at : at + size])
            yield Token(norm, frozenset({"noun"}), at, at + size - 1, noun="opening")
            at += size
            continue
        size = _turn([w.norm for w in words[at : at + 9]], words[at - 1].norm if at else "")
        norm = " ".join(w.norm for w in words[at : at + size])
        yield _token(sentence, norm, at, at + size - 1)
        at += size


@cache
def _opening_names() -> dict[str, tuple[tuple[str, ...], ...]]:
    """The names of openings by their first word, the longest first."""
    found: dict[str, list[tuple[str, ...]]] = {}
    for name in names():
        found.setdefault(name.split()[0], []).append(tuple(name.split()))
    return {first: tuple(sorted(n, key=len, reverse=True)) for first, n in found.items()}


def _opening(sentence: Sentence, at: int) -> int:
    """How many words from here on name an opening; names have capitals: "the Two Knights", but "the two knights"."""
    words = sentence.words
    for name in _opening_names().get(words[at].norm, ()):
        said = words[at : at + len(name)]
        if tuple(w.norm for w in said) == name and all(
            sentence.text[w.start].isupper() for w in said if w.norm not in _SMALL
        ):
            return len(name)
    return 0


_INSTANTS = frozenset({("the", "second"), ("the", "instant"), ("the", "minute")})
_OPENS = frozenset({"the", "that", "this", "his", "our", "your", "my", "their", "he", "we", "you", "she", "it", "they", "white", "black"})  # fmt: skip
"""Words with which a clause begins."""

_SMALL = frozenset({"'s", "defence", "defense", "game", "variation", "system", "attack"})


def _turn(norms: list[str], before: str) -> int:
    for turn in _turns().get(norms[0], ()):
        if tuple(norms[: len(turn)]) == turn:
            if (
                turn[1:] == ("on",)
                and turn[0] in {"up", "out", "over"}
                and (_verb_forms().get(before) or before.endswith(("self", "selves")))
            ):
                continue  # "was given up on e5"
            if turn in _BARE and not (
                norms[2:3] == []
                or norms[2] in {",", ".", "white", "black", "we", "he", "you", "they", "the", "it"}
            ):
                continue  # "with this capture"
            if turn == ("no", "good") and norms[2:3] and norms[2] not in _BEHIND:
                continue  # "no good square"
            if turn == ("the", "moment") and norms[2:3] and norms[2] in {"for", "to", "of", "has"}:
                continue  # "the moment for e4 has come"
            if turn in _INSTANTS and norms[2:3] and norms[2] not in _OPENS:
                continue  # "the second rank"
            if (
                turn in {("so", "that"), ("now", "that")}
                and norms[2:3]
                and norms[2] in {"'s", "is", "was"}
            ):
                continue  # "so that's a pawn"
            return len(turn)
    return 1


def _token(sentence: Sentence, norm: str, first: int, last: int) -> Token:
    word = sentence.words[first]
    if first == last and word.move is None and _SQUARE.fullmatch(norm):
        return Token(norm, frozenset({"square", "move"}), first, last)
    if word.move is not None and first == last:
        square = _SQUARE.fullmatch(norm) is not None
        tags = {"square", "move"} if square else {"move"}
        if square and word.spoken:
            tags = {"move"}
        return Token(norm, frozenset(tags), first, last)
    if first == last and norm in "abcdefgh" and _is_file(sentence, first):
        return Token(norm, frozenset({"file"}), first, last)
    if norm.isdigit():
        return Token(norm, frozenset({"number" if len(norm) <= 3 else "stray"}), first, last)
    single = norm.removesuffix("s")
    if single in LETTERS and norm not in {"s"}:
        return Token(norm, frozenset({"piece"}), first, last, noun=single, plural=norm != single)
    tags = set(_tags(norm))
    verbs = _verb_forms().get(norm, ())
    known = _dictionary().get(norm)
    lemma, many = "", False
    if known is not None:
        tags.add(known[0])
        if known[0] == "noun":
            lemma, many = known[1], known[2]
    if verbs and first == last:
        tags.add("verb")
    if not tags:
        tags, verbs = _guess(norm)
    if norm == "done" and first == last:
        tags, verbs = tags | {"verb"}, (("do", "part"),)
    if norm == "nowhere" and _leads_on(sentence, last + 1):
        return Token(norm, frozenset({"pron"}), first, last)  # "has nowhere to go"
    if norm == "doing":
        tags, verbs = {"verb", "word"}, (("do", "ing"),)
    if first != last and known is not None:
        tags, verbs = {known[0]}, ()
    return Token(norm, frozenset(tags), first, last, verbs, lemma, many)


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


def _guess(norm: str) -> tuple[set[str], tuple[tuple[str, str], ...]]:
    """What a word that no table lists may be."""
    if norm.endswith("ly") and len(norm) > 4:
        return {"adverb"}, ()
    if norm.endswith("ing") and len(norm) > 5:
        return {"word", "verb"}, ((norm, "ing"),)
    if norm.endswith("ed") and len(norm) > 4:
        return {"word", "verb"}, ((norm, "past"), (norm, "part"))
    if norm.endswith("s") and len(norm) > 3 and not norm.endswith("ss"):
        return {"word", "third"}, ((norm, "third"),)
    return {"word"}, ()
