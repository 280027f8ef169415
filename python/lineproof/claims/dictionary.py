"""The dictionary: what words and turns may be, by the lexicon and by their endings."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cache, lru_cache

from .board import LETTERS
from .lexicon import ADJECTIVES, ADVERBS, JUDGEMENTS, NOUNS, STANDINGS, VERBS
from .openings import names
from .token import Token
from .verbs import forms

KEPT = 4096
"""Words that are kept with what they may be."""

_NUMBER = frozenset({"number"})

_STRAY = frozenset({"stray"})

_PIECE = frozenset({"piece"})

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
    "sub": "wherever whereupon whereby because since for as while if unless when whenever once though although whereas until till where lest whether that after before than",
    "wh": "what how why where when who whom which whose whatever whoever whichever",
    "clitic": "'s",
    "punct": ", ; : - ( ) ?",
    "particle": "off up ahead away back home down out in on over behind forward along through by apart aside gone around",
    "adj": "clear outside annoying troubling worrying irritating disturbing surprising embarrassing interesting promising pressing crushing devastating charming disgusting lingering striking appealing disappointing frightening terrifying amusing convincing boring tiring exciting challenging demanding rewarding free afraid compulsory obligatory mandatory imperative careless careful unable hot short long wise plain own poor great big small little large huge tiny nice lovely nasty ugly beautiful pretty fine solid strong powerful mighty brave bold greedy quiet natural simple obvious modest humble innocent careless clumsy timid hasty slow quick fast early late sharp subtle cunning clever neat elegant brilliant splendid excellent perfect ideal wonderful superb terrible awful dreadful horrible ghastly rotten serious grave gross plain outright bad good real true whole entire single sole last next same other new old young first second third fourth fifth important dangerous deadly lethal vital crucial key main central lasting permanent chronic eternal healthy extra useful useless active passive aggressive defensive tactical positional material dark light high low heavy easy hard difficult tricky typical classic classical textbook pure mere sheer total complete full half empty ready sorry happy glad busy tired lazy friendly light-squared dark-squared squared coloured colored legal illegal sensible reasonable decent sound unsound double minor major certain sure likely unlikely enormous considerable significant slight clean straight loyal faithful proud lone lonely former remaining entire gorgeous pleasant unpleasant comfortable uncomfortable cramped precise accurate correct wrong right",
}  # fmt: skip

_TURNS: dict[str, str] = {
    "to": "in order to, so as to",
    "modal": "ought to, needs to",
    "prep": "as in, just as in, like in, just like in, as after, just as after, like after, unlike in, unlike after, in contrast to, contrary to, as opposed to, rather than, such as, in place of, in front of, because of, instead of, on account of, thanks to, in view of, owing to, due to, in return for, out of, next to, on top of, in spite of, by means of, at the cost of, in reply to, ahead of, away from, in exchange for, on behalf of, close to, as for, in answer to, courtesy of, on to, short of, at the expense of, in the face of, along with, together with, free of, rid of, by virtue of, on the side of, by way of, at the hands of, over on, up on, out on, apart from, other than, aside from, except for, save for",
    "cc": "as well as, and so, and then, but also, let alone, and yet",
    "sub": "' cause, now that, so that, as soon as, as long as, so long as, given that, even though, even if, in case, provided that, seeing that, the moment, the second, the instant, the minute, only that, as if, as though, by the time, not that, in order that, except that, considering that, which is why, from where, from which, which means that, which means, from where, that is why, this is why, that 's why, this means that, it means that, that means that, this means, that means",
    "det": "half of, a third of, a quarter of, the majority of, the great majority of, nearly all, almost all, hardly any, almost no, not many, very few, only a few, 9 out of 10, 8 out of 10, not 1 of, not a single 1 of, not even 1 of, more than enough, not enough, too little, precious little, a lot of, lots of, loads of, tons of, heaps of, acres of, plenty of, 1 and the same, not a single, not 1, not a, not any, a pair of, a couple of, 1 of, both of, all of, neither of, none of, each of, any of, 2 of, 3 of, 4 of, some of, most of, many of, a bit of, a set of, a piece of, the whole of",
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


@cache
def verb_forms() -> dict[str, tuple[tuple[str, str], ...]]:
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
    for name, word in zip(("third", "past", "part", "ing"), forms("back")[1:], strict=True):
        found.setdefault(word, []).append(("back", name))
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


_OF_SIDES = ("winning", "lost", "clearly better", "better", "worse", "clearly worse", "level", "unclear")  # fmt: skip
"""Lines of adjectives in STANDINGS."""


@cache
def _dictionary() -> dict[str, tuple[str, str, bool]]:
    """From a word or turn to its tag, its lemma, and whether it is a plural. Words with several tags stand in `plain_tags`."""
    found: dict[str, tuple[str, str, bool]] = {}
    for words in NOUNS.values():
        for word in words:
            found[word] = ("noun", word, False)
            found.setdefault(plural(word), ("noun", word, True))
    for words in ADJECTIVES.values():
        for word in words:
            found.setdefault(word, ("adj", word, False))
    for words in (*JUDGEMENTS.values(), *(STANDINGS[line] for line in _OF_SIDES)):
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


Turn = tuple[str, ...]
"""Several words that are one token."""


def _by_beginning(entries: Iterable[str]) -> dict[tuple[str, str], tuple[Turn, ...]]:
    """Turns of several words by their first two, the longest first."""
    found: dict[tuple[str, str], list[Turn]] = {}
    for entry in entries:
        words = tuple(entry.split())
        if len(words) > 1:
            found.setdefault(words[:2], []).append(words)  # type: ignore[arg-type]
    return {first: tuple(sorted(t, key=len, reverse=True)) for first, t in found.items()}


@cache
def turns() -> dict[tuple[str, str], tuple[Turn, ...]]:
    """Turns of several words by their first two, the longest first."""
    return _by_beginning(_dictionary())


@cache
def plain_tags() -> dict[str, frozenset[str]]:
    """What the plain words may be."""
    found: dict[str, set[str]] = {}
    for tag, words in _PLAIN.items():
        for word in words.split():
            found.setdefault(word, set()).add(tag)
    return {word: frozenset(tags) for word, tags in found.items()}


@cache
def opening_names() -> dict[str, tuple[Turn, ...]]:
    """The names of openings by their first word, the longest first."""
    found: dict[str, list[Turn]] = {}
    for name in names():
        found.setdefault(name.split()[0], []).append(tuple(name.split()))
    return {first: tuple(sorted(n, key=len, reverse=True)) for first, n in found.items()}


@lru_cache(KEPT)
def of_word(norm: str, single: bool) -> Token:
    """What a word or, not single, a turn is by itself, wherever it stands."""
    if norm.isdigit():
        return Token(norm, _NUMBER if len(norm) <= 3 else _STRAY, 0, 0)
    piece = norm.removesuffix("s")
    if piece in LETTERS and norm != "s":
        return Token(norm, _PIECE, 0, 0, noun=piece, plural=norm != piece)
    tags = set(plain_tags().get(norm, ()))
    verbs = verb_forms().get(norm, ())
    known = _dictionary().get(norm)
    lemma, many = "", False
    if known is not None:
        tags.add(known[0])
        if known[0] == "noun":
            lemma, many = known[1], known[2]
    if verbs and single:
        tags.add("verb")
    if not tags:
        tags, verbs = _guess(norm)
    if norm == "done" and single:
        tags, verbs = tags | {"verb"}, (("do", "part"),)
    if norm == "doing":
        tags, verbs = {"verb", "word"}, (("do", "ing"),)
    if not single and known is not None:
        tags, verbs = {known[0]}, ()
    return Token(norm, frozenset(tags), 0, 0, verbs, lemma, many)


def _guess(norm: str) -> tuple[set[str], tuple[tuple[str, str], ...]]:
    """What a word that no table lists may be."""
    if norm.endswith("ly") and len(norm) > 4:
        return {"adverb"}, ()
    if norm.endswith("ing") and len(norm) > 5:
        return {"word", "verb"}, ((norm, "ing"),)
    if norm.endswith("ed") and len(norm) > 4:
        return {"word", "verb"}, ((norm, "past"), (norm, "part"))
    if norm.endswith("s") and len(norm) > 3 and not norm.endswith(("ss", "ous", "us", "is")):
        return {"word", "third"}, ((norm, "third"),)
    return {"word"}, ()


__all__ = [
    "KEPT",
    "Turn",
    "of_word",
    "opening_names",
    "plain_tags",
    "plural",
    "turns",
    "verb_forms",
]
