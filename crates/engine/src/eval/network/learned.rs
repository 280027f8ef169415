//! The learned evaluation as the search uses it, and the choice between it and the hand-made one.

use std::sync::{Arc, OnceLock};

use shakmaty::{Board, Chess, Move, Position as _};

use super::accumulators::Accumulators;
use super::file::Network;
use super::kernels::{self, Kernels};
use crate::eval::endings::{WHOLE, scale};
use crate::eval::{Evaluate, Tapered};

/// A network's values, with what is known of endings: an advantage that cannot be won counts as the hand-made evaluation counts it,
/// and positions with a bare king are left to it altogether, since it knows where to drive him.
#[derive(Clone)]
pub struct Learned {
    network: Arc<Network>,
    kernels: &'static Kernels,
    accumulators: Accumulators,
    bare: Tapered,
}

impl Learned {
    /// An evaluation at no position yet: call [`Evaluate::refresh`] first.
    #[must_use]
    pub fn new(network: Arc<Network>) -> Self {
        Learned::using(network, kernels::best())
    }

    /// Its weights.
    #[must_use]
    pub fn network(&self) -> &Network {
        &self.network
    }

    /// The kind of processor that the arithmetic in use was compiled for; the values are the same with any.
    #[must_use]
    pub fn arithmetic(&self) -> &'static str {
        self.kernels.name
    }

    /// The same with the arithmetic compiled for another kind of processor, by its name; none where this processor is of
    /// another kind.
    #[must_use]
    pub fn compiled_for(network: Arc<Network>, name: &str) -> Option<Self> {
        let mut kinds = kernels::available().into_iter();
        let kernels = kinds.find(|kind| kind.name == name)?;
        Some(Learned::using(network, kernels))
    }

    pub(super) fn using(network: Arc<Network>, kernels: &'static Kernels) -> Self {
        Learned {
            accumulators: Accumulators::new(&network),
            network,
            kernels,
            bare: Tapered::new(),
        }
    }

    /// What the network alone says of the position that the hooks have led to.
    pub(super) fn raw(&mut self, chess: &Chess) -> i32 {
        let board = chess.board();
        let sides = [chess.turn(), !chess.turn()];
        for side in sides {
            self.accumulators
                .make(&self.network, self.kernels, board, side);
        }
        let sums = sides.map(|side| self.accumulators.last(&self.network, side));
        let (weights, bucket) = self.network.outputs(board);
        let (for_mover, for_other) = weights.split_at(self.network.width);
        let weighted = (self.kernels.output)(sums, [for_mover, for_other]);
        self.network.centipawns(weighted, bucket)
    }
}

impl Evaluate for Learned {
    fn refresh(&mut self, _: &Chess) {
        self.accumulators.refresh();
    }

    fn push(&mut self, before: &Chess, mv: Move) {
        self.accumulators.push(&self.network, before, mv);
    }

    fn pop(&mut self) {
        self.accumulators.pop();
    }

    fn evaluate(&mut self, chess: &Chess) -> i32 {
        let board = chess.board();
        if !board.white().more_than_one() || !board.black().more_than_one() {
            self.bare.refresh(chess);
            return self.bare.evaluate(chess);
        }
        let value = self.raw(chess);
        let stronger = if value >= 0 {
            chess.turn()
        } else {
            !chess.turn()
        };
        value * scale(board, stronger, phase(board)) / WHOLE
    }
}

/// The material left, as the hand-made evaluation counts it.
fn phase(board: &Board) -> i32 {
    let count = |set: shakmaty::Bitboard| set.count() as i32;
    count(board.knights() | board.bishops()) + 2 * count(board.rooks()) + 4 * count(board.queens())
}

/// The evaluation that was chosen.
#[derive(Clone)]
pub enum Evaluation {
    /// Counted terms with fitted weights.
    HandMade(Box<Tapered>),
    /// A network.
    Learned(Box<Learned>),
}

impl Evaluation {
    /// With a network.
    #[must_use]
    pub fn learned(network: Arc<Network>) -> Self {
        Evaluation::Learned(Box::new(Learned::new(network)))
    }

    /// With the network that comes with the program; by hand if it could not be read, which a test would have seen.
    #[must_use]
    pub fn built_in() -> Self {
        static OURS: OnceLock<Option<Arc<Network>>> = OnceLock::new();
        let network = OURS.get_or_init(|| Network::ours().ok().map(Arc::new));
        let learned = network.clone().map(Evaluation::learned);
        learned.unwrap_or_else(Evaluation::hand_made)
    }

    /// Without one.
    #[must_use]
    pub fn hand_made() -> Self {
        Evaluation::HandMade(Box::default())
    }
}

/// The network that comes with the program: the expected score is fitted to it.
impl Default for Evaluation {
    fn default() -> Self {
        Evaluation::built_in()
    }
}

impl Evaluate for Evaluation {
    fn refresh(&mut self, chess: &Chess) {
        match self {
            Evaluation::HandMade(tapered) => tapered.refresh(chess),
            Evaluation::Learned(learned) => learned.refresh(chess),
        }
    }

    fn push(&mut self, before: &Chess, mv: Move) {
        match self {
            Evaluation::HandMade(tapered) => tapered.push(before, mv),
            Evaluation::Learned(learned) => learned.push(before, mv),
        }
    }

    fn pop(&mut self) {
        match self {
            Evaluation::HandMade(tapered) => tapered.pop(),
            Evaluation::Learned(learned) => learned.pop(),
        }
    }

    fn evaluate(&mut self, chess: &Chess) -> i32 {
        match self {
            Evaluation::HandMade(tapered) => tapered.evaluate(chess),
            Evaluation::Learned(learned) => learned.evaluate(chess),
        }
    }
}
