//! The engine as a program: `lineproof-engine [uci]`.

use std::process::ExitCode;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    match words.as_slice() {
        [] | ["uci"] => match engine::uci::run_standard() {
            Ok(()) => ExitCode::SUCCESS,
            // Whoever listened has gone away: nobody is left to be told.
            Err(error) if error.kind() == std::io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
            Err(error) => {
                eprintln!("lineproof-engine: {error}");
                ExitCode::from(2)
            }
        },
        _ => {
            eprintln!("usage: lineproof-engine [uci]");
            ExitCode::from(2)
        }
    }
}
