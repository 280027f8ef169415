//! Clean games, at once: anything out of the ordinary is left to the second reading.

use memchr::memchr;
use shakmaty::san::San;
use shakmaty::{Chess, Position as _};

use super::game::{Game, GameResult, Kind, Visit, decoded};
use super::quick;

/// Something that is not as in clean games.
#[derive(Debug)]
pub struct Odd;

/// Reads a frame of one clean game.
///
/// # Errors
/// At the first thing that is out of the ordinary; what `visit` was told of the game is void then.
pub fn read_clean(text: &[u8], visit: &mut impl Visit) -> Result<(), Odd> {
    let mut reader = Reader { text, at: 0 };
    let mut game = Game::default();
    let tagged = reader.tags(&mut game)?;
    let mut board = Chess::default();
    let (mut moves, mut marker) = (0_usize, None);
    while let Some(byte) = reader.byte() {
        match byte {
            b' ' | b'\n' | b'\r' | b'\t' | b'!' | b'?' => reader.at += 1,
            b'{' => reader.comment()?,
            b'(' if moves > 0 => reader.variation()?,
            b';' => reader.line(),
            b'$' => {
                reader.at += 1;
                reader.digits();
            }
            b'0'..=b'9' | b'*' | b'.' => {
                if let Some(result) = reader.number()?
                    && marker.replace(result).is_some()
                {
                    return Err(Odd);
                }
            }
            b'a'..=b'h' | b'K' | b'Q' | b'R' | b'B' | b'N' | b'O' => {
                if marker.is_some() {
                    return Err(Odd);
                }
                if moves == 0 {
                    visit.begin(&board, true);
                }
                let san = San::from_ascii(reader.word()).map_err(|_| Odd)?;
                let mv = match quick::find(&board, san) {
                    Some(mv) => mv,
                    None => san.to_move(&board).map_err(|_| Odd)?,
                };
                visit.play(&board, mv);
                board.play_unchecked(mv);
                moves += 1;
            }
            _ => return Err(Odd),
        }
    }
    if moves == 0 {
        if tagged || marker.is_some() {
            visit.left_out(Kind::Empty);
        }
        return Ok(());
    }
    if game.result == GameResult::Unknown {
        game.result = marker.unwrap_or_default();
    }
    visit.game(&game, &board);
    Ok(())
}

struct Reader<'a> {
    text: &'a [u8],
    at: usize,
}

impl<'a> Reader<'a> {
    fn byte(&self) -> Option<u8> {
        self.text.get(self.at).copied()
    }

    fn space(&mut self) {
        while self.byte().is_some_and(|b| b.is_ascii_whitespace()) {
            self.at += 1;
        }
    }

    /// Whether there are any.
    fn tags(&mut self, game: &mut Game) -> Result<bool, Odd> {
        let mut some = false;
        self.space();
        while self.byte() == Some(b'[') {
            let rest = &self.text[self.at + 1..];
            let quote = memchr(b'"', rest).ok_or(Odd)?;
            let name = rest[..quote].trim_ascii_end();
            let value = &rest[quote + 1..];
            let end = memchr(b'"', value).ok_or(Odd)?;
            if !name.iter().all(u8::is_ascii_alphanumeric)
                || value.get(end + 1) != Some(&b']')
                || value[..end]
                    .iter()
                    .any(|b| matches!(b, b'\\' | b'\n' | b'\r'))
            {
                return Err(Odd);
            }
            if game.tag(&decoded(name), &decoded(&value[..end])) {
                return Err(Odd);
            }
            self.at += quote + end + 4;
            self.space();
            some = true;
        }
        Ok(some)
    }

    fn comment(&mut self) -> Result<(), Odd> {
        self.at += memchr(b'}', &self.text[self.at..]).ok_or(Odd)? + 1;
        Ok(())
    }

    fn line(&mut self) {
        let rest = &self.text[self.at..];
        self.at += memchr::memchr2(b'\n', b'\r', rest).unwrap_or(rest.len());
    }

    fn variation(&mut self) -> Result<(), Odd> {
        let mut depth = 0;
        loop {
            match self.byte().ok_or(Odd)? {
                b'{' => {
                    self.comment()?;
                    continue;
                }
                b';' => {
                    self.line();
                    continue;
                }
                b'(' => depth += 1,
                b')' => depth -= 1,
                // a percent sign that begins a line hides the line
                b'%' => return Err(Odd),
                _ => {}
            }
            self.at += 1;
            if depth == 0 {
                return Ok(());
            }
        }
    }

    fn digits(&mut self) {
        while self.byte().is_some_and(|b| b.is_ascii_digit()) {
            self.at += 1;
        }
    }

    /// A move number, or a result.
    fn number(&mut self) -> Result<Option<GameResult>, Odd> {
        let start = self.at;
        self.digits();
        match self.byte() {
            Some(b'-' | b'/' | b'*') => {
                self.at = start;
                GameResult::read(self.word_of_result()).map(Some).ok_or(Odd)
            }
            Some(b'.') => {
                while self.byte() == Some(b'.') {
                    self.at += 1;
                }
                Ok(None)
            }
            Some(b' ' | b'\n' | b'\r' | b'\t') if self.at > start => Ok(None),
            _ => Err(Odd),
        }
    }

    fn word_of_result(&mut self) -> &'a [u8] {
        let start = self.at;
        while self
            .byte()
            .is_some_and(|b| b.is_ascii_digit() || matches!(b, b'-' | b'/' | b'*'))
        {
            self.at += 1;
        }
        &self.text[start..self.at]
    }

    /// A move without its check or mate sign.
    fn word(&mut self) -> &'a [u8] {
        let start = self.at;
        while self
            .byte()
            .is_some_and(|b| b.is_ascii_alphanumeric() || matches!(b, b'-' | b'=' | b'+' | b'#'))
        {
            self.at += 1;
        }
        &self.text[start..self.at]
    }
}
