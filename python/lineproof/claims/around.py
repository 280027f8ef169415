"""What may stand around a claim in a clause without changing it, and what forbids to read it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from .sentence import spelt
from .word import Word


def _longest_first(choices: str) -> str:
    """An alternation in which "for the time being" comes before "for"."""
    return "|".join(sorted(choices.split("|"), key=len, reverse=True))


_ADVERBS = (
    "by contrast|for the time being|on the other hand|in contrast|on top of that|careful now|at this moment|at the very least|at least|with this|"
    "just like that|then|even so|even now|mind|sure enough|not surprisingly|strangely enough|believe it or not|in practice|in theory|"
    "now|so|and|but|here|then|again|already|of course|in fact|indeed|well|actually|therefore|thus|hence|still|suddenly|simply|"
    "in other words|as a result|in short|as you see|as you can see|as we see|as we saw|you see|you see that|you can see that|"
    "we see that|notice that|notice|note that|note|notice how|see how|look|remember that|remember|the point is that|the result is that|"
    "this means that|that means that|which means that|it means that|it turns out that|in this position|in this line|in this way|"
    "at this moment|at the moment|for the moment|for now|today|at the end of this line|at the end|in the end|in the final position|"
    "count again|count|look again|by the way|also|even so|all the same|nevertheless|yet|because|since|for|which|that|who|where|and so|"
    "and now|and here|but now|but here|so now|however|once more|this time|after this|after that|only|both times|as in the main line|yes|no doubt|"
    "the truth is that|the fact is that|first of all|first|finally|at last|objectively|all in all|all told|meanwhile|just|with that|thanks to this|"
    "the reason is that|the trouble is that|the problem is that|the trouble|the point|be careful|careful|watch out|sadly|luckily|happily|thereby|instead|"
    "do not forget that|do not forget|mind you|so far|by now|in return|to be precise|strictly speaking|materially|on the board|in this case|for example"
)
_PLAY = "with (?:good|best|correct|accurate|careful|sensible) play(?: by both sides| on both sides| from both sides)?"
_AGAINST = r"against (?:the|this|that) (?:\w+ )?(?:reply|move|defence|defense|answer|retreat|capture|set up)"
_WITH_PIECE = r"(?:from [a-h][1-8]|(?:with|even with|because of|thanks to) (?:the|his|our|her|your|a|black 's|white 's) (?:king|queen|rook|bishop|knight|pawn) on [a-h][1-8])"
LEAD = re.compile(
    rf"^(?: (?:{_PLAY}|{_AGAINST}|{_WITH_PIECE}|{_longest_first(_ADVERBS)})(?= )| [,:](?= ))"
)
"""One word or turn before a claim that leaves its meaning alone."""

_CONDITIONS = {
    "a condition that is not on the board": r"^(?: and| but| so)? once(?= )| (?:if|unless|whenever|would|'d|could|might|provided|except (?:after|if|when|for|in|with|that)|until|"
    r"otherwise|were|suppose|imagine|assuming|as long as|so long as|lest|may(?! not (?:take|castle|capture|move|play|leave))|when|whatever|whoever)(?= |$)",
    "said of what usually happens, not of this position": r" (?:usually|often|sometimes|normally|generally|rarely|most of the time|mostly)(?= |$)",
    "advice or a wish": r" (?:should|hope|hopes|hoping|wants|want|tries|try|trying|dreams|dream|nobody should)(?= |$)",
    '"once and for all" is no count': r"^ for all$",
    "almost, and so neither one thing nor the other": r" (?:almost|nearly|hardly|barely|scarcely)(?= |$)",
    "advice against a move that is not on the board": r"^(?: (?:and|but|so|please|,))* do not (?:run|go|move|play|take|push|retreat|capture|recapture|rush|touch|grab|exchange|swap|trade|castle)(?= |$)",
}
_COMPILED = {why: re.compile(pattern) for why, pattern in _CONDITIONS.items()}


def condition(words: Sequence[Word]) -> str:
    """Why a sentence of which nothing was read should not be, by the first of its parts that says so, or "".

    >>> from .sentence import words
    >>> condition(words("White is lost if he takes."))
    'a condition that is not on the board'
    """
    ends = [i for i, w in enumerate(words) if i and w.norm in BREAKS]
    for first, last in zip([0, *ends], [*ends, len(words)], strict=True):
        line = spelt(words[first:last])
        for why, pattern in _COMPILED.items():
            if pattern.search(line):
                return why
    return ""


LIMITING = re.compile(
    r" (?:apart|except|only|or|else|seemingly|supposedly|allegedly|exaggeration|exaggerated|not really|in theory|on paper|apparently|in name|at best|wrong|"
    r"as long as|so long as|which is|which was|until|for a moment|so far(?! as)|in a way|in a sense|far from|nothing)(?= |$)"
)
"""Words in an unread clause that may take back or narrow the clause before it."""

SAYS = re.compile(
    r" (?:says|say|said|thinks|think|thought|claims|claim|claimed|believes|believe|according|books|beginners|experts|wrote|writes|told|tells|rumour|supposed)(?= |$)"
)
"""Words of what others say."""

ABOUT = frozenset(
    [
        "white",
        "black",
        "we",
        "you",
        "he",
        "she",
        "it",
        "they",
        "this",
        "that",
        "which",
        "both",
        "neither",
        "nobody",
        "nothing",
        "everything",
        "king",
        "queen",
        "rook",
        "bishop",
        "knight",
        "pawn",
        "kings",
        "queens",
        "rooks",
        "bishops",
        "knights",
        "pawns",
        "position",
        "game",
        "move",
        "moves",
        "material",
        "mate",
        "checkmate",
        "check",
        "attack",
        "defence",
        "line",
        "side",
        "sides",
        "development",
    ]
)
"""What a claim can be made of; "Good evening" is of none of these."""

TRADE = frozenset(
    [
        "attacks",
        "attack",
        "attacked",
        "takes",
        "take",
        "taken",
        "threatens",
        "threaten",
        "threat",
        "forced",
        "defends",
        "defend",
        "castled",
        "castles",
        "castle",
        "doubled",
        "isolated",
        "passed",
        "check",
        "checks",
        "sacrifice",
        "sacrifices",
        "regains",
        "regain",
        "gives",
        "controls",
        "initiative",
        "compensation",
        "space",
        "outpost",
        "file",
        "diagonal",
        "tempo",
        "stops",
        "prevents",
        "exchange",
        "exchanges",
        "trades",
        "pair",
        "stalemate",
        "perpetual",
        "trapped",
    ]
)
"""Words of the trade: a sentence with one of them may claim something, though no kind reads it yet."""

QUOTED = re.compile(
    r"^ (?:you might|you may|one might|one may|some people|some say|some players|many players|many people|most players|people say|people think|they say|it is tempting|"
    r"it looks as if|it looks like|it may look|it might look|at first sight|at first glance|beginners|everybody thinks|everyone thinks|my first|i once|"
    r"i remember|i like|i love|i prefer|i would rather|i always|i never|i used to|years ago|last year|last week|when i was|the old saying|an old saying|"
    r"a pupil|a student|one of you|somebody|someone|the books say|the engine|(?:(?:that|this|it) )?(?:is|was) (?:just |really |simply )?too bad|let us|let me|pause|stop here|ask yourself|try to|do not be|never|always|"
    r"it (?:appears|seems|looks)(?: that| as if| as though)(?= .* but )|as the saying goes|tell me|homework|for next week|next week|take a moment|think about|do you|can you|what (?:a|an|if|about|do|does|did|now|next)|why|how|who)(?= |$)"
)
"""Openings of sentences that speak of what others think, of taste, of the class: never a claim."""

TOLD = re.compile(
    r"^ (?:pause|stop|take a moment|take a look|listen|see how|look how|note how|notice how|homework|let us|let me|pay attention|look closely|see)(?: \w+){0,6} :(?= \w)"
)
"""A word to the class before a colon, behind which something may be claimed."""

CORRECTED = re.compile(
    r" (?<! feel )(?:, no ,(?! (?:it|he|she|we|they|you|that|this|there) [^,]*?\b(?:not|never|no)\b)|no , no(?! ,? ?do not)|i mean|what am i saying|i take (?:it|that|this|it all) back|strike that|scratch that|let me correct|or rather|(?<! a )sorry(?! sight| state| figure| piece| bishop| place| spectacle)|i misspoke|(?:please )?(?:forget|ignore|disregard)(?: that| what)? i (?:ever |just )?(?:said|mentioned|suggested)(?: (?:that|this|it|anything))?|correction|wait|hang on|no , wait|excuse me)(?= |$)"
)
"""Marks of a self-correction: what was said before it is taken back."""

PUNCTUATION = frozenset({",", ";", ":", "-", "(", ")"})

BREAKS = frozenset(
    {
        ",",
        ";",
        ":",
        "-",
        "(",
        ")",
        "and",
        "but",
        "so",
        "because",
        "since",
        "for",
        "while",
        "as",
        "which",
        "when",
        "where",
        "with",
        "though",
        "although",
        "yet",
    }
)
"""Words at which a clause may begin."""
