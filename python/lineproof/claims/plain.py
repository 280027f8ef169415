"""Plain clauses: what a sentence says, one verb at a time, in a straight order.

>>> from lineproof.claims.sentence import sentences
>>> for said in ("On b5 the bishop pins the knight.", "The knight is pinned by the bishop.", "It is the bishop that pins the knight."):
...     (clause,) = plain(sentences(said, 0)[0])
...     print(clause.subject.text, "|", clause.lemma, "|", clause.objects[0].text)
the bishop | pin | the knight
the bishop | pin | the knight
the bishop | pin | the knight
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from .attached import COUNTED, attach, contrast
from .chunk import Adjective, Adverb, Chunk, Group, Joint, Place, Stray
from .chunking import chunks
from .dislocation import apposed, compared, dislocated, elided
from .doings import deeds, doing
from .lexicon import NOUNS, VERBS, members
from .light import light
from .noun import Noun, listed
from .parts import fold, none_such
from .raising import raised
from .sentence import Sentence
from .verbs import Verb

CONDITIONS = frozenset(["if", "unless", "when", "whenever", "once", "until", "till", "whether", "lest", "provided that", "even if", "in case", "as soon as", "as long as", "so long as", "so that", "in order that", "as if", "as though", "before", "by the time", "the moment", "not that", "after"])  # fmt: skip
"""What is said under one of these is not said to be so; after "when", "once", "if" and the like it may be a move that is played."""
_OTHERS = frozenset(
    ["they", "he", "some", "people", "everybody", "everyone", "somebody", "someone"]
)
_BARRED = frozenset({"impossible", "illegal", "out of the question", "ruled out", "hard", "harder", "difficult"})  # fmt: skip
_POINTERS = frozenset({"it", "this", "that", "these", "those", "there", "here"})
_OF_A_PLACE = frozenset(
    n
    for name in ("backward pawn", "isolated pawn", "passed pawn", "outpost", "hole")
    for n in members(name, NOUNS)
) | {"backward", "isolated", "passed", "half open", "open", "wide open"}
"""What may stand in apposition to a pawn, a square or a file."""
_OWNED = frozenset(
    n
    for name in (
        "isolated pawn", "doubled pawn", "hanging pawn", "backward pawn", "passed pawn", "bishop pair", "majority", "outpost", "opposite bishop",
    )
    for n in members(name, NOUNS)
) | {"more space", "more room", "better bishop", "good bishop", "bad bishop"}  # fmt: skip
"""What a side has "with" which it plays on."""
_BEFORE_US = frozenset({"before us", "in front of us", "before our eyes", "on the board"})
_COMES = frozenset(
    [
        "come",
        "go",
        "stand",
        "be",
        "follow",
        "sit",
        "lie",
        "loom",
        "remain",
        "appear",
        "hang",
        "threaten",
        "lurk",
    ]
)


COPULAS = members("be", VERBS) | {"have"}
"""Verbs whose complement may wait behind an aside."""
WAITING = frozenset({"", "and", "but", "so", ":", "-", ";", "while", "whereas", "because", "since", "that", "as", "for", "although", "though", "yet", "and yet"})  # fmt: skip
"""Joints of a clause whose noun may wait for its verb behind an aside."""
_PHRASAL = frozenset(
    w
    for name in (
        "dislodge",
        "shut in",
        "trap",
        "pin",
        "exchange",
        "remove",
        "capture",
        "regain",
        "give back",
        "sacrifice",
        "play",
        "insert",
        "block",
        "defend",
        "develop",
    )
    for w in VERBS[name]
    if w.count(" ") == 1 and w.split()[1] in {"in", "out", "up", "down", "off", "away", "back"}
)
"""Verbs whose particle may stand behind the object."""


_HOLDING = frozenset({"think", "believe", "say", "claim", "maintain", "argue", "feel", "consider", "suppose", "reckon", "pretend"})  # fmt: skip
"""Verbs whose denial denies what follows them."""
_WITH_PREPOSITION = frozenset(w for words in VERBS.values() for w in words if w.count(" ") == 1)


@dataclass
class Clause:
    """A plain clause.

    lemma: the verb; "" when there is none ("a fork on d5"). subject, objects: in the active voice. places: prepositions with their nouns.
    states: adjectives. adverbs: all of them, with what stood inside the verb group. strays: words that fit nowhere.
    form: of the verb. joint: what joins it to the clause before; "" for the first. sub: the conjunction it stands under.
    passive: whether it was said so. governor: the verb of which it is the infinitive.
    twin: of what the same is denied. inherited: whether the subject is that of an earlier clause. nobody: a noun denies it ("no defender"). complement: an infinitive follows. unreal: the infinitive of a verb that does not say that it happens. turned: its subject stands behind the verb. first, last: its words; verb_at: the first of its verb.
    """

    lemma: str = ""
    subject: Noun | None = None
    objects: list[Noun] = field(default_factory=list)
    places: list[Place] = field(default_factory=list)
    states: list[Adjective] = field(default_factory=list)
    adverbs: list[str] = field(default_factory=list)
    strays: list[str] = field(default_factory=list)
    verb: Verb = field(default_factory=Verb)
    form: str = ""
    joint: str = ""
    sub: str = ""
    passive: bool = False
    governor: Clause | None = None
    inherited: bool = False
    hedged: bool = False
    unreal: bool = False
    nobody: bool = False
    complement: bool = False
    turned: bool = False
    fronted: str = ""
    verb_at: int = -1
    twin: Noun | None = None
    first: int = -1
    last: int = -1

    def see(self, chunk: Chunk | Clause) -> None:
        """Counts the words of a chunk among its own."""
        self.first = chunk.first if self.first < 0 else min(self.first, chunk.first)
        self.last = max(self.last, chunk.last)

    @property
    def empty(self) -> bool:
        return not (self.lemma or self.subject or self.objects or self.places or self.states)

    def deny(self) -> None:
        verb = self.verb
        self.verb = Verb(not verb.negated, verb.modal, verb.done, verb.past)


def plain(sentence: Sentence) -> list[Clause]:
    """The plain clauses of a sentence, in the order in which they are said."""
    rough = [part for clause in _split(chunks(sentence)) for part in _apart(clause)]
    return _joined(deeds(apposed(_trailing(rough))))


_BROUGHT = frozenset(
    w
    for name in ("attack", "threat", "fork", "pin", "skewer", "discovered attack")
    for w in NOUNS[name]
)


def _apart(clause: Clause) -> Iterator[Clause]:
    """ "Swings over to h4 with an attack on h2": what a clause brings with it stands by itself."""
    at = next(
        (
            n
            for n, p in enumerate(clause.places)
            if p.preposition == "with" and p.noun is not None and p.noun.head in _BROUGHT
        ),
        None,
    )
    noun = clause.places[at].noun if at is not None else None
    verb_first = [o.first for o in clause.objects]
    if at is None or noun is None or not clause.lemma or noun.whose:
        yield clause
        return
    if (
        (clause.subject is None and clause.form != "finite")
        or (clause.subject is not None and noun.first < clause.subject.first)
        or any(f > noun.first for f in verb_first)
    ):
        yield clause
        return
    rest = clause.places[at + 1 :]
    clause.places = clause.places[:at]
    brought = Clause(objects=[noun], places=rest, joint="with", hedged=clause.hedged)
    for chunk in (Place("with", noun, noun.first - 1, noun.last), *rest):
        brought.see(chunk)
    clause.last = brought.first - 1
    yield clause
    yield brought


def _trailing(rough: list[Clause]) -> list[Clause]:
    """Counts ", of course" among the words of the clause before it."""
    found: list[Clause] = []
    waiting: Clause | None = None
    inside: Clause | None = None
    leading: list[str] = []
    for clause in rough:
        if _tag(clause):
            continue
        if clause.empty and not found and not clause.strays and not clause.hedged:
            leading += clause.adverbs  # "nine times out of ten what you meet is ..."
        elif leading and not found:
            clause.adverbs, leading = leading + clause.adverbs, []
        if (
            clause.empty
            and clause.sub in {"which", "who", "because", "since"}
            and not clause.strays
        ):
            waiting = clause  # "which, of course, is backward"
            continue
        if waiting is not None:
            if not clause.sub and clause.joint == ",":
                clause.sub, clause.joint = waiting.sub, waiting.joint.rstrip(" ,")
            waiting = None
        if (
            inside is not None
            and clause.joint == ","
            and not clause.lemma
            and clause.places
            and not (clause.objects or clause.states or clause.strays)
        ):
            inside.places += clause.places  # "we have landed, move for move, in a Slav"
            inside.see(clause)
            inside = None
            continue
        inside = None
        if (
            clause.empty
            and found
            and clause.joint == ","
            and not clause.strays
            and "only" not in clause.adverbs
        ):
            inside = found[-1]
            found[-1].adverbs += clause.adverbs
            found[-1].hedged = found[-1].hedged or clause.hedged
            found[-1].last = max(found[-1].last, clause.last)
        elif not clause.empty or _limits(clause) or (clause.hedged and not found):
            found.append(clause)
    return found


def _tag(clause: Clause) -> bool:
    """ ", doesn't it": a question behind what is said."""
    return (
        bool(clause.strays)
        and set(clause.strays) <= {"does", "do", "did"}
        and not (clause.lemma or clause.places or clause.states)
        and clause.joint == ","
        and all(o.type in {"pronoun", "side"} for o in clause.objects)
    )


def _limits(clause: Clause) -> bool:
    """Whether a part without a noun may take back what was said: ", but only seemingly", ", or so it seems"."""
    return (
        "only" in clause.adverbs
        or "but" in clause.joint
        or clause.joint.rstrip(" so").endswith("or")
    )


@dataclass
class _Pile:
    """Chunks of one rough clause before and after its verb."""

    joint: str = ""
    sub: str = ""
    before: list[Chunk] = field(default_factory=list)
    group: Group | None = None
    after: list[Chunk] = field(default_factory=list)
    by: str = ""

    def put(self, chunk: Chunk) -> None:
        (self.after if self.group else self.before).append(chunk)


def _split(found: list[Chunk]) -> Iterator[Clause]:
    """Cuts the chunks at joints and at verbs."""
    pile = _Pile()
    for chunk in found:
        if isinstance(chunk, Joint):
            if pile.before or pile.group:
                yield _clause(pile)
                pile = _Pile(_pending := "")
            word = chunk.norm
            if chunk.sort == "sub" or chunk.sort == "relative" or chunk.sort == "wh":
                pile.sub = word
            pile.joint = f"{pile.joint} {word}".strip()
            continue
        if isinstance(chunk, Group) and pile.group is not None:
            inverted = _inverted(pile, chunk)
            if inverted is not None:
                pile.group, pile.after = inverted, []
                continue
            pulled: list[Chunk] = []
            if chunk.form == "finite":
                while pile.after and isinstance(pile.after[-1], Adverb):
                    pulled.insert(0, pile.after.pop())
                if (
                    pile.after
                    and isinstance(pile.after[-1], Noun)
                    and pile.after[-1].det not in {"us", "him", "them", "me"}
                    and not _gerund(pile, chunk)
                ):
                    pulled.insert(0, pile.after.pop())
            by = ""
            if (
                chunk.form in {"ing", "part"}
                and pile.after
                and isinstance(pile.after[-1], Place)
                and pile.after[-1].preposition == "with"
                and pile.after[-1].noun is not None
            ):
                pulled.insert(0, pile.after.pop())  # "with the colours swapped"
            if (
                chunk.form == "ing"
                and pile.after
                and isinstance(pile.after[-1], Place)
                and pile.after[-1].noun is None
            ):
                by = pile.after.pop().preposition  # type: ignore[union-attr]
            yield _clause(pile)
            pile = _Pile(before=pulled, by=by)
            pile.joint = "-" if chunk.form == "finite" else f"={by}"
            pile.group = chunk
            continue
        if isinstance(chunk, Group):
            if pile.before and isinstance(pile.before[-1], Place) and pile.before[-1].noun is None:
                pile.by = pile.before.pop().preposition  # type: ignore[union-attr]
            pile.group = chunk
            continue
        pile.put(chunk)
    if pile.before or pile.group:
        yield _clause(pile)


def _gerund(pile: _Pile, group: Group) -> bool:
    """ "Capturing on c4 is compulsory": the -ing with its object is the subject."""
    first = pile.group
    if first is None or first.form not in {"ing", "to"} or pile.sub:
        return False
    if _reduced(pile):
        return True
    if pile.before and not (first.form == "to" and len(pile.before) == 1 and group.lemma == "be"):
        return False  # but "the only way to save the game is Nf3"
    if pile.before:
        return isinstance(pile.before[0], Noun) and pile.before[0].type == "noun"
    noun = pile.after[-1]
    alone = sum(isinstance(c, Noun) for c in pile.after) == 1
    return (
        isinstance(noun, Noun)
        and (noun.type in {"square", "piece", "move"} or noun.head == "it")
        and (group.lemma == "be" or bool(group.verb.modal) or (not pile.joint and alone))
    )


def _reduced(pile: _Pile) -> bool:
    """ "The only piece guarding e5 is pinned": the -ing has its object, and the noun before it is the subject."""
    nouns = [c for c in pile.before if isinstance(c, Noun)]
    after = [c for c in pile.after if isinstance(c, Noun)]
    return (
        pile.group is not None
        and pile.group.form == "ing"
        and pile.group.lemma != "be"
        and len(nouns) == len(after) == 1
        and pile.before[-1] is nouns[0]
        and nouns[0].type in {"noun", "piece"}
        and nouns[0].last + 1 == pile.group.first
        and after[0].type in {"piece", "square"}
        and after[0].first == pile.group.last + 1
        and not any(isinstance(c, Place) for c in pile.before)
    )


def _inverted(pile: _Pile, group: Group) -> Group | None:
    """ "No longer is our knight pinned": one verb, its subject inside it."""
    first = pile.group
    nouns = [c for c in pile.before if isinstance(c, Noun)]
    if (
        first is None
        or first.lemma not in {"be", "have", "do"}
        or nouns
        or len(pile.after) != 1
        or not isinstance(pile.after[0], Noun)
        or group.form == "to"
    ):
        return None
    denied = sum(isinstance(c, Adverb) and c.sort == "deny" for c in pile.before) % 2 == 1
    pile.before = [
        c for c in pile.before if not (isinstance(c, Adverb) and c.sort == "deny")
    ] + pile.after
    verb = Verb(
        first.verb.negated != (group.verb.negated != denied),
        first.verb.modal or group.verb.modal,
        first.lemma == "have",
        first.verb.past,
    )
    return Group(
        group.lemma,
        "finite",
        first.lemma == "be" and group.form != "ing",
        verb,
        (*first.adverbs, *group.adverbs),
        first.first,
        group.last,
    )


def _clause(pile: _Pile) -> Clause:
    """A clause from its chunks: subject, objects, places, with its features."""
    clause = Clause(joint=pile.joint, sub=pile.sub)
    before = [c for c in pile.before if isinstance(c, Noun)]
    if before and before[0].text.startswith("1."):
        before = _lined(before)  # a whole game; of other moves the last is the subject
    after = _lined([c for c in pile.after if isinstance(c, Noun)])
    parts = [*pile.before, *([pile.group] if pile.group else []), *pile.after]
    while len(parts) > 1 and isinstance(parts[0], Adverb):
        del parts[0]  # "now" before a claim is no part of its words
    for chunk in parts:
        clause.see(chunk)
    for chunk in (*pile.before, *pile.after):
        match chunk:
            case Place():
                clause.places.append(chunk)
            case Adjective():
                clause.states.append(chunk)
            case Adverb():
                clause.adverbs.append(chunk.norm)
                clause.hedged = clause.hedged or chunk.sort == "hedge"
            case Stray():
                clause.strays.append(chunk.norm)
    group = pile.group
    if (
        group is not None
        and not pile.sub
        and not before
        and after
        and group.verb.past
        and group.lemma == "be"
        and group.form == "finite"
        and not pile.joint
        and not any(isinstance(c, Adjective | Place) for c in pile.before)
    ):
        clause.sub = "if"  # "were the knight not there"
    if group is None:
        clause.objects = before
        for place in list(clause.places):
            if (
                not before
                and place.preposition == "with"
                and place.noun is not None
                and place.noun.type == "noun"
            ):
                clause.objects.append(place.noun)  # "with a fork of king and queen"
                clause.places.remove(place)
        if any(isinstance(c, Adverb) and c.sort == "deny" for c in pile.before):
            clause.verb = Verb(negated=True)
        if any(isinstance(c, Adverb) and c.sort == "limit" for c in pile.before):
            clause.verb = Verb(clause.verb.negated, "almost")
        return clause
    clause.lemma, clause.verb, clause.form, clause.passive = (
        group.lemma,
        group.verb,
        group.form,
        group.passive,
    )
    clause.adverbs += group.adverbs
    clause.fronted, clause.verb_at = pile.by, group.first
    for chunk in (*pile.before, *pile.after):
        if isinstance(chunk, Adverb) and chunk.sort == "deny":
            clause.deny()
        if isinstance(chunk, Adverb) and chunk.sort == "limit" and not clause.verb.modal:
            clause.verb = Verb(clause.verb.negated, "almost", clause.verb.done, clause.verb.past)
    if len(before) > 1 and before[-2].head == "neither" and before[-1].parts:
        before[-2:] = [replace(before[-1], no=True)]  # "neither the bishop nor the rook"
    clause.objects = after
    if len(before) > 1 and group.form == "finite" and all(n.type == "move" for n in before):
        before = [listed(before, "then")]  # "Nxd4 Qh2 is mate"
    if group.form in {"finite"} and before:
        clause.subject = before[-1]
        clause.objects = after + before[:-1]  # "two jobs the king has"
    elif before and group.form in {"ing", "part", "base"}:
        clause.subject = before[-1]
        clause.objects = after + before[:-1]
    elif (
        group.form in {"ing", "part"}
        and clause.places
        and clause.places[0].preposition == "with"
        and clause.places[0].noun is not None
        and clause.places[0].first < group.first
    ):
        clause.subject = clause.places.pop(0).noun  # "with the queen lined up"
    else:
        clause.objects = after + before
    for adverb in clause.adverbs:
        if f"{clause.lemma} {adverb}" in _PHRASAL and after:
            clause.lemma = f"{clause.lemma} {adverb}"  # "shuts the rook out"
            clause.adverbs.remove(adverb)
            break
    if (
        len(clause.objects) > 1
        and clause.subject is not None
        and clause.subject.type == clause.objects[0].type == "side"
        and (
            clause.subject.text == clause.objects[0].text
            or (clause.objects[0].text in {"he", "they", "we", "you"} and not clause.objects[0].det)
        )
        and clause.lemma.split()[0] in {"get", "have", "win", "secure", "build", "create", "find"}
    ):
        del clause.objects[0]  # "we've got ourselves an outpost"
    swapped = (
        clause.subject is not None
        and clause.subject.type != "side"
        and after
        and after[0].type == "side"
        and after[0].text in {"we", "he", "they", "you", "i"}
    )
    if swapped and clause.lemma == "have" and clause.subject is not None:
        clause.subject, clause.objects[0] = clause.objects[0], clause.subject  # "no time have we"
    if (
        group.form == "finite"
        and clause.subject is None
        and after
        and COUNTED.isdisjoint(clause.adverbs)
        and (not pile.sub or pile.sub not in {"which", "who", "that"})
        and _verb_base(group) in _COMES
        and not pile.joint.endswith(("and", "but", "-"))
        and not (pile.joint == "," and not pile.before and group.lemma == "be")
    ):
        clause.subject, clause.objects = after[0], after[1:]  # "off goes the queen"
        clause.turned = not pile.before
    return clause


def _lined(nouns: list[Noun]) -> list[Noun]:
    """Moves that follow one another as one: "1. e4 e5 2. Nc3 leads to the same position"."""
    found: list[Noun] = []
    for noun in nouns:
        last = found[-1] if found else None
        moves = {"move", "square"}
        if (
            last is not None
            and last.type in moves
            and noun.type in moves
            and last.last + 1 == noun.first
            and not noun.parts
        ):
            found[-1] = listed([last, replace(noun, type="move")], "then")
            found[-1] = replace(found[-1], type="move")
        else:
            found.append(noun)
    return found


def _verb_base(group: Group) -> str:
    return group.lemma.split()[0]


def _joined(clauses: list[Clause]) -> list[Clause]:
    """Gives each clause its subject, and puts clefts, relatives and the passive straight."""
    found: list[Clause] = []
    dangling: Clause | None = None
    for clause in clauses:
        before = found[-1] if found else None
        waiting = _waits(clause)
        if waiting is not None:
            dangling = waiting
        if dangling is not None and clause.turned and clause.joint == ",":
            clause.objects.insert(0, clause.subject)  # type: ignore[arg-type]
            clause.subject = None  # "the square, there being no pawn to contest it, is a weakness"
        if (
            clause.lemma
            and clause.subject is None
            and clause.form == "finite"
            and dangling is not None
            and clause.sub not in {"which", "who", "that", "what"}
        ):
            # "Black, I'd have you know, stands better": the noun that waits is the subject
            clause.subject = dangling.objects[-1]
            if not (before is not None and before is not dangling and before.sub):
                clause.see(dangling)  # an aside that claims something keeps its own words
            if before is not None and before is not dangling and _only_places(before):
                clause.places = before.places + clause.places  # "that White, by two captures, wins"
                found.remove(before)
            if dangling.joint.endswith("that"):
                clause.joint = dangling.joint
            clause.places = dangling.places + clause.places
            clause.adverbs = dangling.adverbs + clause.adverbs
            clause.hedged = clause.hedged or dangling.hedged
            clause.joint, clause.sub = dangling.joint, dangling.sub or clause.sub
            found = [c for c in found if c is not dangling]
            dangling, before = None, (found[-1] if found else None)
        if before is not None and (_cleft(before, clause) or _what_first(before, clause)):
            continue
        if before is not None and compared(before, clause):
            continue
        if before is not None and dislocated(before, clause):
            found.pop()
            before = found[-1] if found else None
        if before is not None and fold(before, clause):
            if before.lemma:
                dangling = None
            continue
        if (
            clause.form in {"ing", "part"}
            and clause.subject is None
            and clause.joint == ","
            and before is not None
            and not before.lemma
            and (noun := _last_piece(before)) is not None
        ):
            clause.subject, clause.inherited = noun, True  # "the knight on f7, forking two"
        if before is not None:
            _gapped(before, clause)
            elided(before, clause)
            _contact(before, clause)
            _apposed(before, clause)
        if (
            before is not None
            and before.sub == "what"
            and before.lemma
            and clause.lemma == "be"
            and clause.joint == "-"
            and clause.subject is None
            and (clause.objects or clause.places)
        ):
            before.objects += clause.objects  # "what White threatens is Nxf7"
            before.places += clause.places
            before.sub, before.joint = "", before.joint.removesuffix("what").strip()
            if clause.verb.negated:
                before.deny()
            before.see(clause)
            continue
        if (
            before is not None
            and not clause.lemma
            and clause.joint == ","
            and before.lemma in COPULAS
            and before.form == "finite"
            and not (before.objects or before.states or before.places)
            and _COMPLETE.isdisjoint(before.adverbs)
        ):
            before.objects, before.states, before.places = (
                clause.objects,
                clause.states,
                clause.places,
            )
            before.adverbs += clause.adverbs
            before.strays += clause.strays
            before.see(clause)  # "White has, I think, a slight edge"
            continue
        if (
            before is not None
            and clause.joint == "-"
            and clause.form == "finite"
            and clause.subject is None
            and before.form in {"ing", "to"}
            and not before.strays
            and before.joint in {"", ":", ",", "that", "so", "and", "because", "since"}
        ):
            reduced = before.form == "ing" and before.subject is not None and not before.inherited
            if reduced:
                clause.subject, clause.inherited = before.subject, True
            else:
                before.unreal = True  # "taking on c4 is compulsory": the -ing is the subject
                clause.subject = doing(before)
                clause.see(before)
        if (
            before is not None
            and clause.lemma == "be"
            and clause.joint == "-"
            and clause.subject is not None
            and clause.subject.type == "pronoun"
            and before.form == "part"
            and not (clause.objects or clause.states or clause.places)
        ):
            before.see(clause)  # "pinned it's not"
            if clause.verb.negated:
                before.deny()
            continue
        if clause.sub in {"which", "who", "that"} and clause.lemma:
            _relative(before, clause)
        if (
            before is not None
            and before.lemma == "let"
            and clause.form == "base"
            and clause.subject is None
            and clause.joint == "="
            and before.objects
            and before.objects[-1].type in {"side", "piece"}
        ):
            clause.subject = before.objects[-1]  # "let him have the bishops"
        if before is not None and _aims(before, clause):
            clause.form, clause.sub, clause.joint = "to", "", "="
            clause.verb = Verb(clause.verb.negated)
        if (
            clause.governor is None
            and clause.form in {"to", "base", "ing", "part"}
            and clause.joint.startswith("=")
            and before is not None
        ):
            clause.governor = before
            if clause.form == "to" and before.lemma == "be" and not before.objects:
                clause.places = [
                    p for p in before.places if p.preposition in {"of", "behind"}
                ] + clause.places  # "the point of a4 is to stop b5"
            before.complement = before.complement or clause.form in {"to", "base"}
            if (
                clause.form == "part"
                and before.lemma in {"leave", "keep", "find", "get", "have"}
                and before.objects
                and before.objects[-1].type in {"piece", "square", "file"}
                and clause.subject is None
            ):
                clause.subject = before.objects[-1]  # "has left his king exposed"
            if before.lemma == "make" and any(s.lemma in _BARRED for s in before.states):
                before.lemma = "prevent"  # "makes it impossible for White to capture"
        found.append(clause)
        if (
            not clause.lemma
            and clause.objects
            and not clause.states
            and (
                clause.joint in WAITING
                or clause.joint.lstrip(", ") in WAITING
                or (clause.joint == "that" and clause.objects[-1].type == "side")
            )
            and COUNTED.isdisjoint(clause.adverbs)
            and (clause.joint != "," or dangling is None or clause.objects[-1].type == "side")
        ):
            dangling = clause
        elif clause.lemma and clause.form == "finite" and not clause.sub and clause.joint != "-":
            dangling = None
    found = [part for clause in found for part in _accompanied(clause)]
    attach(found)
    found = _not_the_case(found)
    _subjects(found)
    found += [_twin(clause) for clause in found if clause.twin is not None]
    found = raised(found)
    for number, clause in enumerate(found):
        contrast(found[number - 1] if number else None, clause)
        _thats_us(clause)
        none_such(clause)
        light(clause)
        _shown(clause)
        _active(clause)
        _deny_nobody(clause)
    return found


_COMPLETE = frozenset({"off", "away", "gone", "up", "down", "back", "over"})
"""Adverbs with which "is" says all: "the queens are off, good riddance"."""


def _twin(clause: Clause) -> Clause:
    """ "It is not the pawn but the bishop that stands unprotected": what is denied of the pawn."""
    twin = clause.twin
    assert twin is not None
    clause.twin = None
    other = replace(clause, subject=twin, first=twin.first, last=twin.last, twin=None)
    other.objects, other.places = list(clause.objects), list(clause.places)
    other.states, other.adverbs = list(clause.states), list(clause.adverbs)
    other.deny()
    return other


def _aims(before: Clause, clause: Clause) -> bool:
    """ "So that we can push f5": to push f5."""
    doing = clause.subject is not None and clause.subject.type in {"side", "piece"}
    return (
        clause.sub in {"so that", "in order that"}
        and clause.form == "finite"
        and doing
        and clause.verb.modal in {"can", "may"}
        and not clause.verb.negated
        and bool(before.lemma)
        and before.form == "finite"
        and "," not in clause.joint
    )


def _waits(clause: Clause) -> Clause | None:
    """ "By moving the h-pawn White, careless as ever, has ...": the side behind the -ing and its object waits for the verb."""
    last = clause.objects[-1] if clause.objects else None
    if (
        last is None
        or clause.form != "ing"
        or not clause.fronted
        or last.type != "side"
        or last.text not in {"white", "black", "we", "he", "they", "you"}
        or (len(clause.objects) > 1 and clause.objects[-2].type == "side")
        or (len(clause.objects) == 1 and (not clause.places or last.first < clause.places[-1].last))
        or last.last != clause.last
    ):
        return None
    clause.objects.pop()
    clause.last = last.first - 1
    return Clause(objects=[last], first=last.first, last=last.last)


def _last_piece(clause: Clause) -> Noun | None:
    """The piece that a part without a verb ends with."""
    nouns = [*clause.objects, *[p.noun for p in clause.places if p.noun is not None]]
    last = max(nouns, key=lambda n: n.last, default=None)
    return last if last is not None and last.type == "piece" and not last.no else None


def _only_places(clause: Clause) -> bool:
    return bool(clause.places) and not (
        clause.lemma or clause.objects or clause.states or clause.strays or clause.sub
    )


def _not_the_case(clauses: list[Clause]) -> list[Clause]:
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
    return (
        subject is not None
        and (subject.text in {"i", "we", "you", "one"} or subject.no)
        and clause.lemma in _HOLDING
        and clause.verb.negated != subject.no
        and not clause.verb.past
        and not (clause.objects or clause.states or clause.sub)
    )


def _cleft(before: Clause, clause: Clause) -> bool:
    """ "It is the bishop that pins", "that's a mate he threatens", "a pawn is what it cost us": one clause, put into `before`."""
    if before.lemma != "be" or not clause.lemma or clause.form != "finite":
        return False
    pointed = before.subject is not None and before.subject.head in {"it", "that", "this"}
    if clause.subject is not None and clause.subject.no and not clause.sub:
        return False  # "that is a move nobody saw"
    if pointed and before.objects and before.objects[-1].head == "position":
        return False  # "this is the position we had last week"
    if (
        pointed
        and before.objects
        and clause.sub in {"that", "who", "which", ""}
        and (clause.sub or clause.joint == "-")
        and "," not in clause.joint
    ):
        what = before.objects[-1]
        negated = before.verb.negated
        rather = next(
            (p for p in before.places if p.preposition == "but" and p.noun is not None), None
        )
        if rather is not None and rather.noun is not None:
            what, negated = rather.noun, False  # "it isn't the king but the queen that"
            before.places.remove(rather)
        twin = before.objects[-1] if what is not before.objects[-1] else None
        if clause.subject is None:
            clause.subject = what
            clause.twin = twin if twin is not None and twin.type == "piece" else None
        elif (clause.places and clause.places[-1].noun is None) or (
            clause.adverbs and clause.adverbs[-1] in {"to", "on", "with", "at", "for", "by"}
        ):
            preposition = (
                clause.places.pop().preposition
                if clause.places and clause.places[-1].noun is None
                else clause.adverbs.pop()
            )
            clause.places.append(Place(preposition, what, what.first, what.last))
        else:
            clause.objects.append(what)
        _take_over(before, clause, negated)
        return True
    if (
        pointed
        and clause.sub == "that"
        and "," not in clause.joint
        and clause.subject is not None
        and len(before.places) == 1
        and not (before.objects or before.states)
        and before.places[0].noun is not None
    ):
        place = before.places.pop()  # "it is to White that the pair of bishops belongs"
        if f"{clause.lemma} {place.preposition}" in _WITH_PREPOSITION and place.noun is not None:
            clause.lemma = f"{clause.lemma} {place.preposition}"
            clause.objects.append(place.noun)
        else:
            clause.places.append(place)
        _take_over(before, clause, before.verb.negated)
        return True
    if (
        clause.sub == "what"
        and clause.lemma in {"call", "name"}
        and pointed
        and not before.objects
        and clause.subject is not None
        and clause.subject.type == "side"
        and clause.objects
        and not clause.verb.negated
    ):
        before.objects = clause.objects  # "this is what we call a skewer"
        before.see(clause)
        return True
    if clause.sub == "what" and before.subject is not None and not before.objects:
        what = before.subject
        if clause.subject is None:
            clause.subject = what
        else:
            clause.objects.append(what)
        _take_over(before, clause, before.verb.negated)
        return True
    return False


def _what_first(before: Clause, clause: Clause) -> bool:
    """ "What he has is the bishop pair": one clause, put into `before`."""
    if before.sub != "what" or not before.lemma or clause.lemma != "be" or clause.joint != "-":
        return False
    if before.objects or (clause.subject is not None and not clause.inherited):
        return False
    before.sub, before.joint = "", before.joint.replace("what", "").strip()
    before.objects, before.states = clause.objects, [*before.states, *clause.states]
    before.places = before.places + clause.places
    before.adverbs, before.strays = before.adverbs + clause.adverbs, before.strays + clause.strays
    before.see(clause)
    if clause.verb.negated:
        before.deny()
    return True


def _gapped(before: Clause, clause: Clause) -> None:
    """ "White has the e-file and Black the c-file": the verb of the clause before."""
    wing = clause.objects[0] if len(clause.objects) == 1 and not clause.states else None
    if (
        before.lemma == "castle"
        and wing is not None
        and wing.head in {"kingside", "queenside"}
        and wing.whose
    ):  # "White castled queenside, Black kingside"
        who = wing.whose.removesuffix(" 's")
        side = Noun("side", who, who, wing.first, wing.first)
        clause.objects = [side, replace(wing, whose="", text=wing.head)]
    castles = before.lemma == "castle" and len(clause.objects) + len(clause.states) == 2
    if (
        castles
        and not clause.lemma
        and clause.objects
        and clause.objects[0].type == "side"
        and clause.joint in {"and", ", and", ",", "but", ", but", ";"}
        and not before.verb.negated
    ):
        clause.lemma, clause.verb, clause.form = before.lemma, before.verb, before.form
        clause.subject = clause.objects.pop(0)
        return
    if (
        not clause.lemma
        and before.lemma in {"have", "get", "own", "keep", "hold"}
        and not before.verb.negated
        and clause.joint in {"and", ", and", ",", "but", ", but", ";"}
        and len(clause.objects) > 1
        and clause.objects[0].type == "side"
        and clause.objects[0].text in {"white", "black", "we", "he", "they", "you"}
    ):
        clause.lemma, clause.verb, clause.form = before.lemma, before.verb, before.form
        clause.subject = clause.objects.pop(0)


def _contact(before: Clause, clause: Clause) -> None:
    """ "The hole he's left on d5": a relative clause without its pronoun has the noun before it as its object."""
    if (
        clause.joint != "-"
        or clause.form != "finite"
        or clause.lemma
        not in {
            "leave",
            "have",
            "get",
            "give",
            "make",
            "create",
            "own",
            "do",
            "find",
            "see",
            "know",
            "play",
        }
        or clause.objects
        or clause.subject is None
        or clause.subject.type != "side"
        or not before.objects
    ):
        return
    last = before.objects[-1]
    if (
        (last.type == "noun" or last.no)
        and last.last == before.last
        and clause.subject.first == last.last + 1
    ):
        clause.objects.append(last)


def _apposed(before: Clause, clause: Clause) -> None:
    """ "d3, a backward pawn": what is said of the noun just before it."""
    if clause.lemma or clause.joint != "," or clause.places or clause.strays or clause.verb.negated:
        return
    said = [o.head for o in clause.objects] + [s.lemma for s in clause.states]
    if len(said) != 1 or said[0] not in _OF_A_PLACE:
        return
    nouns = [
        *before.objects,
        *[p.noun for p in before.places if p.noun is not None],
        *([before.subject] if before.subject else []),
    ]
    last = max(nouns, key=lambda n: n.last, default=None)
    if last is not None and last.type in {"piece", "square", "file"} and last.last == before.last:
        clause.lemma, clause.form, clause.subject = "be", "finite", last


def _thats_us(clause: Clause) -> None:
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


def _shown(clause: Clause) -> None:
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


def _accompanied(clause: Clause) -> list[Clause]:
    """ "With an isolated pawn Black must stay active": he has it, and the rest."""
    subject = clause.subject
    first = clause.places[0] if clause.places else None
    if (
        first is None
        or first.preposition != "with"
        or first.noun is None
        or subject is None
        or subject.type != "side"
        or first.first > subject.first
        or first.noun.no
        or not _owned(first.noun)
        or clause.verb.modal in {"would", "could", "might", "should"}
    ):
        return [clause]
    own = [first]
    for place in clause.places[1:]:
        if place.first == own[-1].last + 1:
            own.append(place)
    clause.places = [p for p in clause.places if p not in own]
    has = Clause("have", subject, [first.noun], own[1:], form="finite", joint=clause.joint)
    has.sub = clause.sub
    has.first, has.last = first.first, own[-1].last
    clause.first = subject.first
    clause.joint = "-"
    return [has, clause]


def _owned(noun: Noun) -> bool:
    said = {noun.head, *(f"{a} {noun.head}" for a in noun.adjectives)}
    return not said.isdisjoint(_OWNED)


def _take_over(before: Clause, clause: Clause, negated: bool) -> None:
    places, adverbs, strays = before.places, before.adverbs, before.strays
    joint, sub, hedged, first, last = (
        before.joint,
        before.sub,
        before.hedged,
        before.first,
        before.last,
    )
    before.__dict__.update(clause.__dict__)
    before.joint, before.sub, before.hedged = joint, sub, hedged or clause.hedged
    before.places, before.adverbs, before.strays = (
        places + clause.places,
        adverbs + clause.adverbs,
        strays + clause.strays,
    )
    before.first, before.last = min(first, clause.first), max(last, clause.last)
    if negated:
        before.deny()


def _relative(before: Clause | None, clause: Clause) -> None:
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


def _subjects(clauses: list[Clause]) -> None:
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


def _active(clause: Clause) -> None:
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


def _deny_nobody(clause: Clause) -> None:
    """ "Nobody protects", "has no defender", "without a defender": a denial of the clause."""
    nouns = ([clause.subject] if clause.subject else []) + clause.objects
    for noun in nouns:
        if noun.no:
            if clause.verb.negated:
                clause.strays.append("not")  # two denials
            clause.deny()
            clause.nobody = True


__all__ = ["CONDITIONS", "Clause", "plain"]
