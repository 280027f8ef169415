//! Segments of another collection, taken over: their games again, under the numbers that their sources have here.

use std::collections::BTreeMap;
use std::path::PathBuf;

use super::batch::Batch;
use super::failure::CollectError;
use super::games::Games;
use super::rebuild::again;

/// Blocks of games that are worked on together.
const STEP: u32 = 32;

/// A segment that is taken over.
#[derive(Debug, Clone, Default)]
pub struct Taken {
    /// Its folder.
    pub folder: PathBuf,
    /// From the numbers of sources there to those here.
    pub sources: BTreeMap<u32, u32>,
}

/// Some of its blocks: from, and below.
pub type Blocks = (u32, u32);

impl Taken {
    /// Its blocks, in parts of which each is work for one thread.
    ///
    /// # Errors
    /// When it cannot be read.
    pub fn parts(&self) -> Result<impl Iterator<Item = Blocks>, CollectError> {
        let all = Games::open(&self.folder)?.blocks();
        Ok((0..all)
            .step_by(STEP as usize)
            .map(move |from| (from, all.min(from + STEP))))
    }

    /// The games of a part, in their order.
    ///
    /// # Errors
    /// When they cannot be read, or are of a source that is not named.
    pub fn read(&self, (from, to): Blocks) -> Result<Batch, CollectError> {
        let mut games = Games::open(&self.folder)?;
        let mut batch = Batch::default();
        for number in from..to {
            for stored in games.block(number)? {
                let Some(source) = self.sources.get(&stored.source) else {
                    let path = self.folder.join("games.bin");
                    let what = "a game is of a source that the collection does not name";
                    return Err(CollectError::Damaged(path, what));
                };
                again(&mut batch, &stored, *source);
            }
        }
        Ok(batch)
    }
}
