//! The two accumulators of every ply of the line being searched. A move only notes which men it moves; sums are made when
//! a value is asked for, from the nearest ply that has them.

use shakmaty::{
    Bitboard, Board, CastlingSide, Chess, Color, Move, Piece, Position as _, Role, Square,
};

use super::aligned::Aligned;
use super::columns::View;
use super::file::Network;
use super::kernels::Kernels;

/// Plies that there is room for at first.
const PLIES: usize = 64;

/// A man on a square.
type Man = (Piece, Square);

/// The men that a move sets down and takes up.
#[derive(Debug, Clone, Copy, Default)]
enum Change {
    /// At the root.
    #[default]
    Nothing,
    /// A man moves, or is promoted.
    OneOne(Man, Man),
    /// A man moves and another goes.
    OneTwo(Man, [Man; 2]),
    /// Two men move: castling.
    TwoTwo([Man; 2], [Man; 2]),
}

impl Change {
    fn of(turn: Color, mv: Move) -> Change {
        match mv {
            Move::Normal {
                role,
                from,
                capture,
                to,
                promotion,
            } => {
                let set = (promotion.unwrap_or(role).of(turn), to);
                let gone = (role.of(turn), from);
                match capture {
                    None => Change::OneOne(set, gone),
                    Some(taken) => Change::OneTwo(set, [gone, (taken.of(!turn), to)]),
                }
            }
            Move::EnPassant { from, to } => {
                let taken = Square::from_coords(to.file(), from.rank());
                let gone = [(turn.pawn(), from), ((!turn).pawn(), taken)];
                Change::OneTwo((turn.pawn(), to), gone)
            }
            Move::Castle { king, rook } => {
                let side = CastlingSide::from_king_side(king < rook);
                let set = [
                    (turn.king(), side.king_to(turn)),
                    (turn.rook(), side.rook_to(turn)),
                ];
                Change::TwoTwo(set, [(turn.king(), king), (turn.rook(), rook)])
            }
            // Of other games: there is no such move in chess.
            Move::Put { .. } => Change::Nothing,
        }
    }
}

/// What is known of a ply.
#[derive(Debug, Clone, Copy, Default)]
struct Ply {
    change: Change,
    /// Whether a side's accumulator is made, White's first.
    made: [bool; 2],
    /// Whether the move turned a side's view, so that no sum before it is of use.
    turned: [bool; 2],
}

/// The last accumulator of a view, and the men that are in it.
#[derive(Clone)]
struct Kept {
    men: [[u64; 6]; 2],
    sums: Aligned,
}

/// The accumulators of a line.
#[derive(Clone)]
pub struct Accumulators {
    plies: Vec<Ply>,
    sums: Aligned,
    /// By side and view.
    kept: [Vec<Kept>; 2],
}

fn index(side: Color) -> usize {
    side.fold_wb(0, 1)
}

impl Accumulators {
    pub fn new(network: &Network) -> Accumulators {
        let kept = Kept {
            men: [[0; 6]; 2],
            sums: network.biases.clone(),
        };
        let kept = vec![kept; network.views()];
        Accumulators {
            plies: vec![Ply::default()],
            sums: Aligned::zeros(PLIES * 2 * network.width),
            kept: [kept.clone(), kept],
        }
    }

    /// Starts anew from any position.
    pub fn refresh(&mut self) {
        self.plies.clear();
        self.plies.push(Ply::default());
    }

    /// Notes a move that is about to be played.
    pub fn push(&mut self, network: &Network, before: &Chess, mv: Move) {
        let turn = before.turn();
        let mut turned = [false; 2];
        if mv.role() == Role::King {
            let view = |square| View::new(turn, square, &network.king_buckets);
            turned[index(turn)] = match mv {
                Move::Castle { king, rook } => {
                    let side = CastlingSide::from_king_side(king < rook);
                    view(king) != view(side.king_to(turn))
                }
                _ => mv.from().is_some_and(|from| view(from) != view(mv.to())),
            };
        }
        self.plies.push(Ply {
            change: Change::of(turn, mv),
            made: [false; 2],
            turned,
        });
        let needed = self.plies.len() * 2 * network.width;
        if needed > self.sums.len() {
            self.sums = self.sums.grown(2 * needed);
        }
    }

    /// Forgets the last move.
    pub fn pop(&mut self) {
        self.plies.pop();
    }

    /// The accumulator of a side in the position that the moves have led to.
    pub fn make(&mut self, network: &Network, kernels: &Kernels, board: &Board, side: Color) {
        let at = index(side);
        let last = self.plies.len().saturating_sub(1);
        let view = network.view(board, side);
        let mut ply = last;
        while !self.plies[ply].made[at] {
            if ply == 0 || self.plies[ply].turned[at] {
                self.gather(network, kernels, board, side, view);
                return;
            }
            ply -= 1;
        }
        for ply in ply + 1..=last {
            self.update(network, kernels, ply, side, view);
        }
    }

    /// The accumulator of a side, made before.
    pub fn last(&self, network: &Network, side: Color) -> &[i16] {
        let first = (2 * (self.plies.len() - 1) + index(side)) * network.width;
        &self.sums[first..first + network.width]
    }

    /// Makes the accumulator of a ply from the one before.
    fn update(
        &mut self,
        network: &Network,
        kernels: &Kernels,
        ply: usize,
        side: Color,
        view: View,
    ) {
        let width = network.width;
        let (before, here) = self.sums.split_at_mut(ply * 2 * width);
        let first = index(side) * width;
        let from = &before[(ply - 1) * 2 * width + first..][..width];
        let to = &mut here[first..first + width];
        let column = |(piece, square): Man| network.column(view.column(piece, square));
        match self.plies[ply].change {
            Change::Nothing => to.copy_from_slice(from),
            Change::OneOne(set, gone) => (kernels.one_one)(to, from, column(set), column(gone)),
            Change::OneTwo(set, gone) => {
                (kernels.one_two)(to, from, column(set), gone.map(column));
            }
            Change::TwoTwo(set, gone) => {
                (kernels.two_two)(to, from, set.map(column), gone.map(column));
            }
        }
        self.plies[ply].made[index(side)] = true;
    }

    /// Makes the last accumulator from the last one of the same view: only the men that differ count.
    fn gather(
        &mut self,
        network: &Network,
        kernels: &Kernels,
        board: &Board,
        side: Color,
        view: View,
    ) {
        let at = index(side);
        let kept = &mut self.kept[at][view.number()];
        for color in Color::ALL {
            for role in Role::ALL {
                let piece = role.of(color);
                let now = board.by_piece(piece);
                let then = &mut kept.men[index(color)][role as usize - 1];
                for square in now & !Bitboard(*then) {
                    (kernels.add)(&mut kept.sums, network.column(view.column(piece, square)));
                }
                for square in Bitboard(*then) & !now {
                    (kernels.take)(&mut kept.sums, network.column(view.column(piece, square)));
                }
                *then = now.0;
            }
        }
        let last = self.plies.len() - 1;
        let first = (2 * last + at) * network.width;
        self.sums[first..first + network.width].copy_from_slice(&kept.sums);
        self.plies[last].made[at] = true;
    }
}
