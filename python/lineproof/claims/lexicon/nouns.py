"""Nouns of the trade and some of plain speech."""

from __future__ import annotations

from .table import Table, table

NOUNS: Table = table("""
# pieces in other words
queen: lady, her majesty, her ladyship, ladyship
knight: horse, steed
king: monarch, his majesty
piece: man, unit, chessman
# plain
evil: evil
preference: preference
problem: problem, difficulty, opening problem, worry, headache, concern
victory: victory, full point
# attack
fork: fork, double attack, double hit, royal fork, family fork, royal family fork, double threat on
royal fork: royal fork, family fork
pin: pin, absolute pin, relative pin
skewer: skewer, x-ray, shish kebab
discovered attack: discovered attack, discovery
check: check
double check: double check
discovered check: discovered check, discovery with check
perpetual: perpetual, perpetual check, endless check, never-ending check
mate: mate, checkmate, scholar 's mate, fool 's mate
stalemate: stalemate
threat: threat, menace
goner: goner, dead duck, sitting duck, lost soul
measure: measure, precaution, insurance, safeguard, prophylaxis
escape: escape, way out, way back, way home, escape route, exit
prisoner: prisoner, captive
overwork: too much to do, too much to guard, too much to protect, too much to defend, too much to look after, too much to cover, too much to handle, too much work,
    too much on its plate, too much on his plate, too much on her plate, its hands full, his hands full, her hands full
overtime: overtime, double duty, double job, double shift
fire: fire, attack, pressure, siege
safety: safety, the cellar
attacker: attacker, assailant, attacking piece, piece aimed
pair of eyes: pair of eyes
attack: attack, fire, pressure
defender: minder, defender, protector, guard, guardian, bodyguard
protection: protection, cover, support, defence, help
waste: waste, loss
neighbour: neighbour, friend, companion, comrade
back rank: back rank, first rank, back row, bottom rank, home rank, eighth rank, 8th rank, 1st rank, last rank
zwischenzug: zwischenzug, in between check, intermediate check, zwischenschach, in between capture, in between blow, intermezzo check, intermezzo, in between move, intermediate move, move in between, check in between, capture in between, move in the middle
# material
material: material
balance: balance, material balance, balance of material
count: count, piece count, pawn count, material count
loss: loss
exchange: exchange, trade, swap
compensation: compensation, comp
sacrifice: sacrifice, offer, investment, sac
luft: luft, air, airhole, escape square, flight square, bolt hole, breathing hole, escape hatch, loophole, breathing space, breathing room
choice: choice, alternative, option
refutation: refutation, punishment
improvement: improvement
better move: better move
shelter: shelter, cover, protection, shield
# pawns and squares
outpost: outpost, stronghold, foothold, strongpoint, advanced post, post
chain: chain, pawn chain
hole: hole, weakness, weak square, weak point, weak spot, gaping hole
file: file, line
diagonal: diagonal
majority: majority, extra pawn, numerical superiority
doubled pawn: doubled pawn
isolated pawn: isolated pawn, isolani, lone pawn, isolated queen 's pawn
backward pawn: backward pawn
passed pawn: passed pawn, passer
hanging pawn: hanging pawn, hanging duo, hanging pair, hanging couple
target: target
space: space, room, elbow room, territory, ground
# pieces and kings
bishop pair: bishop pair, pair of bishops, bishops pair, 2 bishops
opposite bishop: opposite coloured bishop, opposite colored bishop, bishop of opposite colour, bishop of opposite color, bishop of opposite colours,
    bishop of opposite colors, bishop of different colours, bishop on opposite colours, bishop on different colours, unlike bishop
development: development, mobilisation, mobilization, getting the bits out, getting the pieces out, getting his pieces out, getting our pieces out, getting pieces out, bringing the pieces out, bringing pieces out, bringing out the pieces
tempo: tempo, tempi, time, gain of time, gain of tempo
lead: lead, edge
castling: castling, castling kingside, castling queenside, castling short, castling long, castling right, castling privilege
draught: draught, draft, breeze, wind
advantage: advantage, edge, plus, pull, initiative, upper hand
position: position, game, structure, set up, setup, camp, ending, endgame, middlegame
game: game
centre: centre, center, middle
wing: wing, side, flank
kingside: kingside, king side
queenside: queenside, queen side
move: move, reply, answer, response, retreat, sortie, advance, push, jump, leap, step, capture, recapture, development, shot, blow, thrust, choice,
    continuation, excursion, nudge
mistake: mistake, error, blunder, inaccuracy, slip, oversight, howler, lapse
idea: idea, plan, point, purpose, aim, intention, wish, dream, ambition, desire, next step
pattern: pattern, motif, theme, tactic, device, trick, manoeuvre
line: line, variation
square: square, point, spot
majority: preponderance
preponderance: preponderance, majority, numerical superiority
doubled pawn: twin
orphan: orphan, loner
pride: pride, monster, absolute monster, beast, jewel, giant, powerhouse, star
asset: asset, trump, trump card, weapon, plus point
way: way, path, view, diagonal, line, road, route
face: face
daylight: daylight, action, light of day
loss of tempo: loss of tempo, loss of time, loss of a tempo
muscle: muscle, inch, finger, step, single step
moment: moment, hour
sorry piece: problem child, problem piece, problem bishop, dud, damp squib, big pawn, tall pawn, sad piece, sorry sight, sorry figure, worst piece, sad sack, passenger, liability
word: amount, quantity, share, wealth, abundance, surplus, rim, corner, counterpart, colleague, opposite number, wall
word: set, fella, fellow, chap, guy, beast, customer, creature, bed, box, pair, couple, duo, trio, lonesome, difference, order, importance,
    significance, brute, lad, soul, bloke, promotion, danger
best: best, strongest
exclamation mark: exclamation mark, exclam
question mark: question mark
mistake: shocker, gaffe, boob, horror, bloomer, recommendation, remedy, solution, fault, misstep, misjudgement, miscalculation, clanger, catastrophe, disaster, calamity, imprecision, slip up, faux pas, false step
way to go: way to go, way forward
person: person, nephew, niece, uncle, cousin, brother, son, colleague, neighbour, student, pupil, member, acquaintance, captain, team mate, somebody, someone, chap, fellow, bloke, guy, man, boy, lad
beginner: beginner, club player, novice, newcomer
danger: danger, terror, threat
player: player, people, amateur, master, grandmaster, strong player
club level: club level, master level, beginner level, amateur level, junior level
percent: percent, per cent, %
word: good play, ample play, enough play, fine play, real play, active play, full play, value, counterplay, equality, chance, prospect, superiority, attention, consideration, alternative, possibility, option, decision, reaction, try, interposition, withdrawal, luxury, suicide, disposal, march, surrender, fianchetto
word: word, impunity, trouble, day, year, week, evening, minute, time, thing, matter, way, part, end, start, reason, problem, result, doubt, fact,
    friend, class, job, duty, task, everybody, hand, colour, color, board, clock, student, pupil, opponent, side, price, pocket, front, sight,
    company, trick, story, road, door, key, rule, case, question, diagram, turn, life, quality, moment, nothing, anything, something, everything,
    nobody, anybody, somebody, everyone, anyone, someone
""")
"""Singular forms; the plural adds an s."""
