//! The engine for Python: thin, plain values in and out, the interpreter free during long work.

use pyo3::prelude::*;

mod board;
mod collection;
mod pgn;
mod search;
mod uci;

#[pymodule]
mod _engine {
    #[pymodule_export]
    use super::board::Board;
    #[pymodule_export]
    use super::board::{AmbiguousMoveError, FenError, IllegalMoveError, MoveSyntaxError};
    #[pymodule_export]
    use super::collection::{
        DamagedError, SegmentGames, StoppedError, import_games, invent_games, rebuild_segment,
    };
    #[pymodule_export]
    use super::pgn::{Pgn, read_san};
    #[pymodule_export]
    use super::search::{
        InCheckError, LimitError, Stop, chances_of, mate, perft, points_of, search,
    };
    #[pymodule_export]
    use super::uci::{MatchSettingError, MatchSummary, play_match, uci};

    use super::{PyModule, PyResult};
    use pyo3::Bound;
    use pyo3::types::PyModuleMethods;

    #[pymodule_init]
    fn init(module: &Bound<'_, PyModule>) -> PyResult<()> {
        module.add("__version__", env!("CARGO_PKG_VERSION"))
    }
}
