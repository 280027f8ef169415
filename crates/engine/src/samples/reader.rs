//! Reads records one after another.

use std::fmt;
use std::fs::File;
use std::io::{self, BufReader, Read};
use std::path::Path;

use super::record::{Damage, RECORD_BYTES, Sample};

/// Why no further record can be read.
#[derive(Debug)]
pub enum ReadError {
    /// The bytes cannot be had.
    Input(io::Error),
    /// The last record, of this number, counted from 0, has fewer bytes than it must.
    Short(u64),
    /// The record of this number, counted from 0, is none.
    Damaged(u64, Damage),
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            ReadError::Input(error) => write!(f, "{error}"),
            ReadError::Short(number) => write!(f, "record {number} is cut off"),
            ReadError::Damaged(number, damage) => write!(f, "record {number}: {damage}"),
        }
    }
}

impl std::error::Error for ReadError {}

/// The positions of a run of records, in constant memory. After an error there is nothing more.
pub struct Samples<R> {
    input: R,
    number: u64,
    over: bool,
}

impl Samples<BufReader<File>> {
    /// Of a file.
    ///
    /// # Errors
    /// When the file cannot be opened.
    pub fn open(path: &Path) -> io::Result<Self> {
        Ok(Samples::new(BufReader::new(File::open(path)?)))
    }
}

impl<R: Read> Samples<R> {
    /// Of any input. Reads 32 bytes at a time, so that a file should be buffered.
    pub fn new(input: R) -> Self {
        Samples {
            input,
            number: 0,
            over: false,
        }
    }

    fn read(&mut self) -> Result<Option<Sample>, ReadError> {
        let mut bytes = [0; RECORD_BYTES];
        let mut filled = 0;
        while filled < RECORD_BYTES {
            match self.input.read(&mut bytes[filled..]) {
                Ok(0) if filled == 0 => return Ok(None),
                Ok(0) => return Err(ReadError::Short(self.number)),
                Ok(count) => filled += count,
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => return Err(ReadError::Input(error)),
            }
        }
        let sample = Sample::unpack(&bytes);
        let sample = sample.map_err(|damage| ReadError::Damaged(self.number, damage))?;
        self.number += 1;
        Ok(Some(sample))
    }
}

impl<R: Read> Iterator for Samples<R> {
    type Item = Result<Sample, ReadError>;

    fn next(&mut self) -> Option<Self::Item> {
        if self.over {
            return None;
        }
        let found = self.read().transpose();
        self.over = !matches!(found, Some(Ok(_)));
        found
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::position::Position;
    use crate::samples::Outcome;

    fn three() -> Vec<u8> {
        ["e4", "d4", "c4"]
            .iter()
            .flat_map(|san| {
                let position = Position::start().play_san(san).unwrap();
                Sample::seen_by_mover(position.chess(), 5, Outcome::Lost).pack()
            })
            .collect()
    }

    #[test]
    fn records_come_in_their_order() {
        let bytes = three();
        let read: Vec<Sample> = Samples::new(&bytes[..]).map(Result::unwrap).collect();
        assert_eq!(read.len(), 3);
        let packed: Vec<u8> = read.iter().flat_map(Sample::pack).collect();
        assert_eq!(packed, bytes);
    }

    #[test]
    fn a_record_that_is_cut_off_is_named() {
        let bytes = three();
        let mut samples = Samples::new(&bytes[..95]);
        assert!(matches!(samples.next(), Some(Ok(_))));
        assert!(matches!(samples.next(), Some(Ok(_))));
        assert!(matches!(samples.next(), Some(Err(ReadError::Short(2)))));
        assert!(samples.next().is_none());
    }

    #[test]
    fn a_damaged_record_is_named() {
        let mut bytes = three();
        bytes[32..64].fill(0);
        let mut samples = Samples::new(&bytes[..]);
        assert!(samples.next().unwrap().is_ok());
        let error = samples.next().unwrap().unwrap_err();
        assert_eq!(error.to_string(), "record 1: a side has not one king");
        assert!(samples.next().is_none());
    }

    #[test]
    fn no_bytes_are_no_records() {
        assert!(Samples::new(&[][..]).next().is_none());
    }
}
