"""Verbs: all the forms in which a teacher says that something is so, was so, will be so, or is not.

A phrase writes `<win>` and means any finite form: "wins", "has won", "is going to win", "cannot win", "never wins". What the
form says beside the verb is kept, so that a "not" is never lost and a "would" is never taken for a fact.

>>> import re
>>> group = re.compile(finite("win"))
>>> Verb.read(group.fullmatch(" does not win").group())
Verb(negated=True, modal='', done=False, past=False)
>>> Verb.read(group.fullmatch(" would simply have won").group()).modal
'would'
>>> [bool(group.fullmatch(said)) for said in (" wins", " has just won", " winning", " to win")]
[True, True, False, False]
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

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

ADVERBS = (
    "already|now|also|really|simply|just|still|even|then|therefore|actually|clearly|immediately|suddenly|thus|indeed|again|once more|once again|at once|"
    "of course|in fact|too|both|all|always|ever|definitely|certainly|surely|easily|quickly|soon|finally|eventually|effectively|practically|merely|only|"
    "probably|perhaps|maybe|possibly|apparently|nicely|directly|instantly|duly|first|next|straight away|for now|happily|calmly|quietly|cheerfully|neatly|"
    "conveniently|temporarily|permanently|completely|fully|hereby|here|there|instead|otherwise|never|no longer|hardly|scarcely|barely|almost|nearly"
)
_A = rf"(?: (?:{'|'.join(sorted(ADVERBS.split('|'), key=len, reverse=True))}))*"
_NOT = r"(?: not)?"
_BE = r" (?:is|are|am|was|were|'re|'m)"
_MODAL = r" (?:will|'ll|can|could|would|'d|may|might|must|shall|should)"


@dataclass(frozen=True, slots=True)
class Verb:
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

    @classmethod
    def read(cls, text: str) -> Verb:
        """Reads a matched verb group."""
        words = text.split()
        said = set(words)
        modal = ""
        for word in words:
            if word in {"can", "could", "would", "may", "might", "must", "shall", "should"}:
                modal = word
                break
            if word in {"will", "'ll", "going", "about"}:
                modal = "will"
                break
            if word == "'d":
                modal = "would"
                break
        if said & {"almost", "nearly", "hardly", "scarcely", "barely"}:
            modal = "almost"
        perfect = (
            bool(said & {"has", "have", "had", "'ve"})
            and "to" not in said
            and words[-1] not in {"has", "have", "had"}
        )
        past = words[0] in {"was", "were", "did", "had"} or "was" in said or "were" in said
        negated = bool(said & {"not", "never"}) or "no longer" in text
        return cls(negated, modal, perfect or past, past)


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


def _words(text: str) -> str:
    return " " + re.escape(text).replace(r"\ ", " ")


@cache
def finite(verb: str) -> str:
    """A regular expression for any finite form, each word with a blank before it. A verb may be a choice: "win/gain/pick up"."""
    return _choice(_finite(v) for v in verb.split("/"))


@cache
def passive(verb: str) -> str:
    """The same for the passive: "is pinned", "will be attacked", "has not been given"."""
    return _choice(_passive(v) for v in verb.split("/"))


@cache
def bare(verb: str) -> str:
    """The base, after "to" or a modal that the phrase itself writes."""
    return _choice(_A + _words(forms(v)[0]) for v in verb.split("/"))


@cache
def participle(verb: str) -> str:
    """The -ing form: "winning", "not winning", "having won"."""
    return _choice(
        _NOT + _A + f"(?:{_words(forms(v)[4])}| having{_A}{_words(forms(v)[3])})"
        for v in verb.split("/")
    )


@cache
def done(verb: str) -> str:
    """The past participle alone: "attacked", "pinned"."""
    return _choice(_A + _words(forms(v)[3]) for v in verb.split("/"))


def _choice(patterns: object) -> str:
    return f"(?:{'|'.join(patterns)})"  # type: ignore[arg-type]


def _be() -> str:
    return (
        rf"(?:{_A}(?:{_BE}| 's){_A}{_NOT}{_A}|{_A} (?:does|do|did) not{_A} be|{_A}(?: has| have| had| 've){_NOT}{_A} been"
        rf"|{_A}{_MODAL}{_NOT}{_A} (?:be|have been)|{_A}{_BE}{_NOT} going to be|{_A} (?:remains?|stays?|becomes?|gets?|got))"
    )


def _finite(verb: str) -> str:
    base, third, past, part, ing = (_words(form) for form in forms(verb))
    if verb == "be":
        return _be()
    return (
        rf"(?:{_A}(?:{third}|{base}|{past})"
        rf"|{_A} (?:does|do|did){_NOT}{_A}{base}"
        rf"|{_A} (?:has|have|had|'ve|'s){_NOT}{_A}{part}"
        rf"|{_A}(?:{_BE}| 's){_NOT}{_A}(?: (?:going|about|set|able|bound|sure|ready|certain) to)?{_A}(?:{ing}|{base})"
        rf"|{_A}{_MODAL}{_NOT}{_A}(?: be able to)?{_A}(?:{base}| have{_A}{part}| be{_A}{ing})"
        rf"|{_A} (?:manages?|gets?|got|has|have|needs?) to{_A}{base})"
    )


def _passive(verb: str) -> str:
    part = _words(forms(verb)[3])
    return rf"{_be()}{_A}(?: being)?{_A}{part}"
