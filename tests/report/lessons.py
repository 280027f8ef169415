"""Lessons of the tests: true and false statements of the Vienna Gambit, and words that try to break out."""

from __future__ import annotations

LESSON = """[Event "The Vienna Gambit for White"]
[Site "Harbour Street club"]
[Result "*"]

{Good evening, class.} 1. e4 e5 2. Nc3 Nf6 3. f4 {Material is level. The knight on f6 is pinned to the king.}
3... d5 $1 (3... exf4 {Black is a pawn up, and the knight on c3 is
unprotected.} 4. e5 Qe7 {An old story from the club. Der Springer muss ziehen und Weiß steht besser.} 5. Qe2 Ng8 $4)
4. fxe5 Nxe4 {White mates in two. If Black sleeps, we win.} 5. Qf3 *

[Event "A second line"]
[Result "*"]

1. e4 e5 2. Nc3 Nf6 3. f4 Nc6 4. fxe5 Nxe5 5. d4 Nc6 6. e5 Ng8 {Black cannot castle.} *
"""

HOSTILE = """[Event "</title><script>alert(1)</script>"]
[White "<img src=x onerror=alert(2)>"]
[Result "*"]

{<script src="http://example.org/x.js"></script> Look at <b onclick='x'>this</b> & that.}
1. e4 e5 {White is a pawn up. White is "winning" & <i>better</i>.} 2. Nc3 {\x1b[31mWhite is a queen up\x1b[0m. \u202eWhite is a rook up.} *
"""

STUDIED = """[Event "Légal's mate"]
[Result "*"]

{Good evening.} 1. e4 e5 2. Nf3 {The knight attacks the pawn on e5.} d6 (2... Nc6 3. Bc4 Bc5 4. c3 Nf6) 3. Bc4 Bg4
{A pin that is none.} 4. Nc3 g6 (4... Nc6 5. Nxe5 {This fails.} Nxe5) 5. Nxe5 Bxd1 (5... dxe5 6. Qxg4) 6. Bxf7+ Ke7 7. Nd5# *
"""
"""Légal's mate and where it fails (Hooper and Whyld, The Oxford Companion to Chess, from memory)."""
