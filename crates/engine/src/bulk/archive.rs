//! A file as a stream of plain text: gzip, bzip2 and zstd are told by their first bytes, not by their names.

use std::io::{self, BufReader, Cursor, Read};

/// What a stream is packed as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Archive {
    /// Plain text.
    Plain,
    /// gzip (RFC 1952), of one member or several.
    Gzip,
    /// bzip2, of one stream or several.
    Bzip2,
    /// Zstandard (RFC 8878), of one frame or several.
    Zstd,
}

impl Archive {
    /// By its first bytes.
    #[must_use]
    pub fn of(first: &[u8]) -> Archive {
        match first {
            [0x1f, 0x8b, ..] => Archive::Gzip,
            [b'B', b'Z', b'h', ..] => Archive::Bzip2,
            [0x28, 0xb5, 0x2f, 0xfd, ..] => Archive::Zstd,
            _ => Archive::Plain,
        }
    }
}

/// Bytes that are read at once.
const BLOCK: usize = 1 << 18;

/// The plain bytes of a stream.
///
/// # Errors
/// When its first bytes cannot be read, or are those of a text in UTF-16.
pub fn open_archive(
    mut input: impl Read + Send + 'static,
) -> io::Result<(Archive, Box<dyn Read + Send>)> {
    let mut first = Vec::with_capacity(4);
    input.by_ref().take(4).read_to_end(&mut first)?;
    let archive = Archive::of(&first);
    if matches!(first[..], [0xff, 0xfe, ..] | [0xfe, 0xff, ..]) {
        return Err(io::Error::new(
            io::ErrorKind::InvalidData,
            "the text is UTF-16; save it as UTF-8",
        ));
    }
    let whole = BufReader::with_capacity(BLOCK, Cursor::new(first).chain(input));
    Ok((
        archive,
        match archive {
            Archive::Plain => Box::new(whole),
            Archive::Gzip => Box::new(flate2::bufread::MultiGzDecoder::new(whole)),
            Archive::Bzip2 => Box::new(bzip2::bufread::MultiBzDecoder::new(whole)),
            Archive::Zstd => Box::new(zstd::Decoder::with_buffer(whole)?),
        },
    ))
}
