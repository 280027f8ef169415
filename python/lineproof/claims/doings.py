"""Doings: the rough clauses of a sentence with the moves that they say in words put together, before each gets its subject.

"The capture of the pawn on d4" is one noun phrase, and so is "the bishop to d7". In "the capture, it is plain, is a mistake" it is the
capture that is a mistake; so it is in "it is a mistake to capture" and "a mistake, this capture".
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from typing import TYPE_CHECKING

from .chunk import Adjective, Place
from .lexicon import JUDGEMENTS, VERBS, members
from .noun import Noun
from .phrase import MOVE
from .verbs import Verb, forms
from .worded import DOING, GENERAL, NOMINAL, TAKING, Worded

if TYPE_CHECKING:
    from .clause import Clause

_WITH_IT = frozenset({"on", "to", "of", "with", "at", "by", "from", "into"})
_MEN = frozenset({"piece", "square", "move"})
_OTHER = frozenset(
    {
        "same",
        "other",
        "another",
        "only",
        "sole",
        "single",
        "better",
        "best",
        "next",
        "previous",
        "last",
        "such",
        "stronger",
        "strongest",
    }
)
_ONE_OF = NOMINAL | {"way", "square", "defence", "choice", "option", "retreat"}
_REASONS = frozenset(
    {"because of", "thanks to", "on account of", "owing to", "in view of", "due to"}
)
_ADVISING = members("recommend", VERBS) | {"afford"}
_JUDGING = frozenset({"be", "seem", "look", "remain"})
_FAULTS = frozenset(w for line in ("mistake", "blunder", "inaccuracy") for w in JUDGEMENTS[line])
_DOING_WELL = frozenset({"do well", "do right", "do best", "do wisely", "do the right thing"})
_RIGHT = frozenset({"right", "wrong", "correct", "wise", "foolish", "mistaken", "careless", "greedy", "well advised", "ill advised", "silly", "clever", "unwise"})  # fmt: skip
_OPENS = frozenset(
    {
        "",
        "and",
        "but",
        "so",
        ":",
        ";",
        "-",
        ", but",
        ", and",
        ", so",
        ", because",
        ", since",
        ", for",
        "that",
        "because",
        "for",
        "since",
        "as",
        "or",
    }
)


def deeds(clauses: list[Clause]) -> list[Clause]:
    """The clauses, moves in words put together and given to the verbs that judge them."""
    for clause in clauses:
        _whole(clause)
    for before, clause in pairwise(clauses):
        _gerund(before, clause)
    _over_asides(clauses)
    _behind(clauses)
    for before, clause in pairwise(clauses):
        _stranded(before, clause)
        _cannot(before, clause)
        _beside(before, clause)
        _obliged(before, clause)
    for clause in clauses:
        _forbidden(clause)
    return clauses


def deed(noun: Noun) -> str | None:
    """The words of a noun phrase that means a move, written out or not; None for any other."""
    if noun.no or noun.plural or noun.parts:
        return None
    if (
        noun.head in NOMINAL
        and {"last", "previous"} & set(noun.adjectives)
        and (noun.whose or noun.det == "the")
    ):
        return noun.text  # "his last move"
    if not _OTHER.isdisjoint(noun.adjectives):
        return None
    if noun.type in {"move", "square"}:
        return (
            None if noun.type == "square" and noun.det else noun.text
        )  # "the square d5" is no move
    if noun.type == "pronoun":
        return noun.text if noun.head in {"it", "this", "that", "which"} else None
    if noun.type != "noun" or noun.head not in NOMINAL:
        return None
    said = Worded.read(noun.text)
    named = any(MOVE.fullmatch(w) for w in noun.text.split())
    told = (
        said is not None and said.telling and (noun.head not in GENERAL or bool(said.to or said.by))
    )
    known = noun.det in {"this", "that"} or (
        noun.head not in GENERAL and (noun.det in {"the", ""} or bool(noun.whose))
    )
    return noun.text if named or told or known else None


def doing(clause: Clause) -> Noun:
    """A move in words, from a clause: "taking on c4"."""
    parts = [f"{p.preposition} {p.noun.text}" for p in clause.places if p.noun is not None]
    ing = clause.lemma if clause.lemma.endswith("ing") else forms(clause.lemma)[4]
    text = " ".join([ing, *(o.text for o in clause.objects), *parts])
    return Noun("noun", "move", text, clause.first, clause.last)


def _whole(clause: Clause) -> None:
    """Puts what belongs to a noun of a move with it: "the capture" "of the pawn" "on d4"."""
    if clause.subject is not None:
        clause.subject = _joined(clause, clause.subject)
    clause.objects = [_joined(clause, noun) for noun in clause.objects]
    for place in list(clause.places):
        if place.noun is not None and place in clause.places:
            noun = _joined(clause, place.noun)
            if noun is not place.noun:
                at = clause.places.index(place)
                clause.places[at] = replace(place, noun=noun, last=max(place.last, noun.last))
    if not clause.lemma and len(clause.objects) == 1 and clause.places:
        piece, place = clause.objects[0], clause.places[0]
        goes = place.preposition == "to" and place.noun is not None and place.noun.type == "square"
        if goes and piece.type == "piece" and not piece.plural and place.first == piece.last + 1:
            assert place.noun is not None
            text = f"{piece.text} to {place.noun.text}"
            clause.objects[0] = replace(piece, type="noun", head="move", text=text, square="", last=place.last)  # fmt: skip
            del clause.places[0]


def _joined(clause: Clause, noun: Noun) -> Noun:
    going = next((a for a in noun.adjectives if a.endswith("ing") and a in DOING), "")
    if going and noun.type in {"square", "piece"} and not noun.det:
        noun = replace(noun, type="noun", head="move", text=f"{going} {noun.text}", adjectives=())
    elif noun.type != "noun" or noun.head not in NOMINAL:
        return noun
    if noun.head == "check" and (
        noun.det != "the" or {"discovered", "double"} & set(noun.adjectives)
    ):
        return noun  # "gives a check from h5"
    while True:
        place = next((p for p in clause.places if p.first == noun.last + 1), None)
        if (
            place is None
            or place.preposition not in _WITH_IT
            or place.noun is None
            or place.noun.type not in _MEN
            or place.noun.parts
            or (place.preposition == "by" and clause.passive)
            or (
                place.preposition in {"with", "by"}
                and noun.head
                not in TAKING | {"move", "advance", "surrender", "sacrifice", "offer", "loss"}
                and place.noun.type != "piece"
            )
        ):
            return noun
        noun = replace(noun, text=f"{noun.text} {place.preposition} {place.noun.text}", last=place.last)  # fmt: skip
        clause.places.remove(place)


def _gerund(before: Clause, clause: Clause) -> None:
    """ "Taking on c4 is compulsory": the -ing is the subject."""
    waits = (
        before.form in {"ing", "to"}
        and before.subject is None
        and not (before.passive or before.sub or before.strays)
    )
    if (
        waits
        and clause.joint == "-"
        and clause.form == "finite"
        and clause.subject is None
        and before.joint in _OPENS
    ):
        before.unreal = True
        opener = (
            before.objects[-1]
            if before.objects and before.objects[-1].first < before.verb_at
            else None
        )
        clause.subject = opener or doing(before)  # "the only way to save the game is Nf3"
        clause.see(before)


def _over_asides(clauses: list[Clause]) -> None:
    """ "The capture, it is plain, is a mistake": what opens the sentence is the subject of the verb behind the aside."""
    for number, clause in enumerate(clauses):
        if clause.form != "finite" or clause.joint != "," or clause.sub:
            continue
        inverted = (
            clause.subject is not None
            and clause.subject.first > clause.verb_at
            and not clause.states
        )
        if (clause.subject is not None and not inverted) or clause.verb_at > clause.first >= 0:
            continue
        at = next((n for n in range(number - 1, -1, -1) if _opens(clauses[n])), None)
        if at is None or number - at < 2 or not all(map(_aside, clauses[at + 1 : number])):
            continue
        opener = clauses[at]
        if inverted and clause.subject is not None:
            clause.objects.insert(0, clause.subject)
        if opener.lemma:
            opener.unreal = True
            clause.subject = doing(opener)
        else:
            clause.subject = opener.objects[0]
        if not any(c.sub for c in clauses[at + 1 : number]):
            clause.see(opener)  # an aside that claims something keeps its own words


def _opens(clause: Clause) -> bool:
    """Whether a clause is a noun, or a doing, that waits for its verb."""
    if clause.states or clause.strays:
        return False
    noun = _alone(clause)
    if noun is not None and clause.joint == ",":
        return bool(noun.whose) or noun.det == "the"  # "of the checks, White's best, ..."
    if clause.joint not in _OPENS:
        return False
    if not clause.lemma:
        return len(clause.objects) == 1 and not clause.verb.negated
    return clause.form in {"ing", "to"} and clause.subject is None and not clause.passive


def _aside(clause: Clause) -> bool:
    """Whether a clause between two commas may be left out."""
    if (
        clause.sub
        or clause.joint.startswith("-")
        or clause.joint.startswith("=")
        or clause.inherited
    ):
        return True
    subject = clause.subject
    return clause.joint == "," and (
        subject is None or subject.text in {"it", "i", "we", "you", "one", "there", "that"}
    )


def _behind(clauses: list[Clause]) -> None:
    """ "It is a mistake to capture", "it's a mistake, this capture", "a mistake, this capture": what "it" is stands behind."""
    for before, clause in pairwise(clauses):
        subject = before.subject
        if (
            before.lemma in _ADVISING
            and clause.form == "to"
            and clause.joint.startswith("=")
            and _moves(clause)
        ):
            clause.unreal = True
            before.objects = [doing(clause)]  # "I would not advise Black to take it"
            continue
        if (
            before.lemma == "do better"
            and clause.form == "to"
            and clause.joint.startswith("=")
            and _moves(clause)
        ):
            clause.unreal = True
            what = doing(clause)
            before.places.append(Place("with", what, what.first, what.last))
            continue  # "would have done better to take the pawn"
        if _right_to(before, clause):
            continue
        judged = (
            before.lemma in _JUDGING and (before.objects or before.states) and not before.passive
        )
        if (
            clause.form == "to" and clause.joint.startswith("=") and subject is not None
            and subject.head == "it" and judged and clause.lemma and _moves(clause)
        ):  # fmt: skip
            clause.unreal = True
            before.subject = doing(clause)
            continue
        if (
            subject is not None and subject.head == "it" and judged and not before.objects
            and clause.joint in {"-", "that"} and clause.subject is not None and clause.subject.first > before.last
        ):  # fmt: skip
            before.subject = replace(
                subject, head="that it is so"
            )  # "it is possible that Nc3 is better"
        if (
            clause.sub == "which"
            and clause.joint == ", which"
            and clause.lemma == "be"
            and clause.subject is None
            and _of_a_move(clause)
        ):
            clause.subject = Noun("pronoun", "which", "which", clause.first, clause.first)
        if clause.joint != ",":
            continue
        noun = _alone(clause)
        if (
            noun is None
            and clause.form == "ing"
            and clause.subject is None
            and _judges(before)
            and all(o.det not in {"a", "an"} for o in before.objects)
            and _moves(clause)
        ):
            clause.unreal, noun = True, doing(clause)  # "the best move, capturing on b5"
        if noun is None or noun.type == "pronoun" or deed(noun) is None:
            moved = _alone(before)
            if (
                moved is not None
                and moved.type != "pronoun"
                and deed(moved)
                and _judges(clause, joint=",")
            ):
                clause.lemma, clause.form, clause.subject = (
                    "be",
                    "finite",
                    moved,
                )  # "Bxb7, a superb move"
            continue
        if (
            judged
            and subject is not None
            and subject.head in {"it", "this", "that"}
            and noun.det in {"this", "that", ""}
        ):
            before.subject = noun
            before.see(clause)
        elif not before.lemma and _judges(before):
            before.lemma, before.form, before.subject = "be", "finite", noun
            before.see(clause)


def _stranded(before: Clause, clause: Clause) -> None:
    """ "Taking is something I advise against", "something he cannot afford": what is advised against is the taking."""
    about = (
        before.subject
        if before.lemma == "be"
        and before.objects
        and before.objects[-1].head in {"something", "thing", "one"}
        else None
    )
    if (
        about is None
        or clause.joint not in {"-", "that", "which", "that -"}
        or clause.subject is None
        or clause.objects
    ):
        return
    left = next((a for a in clause.adverbs if a in {"against", "for", "of", "from", "about"}), None)
    if left is not None:
        clause.adverbs.remove(left)
        clause.places.append(Place(left, about, about.first, about.last))
    else:
        clause.objects.append(about)
    clause.sub = clause.sub if clause.sub not in {"that", "which"} else ""


def _beside(before: Clause, clause: Clause) -> None:
    """What a doing is compared with ("better than taking", "instead of taking, he ..."), what it fails to (", on account of Bb5"), and
    which move is meant ("only one move, f6"): put with the clause that it belongs to.
    """
    if clause.form == "ing" and clause.joint == "=than" and _moves(clause):
        clause.unreal = True
        what = doing(clause)
        before.places.append(Place("than", what, what.first, what.last))
    if (
        before.fronted in {"instead of", "rather than"}
        and before.form == "ing"
        and clause.joint == ","
        and clause.form == "finite"
    ):
        before.unreal = True
        what = doing(before)
        clause.places.append(Place("instead of", what, what.first, what.last))
    first = clause.places[0] if clause.places else None
    bare = not (clause.lemma or clause.objects or clause.states or clause.strays)
    if (
        bare and first is not None and first.preposition in _REASONS and first.noun is not None and first.noun.type == "move"
        and clause.joint == "," and _fault(before) and before.subject is not None
    ):  # fmt: skip
        clause.lemma, clause.form, clause.subject, clause.inherited = (
            "fail",
            "finite",
            before.subject,
            True,
        )
    noun = _alone(clause)
    if (
        noun is None
        or clause.joint not in {",", ":"}
        or noun.type == "pronoun"
        or deed(noun) is None
    ):
        return
    said = [
        *before.objects,
        *([before.subject] if before.subject is not None else []),
        *(p.noun for p in before.places if p.noun is not None),
    ]
    if any(n.head in _ONE_OF and (n.count == 1 or _OTHER & set(n.adjectives)) for n in said):
        before.places.append(Place("namely", noun, noun.first, noun.last))


def _fault(clause: Clause) -> bool:
    """Whether a clause finds fault with a move."""
    bad = any(
        s.lemma in line
        for s in clause.states
        for line in (JUDGEMENTS["bad"], JUDGEMENTS["dubious"], JUDGEMENTS["terrible"])
    )
    return (
        bad
        or any(o.head in _FAULTS for o in clause.objects)
        or clause.lemma in members("lose the game", VERBS)
    )


def _obliged(before: Clause, clause: Clause) -> None:
    """ "Black is forced to take": he must take."""
    forced = (
        before.lemma == "be"
        and before.states
        and before.states[-1].lemma in {"forced", "obliged", "compelled"}
    )
    if forced and clause.form == "to" and clause.joint.startswith("=") and clause.subject is None:
        clause.subject, clause.form, clause.joint = before.subject, "finite", "-"
        clause.verb = Verb(before.verb.negated, "must", False, before.verb.past)
        before.states = before.states[:-1]
        clause.see(before)


def _cannot(before: Clause, clause: Clause) -> None:
    """ "White would love to play it, but cannot": he cannot afford it."""
    wishes = (
        before.form == "to"
        and before.lemma in {"play", "castle", "go for"}
        and before.joint.startswith("=")
    )
    if (
        wishes
        and clause.strays == ["can"]
        and clause.verb.negated
        and "but" in clause.joint
        and not clause.lemma
    ):
        if before.lemma == "castle":
            before.objects.append(Noun("noun", "castling", "castling", before.first, before.last))
        before.lemma, before.form, before.joint = "afford", "finite", ""
        before.verb = Verb(True, "can", False, False)


def _forbidden(clause: Clause) -> None:
    """ "Do not run back to f6": what is not to be played is the running."""
    bare = (
        clause.form in {"base", "finite"}
        and clause.subject is None
        and clause.verb.negated
        and not clause.sub
    )
    bare = (
        bare
        and bool(clause.lemma)
        and not (clause.verb.modal or clause.verb.done)
        and clause.joint not in {"and", "but", ", and", ", but"}
    )
    if bare:
        clause.form = "base"
    if (
        bare
        and not clause.passive
        and _moves(clause)
        and deed(doing(clause))
        and Worded.read(doing(clause).text)
    ):
        if clause.lemma in members("capture", VERBS) and "back" in clause.adverbs:
            clause.lemma = "recapture"
        clause.objects, clause.places, clause.lemma = [doing(clause)], [], "play"
        clause.adverbs = [a for a in clause.adverbs if a not in {"back", "up", "down"}]


def _of_a_move(clause: Clause) -> bool:
    """Whether a clause says what only a move can be: "a mistake", "inaccurate"."""
    slips = any(s.lemma in JUDGEMENTS["dubious"] for s in clause.states)
    return slips or any(o.head in _FAULTS for o in clause.objects)


def _alone(clause: Clause) -> Noun | None:
    """The noun phrase that is all that a part without a verb says."""
    if clause.lemma or clause.states or clause.places or len(clause.objects) != 1:
        return None
    return clause.objects[0]


def _judges(clause: Clause, joint: str = "") -> bool:
    """Whether a part without a verb says what a move is: "somewhat dubious", "already a serious error", "a strong reply"."""
    said = [*clause.objects, *clause.states]
    if clause.lemma or len(said) != 1 or clause.verb.negated or clause.subject is not None:
        return False
    if clause.joint not in _OPENS and clause.joint != joint:
        return False
    if clause.states:
        return any(clause.states[0].lemma in line for line in JUDGEMENTS.values())
    noun = clause.objects[0]
    praised = (
        noun.head in NOMINAL
        and bool(noun.adjectives)
        and noun.det in {"", "a", "an", "the", "another"}
    )
    return noun.type == "noun" and (praised or noun.head in _FAULTS or noun.head == "best")


def _right_to(before: Clause, clause: Clause) -> bool:
    """ "Black is right to kick the knight", "does well to": his doing so is right."""
    subject = before.subject
    if (
        clause.form != "to"
        or not clause.joint.startswith("=")
        or subject is None
        or not _moves(clause)
    ):
        return False
    if subject.type != "side" or before.passive or before.objects:
        return False
    if before.lemma in _DOING_WELL:
        before.states = [Adjective("good", (), before.first, before.last)]
        before.lemma = "be"
    elif before.lemma == "be" and not before.states and {"right", "wrong"} & set(before.adverbs):
        said = "right" if "right" in before.adverbs else "wrong"
        before.adverbs.remove(said)
        before.states = [Adjective(said, (), before.first, before.last)]
    elif before.lemma != "be" or len(before.states) != 1 or before.states[0].lemma not in _RIGHT:
        return False
    clause.unreal = True
    what = doing(clause)
    lead = f"{subject.text} " if subject.text in {"white", "black", "our", "his"} else ""
    before.subject = replace(what, text=f"{lead}{what.text}")
    return True


def _moves(clause: Clause) -> bool:
    """Whether an infinitive plays a move."""
    men = [*clause.objects, *(p.noun for p in clause.places if p.noun is not None)]
    ing = forms(clause.lemma.split()[0])[4]
    return ing in DOING and (
        any(n.type in _MEN for n in men) or (ing in TAKING and any(n.head == "it" for n in men))
    )


__all__ = ["deed", "deeds", "doing"]
