//! What the reading thread tells the searching one while it searches.

use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::time::Instant;

#[derive(Debug, Default)]
struct State {
    /// Jobs given and not yet done.
    pending: usize,
    /// Searches begun so far.
    number: u64,
    /// A search is under way.
    searching: bool,
    /// The best move may be said.
    released: bool,
    /// When the move pondered on was played.
    hit: Option<Instant>,
    quitting: bool,
}

#[derive(Debug, Default)]
pub struct Signals {
    /// Ends the search.
    pub stop: AtomicBool,
    state: Mutex<State>,
    changed: Condvar,
}

impl Signals {
    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }

    pub fn is_searching(&self) -> bool {
        self.state().searching
    }

    pub fn is_quitting(&self) -> bool {
        self.state().quitting
    }

    /// Whether the best move may be said.
    pub fn is_released(&self) -> bool {
        self.state().released
    }

    pub fn hit(&self) -> Option<Instant> {
        self.state().hit
    }

    /// A job is given that is no search.
    pub fn give(&self) {
        self.state().pending += 1;
    }

    /// A search is given; held back, its best move waits for [`Signals::release`]. Returns its number.
    pub fn begin(&self, held: bool) -> u64 {
        self.stop.store(false, Ordering::Relaxed);
        let mut state = self.state();
        state.pending += 1;
        state.number += 1;
        state.searching = true;
        state.released = !held;
        state.hit = None;
        state.number
    }

    /// A job is done.
    pub fn done(&self) {
        self.state().pending -= 1;
        self.changed.notify_all();
    }

    /// The best move is about to be said: from here on the next search may be asked for.
    pub fn end(&self) {
        self.state().searching = false;
        self.changed.notify_all();
    }

    /// The search ends, and its best move may be said.
    pub fn stop(&self) {
        self.state().released = true;
        self.stop.store(true, Ordering::Relaxed);
        self.changed.notify_all();
    }

    /// The move pondered on was played.
    pub fn ponder_hit(&self, at: Instant) {
        let mut state = self.state();
        state.hit = Some(at);
        state.released = true;
        drop(state);
        self.changed.notify_all();
    }

    /// All ends.
    pub fn quit(&self) {
        self.state().quitting = true;
        self.stop();
    }

    /// Waits until the best move may be said.
    pub fn wait_for_release(&self) {
        let state = self.state();
        let waited = self.changed.wait_while(state, |state| !state.released);
        drop(waited.unwrap_or_else(PoisonError::into_inner));
    }

    /// Waits until all jobs are done.
    pub fn wait_until_idle(&self) {
        let state = self.state();
        let waited = self.changed.wait_while(state, |state| state.pending > 0);
        drop(waited.unwrap_or_else(PoisonError::into_inner));
    }

    /// Stops search `number` at `deadline`, unless it has ended before.
    pub fn stop_at(&self, number: u64, deadline: Instant) {
        let left = deadline.saturating_duration_since(Instant::now());
        let goes_on =
            |state: &mut State| state.number == number && state.searching && !state.quitting;
        let waited = self.changed.wait_timeout_while(self.state(), left, goes_on);
        let (state, timeout) = waited.unwrap_or_else(PoisonError::into_inner);
        // Checked under the lock: a search that began meanwhile is left alone.
        if timeout.timed_out() && state.number == number && state.searching {
            self.stop.store(true, Ordering::Relaxed);
        }
    }
}
