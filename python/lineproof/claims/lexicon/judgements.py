"""Words that judge a move, by what they say of its cost."""

from __future__ import annotations

from .table import Table, table

JUDGEMENTS: Table = table("""
# adjectives, of a move or before a noun of one
good: fine, strong, correct, right, best, strongest, excellent, superb, sound, accurate, precise, exact, powerful, clever, splendid, lovely, grand, spot on,
    just right, well played, well judged, wise, nice, neat, great, terrific, wonderful, instructive, ideal, perfect, outstanding, impressive, safest, simplest,
    cleanest, surest, wisest, finest, soundest, most accurate, most precise, most exact, healthiest, energetic, thematic, first class, top notch, bang on, marvellous, magnificent, commendable, praiseworthy, critical, principled, sharpest, smartest, smart, nicest, finest, correctest, prudent, crisp, hard to beat, hard to improve on
brilliant: beautiful, stunning, sensational, dazzling, fantastic, gorgeous
dubious: not entirely sound, not quite sound, not altogether sound, not fully sound, less than sound, not entirely correct, not quite correct, not quite right, not entirely convincing,
    not wholly convincing, not the most accurate, not the most precise, not quite accurate, not very accurate, not entirely accurate, not too good, not so good, not particularly good, inaccurate, imprecise, questionable, doubtful, suspect, suspicious, careless, shaky, inexact, slipshod, dodgy, fishy, iffy, eccentric, risky, sloppy,
    too optimistic, optimistic, hasty, too hasty, wobbly, loosening, of doubtful value, lax, debatable, timid, too timid, too passive, second rate, over ambitious, overambitious, slack, clumsy, ropey, ropy, a bit early, a little early, a touch early, a shade early, slightly early, a little premature, a bit premature, a little hasty, a touch hasty, strange, odd, weird, bizarre, peculiar, imprudent, unconvincing, open to question, rash, unfortunate, lazy, too tame, tame, inferior
bad: wrong, poor, weak, faulty, mistaken, no good, too greedy, rotten, misguided, ill judged, ill timed, ill considered, misconceived, foolish, naive, rubbish, lousy, unsound, greedy, feeble, incorrect, silly, lame, a step in the wrong direction
terrible: horrible, dreadful, awful, catastrophic, disastrous, appalling, atrocious, ghastly, abysmal, horrendous, suicidal, very bad, very poor, really bad, shocking
playable: viable, possible, ok, okay, all right, alright, acceptable, respectable, worth a try, worth a look, worth considering, worth trying, worth a thought,
    reasonable, sensible, in order, decent, good enough, also good, also fine, fine too, worth playing, just as good, every bit as good, as good, equally good,
    feasible, tenable, defensible, admissible, permissible, legitimate, fully playable, fair enough, adequate
inadvisable: unwise, ill advised, best avoided, better avoided, to be avoided, best left alone, better left alone, best left to others, unadvisable
advisable: recommendable, to be recommended, to be advised
unaffordable: too slow, too leisurely, too expensive, too costly, suicide, suicidal, unaffordable, out of the question, poisoned, taboo, off limits, untouchable
fatal: fatal, deadly, ruinous, decisive
preferable move: better, stronger, preferable, superior, sounder, wiser, more accurate, more precise, more exact, simpler and better, improved, safer and better, more to the point, to be preferred, more promising
untimely: too early, too soon, premature, a move too early, a move too soon, still premature
compulsory: obligatory, mandatory, unavoidable, forced, de rigueur
essential: necessary, imperative, indispensable, a must, vital, absolutely necessary, called for
# nouns, each with its mark
mistake: error, faux pas, misstep, false step, misjudgement, misplay, fault, miscalculation, wrong turn, sin
blunder: howler, catastrophe, disaster, clanger, calamity, bloomer, shocker, gaffe, boob, horror
inaccuracy: slip, imprecision, lapse, slip up, careless move
# adjectives before "mistake"
slight: small, minor, little, trifling, tiny, venial, minuscule
grievous: terrible, horrible, gross, catastrophic, huge, colossal, dreadful, awful, monstrous, ghastly, enormous
""")
