"""Adjectives that claim something, and those that only colour a noun."""

from __future__ import annotations

from .table import Table, table

ADJECTIVES: Table = table("""
# participles ("pinned", "isolated") are found under their verb
safe: safe, immune, untouchable, out of danger, out of harm 's way
airy: airy, wide open, defenceless, homeless, shelterless, bare, draughty, breezy, naked, in the open, out in the open, unsafe, insecure, open to attack, vulnerable
unprotected: unprotected, undefended, unguarded, loose, uncovered, unsupported
hanging: hanging, hanging loose, hanging in the air, left hanging, in danger, in peril, under threat of capture, en prise, up for grabs, there for the taking, free for the taking, for the taking
torn: in 2 places at once, in 2 places, everywhere at once, everywhere
overloaded: overloaded, overworked, overburdened, overstretched, overtaxed
jailed: in prison, in jail, in gaol, in a cage, behind bars, in captivity
planned: on the agenda, on the cards, in the pipeline, on the menu, on the to do list
looming: looming, in the offing, on the cards, hanging over us, hanging over him, hanging over white, hanging over black, on the menu, on the agenda
undisturbed: undisturbed, in peace, unhindered, unmolested, to his own devices
backward: backward
weak: weak, full of holes, riddled with holes, swiss cheese, like swiss cheese, beyond repair, chronically weak
open: open, wide open
half open: half open, semi open
doomed: doomed, done for, beyond saving, past saving, beyond rescue, past rescue, beyond help, past help, toast, history, finished, dead and buried, as good as lost, as good as gone, curtains
unavoidable: unavoidable, inevitable, inescapable, unstoppable, certain, forced, a matter of time, only a matter of time, just a matter of time, not to be stopped, not to be avoided, not to be prevented
uncastled: uncastled
worth: worth, well worth, worth more than, well worth more than, more than worth, worth at least, easily worth
level: level, even, equal, balanced, in balance, all square, back in balance, honours even
undeveloped: undeveloped, unmoved, on the first squares, on the original squares, on the starting squares, on first squares, on original squares, on its original post, at home, asleep, fast asleep, untouched, in the box, in bed, on its first square, on its original square, on its starting square, on their first squares, on their original squares, on their starting squares
reversed: reversed, with colours reversed, with the colours reversed, with reversed colours, with colours swapped, with the colours swapped, with swapped colours, with the colours switched, with colours switched, with the colours turned round, in a mirror, in the mirror, in reverse, mirrored, with an extra tempo
developed: developed
better: better, preferable, for choice
worse: worse
troubled: in trouble, in hot water, under pressure, in difficulties, on the ropes, in serious trouble, in deep trouble, in big trouble, in real trouble, for choice, on top, worse off, close to winning, close to level, close to equal, beyond saving, dull but even
winning: winning, won
lost: lost, losing, busted
possible: possible
impossible: impossible, ruled out, out of the question
extra: extra, additional, spare
light: light, shy, adrift
thin: thin
bad: bad
good: good
equal: equal
""")
