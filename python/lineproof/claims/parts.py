"""Parts of a sentence that lean on the clause before them: they are told with it, or take from it what they leave out.

"Bishop on b3, nowhere to run", "is attacked and unprotected", "pinned is the knight", "White has f7 covered", "takes the knight, the
guard of e5", "looks like a fork, but is none".
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from .asides import tag
from .chunk import Place
from .letting import lets_go
from .lexicon import NOUNS, VERBS, members
from .namely import for_reason, has_is, names_one
from .noun import Noun
from .ordering import ordered

if TYPE_CHECKING:
    from .clause import Clause

_STANDING = frozenset({"as", "in front of", "behind", "in", "between", "under", "without"})
_COPULA = members("be", VERBS)
_ATTACK = members("attack", VERBS) | members("defend", VERBS)
_DEFEND = members("defend", VERBS)
_REMOVE = members("remove", VERBS) | members("capture", VERBS)
_LEAVE = members("fall", VERBS) | members("come off", VERBS) | {"go"}
_SEEM = frozenset({"look", "look like", "seem", "seem like", "appear", "feel"})
_PIECES = frozenset({"queen", "rook", "bishop", "knight", "pawn"})
_ONLY = frozenset({"only", "just", "merely"})
_PLANS = frozenset({*NOUNS["idea"], *NOUNS["threat"]})
_HOLDING = frozenset(
    {
        "strike",
        "regard",
        "see",
        "describe",
        "assess",
        "rate",
        "view",
        "judge",
        "treat",
        "call",
        "consider",
        "dismiss",
        "come",
    }
)
_ANSWERS = frozenset(
    {"defence", "answer", "remedy", "cure", "antidote", "reply", "protection", "escape"}
)
_ANY = frozenset({"thing", "piece", "man", "unit", "one"})
_OF = {"we": "our", "you": "our", "i": "our", "he": "his", "they": "their"}
_NAMED = frozenset(NOUNS["zwischenzug"])
_OFFERING = members("insert", VERBS) | {
    "play",
    "find",
    "choose",
    "come",
    "start with",
    "begin with",
}
_NONE = frozenset({"none", "nothing", "one"})


def fold(before: Clause, clause: Clause) -> bool:
    """Tells a part with the clause before; True when nothing of it is left to tell."""
    if (
        _stands(before, clause)
        or _nowhere(before, clause)
        or _there(before, clause)
        or _colon(before, clause)
        or _named(before, clause)
        or _fronted(before, clause)
        or _called(before, clause)
        or _held(before, clause)
        or _seeming(before, clause)
        or _only_seems(before, clause)
        or _no_defence(before, clause)
        or _as_such(before, clause)
        or _identified(before, clause)
        or _placed(before, clause)
        or _has_doing(before, clause)
        or lets_go(before, clause)
        or names_one(before, clause)
        or has_is(before, clause)
        or for_reason(before, clause)
        or tag(before, clause)
        or ordered(before, clause)
    ):
        before.see(clause)
        return True
    if _counted(before, clause):
        before.objects, before.adverbs = [], []
    if _such(before, clause):
        before.objects = []
    _met(before, clause)
    _state(before, clause)
    _role(before, clause)
    _guarding(before, clause)
    _where(before, clause)
    return False


def _thing(clause: Clause) -> Noun | None:
    """The only noun of a part without a verb: "bishop on b3"."""
    if clause.lemma or clause.states or clause.places or len(clause.objects) != 1:
        return None
    noun = clause.objects[0]
    return noun if noun.type in {"piece", "square", "move"} and not noun.no else None


def _last(clause: Clause) -> Noun | None:
    nouns = [
        *clause.objects,
        *[p.noun for p in clause.places if p.noun is not None],
        *([clause.subject] if clause.subject is not None else []),
    ]
    return max(nouns, key=lambda n: n.last, default=None)


def _stands(before: Clause, clause: Clause) -> bool:
    """ "Knight on d4, right in front of the pawn", "Qf6 first, as an in-between move"."""
    thing = _thing(before)
    if thing is None or clause.joint != "," or clause.lemma or clause.objects or clause.states:
        return False
    if not clause.places or any(p.preposition not in _STANDING for p in clause.places):
        return False
    if thing.type != "piece" and clause.places[0].preposition != "as":
        return False
    before.places += clause.places
    before.adverbs += clause.adverbs
    before.strays += clause.strays
    return True


def _colon(before: Clause, clause: Clause) -> bool:
    """ "Our plan is simple: d4", "White has one threat: Nxf7"."""
    says = clause.lemma == "be" and clause.subject is not None and clause.subject.head in {"that", "it", "this"}  # fmt: skip
    if says and not (clause.verb.negated or clause.verb.modal) and clause.joint in {", and", "and", ",", ":", ";"}:  # fmt: skip
        told = clause.places or clause.states or clause.sub
    elif clause.joint in {":", "-", ","} and not clause.lemma:
        told, says = clause.places or clause.states, False
    else:
        return False
    if told:
        return False
    if len(clause.objects) != 1 or clause.objects[0].type not in {"move", "square"}:
        return False
    if clause.joint == "," and clause.objects[0].type != "move" and not says:
        return False
    noun = before.subject if before.lemma == "be" and before.states else None
    if before.lemma in {"be", "have"} and len(before.objects) == 1:
        noun = before.objects[0]
    if noun is None and before.lemma in _OFFERING and len(before.objects) == 1:
        noun = before.objects[0]
        if noun.head not in NOUNS["zwischenzug"]:
            return False
    if noun is None or noun.type != "noun" or before.verb.negated or noun.plural:
        return False
    if noun.head not in (_NAMED if clause.joint == "," and not says else _PLANS | _NAMED):
        return False
    if clause.joint == "," and noun.det not in {"a", "an", "1", "one"}:
        return False
    before.lemma, before.subject, before.objects, before.states = "be", noun, clause.objects, []
    return True


def _such(before: Clause, clause: Clause) -> bool:
    """ "Bh6: that is the idea", "Bh6: such is the point of it": the move named first is what it is said of."""
    thing = _thing(before)
    if (
        thing is None
        or thing.type == "piece"
        or before.adverbs
        or clause.joint not in {":", ";", "-"}
    ):
        return False
    if clause.lemma != "be" or clause.verb.negated or clause.verb.modal or clause.sub:
        return False
    subject = clause.subject
    if clause.strays == ["such"] and subject is not None and not clause.objects:
        told = subject
    elif subject is not None and subject.head in {"that", "this"} and len(clause.objects) == 1:
        told = clause.objects[0]
    else:
        return False
    if told.head not in NOUNS["idea"] or told.no or told.plural:
        return False
    clause.subject, clause.objects, clause.strays = thing, [told], []
    clause.see(before)
    return True


def _there(before: Clause, clause: Clause) -> bool:
    """ "There's nothing protecting e5", "there are two pieces hitting f7"."""
    if before.subject is None or before.lemma != "be":
        return False
    counted = before.subject.head in {"that", "it", "here"} and len(before.objects) == 1
    counted = counted and (before.objects[0].count or 0) > 1
    if before.subject.head != "there" and not counted:
        return False
    if clause.form != "ing" or clause.joint != "=" or clause.passive or clause.subject is not None:
        return False
    if len(before.objects) != 1 or before.objects[0].last + 1 != clause.first or before.states:
        return False
    before.subject, before.lemma = before.objects[0], clause.lemma
    before.objects, before.states = clause.objects, clause.states
    before.places += clause.places
    before.adverbs += clause.adverbs
    return True


def _placed(before: Clause, clause: Clause) -> bool:
    """ "Hanging pawns, on c5 and d5", "he castles, on the queenside": where it is."""
    if clause.lemma or clause.objects or clause.states or clause.strays or clause.joint != ",":
        return False
    if not clause.places or before.places or clause.verb.negated or before.sub:
        return False
    if any(p.preposition not in {"on", "at"} or p.noun is None or p.noun.type not in {"square", "file", "piece"} for p in clause.places):  # fmt: skip
        return False
    last = _last(before)
    if last is None or last.type != "noun" or last.last != before.last:
        return False
    before.places += clause.places
    before.adverbs += clause.adverbs
    return True


def _identified(before: Clause, clause: Clause) -> bool:
    """ "The only thing holding d5 is the king": the king alone does."""
    noun = before.subject
    if clause.lemma != "be" or clause.joint != "-" or not before.lemma or noun is None:
        return False
    if noun.type != "noun" or noun.head not in _ANY or len(clause.objects) != 1 or clause.states:
        return False
    if clause.subject is not None and clause.subject is not noun and not clause.inherited:
        return False
    if before.form not in {"ing", "finite"} or (before.form == "finite" and before.sub not in {"that", "which"}):  # fmt: skip
        return False
    who = clause.objects[0]
    if who.type != "piece" or clause.verb.negated or before.verb.negated or clause.verb.modal:
        return False
    alone = bool({"only", "sole", "one", "single"} & set(noun.adjectives)) or noun.count == 1
    before.subject, before.form, before.sub = who, "finite", ""
    before.joint = before.joint.replace("that", "").replace("which", "").strip()
    before.inherited = False
    before.adverbs += [*clause.adverbs, *(["only"] if alone else [])]
    before.places += clause.places
    return True


def _has_doing(before: Clause, clause: Clause) -> bool:
    """ "Black has only one piece protecting the knight": one of his protects it."""
    if before.lemma not in {"have", "get"} or before.form != "finite" or not before.objects:
        return False
    side, man = before.subject, before.objects[-1]
    if side is None or side.type != "side" or side.no or len(before.objects) != 1:
        return False
    to = clause.form == "to" and clause.lemma in _ATTACK
    if not (clause.form == "ing" or to) or clause.joint != "=" or clause.passive:
        return False
    if clause.subject is not None or man.last + 1 != clause.first or not clause.objects:
        return False
    if man.head.isdigit() and man.count:
        man = replace(man, head="piece", type="noun", plural=man.count > 1)
    elif (to and _ONLY.isdisjoint(before.adverbs)) or man.parts:
        return False
    men = {*NOUNS["piece"], *NOUNS["attacker"], *NOUNS["defender"]}
    whose = _OF.get(side.text, f"{side.text} 's")
    if man.type == "piece" and not man.no and not man.whose:
        text = f"{whose} {man.head}{'s' if man.plural else ''}" + (f" on {man.square}" if man.square else "")  # fmt: skip
        before.subject = replace(man, whose=whose, text=text)
    elif man.head in men:
        before.subject = replace(man, whose=whose)
    else:
        return False
    before.lemma, before.objects = clause.lemma, clause.objects
    before.states, before.places = clause.states, before.places + clause.places
    before.adverbs += clause.adverbs
    return True


def _nowhere(before: Clause, clause: Clause) -> bool:
    """ "Bishop on b3, nowhere to run", "our knight on a4, no squares": it has none."""
    thing = _thing(before)
    if thing is None or thing.type != "piece" or clause.joint not in {",", "and", ", and"}:
        return False
    if len(clause.objects) != 1 or not clause.objects[0].no or clause.places or clause.states:
        return False
    if clause.lemma and not (clause.form == "to" and clause.objects[0].head == "nowhere"):
        return False
    before.lemma, before.form, before.subject = "have", "finite", thing
    before.objects = clause.objects
    return True


def _named(before: Clause, clause: Clause) -> bool:
    """ "Hits the base of it all, e4": the square that a noun before it means."""
    if clause.lemma or clause.joint != "," or len(clause.objects) != 1 or clause.places:
        return False
    square, last = clause.objects[0], before.objects[-1] if before.objects else None
    if square.type != "square" or square.parts or before.lemma not in _ATTACK or last is None:
        return False
    if last.type != "noun" or last.no or last.plural or last.head in NOUNS["move"]:
        return False
    before.objects[-1] = replace(square, first=last.first, last=square.last)
    before.places = [p for p in before.places if p.first < last.first]
    return True


def _called(before: Clause, clause: Clause) -> bool:
    """ "First the in-between check, Qh5", "Qh5, an in-between check": Qh5 is one."""
    if clause.joint != "," or before.lemma or clause.lemma or before.places:
        return False
    parts = (before, clause)
    move = next((p.objects[0] for p in parts if _is_move(p)), None)
    role = next((p.objects[0] for p in parts if _is_zwischenzug(p)), None)
    if move is None or role is None or before.verb.negated or clause.verb.negated:
        return False
    before.lemma, before.form, before.subject, before.states = "be", "finite", move, []
    before.objects = [role]
    before.adverbs += clause.adverbs
    return True


def _is_move(clause: Clause) -> bool:
    noun = _thing(clause)
    return noun is not None and noun.type == "move" and not noun.parts


def _is_zwischenzug(clause: Clause) -> bool:
    first = all(s.lemma == "first" for s in clause.states)
    return (
        len(clause.objects) == 1
        and first
        and not clause.places
        and clause.objects[0].head in NOUNS["zwischenzug"]
    )


def _fronted(before: Clause, clause: Clause) -> bool:
    """ "Pinned by the bishop is the knight on c3"."""
    if before.form != "part" or not before.lemma or before.subject is not None:
        return False
    if clause.lemma != "be" or clause.joint != "-" or len(clause.objects) != 1 or clause.states:
        return False
    if clause.subject is not None and not clause.inherited:
        return False
    before.subject, before.form, before.passive = clause.objects[0], "finite", True
    before.verb = clause.verb
    before.places += clause.places
    before.adverbs += clause.adverbs
    return True


def _held(before: Clause, clause: Clause) -> bool:
    """ "He has got f7 covered twice": he covers it; "Black has his queen trapped": it is trapped."""
    if before.lemma not in {"have", "get", "keep"} or before.form != "finite" or before.sub:
        return False
    if not clause.lemma or clause.objects or clause.lemma in {"be", "have"}:
        return False
    if clause.form == "part" and clause.joint == "=" and clause.subject is None:
        noun = before.objects[-1] if before.objects else None
    elif clause.joint == "-" and clause.form == "finite" and clause.verb.done:
        noun = clause.subject if not before.objects else None
        if clause.verb.past or clause.verb.modal or clause.passive:
            return False
    else:
        return False
    if noun is None or (noun.last + 1 < clause.first and clause.form == "part"):
        return False
    if noun.type not in {"piece", "square", "pronoun"} or noun.no:
        return False
    own = noun.whose in {"his", "our", "their"}
    before.lemma, before.form = clause.lemma, "finite"
    before.places += clause.places
    before.adverbs += clause.adverbs
    if own:
        before.subject, before.objects, before.passive = noun, [], True
    else:
        before.objects = [noun]
    return True


def _seeming(before: Clause, clause: Clause) -> bool:
    """ "It looks like a fork, but it is none", "the knight was pinned, but it is not any more"."""
    if "but" not in clause.joint.split() and "yet" not in clause.joint.split():
        return False
    if clause.lemma != "be" or clause.subject is None or clause.subject.type != "pronoun":
        return False
    kinds = [p.noun.head if p.noun else "" for p in clause.places if p.preposition == "of"]
    if set(kinds) - {"sort", "kind"}:
        return False
    none = [s for s in clause.states if s.lemma in _NONE]
    none_said = bool(none) or any(o.head in _NONE for o in clause.objects)
    if len(none) < len(clause.states) or any(o.head not in _NONE for o in clause.objects):
        return False
    if not (none_said or clause.verb.negated) or clause.verb.modal or clause.verb.past:
        return False
    seems = before.lemma in _SEEM and not before.verb.negated
    if not seems and not (before.verb.past and before.lemma):
        return False
    like = next((p for p in before.places if p.preposition == "like" and p.noun is not None), None)
    if like is not None and like.noun is not None:
        before.places.remove(like)
        before.objects.append(like.noun)
    if seems:
        before.lemma = "be"
    before.verb = clause.verb if clause.verb.negated else clause.verb._replace(negated=True)
    return True


def none_such(clause: Clause) -> None:
    """ "What looks like a pin is none"."""
    if clause.lemma not in _SEEM or [s.lemma for s in clause.states] != ["none"]:
        return
    like = next((p for p in clause.places if p.preposition == "like" and p.noun is not None), None)
    if like is None or like.noun is None:
        return
    clause.places.remove(like)
    clause.objects.append(like.noun)
    clause.lemma, clause.states, clause.verb = "be", [], clause.verb._replace(negated=True)


def _only_seems(before: Clause, clause: Clause) -> bool:
    """ "The pawn only seems to hang": it does not."""
    if before.lemma not in _SEEM or before.objects or before.states:
        return False
    if _ONLY.isdisjoint(before.adverbs) or before.verb.negated:
        return False
    as_if = clause.joint in {"as if", "as though"} and clause.subject is not None
    if as_if and clause.subject is not None and clause.subject.head not in {"it", "he", "she"}:
        return False
    if not as_if and (clause.form != "to" or clause.joint != "="):
        return False
    before.lemma, before.passive = clause.lemma, clause.passive
    before.objects, before.states = clause.objects, clause.states
    before.places += clause.places
    before.verb = clause.verb._replace(negated=not clause.verb.negated)
    return True


def _no_defence(before: Clause, clause: Clause) -> bool:
    """ "There is no defence to mate": the "to" leads to a noun."""
    if clause.form != "to" or clause.lemma not in NOUNS["mate"] or clause.objects or clause.places:
        return False
    last = before.objects[-1] if before.objects else None
    if last is None or last.head not in _ANSWERS or last.last + 1 != clause.first:
        return False
    noun = Noun("noun", clause.lemma, clause.lemma, clause.last, clause.last)
    before.places.append(Place("to", noun, clause.first, clause.last))
    before.complement = False
    return True


def _as_such(before: Clause, clause: Clause) -> bool:
    """ "Strikes me as a touch doubtful", "I regard it as weak": what it is held to be."""
    if clause.sub != "as" or clause.lemma or clause.objects or clause.places or not clause.states:
        return False
    if before.lemma.split()[:1] == [] or before.lemma.split()[0] not in _HOLDING:
        return False
    before.states += clause.states
    before.adverbs += clause.adverbs
    return True


def _counted(before: Clause, clause: Clause) -> bool:
    """ "Two moves and it's mate": mate in two."""
    if before.lemma or len(before.objects) != 1 or before.places or before.states or before.strays:
        return False
    moves = before.objects[0]
    if (
        moves.head != "move"
        or not moves.count
        or clause.joint not in {"and", "and then", "then", ", and", ","}
    ):
        return False
    if clause.lemma not in {"be", ""} or not any(o.head in NOUNS["mate"] for o in clause.objects):
        return False
    clause.places.append(Place("in", moves, moves.first, moves.last))
    clause.first = min(clause.first, moves.first)
    return True


def _met(before: Clause, clause: Clause) -> None:
    """ "What you meet is Nf6, looking after d5": the move does."""
    if clause.form != "ing" or clause.subject is not None or clause.joint != ",":
        return
    if before.lemma in {"meet", "see", "face", "expect", "get"} and before.objects:
        move = before.objects[-1]
        if move.type == "move" and not move.parts:
            clause.subject = move


def _state(before: Clause, clause: Clause) -> None:
    """ "Is attacked and unprotected": what is said of the same thing."""
    if clause.lemma or clause.objects or not clause.states or before.subject is None:
        return
    if (
        clause.joint not in {"and", ", and", "but", ", but", "and also", "yet"}
        or before.form != "finite"
    ):
        return
    if before.verb.negated or not (before.passive or before.lemma in _COPULA):
        return
    clause.lemma, clause.form, clause.subject = "be", "finite", before.subject
    clause.verb = before.verb._replace(negated=clause.verb.negated)
    clause.inherited = True


def _role(before: Clause, clause: Clause) -> None:
    """ "Takes the knight, the guard of e5": takes the guard of e5."""
    if clause.lemma or clause.joint != "," or len(clause.objects) != 1 or clause.states:
        return
    role, last = clause.objects[0], _last(before)
    if role.head not in NOUNS["defender"] or last is None or last.type != "piece":
        return
    if last.last != before.last or before.lemma not in _REMOVE | _LEAVE:
        return
    piece = next((a for a in role.adjectives if a in _PIECES), "")
    of = role.square or (f"the {piece}" if piece else "")
    if of:
        kind = "square" if role.square else "piece"
        noun = Noun(kind, piece or of, of, role.first, role.last, square=role.square)
        clause.places.append(Place("of", noun, role.first, role.last))
    clause.lemma, clause.form, clause.verb = before.lemma, before.form, before.verb
    clause.passive, clause.inherited = before.passive, True
    if before.subject is last:
        clause.subject, clause.objects = role, []
    else:
        clause.subject, clause.objects = before.subject, [role]


def _guarding(before: Clause, clause: Clause) -> None:
    """ "Takes the knight that guards e5": takes the guard of e5."""
    if clause.sub not in {"that", "which", "who"} or clause.lemma not in _DEFEND or clause.passive:
        return
    if before.lemma not in _REMOVE or not before.objects or len(clause.objects) != 1:
        return
    piece, guarded = before.objects[-1], clause.objects[0]
    man = piece.type == "piece" or piece.head in NOUNS["piece"]
    if clause.subject is not None or not man or piece.last != before.last:
        return
    if clause.verb.negated or clause.verb.modal:
        return
    role = Noun("noun", "defender", "the defender", piece.first, piece.last, det="the")
    clause.subject, clause.objects, clause.inherited = before.subject, [role], True
    clause.places.insert(0, Place("of", guarded, guarded.first, guarded.last))
    clause.lemma, clause.verb, clause.form = before.lemma, before.verb, before.form
    clause.sub = ""


def _where(before: Clause, clause: Clause) -> None:
    """ "Attacks g7, where Black has two defenders": there."""
    if clause.sub != "where" or "," not in clause.joint or not clause.lemma:
        return
    last = _last(before)
    if last is not None and last.square and not last.parts and last.last == before.last:
        square = Noun(
            "square", last.square, last.square, clause.first, clause.first, square=last.square
        )
        clause.places.append(Place("at", square, clause.first, clause.first))


__all__ = ["fold", "none_such"]
