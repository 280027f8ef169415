//! A network as it is read from its file.

use std::fmt;

use shakmaty::{Board, Chess, Color, Position as _, Square};

use super::aligned::Aligned;
use super::columns::{FEATURES, HOMES, View};
use crate::eval::LIMIT;

const MAGIC: &[u8; 16] = b"Lineproof net 1\n";
/// Bytes before the text.
const FIXED: usize = 120;
const CHECKSUM_AT: usize = 112;
/// Numbers of men, 0 to 32.
const MEN: usize = 33;
/// A width is a multiple of this, so that no vector is left half full.
pub const WIDTH_STEP: usize = 32;
/// Widths beyond it could overflow the sums of the output (see `kernels.rs`).
pub const WIDTH_MOST: usize = 1024;
const BUCKETS_MOST: usize = 32;
const SCALE_MOST: u32 = 4000;
/// Parts of one in an accumulator.
const UNIT: i64 = 255;
/// Parts of one in the output weights.
const OUTPUT_UNIT: i64 = 512;
/// A bias and 32 columns stay within 16 bits: 33 * 992 < 2^15.
pub const FEATURE_MOST: i16 = 992;
/// See `kernels.rs`.
pub const OUTPUT_MOST: i16 = 1023;
/// Keeps the last sum far within 64 bits.
const OUTPUT_BIAS_MOST: i32 = 1 << 24;
/// Squares of clamped values lose so many bits.
pub const SQUARE_SHIFT: u32 = 3;

/// Why some bytes are no network.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum NetworkError {
    /// They do not begin as a network does.
    NoNetwork,
    /// They are fewer or more than their head says.
    Length {
        /// Bytes by the head, or of the head itself.
        expected: usize,
        /// Bytes that there are.
        found: usize,
    },
    /// The width is no multiple of 32 up to 1024.
    Width(u32),
    /// The table of king buckets or their number is wrong.
    KingBuckets,
    /// The table of output buckets or their number is wrong.
    OutputBuckets,
    /// The centipawns for an output of one are not 1 to 4000.
    Scale(u32),
    /// The text is not UTF-8.
    Text,
    /// The checksum is another one.
    Damaged,
    /// A weight is beyond what the arithmetic can bear.
    Weight,
}

impl fmt::Display for NetworkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NetworkError::NoNetwork => write!(f, "this is no network of Lineproof"),
            NetworkError::Length { expected, found } => {
                write!(
                    f,
                    "the network has {found} bytes where {expected} are needed"
                )
            }
            NetworkError::Width(width) => {
                write!(f, "width {width} is no multiple of 32 up to 1024")
            }
            NetworkError::KingBuckets => write!(f, "the table of king buckets is wrong"),
            NetworkError::OutputBuckets => write!(f, "the table of output buckets is wrong"),
            NetworkError::Scale(scale) => write!(f, "scale {scale} is not 1 to {SCALE_MOST}"),
            NetworkError::Text => write!(f, "the network's text is not UTF-8"),
            NetworkError::Damaged => write!(f, "the network is damaged: its checksum is wrong"),
            NetworkError::Weight => write!(f, "a weight of the network is too large"),
        }
    }
}

impl std::error::Error for NetworkError {}

/// The weights of a learned evaluation.
#[derive(Clone, PartialEq, Eq)]
pub struct Network {
    pub(super) width: usize,
    pub(super) king_buckets: [u8; HOMES],
    output_buckets: [u8; MEN],
    scale: i64,
    text: String,
    checksum: u64,
    columns: Aligned,
    pub(super) biases: Aligned,
    outputs: Aligned,
    output_biases: Vec<i32>,
}

impl fmt::Debug for Network {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Network")
            .field("width", &self.width)
            .field("king_buckets", &(self.views() / 2))
            .field("text", &self.text)
            .finish_non_exhaustive()
    }
}

impl Network {
    /// Reads a network. All is little-endian:
    ///
    /// * `Lineproof net 1` and a line feed; six u32: bytes before the weights, width, king buckets, output buckets, centipawns
    ///   for an output of one, bytes of text;
    /// * the king bucket of each square a1 to d1, a2 to d2, ... d8; the output bucket of each number of men from 0 to 32; 7 bytes of zero;
    /// * a u64 checksum of all else: FNV-1a (Fowler, Noll and Vo) by words of eight bytes;
    /// * the text, and zeros up to the weights;
    /// * the weights: i16 of the columns, i16 biases, i16 output weights (two accumulators a bucket), i32 output biases.
    ///
    /// # Errors
    /// [`NetworkError`] says what is wrong with the bytes.
    pub fn from_bytes(bytes: &[u8]) -> Result<Network, NetworkError> {
        if !bytes.starts_with(MAGIC) {
            return Err(NetworkError::NoNetwork);
        }
        let found = bytes.len();
        let length = |expected| NetworkError::Length { expected, found };
        let (head, rest) = bytes.split_at_checked(FIXED).ok_or(length(FIXED))?;
        let number =
            |at: usize| u32::from_le_bytes([head[at], head[at + 1], head[at + 2], head[at + 3]]);
        let (first, text) = (number(16) as usize, number(36) as usize);
        let (kings, outputs, scale) = (number(24) as usize, number(28) as usize, number(32));
        let width = number(20) as usize;
        if width == 0 || width > WIDTH_MOST || !width.is_multiple_of(WIDTH_STEP) {
            return Err(NetworkError::Width(number(20)));
        }
        let mut king_buckets = [0; HOMES];
        king_buckets.copy_from_slice(&head[40..40 + HOMES]);
        let mut output_buckets = [0; MEN];
        output_buckets.copy_from_slice(&head[72..72 + MEN]);
        if !is_table(&king_buckets, kings) {
            return Err(NetworkError::KingBuckets);
        }
        if !is_table(&output_buckets, outputs) {
            return Err(NetworkError::OutputBuckets);
        }
        if !(1..=SCALE_MOST).contains(&scale) {
            return Err(NetworkError::Scale(scale));
        }
        let sizes = [kings * FEATURES * width, width, outputs * 2 * width];
        let weights = 2 * sizes.iter().sum::<usize>() + 4 * outputs;
        if first < FIXED + text || first.checked_add(weights) != Some(found) {
            return Err(length(first.saturating_add(weights)));
        }
        let mut kept = [0; 8];
        kept.copy_from_slice(&head[CHECKSUM_AT..]);
        if checksum(&head[..CHECKSUM_AT], rest) != u64::from_le_bytes(kept) {
            return Err(NetworkError::Damaged);
        }
        let text = std::str::from_utf8(&rest[..text]).map_err(|_| NetworkError::Text)?;
        let (columns, rest) = rest[first - FIXED..].split_at(2 * sizes[0]);
        let (biases, rest) = rest.split_at(2 * sizes[1]);
        let (weights, rest) = rest.split_at(2 * sizes[2]);
        let (words, _) = rest.as_chunks::<4>();
        let output_biases: Vec<i32> = words.iter().map(|word| i32::from_le_bytes(*word)).collect();
        if output_biases
            .iter()
            .any(|bias| !(-OUTPUT_BIAS_MOST..=OUTPUT_BIAS_MOST).contains(bias))
        {
            return Err(NetworkError::Weight);
        }
        Ok(Network {
            width,
            king_buckets,
            output_buckets,
            scale: i64::from(scale),
            text: text.to_owned(),
            checksum: u64::from_le_bytes(kept),
            columns: numbers(columns, FEATURE_MOST)?,
            biases: numbers(biases, FEATURE_MOST)?,
            outputs: numbers(weights, OUTPUT_MOST)?,
            output_biases,
        })
    }

    /// The network that comes with the program; `crates/engine/network` says where it comes from.
    ///
    /// # Errors
    /// As [`Network::from_bytes`]: never, as a test shows.
    pub fn ours() -> Result<Network, NetworkError> {
        let bytes = include_bytes!(concat!(env!("CARGO_MANIFEST_DIR"), "/network/network.bin"));
        Network::from_bytes(bytes)
    }

    /// Where the network comes from, as its training wrote it down.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Of the whole file: tells one network from another.
    #[must_use]
    pub fn checksum(&self) -> u64 {
        self.checksum
    }

    /// Numbers in an accumulator.
    #[must_use]
    pub fn width(&self) -> usize {
        self.width
    }

    /// How many views a side can have.
    pub(super) fn views(&self) -> usize {
        2 * (usize::from(self.king_buckets.iter().copied().max().unwrap_or(0)) + 1)
    }

    /// The weights of a column.
    pub(super) fn column(&self, column: usize) -> &[i16] {
        &self.columns[column * self.width..(column + 1) * self.width]
    }

    /// The output weights for a number of men: the mover's, then the other's; and where the bias is.
    pub(super) fn outputs(&self, board: &Board) -> (&[i16], usize) {
        let men = board.occupied().count().min(MEN - 1);
        let bucket = usize::from(self.output_buckets[men]);
        let row = 2 * self.width;
        (&self.outputs[bucket * row..(bucket + 1) * row], bucket)
    }

    /// Centipawns from the weighted sum of the squares.
    pub(super) fn centipawns(&self, weighted: i64, bucket: usize) -> i32 {
        let inner = (weighted << SQUARE_SHIFT) / UNIT + i64::from(self.output_biases[bucket]);
        let value = inner * self.scale / (UNIT * OUTPUT_UNIT);
        value.clamp(i64::from(-LIMIT), i64::from(LIMIT)) as i32
    }

    /// How a side sees a board.
    pub(super) fn view(&self, board: &Board, side: Color) -> View {
        let king = board.king_of(side).unwrap_or(Square::A1);
        View::new(side, king, &self.king_buckets)
    }

    /// What the network alone says of a position, in centipawns for its mover, within +-[`LIMIT`]: written
    /// as plainly as can be, slow, for tests of what the search uses.
    #[must_use]
    pub fn value(&self, chess: &Chess) -> i32 {
        let board = chess.board();
        let (outputs, bucket) = self.outputs(board);
        let (for_mover, for_other) = outputs.split_at(self.width);
        let sides = [(chess.turn(), for_mover), (!chess.turn(), for_other)];
        let mut weighted = 0;
        for (side, weights) in sides {
            let view = self.view(board, side);
            for (index, weight) in weights.iter().enumerate() {
                let men = board.iter();
                let sum = i64::from(self.biases[index])
                    + men
                        .map(|(square, piece)| {
                            i64::from(self.column(view.column(piece, square))[index])
                        })
                        .sum::<i64>();
                let clamped = sum.clamp(0, UNIT);
                weighted += ((clamped * clamped) >> SQUARE_SHIFT) * i64::from(*weight);
            }
        }
        self.centipawns(weighted, bucket)
    }
}

fn is_table(table: &[u8], count: usize) -> bool {
    let most = table.iter().copied().max().map_or(0, usize::from);
    (1..=BUCKETS_MOST).contains(&count) && most + 1 == count
}

fn numbers(bytes: &[u8], most: i16) -> Result<Aligned, NetworkError> {
    let (words, _) = bytes.as_chunks::<2>();
    let mut found = Aligned::zeros(words.len());
    for (number, word) in found.iter_mut().zip(words) {
        *number = i16::from_le_bytes(*word);
        if !(-most..=most).contains(number) {
            return Err(NetworkError::Weight);
        }
    }
    Ok(found)
}

/// FNV-1a (Fowler, Noll and Vo) by words of eight bytes, the last filled up with zeros. The length of `before` is a multiple of eight.
fn checksum(before: &[u8], after: &[u8]) -> u64 {
    let mut found: u64 = 0xCBF2_9CE4_8422_2325;
    for part in [before, after] {
        for piece in part.chunks(8) {
            let mut word = [0; 8];
            word[..piece.len()].copy_from_slice(piece);
            found = (found ^ u64::from_le_bytes(word)).wrapping_mul(0x100_0000_01B3);
        }
    }
    found
}

#[cfg(test)]
pub mod made {
    //! Networks by lot, as bytes.

    use super::{CHECKSUM_AT, FEATURES, FIXED, HOMES, MAGIC, MEN, checksum};
    use crate::random::Random;

    /// What to make.
    #[derive(Clone, Copy)]
    pub struct Recipe {
        pub width: usize,
        pub kings: usize,
        pub outputs: usize,
        /// Largest weights of columns, biases and outputs.
        pub most: [i16; 3],
        pub scale: usize,
        /// Whether all weights are as large as they can be.
        pub extreme: bool,
    }

    impl Recipe {
        pub const SMALL: Recipe = Recipe {
            width: 64,
            kings: 4,
            outputs: 8,
            most: [60, 200, 160],
            scale: 400,
            extreme: false,
        };

        pub fn bytes(self, seed: u64) -> Vec<u8> {
            let mut random = Random::new(seed, 0);
            let first = FIXED.next_multiple_of(64);
            let sizes = [first, self.width, self.kings, self.outputs, self.scale, 4];
            let mut bytes = MAGIC.to_vec();
            for size in sizes {
                bytes.extend((size as u32).to_le_bytes());
            }
            bytes.extend((0..HOMES).map(|home| (home % self.kings) as u8));
            bytes.extend((0..MEN).map(|men| (men * self.outputs / MEN) as u8));
            bytes.resize(FIXED, 0);
            bytes.extend(b"made");
            bytes.resize(first, 0);
            let counts = [
                self.kings * FEATURES * self.width,
                self.width,
                self.outputs * 2 * self.width,
            ];
            for (count, most) in counts.into_iter().zip(self.most) {
                for _ in 0..count {
                    let weight = if self.extreme {
                        [-most, most][random.below(2)]
                    } else {
                        random.below(2 * most as usize + 1) as i16 - most
                    };
                    bytes.extend(weight.to_le_bytes());
                }
            }
            for _ in 0..self.outputs {
                bytes.extend((random.below(80_000) as i32 - 40_000).to_le_bytes());
            }
            seal(&mut bytes);
            bytes
        }
    }

    /// Writes the checksum that the bytes ought to have.
    pub fn seal(bytes: &mut [u8]) {
        let sum = checksum(&bytes[..CHECKSUM_AT], &bytes[FIXED..]);
        bytes[CHECKSUM_AT..FIXED].copy_from_slice(&sum.to_le_bytes());
    }
}
