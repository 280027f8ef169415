//! Why a match cannot be played.

use std::fmt;
use std::path::PathBuf;

/// Why a match cannot be played.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MatchError {
    /// A setting is wrong; the message says which and why.
    Setting(String),
    /// A program cannot be started: its name, its command, why.
    Start(&'static str, String, String),
    /// A program has no option of this name.
    Option(&'static str, String),
    /// A program does not answer as UCI asks.
    Handshake(&'static str, String),
    /// The file of games cannot be written.
    Games(PathBuf, String),
}

impl fmt::Display for MatchError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            MatchError::Setting(message) => f.write_str(message),
            MatchError::Start(name, command, why) => {
                write!(f, "{name}: '{command}' cannot be started: {why}")
            }
            MatchError::Option(name, option) => {
                write!(f, "{name}: the program has no option {option}")
            }
            MatchError::Handshake(name, why) => write!(f, "{name}: {why}"),
            MatchError::Games(path, why) => {
                write!(f, "{} cannot be written: {why}", path.display())
            }
        }
    }
}

impl std::error::Error for MatchError {}
