"""An order of moves that the opponent can choose, in one sentence."""

from __future__ import annotations

from lineproof.claims.bands import spoken
from lineproof.claims.board import other, title
from lineproof.claims.claim import Spot
from lineproof.claims.cost import SAFE, spelled
from lineproof.claims.showing import numbered
from lineproof.replies.detours import Detour


def detoured(one: Detour) -> str:
    """ "The lesson does not answer 3... Nxe4; best is 4. Qe2: ...; Black loses 20 points against 3... d6." """
    spot = Spot.of(one.place)
    after = spot.play(one.reply.uci)
    move = numbered(spot, (one.reply.uci,))
    number = move.split(" ")[0]
    side, opponent = other(spot.board.turn), title(spot.board.turn)
    own = numbered(after, one.line[1:2])
    dots = f"{after.board.move_number}{'.' if side == 'white' else '...'}"
    if one.best in one.answers:
        said = f"the lesson answers {move} with {dots} {one.best}, and nothing is better"
    elif one.answers:
        ours = " or ".join(one.answers)
        said = f"the lesson answers {move} with {dots} {ours}; best is {dots} {one.best}"
    else:
        said = f"the lesson does not answer {move}; best is {dots} {one.best}"
    against = f"against {number} {one.instead}"
    if one.gain > SAFE:
        what = f"{opponent} gains {spelled(one.gain)} {against}"
    elif one.gain < -SAFE:
        what = f"{opponent} loses {spelled(-one.gain)} {against}"
    else:
        what = f"{opponent} gains nothing {against}"
    said = f"{said}: {spoken(side, one.points)}; {what}"
    if one.back is not None and one.points - one.back > SAFE:
        said += f", and {own} gives {spelled(one.points - one.back)} away"
    return f"{said}."
