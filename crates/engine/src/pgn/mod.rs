//! PGN without loss: tokens, the spelling of moves, the tree of places.

pub mod spelling;
pub mod token;
pub mod tree;
