"""Move marks: what a move costs."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any

from lineproof.claims.bands import Mark as Earned
from lineproof.claims.bands import edge, edge_of_two, mark
from lineproof.claims.board import title
from lineproof.claims.claim import Ask, Claim, Judgement, Mark, Outcome
from lineproof.claims.cost import LOST, spelled, taught, told, weigh
from lineproof.claims.here import Here, Unread
from lineproof.claims.kind import Kind
from lineproof.claims.lexicon import JUDGEMENTS, NOUNS, members
from lineproof.claims.noun import Noun
from lineproof.claims.played import around, contrasted, named_before, played
from lineproof.claims.sentence import Sentence, sentences
from lineproof.claims.worded import NOMINAL
from lineproof.claims.written_marks import marked

_GLYPHS = {1: "!", 2: "?", 3: "!!", 4: "??", 5: "!?", 6: "?!"}
"""PGN standard (1994), NAG table of section 10."""

_MARKS = {"good": "!", "brilliant": "!!", "dubious": "?!", "bad": "?", "terrible": "??"}
_ADJECTIVES: dict[str, str] = {
    w: m for line, m in _MARKS.items() for w in members(line, JUDGEMENTS)
}
_FAULTS = {"mistake": "?", "blunder": "??", "inaccuracy": "?!"}
_NOUNS: dict[str, str] = {w: m for line, m in _FAULTS.items() for w in members(line, JUDGEMENTS)}
_SLIGHT, _GRIEVOUS = members("slight", JUDGEMENTS), members("grievous", JUDGEMENTS)
_MOVES = (
    frozenset(NOUNS["move"])
    | NOMINAL
    | {
        "idea",
        "plan",
        "way",
        "try",
        "defence",
        "decision",
        "thing",
        "one",
        "reaction",
        "way out",
        "escape",
        "solution",
        "remedy",
        "cure",
        "antidote",
        "course",
    }
)
_SLOWER = frozenset({"other", "slower", "different", "quieter", "better", "stronger", "another"})
_ANSWERS = frozenset({"answer", "reply", "response", "reaction", "remedy", "antidote", "cure", "solution", "defence", "way"})  # fmt: skip
_OTHERS = frozenset(
    {
        "second",
        "third",
        "worst",
        "least",
        "only",
        "sole",
        "fewer",
        "less",
        "better",
        "first",
        "next",
    }
)


def judged(noun: Noun) -> str | None:
    """The mark that a noun phrase gives: "a serious mistake", "a lovely reply", "the move"."""
    said = frozenset(noun.adjectives)
    if noun.type != "noun" or noun.plural or noun.parts or noun.count is not None:
        return None
    fault = _NOUNS.get(noun.head)
    if fault is not None:
        if not said.isdisjoint(_SLIGHT):
            return "?!"
        return "??" if fault == "?" and not said.isdisjoint(_GRIEVOUS) else fault
    if noun.head in {"best", "strongest"} and said.isdisjoint(_OTHERS):
        return "!"
    if noun.head not in _MOVES or not said.isdisjoint(_OTHERS):
        return None
    if noun.head == "move" and noun.det == "the" and noun.text == "the move" and not said:
        return "!"
    if noun.head in {"one", "thing"} and noun.det == "the" and "good" in said:
        return None  # "that's the good one": the better of two pieces
    marks = [_ADJECTIVES[a] for a in noun.adjectives if a in _ADJECTIVES]
    if "very" in said and marks[:1] == ["?"]:
        return "??"
    return marks[0] if len(set(marks)) == 1 else None


def _known(noun: Noun) -> str | None:
    """The mark of a noun phrase that says which move it is: "the best move", "his mistake"."""
    known = noun.det in {"the", ""} or bool(noun.whose)
    return judged(noun) if known or noun.head in {"best", "strongest"} else None


def _author(noun: Noun) -> str | None:
    return noun.text if noun.type == "side" and noun.text in {"i", "we"} else None


_HOW = {
    **dict.fromkeys(("correctly", "precisely", "accurately", "well", "wisely", "strongly", "properly", "rightly", "sensibly", "soundly", "exactly right", "perfectly", "splendidly", "excellently", "superbly"), "!"),
    **dict.fromkeys(("badly", "wrongly", "poorly", "incorrectly", "weakly", "foolishly", "naively"), "?"),
    **dict.fromkeys(("carelessly", "inaccurately", "imprecisely", "hastily", "sloppily"), "?!"),
}  # fmt: skip
"""Adverbs that judge the move with which a side answers."""


def _glyph(noun: Noun) -> str | None:
    """ "An exclamation mark", "two question marks", "a dubious mark"."""
    mark = next(
        (
            m
            for line, m in (("exclamation mark", "!"), ("question mark", "?"))
            if noun.head in NOUNS[line]
        ),
        "",
    )
    if not mark or noun.no or (noun.count or 1) > 2:
        return None
    return mark * (noun.count or 1)


_WORDING = {
    Earned.GOOD: "a good move",
    Earned.DUBIOUS: "a questionable move",
    Earned.MISTAKE: "a poor move",
    Earned.BLUNDER: "a very poor move",
}
"""As the NAG table of the PGN standard words them (section 10)."""

_CLAIMED = {
    "!": Earned.GOOD,
    "!!": Earned.GOOD,
    "?!": Earned.DUBIOUS,
    "?": Earned.MISTAKE,
    "??": Earned.BLUNDER,
}

FRAMES = (
    "{deed} <=> {quality} [(for|of) {side}] if without=never",
    "{deed} <=> {mark} [for {side}] if without=never",
    "{deed} <=> {answering} (to|against) {anything} if without=never",
    "{deed} <make_sense> ; mark=!",
    "{deed} <ask_for_trouble> ; mark=?!",
    "<be:call/consider/judge> {deed} {mark} if modal=|must|may|can|would",
    "<be:call/consider/judge> {deed} {quality} if modal=|must|may|can|would",
    "{known} <=> {deed} if without=never",
    "{author} <call/consider/deem/judge/reckon/find/think> {deed} {mark} if modal=|would",
    "{author} <call/consider/deem/judge/reckon/find/think> {deed} {quality} if modal=|would",
    "{author} <regard/see/rate> {deed} as {mark}",
    "<~> something {quality} about {deed}",
    "{deed} <deserve/merit/earn> exclamation_mark ; mark=!",
    "{deed} <deserve/merit/earn> question_mark ; mark=?",
    "{nobody} <improve_on> {deed} ; mark=!",
    "<~> {nobody} (better|stronger) than {deed} ; mark=!",
    "{nobody} <=> (better|stronger) than {deed} ; mark=!",
    "<~> {improved} than {deed} ; mark=! if negated",
    "{side} <have> {nobody} (better|stronger) than {deed} ; mark=!",
    "{side} <have/find/see/know> {improved} than {deed} ; mark=! if negated",
    "{side} <have/find/see/know> anything (better|stronger) than {deed} ; mark=! if negated",
    "{side} <have/find/see/know> anything (better|stronger) than {deed} ; mark=! if modal=almost",
    "{side} <do better> than {deed} ; mark=! if negated modal=|can|could",
    "{side} <improve_on> {deed} ; mark=! if negated modal=|can|could",
    "{side} <make/commit> {fault} [(with|by) {deed}]",
    "{side} <blunder> [(with|by) {deed}] ; mark=??",
    "{side} <err> [(with|by) {deed}] ; mark=?",
    "{author} <recommend/advise/suggest> {other_move} ; mark=! if negated modal=|can|could|would",
    "{author} <recommend/advise> {deed} ; mark=! if active modal=|would",
    "<be:recommend/advise> {deed} ; mark=!",
    "{piece} <belong> (on|to) {square} ; mark=!",
    "<=> {mark} [(by|from|of|for) {side}] ; bare=yes if verbless lone",
    "<=> {known} [(by|from|of|for) {side}] ; bare=yes if verbless lone",
    "{side} <find/play/choose/pick/select/hit_on/hit_upon/come_up_with/spot/settle_on/decide_on> {mark}",
    "{side} <reply/answer/respond/react/continue/play/proceed/handle> [{it}] {how} [with {deed}]",
    "{moved} <=> {known}",
    "{moved} <=> {mark}",
    "{deed} <deserve/merit/earn/get/receive> {glyph} [from {author}]",
    "{deed} <=> worth {glyph}",
    "{author} <give/award/grant> {deed} {glyph} if modal=|would|will|must|can",
    "<give> {deed} {glyph} if bidden",
    "{recommendation} <=> {deed} ; mark=!",
    "{deed} <=> {recommendation} ; mark=!",
    "<be:improve_on> {deed} ; mark=! if negated modal=can|could",
    "<be:improve_on> {deed} +hardly|scarcely|barely ; mark=! if modal=can|could|almost",
    "<be> {nobody} (better|stronger) [+available] ; mark=!",
    "<=> {nobody} (better|stronger) [+available] ; mark=! if verbless",
    "{deed} <strike> {author} {quality}",
    "{author} <regard/see/rate/describe/view/judge> {deed} {quality} if modal=|would",
    "{side} <have> {nobody} (better|stronger) ; mark=!",
    "<~> anything (better|stronger) ; mark=! if negated",
    "{nobody} (better|stronger) <=> (available|possible) ; mark=!",
    "{side} <have> {best}",
    "{side} <do> {best} if modal=can",
)


def read(here: Here, slots: dict[str, Any]) -> list[Claim]:
    text = slots.get("deed")
    if re.match("1 |only 1 |just 1 ", text or ""):
        raise Unread("it is counted, not judged")
    if "piece" in slots:
        text = f"{slots['piece']} to {slots['square']}"
    if "quality" not in slots and text in {"it", "which", "that"}:
        text = "this"  # only a move is a mistake
    if "moved" in slots:
        named = here.last()
        if here.find(slots["moved"]) != [named.uci[2:4]]:
            raise Unread("it is not the piece that has just moved")
    elif text is None and (spoken := _beside(here)) is not None:
        named = here.named(spoken)
    elif "bare" in slots and not _alone(here):
        raise Unread("it may be the subject of what follows")
    else:
        named = played(here, text)
    own = re.match("(white|black)(?:'s|’s) ", here.said)
    if "bare" in slots and own is not None and own[1] != named.side:
        raise Unread("the move is not that side's")
    if (
        "side" in slots
        and slots["side"] not in {"you", "i"}
        and here.side(slots["side"]) != named.side
    ):
        raise Unread("the move is not that side's")
    verb = slots.get("verb")
    if "quality" in slots and _PLEASANT.fullmatch(here.said):
        raise Unread("it may be said of how one stands there")
    if here.said.startswith("being "):
        raise Unread("it is not said of the move")
    mark_ = next(
        slots[s]
        for s in ("quality", "mark", "answering", "known", "fault", "how", "glyph", "best")
        if s in slots
    )
    if "seems" in slots and (
        mark_ in {"!", "!!"} or text in {None, "this", "that", "it", "which"} or contrasted(here)
    ):
        raise Unread("what looks so need not be so")
    if "seems" in slots and _ODD.search(here.said):
        raise Unread("it is said of its looks")
    told = re.search(r"\b(?:called|considered|judged|regarded|deemed)\b", here.said)
    barred = verb is not None and verb.modal == "can" and verb.negated
    barred = barred and text not in {None, "this", "that", "it", "which"}  # "Nf6 can't be right"
    if (
        verb is not None
        and verb.modal in {"can", "must"}
        and not (told or barred or "author" in slots)
    ):
        raise Unread("it is guessed, not said")
    denied = verb is not None and bool(verb.negated)
    return [
        here.claim(
            KIND.id, named.side, spot=named.before, negated=denied, move=named.uci, mark=mark_
        )
    ]


_ODD = re.compile(r"\b(?:strange|odd|weird|bizarre|peculiar)$")
_PLEASANT = re.compile(
    r"(?:it|this|that)(?:'s| is| was| looks| seems| feels)?(?: \w+)? (?:nice|lovely|great|grand|neat|wonderful|beautiful|gorgeous)"
)
"""It pleases; a move that "it" is good of is called sound, strong or right."""


def _beside(here: Here) -> str | None:
    """The move that stands just before these words: "bishop takes b7, superb move"."""
    before = around(here)[0].rstrip()
    if not before.endswith((",", "-", ":", "\u2013", "\u2014")):
        return None
    said = [w for w in sentences(before, 0)[-1].words if w.norm not in {",", "-", ":"}]
    return named_before(here) if said and said[-1].move is not None else None


def _alone(here: Here) -> bool:
    """Whether the sentence ends with these words."""
    return re.match(r"\s*(?:$|[.!;:)\u2026])", around(here)[1]) is not None


def scan(here: Here, sentence: Sentence) -> list[Claim]:
    """A claim for each mark that is written behind a move: "8. Qxd4?? drops a piece"."""
    found = []
    for named, mark_, word in marked(here, sentence):
        start = sentence.start + word.start
        at = replace(
            here,
            words=sentence.text[word.start : word.end],
            start=start,
            end=sentence.start + word.end,
        )
        found.append(at.claim(KIND.id, named.side, spot=named.before, move=named.uci, mark=mark_))
    return found


def read_glyph(here: Here, nag: int, value: str) -> list[Claim]:
    named = here.last()
    return [
        here.claim(KIND.id, named.side, spot=named.before, move=named.uci, mark=value, glyph=nag)
    ]


def outcome(written: str, best: int, played: int, shallow: bool) -> tuple[Outcome, bool]:
    """What the points of best and played say of a mark, and whether it is one mark off.

    shallow: whether the move is the first that a shallow search likes.
    """
    earned = mark(best, played)
    if written == "!?":
        return (
            (Outcome.FAILS, False)
            if best - played >= 15 and earned is not Earned.GOOD
            else (Outcome.HOLDS, False)
        )
    claimed = _CLAIMED[written]
    off = abs(claimed - earned)
    if written == "!!" and off == 0 and shallow:
        return Outcome.UNSETTLED, True
    if off == 0:
        return Outcome.HOLDS, False
    return (Outcome.UNSETTLED, True) if off == 1 else (Outcome.FAILS, False)


def denied(written: str, best: int, played: int) -> bool:
    """Whether the points of best and played agree with the denial of a mark: "no mistake", "not the best move"."""
    earned = mark(best, played)
    if _CLAIMED[written] is Earned.GOOD:
        return earned is not Earned.GOOD
    return earned < _CLAIMED[written]


def check(claim: Claim, ask: Ask) -> Judgement:
    spot, move, written = claim.spot, claim.params["move"], claim.params["mark"]
    side = spot.board.turn
    san = spot.board.san(move)
    weighed = weigh(ask, spot, move)
    best, played_points = weighed.best, weighed.played
    liked = ask.shallow(spot) if written == "!!" else None
    shallow = liked is not None and liked.moves[0] == move
    if claim.negated:
        return _denied(claim, best, played_points, weighed.better, weighed.best_line)
    if best < LOST:
        because = f"{title(side)} is lost whatever he plays ({best} of 100), so what {san} costs is not counted."
        return Judgement(
            Outcome.UNSETTLED,
            because,
            weighed.line,
            spot,
            {"points": played_points},
            edge(best, lambda b: b < LOST),
        )
    said, one_off = outcome(written, best, played_points, shallow)
    earned = mark(best, played_points)
    because = told(weighed)
    if written == "!!" and one_off and shallow:
        because += " A shallow search finds it at once."
    elif one_off:
        because += " That is one mark off."
    near = edge_of_two(best, played_points, lambda b, p: outcome(written, b, p, shallow)[0])
    return Judgement(
        said, because, weighed.line, spot, weighed.numbers, near,
        None if said is Outcome.HOLDS else f"For {title(side)} {san} is {_WORDING[earned]}.", one_off,
        marks=(Mark("move", (move[:2], move[2:4]), side),), second=taught(weighed, spot),
    )  # fmt: skip


def _denied(claim: Claim, best: int, played: int, better: str, line: tuple[str, ...]) -> Judgement:
    """ "Not the best move", "no mistake": whether the cost says otherwise."""
    written, san = claim.params["mark"], claim.spot.board.san(claim.params["move"])
    good = _CLAIMED[written] is Earned.GOOD
    cost = best - played
    because = f"{san} costs {spelled(cost)} against {better}." if cost else f"{san} costs nothing."
    instead = f"{san} is {'a good move' if good else 'as bad as that'}: it costs {spelled(cost)}."
    near = edge_of_two(best, played, lambda b, p: denied(written, b, min(b, p)))
    said = Outcome.HOLDS if denied(written, best, played) else Outcome.FAILS
    return Judgement(
        said,
        because,
        line,
        claim.spot,
        {"cost": cost},
        float(near),
        None if said is Outcome.HOLDS else instead,
    )


KIND = Kind(
    id="move-mark",
    title="Move mark",
    version=2,
    definition=(
        "Cost of a move: best less played in points, each searched alone at the same nodes. ! at most 5; ?! 5 to 12; ? 12 to 30, or a result class lost at a cost above 5; "
        "?? 30 and more, or win or hold turned to loss at 15 or more; !? fails only from 15; !! as !, and not the first move that a shallow search likes. "
        "A safe move (cost at most 5, or best above 90 and still 85) costs nothing; with the best below 15 nothing is counted. One mark off is unsettled."
    ),
    formula=f"cost = best - played; good: safe move; ?!: cost < 12; ?: 12 <= cost < 30, or a result class lost; ??: cost >= 30, or turned to loss at cost >= 15; one mark off: unsettled; best < {LOST}: not counted",
    slots={"quality": _ADJECTIVES, "how": _HOW},
    frames=FRAMES,
    gives_way=frozenset(
        {
            "bad-bishop",
            "better-is",
            "as-before",
            "good-bishop",
            "losing-move",
            "not-recommended",
            "unlike-before",
            "weak-square",
        }
    ),
    tests={
        "mark": judged,
        "known": _known,
        "fault": lambda n: judged(n) if n.head in _NOUNS else None,
        "improved": lambda n: (
            n.text
            if n.head == "better move"
            or (n.head in _MOVES and {"better", "stronger"} & set(n.adjectives))
            else None
        ),
        "author": _author,
        "glyph": _glyph,
        "best": lambda n: "!" if n.head in {"best", "strongest"} and n.det == "the" else None,
        "it": lambda n: n.text if n.head in {"it", "this"} else None,
        "moved": lambda n: n.text if n.type == "piece" and n.square and not n.parts else None,
        "other_move": lambda n: (
            n.text if n.head in NOUNS["move"] and not _SLOWER.isdisjoint(n.adjectives) else None
        ),
        "answering": lambda n: judged(n) if n.head in _ANSWERS else None,
        "recommendation": lambda n: (
            n.text
            if (
                n.head in {"recommendation", "choice", "preference"}
                and n.whose in {"our", "my"}
                and len(n.text.split()) == 2
            )
            or n.head in {"way to go", "way forward"}
            else None
        ),
    },
    read=read,
    scan=scan,
    glyphs=_GLYPHS,
    read_glyph=read_glyph,
    check=check,
)
