"""What a sentence refers to, and what therefore must be told before it.

Four sorts are known, by their words alone; no search is asked.

* A line of the lesson named by its moves ("after 3...d5 the same capture", "transposes to 4...Qe7 5.Qe2"), with a word that
  leans on it (`LEANS`) and none that puts it off (`LATER`): that line, as far as it is named.
* Words for what was said without saying where ("as we saw", `SEEN`): all that the file has before them. With a move ("the
  same Nd5"): an earlier place with that move.
* Words that count or compare (`COMPARES`: "the last line", "by contrast", "once more"): these sentences keep the author's order
  among themselves; "the main line" wants the main line's move at the same branching told.
* Words that put a move first (`FIRST`: "learn this one first"): before the moves beside it.

A sentence that names a move below it or on its own road refers to nothing that must come before.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from lineproof.claims.sentence import Sentence

from .steps import Steps

LEANS = re.compile(
    r"\b(same|transpos\w+|like|unlike|as|saw|seen|line|position|was|were|earlier|before|contrast|compare[sd]?|again|already|than|too|also)\b",
    re.I,
)
LATER = re.compile(
    r"\b(will|shall|later|next|soon|coming|below|another (?:day|time|lesson)|in a moment)\b|['’]ll\b",
    re.I,
)
SEEN = re.compile(
    r"\b(?:as|what|that|which|where|how|when) (?:we|you|i)(?: have|['’]ve)?(?: just| already)? (?:saw|seen|met|said|showed|shown|learn(?:ed|t))\b"
    r"|\bwe(?: have|['’]ve)? (?:just |already )?(?:saw|seen|met)\b|\bas (?:before|already|mentioned|promised|I said)\b|\bsaw (?:earlier|before)\b",
    re.I,
)
COMPARES = re.compile(
    r"\b(?:last|previous|other|first|main) (?:line|variation)s?\b|\b(?:line|variation) (?:before|above)\b|\b(?:by|in) contrast\b|\bunlike\b"
    r"|\bonce (?:more|again)\b|\bthis time\b|\bearlier\b|\bthe same (?:move|capture|idea|trick|pattern|story|mistake|punishment|fork|pin|plan|check)\b"
    r"|\b(?:secondly|thirdly|finally|lastly|last of all)\b",
    re.I,
)
FIRST = re.compile(
    r"\b(?:this|that|it)(?: one| line| move)? first\b|\bfirst of all\b|\b(?:begin|start) with (?:this|it)\b",
    re.I,
)
CLOSING = re.compile(
    r"\bthat(?: i|['’])s all\b|\bgood ?(?:night|bye)\b|\bsee you\b|\buntil next\b|\bthank(?:s| you) for\b|\bto sum up\b|\bsumming up\b"
    r"|\bstack the chairs\b|\bnext (?:week|time)\b|\bhomework\b",
    re.I,
)
_LABEL = re.compile(r"(\d+)(\.(?:\.\.)?)(.*)")


@dataclass(frozen=True)
class Reference:
    """A sentence of a step that refers to other steps, which must be told before. why: the words by which that is known."""

    step: int
    sentence: Sentence
    to: tuple[int, ...]
    why: str


def references(steps: Steps) -> list[Reference]:
    """Every reference of a lesson, in the order of the text."""
    found = list(_references(steps))
    return sorted(found, key=lambda one: (one.sentence.start, one.to))


def closing(steps: Steps) -> list[Sentence]:
    """The last sentences of the file, from the first that takes leave: they need no board, and are said at the very end."""
    last = max((s for step in steps.all for s in step.said), key=lambda s: s.start, default=None)
    if last is None:
        return []
    step = next(step for step in steps.all if last in step.said)
    (said,) = [part for part in (step.before, step.after) if last in part]
    at = next((n for n, sentence in enumerate(said) if CLOSING.search(sentence.text)), None)
    return [] if at is None or step.uci is None else said[at:]


def _references(steps: Steps) -> Iterator[Reference]:
    named = _Named(steps)
    earlier: int | None = None
    for step in sorted(steps.all, key=lambda one: one.number):
        for sentence in step.said:
            text = " ".join(sentence.text.split())
            put_off = LATER.search(text)
            leans = LEANS.search(text)
            lines = named.lines(step.number, sentence) if leans and not put_off else []
            if lines:
                yield Reference(step.number, sentence, tuple(lines), "names a line")
            seen = SEEN.search(text)
            if seen and not put_off and not lines and step.uci is not None:
                to = named.moves(step.number, sentence) or _all_before(steps, step.number)
                yield Reference(step.number, sentence, tuple(to), seen[0])
            compares = [found[0] for found in COMPARES.finditer(text)]
            if compares and not put_off and step.uci is not None:
                to = [] if earlier is None or earlier == step.number else [earlier]
                if any("main" in one.lower() for one in compares):
                    to += _main_beside(steps, step.number)
                if any(re.search("last|previous|before|above", one) for one in compares):
                    to += _line_before(steps, step.number)
                to = [one for one in dict.fromkeys(to) if one not in steps.road(step.number)]
                if to:
                    yield Reference(step.number, sentence, tuple(to), ", ".join(compares))
                earlier = step.number
            first = FIRST.search(text)
            if first and step.parent is not None:
                for other in steps.all[step.parent].children:
                    if other != step.number:
                        yield Reference(other, sentence, (step.number,), first[0])


def _all_before(steps: Steps, number: int) -> list[int]:
    own = set(steps.road(number))
    return [n for n in range(number) if n not in own and steps.all[n].uci is not None]


def _line_before(steps: Steps, number: int) -> list[int]:
    """The end of the line that the file has before this one."""
    own = set(steps.road(number))
    ends = [n for n in range(number) if not steps.all[n].children and n not in own]
    return ends[-1:]


def _main_beside(steps: Steps, number: int) -> list[int]:
    """The main line's move where this road leaves it."""
    main = steps.main_line()
    road = steps.road(number)
    shared = sum(one == other for one, other in zip(main, road, strict=False))
    return main[shared : shared + 1] if shared < len(road) else []


class _Named:
    """Finds the lines of a lesson that words name by their moves."""

    def __init__(self, steps: Steps) -> None:
        self.steps = steps
        self.by_label: dict[str, list[int]] = {}
        self.by_move: dict[str, list[int]] = {}
        for step in steps.all:
            if step.uci is not None:
                self.by_label.setdefault(_bare(step.place.label), []).append(step.number)
                self.by_move.setdefault(_bare(step.place.san or ""), []).append(step.number)

    def lines(self, number: int, sentence: Sentence) -> list[int]:
        """The last step of each line that a sentence names by numbered moves and that lies neither on its own road nor below it."""
        found: list[int] = []
        run: list[str] = []
        for word in (*sentence.words, None):
            if word is not None and word.san is not None:
                if run and _LABEL.match(word.norm) and not self._follows(run, word.norm):
                    found += self._line(number, run)
                    run = []
                run.append(_bare(word.norm))
            elif run and (word is None or word.norm not in {",", "and", "then"}):
                found += self._line(number, run)
                run = []
        if re.search(r"\bsame\b", sentence.text):
            found = [self._same_move(number, at) for at in found]
        return list(dict.fromkeys(found))

    def _same_move(self, number: int, named: int) -> int:
        """Where the named line has the move of this step ("after 3...d5 the same capture"); else its end."""
        steps = self.steps
        san = steps.all[number].place.san
        own = {*steps.road(number), *steps.below(number)}
        below = (n for n in steps.below(named) if n not in own)
        return next((n for n in below if steps.all[n].place.san == san), named)

    def moves(self, number: int, sentence: Sentence) -> list[int]:
        """The last earlier step of each move that a sentence names without saying where."""
        own = set(self.steps.road(number))
        found = []
        for word in sentence.words:
            if word.san is not None:
                before = [
                    n for n in self.by_move.get(_bare(word.san), []) if n < number and n not in own
                ]
                found += before[-1:]
        return list(dict.fromkeys(found))

    def _follows(self, run: list[str], label: str) -> bool:
        """Whether a numbered move may go on with a line, "4...Qe7 5.Qe2"; "3...d5 or 3...d6" may not."""
        first, second = _LABEL.match(run[0]), _LABEL.match(_bare(label))
        if first is None or second is None:
            return True
        plies = [2 * int(one[1]) + (one[2] != ".") for one in (first, second)]
        return plies[1] == plies[0] + len(run)

    def _line(self, number: int, run: list[str]) -> list[int]:
        if not _LABEL.match(run[0]):
            return []
        steps = self.steps
        own = set(steps.road(number))
        best: tuple[int, int, int] | None = None
        for start in self.by_label.get(run[0], []):
            at, length = start, 1
            for move in run[1:]:
                bare = _LABEL.sub(r"\3", move)
                next_ = [
                    c for c in steps.all[at].children if _bare(steps.all[c].place.san or "") == bare
                ]
                if not next_:
                    break
                at, length = next_[0], length + 1
            if at in own or number in steps.road(at):
                continue
            # the longest, then the nearest in the text, then the earlier
            key = (-length, abs(start - number), at)
            if best is None or key < best:
                best = key
        return [] if best is None else [best[2]]


def _bare(label: str) -> str:
    return re.sub(r"[\s+#!?]", "", label)
