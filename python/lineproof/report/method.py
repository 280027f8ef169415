"""The sections of what changed since the last run and of how the lesson was checked."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from lineproof.claims import Kind, kind_of
from lineproof.proof import Proof

from .answer import changed
from .counted import counted
from .located import Located
from .markup import Html, tag
from .plain import plain
from .section import Section, lead
from .wording import MAY_DIFFER, gone, seconds, turned

if TYPE_CHECKING:
    from lineproof.proof.games import Games


def changes(proof: Proof) -> Section | None:
    """None where nothing changed."""
    what = changed(proof)
    if not what and not proof.newly_gone:
        return None
    said = [*(turned(c) for c in proof.changes), *(gone(opinion) for opinion in proof.newly_gone)]
    rows = tag("ul", *(tag("li", each) for each in said), class_="plain columns")
    first = [lead(what.said)] if what else []
    return Section("changes", "What changed since the last run", (*first, rows))


def method(proof: Proof, findings: Sequence[Located]) -> Section:
    """Effort, engine and the definitions of the kinds of claim that were found."""
    kinds = [kind_of(id_) for id_ in {f.finding.claim.kind for f in findings}]
    kinds.sort(key=lambda kind: (kind.title, kind.id))
    parts = [lead(_effort(proof, findings))]
    if kinds:
        parts.append(tag("h3", "What the claims mean", class_="group"))
        parts.append(tag("dl", *(_definition(kind) for kind in kinds), class_="kinds columns"))
    return Section("method", "How it was checked", tuple(parts))


def _definition(kind: Kind) -> Html:
    source = tag("span", f"Source: {kind.source}. Version {kind.version}.", class_="source")
    return tag("div", tag("dt", kind.title), tag("dd", kind.definition, " ", source))


def _asked(proof: Proof) -> str:
    """Who answered the searches: "Engine version 1", or "Outside engine Paper Boat 2"."""
    if proof.outside is None:
        return f"Engine version {proof.engine}"
    return f"Outside engine {plain(proof.outside.name)}"


def _counted(games: Games, findings: Sequence[Located]) -> str:
    """What was counted in a collection."""
    asked = sum(bool(f.finding.games) for f in findings)
    who = (
        ""
        if games.ratings is None
        else f" between players rated {games.ratings[0]} to {games.ratings[1] - 1}"
    )
    return (
        f"{counted(asked, 'claim')} of how often a move is played {'was' if asked == 1 else 'were'} counted in the"
        f" games{who} of the collection {plain(games.name)}, which has {counted(games.games, 'game')} in all;"
        " intervals are those of Wilson (1927), 95 %."
    )


def _effort(proof: Proof, findings: Sequence[Located]) -> str:
    steps = proof.effort.steps
    searched = sum(f.finding.nodes > 0 for f in findings)
    nodes = sum(f.finding.nodes for f in findings)
    said = [
        f"At {proof.effort} effort a search looks at {steps[0]:,} positions"
        + (
            f", and at up to {steps[-1]:,} where the answer is close to an edge."
            if len(steps) > 1
            else "."
        ),
        (
            f"{counted(searched, 'claim')} needed search, {nodes:,} positions in all"
            + ("." if proof.games is not None else "; the others are facts of the board.")
            if searched
            else "No claim needed search."
        ),
        *([] if proof.games is None else [_counted(proof.games, findings)]),
        f"{_asked(proof)}; the run took {seconds(proof.seconds)}.",
        "Points are expected score out of 100.",
    ]
    if proof.outside is not None:
        said.append(
            f"{MAY_DIFFER} The rules, and whether there is a mate in n, are for engine version {proof.engine} of"
            f" Lineproof to say. The program's file has the SHA-256 {proof.outside.sha256}."
        )
    if not proof.kept:
        said.append("The evidence could not be kept, so the next run computes it again.")
    return " ".join(said)
