//! Lines of the input, of bounded length: no input makes the program take more memory than that.

use std::io::{self, BufRead};

/// Bytes. The longest game that the rules allow fits many times over.
pub const LONGEST: usize = 1 << 20;

#[derive(Debug, PartialEq, Eq)]
pub enum Read {
    /// A line, without its end; bytes that are no UTF-8 are replaced.
    Line(String),
    /// A line too long to be kept.
    TooLong,
    End,
}

/// The next line.
pub fn next(input: &mut impl BufRead) -> io::Result<Read> {
    let mut line = Vec::new();
    let mut too_long = false;
    loop {
        let part = match input.fill_buf() {
            Ok(part) => part,
            Err(error) if error.kind() == io::ErrorKind::Interrupted => continue,
            Err(error) => return Err(error),
        };
        let (end, length) = match part.iter().position(|byte| *byte == b'\n') {
            Some(end) => (true, end + 1),
            None => (part.is_empty(), part.len()),
        };
        too_long |= line.len() + length > LONGEST;
        if !too_long {
            line.extend_from_slice(&part[..length]);
        }
        let nothing_left = length == 0;
        input.consume(length);
        if end {
            return Ok(if too_long {
                Read::TooLong
            } else if nothing_left && line.is_empty() {
                Read::End
            } else {
                Read::Line(String::from_utf8_lossy(&line).trim().to_owned())
            });
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::io::BufReader;

    fn all(mut input: impl BufRead) -> Vec<Read> {
        let mut found = Vec::new();
        loop {
            let read = next(&mut input).unwrap();
            let end = read == Read::End;
            found.push(read);
            if end {
                return found;
            }
        }
    }

    fn line(text: &str) -> Read {
        Read::Line(text.to_owned())
    }

    #[test]
    fn a_line_may_end_in_any_way_or_with_the_input() {
        let input = BufReader::with_capacity(3, &b"uci\r\n\nisready\nstop"[..]);
        assert_eq!(
            all(input),
            [
                line("uci"),
                line(""),
                line("isready"),
                line("stop"),
                Read::End
            ]
        );
    }

    #[test]
    fn a_line_that_is_too_long_is_dropped_and_the_next_one_read() {
        let input = [vec![b'a'; LONGEST + 1], b"\nisready\n".to_vec()].concat();
        assert_eq!(all(&input[..]), [Read::TooLong, line("isready"), Read::End]);
    }

    #[test]
    fn bytes_that_are_no_text_do_no_harm() {
        assert_eq!(all(&b"a\xff\n"[..]), [line("a\u{fffd}"), Read::End]);
    }
}
