//! The engine for other programs, and matches between programs; the interpreter is free meanwhile.

use std::io::ErrorKind;

use engine::matches::{self, Settings, Summary, Verdict};
use pyo3::create_exception;
use pyo3::exceptions::PyValueError;
use pyo3::prelude::*;

create_exception!(
    lineproof._engine,
    MatchSettingError,
    PyValueError,
    "A match cannot be played: a setting is wrong, or a program cannot be started or set up."
);

/// Speaks UCI on standard input and output until `quit` or the end of the input.
#[pyfunction]
pub fn uci(py: Python<'_>) -> PyResult<()> {
    match py.detach(engine::uci::run_standard) {
        // Whoever listened has gone away: nobody is left to be told.
        Err(error) if error.kind() == ErrorKind::BrokenPipe => Ok(()),
        done => Ok(done?),
    }
}

/// What a match has come to, for the first program.
#[pyclass(frozen, get_all, module = "lineproof._engine")]
#[derive(Debug)]
pub struct MatchSummary {
    pairs: Vec<u64>,
    games: Vec<u64>,
    elo: Option<f64>,
    elo_interval: Option<(f64, f64)>,
    ratio: Option<(f64, f64, f64)>,
    accepted: Option<&'static str>,
    endings: Vec<(&'static str, u64)>,
    failures: Vec<Vec<(&'static str, u64)>>,
    plies: u64,
    seconds: f64,
    report: String,
}

impl MatchSummary {
    fn new(summary: &Summary, settings: &Settings) -> Self {
        let pairs = &summary.pairs;
        let ratio = settings.sprt.map(|test| {
            let (low, high) = test.bounds();
            (test.log_likelihood_ratio(pairs), low, high)
        });
        let verdict = settings.sprt.and_then(|test| test.verdict(pairs));
        MatchSummary {
            pairs: pairs.counts().to_vec(),
            games: summary.games.to_vec(),
            elo: pairs.elo(),
            elo_interval: pairs.elo_interval(),
            ratio,
            accepted: verdict.map(|verdict| match verdict {
                Verdict::Lower => "lower",
                Verdict::Higher => "higher",
            }),
            endings: summary.endings_in_words(),
            failures: summary.failures_in_words().into(),
            plies: summary.plies,
            seconds: summary.lasted().as_secs_f64(),
            report: summary.report(settings),
        }
    }
}

/// Plays a match as the words of a command line say; `say` is given a line now and then.
#[pyfunction]
#[allow(clippy::needless_pass_by_value)] // as Python hands them over
pub fn play_match(py: Python<'_>, words: Vec<String>, say: Py<PyAny>) -> PyResult<MatchSummary> {
    let wrong = |error: matches::MatchError| MatchSettingError::new_err(error.to_string());
    let settings = Settings::from_words(words).map_err(wrong)?;
    let mut failure = None;
    let played = py.detach(|| {
        matches::play_saying(&settings, &mut |line| {
            let said = Python::attach(|py| say.call1(py, (line,)).map(drop));
            failure = failure.take().or(said.err());
        })
    });
    match failure {
        Some(error) => Err(error),
        None => Ok(MatchSummary::new(&played.map_err(wrong)?, &settings)),
    }
}
