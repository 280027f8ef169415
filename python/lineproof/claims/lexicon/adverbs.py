"""Adverbs and turns of speech by what they do to a clause: nothing, soften it, deny it, or limit it."""

from __future__ import annotations

from .table import Table, table

ADVERBS: Table = table("""
# leave the meaning alone; what some say of the time is kept with the clause
adverb: somewhat, or anything like it, or anything like that, or anything of the kind, or anything of the sort, or something like it, at club level, and nothing else, and that is it, and his brother, and his dog, and his uncle, and their dog, and his mother, hands down, out the other side, and out the other side, out of the other side, and out of the other side, somewhere, somewhere else, all the way, all the way home, slightly, a smidge, a whisker, a hair, a notch, a trifle, a fraction, a tiny bit, a wee bit, a lot, a good deal, miles, streets, nothing more to it, nothing more to say, no more than that, no more no less, and nothing more, in peace, from then on, from that point on, from here on, from this point on, scot free, gratis, for absolutely nothing, for precisely nothing, for nothing at all, at no price, straight back, right back, by this time, by that time, it will be seen, as will be seen, you will note, we note, to the good, to the bad, in arrears, in the red, in credit, in hand, in mind, in order, 1 each, 1 bit,  without end, endlessly, for eternity, over and over, over and over again, round and round, again and again, till the cows come home, till doomsday, ad infinitum, as long as he likes, for as long as he likes, as much as he likes, as much as he wants, all he likes, all he wants, to his heart 's content, in between, in order, by and by, en route, to boot, in 1 breath, with 1 blow, at one go, in one fell swoop, in particular, one bit, a bit too, in the corner, bang, smack, poor fella, poor soul, i admit, i confess, without question, no question, question or no question, 2 times, 3 times, 4 times, 5 times, 6 times, a bit, a little, a little bit, a long way, a second time, a shade, a tad, a touch,
    absolutely, actually, after all, again, ah, alas, all, all in all, all of a sudden, all the same, all the way, all told, alone, already, also,
    altogether, and here, and now, and so, any longer, any more, anymore, anyway, as a matter of fact, as a result, as expected,
    as far as i know, as it is, as it stands, as it were, as matters stand, as promised, as things stand, as usual, as we saw, as we see, as well,
    as you can see, as you see, at 1 stroke, at a stroke, at a time, at all, at bottom, at last, at least, at long last, at no cost, at once,
    at one stroke, at present, at the end, at the moment, at the same time, at the very least, at this juncture, at this moment, at this point,
    believe it or not, believe me, besides, between you and me, beyond doubt, bingo, both, both times, but now, but one, by a mile, by both sides,
    by contrast, by far, by force, by himself, by itself, by miles, by now, by quite a margin, by some distance, by the book, by the way, calmly,
    careful, careful now, certainly, cheerfully, class, cleanly, clearly, come to think of it, come what may, comfortably, completely, dear friends,
    definitely, directly, duly, each, easily, effectively, entirely, equally, even, ever, everybody, everyone, evidently, exactly 2 times,
    exactly 3 times, exactly once, exactly twice, excellent, fairly, far, finally, fine, firmly, first, first of all, flat out, folks,
    for a long time, for a long while, for all to see, for certain, for ever, for everyone to see, for free, for good, for her part, for his part,
    for its part, for nothing, for now, for our part, for quite a while, for some time, for sure, for the moment, for the rest of his life,
    for the rest of its days, for the rest of the game, for the rest of their days, for the second time, for the time being, for their part, forever,
    fortunately, frankly, free of charge, friends, from here, from now on, fully, good, granted, ha, happily, hence, here, hereby, hey, honestly,
    however, hurrah, i assure you, i have to say, i must say, i promise you, i tell you, if i 'm honest, if i am honest, if truth be told,
    if you count, if you count them, if you like, if you look, if you look closely, if you must know, if you please, if you want, if you will,
    immediately, in 1 go, in 1 move, in actual fact, in addition, in all, in all honesty, in broad daylight, in contrast, in exchange, in fact,
    in no time, in one go, in one move, in other words, in passing, in plain sight, in practice, in reality, in return, in short, in that line,
    in the bargain, in the end, in the game, in the process, in this line, in this position, in this way, in truth, incidentally, indeed, instantly,
    instead, into the bargain, it must be said, just, just like that, just once, just the once, just twice, kind of, ladies and gentlemen, lately,
    later, later on, let 's face it, let me tell you, let us face it, like that, like this, likewise, listen, literally, long ago, long since, look,
    look at that, look at this, look here, luckily, make no mistake, mark my words, materially, meanwhile, merely, mind, mind you, more precisely,
    moreover, move for move, my friends, naturally, neatly, needless to say, nevertheless, next, nicely, no doubt, no less, no matter what, no more,
    nonetheless, not surprisingly, note, note how, nothing less, nothing more, notice, now, objectively, obviously, oddly enough, of all things,
    of course, of theirs, oh, ok, okay, on balance, on both sides, on closer inspection, on his part, on our part, on the board, on the move,
    on the other hand, on the spot, on the whole, on this move, on top of that, once again, once and for all, once more, once only, only once,
    only twice, out of nowhere, out of the blue, outright, over there, permanently, plain and simple, plainly, please, positionally, pretty,
    pure and simple, quietly, quite, quite simply, rather, really, regrettably, right, right away, right now, sadly, safely, see, simply,
    simultaneously, since, sitting pretty, so, so far, so now, so to say, so to speak, soon, sooner or later, sort of, splendid, still, straight,
    straight away, strangely, strangely enough, strictly speaking, suddenly, sure enough, surely, surprisingly, take my word for it, thank goodness,
    thank heavens, thank you very much, that said, the once, the whole game, then, there, thereby, therefore, this evening, this time, thoroughly,
    thrice, thus, to be fair, to be honest, to be sure, to boot, to console him, to my mind, to tell the truth, today, together, tonight, too,
    totally, traditionally, trust me, truth be told, twice, twice over, twofold, undoubtedly, unfortunately, utterly, very, voila, watch, watch out,
    we see, well, well and truly, what is more, whatever happens, whatsoever, when all is said and done, when the dust has settled,
    when the dust settles, when the smoke clears, when the smoke has cleared, when you look at it, when you think about it, whichever way he turns,
    whichever you like, wholly, with 1 move, with a single move, with a single stroke, with accurate play, with best play, with careful play,
    with correct play, with ease, with good play, with interest, with sensible play, with that, with this, without doubt, without further ado,
    without more ado, wonderful, would you believe it, yeah, yes, yet, you can see, you know, you mark my words, you see
# where the opening comes from, and turns of the spoken word
adverb: before us, in front of us, before our eyes, on our hands, out there, over here, down there, up there, in there, out here,
    in the textbook sense, in the classical sense, in the classic sense, in the true sense, in every sense, for a change, 9 times out of 10,
    by transposition, by a transposition, by a different move order, by another move order, by another road, by a different road,
    by another route, by a different route, unusually early, early on
adverb: when we like, whenever we like, when we want, whenever we want, when we please, whenever we please, when he likes, whenever he likes, whenever he wants,
    in our own time, at our leisure, at any moment, any moment now, sooner or later, if nothing is done about it
# compared with another place of the lesson
adverb: as before, just as before, like before, same as before, the same as before, as last time, as above, as we saw before, as we saw above,
    here too, here again, here as well, yet again, one more time, unlike before, unlike last time, unlike then, contrary to before
adverb: to put it mildly, to put it bluntly, to put it simply, to put it politely, to say the least, to its name, to his name, to her name, to our name, to their name, to its credit, i grant you, i 'll grant you, i 'll give him that, as of now, either, besides, contrary to appearances, despite appearances, in spite of appearances, appearances notwithstanding, against all appearances, to be precise, as a reminder
hedge: or 2, roughly speaking, broadly speaking, generally speaking, give or take, so it seems
# soften
hedge: about, apparently, approximately, arguably, as far as i can see, as far as i can tell, as good as, i 'd say, i believe, i dare say, i feel,
    i guess, i reckon, i suppose, i suspect, i think, i would say, if anything, if i am not mistaken, if i see it right, if you ask me, in effect,
    in my opinion, in my view, it appears, it seems, it would seem, likely, maybe, more or less, perhaps, possibly, practically, presumably, probably,
    roughly, seemingly, some would say, to all intents and purposes, unless i am mistaken, virtually
adverb: in terms of material, in material terms, in purely material terms, on the material front, from the material point of view, material wise, apiece, this is where, that is where, that 's where, here is where, here 's where, this is the point where, this is the moment when, this is the moment where, by the by, oops, ouch, oh dear, alas and alack, dear me, oh no, wow, ooh, bang, crash, boom, so much the better, all the more so
hedge: roughly speaking, broadly speaking, relatively speaking
adverb: made to measure, tailor made, made to order, ready made, miles, streets, on whichever side he likes, on whichever wing he likes, on either side he likes, too bad, frankly speaking, objectively speaking, positionally speaking, structurally speaking, honestly speaking, hey presto, presto, nah, well now, um, er, so it seems, as it happens, as luck would have it, as you may know, as you know, as we know, as everybody knows, as is well known, if need be, over on the right, over on the left
# deny
deny: anything but, by no means, far from, in no way, neither, never, no longer, no more, nor, not any longer, not any more, not at all, not yet,
    nowhere, nowhere near, on no account, under no circumstances
# how often
limit: always, hardly ever, almost never, scarcely ever, less often, not often, most often, most frequently, more often than not, quite often, very often,
    nearly always, almost always, frequently, commonly, seldom, very rarely, very seldom, now and then
# limit: the clause says something else than without it
limit: a moment ago, a move ago, ago, all but, allegedly, almost, as a rule, at best, at first, at first glance, at first sight, barely,
    before, earlier, else, elsewhere, eventually, except, for a moment, formerly, generally, half, hardly, if only, in a manner of speaking,
    in a sense, in a way, in an endgame, in another line, in general, in name, in other lines, in the endgame, in the long run, in theory, instead of,
    last move, last week, most of the time, mostly, nearly, normally, not only, occasionally, often, on paper, on the surface, once, one day,
    only almost, otherwise, partially, partly, previously, rarely, rather than, scarcely, some day, sometimes, soon enough, superficially,
    supposedly, till, to some extent, typically, unless, until, up to a point, usually, without, years ago
""")


_SAID = ("said", "noted", "observed", "added", "admitted", "remembered", "stressed", "mentioned", "conceded", "granted", "confessed", "pointed out", "remarked", "recalled")  # fmt: skip
ADVERBS["adverb"] += tuple(
    f"it {modal} be {said}"
    for modal in ("must", "should", "may", "might", "can", "could", "has to")
    for said in _SAID
)
"""What is put between two commas and says nothing: "d5, it should be noted, is weak"."""
_BACK = ("recapturing", "taking back", "retaking", "taking the piece back", "recapturing the piece", "recapturing at once", "taking back at once")  # fmt: skip
ADVERBS["adverb"] = (
    *ADVERBS["adverb"],
    *(f"{before} {back}" for before in ("instead of", "before") for back in _BACK),
)
_COMPARED = ("more often than", "more times than", "as often as", "just as often as", "exactly as often as", "as many times as", "less often than", "fewer times than")  # fmt: skip
_DONE = ("defended", "protected", "guarded", "covered", "attacked", "hit")
_OFTEN = tuple(
    f"{how} {so}{done}" for how in _COMPARED for so in ("", "it is ", "it 's ") for done in _DONE
)
"""One count against the other: "more often than it is defended"."""
ADVERBS["adverb"] = ADVERBS["adverb"] + _OFTEN
