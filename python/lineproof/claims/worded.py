"""Moves in words: which legal move "the knight's capture on d4", "taking on b2" or "the bishop to d7" means.

>>> worded = Worded.read("the knight capture on d4")
>>> (worded.by, worded.takes, worded.to)
('n', True, 'd4')
>>> Worded.read("chasing the bishop with b5")
Worded(by='p', to='b5', hits='b')
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from .board import LETTERS
from .claim import Spot
from .lexicon import VERBS, members
from .verbs import forms

_SQUARE = re.compile("[a-h][1-8]")


def _ings(*names: str, single: bool = False) -> frozenset[str]:
    """The -ing forms of the verbs of some lines; single: only of those of one word."""
    verbs = {v for name in names for v in members(name, VERBS) if not (single and " " in v)}
    return frozenset(forms(v.split()[0])[4] for v in verbs)


TAKING = (_ings("capture", "recapture", "exchange") | {"capture", "recapture", "grab", "exchange", "trade", "swap", "snatch"}) - {"giving", "helping"}  # fmt: skip
_AGAIN = frozenset({"recapture", "recapturing", "retaking"})
_TRADING = _ings("exchange") | {"exchange", "trade", "swap"}
_AIMING = (_ings("attack", "threaten", "defend", single=True) | {"driving", "clinging", "declining", "kicking", "pinning", "forking", "chasing", "unpinning", "hitting", "skewering"})  # fmt: skip
"""Doings whose object is not what moves, but what the move looks at."""
_COVERING = frozenset({"interposing", "interposition", "blocking", "block"})
_PUSHING = frozenset({"push", "pushing", "advance", "advancing", "break", "thrust"})
_GIVING = _ings("give back", "regain") - TAKING
"""Doings whose object is material, and not what moves."""
_JUMPING = frozenset({"jump", "jumping", "leap", "leaping", "hop", "hopping"})
_CHECKING = frozenset({"check", "checking"})
_PROMOTING = frozenset({"promotion", "promoting", "underpromotion"})
_CASTLING = {"short": "O-O", "kingside": "O-O", "long": "O-O-O", "queenside": "O-O-O"}
GENERAL = frozenset(
    {"choice", "reply", "answer", "continuation", "development", "response", "shot", "blow", "line"}
)
"""Nouns that mean a move only with what they say of it: "the reply" may be any."""
NOMINAL = frozenset(
    ["check", "move", "capture", "recapture", "retreat", "march", "sortie", "jump", "leap", "hop", "step", "push", "advance", "thrust", "break", "interposition", "promotion", "underpromotion",
     "withdrawal", "transfer", "excursion", "lunge", "trip", "walk", "nudge", "grab", "snatch", "castling", "fianchetto", "block", "surrender", *GENERAL]
)  # fmt: skip
"""Nouns of a move, to which the square and the piece behind them belong."""
DOING = TAKING | _AIMING | _COVERING | _PUSHING | _CHECKING | _PROMOTING | NOMINAL | _ings(
    "move", "play", "develop", "push", "castle", "sacrifice", "give back", "prevent"
) | {"putting", "placing", "bringing", "pinning", "forking", "going", "getting", "sacrifice", "castling", "posting", "offering", "burying", "tucking"}  # fmt: skip
_LEADS = frozenset({"to", "on", "at", "from", "into", "onto", "with", "of", "by", "in"})


@dataclass(frozen=True)
class Worded:
    """What words say of a move; each part is "" or False where they do not say it.

    takes, again, checks, covers: it captures, recaptures, gives check, parries one by standing between. by: the piece that moves.
    taken: the one that is captured. to, start: its squares. file: of the pawn that moves. castles: how. hits: what it attacks or defends. lane: the file of the pawn
    that is captured. last: it takes what has just moved.
    """

    takes: bool = False
    again: bool = False
    checks: bool = False
    covers: bool = False
    by: str = ""
    taken: str = ""
    to: str = ""
    start: str = ""
    file: str = ""
    castles: str = ""
    hits: str = ""
    promotes: str = ""
    lane: str = ""
    last: bool = False

    def __repr__(self) -> str:
        said = ", ".join(f"{k}={v!r}" for k, v in vars(self).items() if v)
        return f"Worded({said})"

    @property
    def telling(self) -> bool:
        """Whether anything is said that not every move does."""
        return bool(vars(self) and any(vars(self).values()))

    @classmethod
    def read(cls, text: str) -> Worded | None:
        """What normalised words say, or None when they are no move in words."""
        words = [w for w in text.split() if w != "'s"]
        at = next((n for n, w in enumerate(words) if w in DOING), None)
        if at is None:
            at = len(words) if "to" in words and not _LEADS - {"to"} & set(words) else None
            if at is None:
                return None  # but "the bishop to d7" is one
        doing = words[at] if at < len(words) else ""
        if "after" in words[at:]:
            doing = "chasing"  # "going after the queen"
        if doing == "castling":
            return cls(castles=next((_CASTLING[w] for w in words if w in _CASTLING), "O-O"))
        said: dict[str, str] = {}
        takes = doing in TAKING
        for n, word in enumerate(words):
            lead = next((w for w in reversed(words[:n]) if w in _LEADS), "") if n > at else ""
            lead = "to" if not doing and "to" in words[:n] else lead
            before = words[n - 1] if n else ""
            letter = LETTERS.get(word.removesuffix("s"), "")
            if letter:
                role = _role(doing, lead, behind=n > at)
                if role:
                    said.setdefault(role, letter)
                if doing in _TRADING and word.endswith("s"):
                    said.setdefault("by", letter)
                if letter == "p" and role == "by" and re.fullmatch("[a-h]", before):
                    said["file"] = before
                if letter == "p" and role == "taken" and re.fullmatch("[a-h]", before):
                    said["lane"] = before
            elif _SQUARE.fullmatch(word):
                where = _where(doing, lead, words[n + 1 :], takes)
                if where == "by":
                    said["by"], where = "p", "to"
                if where:
                    said.setdefault(where, word)
        if doing in _PUSHING:
            said.setdefault("by", "p")
        if doing in _JUMPING:
            said.setdefault("by", "n")
        return cls(
            takes=takes, again=doing in _AGAIN, checks=doing in _CHECKING, covers=doing in _COVERING,
            last=takes and words[-1] == "it", **said
        )  # fmt: skip

    def fits(self, spot: Spot, uci: str) -> bool:
        """Whether a legal move is as the words say."""
        board = spot.board
        san = board.san(uci)
        if self.castles:
            return san.rstrip("+#") == self.castles
        letter = (board.piece_at(uci[:2]) or "").lower()
        taken = (board.piece_at(uci[2:4]) or "").lower() or ("p" if "x" in san else "")
        said = (
            (self.by, letter), (self.taken, taken), (self.to, uci[2:4]), (self.start, uci[:2]), (self.file, uci[0]),
            (self.promotes, uci[4:5]), (self.lane, uci[2]),
        )  # fmt: skip
        if any(want and want != found for want, found in said):
            return False
        if self.takes and not taken:
            return False
        if (self.again or self.last) and not (spot.moves and spot.moves[-1][2:4] == uci[2:4]):
            return False
        if self.checks and not san.endswith(("+", "#")):
            return False
        if self.covers and (letter == "k" or taken or not board.in_check):
            return False
        if self.hits:
            after = board.play(uci)
            there = {(after.piece_at(at) or "").lower() for at in after.attacks(uci[2:4])}
            return self.hits in there
        return True


def _role(doing: str, lead: str, *, behind: bool) -> str:
    """What a piece does in the move: moves ("by"), is taken, is looked at."""
    if lead in {"with", "by"}:
        return "by"
    if behind and doing in _GIVING:
        return ""
    if behind and doing in _AIMING:
        return "hits" if doing != "declining" else ""
    if doing in _PROMOTING and lead in {"to", "into"}:
        return "promotes"
    return "taken" if behind and doing in TAKING else "by"


def _where(doing: str, lead: str, after: list[str], takes: bool) -> str:
    """What a square is in the move: "to", "start", "by" (a pawn goes there), or ""."""
    piece = bool(after) and after[0].removesuffix("s") in LETTERS
    if lead == "from":
        return "start"
    if lead in {"with", "by"} and not piece:
        return "by"
    if doing in _AIMING and lead not in {"to", "into", "onto"}:
        return ""
    if piece and not takes:
        return "start"
    if "to" in after and lead in {"on", "at"} and not takes:
        return "start"  # "the knight on c3 to d5"
    return "to"


def fitting(spot: Spot, text: str) -> list[str]:
    """The legal moves (UCI) that words can mean at a spot; none when they are no move in words."""
    worded = Worded.read(text)
    if worded is None or not worded.telling:
        return []
    return [uci for uci in spot.board.legal_moves() if worded.fits(spot, uci)]


__all__ = ["DOING", "GENERAL", "NOMINAL", "TAKING", "Worded", "fitting"]
