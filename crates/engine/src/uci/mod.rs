//! The engine for any program that speaks UCI, the Universal Chess Interface (protocol text of April 2006,
//! Stefan Meyer-Kahlen and Rudolf Huber; cited from memory).
//!
//! One thread reads commands, another searches, so that `isready` and `stop` are answered during a search.
//!
//! ```
//! let mut said = Vec::new();
//! engine::uci::run(&b"isready\nquit\n"[..], &mut said).unwrap();
//! assert_eq!(said, b"readyok\n");
//! ```

use std::io::{self, BufRead, Write};
use std::sync::mpsc;
use std::thread;

pub mod clock;
pub mod command;
mod game;
mod lines;
mod options;
mod session;
mod signals;
mod think;
mod voice;

use session::Session;
use signals::Signals;
use voice::Voice;

/// Bytes of the searching thread's stack: a search for a long mate goes down two plies a move.
const STACK: usize = 64 << 20;

/// Answers commands until `quit` or the end of the input. Should the search break down, the whole process ends,
/// because the program at the other end would wait for ever.
///
/// # Errors
/// What reading or writing fails with; a reader that has gone away included.
pub fn run(input: impl BufRead, output: impl Write + Send) -> io::Result<()> {
    let voice = Voice::new(output);
    let signals = Signals::default();
    let (jobs, todo) = mpsc::channel();
    let read = thread::scope(|scope| {
        let (voice, signals) = (&voice, &signals);
        let search = thread::Builder::new()
            .name("search".to_owned())
            .stack_size(STACK);
        search.spawn_scoped(scope, move || think::work(&todo, voice, signals))?;
        let mut session = Session::new(scope, jobs, voice, signals);
        let read = session.listen(input);
        session.end();
        read
    });
    read.and(voice.finish())
}

/// The same for standard input and output.
///
/// # Errors
/// As [`run`].
pub fn run_standard() -> io::Result<()> {
    run(io::stdin().lock(), io::stdout())
}
