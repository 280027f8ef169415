//! Why positions cannot be gathered or read.

use std::fmt;
use std::path::PathBuf;

use super::reader::ReadError;
use crate::search::RequestError;

/// Why positions cannot be gathered or read.
#[derive(Debug)]
pub enum SampleError {
    /// A setting is wrong; the message says which and why.
    Setting(String),
    /// The list of openings cannot be read.
    Openings(PathBuf, String),
    /// A line of the list of openings, counted from 1, is none.
    OpeningLine(usize, String),
    /// A file or a folder cannot be read or written.
    Disk(PathBuf, String),
    /// The folder has something else in it.
    Foreign(PathBuf),
    /// The folder's positions were gathered otherwise: what it says, what is asked for.
    Otherwise(PathBuf, String, String),
    /// Another run writes into the folder.
    Busy(PathBuf),
    /// A segment is damaged.
    Segment(PathBuf, ReadError),
    /// A search cannot be made.
    Search(RequestError),
}

impl fmt::Display for SampleError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            SampleError::Setting(message) => f.write_str(message),
            SampleError::Openings(path, why) => {
                write!(f, "{} cannot be read: {why}", path.display())
            }
            SampleError::OpeningLine(line, why) => {
                write!(f, "line {line} of the openings: {why}")
            }
            SampleError::Disk(path, why) => write!(f, "{}: {why}", path.display()),
            SampleError::Foreign(path) => write!(
                f,
                "{} is not empty and has no about.txt; give an empty folder or a new name",
                path.display()
            ),
            SampleError::Otherwise(path, there, asked) => write!(
                f,
                "{} has positions gathered otherwise: it says '{there}', asked for is '{asked}'; give another folder",
                path.display()
            ),
            SampleError::Busy(path) => {
                write!(f, "another run writes into {}", path.display())
            }
            SampleError::Segment(path, error) => write!(
                f,
                "{}: {error}; delete the file to have it gathered again",
                path.display()
            ),
            SampleError::Search(error) => write!(f, "{error}"),
        }
    }
}

impl std::error::Error for SampleError {}

impl From<RequestError> for SampleError {
    fn from(error: RequestError) -> Self {
        SampleError::Search(error)
    }
}
