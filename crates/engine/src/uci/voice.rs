//! What is said to the program at the other end: whole lines, from two threads.

use std::io::{self, BufWriter, Write};
use std::sync::{Mutex, MutexGuard, PoisonError};

struct Mouth<O: Write> {
    output: BufWriter<O>,
    failure: Option<io::Error>,
}

pub struct Voice<O: Write> {
    mouth: Mutex<Mouth<O>>,
}

impl<O: Write> Voice<O> {
    pub fn new(output: O) -> Self {
        Voice {
            mouth: Mutex::new(Mouth {
                output: BufWriter::new(output),
                failure: None,
            }),
        }
    }

    fn mouth(&self) -> MutexGuard<'_, Mouth<O>> {
        self.mouth.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// Says whole lines, each ended; they arrive at once.
    pub fn say(&self, lines: &str) {
        self.write(lines, true);
    }

    /// Says whole lines that may wait for the next [`Voice::say`], which spares a system call.
    pub fn add(&self, lines: &str) {
        self.write(lines, false);
    }

    /// An `info string`: text of ours and of the other side on one line.
    pub fn remark(&self, text: &str) {
        let plain: String = text
            .chars()
            .map(|c| if c.is_control() { ' ' } else { c })
            .collect();
        self.say(&format!("info string {plain}\n"));
    }

    fn write(&self, lines: &str, at_once: bool) {
        let mut mouth = self.mouth();
        if mouth.failure.is_some() {
            return;
        }
        let mut done = mouth.output.write_all(lines.as_bytes());
        if at_once {
            done = done.and_then(|()| mouth.output.flush());
        }
        mouth.failure = done.err();
    }

    /// Whether nobody listens any more.
    pub fn is_unheard(&self) -> bool {
        self.mouth().failure.is_some()
    }

    /// Sends what is left.
    pub fn finish(self) -> io::Result<()> {
        let mut mouth = self
            .mouth
            .into_inner()
            .unwrap_or_else(PoisonError::into_inner);
        match mouth.failure.take() {
            Some(error) => Err(error),
            None => mouth.output.flush(),
        }
    }
}
