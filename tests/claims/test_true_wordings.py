"""What the program says is true instead of a claim that fails: written where the claim stood, it is read and holds, or at least is not called false."""

from __future__ import annotations

import pytest

from lineproof.claims import Outcome, all_kinds, read_lesson
from lineproof.lesson import Lesson
from lineproof.proof import Effort, EvidenceStore, Finding, settle
from tests.claims.conftest import lesson

STORE = EvidenceStore(None)

# (kind, side taught, root, movetext): a claim of the kind in it fails, and the wording beside it is a claim that is read
READ = [
    ("attacked-count", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {Nothing attacks f7.} 4... d5 *"),
    ("attacked-count", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {We attack d5 three times.} 4... d5 *"),
    ("back-rank", "white", "1r4k1/5ppp/8/8/8/8/5PPP/R5K1 w - - 0 1", "1. Ra7 {White threatens a back-rank mate.} *"),
    ("backward-pawn", "white", "4k3/8/3p4/8/4P3/8/8/4K3 w - - 0 1", "{The pawn on d6 is backward.} 1. Kd2 *"),
    ("backward-pawn", "white", None, "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 {White has a backward pawn.} 7. Bg5 *"),
    ("bad-bishop", "white", None, "1. e4 e6 2. d4 d5 3. e5 {The bishop on f8 is bad.} c5 4. c3 *"),
    ("bad-bishop", "white", None, "1. e4 e6 2. d4 d5 3. e5 {The bishop on c8 is not bad.} c5 4. c3 *"),
    ("better-is", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Qxf7+ {3. Qxf7 is better than Bc4.} Kxf7 *"),
    ("better-is", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Qxf7+ {3. Bc4 is not better than Qxf7.} Kxf7 *"),
    ("blocks", "white", None, "1. Nf3 e5 {The pawn on e5 is blocked.} 2. e3 *"),
    ("blocks", "white", None, "1. e4 e5 2. Qf3 Nf6 {The pawn on e5 shelters f7.} 3. Bc4 *"),
    ("by-force", "white", None, "1. e4 {There is nothing that Black can do about it.} e5 *"),
    ("cannot-castle", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 {We cannot castle.} 4. c3 *"),
    ("cannot-castle", "white", None, "1. e4 e5 2. Bc4 Nc6 3. Bxf7+ Kxf7 {Black can castle.} 4. Nf3 *"),
    ("castled", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O {We have gone long.} d6 *"),
    ("castled", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 {Black has castled.} d6 *"),
    ("check", "white", None, "1. e4 e5 2. f4 exf4 3. Bc4 {Black has a check on g5.} 3... Qh4+ *"),
    ("check", "white", None, "1. e4 e5 2. f4 exf4 3. Bc4 Qh4+ 4. Kf1 {White is in check.} 4... d6 *"),
    ("closed-position", "white", None, "1. e4 e5 {This is a closed game.} 2. Nf3 *"),
    ("closed-position", "white", None, "1. e4 e6 2. d4 d5 3. e5 {The centre is not closed.} c5 *"),
    ("defended-count", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {f7 is defended twice.} 4... d5 *"),
    ("defended-count", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {e5 has two defenders.} 4... d5 *"),
    ("defends", "white", None, "1. e4 e5 2. Nf3 d6 3. Bc4 h6 4. d3 {d3 does not defend e4.} Nf6 *"),
    ("defends", "white", None, "1. e4 e5 2. Nf3 d6 3. Bc4 h6 4. d3 {The knight on f3 defends the pawn on e4.} Nf6 *"),
    ("development-lead", "white", None, "1. e4 e5 2. Nf3 Qf6 3. Bc4 Qg6 4. Nc3 Qxg2 5. Rg1 Qh3 {Black leads in development.} *"),
    ("discovered-attack", "white", None, "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 {This is no discovery.} 5... Bxd1 *"),
    ("discovered-check", "white", None, "1. e4 e5 2. Bc4 d6 3. Bxf7+ {This is a discovered check.} *"),
    ("double-check", "white", None, "1. e4 {This is a double check.} *"),
    ("double-check", "white", "4k3/8/8/4N3/8/8/8/4R1K1 w - - 0 1", "1. Nc6+ {It is double check.} Kd7 *"),
    ("doubled-pawns", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Nxe5 {This doubles Black's pawns.} *"),
    ("doubled-pawns", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {The c-pawns are not doubled.} 5. O-O *"),
    ("exchange", "white", None, "1. e4 e5 2. Nf3 {White offers an exchange of queens.} *"),
    ("for-free", "white", "4k3/5p2/2p5/3r4/8/8/6B1/4K3 w - - 0 1", "{That's a free rook.} 1. Bxd5 *"),
    ("forced", "white", None, "1. e4 e5 {This is forced.} 2. Nf3 *"),
    ("fork", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 d5 5. exd5 Nxd5 6. Nxf7 {The knight forks the king and the queen.} Kxf7 *"),
    ("fork", "white", "4k3/8/3q4/8/4N2p/6n1/8/4K3 w - - 0 1", "{The knight on e4 forks the queen and the knight.} 1. Kf2 *"),
    ("gains-tempo", "white", None, "1. e4 d5 2. exd5 Qxd5 3. Nc3 {Nc3 does not win a tempo.} Qa5 4. d4 *"),
    ("gives-back", "white", None, "1. e4 e5 2. d4 exd4 3. c3 dxc3 4. Bc4 cxb2 5. Bxb2 d5 {With d5 Black returns his queen.} 6. Bxd5 Nf6 *"),
    ("good-bishop", "white", None, "1. e4 e6 2. d4 d5 3. e5 {The bishop on c1 is a good bishop.} c5 4. c3 *"),
    ("good-bishop", "white", "4k3/8/8/8/3PP3/8/4B3/4K3 w - - 0 1", "{White has a good bishop.} 1. Kd2 *"),
    ("half-open-file", "white", None, "1. e4 e5 2. f4 exf4 {The f-file is not half-open for White.} 3. Nf3 *"),
    ("half-open-file", "white", "4k3/ppp2ppp/8/8/8/8/PPP2PPP/4K3 w - - 0 1", "{White has a half-open d-file.} 1. Kd2 *"),
    ("hanging-pawns", "white", "4k3/ppp2ppp/8/8/2PP4/8/P4PPP/4K3 w - - 0 1", "{White has hanging pawns.} 1. Kd2 *"),
    ("idea", "white", None, "1. e4 e5 2. Ke2 Nc6 3. Ke1 Nf6 4. Nf3 {White prepares long castling.} *"),
    ("isolated-pawn", "white", "rnbqkb1r/pp3ppp/4pn2/8/3P4/2N5/PP3PPP/R1BQKBNR w KQkq - 0 6", "{Black has an isolani.} 1. Nf3 *"),
    ("isolated-pawn", "white", "rnbqkb1r/pp3ppp/4pn2/8/3P4/2N5/PP3PPP/R1BQKBNR w KQkq - 0 6", "{The d-pawn is not isolated.} 1. Nf3 *"),
    ("king-centre", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 {White's king is in the centre.} d6 *"),
    ("king-centre", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O Nf6 5. d3 {Black's king is not in the centre.} d6 *"),
    ("king-exposed", "white", "4k2r/pppp4/8/8/8/8/8/4K3 w - - 0 1", "1. Kd2 {White's king is exposed.} *"),
    ("loses-tempo", "white", None, "1. e4 Nf6 2. e5 Nd5 3. d4 d6 4. c4 Nb6 {Black has moved the same knight twice.} 5. exd6 *"),
    ("loses-tempo", "white", None, "1. e4 Nf6 2. e5 Nd5 3. d4 d6 4. c4 Nb6 {White has moved the same knight twice.} 5. exd6 *"),
    ("majority", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. d4 exd4 6. Qxd4 Qxd4 7. Nxd4 {White has a majority on the queenside.} Bd7 *"),
    ("majority", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. d4 exd4 6. Qxd4 Qxd4 7. Nxd4 {White's kingside majority is crippled.} Bd7 *"),
    ("mate", "white", None, "1. e4 e5 2. f4 Qh4+ {This is mate.} 3. g3 *"),
    ("mate", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {The bishop mates on f7.} 4. Qxf7# *"),
    ("mate-in", "white", None, "1. e4 e5 2. Nf3 {White mates by force.} *"),
    ("mate-in", "white", None, "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 5. Nxe5 Bxd1 {White mates in one.} 6. Bxf7+ Ke7 7. Nd5# *"),
    ("mate-threat", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 {No mate is threatened.} g6 *"),
    ("mate-threat", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 {White threatens mate on e5.} g6 *"),
    ("material-count", "white", None, "1. e4 d5 2. exd5 {Material is level.} Nf6 *"),
    ("material-count", "white", "4k3/8/8/8/8/8/8/R3K1b1 w - - 0 1", "{White is a rook up.} 1. Kd2 *"),
    ("not-hanging", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {Our pawn on e4 hangs.} 4... d5 *"),
    ("only-move", "white", None, "1. e4 {This is the only move.} *"),
    ("open-file", "white", "3rk3/8/8/8/8/8/8/3RK3 w - - 0 1", "{Black controls the open d-file.} 1. Ke2 *"),
    ("open-file", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. d4 exd4 6. Qxd4 Qxd4 7. Nxd4 {The e-file is open.} Bd7 *"),
    ("open-position", "white", None, "1. e4 e5 {The position is open.} 2. Nf3 *"),
    ("open-position", "white", None, "1. e4 e5 2. Nf3 Nc6 3. d4 exd4 4. Nxd4 {The position is not open.} Nge7 *"),
    ("opposite-bishops", "white", "4k3/5ppp/3b4/8/8/4B3/5PPP/4K3 w - - 0 1", "{We have opposite-coloured bishops.} 1. Kd2 *"),
    ("opposite-bishops", "white", "4k3/5ppp/4b3/8/8/4B3/5PPP/4K3 w - - 0 1", "{The bishops are of the same colour.} 1. Kd2 *"),
    ("outpost", "white", None, "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 e5 6. Ndb5 d6 {White has no outpost on d5.} 7. Bg5 *"),
    ("overloaded", "white", "r5k1/3q1ppp/8/1b6/8/7P/5PP1/1R2R1K1 w - - 0 1", "{The queen on d7 is overloaded.} 1. Rxb5 *"),
    ("overloaded", "white", "6k1/3q1ppp/8/1b6/8/7P/5PP1/1R2R1K1 w - - 0 1", "{The queen on d7 isn't overloaded.} 1. Rxb5 *"),
    ("pass-consequence", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {Left alone, White plays Qh5.} d5 *"),
    ("passed-pawn", "white", "4k3/p4ppp/8/3P4/2P5/8/5PPP/4K3 w - - 0 1", "{Black has no passed pawn.} 1. Kd2 *"),
    ("passed-pawn", "white", "4k3/p4ppp/8/3P4/2P5/8/5PPP/4K3 w - - 0 1", "{White has three passed pawns.} 1. Kd2 *"),
    ("perpetual", "white", None, "1. e4 {Black has a perpetual.} *"),
    ("perpetual", "white", "6k1/6p1/8/7Q/8/8/1rq5/7K w - - 0 1", "1. Qe8+ Kh7 2. Qh5+ Kg8 {White runs out of checks.} *"),
    ("pin", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 {The knight on f3 is pinned.} 4. d4 *"),
    ("pin", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 {The knight on c6 is not pinned.} 4. d4 *"),
    ("playable", "white", None, "1. e4 e5 2. Qh5 Nc6 {3. Qxf7 is playable.} 3. Bc4 *"),
    ("prevents", "white", None, "1. e4 e5 2. Nf3 d6 3. h3 {h3 stops Nf6.} Nf6 *"),
    ("prevents", "white", None, "1. e4 e5 2. Nf3 d6 3. h3 {Nothing prevents Bg4.} Nf6 *"),
    ("refuted-by", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {Nf6 is refuted by d3.} 4. Qxf7# *"),
    ("refuted-by", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {Nf6 is not refuted by Qxf7.} 4. Qxf7# *"),
    ("regains", "white", None, "1. d4 Nf6 2. c4 e5 3. dxe5 Ng4 {Black regains a piece.} 4. Nf3 Nc6 5. e3 Ngxe5 6. Nxe5 Nxe5 *"),
    ("removal-of-guard", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {This removes the guard of d4.} 4... dxc6 *"),
    ("removal-of-guard", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 4. Bxc6+ {White removes the defender of e5.} 4... bxc6 *"),
    ("sacrifices", "white", None, "1. e4 e5 2. Nc3 Nf6 3. f4 {White sacrifices a piece.} exf4 4. e5 Ng8 *"),
    ("sacrifices", "white", None, "1. e4 e5 2. Nc3 Nf6 3. f4 {White sacrifices his queen.} exf4 4. e5 Ng8 *"),
    ("same-position", "white", None, "1. e4 e5 2. Nc3 Nf6 (2... Nc6 3. f4 Nf6 {This is identical to the position after 1. e4 e5 2. Nc3 Nf6 3. f4 d5.} 4. Nf3) 3. f4 Nc6 4. Nf3 *"),
    ("shut-in", "black", None, "1. e4 e5 2. Nf3 d6 3. d4 h6 {The pawn on h6 shuts in the bishop on f8.} *"),
    ("stalemate", "white", None, "1. f3 e5 2. g4 Qh4# {White is stalemated.} *"),
    ("stalemate", "white", "7k/8/8/6Q1/8/8/8/K7 w - - 0 1", "1. Qf6+ {This is stalemate.} *"),
    ("threat", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 {The threat is Qxe5 mate.} g6 *"),
    ("threat", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {White threatens d3.} d5 *"),
    ("transposes", "white", None, "1. e4 e5 2. Nc3 Nf6 (2... Nc6 3. f4 Nf6 {This transposes to the line with 4... d5.}) 3. f4 Nc6 4. Nf3 *"),
    ("transposes", "white", None, "1. e4 Nc6 2. e5 a6 3. Nf3 d5 (3... d6 4. Ng1 d5 5. Nf3 Nb8 6. Ng1 Nc6 7. Nf3 {This is the same position as in the main line.} Nb8) 4. Ng1 *"),
    ("trapped", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Ba4 d6 5. d4 b5 6. Bb3 Nxd4 7. Nxd4 exd4 8. Qxd4 c5 9. Qd5 Be6 10. Qc6+ Bd7 11. Qd5 c4 {The bishop on b3 isn't trapped.} *"),
    ("undeveloped", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {None of White's pieces has moved.} *"),
    ("undeveloped", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Nc3 Bc5 5. Nb1 {The knight on b1 is out.} d6 *"),
    ("unprotected", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 {The pawn on e5 is unprotected.} 4. O-O *"),
    ("unprotected", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 {The bishop on c5 is protected.} 4. O-O *"),
    ("verdict", "white", None, "1. e4 e5 2. Qh5 Nf6 3. Qxe5+ Be7 4. Qxe7+ Qxe7 {White is winning.} *"),
    ("weak-square", "white", None, "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 e5 {b6 is weak.} 5. Nb5 d6 6. c4 *"),
    ("weak-square", "white", None, "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 e5 {d7 is weak.} 5. Nb5 d6 6. c4 *"),
    ("wins-material", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 {White wins a piece.} dxc6 5. Nc3 *"),
    ("wins-material", "white", None, "1. e4 e5 2. Nf3 Nf6 3. Nxe5 Nxe4 4. Qe2 Nf6 {White wins the exchange.} 5. Nc6+ Be7 6. Nxd8 Kxd8 *"),
    ("zwischenzug", "white", None, "1. e4 e5 2. Nf3 d5 3. exd5 h6 {3...h6 is an in-between move.} *"),
    ("zwischenzug", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. Bxf7+ Kxf7 5. Nxe5+ Nxe5 6. d4 Bxd4 7. Qh5+ {It is no zwischenzug.} *"),
]  # fmt: skip

# the same, where the wording tells why in words that are no claim, or not wholly
TOLD = [
    ("as-before", "white", None, "1. e4 e5 2. Nf3 Nc6 (2... d6 3. d4 exd4 4. Nxd4) (2... Nf6 3. d4 exd4 4. Nxd4 {As before, Qxd4.}) 3. d4 exd4 4. Nxd4 *"),
    ("attacked-count", "white", "3rk3/3r4/8/3p4/8/8/3Q4/3RK3 w - - 0 1", "{The pawn on d5 is attacked three times.} 1. Kf1 *"),
    ("back-rank", "white", "1r4k1/5ppp/8/8/8/8/5PPP/2R1R1K1 w - - 0 1", "1. Ra1 {White makes luft.} *"),
    ("backward-pawn", "white", "4k3/8/3p4/4p3/5P2/8/8/4K3 w - - 0 1", "{The pawn on d6 is backward.} 1. Kd2 *"),
    ("bishop-pair", "white", None, "1. e4 {White has the advantage of the bishop pair.} e5 *"),
    ("blocks", "white", None, "1. e4 e6 {The bishop on f8 is blocked by its own knight.} 2. d4 *"),
    ("by-force", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 {Black cannot avoid mate.} g6 *"),
    ("check", "white", None, "1. e4 e5 2. f4 exf4 3. Bc4 Qh4+ {It's not check.} 4. Kf1 *"),
    ("development-lead", "white", None, "1. e4 e5 2. Nf3 {White leads in development.} *"),
    ("discovered-attack", "white", None, "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 Nf6 5. Nxe5 {This is a discovered attack.} *"),
    ("discovered-check", "white", None, "1. e4 {This is a discovered check.} *"),
    ("doubled-pawns", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {Black has tripled pawns.} 5. O-O *"),
    ("exchange", "white", None, "1. e4 e5 2. d4 exd4 3. Qxd4 Qf6 4. Qxf6 Nxf6 {The rooks are off.} 5. Nc3 *"),
    ("for-free", "white", None, "1. e4 e5 2. Nf3 Nf6 3. Nxe5 Nxe4 4. Qe2 Nf6 {White wins the queen for free.} 5. Nc6+ Be7 6. Nxd8 Kxd8 *"),
    ("fork", "white", "8/4k3/3b4/5N2/8/8/8/4K3 b - - 0 1", "{The knight on f5 forks the king and the bishop.} 1... Kd7 *"),
    ("gains-tempo", "white", None, "1. e4 e5 2. Nc3 {White gains a tempo.} *"),
    ("gives-back", "white", "r3k3/4p3/8/8/8/8/8/R3K3 b Qq - 0 1", "1... Kd7 {Black gives back the pawn.} 2. Rd1+ Ke6 *"),
    ("half-open-file", "white", None, "1. e4 e5 2. f4 exf4 {Black has a half-open f-file.} 3. Nf3 *"),
    ("idea", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. c3 {White prepares Nxe5.} Nf6 5. d4 *"),
    ("isolated-pawn", "white", "4k3/8/8/8/3P4/2P5/8/4K3 w - - 0 1", "{The pawn on d4 is isolated.} 1. Kd2 *"),
    ("king-exposed", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Bc5 4. O-O {White's king is exposed.} *"),
    ("loses-tempo", "white", None, "1. e4 d5 2. exd5 Nf6 3. Nc3 Nxd5 {Black has lost a tempo.} *"),
    ("majority", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 {We've got ourselves a healthy majority on the kingside.} *"),
    ("not-hanging", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {f7 isn't hanging.} 4... d5 *"),
    ("nothing-to-fear", "white", None, "1. e4 e5 2. Qh5 Nc6 3. Bc4 Nf6 {Black need not fear Qxf7.} 4. Qxf7# *"),
    ("only-move", "white", None, "1. e4 e5 {1... e5 is the only legal move.} *"),
    ("open-file", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 a6 4. Bxc6 dxc6 5. d4 exd4 6. Qxd4 Qxd4 7. Nxd4 {The c-file is open.} Bd7 *"),
    ("opposite-bishops", "white", "4k3/5ppp/4b3/8/8/4B3/4BPPP/4K3 w - - 0 1", "{The bishops are of the same colour.} 1. Kd2 *"),
    ("outpost", "white", None, "1. e4 c5 2. Nf3 d6 3. d4 cxd4 4. Nxd4 Nf6 5. Nc3 a6 6. Be2 e5 7. Nb3 {e6 belongs to White.} *"),
    ("pass-consequence", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {Let Black pass and White plays d3.} d5 *"),
    ("passed-pawn", "white", "4k3/3p4/8/4P3/8/8/8/4K3 w - - 0 1", "{The pawn on e5 is passed.} 1. Kd2 *"),
    ("perpetual", "white", "6k1/6p1/8/7Q/8/8/1rq5/7K w - - 0 1", "1. Qe8+ Kh7 2. Qh5+ Kg8 {Black has a perpetual.} *"),
    ("pin", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 d6 {The bishop on b5 pins the knight on c6 to the queen.} 4. d4 *"),
    ("regains", "white", None, "1. d4 Nf6 2. c4 e5 3. dxe5 Ng4 {White regains the pawn.} 4. Nf3 Nc6 5. e3 Ngxe5 6. Nxe5 Nxe5 *"),
    ("removal-of-guard", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bb5 {3. Bb5 removes the guard of e5.} *"),
    ("same-position", "white", None, "1. Nf3 Nf6 2. Ng1 Ng8 (2... Rg8 3. Nf3 Rh8 4. Ng1 Ng8 {This is identical to the main line.}) 3. Nf3 Nf6 4. Ng1 Ng8 *"),
    ("same-structure", "white", None, "1. d4 d5 2. Bf4 Nf6 3. e3 {White has a London structure.} e6 4. c3 *"),
    ("shut-in", "black", None, "1. e4 e5 2. Nf3 d6 {The bishop on f1 is buried.} 3. d4 *"),
    ("skewer", "white", "8/8/4k2r/8/8/8/8/2R1K3 w - - 0 1", "1. Rc5 {This is a skewer.} *"),
    ("space", "white", None, "1. e4 e5 {White has more space.} 2. Nf3 *"),
    ("stalemate", "white", "7k/8/8/6Q1/8/8/8/K7 w - - 0 1", "1. Qf5 {This is stalemate.} *"),
    ("threat", "white", None, "1. e4 e5 2. Nf3 Nc6 3. Bc4 Nf6 4. Ng5 {The knight on g5 attacks e5.} d5 *"),
    ("transposes", "white", None, "1. e4 Nc6 2. d4 e5 {We have transposed to the Scotch.} 3. d5 *"),
    ("trapped", "white", "1nk5/ppp2ppp/8/8/8/4B3/PPP2PPP/6K1 w - - 0 1", "1. Bxa7 b6 {The bishop on a7 is trapped.} *"),
    ("undeveloped", "white", None, "1. e4 e5 2. Nf3 Nf6 3. Bc4 Bc5 {Black is undeveloped.} *"),
    ("unlike-before", "white", None, "1. d4 d5 2. c4 (2. Nc3 Nc6 3. e4 e5 4. exd5 Qxd5 {The queen is out.} 5. Nxd5) 2... c6 3. Nc3 {This time Nc3 hits nothing.} *"),
    ("weak-square", "white", None, "1. e4 c5 2. Nf3 Nc6 3. d4 cxd4 4. Nxd4 e5 {f5 is a hole.} 5. Nb5 d6 6. c4 *"),
    ("wins-material", "white", None, "1. e4 e5 2. Nf3 d6 3. Bc4 Bg4 4. Nc3 g6 {White loses the queen.} 5. Nxe5 Bxd1 6. Bxf7+ Ke7 7. Nd5# *"),
    ("zwischenzug", "white", None, "1. e4 {This is a zwischenzug.} *"),
]  # fmt: skip

UNTRIED = {"cannot-afford", "compensation", "frequency", "losing-move", "move-mark", "move-order", "not-recommended", "stale", "works-now"}  # fmt: skip
"""Kinds whose wordings have figures of a search or a collection in them, or that offer none."""


def failing(kind: str, taught: str | None, setup: str | None, movetext: str) -> Finding:
    """The failing claim of a kind."""
    claims = [c for c in read_lesson(lesson(movetext, taught, setup)).claims if c.kind == kind]
    found = [f for f in (settle(c, Effort.SKETCH, STORE) for c in claims) if f.judgement.instead]
    assert found
    assert found[0].outcome is Outcome.FAILS
    return found[0]


def read_back(finding: Finding) -> list[Finding]:
    """What becomes of the wording where the comment stood."""
    claim, said = finding.claim, finding.judgement.instead
    assert said
    old = claim.place.lesson
    (comment,) = [c for c in old.comments if c.start <= claim.start < c.end]
    text = f"{old.text[: comment.start]}{said}{old.text[comment.end :]}"
    told = read_lesson(Lesson.from_text(text, side=old.settings.side)).claims
    end = comment.start + len(said)
    return [settle(c, Effort.SKETCH, STORE) for c in told if comment.start <= c.start < end]


@pytest.mark.parametrize(("kind", "taught", "setup", "movetext"), READ)
def test_a_true_wording_holds_when_it_is_read_back(
    kind: str, taught: str | None, setup: str | None, movetext: str
) -> None:
    told = read_back(failing(kind, taught, setup, movetext))
    assert told
    assert {f.outcome for f in told} == {Outcome.HOLDS}, [(f.claim.words, f.because) for f in told]


@pytest.mark.parametrize(("kind", "taught", "setup", "movetext"), TOLD)
def test_a_reason_in_its_place_is_not_called_false(
    kind: str, taught: str | None, setup: str | None, movetext: str
) -> None:
    told = read_back(failing(kind, taught, setup, movetext))
    assert Outcome.FAILS not in {f.outcome for f in told}, [
        (f.claim.words, f.because) for f in told
    ]


def test_every_kind_is_tried() -> None:
    tried = {kind for kind, *_ in READ + TOLD}
    assert tried | UNTRIED == {kind.id for kind in all_kinds()}
