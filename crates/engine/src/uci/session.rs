//! The reading thread: commands come in, jobs go out.

use std::io::{self, BufRead, Write};
use std::sync::mpsc::Sender;
use std::thread::Scope;
use std::time::{Duration, Instant};

use shakmaty::Color;

use super::clock::{self, Plan};
use super::command::{self, Command, Go};
use super::game::Game;
use super::lines::{self, Read};
use super::options::{Change, Options};
use super::signals::Signals;
use super::think::{Job, Search};
use super::voice::Voice;

/// Longer times, in milliseconds, are as good as none: a hundred days.
const LONGEST: i64 = 100 * 24 * 3600 * 1000;

pub struct Session<'scope, 'env, O: Write> {
    scope: &'scope Scope<'scope, 'env>,
    jobs: Sender<Job>,
    voice: &'scope Voice<O>,
    signals: &'scope Signals,
    options: Options,
    game: Game,
    /// The plan for when the move pondered on is played, with the number of the search.
    pondering: Option<(u64, Option<Plan>)>,
}

impl<'scope, 'env, O: Write + Send> Session<'scope, 'env, O> {
    pub fn new(
        scope: &'scope Scope<'scope, 'env>,
        jobs: Sender<Job>,
        voice: &'scope Voice<O>,
        signals: &'scope Signals,
    ) -> Self {
        Session {
            scope,
            jobs,
            voice,
            signals,
            options: Options::new(),
            game: Game::new(),
            pondering: None,
        }
    }

    /// Reads to `quit`, to the end of the input, or until nobody hears the answers.
    pub fn listen(&mut self, mut input: impl BufRead) -> io::Result<()> {
        while !self.voice.is_unheard() {
            match lines::next(&mut input)? {
                Read::End => break,
                Read::TooLong => self.voice.remark("a line is too long; it is left out"),
                Read::Line(line) => {
                    let (command, remarks) = command::read(&line);
                    for remark in remarks {
                        self.voice.remark(&remark);
                    }
                    match command {
                        Some(Command::Quit) => break,
                        Some(command) => self.obey(command),
                        None => {}
                    }
                }
            }
        }
        Ok(())
    }

    /// Ends a search under way, and with it the searching thread.
    pub fn end(self) {
        self.signals.quit();
    }

    fn obey(&mut self, command: Command) {
        match command {
            Command::Uci => self.voice.say(&format!(
                "id name Lineproof {}\nid author The Lineproof developers\n{}uciok\n",
                env!("CARGO_PKG_VERSION"),
                self.options.list()
            )),
            Command::IsReady => {
                if !self.signals.is_searching() {
                    self.signals.wait_until_idle();
                }
                self.voice.say("readyok\n");
            }
            Command::NewGame => self.give(Job::Forget),
            Command::Position { fen, moves } => {
                if let Err(error) = self.game.set(fen, moves) {
                    self.voice.remark(&error);
                }
            }
            Command::SetOption { name, value } => self.set_option(&name, value.as_deref()),
            Command::Go(go) => self.go(&go),
            Command::Stop => self.signals.stop(),
            Command::PonderHit => self.ponder_hit(),
            Command::Quit | Command::Nothing => {}
        }
    }

    fn give(&self, job: Job) {
        self.signals.give();
        if self.jobs.send(job).is_err() {
            // The searching thread is gone, and with it whoever would do the job.
            self.signals.done();
        }
    }

    fn set_option(&mut self, name: &str, value: Option<&str>) {
        let mut remarks = Vec::new();
        match self.options.set(name, value, &mut remarks) {
            Ok(Change::Later) => {}
            Ok(Change::Table) => self.give(Job::Resize(self.options.table_bytes())),
            Ok(Change::Forget) => self.give(Job::Forget),
            Ok(Change::Evaluation) => self.give(Job::Evaluate(self.options.evaluation.clone())),
            Err(error) => remarks.push(error),
        }
        for remark in remarks {
            self.voice.remark(&remark);
        }
    }

    fn go(&mut self, go: &Go) {
        let received = Instant::now();
        if self.signals.is_searching() {
            self.voice.remark("a search is under way: send stop first");
            return;
        }
        let root_moves = self.root_moves(go);
        let plan = self.plan(go);
        let depth = self.limit("depth", go.depth, i64::from(u32::MAX));
        let nodes = self.limit("nodes", go.nodes, i64::MAX);
        let mate = self.limit("mate", go.mate, i64::from(u8::MAX));
        let limited = plan.is_some() || depth.is_some() || nodes.is_some() || mate.is_some();
        if !limited && !go.infinite && !go.ponder {
            self.voice.remark("no limit: searching until stop");
        }
        let held = go.infinite || go.ponder || !limited;
        let number = self.signals.begin(held);
        self.pondering = go.ponder.then_some((number, plan));
        let search = Search {
            received,
            position: self.game.position().clone(),
            history: self.game.history().to_vec(),
            depth: depth.and_then(|depth| u32::try_from(depth).ok()),
            nodes,
            mate: mate.and_then(|moves| u8::try_from(moves).ok()),
            plan: plan.filter(|_| !go.infinite),
            pondering: go.ponder,
            lines: self.options.lines,
            threads: self.options.threads,
            without: self.options.without,
            root_moves,
            table_bytes: self.options.table_bytes(),
        };
        if let (Some(plan), Some(_), false) = (search.plan, search.mate, go.ponder) {
            // The search for a mate looks at the stop alone.
            self.stop_at(number, received, plan.hard);
        }
        if self.jobs.send(Job::Search(Box::new(search))).is_err() {
            self.signals.end();
            self.signals.done();
        }
    }

    fn stop_at(&self, number: u64, from: Instant, after: Duration) {
        let signals = self.signals;
        if let Some(deadline) = from.checked_add(after) {
            self.scope.spawn(move || signals.stop_at(number, deadline));
        }
    }

    fn ponder_hit(&mut self) {
        let now = Instant::now();
        if let Some((number, plan)) = self.pondering.take() {
            self.signals.ponder_hit(now);
            if let Some(plan) = plan {
                self.stop_at(number, now, plan.hard);
            }
        }
    }

    /// A limit as the search takes it; one that is too small or too large is moved, and said.
    fn limit(&self, name: &str, wanted: Option<i64>, most: i64) -> Option<u64> {
        let given = wanted?.clamp(1, most);
        if wanted != Some(given) && wanted != Some(i64::MAX) {
            self.voice.remark(&format!("{name} is taken as {given}"));
        }
        u64::try_from(given).ok()
    }

    /// The moves to search; all, when none is named or none of them is legal.
    fn root_moves(&self, go: &Go) -> Option<Vec<shakmaty::Move>> {
        let mut moves = Vec::new();
        for written in &go.search_moves {
            match self.game.position().parse_uci(written) {
                Ok(mv) if moves.contains(&mv) => {}
                Ok(mv) => moves.push(mv),
                Err(error) => self
                    .voice
                    .remark(&format!("searchmoves: {error}; it is left out")),
            }
        }
        (!moves.is_empty()).then_some(moves)
    }

    /// The times that the clock and `movetime` leave; the shorter one where both are given.
    fn plan(&self, go: &Go) -> Option<Plan> {
        let mover = usize::from(self.game.position().turn() == Color::Black);
        // A clock that is told for one side only is taken for both.
        let left = go.time[mover].or(go.time[1 - mover]);
        let by_clock = left.map(|left| {
            let increment = go.increment[mover].unwrap_or_default();
            let moves = go.moves_to_go.filter(|moves| *moves > 0);
            clock::plan(
                milliseconds(left),
                milliseconds(increment),
                moves.map(|moves| u32::try_from(moves).unwrap_or(u32::MAX)),
            )
        });
        let by_move = go.move_time.map(|time| {
            let time = milliseconds(time).max(Duration::from_millis(1));
            Plan {
                soft: time,
                hard: time,
            }
        });
        match (by_clock, by_move) {
            (Some(clock), Some(each)) => Some(Plan {
                soft: clock.soft.min(each.soft),
                hard: clock.hard.min(each.hard),
            }),
            (clock, each) => clock.or(each),
        }
    }
}

fn milliseconds(count: i64) -> Duration {
    Duration::from_millis(count.clamp(0, LONGEST).unsigned_abs())
}
