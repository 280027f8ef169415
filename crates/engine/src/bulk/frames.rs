//! Cuts a stream into frames of one game each, whatever is in them, in constant memory.
//!
//! A game begins at a tag that begins a line after moves or a comment, and after a line that ends with a result. Inside
//! a comment neither counts, but a line that begins with `[Event "` does: the comment was never closed, and would take
//! the games after it with it.

use std::io::{self, Read};

/// A chunk is handed on when it has so many bytes.
const CHUNK: usize = 1 << 20;
/// Bytes that are read at once.
const BLOCK: usize = 1 << 18;
/// The inside of a longer comment is left out.
const COMMENT_MOST: usize = 1 << 16;
/// A game of more bytes than this, long comments apart, is no game. The longest that the rules allow has some 100 KB of
/// moves.
const GAME_MOST: usize = 4 << 20;
/// The byte order mark of UTF-8.
const MARK: &[u8] = b"\xef\xbb\xbf";
/// What begins a game even inside of a comment.
const EVENT: &[u8] = b"[Event \"";

/// Bytes that were left out of a chunk.
#[derive(Debug, Clone, Copy)]
struct Gap {
    /// They stood before this byte of the chunk.
    at: usize,
    /// Line ends among them.
    lines: usize,
    /// Characters after the last of these, or all.
    column: usize,
}

/// A part of a chunk with one game, or with several that no line end parts.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Frame {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
    /// It is longer than any game, and cut off.
    pub too_long: bool,
    /// The stream broke off in it.
    pub cut_off: bool,
}

/// Whole frames that stand together.
#[derive(Debug, Default)]
pub struct Chunk {
    /// The text, long comments shortened.
    pub bytes: Vec<u8>,
    /// Its games.
    pub frames: Vec<Frame>,
    first_line: usize,
    gaps: Vec<Gap>,
}

impl Chunk {
    /// Line and column of a byte, from 1; the column in characters.
    #[must_use]
    pub fn place(&self, at: usize) -> (usize, usize) {
        let mut line = self.first_line + newlines(&self.bytes[..at]);
        let start = line_start(&self.bytes, at);
        let mut column = characters(&self.bytes[start..at]);
        for gap in self.gaps.iter().filter(|gap| gap.at <= at) {
            line += gap.lines;
            if gap.at >= start {
                column = if gap.lines > 0 {
                    gap.column + characters(&self.bytes[gap.at..at])
                } else {
                    column + gap.column
                };
            }
        }
        (line, column + 1)
    }
}

fn line_start(bytes: &[u8], at: usize) -> usize {
    bytes[..at]
        .iter()
        .rposition(|b| matches!(b, b'\n' | b'\r'))
        .map_or(0, |end| end + 1)
}

/// Line ends; a lone carriage return is one too.
fn newlines(bytes: &[u8]) -> usize {
    let feeds = memchr::memchr_iter(b'\n', bytes).count();
    let returns = memchr::memchr_iter(b'\r', bytes)
        .filter(|at| bytes.get(at + 1) != Some(&b'\n'))
        .count();
    feeds + returns
}

fn characters(bytes: &[u8]) -> usize {
    match std::str::from_utf8(bytes) {
        Ok(text) => text.chars().count(),
        Err(_) => bytes.len(),
    }
}

/// Bytes that are part of a frame's bones, outside of comments.
const BONES: [bool; 256] = {
    let mut bones = [false; 256];
    let marks = b"\r\n[{;()";
    let mut at = 0;
    while at < marks.len() {
        bones[marks[at] as usize] = true;
        at += 1;
    }
    bones
};

/// How many bytes from here on say nothing of where a frame ends. A `%` counts only where a line begins, and so does not
/// stop here.
fn plain(bytes: &[u8]) -> usize {
    bytes
        .iter()
        .position(|byte| BONES[usize::from(*byte)])
        .unwrap_or(bytes.len())
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum State {
    Text,
    Comment,
    /// To the end of the line: a `;` comment or a `%` line.
    Line,
}

/// The frames of a stream.
pub struct Frames<R> {
    input: R,
    bytes: Vec<u8>,
    at: usize,
    state: State,
    /// Where the comment at hand begins.
    comment: usize,
    depth: usize,
    line_begins: bool,
    /// The game at hand has tags; it has moves or a comment after them.
    tags: bool,
    moves: bool,
    start: usize,
    too_long: bool,
    frames: Vec<Frame>,
    gaps: Vec<Gap>,
    line: usize,
    ended: bool,
    failed: Option<io::Error>,
    read: u64,
}

impl<R: Read> Frames<R> {
    /// Of a plain stream.
    pub fn new(input: R) -> Self {
        Frames {
            input,
            bytes: Vec::with_capacity(CHUNK + 2 * BLOCK),
            at: 0,
            state: State::Text,
            comment: 0,
            depth: 0,
            line_begins: true,
            tags: false,
            moves: false,
            start: 0,
            too_long: false,
            frames: Vec::new(),
            gaps: Vec::new(),
            line: 1,
            ended: false,
            failed: None,
            read: 0,
        }
    }

    /// Plain bytes read so far.
    #[must_use]
    pub fn bytes_read(&self) -> u64 {
        self.read
    }

    /// The next frames, or none at the end of the stream. After the chunk in which a stream breaks off comes its error.
    ///
    /// # Errors
    /// What the stream says, once.
    pub fn next_chunk(&mut self) -> io::Result<Option<Chunk>> {
        while !self.ended && self.failed.is_none() {
            if self.start >= CHUNK {
                return Ok(Some(self.hand_on()));
            }
            self.shorten();
            self.fill();
            self.scan();
        }
        if self.start < self.bytes.len() {
            let cut_off = self.failed.is_some();
            self.cut(self.bytes.len(), cut_off);
        }
        if !self.frames.is_empty() {
            return Ok(Some(self.hand_on()));
        }
        self.failed.take().map_or(Ok(None), |error| {
            self.ended = true;
            Err(error)
        })
    }

    fn fill(&mut self) {
        let before = self.bytes.len();
        self.bytes.resize(before + BLOCK, 0);
        let count = loop {
            match self.input.read(&mut self.bytes[before..]) {
                Ok(count) => break count,
                Err(error) if error.kind() == io::ErrorKind::Interrupted => {}
                Err(error) => {
                    self.failed = Some(error);
                    break 0;
                }
            }
        };
        self.bytes.truncate(before + count);
        if self.read == 0 && self.bytes.starts_with(MARK) {
            self.bytes.drain(..MARK.len());
        }
        self.read += count as u64;
        self.ended = count == 0 && self.failed.is_none();
    }

    /// Leaves out the inside of a long comment, and of what is too long to be a game.
    fn shorten(&mut self) {
        if self.state == State::Comment && self.at > self.comment + COMMENT_MOST {
            self.leave_out(self.comment + 1);
        } else if self.at > self.start + GAME_MOST {
            self.too_long = true;
            self.leave_out(self.start + GAME_MOST / 2);
        }
    }

    fn leave_out(&mut self, from: usize) {
        let gone = &self.bytes[from..self.at];
        let gap = Gap {
            at: from,
            lines: newlines(gone),
            column: characters(&gone[line_start(gone, gone.len())..]),
        };
        match self.gaps.last_mut() {
            Some(last) if last.at == from => {
                last.column = if gap.lines > 0 {
                    gap.column
                } else {
                    last.column + gap.column
                };
                last.lines += gap.lines;
            }
            _ => self.gaps.push(gap),
        }
        self.bytes.drain(from..self.at);
        self.at = from;
    }

    /// Goes on as far as the bytes allow.
    fn scan(&mut self) {
        while self.at < self.bytes.len() {
            match self.state {
                State::Text => {
                    if !self.text() {
                        return;
                    }
                }
                State::Line => match memchr::memchr2(b'\n', b'\r', &self.bytes[self.at..]) {
                    Some(found) => {
                        self.at += found;
                        self.state = State::Text;
                    }
                    None => self.at = self.bytes.len(),
                },
                State::Comment => match memchr::memchr2(b'}', b'\n', &self.bytes[self.at..]) {
                    None => self.at = self.bytes.len(),
                    Some(found) if self.bytes[self.at + found] == b'}' => {
                        self.at += found + 1;
                        self.state = State::Text;
                    }
                    Some(found) => {
                        let next = self.at + found + 1;
                        let rest = &self.bytes[next..];
                        if rest.starts_with(EVENT) {
                            self.cut(next, false);
                            self.at = next;
                            self.state = State::Text;
                            self.line_begins = true;
                        } else if rest.len() < EVENT.len() && !self.ended && EVENT.starts_with(rest)
                        {
                            self.at += found;
                            return;
                        } else {
                            self.at = next;
                        }
                    }
                },
            }
        }
    }

    /// Outside of comments; false when more bytes are needed.
    fn text(&mut self) -> bool {
        while let Some(byte) = self.bytes.get(self.at).copied() {
            match byte {
                b'\r' if self.at + 1 == self.bytes.len() && !self.ended => return false,
                b'\r' if self.bytes.get(self.at + 1) == Some(&b'\n') => {}
                b'\n' | b'\r' => {
                    if self.moves && self.depth == 0 && self.ends_with_result() {
                        self.cut(self.at + 1, false);
                    }
                    self.line_begins = true;
                }
                b' ' | b'\t' => {}
                b'[' if self.line_begins || !self.moves => {
                    let Some(end) = self.tag_end() else {
                        return false;
                    };
                    let event = self.tags && self.line_begins;
                    if self.moves || event && self.bytes[self.at..].starts_with(EVENT) {
                        self.cut(self.at, false);
                    }
                    self.at = end;
                    self.tags = true;
                    self.line_begins = false;
                    continue;
                }
                b'%' if self.line_begins => {
                    self.state = State::Line;
                    return true;
                }
                b'{' => {
                    self.moves |= self.tags;
                    self.comment = self.at;
                    self.at += 1;
                    self.line_begins = false;
                    self.state = State::Comment;
                    return true;
                }
                b';' => {
                    self.moves |= self.tags;
                    self.state = State::Line;
                    return true;
                }
                b'(' => {
                    self.depth += 1;
                    self.line_begins = false;
                }
                b')' => {
                    self.depth = self.depth.saturating_sub(1);
                    self.line_begins = false;
                }
                _ => {
                    self.moves = true;
                    self.line_begins = false;
                    // this byte may be a bone where it does not count, such as a bracket within moves
                    self.at += plain(&self.bytes[self.at + 1..]);
                }
            }
            self.at += 1;
        }
        true
    }

    /// One past a tag, or the end of its line; none when that has not been read yet.
    fn tag_end(&self) -> Option<usize> {
        let rest = &self.bytes[self.at..];
        let line = match memchr::memchr2(b'\n', b'\r', rest) {
            Some(end) => end,
            None if self.ended || rest.len() > GAME_MOST => rest.len(),
            None => return None,
        };
        let mut quoted = false;
        let mut at = 1;
        while at < line {
            match rest[at] {
                b'\\' if quoted => at += 1,
                b'"' => quoted = !quoted,
                b']' if !quoted => return Some(self.at + at + 1),
                _ => {}
            }
            at += 1;
        }
        Some(self.at + line)
    }

    fn ends_with_result(&self) -> bool {
        let line = self.bytes[self.start..self.at].trim_ascii_end();
        ["1-0", "0-1", "1/2-1/2", "*"].iter().any(|result| {
            line.strip_suffix(result.as_bytes()).is_some_and(|before| {
                before.last().is_none_or(|b| {
                    b.is_ascii_whitespace() || matches!(b, b'}' | b')') || *result == "*"
                })
            })
        })
    }

    /// Ends the frame at hand.
    fn cut(&mut self, end: usize, cut_off: bool) {
        self.frames.push(Frame {
            start: self.start,
            end,
            too_long: self.too_long,
            cut_off,
        });
        self.start = end;
        self.too_long = false;
        self.tags = false;
        self.moves = false;
        self.depth = 0;
    }

    /// The frames that are whole; what follows them stays.
    fn hand_on(&mut self) -> Chunk {
        let mut rest = Vec::with_capacity(CHUNK + 2 * BLOCK);
        rest.extend_from_slice(&self.bytes[self.start..]);
        let mut bytes = std::mem::replace(&mut self.bytes, rest);
        bytes.truncate(self.start);
        let split = self.gaps.partition_point(|gap| gap.at < self.start);
        let later = self.gaps.split_off(split);
        let gaps = std::mem::take(&mut self.gaps);
        self.gaps = later
            .into_iter()
            .map(|gap| Gap {
                at: gap.at - self.start,
                ..gap
            })
            .collect();
        let first_line = self.line;
        self.line += newlines(&bytes) + gaps.iter().map(|gap| gap.lines).sum::<usize>();
        self.at -= self.start;
        self.comment = self.comment.saturating_sub(self.start);
        self.start = 0;
        Chunk {
            bytes,
            frames: std::mem::take(&mut self.frames),
            first_line,
            gaps,
        }
    }
}
