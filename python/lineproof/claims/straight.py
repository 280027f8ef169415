"""Straightening: every clause with a subject of its own, in the active voice, denied where its words deny it."""

from __future__ import annotations

from dataclasses import replace

from .chunk import Place
from .clause import Clause
from .verbs import Verb

_BEFORE_US = frozenset({"before us", "in front of us", "before our eyes", "on the board"})

_HOLDING = frozenset({"think", "believe", "say", "claim", "maintain", "argue", "feel", "consider", "suppose", "reckon", "pretend"})  # fmt: skip
"""Verbs whose denial denies what follows them."""


_CONVINCING = frozenset({"convince", "persuade", "tell"})
"""The same, of what others would have the author think."""

_GOING = frozenset({"come to", "go to", "get to", "run to", "return to", "go back to", "come back to", "drift into", "land in", "pass into"})  # fmt: skip
"""Verbs with a preposition that belongs to the square behind it."""


def twin(clause: Clause) -> Clause:
    """ "It is not the pawn but the bishop that stands unprotected": what is denied of the pawn."""
    twin = clause.twin
    assert twin is not None
    clause.twin = None
    other = replace(clause, subject=twin, first=twin.first, last=twin.last, twin=None)
    other.objects, other.places = list(clause.objects), list(clause.places)
    other.states, other.adverbs = list(clause.states), list(clause.adverbs)
    other.deny()
    return other


def not_the_case(clauses: list[Clause]) -> list[Clause]:
    """ "It is not the case that White threatens mate", "I do not think that he does": what follows is denied."""
    heard: list[Clause] = []
    for number in range(1, len(clauses)):
        clause, before = clauses[number], clauses[number - 1]
        if clause.joint.split()[-1:] == ["that"] or clause.joint == "-":
            thinks = before if not clause.joint.startswith(",") else clauses[0]
            if _disbelieves(thinks):
                clause.deny()
                clause.hedged = True
                clause.joint = thinks.joint
                if thinks.lemma in _CONVINCING and clause.sub == "that":
                    clause.sub = ""  # "convince me that": no word of "me"
                    clause.objects = [o for o in clause.objects if o not in thinks.objects]
                heard.append(thinks)
                continue
        if clause.joint != "that" or not before.objects or before.objects[-1].head != "case":
            continue
        for host in reversed(clauses[:number]):
            if host.lemma == "be" and host.subject is not None and host.subject.head == "it":
                if host.verb.negated:
                    clause.deny()
                break
    return [c for c in clauses if not any(c is h for h in heard)]


def _disbelieves(clause: Clause) -> bool:
    """ "I do not think", "I would not say", "nobody could claim"."""
    subject = clause.subject
    if clause.lemma in _CONVINCING:
        return _unconvinced(clause)
    return (
        subject is not None
        and (subject.text in {"i", "we", "you", "one"} or subject.no)
        and clause.lemma in _HOLDING
        and clause.verb.negated != subject.no
        and not clause.verb.past
        and not (clause.objects or clause.states or clause.sub)
    )


def _unconvinced(clause: Clause) -> bool:
    """ "Nothing will convince me", "you won't persuade me", "I am not convinced", "don't tell me"."""
    subject = clause.subject
    told = [o.text for o in clause.objects]
    if clause.passive:
        passive = subject if subject is not None else clause.objects[0] if clause.objects else None
        return passive is not None and passive.text in {"i", "we"} and clause.verb.negated
    if subject is None:
        return clause.form == "base" and clause.verb.negated and told in (["i"], ["we"])
    if subject.text not in {"you", "they", "he"} and not subject.no:
        return False
    return told in (["i"], ["we"]) and clause.verb.negated != subject.no


def goes(clause: Clause) -> None:
    """ "Comes to h4", "goes back to g8": a verb of moving, and the square where to."""
    if clause.lemma not in _GOING or clause.passive or len(clause.objects) != 1:
        return
    to = clause.objects[0]
    if to.type != "square" or to.parts:
        return
    base, *tail = clause.lemma.split()
    clause.lemma, clause.objects = base, []
    clause.adverbs += [w for w in tail[:-1] if w == "back"]
    clause.places.append(Place(tail[-1], to, to.first - 1, to.last))


def would_like(clause: Clause) -> None:
    """ "He would like to play d4": he wants to."""
    would = clause.verb.modal == "would" and not (clause.verb.negated or clause.verb.done)
    if clause.lemma in {"like", "love"} and would and clause.complement:
        clause.lemma, clause.verb = "want", clause.verb._replace(modal="")


def i_should(clause: Clause) -> None:
    """ "I should call it level": I would."""
    if clause.subject is not None and clause.subject.text == "i" and clause.verb.modal == "should":
        clause.verb = clause.verb._replace(modal="would")


def thats_us(clause: Clause) -> None:
    """ "That's us a pawn down": it is said of us."""
    if (
        clause.lemma == "be"
        and clause.subject is not None
        and clause.subject.head in {"that", "it", "this"}
        and len(clause.objects) + len(clause.states) + len(clause.adverbs) > 1
        and clause.objects
        and clause.objects[0].type == "side"
    ):
        clause.subject = clause.objects.pop(0)


def shown(clause: Clause) -> None:
    """ "What we have before us is a Sicilian": there is one, and nobody is said to have it."""
    if (
        clause.lemma in {"have", "see", "get"}
        and clause.objects
        and clause.subject is not None
        and clause.subject.text in {"we", "you"}
        and not _BEFORE_US.isdisjoint(clause.adverbs)
    ):
        clause.lemma = "be"
        clause.subject = replace(clause.subject, type="pronoun", head="there", text="there")


def let_do(before: Clause, clause: Clause) -> None:
    """ "We let him have the bishops": he has them."""
    who = before.objects[-1] if before.objects else None
    if before.lemma != "let" or clause.subject is not None or who is None:
        return
    if (
        clause.joint in {"=", "-"}
        and clause.form in {"base", "finite"}
        and who.type in {"side", "piece"}
        and who.last + 1 == clause.first
    ):
        clause.subject = who


def aims(before: Clause, clause: Clause) -> None:
    """ "So that we can push f5": to push f5."""
    if (
        clause.sub in {"so that", "in order that"}
        and clause.form == "finite"
        and clause.subject is not None
        and clause.subject.type in {"side", "piece"}
        and clause.verb.modal in {"can", "may"}
        and not clause.verb.negated
        and before.lemma
        and before.form == "finite"
        and "," not in clause.joint
    ):
        clause.form, clause.sub, clause.joint = "to", "", "="
        clause.verb = Verb(clause.verb.negated)


def relative(before: Clause | None, clause: Clause) -> None:
    """A relative clause has the noun before it as its subject or object."""
    if before is None or (clause.subject is not None and clause.subject.head == "which"):
        return
    nouns = [
        *before.objects,
        *[p.noun for p in before.places if p.noun is not None],
        *([before.subject] if before.subject else []),
    ]
    last = max(nouns, key=lambda n: n.last, default=None)
    if clause.subject is None:
        clause.subject = (
            last if clause.sub != "which" or "," not in clause.joint or last is not None else None
        )
        clause.inherited = True
    elif last is not None and not clause.objects:
        clause.objects.append(last)


def subjects(clauses: list[Clause]) -> None:
    """Clauses without a subject have that of the clause that they belong to."""
    main: Clause | None = None
    for number, clause in enumerate(clauses):
        if clause.subject is None and clause.lemma:
            host = clause.governor or main
            if host is None and clause.form in {"ing", "part"}:
                host = next(
                    (
                        c
                        for c in clauses[number + 1 :]
                        if c.subject is not None
                        and c.form == "finite"
                        and not c.joint.endswith(("and", "but", "or"))
                    ),
                    None,
                )
            if host is not None and clause.form != "base":
                clause.subject = host.subject
                clause.inherited = True
        if clause.subject is not None and clause.form in {"finite", "base"}:
            main = clause


def active(clause: Clause) -> None:
    """Puts the passive into the active voice."""
    if not clause.passive and not (clause.form == "part" and clause.lemma):
        return
    clause.passive = True
    patient = clause.subject
    by = next(
        (
            p
            for p in clause.places
            if p.preposition in {"by", "through"}
            and p.noun is not None
            and (
                p.noun.type in {"piece", "square", "move", "side", "pronoun"}
                or p.noun.head in {"piece", "man", "unit"}
            )
        ),
        None,
    )
    clause.subject = None
    if by is not None:
        clause.places.remove(by)
        clause.subject = by.noun
    if patient is not None:
        clause.objects.insert(0, patient)


def deny_nobody(clause: Clause) -> None:
    """ "Nobody protects", "has no defender", "without a defender": a denial of the clause."""
    nouns = ([clause.subject] if clause.subject else []) + clause.objects
    for noun in nouns:
        if noun.no:
            if clause.verb.negated:
                clause.strays.append("not")  # two denials
            clause.deny()
            clause.nobody = True


__all__ = [
    "active",
    "aims",
    "deny_nobody",
    "goes",
    "i_should",
    "let_do",
    "not_the_case",
    "relative",
    "shown",
    "subjects",
    "thats_us",
    "twin",
    "would_like",
]
