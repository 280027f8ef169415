//! The engine as a program: `lineproof-engine [uci]`, `lineproof-engine match ...` or `lineproof-engine gather ...`.

use std::io::{self, Write};
use std::path::Path;
use std::process::ExitCode;
use std::sync::Arc;

use engine::eval::{Evaluation, Network};
use engine::matches::{self, MatchError, Settings, settings};
use engine::samples::{self, Census, Order, SampleError};

/// Bad use or bad input.
const BAD: u8 = 2;

fn main() -> ExitCode {
    let mut words = std::env::args().skip(1);
    match words.next().as_deref() {
        None | Some("uci") if words.len() == 0 => uci(),
        Some("match") => match play(words) {
            Ok(()) => ExitCode::SUCCESS,
            Err(error) => failed(&error.to_string()),
        },
        Some("gather") => match gather(words) {
            Ok(()) => ExitCode::SUCCESS,
            Err(error) => failed(&error.to_string()),
        },
        Some("--version") => {
            println!("lineproof-engine {}", env!("CARGO_PKG_VERSION"));
            ExitCode::SUCCESS
        }
        _ => failed(&format!(
            "usage: lineproof-engine [uci]\n{}\n{}",
            settings::USAGE,
            samples::settings::USAGE
        )),
    }
}

fn failed(message: &str) -> ExitCode {
    eprintln!("lineproof-engine: {message}");
    ExitCode::from(BAD)
}

fn uci() -> ExitCode {
    match engine::uci::run_standard() {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever listened has gone away: nobody is left to be told.
        Err(error) if error.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(error) => failed(&error.to_string()),
    }
}

fn play(words: impl Iterator<Item = String>) -> Result<(), MatchError> {
    let settings = Settings::from_words(words)?;
    let summary = matches::play_saying(&settings, &mut |line| say(&format!("{line}\n")))?;
    say(&summary.report(&settings));
    Ok(())
}

fn gather(words: impl Iterator<Item = String>) -> Result<(), SampleError> {
    let text = match Order::from_words(words)? {
        Order::Check(folder) => Census::of_folder(&folder)?.text(),
        Order::Gather(settings) => {
            let tell = &mut |line: &str| say(&format!("{line}\n"));
            let (evaluation, name) = evaluation(settings.network.as_deref())?;
            samples::gather(&settings, &evaluation, &name, tell)?.text()
        }
    };
    say(&text);
    Ok(())
}

/// The evaluation to gather with, and its name.
fn evaluation(network: Option<&Path>) -> Result<(Evaluation, String), SampleError> {
    let Some(path) = network else {
        return Ok((Evaluation::hand_made(), "hand-made".to_owned()));
    };
    let failed = |why: String| SampleError::Setting(format!("{}: {why}", path.display()));
    let bytes = std::fs::read(path).map_err(|error| failed(error.to_string()))?;
    let network = Network::from_bytes(&bytes).map_err(|error| failed(error.to_string()))?;
    let name = format!("network {:016x}", network.checksum());
    Ok((Evaluation::learned(Arc::new(network)), name))
}

/// Writes to standard output, whether or not anybody reads it.
fn say(text: &str) {
    let mut output = io::stdout().lock();
    let _ = output
        .write_all(text.as_bytes())
        .and_then(|()| output.flush());
}
