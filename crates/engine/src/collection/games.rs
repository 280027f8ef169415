//! The games of a segment, on disk: blocks of games, each block compressed by itself.
//!
//! A block, before compression: the number of games (1 byte); of each, the length of its tags and of its moves (4 bytes
//! each) and its source (4 bytes); the tags of all; the moves of all. `games.idx` holds where each block begins, and the
//! length of the whole, 8 bytes each.

use std::fs::File;
use std::io::{BufWriter, Read, Seek, SeekFrom, Write};
use std::path::{Path, PathBuf};

use shakmaty::{Chess, Move, Position as _};
use twox_hash::XxHash3_64;

use super::code::read_move;
use super::failure::CollectError;
use crate::bulk::{Game, GameResult};

/// Games of a block.
pub const BLOCK: u32 = 32;
const LEVEL: i32 = 1;
const HEAD: usize = 12;
/// A block is never larger than this: its games have at most 11,797 plies each (common practice).
const LARGEST: usize = 1 << 24;

/// Writes the games of a segment.
pub struct GamesWriter {
    path: PathBuf,
    file: BufWriter<File>,
    index: Vec<u8>,
    at: u64,
    head: Vec<u8>,
    tags: Vec<u8>,
    moves: Vec<u8>,
    held: u32,
    packer: zstd::bulk::Compressor<'static>,
}

impl GamesWriter {
    /// In a folder that is there.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn new(folder: &Path) -> Result<Self, CollectError> {
        let path = folder.join("games.bin");
        let failed = CollectError::at(&path);
        let mut packer = zstd::bulk::Compressor::new(LEVEL).map_err(&failed)?;
        packer.include_checksum(true).map_err(&failed)?;
        let file = BufWriter::with_capacity(1 << 18, File::create(&path).map_err(&failed)?);
        Ok(GamesWriter {
            file,
            index: Vec::new(),
            at: 0,
            head: Vec::new(),
            tags: Vec::new(),
            moves: Vec::new(),
            held: 0,
            packer,
            path: path.clone(),
        })
    }

    /// Adds a game.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn push(&mut self, source: u32, tags: &[u8], moves: &[u8]) -> Result<(), CollectError> {
        for number in [tags.len() as u32, moves.len() as u32, source] {
            self.head.extend_from_slice(&number.to_le_bytes());
        }
        self.tags.extend_from_slice(tags);
        self.moves.extend_from_slice(moves);
        self.held += 1;
        if self.held == BLOCK {
            self.flush()?;
        }
        Ok(())
    }

    fn flush(&mut self) -> Result<(), CollectError> {
        if self.held == 0 {
            return Ok(());
        }
        let mut block = vec![self.held as u8];
        for part in [&mut self.head, &mut self.tags, &mut self.moves] {
            block.append(part);
        }
        self.held = 0;
        let failed = CollectError::at(&self.path);
        let packed = self.packer.compress(&block).map_err(&failed)?;
        self.index.extend_from_slice(&self.at.to_le_bytes());
        self.at += packed.len() as u64;
        self.file.write_all(&packed).map_err(&failed)
    }

    /// Ends both files, and has them on the disk.
    ///
    /// # Errors
    /// When the system refuses.
    pub fn finish(mut self) -> Result<(), CollectError> {
        self.flush()?;
        let failed = CollectError::at(&self.path);
        self.index.extend_from_slice(&self.at.to_le_bytes());
        self.file.flush().map_err(&failed)?;
        self.file.get_ref().sync_all().map_err(&failed)?;
        let index = self.path.with_extension("idx");
        let failed = CollectError::at(&index);
        let mut file = File::create(&index).map_err(&failed)?;
        file.write_all(&self.index).map_err(&failed)?;
        file.sync_all().map_err(&failed)
    }
}

/// A game as it is stored.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stored {
    /// Its tags; no moves.
    pub game: Game,
    /// The number of its source.
    pub source: u32,
    /// The bytes of its tags and moves: the same for the same game.
    pub tags: Vec<u8>,
    /// Its moves, by [`read_move`].
    pub codes: Vec<u8>,
}

impl Stored {
    /// By which the game is known.
    #[must_use]
    pub fn hash(&self) -> u64 {
        let record = [&self.tags[..], &self.codes].concat();
        XxHash3_64::oneshot(&record)
    }

    /// The moves, as far as they are legal: of a sound file, all.
    pub fn moves(&self) -> impl Iterator<Item = (Chess, Move)> + '_ {
        let mut codes = &self.codes[..];
        let mut chess = Chess::default();
        std::iter::from_fn(move || {
            let mv = read_move(&chess, &mut codes)?;
            let before = chess.clone();
            chess.play_unchecked(mv);
            Some((before, mv))
        })
    }
}

/// Reads the games of a segment.
#[derive(Debug)]
pub struct Games {
    path: PathBuf,
    file: File,
    index: Vec<u64>,
}

impl Games {
    /// Of a segment's folder.
    ///
    /// # Errors
    /// When the files cannot be read, or are not as they were written.
    pub fn open(folder: &Path) -> Result<Games, CollectError> {
        let path = folder.join("games.bin");
        let index_path = folder.join("games.idx");
        let bytes = std::fs::read(&index_path).map_err(CollectError::at(&index_path))?;
        let file = File::open(&path).map_err(CollectError::at(&path))?;
        let index: Vec<u64> = bytes
            .chunks_exact(8)
            .map(|chunk| chunk.iter().rev().fold(0, |n, b| n << 8 | u64::from(*b)))
            .collect();
        let length = file.metadata().map_err(CollectError::at(&path))?.len();
        let sound = index.is_sorted()
            && index.first() == Some(&0)
            && index.last() == Some(&length)
            && bytes.len() % 8 == 0;
        if !sound {
            return Err(CollectError::Damaged(index_path, "it is damaged"));
        }
        Ok(Games { path, file, index })
    }

    /// How many blocks.
    #[must_use]
    pub fn blocks(&self) -> u32 {
        self.index.len() as u32 - 1
    }

    /// The games of a block.
    ///
    /// # Errors
    /// When it cannot be read, or is not as it was written.
    pub fn block(&mut self, number: u32) -> Result<Vec<Stored>, CollectError> {
        let damaged = || CollectError::Damaged(self.path.clone(), "it is damaged");
        let bounds = self.index.get(number as usize..number as usize + 2);
        let [start, end] = bounds.ok_or_else(damaged)? else {
            return Err(damaged());
        };
        let failed = CollectError::at(&self.path);
        let mut packed = vec![0; (end - start) as usize];
        self.file.seek(SeekFrom::Start(*start)).map_err(&failed)?;
        self.file.read_exact(&mut packed).map_err(&failed)?;
        let block = zstd::bulk::decompress(&packed, LARGEST).map_err(|_| damaged())?;
        unpack(&block).ok_or_else(damaged)
    }

    /// A game by its number.
    ///
    /// # Errors
    /// As [`Games::block`].
    pub fn game(&mut self, number: u32) -> Result<Stored, CollectError> {
        let mut block = self.block(number / BLOCK)?;
        let place = (number % BLOCK) as usize;
        if place < block.len() {
            Ok(block.swap_remove(place))
        } else {
            Err(CollectError::Damaged(
                self.path.clone(),
                "a game is missing",
            ))
        }
    }
}

fn unpack(block: &[u8]) -> Option<Vec<Stored>> {
    let (count, rest) = block.split_first()?;
    let (head, rest) = rest.split_at_checked(HEAD * usize::from(*count))?;
    let number = |bytes: &[u8]| {
        bytes
            .iter()
            .rev()
            .fold(0_u32, |n, b| n << 8 | u32::from(*b))
    };
    let heads: Vec<[u32; 3]> = head
        .chunks_exact(HEAD)
        .map(|h| [number(&h[..4]), number(&h[4..8]), number(&h[8..])])
        .collect();
    let all: usize = heads.iter().map(|h| h[0] as usize).sum();
    let (mut tags, mut moves) = rest.split_at_checked(all)?;
    let mut games = Vec::with_capacity(heads.len());
    for [tag_bytes, move_bytes, source] in heads {
        let (own, later) = tags.split_at_checked(tag_bytes as usize)?;
        tags = later;
        let (codes, later) = moves.split_at_checked(move_bytes as usize)?;
        moves = later;
        games.push(Stored {
            game: read_tags(own)?,
            source,
            tags: own.to_vec(),
            codes: codes.to_vec(),
        });
    }
    Some(games)
}

fn read_tags(bytes: &[u8]) -> Option<Game> {
    let (result, rest) = bytes.split_first()?;
    let (words, mut rest) = rest.split_at_checked(8)?;
    let word = |at: usize| u16::from_le_bytes([words[at], words[at + 1]]);
    let mut game = Game {
        result: GameResult::from_number(*result),
        white: word(0),
        black: word(2),
        year: word(4),
        ..Game::default()
    };
    for name in &mut game.names {
        let (length, after) = rest.split_first()?;
        let (text, after) = after.split_at_checked(usize::from(*length))?;
        *name = String::from_utf8(text.to_vec()).ok()?;
        rest = after;
    }
    Some(game)
}
