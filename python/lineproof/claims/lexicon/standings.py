"""Words for how a side stands, or the game, by what they say of the expected score."""

from __future__ import annotations

from .table import Table, table

STANDINGS: Table = table("""
# of a side, or of its position
winning: won, close to winning, crushing, home and dry, home and hosed, on the winning side, overwhelming, a winner
lost: losing, a lost cause, busted, bust, hopeless, hopelessly placed, resignable, beyond saving, beyond salvation, beyond repair, beyond redemption, past saving, past praying for, done for, toast, dead lost,
    on its last legs, on his last legs, in ruins, in tatters, in shreds, in pieces, on the losing side, dead and buried, a wreck, a ruin, curtains, doomed, ripe for resignation
clearly better: in command, in control, in full control, in charge, well on top, in the driving seat, in the driver 's seat, dominant, dominating
better: for choice, to be preferred, preferable, on top, more comfortable, happier, better off, better placed, nicer, more pleasant, more promising, superior, easier to play, in the ascendancy, ahead on points
worse: worse off, worse off now, in trouble, in hot water, under pressure, in difficulties, on the ropes, inferior, struggling, suffering, up against it, on the back foot, in a bind, in a fix
clearly worse: in serious trouble, in deep trouble, in big trouble, in real trouble, in dire straits, in a bad way, in a sorry state, in agony, hanging by a thread, on the brink, in deep water
# of the game
level: equal, balanced, even, in balance, in the balance, equalish, drawish, dull but even, evenly balanced, finely balanced, evenly poised, all square, 50 50, 50 - 50, fifty fifty, fifty - fifty, honours even
unclear: not clear, messy, a mess, a complete mess, a total mess, a lottery, a coin toss, a toss up, hard to judge, hard to assess, impossible to judge, anybody 's game, anyone 's game, double edged, murky, wide open for both sides
# before "level": they widen the band
roughly: about, approximately, more or less, near enough, as good as, close to, fairly, pretty much, nearly, practically, virtually, just about, broadly, essentially, close enough to, not far from
# what a side has
advantage: edge, plus, pull, upper hand, superiority, ascendancy, whip hand, better of it, better of things, better of the game, better of the play, better chances, better prospects, last laugh
equality: equality, level game, balance
# what is over when it is decided
game: game, fight, battle, struggle, contest, matter, issue, party
""")
