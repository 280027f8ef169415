//! Rows by the first byte of their key; when they are many, on disk until they are asked for.

use std::fs::File;
use std::io::{Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};
use std::sync::Mutex;

use super::failure::CollectError;
use super::row::{ROW_BYTES, Row};

/// Parts that the rows are in.
pub const PARTS: usize = 256;
/// More rows than this are not held in memory: 96 MB.
const HELD: usize = 3 << 20;
/// Rows for which each part has room from the start: a share, and a bit. Room that is not used takes no memory.
const ROOM: usize = HELD / PARTS / 8 * 9;

/// Rows in parts.
#[derive(Debug)]
pub struct Spill {
    path: PathBuf,
    file: Option<File>,
    at: u64,
    /// Where on disk: start and number of rows.
    runs: Vec<Vec<(u64, usize)>>,
    rows: Vec<Mutex<Vec<Row>>>,
    held: usize,
    all: usize,
}

impl Spill {
    /// With a file of its own in a folder, when it comes to that.
    #[must_use]
    pub fn new(folder: &Path) -> Spill {
        Spill {
            path: folder.join("spill"),
            file: None,
            at: 0,
            runs: vec![Vec::new(); PARTS],
            rows: (0..PARTS)
                .map(|_| Mutex::new(Vec::with_capacity(ROOM)))
                .collect(),
            held: 0,
            all: 0,
        }
    }

    /// All rows so far.
    #[must_use]
    pub fn count(&self) -> usize {
        self.all
    }

    /// Adds a row.
    pub fn push(&mut self, row: Row) {
        if let Ok(rows) = self.rows[(row.key >> 56) as usize].get_mut() {
            rows.push(row);
        }
        self.held += 1;
        self.all += 1;
    }

    /// Writes the rows out when they are too many.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn settle(&mut self) -> Result<(), CollectError> {
        if self.held < HELD {
            return Ok(());
        }
        let failed = CollectError::at(&self.path);
        let mut file = match self.file.take() {
            Some(file) => file,
            None => File::create(&self.path).map_err(&failed)?,
        };
        let mut bytes = Vec::new();
        for (rows, runs) in self.rows.iter_mut().zip(&mut self.runs) {
            let Ok(rows) = rows.get_mut() else { continue };
            bytes.clear();
            for row in rows.iter() {
                bytes.extend_from_slice(&row.bytes());
            }
            file.write_all(&bytes).map_err(&failed)?;
            runs.push((self.at, rows.len()));
            self.at += bytes.len() as u64;
            rows.clear();
        }
        self.file = Some(file);
        self.held = 0;
        Ok(())
    }

    /// Takes the rows of a part out, in the order in which they came.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn part(&self, part: usize) -> Result<Vec<Row>, CollectError> {
        let mut rows = Vec::new();
        if self.file.is_some() {
            let failed = CollectError::at(&self.path);
            let mut file = File::open(&self.path).map_err(&failed)?;
            let mut bytes = Vec::new();
            for (start, count) in &self.runs[part] {
                bytes.resize(count * ROW_BYTES, 0);
                file.seek(SeekFrom::Start(*start)).map_err(&failed)?;
                file.read_exact(&mut bytes).map_err(&failed)?;
                let (whole, _) = bytes.as_chunks::<ROW_BYTES>();
                rows.extend(whole.iter().map(Row::from_bytes));
            }
        }
        if let Ok(mut held) = self.rows[part].lock() {
            if rows.is_empty() {
                return Ok(std::mem::take(&mut held));
            }
            rows.append(&mut held);
        }
        Ok(rows)
    }

    /// Takes the file away.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn finish(self) -> Result<(), CollectError> {
        if self.file.is_some() {
            std::fs::remove_file(&self.path).map_err(CollectError::at(&self.path))?;
        }
        Ok(())
    }
}
