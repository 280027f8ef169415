//! Why a segment cannot be written or read.

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

/// What is wrong, and where.
#[derive(Debug)]
pub enum CollectError {
    /// The system refuses a file.
    File(PathBuf, io::Error),
    /// A file of a segment is not as it was written.
    Damaged(PathBuf, &'static str),
    /// It was told to stop.
    Stopped,
}

impl CollectError {
    /// For a file.
    pub fn at(path: &Path) -> impl Fn(io::Error) -> CollectError + '_ {
        |error| CollectError::File(path.to_owned(), error)
    }
}

impl fmt::Display for CollectError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            CollectError::File(path, error) => write!(f, "{}: {error}", path.display()),
            CollectError::Damaged(path, what) => write!(f, "{}: {what}", path.display()),
            CollectError::Stopped => f.write_str("stopped"),
        }
    }
}

impl std::error::Error for CollectError {}
