"""A table of synonyms: from text in lines to sets.

>>> table("attack: hit, strike at # said of pieces")
{'attack': ('attack', 'hit', 'strike at')}
"""

from __future__ import annotations

Table = dict[str, tuple[str, ...]]


def table(text: str) -> Table:
    """One line, one idea: `name: word, word`. The name is a word of its line itself; a line that ends in a comma goes on."""
    found: Table = {}
    for line in text.replace(",\n", ", ").splitlines():
        said = line.partition("#")[0].strip()
        if not said:
            continue
        name, _, words = said.partition(":")
        listed = [w.strip() for w in words.split(",") if w.strip()]
        found[name] = tuple(dict.fromkeys((name, *found.get(name, ()), *listed)))
    return found


def members(name: str, words: Table) -> frozenset[str]:
    """The words of a line; a word that names no line stands for itself."""
    return frozenset(words.get(name, (name,)))
