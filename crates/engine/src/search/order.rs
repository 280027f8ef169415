//! The order in which moves are tried, and what the search remembers for it.
//!
//! The move of the table first, then captures that do not lose material, the killers (Akl and Newborn,
//! The Principal Continuation and the Killer Heuristic, 1977), the answer that refuted the last move before
//! ("Countermove Heuristic", Uiterwijk 1992), quiet moves by their history (Schaeffer, The History Heuristic, 1989),
//! and captures that lose material.

use shakmaty::{Chess, Color, Move, MoveList, Position as _, Role, Square};

use super::margins::Margin;
use super::packed::Packed;
use super::see;
use super::techniques::{Technique, Techniques};

const TABLE_MOVE: i32 = 1 << 30;
const CAPTURE: i32 = 1 << 22;
const KILLER: i32 = 1 << 20;
const LOSING_CAPTURE: i32 = -(1 << 22);
const UNDERPROMOTION: i32 = -(1 << 23);
/// History values stay within this.
const HISTORY_LIMIT: i32 = 16_384;

/// A piece and its square, 0 to 767: what the tables of continuations are indexed by.
pub type Landing = usize;

/// Landings of both sides.
pub const LANDINGS: usize = 2 * 6 * 64;

/// The landing of a move.
pub fn landing(color: Color, mv: Move) -> Landing {
    (color as usize * 6 + mv.role() as usize - 1) * 64 + mv.to().to_usize()
}

fn raise(value: &mut i16, bonus: i32) {
    // The nearer to the limit, the smaller the step, so that it is never passed.
    let old = i32::from(*value);
    let new = old + bonus - old * bonus.abs() / HISTORY_LIMIT;
    *value = new.clamp(-HISTORY_LIMIT, HISTORY_LIMIT) as i16;
}

/// What happened to quiet moves and captures so far.
pub struct Memory {
    without: Techniques,
    quiet: Vec<i16>,
    captures: Vec<i16>,
    /// After a landing, a landing: one move ago, and two moves ago.
    continuations: [Vec<i16>; 2],
    counters: Vec<Packed>,
}

impl Memory {
    pub fn new() -> Memory {
        Memory {
            without: Techniques::NONE,
            quiet: vec![0; 2 * 64 * 64],
            captures: vec![0; LANDINGS * 6],
            continuations: [vec![0; LANDINGS * LANDINGS], vec![0; LANDINGS * LANDINGS]],
            counters: vec![Packed::NONE; LANDINGS],
        }
    }

    /// Forgets everything, for a search without some techniques.
    pub fn clear(&mut self, without: Techniques) {
        self.without = without;
        self.quiet.fill(0);
        self.captures.fill(0);
        for table in &mut self.continuations {
            table.fill(0);
        }
        self.counters.fill(Packed::NONE);
    }

    fn quiet_index(color: Color, mv: Move) -> usize {
        let from = mv.from().map_or(0, Square::to_usize);
        (color as usize * 64 + from) * 64 + mv.to().to_usize()
    }

    fn capture_index(color: Color, mv: Move) -> usize {
        landing(color, mv) * 6 + mv.capture().map_or(0, |role| role as usize - 1)
    }

    /// How well a quiet move did so far. `before` are the landings one and two moves ago.
    pub fn quiet(&self, color: Color, mv: Move, before: [Option<Landing>; 2]) -> i32 {
        let here = landing(color, mv);
        let mut total = i32::from(self.quiet[Self::quiet_index(color, mv)]);
        for (table, last) in self.continuations.iter().zip(before) {
            if let Some(last) = last {
                total += i32::from(table[last * LANDINGS + here]);
            }
        }
        total
    }

    fn capture(&self, color: Color, mv: Move) -> i32 {
        let weight = self.without.margin(Margin::CaptureHistory);
        i32::from(self.captures[Self::capture_index(color, mv)]) * weight / 16
    }

    /// A quiet move cut the tree (`bonus` > 0), or was tried in vain before one that did.
    pub fn reward_quiet(
        &mut self,
        color: Color,
        mv: Move,
        before: [Option<Landing>; 2],
        bonus: i32,
    ) {
        if !self.without.has(Technique::Butterfly) {
            raise(&mut self.quiet[Self::quiet_index(color, mv)], bonus);
        }
        if self.without.has(Technique::Continuation) {
            return;
        }
        let here = landing(color, mv);
        for (table, last) in self.continuations.iter_mut().zip(before) {
            if let Some(last) = last {
                raise(&mut table[last * LANDINGS + here], bonus);
            }
        }
    }

    /// The same for a capture.
    pub fn reward_capture(&mut self, color: Color, mv: Move, bonus: i32) {
        if !self.without.has(Technique::CaptureHistory) {
            raise(&mut self.captures[Self::capture_index(color, mv)], bonus);
        }
    }

    /// The quiet move that last refuted a landing.
    pub fn counter(&self, last: Option<Landing>) -> Packed {
        last.map_or(Packed::NONE, |last| self.counters[last])
    }

    pub fn set_counter(&mut self, last: Option<Landing>, mv: Move) {
        if let Some(last) = last
            && !self.without.has(Technique::CounterMove)
        {
            self.counters[last] = Packed::new(mv);
        }
    }
}

/// What the order depends on beside the moves.
pub struct Hints {
    pub table: Packed,
    pub killers: [Packed; 2],
    pub counter: Packed,
    pub before: [Option<Landing>; 2],
}

/// A move handed out.
pub struct Picked {
    pub mv: Move,
    /// A capture that loses material.
    pub losing: bool,
    /// How well a quiet move did so far, where the order already asked.
    pub history: Option<i32>,
}

/// Hands out moves, the most promising first.
pub struct Picker<'a> {
    moves: &'a mut MoveList,
    ranks: [i32; 256],
    next: usize,
    /// Whether captures are weighed by the exchange they begin.
    weigh: bool,
}

fn victim(mv: Move) -> i32 {
    let taken = mv.capture().map_or(0, see::worth);
    taken + mv.promotion().map_or(0, see::worth)
}

impl<'a> Picker<'a> {
    /// Ranks all moves of a node.
    pub fn new(
        chess: &Chess,
        moves: &'a mut MoveList,
        hints: &Hints,
        memory: &Memory,
    ) -> Picker<'a> {
        let color = chess.turn();
        let mut ranks = [0; 256];
        for (rank, mv) in ranks.iter_mut().zip(moves.iter()) {
            let packed = Packed::new(*mv);
            *rank = if packed == hints.table {
                TABLE_MOVE
            } else if mv.promotion().is_some_and(|role| role != Role::Queen) {
                UNDERPROMOTION
            } else if mv.is_capture() || mv.is_promotion() {
                CAPTURE + 12 * victim(*mv) - see::worth(mv.role()).min(1000)
                    + memory.capture(color, *mv)
            } else if packed == hints.killers[0] {
                KILLER + 2
            } else if packed == hints.killers[1] {
                KILLER + 1
            } else if packed == hints.counter {
                KILLER
            } else {
                memory.quiet(color, *mv, hints.before)
            };
        }
        Picker {
            moves,
            ranks,
            next: 0,
            weigh: !memory.without.has(Technique::ExchangeOrder),
        }
    }

    /// The next move.
    pub fn next(&mut self, chess: &Chess) -> Option<Picked> {
        loop {
            let rest = self.ranks.get(self.next..self.moves.len())?;
            let (mut best, mut highest) = (usize::MAX, i32::MIN);
            for (index, rank) in rest.iter().enumerate() {
                if *rank > highest {
                    (best, highest) = (index, *rank);
                }
            }
            if best == usize::MAX {
                return None;
            }
            let best = best + self.next;
            let (mv, rank) = (self.moves[best], self.ranks[best]);
            let unweighed = self.weigh && (CAPTURE / 2..TABLE_MOVE).contains(&rank);
            if unweighed && !see::wins_at_least(chess, mv, 0) {
                self.ranks[best] = rank - CAPTURE + LOSING_CAPTURE;
                continue;
            }
            self.moves.swap(best, self.next);
            self.ranks.swap(best, self.next);
            self.next += 1;
            return Some(Picked {
                mv,
                losing: rank < LOSING_CAPTURE / 2,
                history: (rank.abs() < KILLER / 2).then_some(rank),
            });
        }
    }
}
