"""What is said of deeds: "a mistake, this capture", "we are right to take", "it is bad to allow it"."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .chunk import Adjective, Place
from .lexicon import JUDGEMENTS, VERBS, members
from .noun import Noun
from .verbs import Verb, forms
from .worded import DOING, NOMINAL, TAKING, Worded

if TYPE_CHECKING:
    from .clause import Clause
from .deed import MEN, OTHER, deed, doing

_ONE_OF = NOMINAL | {"way", "square", "defence", "choice", "option", "retreat"}

_REASONS = frozenset(
    {"because of", "thanks to", "on account of", "owing to", "in view of", "due to"}
)

_FAULTS = frozenset(w for line in ("mistake", "blunder", "inaccuracy") for w in JUDGEMENTS[line])

_BEATING = members("improve on", VERBS)
_FEARING = members("fear", VERBS)
_DOING_WELL = frozenset({"do well", "do right", "do best", "do wisely", "do the right thing"})

_RIGHT = frozenset({"right", "wrong", "correct", "wise", "foolish", "mistaken", "careless", "greedy", "well advised", "ill advised", "silly", "clever", "unwise"})  # fmt: skip

OPENS = frozenset(
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


def stranded(before: Clause, clause: Clause) -> None:
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


def beside(before: Clause, clause: Clause) -> None:
    """What a doing is compared with ("better than taking", "instead of taking, he ..."), what it fails to (", on account of Bb5"), and
    which move is meant ("only one move, f6"): put with the clause that it belongs to.
    """
    if clause.form == "ing" and clause.joint == "=than" and moves(clause):
        clause.unreal = True
        what = doing(clause)
        before.places.append(Place("than", what, what.first, what.last))
    beaten = before.lemma in _BEATING and before.subject is not None and not before.objects
    if clause.form == "ing" and clause.joint == "=" and beaten and moves(clause):
        clause.unreal = True
        before.objects.append(doing(clause))  # "that beats grabbing on g1"
        before.see(clause)
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
    noun = alone(clause)
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
    if any(n.head in _ONE_OF and (n.count == 1 or OTHER & set(n.adjectives)) for n in said):
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


def obliged(before: Clause, clause: Clause) -> None:
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


def cannot(before: Clause, clause: Clause) -> None:
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


def forbidden(clause: Clause) -> None:
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
        and clause.lemma not in _FEARING
        and moves(clause)
        and deed(doing(clause))
        and Worded.read(doing(clause).text)
    ):
        if clause.lemma in members("capture", VERBS) and "back" in clause.adverbs:
            clause.lemma = "recapture"
        clause.objects, clause.places, clause.lemma = [doing(clause)], [], "play"
        clause.adverbs = [a for a in clause.adverbs if a not in {"back", "up", "down"}]


def of_a_move(clause: Clause) -> bool:
    """Whether a clause says what only a move can be: "a mistake", "inaccurate"."""
    slips = any(s.lemma in JUDGEMENTS["dubious"] for s in clause.states)
    return slips or any(o.head in _FAULTS for o in clause.objects)


def alone(clause: Clause) -> Noun | None:
    """The noun phrase that is all that a part without a verb says."""
    if clause.lemma or clause.states or clause.places or len(clause.objects) != 1:
        return None
    return clause.objects[0]


def judges(clause: Clause, joint: str = "") -> bool:
    """Whether a part without a verb says what a move is: "somewhat dubious", "already a serious error", "a strong reply"."""
    said = [*clause.objects, *clause.states]
    if clause.lemma or len(said) != 1 or clause.verb.negated or clause.subject is not None:
        return False
    if clause.joint not in OPENS and clause.joint != joint:
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


def right_to(before: Clause, clause: Clause) -> bool:
    """ "Black is right to kick the knight", "does well to": his doing so is right."""
    subject = before.subject
    if (
        clause.form != "to"
        or not clause.joint.startswith("=")
        or subject is None
        or not moves(clause)
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


def is_to(before: Clause, clause: Clause) -> None:
    """ "The best move is to swap on e5": it is the swap."""
    if clause.form != "to" or not clause.joint.startswith("=") or not moves(clause):
        return
    if before.lemma != "be" or before.objects or before.passive or before.verb.modal:
        return
    noun = before.subject
    best = noun is None and [s.lemma for s in before.states] in (
        ["best"],
        ["better"],
        ["strongest"],
        ["correct"],
    )
    if best:
        state = before.states[0]
        before.subject = Noun("noun", state.lemma, state.lemma, state.first, state.last)
        before.states = []
    elif (
        noun is None
        or noun.type != "noun"
        or noun.head not in _ONE_OF | {"best", "strongest"}
        or before.states
    ):
        return
    clause.unreal = True
    before.objects = [doing(clause)]


def moves(clause: Clause) -> bool:
    """Whether an infinitive plays a move."""
    men = [*clause.objects, *(p.noun for p in clause.places if p.noun is not None)]
    ing = forms(clause.lemma.split()[0])[4]
    return ing in DOING and (
        any(n.type in MEN for n in men) or (ing in TAKING and any(n.head == "it" for n in men))
    )


__all__ = [
    "OPENS",
    "alone",
    "beside",
    "cannot",
    "forbidden",
    "judges",
    "moves",
    "obliged",
    "of_a_move",
    "right_to",
    "stranded",
]
