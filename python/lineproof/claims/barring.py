"""Barring: why a clause must not be read."""

from __future__ import annotations

from .aim import aimed
from .clause import CONDITIONS, Clause
from .course import DEEDS
from .lexicon import VERBS, members
from .resolving import Resolving

_SAYS = frozenset(["convince", "persuade", "think", "believe", "guess", "reckon", "suppose", "argue", "maintain", "claim", "say", "call", "hear", "pretend", "hope", "wish", "fear", "doubt", "imagine", "expect", "look", "look like", "seem", "like", "want", "wonder", "suspect", "dream", "tell", "swear", "appear"])  # fmt: skip

_WILLING = frozenset(["threaten", "want", "wish", "hope", "plan", "try", "intend", "prepare", "like", "love", "refuse", "fail", "forget", "decline", "long", "prefer", "need", "dare", "avoid", "allow", "permit", "enable", "let", "help", "invite", "tempt", "encourage", "start", "stop", "prevent", "hesitate", "use", "seem", "appear", "think", "dream", "consider", "suggest", "attempt", "serve", "suffice", "expect", "play", "mind", "risk", "fear", "stand"])  # fmt: skip
"""Verbs whose infinitive or -ing is not said to happen."""

_ARISING = members("arise", VERBS) | {"reach", "occur"}

_LOSING = frozenset(["lose", "drop", "shed", "surrender", "forfeit"])
"""Verbs of what befalls whoever does not do what stands before "or"."""

_BREAK = frozenset(",;:")

_WHILE = frozenset({"as long as", "so long as"})


class Barring(Resolving):
    """Tells clauses that are not said to be so."""

    def _blocked(self, clause: Clause, clauses: list[Clause], number: int) -> str:
        if (
            clause.joint.split()[-1:] == ["or"]
            and clause.lemma
            and (clause.form == "finite" or clause.lemma.split()[0] in _LOSING)
            and number
        ):
            return "it is said of what happens otherwise"
        if number and _otherwise_lost(clauses[number - 1], clause) and not self.deed:
            return "it rests on a condition that is not on the board"
        if number + 1 < len(clauses) and _not_both(clause, clauses[number + 1]):
            return "it is denied of two things together"
        if number and _not_both(clauses[number - 1], clause):
            return "it is denied of two things together"
        follows = clause.sub == "so that" and clause.verb.modal in {"can", "may"}
        if clause.sub in CONDITIONS and clause.joint != ", so that" and not follows:
            return "a condition that is not on the board"
        if (
            clause.sub in {"what", "why", "where", "how", "whatever"}
            and clause.joint == clause.sub
            and clause.sub != "how"
        ):
            return "a question"
        if (
            clause.form == "base"
            and clause.subject is None
            and clause.lemma.split()[:1] in (["look"], ["see"], ["watch"])
        ):
            if not clause.objects or clause.complement or clause.sub:
                return "a word to the class"
            self.aim = aimed(clause) or self.aim
            clause.lemma, clause.form = "", ""  # "look at those doubled pawns": there they are
        if number + 1 < len(clauses) and _as_a_target(clause, clauses[number + 1]):
            return "what a side gets to aim at is the other's"
        for near in (number - 1, number + 1):
            other = clauses[near] if 0 <= near < len(clauses) else None
            if other is None or other.sub not in CONDITIONS:
                continue
            if other.sub in {"as if", "as though"} or _aside(other):
                continue  # it likens, or speaks to the class
            if other.sub == "when" and other.verb.done and clause.verb.done and near > number:
                continue  # "Black gave up castling when he took on f7"
            if other.sub == "when" and other.verb.done and not _TODAY.isdisjoint(clause.adverbs):
                continue  # "last time, when we castled short, ... today we ..."
            if other.sub in {"before", "after"} and not (other.lemma or other.objects):
                continue  # "before lunch"
            if near > number and other.sub == "before":
                continue  # "gets out of Bg5 before it is pinned"
            shared = clause.joint in {"and", "or"} and (clause.inherited or clause.form == "base")
            if (
                near < number
                and shared
                and clause.lemma
                and not self.deed
                and self.here.idle is None
            ):
                return "it rests on a condition that is not on the board"
            if near > number and other.sub == "unless":
                return "it rests on a condition that is not on the board"
            own = (near < number and clause.joint in {",", "", ", then", "then", "-", ", -"}) or (
                near > number
                and (not other.verb.done if other.sub == "once" else not _BREAK & set(other.joint))
            )
            if near > number and _purpose(other):
                continue  # "the only move if he wants to keep the knight"
            if other.sub in _WHILE and self._holds(other):
                continue
            if near < number and other.sub == "once" and self._arrived_there(other, clause):
                continue
            if near < number and _of_mood(other) and _by_move(clause):
                continue  # "if he is greedy, Nxe5 runs into Qh5"
            if near > number and other.sub == "whenever" and clause.verb.modal in {"can", "may"}:
                continue  # "can give it back whenever it becomes a burden"
            if near > number and other.sub in {"when", "if"} and _comes_about(clause):
                continue  # "it also arises when White plays Bc4 first"
            if near < number and (self.deed or self.here.idle is not None):
                continue
            if own and not self._played(other):
                return "it rests on a condition that is not on the board"
        if (
            clause.governor is not None
            and clause.form != "finite"
            and clause.fronted in {"", "from"}
            and clause.governor.lemma.partition(" ")[0] in _WILLING
        ):
            clause.unreal = True
        if (
            clause.form == "base"
            and clause.governor is not None
            and clause.governor.lemma == "do"
            and clause.governor.verb.modal
        ):
            clause.unreal = True  # "what he should have done is give the bishop"
        if clause.fronted == "to" and clause.form == "ing" and clause.governor is not None:
            clause.unreal = True  # "comes near to attacking two pawns"
        if (
            clause.form == "to"
            and clause.governor is not None
            and clause.governor.sub in CONDITIONS
        ):
            return "a condition that is not on the board"
        if (
            clause.form == "to"
            and clause.governor is not None
            and clause.governor.lemma.partition(" ")[0] not in DEEDS
        ):
            clause.unreal = True
        if clause.governor is not None and _may_come(clause.governor):
            clause.unreal = True
        before = clauses[number - 1] if number else None
        if (
            clause.inherited
            and clause.joint in {"and", "but"}
            and number
            and clauses[number - 1].passive
            and sum(o.type in {"noun", "side"} for o in clauses[number - 1].objects) > 1
        ):
            return "the clause before it was not taken apart"
        if self.quoted and clause.sub in _REASONS:
            return "it is said of what others think"
        if self.quoted and clause.inherited and clause.joint in {"and", "or", "but", "and so"}:
            return "it is said of what others think"
        if self.quoted and clause.joint in {"because", "since", "as"}:
            return "it is said of what others think"
        if self.quoted and self.unfinished:
            self.unfinished = not clause.lemma
            return "it is said of what others think"  # "he may suppose that White, by two captures, wins a pawn"
        self.quoted = False
        if (
            before is not None
            and before.lemma.split()[:1]
            and before.lemma.partition(" ")[0] in _SAYS
            and not (before.lemma == "look at" or before.form == "base")
            and clause.joint in {"-", "that", "how", "as if", "-that"}
        ) and (before.subject is None or before.subject.text not in {"i"}):
            self.quoted, self.unfinished = True, not clause.lemma
            return "it is said of what others think"
        return ""

    def _arrived_there(self, once: Clause, clause: Clause) -> bool:
        """ "Once on d4, the pawn ...": it stands there."""
        piece = clause.subject
        if once.lemma or once.objects or once.states or len(once.places) != 1 or piece is None:
            return False
        noun = once.places[0].noun
        if noun is None or not noun.square or piece.type != "piece":
            return False
        return noun.square in self.here.find(piece.text)


def _otherwise_lost(before: Clause, clause: Clause) -> bool:
    """ "Anything else and Black is worse", "grab it and you're lost": what comes of a move that is only thought of."""
    if clause.joint not in {"and", ", and"} or clause.form != "finite" or clause.inherited:
        return False
    if before.lemma:
        said = clause.subject is not None and clause.subject.text == "you"
        if before.lemma.partition(" ")[0] in _TALKING:
            return False  # "count the pieces and you're winning"
        return said and before.form == "base" and before.subject is None and bool(before.objects)
    nouns = [*([before.subject] if before.subject else []), *before.objects]
    return len(nouns) == 1 and (
        (nouns[0].head in {"anything", "something", "everything"} and "else" in before.adverbs)
        or (nouns[0].head == "move" and not _OTHERS.isdisjoint(nouns[0].adjectives))
    )


def _not_both(clause: Clause, after: Clause) -> bool:
    """ "It can't take on f7 and guard the queen as well": either alone may be possible."""
    return (
        clause.verb.negated
        and clause.verb.modal == "can"
        and after.form == "base"
        and after.joint == "and"
        and bool(after.lemma)
        and not _TOGETHER.isdisjoint(after.adverbs)
    )


_OTHERS = frozenset({"other", "another", "wrong", "careless", "different"})
_TOGETHER = frozenset({"as well", "too", "also", "at the same time", "at once", "still", "both", "simultaneously"})  # fmt: skip


def _as_a_target(clause: Clause, then: Clause) -> bool:
    """ "We get doubled pawns to shoot at": they are the other's, or it is not said whose."""
    at = not {"at", "against"}.isdisjoint(then.adverbs)
    return (
        clause.lemma in {"have", "get"}
        and then.governor is clause
        and then.form == "to"
        and (
            (then.lemma in _STRIKING and _MEANS.isdisjoint(then.adverbs))
            or (then.lemma in _AIMING and at)
        )
        and not (then.objects or then.places)
    )


def _of_mood(clause: Clause) -> bool:
    """ "If he is greedy", "if Black isn't careful": a condition that names nothing on the board."""
    return (
        clause.sub in {"if", "when", "should"}
        and not clause.verb.past
        and (clause.subject is None or clause.subject.type == "side")
        and not any(n.type in {"piece", "square", "move", "file"} for n in clause.objects)
        and not any(
            p.noun is not None and p.noun.type in {"piece", "square", "move"} for p in clause.places
        )
    )


def _purpose(clause: Clause) -> bool:
    """ "If he wants to keep the knight": what a move is for."""
    wants = clause.lemma in {"want", "wish", "be", "care", "mean", "intend", "hope"}
    side = clause.subject is not None and clause.subject.type == "side"
    plain = not (clause.objects or clause.places or clause.states or clause.verb.negated)
    return clause.sub == "if" and wants and clause.complement and side and plain


def _by_move(clause: Clause) -> bool:
    """Whether a clause says what a move does that it names itself."""
    subject = clause.subject
    named = subject is not None and (subject.type == "move" or subject.head == "castling")
    return named and not clause.inherited


def _aside(clause: Clause) -> bool:
    """ "Before you ask", "if I may say so", "in case you wonder": of the talk, not of the board."""
    return (
        clause.subject is not None
        and clause.subject.text in {"you", "i", "anybody", "anyone", "somebody", "someone"}
        and clause.lemma.split()[:1] != []
        and clause.lemma.partition(" ")[0] in _TALKING
    )


_STRIKING = members("attack", VERBS)
_MEANS = frozenset({"with", "from", "on", "along", "through"})
_AIMING = frozenset({"shoot", "aim", "fire", "peck", "nibble", "chip", "play", "work", "look"})
"""Verbs of what is done to the other's men, these with "at" or "against"; with one of the words before it is done by one's own."""
_TODAY = frozenset({"today", "now", "this time", "this evening", "tonight"})
_REASONS = frozenset({"since", "because", "as", "for"})
_TALKING = frozenset({"ask", "shout", "say", "object", "complain", "wonder", "protest", "scream", "laugh", "interrupt", "tell", "forget", "worry", "panic", "point", "look", "think", "count", "know", "doubt", "believe"})  # fmt: skip
"""Verbs of what is done in the class."""


def _may_come(above: Clause) -> bool:
    """ "Can come to protect it": not yet."""
    return above.lemma in {"come", "come to"} and above.verb.modal in {
        "can",
        "could",
        "may",
        "might",
    }


def _comes_about(clause: Clause) -> bool:
    """Whether a clause says that a position comes about, so that "when" says by which road."""
    nouns = [*([clause.subject] if clause.subject else []), *clause.objects]
    same = any(
        n.head == "position" and {"same", "identical", "very"} & set(n.adjectives) for n in nouns
    )
    if same and clause.lemma in {"get", "have", "reach", "be", "arise", "give", "see"}:
        return True
    return clause.lemma in _ARISING and any(n.head in {"position", "it", "this"} for n in nouns)


__all__ = ["Barring"]
