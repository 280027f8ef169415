//! The tree: the line being searched, with its keys, its values and its counters.

use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::Instant;

use shakmaty::{Chess, Move, Position as _};

use crate::eval::Evaluate;

use super::correction::Correction;
use super::key::{key_after, key_after_pass};
use super::margins::Margin;
use super::order::{Landing, Memory, landing};
use super::packed::Packed;
use super::score::{MAX_PLY, Value};
use super::table::Table;
use super::techniques::{Technique, Techniques};

/// A position in the tree.
#[derive(Clone)]
pub struct Node {
    pub chess: Chess,
    pub key: u64,
    pub check: bool,
}

impl Node {
    pub fn new(chess: &Chess, key: u64) -> Node {
        Node {
            chess: chess.clone(),
            key,
            check: chess.is_check(),
        }
    }
}

/// What one ply of the line being searched keeps.
#[derive(Debug, Clone, Copy)]
pub(super) struct Frame {
    /// The static value, corrected.
    pub(super) eval: Value,
    /// The static value as the evaluation gave it.
    pub(super) raw: Value,
    pub(super) killers: [Packed; 2],
    pub(super) landing: Option<Landing>,
    /// Plies since the root or the last pass: repetitions are not looked for across a pass.
    since_pass: usize,
    /// A move left out, to see what the others are worth; or that this node may not pass.
    pub(super) excluded: Packed,
}

const FRAME: Frame = Frame {
    eval: 0,
    raw: 0,
    killers: [Packed::NONE; 2],
    landing: None,
    since_pass: 0,
    excluded: Packed::NONE,
};

/// The line below a ply.
#[derive(Debug, Clone, Copy)]
pub struct Variation {
    moves: [Packed; MAX_PLY],
    pub(super) len: usize,
}

impl Variation {
    const EMPTY: Variation = Variation {
        moves: [Packed::NONE; MAX_PLY],
        len: 0,
    };

    pub fn moves(&self) -> &[Packed] {
        &self.moves[..self.len]
    }
}

/// When to stop.
#[derive(Debug, Clone, Copy)]
pub struct Bounds<'a> {
    pub nodes: u64,
    pub until: Option<Instant>,
    pub stop: Option<&'a AtomicBool>,
    /// Set when the thread that answers has its answer.
    pub done: Option<&'a AtomicBool>,
    /// Nodes of all threads, where there are several.
    pub together: Option<&'a AtomicU64>,
}

/// One search: the tables, the line being searched, the counters.
pub struct Tree<'a, E> {
    pub eval: &'a mut E,
    pub table: &'a Table,
    pub memory: &'a mut Memory,
    pub correction: &'a mut Correction,
    without: Techniques,
    pub bounds: Bounds<'a>,
    pub nodes: u64,
    pub stopped: bool,
    /// Limits do not hold yet: the first ply is searched to its end.
    pub patient: bool,
    /// Keys of the game so far and of the line being searched, the present position last.
    keys: Vec<u64>,
    root_index: usize,
    pub root_depth: i32,
    pub(super) frames: Vec<Frame>,
    pub(super) variations: Vec<Variation>,
}

/// Nodes between two looks at the clock and the stop flag; a power of two.
const LOOK_EVERY: u64 = 512;

/// What a thread searches with.
pub struct Tools<'a, E> {
    pub eval: &'a mut E,
    pub table: &'a Table,
    pub memory: &'a mut Memory,
    pub correction: &'a mut Correction,
}

impl<'a, E: Evaluate> Tree<'a, E> {
    pub fn new(
        tools: Tools<'a, E>,
        without: Techniques,
        bounds: Bounds<'a>,
        history: &[u64],
        root: &Node,
    ) -> Self {
        let Tools {
            eval,
            table,
            memory,
            correction,
        } = tools;
        eval.refresh(&root.chess);
        let mut keys = Vec::with_capacity(history.len() + MAX_PLY + 2);
        keys.extend_from_slice(history);
        keys.push(root.key);
        Tree {
            eval,
            table,
            memory,
            correction,
            without,
            bounds,
            nodes: 0,
            stopped: false,
            patient: true,
            root_index: keys.len() - 1,
            keys,
            root_depth: 0,
            frames: vec![
                Frame {
                    since_pass: usize::MAX / 2,
                    ..FRAME
                };
                MAX_PLY + 4
            ],
            variations: vec![Variation::EMPTY; MAX_PLY + 2],
        }
    }

    /// The line found below the root's children.
    pub fn variation(&self, ply: usize) -> &Variation {
        &self.variations[ply]
    }

    /// Whether the search may use a technique.
    pub(super) fn uses(&self, technique: Technique) -> bool {
        !self.without.has(technique)
    }

    /// The value of a margin.
    pub(super) fn margin(&self, margin: Margin) -> i32 {
        self.without.margin(margin)
    }

    pub fn play(&mut self, node: &Node, mv: Move, ply: usize) -> Node {
        self.count();
        self.eval.push(&node.chess, mv);
        let mut chess = node.chess.clone();
        chess.play_unchecked(mv);
        let key = key_after(&node.chess, node.key, mv, &chess);
        self.table.prefetch(key);
        self.keys.push(key);
        self.frames[ply].landing = Some(landing(node.chess.turn(), mv));
        self.frames[ply + 1].since_pass = self.frames[ply].since_pass.saturating_add(1);
        let check = chess.is_check();
        Node { chess, key, check }
    }

    pub fn take_back(&mut self) {
        self.eval.pop();
        self.keys.pop();
    }

    /// The mover passes.
    pub(super) fn pass(&mut self, node: &Node, passed: Chess, ply: usize) -> Node {
        self.count();
        let key = key_after_pass(&node.chess, node.key);
        self.table.prefetch(key);
        self.keys.push(key);
        self.frames[ply].landing = None;
        self.frames[ply + 1].since_pass = 0;
        Node {
            chess: passed,
            key,
            check: false,
        }
    }

    pub(super) fn take_back_pass(&mut self) {
        self.keys.pop();
    }

    fn count(&mut self) {
        self.nodes += 1;
        let look = self.nodes.is_multiple_of(LOOK_EVERY);
        let spent = match self.bounds.together {
            None => self.nodes,
            Some(all) if look => all.fetch_add(LOOK_EVERY, Ordering::Relaxed) + LOOK_EVERY,
            Some(_) => 0,
        };
        if self.patient {
            return;
        }
        if spent >= self.bounds.nodes || (look && self.must_stop()) {
            self.stopped = true;
        }
    }

    /// Whether the clock or the stop flag ends the search.
    pub fn must_stop(&self) -> bool {
        let set = |flag: Option<&AtomicBool>| flag.is_some_and(|f| f.load(Ordering::Relaxed));
        set(self.bounds.stop)
            || set(self.bounds.done)
            || self
                .bounds
                .until
                .is_some_and(|until| Instant::now() >= until)
    }

    /// Repetition, fifty moves, dead position. A position met once before in the tree counts as repeated,
    /// one of the game before only when it stood twice already.
    pub(super) fn is_draw(&self, node: &Node, ply: usize) -> bool {
        let clock = node.chess.halfmoves() as usize;
        if clock >= 100 && (!node.check || !node.chess.legal_moves().is_empty()) {
            return true;
        }
        if node.chess.board().occupied().count() <= 4 && node.chess.is_insufficient_material() {
            return true;
        }
        let last = self.keys.len() - 1;
        let reach = clock.min(self.frames[ply].since_pass).min(last);
        let mut earlier = 0;
        for back in (4..=reach).step_by(2) {
            if self.keys[last - back] == node.key {
                if last - back >= self.root_index {
                    return true;
                }
                earlier += 1;
                if earlier == 2 {
                    return true;
                }
            }
        }
        false
    }

    pub(super) fn before(&self, ply: usize) -> [Option<Landing>; 2] {
        [
            ply.checked_sub(1).and_then(|p| self.frames[p].landing),
            ply.checked_sub(2).and_then(|p| self.frames[p].landing),
        ]
    }

    /// Puts a move before the line of the next ply.
    pub(super) fn extend_variation(&mut self, ply: usize, mv: Move) {
        let (upper, lower) = self.variations.split_at_mut(ply + 1);
        let (here, below) = (&mut upper[ply], &lower[0]);
        let len = below.len.min(MAX_PLY - 1);
        here.moves[0] = Packed::new(mv);
        here.moves[1..=len].copy_from_slice(&below.moves[..len]);
        here.len = len + 1;
    }
}
