"""Verbs of the trade by family, and the plain verbs without which no sentence can be taken apart."""

from __future__ import annotations

from .table import Table, table

VERBS: Table = table("""
# attack and defence
attack: hit, strike, strike at, hit at, strike on, bear down on, bear on, aim at, target, eye, stare at, glare at, look at, gaze at, peer at,
    frown at, lean on, pound, poke, glare down at, bang on at, nibble at, kick, boot, bash, bother, question, chase, assail, press on, press against,
    bite at, bite, bite on, harass, pressure, put pressure on, train on, fire at, fire on, have in its sights, breathe down the neck of, go after, take aim at,
    point at, set upon, menace, bombard, besiege, have an eye on, have her eye on, have his eye on, have its eye on, have their eye on,
    have our eye on, have got her eye on, cast an eye on, take a look at, be aimed at, eyeball, snipe at, lash out at, pile up on, pile up against, gang up on, put the question to, put a question to, have its sights on, have his sights on,
    have her sights on, have our sights on, have their sights on, be trained on, take a shot at, zoom in on, fix its gaze on, bear down upon, whack at, whack, prod, worry, nag,
    threaten, stab at, home in on, zero in on, set one's sights on, needle, pester
defend: protect, guard, cover, support, back up, look after, keep an eye on, watch, watch over, hold, shield, mind, overprotect, shore up,
    hold together, take care of, keep guard over, bolster, secure, reinforce, prop up, safeguard, tend to, see to, lend support to,
    keep watch over, stand guard over, come to the defence of, come to the aid of, come to the rescue of, come to the help of, babysit, lend a hand to, watch out for, cater for,
    hurry to the defence of, rush to the defence of
cling: cling to, hug, keep, keep hold of, hold on to, hang on to
fork: fork
pin: nail, nail down, pin down, peg, tie down, pin up, peg down, skewer down, fix, glue, chain, freeze
unpin: unpin, break the pin on, break free
skewer: skewer, spear, x-ray, run through
insert: insert, interpose, interpolate, throw in, slip in, put in, sandwich in, sneak in
uncover: uncover, reveal, unveil, open up, unleash, unmask, discover, expose, disclose
threaten: threaten, renew the threat of, menace, be threatening, be after, be on the verge of, have in mind, set up, be going for, go for,
    eye, hint at, be itching for, pose
check: check, give check, say check
mate: mate, checkmate, give mate, deliver mate, force mate
forcing mate: force mate, force checkmate
stalemate: stalemate
smother: smother
shield: shield, screen
shelter: shelter, tuck away, tuck in, tuck up, put to bed
pay attention: pay attention, take care, take precautions, watch out, look out, act
idle: pass, wait, drowse, snooze, nod off, fall asleep, doze off, doze, sleep, dawdle, sit still, sit on one's hands, twiddle your thumbs, twiddle his thumbs, twiddle our thumbs, twiddle one's thumbs, look away, blink, do nothing, carry on regardless, daydream, go to sleep, idle, mark time, pass the move, miss a beat
trap: trap, ambush, bag up, bottle, catch, corner, snare, ensnare, net, lasso
shut in: shut in, coop up, fence in, jam in, seal in, seal off, hide away, keep locked in, keep shut in, stifle, smother in, brick up, brick in, wall up, hem in, box in, lock in, lock away, lock up, wall in, block in, imprison, bury, entomb, pen in,
    bottle up, close in, hold captive, shut away, shut out, cage, cage in, pen up, lock up, incarcerate, fence off, bury alive
block: block, obstruct, blockade, stop up, bar, stand in the way of, get in the way of, clog, block in, be in the way of, stand in front of, hinder, sit in the way of,
    hold up, impede
prevent: prevent, stop, stop from, rule out, keep out, hinder, forbid, deny, take away, cut out, make impossible, bar, prohibit, hold up,
    nip in the bud, parry, put a stop to, discourage, frustrate, preclude, thwart, shut out
avert: get away from, get round, get around, avert, avoid, prevent, stop, parry, escape, escape from, wriggle out of, ward off, fend off, deal with, cope with, defend against, handle, dodge, evade, sidestep
salvage: salvage, save, rescue, help
beware: beware, beware of, watch out for, look out for, reckon with, be wary of, keep an eye out for, be careful of, be alert to, take into account, allow for
rescue: rescue, save, hold, keep, hold on to, hang on to, cling on to, defend, protect, preserve
overload: overload, overburden, overwork, overstretch, overtax, stretch
remove: remove, get rid of, take out, eliminate, take away, lure away, deflect, chase away, drive away, drive off, dislodge, knock out, undermine, kick away,
    capture, take, exchange off, chop off, snip off, liquidate, kill, destroy, lop off, hack off, deprive of
# material
win: net, gain, pick up, collect, snap off, emerge with, come out with, bag, pocket, pick off, earn, bring in, harvest, walk off with, round up,
    scoop up, come away with, get away with, snaffle, scoop, haul in, carry off, end up with, gobble up, make off with
lose: fritter away, drop, blunder, blunder away, give away, throw away, shed, hang, forfeit, part with, say goodbye to, be robbed of, squander, surrender
fall: fall, drop off, perish
succeed: succeed, come off
misfire: misfire, backfire, come to nothing, lead nowhere
come off: come off, go off, disappear, vanish, leave the board, be gone
capture: take, grab, snap off, lap up, gobble up, hoover up, snaffle, gulp down, munch, munch on, chomp, snatch, take on, capture on, snap up, eat, gobble, pocket, swallow, accept, help oneself to, help himself to, help itself to, help themselves to, help yourself to, help ourselves to, seize, grab on
recapture: recapture, retake, take back
sacrifice: sacrifice, sack, throw on the fire, throw into the fire, put on the fire, spend, burn, toss, chuck, fling, gambit, give up, offer, invest, jettison, sac, part with, pay, donate
fling in: give, give away, throw in, toss in, chuck in, fling in, hurl in, let go of
make sense: make sense, make good sense, make perfect sense, make a lot of sense, make every sense, make complete sense, make plenty of sense
ask for trouble: ask for trouble, ask for it, invite trouble, court disaster, court danger, play with fire
regain: regain, recover, win back, get back, recoup, retrieve, pick up again
take back: take back, recapture, retake
restore: restore, re-establish, redress
give back: give back, toss back, throw back, return, hand back, pay back, restore, give up again, hand straight back
cost: cost
exchange: exchange, trade, swap, take off, trade off, swap off, exchange off, simplify, liquidate
# moves
play: play, get in, go, choose, put, move, try, continue with, make, answer with, reply with, reply, respond with, opt for, go for, throw in, insert, follow up with, follow with
castle: castle
develop: develop, bring out, mobilise, get out, deploy
move: move, go, run, jump, hop, leap, step, retreat, come, travel, march, head, slide, shift, swing, return, withdraw, drop back, trot, walk, sail, stroll, shuffle, saunter, sidle, reroute, manoeuvre, roll, drag, hop off, hop away, gallop, bounce, sneak, skip, land, pop up
push: push, advance, step forward, thrust, march
force: force, oblige, compel, make
refute: refute, punish, rebut, bust, demolish, knock out
equalise: equalise, equalize
prepare: prepare, gear up for, be gearing up for, plan, intend, be up to, be planning, aim for, aim at, have in mind, be heading for, be aiming at, envisage, get ready for, make ready for,
    pave the way for, clear the way for, support, make room for, get ready, set up, make possible, work towards, play for, contemplate, dream of,
    head for
transposing: transpose
transpose: transpose, go over, lead back, steer, steer back, land, switch, reach, go back, lead, run, slide
err: err, blunder, slip, stumble, go wrong, go astray, go off the rails, slip up, trip up, miss the mark, lose his way, lose their way, lose the thread, get it wrong, put a foot wrong, misplay, misjudge
lose the game: lose the game, chuck the game away, chuck away the game, toss the game away, toss away the game, chuck it away, toss it away, throw the whole game away, throw the game away, throw away the game, throw away the whole game, give away the game,
    give the game away, hand over the game, ruin the game, throw it all away, cost the game
fail: fail, fail to, fail because of, fall down, lose to, run into, walk into, stumble into, founder on, come to grief on, come unstuck against,
    backfire, misfire
improve on: improve on, improve upon, beat, surpass, top, trump, outdo, surpass
jump: jump away, step aside, move away, leap away, get out of the way
belong: belong to
outweigh: outweigh
rob: rob, deprive, strip
lead to: lead to, result in, end in, transpose to, go over to, go over into, transpose into, steer back into, steer the game into,
    steer the game back into, land in, end up in, reach, lead back to, bring us to, bring us back to, take us to, turn into, merge into
follow: follow, come, be next, ensue
answer: answer, reply, meet, respond
solve: solve, overcome, sort out, shake off, get over, get rid of
struggle: struggle, suffer, wobble, creak, totter, reel, wilt, toil
resign: resign, throw in the towel, give up the ghost, lay down arms, stop the clocks, turn down his king, turn his king over, tip his king over
# having and being
be: stand, linger, loiter, hover, squat, dwell, remain, stay, lie, sit, look, prove, become, find oneself, find itself, find himself, find herself, end up, seem, appear, come out,
    turn out, feel, keep, turn out to be, happen to be, prove to be, live, hold out, rest, be left, hang around, turn
beg for: beg for, cry out for, call for
have: live with, put up with, cope with, contend with, settle for, get, receive, be given, have at one's disposal, owns, keep, enjoy, own, possess, retain, obtain, acquire, boast, hold, end up with, finish with,
    emerge with, stay with, be left with, come out with, can boast, wield, can point to, be blessed with, be saddled with, be burdened with, carry,
    show, suffer from, suffer, be the owner of, be the proud owner of, be the happy owner of, be in possession of, contain, have got, accept, inherit, still have, get away with
give: leave, hand, grant, saddle, burden, land, offer, present, concede, allow, award, inflict on, bestow on, provide, yield, secure, lend
make: make, create, produce, cause, bring about, set up, deliver, carry, involve, contain, pose, mean, result in, lead to, form, constitute,
    amount to, spell, execute, land, come with, arrive with, inflict, build, establish
lead to: return to, go back to, come back to, drift into, drift over into, flow into, pass into, come to
have: hold
rely on: rely on, depend on, make do with, count on
console: console himself with, console oneself with, console themselves with, console ourselves with, take comfort in, take comfort from, boast, point to, fall back on, be proud of, count on, rely on
give: lumber, stick, encumber, bring
close: shut, shut up, wall off, seal off, plug
occupy: occupy, take up, take over, seize, claim, enter, invade
arise: arise, appear, emerge, come about, result
spend: spend, invest, use up, squander
surrender: surrender, forgo, forego, give up, hand over, part with, give away, concede, forfeit, relinquish, cede, let go of
kick: kick, boot
dislodge: dislodge, shift, kick out, chase out, chase, hound out, drive out, throw out, drive, drive away, drive off, chase away, chase off, evict, expel, kick away
speak: speak
stir: stir, budge, move, touch, develop, mobilise
touch: touch, develop, move, bring out, mobilise
meet: meet, see, face, run into, encounter
double: double
isolate: isolate
open: open, open up
close: close, lock, lock up, block, seal, jam
weaken: weaken, loosen
lack: lack, be without, run out of, run short of, be out of, be running out of, have run out of, miss, be short of, want, go without, be missing, be devoid of
lead: lead, be ahead, be in front
trail: trail, lag, lag behind, be behind
outnumber: outnumber, exceed, outweigh
expose: expose, bare, lay bare, strip, denude
fear: fear, be afraid of, be scared of, be frightened of, be wary of, worry about, fret about, dread, mind, lose sleep over, lose any sleep over, bother about, panic about, shy at, care about
afford: afford, allow oneself, permit oneself
know: know, see, notice, note, remember, observe, realise, mention, mind, say, promise, assure, swear, guarantee, tell, explain, mean, point out,
    admit, grant, bet, repeat, recall, imagine, watch, find, spot, recognise, show, prove, ensure, check
think: think, believe, guess, reckon, suspect, suppose, feel, consider, argue, maintain, expect, claim, call, hear, pretend, convince, wonder, doubt,
    hope, wish, fear
try: try, want, wish, hope, attempt, intend, plan, like, love, refuse, fail, forget, decline, long, start, begin, stop, continue, go on, keep on,
    hesitate, prefer, need, dare, tend, use
recommend: recommend, advise, suggest, advocate, endorse, prescribe
judge: judge, account, regard, rate, deem
deserve: deserve, merit, earn
do better: do better
do well: do well, do right, do best, do wisely, do the right thing
avoid: avoid, steer clear of, steer well clear of, stay clear of, stay away from, keep away from, keep clear of, shy away from, keep your hands off, keep one's hands off,
    keep our hands off, leave to others, refrain from, skip, resist, beware of, keep off, give a wide berth to, stay off, shun
poison: poison
frighten: frighten, scare, worry, trouble, bother, alarm, harm, hurt, disturb, keep us awake
prefer: prefer, favour, choose
save: save, hold, work, help, survive, keep, suffice, defend, do, stay, avoid, parry, stop, meet
remain: remain, be left
oblige: oblige, compel, force, constrain
compensate: compensate, make up for, atone for, outweigh, offset, counterbalance, recompense, repay
invest: invest
tempt: tempt, seduce, lure
come into consideration: come into consideration, come into question, come into the picture, be an option
take too long: take too long
interpose: interpose, block, intervene
do: do, adopt, announce, propose, suggest, direct, let, help, use, call, work, turn, wait, learn, teach, ask, answer, talk, speak, read, write, pass, bring, send, belong, happen,
    follow, matter, depend, count, care, rest, last, die, live, serve, add, set, lift, raise, break, cut, drive, chase, kick, rob, deprive, free,
    escape, survive, fight, control, occupy, invade, enter, cross, join, meet, welcome, arrive, appear, land, point, perch, plant, place, swing,
    weigh, measure, repeat, save, rescue, spend, waste, improve, worsen, deserve, overlook, ignore, forget, underline, justify, repay, rely, complain,
    threaten, suit, choose, pick, pull, draw, tempt, deal, handle, tell, concern, complete, finish, end, begin, blunder, err, miss, mishandle, plug,
    patch, suffice, reply, resign, pile, line, line up, run, sleep, wriggle, budge, burn, bleed, lean, hide, close, allow, enable, permit, invite,
    provoke, encourage, avoid, evict, disturb, challenge, contest, dispute, restrict, restrain, cramp, breathe, exploit, profit, benefit, jump in,
    land on, settle, retire, hurry, rush, race, gain, grow, shrink, shatter, wreck, ruin, spoil, damage, split, tear, scatter, undouble, straggle,
    dominate, radiate, rule, reign, assess, evaluate, describe, commit, counsel, warn, include, insure, juggle, flee, loom, lurk, manage, maroon, strand,
    succeed, occur, post, transfer, seek, scream, shout, command, cripple, devalue, bind, put paid to,
    run out of, bite on, proceed, guard against, look out for, watch out for, begin with, start with, end with, come in with, jump in with, land with, fall into, fall for, let in, get away, run away, hope for,
    make for, plan for, think of, select, pick, find, react, handle, execute, realise, spot, hit on, hit upon, come up with, settle for, settle on, plump for,
    decide on, decide for, reject, refuse, permit, sense, foresee, calculate, underestimate, misjudge, misplay, mistime
""")
"""Every line names verbs in their base form; more words after one ("keep an eye on") belong to it, and its object follows them."""
