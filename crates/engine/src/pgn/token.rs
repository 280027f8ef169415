//! The lossless tokenizer: every character of a PGN text belongs to exactly one token.
//!
//! ```
//! use engine::pgn::token::{Kind, Tokens};
//! let tokens = Tokens::read("1.e4! {best by test}");
//! let kinds: Vec<Kind> = tokens.iter().map(|t| t.kind).collect();
//! assert_eq!(kinds, [Kind::Number, Kind::San, Kind::Suffix, Kind::Space, Kind::Comment]);
//! ```
//!
//! Source: Portable Game Notation Specification and Implementation Guide, 1994-03-12: import format (3.1),
//! escapes (6), tokens (7), move text (8). A token is only its kind and its start; it ends where the next
//! begins. Nothing is refused here: what cannot be read becomes [`Kind::Unknown`].

/// What a token is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[repr(u8)]
pub enum Kind {
    /// White space without a line end.
    Space,
    /// White space with at least one line end.
    NewLine,
    /// A whole tag pair, brackets included.
    Tag,
    /// A tag pair that its line ends before it is closed.
    UnclosedTag,
    /// A comment in braces, braces included; braces do not nest (standard, 5).
    Comment,
    /// A brace comment that runs to the end of the text.
    UnclosedComment,
    /// A comment from a semicolon to the end of its line.
    LineComment,
    /// An escaped line: a percent sign in the first column (standard, 6).
    Escape,
    /// A move number with its dots, or dots alone.
    Number,
    /// A move with its check or mate sign.
    San,
    /// A null move: `--` or `Z0`.
    Null,
    /// One of the six traditional marks, `!` to `?!`.
    Suffix,
    /// A numeric annotation glyph: `$` and up to nine digits.
    Nag,
    /// A verdict or another sign written as text: `=`, `+-`, `∞`, `N`, `e.p.`
    Mark,
    /// `(`
    Open,
    /// `)`
    Close,
    /// A game termination marker.
    Result,
    /// What cannot be read.
    Unknown,
}

impl Kind {
    /// The name used outside Rust.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Kind::Space => "space",
            Kind::NewLine => "newline",
            Kind::Tag => "tag",
            Kind::UnclosedTag => "unclosed tag",
            Kind::Comment => "comment",
            Kind::UnclosedComment => "unclosed comment",
            Kind::LineComment => "line comment",
            Kind::Escape => "escape",
            Kind::Number => "number",
            Kind::San => "move",
            Kind::Null => "null move",
            Kind::Suffix => "suffix",
            Kind::Nag => "nag",
            Kind::Mark => "mark",
            Kind::Open => "open",
            Kind::Close => "close",
            Kind::Result => "result",
            Kind::Unknown => "unknown",
        }
    }
}

/// One token of a text; `start` and `end` are byte offsets.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Token {
    /// What it is.
    pub kind: Kind,
    /// First byte.
    pub start: u32,
    /// One past the last byte.
    pub end: u32,
}

/// The tokens of one text, in columns.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tokens {
    kinds: Vec<Kind>,
    starts: Vec<u32>,
    len: u32,
}

impl Tokens {
    /// Reads a text of up to 4 GiB; what lies beyond is not read.
    #[must_use]
    pub fn read(text: &str) -> Self {
        let mut reader = Reader {
            text,
            at: 0,
            tokens: Tokens::default(),
            plain_to: 0,
        };
        reader.run();
        reader.tokens.len = reader.at as u32;
        reader.tokens
    }

    /// How many tokens.
    #[must_use]
    pub fn len(&self) -> usize {
        self.kinds.len()
    }

    /// Whether the text was empty.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.kinds.is_empty()
    }

    /// The token at an index below [`Tokens::len`].
    #[must_use]
    pub fn get(&self, index: usize) -> Token {
        Token {
            kind: self.kinds[index],
            start: self.starts[index],
            end: self.starts.get(index + 1).copied().unwrap_or(self.len),
        }
    }

    /// Every token, in text order.
    pub fn iter(&self) -> impl Iterator<Item = Token> + '_ {
        (0..self.len()).map(|index| self.get(index))
    }

    fn push(&mut self, kind: Kind, start: usize) {
        self.kinds.push(kind);
        self.starts.push(start as u32);
    }
}

struct Reader<'a> {
    text: &'a str,
    at: usize,
    tokens: Tokens,
    /// Up to here a backslash in a tag's value is read as text.
    plain_to: usize,
}

/// Marks that are letters; they may be glued to a move.
const WORD_MARKS: [&str; 7] = ["e.p.", "ep", "mate", "ch", "TN", "N", "D"];

/// Verdicts that begin with a plus sign and are no check sign.
const PLUS_MARKS: [&str; 10] = [
    "+-",
    "+/-",
    "+=",
    "+/=",
    "+–",
    "+/–",
    "+\u{2212}",
    "+/\u{2212}",
    "+−",
    "+~",
];

/// Game termination markers, the longest first (standard, 8.2.6), with the dashes that real files have.
const RESULTS: [&str; 11] = [
    "1/2-1/2",
    "1/2–1/2",
    "½-½",
    "½–½",
    "1-0",
    "0-1",
    "1–0",
    "0–1",
    "1/2",
    "½",
    "*",
];

fn is_space(c: char) -> bool {
    c.is_whitespace() || matches!(c, '\u{feff}' | '\u{200b}' | '\u{1a}')
}

fn is_dash(c: char) -> bool {
    matches!(c, '-' | '‐' | '‑' | '–' | '−')
}

fn is_mark(c: char) -> bool {
    !c.is_alphanumeric()
        && !is_space(c)
        && !c.is_control()
        && !matches!(
            c,
            '{' | '}'
                | '('
                | ')'
                | '['
                | ']'
                | ';'
                | '$'
                | '*'
                | '!'
                | '?'
                | '.'
                | '…'
                | '½'
                | '‼'
                | '⁇'
                | '⁈'
                | '⁉'
        )
}

fn is_dot(c: char) -> bool {
    matches!(c, '.' | '…')
}

fn run(text: &str, inside: impl Fn(char) -> bool) -> usize {
    text.find(|c| !inside(c)).unwrap_or(text.len())
}

/// Length of the castling move at the start of a text: letters O or zeros.
fn castling(text: &str) -> Option<usize> {
    let mut chars = text.char_indices();
    let (_, letter) = chars.next()?;
    if !matches!(letter, 'O' | 'o' | '0') {
        return None;
    }
    let mut length = None;
    for _ in 0..2 {
        let Some((_, dash)) = chars.next() else { break };
        let Some((at, again)) = chars.next() else {
            break;
        };
        if !is_dash(dash) || again != letter {
            break;
        }
        length = Some(at + 1);
    }
    length
}

/// Length of the ordinary move at the start of a text, promotion included, check signs not.
fn ordinary_move(text: &str) -> Option<usize> {
    let bytes = text.as_bytes();
    let piece = usize::from(matches!(
        bytes.first()?,
        b'K' | b'Q' | b'R' | b'B' | b'N' | b'P' | b'k' | b'q' | b'r' | b'n' | b'p'
    ));
    // "B4" is a pawn move: a bishop's move needs a square after its letter.
    let found = squares(&text[piece..], piece == 1)
        .map(|n| n + piece)
        .or_else(|| (piece == 1).then(|| squares(text, false)).flatten())?;
    let pawn = piece == 0 || matches!(bytes[0], b'P' | b'p') || found == 2;
    let last_rank = matches!(bytes[found - 1], b'1' | b'8');
    if pawn && last_rank {
        let rest = &bytes[found..];
        let role = |at: usize| {
            rest.get(at)
                .is_some_and(|b| matches!(b, b'Q' | b'R' | b'B' | b'N' | b'q' | b'r' | b'b' | b'n'))
        };
        let is = |at: usize, byte: u8| rest.get(at) == Some(&byte);
        if (is(0, b'=') || is(0, b'/')) && role(1) {
            return Some(found + 2);
        }
        if is(0, b'(') && role(1) && is(2, b')') {
            return Some(found + 3);
        }
        if role(0) && !rest.get(1).is_some_and(u8::is_ascii_alphanumeric) {
            return Some(found + 1);
        }
    }
    Some(found)
}

/// Length of `e4`, `xe4`, `de4`, `dxe4`, `d3-e4` and, of a piece, `1xe4` and the like.
fn squares(text: &str, of_piece: bool) -> Option<usize> {
    let file = |t: &str| {
        t.bytes()
            .next()
            .is_some_and(|b| matches!(b, b'a'..=b'h' | b'A'..=b'H'))
    };
    let rank = |t: &str| t.bytes().next().is_some_and(|b| matches!(b, b'1'..=b'8'));
    let target = |from: usize| -> Option<usize> {
        let rest = text.get(from..)?;
        let separator = rest
            .chars()
            .next()
            .filter(|c| is_dash(*c) || matches!(c, 'x' | 'X' | ':' | '×'))
            .map_or(0, char::len_utf8);
        let rest = &rest[separator..];
        (file(rest) && rank(rest.get(1..)?)).then_some(from + separator + 2)
    };
    let has_file = file(text);
    if has_file
        && text.get(1..).is_some_and(rank)
        && let Some(n) = target(2)
    {
        return Some(n);
    }
    if (has_file || (of_piece && rank(text)))
        && let Some(n) = target(1)
    {
        return Some(n);
    }
    target(0)
}

/// How much of the signs after a move belongs to it: check and mate signs, not verdicts.
fn check_signs(text: &str) -> usize {
    let signs = &text[..run(text, is_mark)];
    if signs.is_empty() || PLUS_MARKS.contains(&signs) {
        return 0;
    }
    if signs.chars().all(|c| matches!(c, '+' | '#' | '†' | '‡')) {
        return signs.len();
    }
    match signs.chars().next() {
        Some(c @ ('+' | '#' | '†' | '‡')) => c.len_utf8(),
        _ => 0,
    }
}

fn word_mark(text: &str) -> Option<usize> {
    WORD_MARKS
        .iter()
        .find(|mark| {
            text.starts_with(**mark) && !text[mark.len()..].starts_with(char::is_alphanumeric)
        })
        .map(|mark| mark.len())
}

impl<'a> Reader<'a> {
    fn rest(&self) -> &'a str {
        &self.text[self.at..]
    }

    fn take(&mut self, kind: Kind, length: usize) {
        self.tokens.push(kind, self.at);
        self.at += length;
    }

    fn run(&mut self) {
        while let Some(c) = self.rest().chars().next() {
            if self.at > u32::MAX as usize - 8 {
                break;
            }
            self.one(c);
        }
    }

    fn one(&mut self, c: char) {
        let rest = self.rest();
        match c {
            _ if is_space(c) => {
                let length = run(rest, is_space);
                let kind = if rest[..length].contains(['\n', '\r']) {
                    Kind::NewLine
                } else {
                    Kind::Space
                };
                self.take(kind, length);
            }
            '{' => match rest.find('}') {
                Some(end) => self.take(Kind::Comment, end + 1),
                None => self.take(Kind::UnclosedComment, rest.len()),
            },
            ';' => self.take(Kind::LineComment, line(rest)),
            '%' if self.at == 0 || self.text[..self.at].ends_with(['\n', '\r']) => {
                self.take(Kind::Escape, line(rest));
            }
            '(' => self.take(Kind::Open, 1),
            ')' => self.take(Kind::Close, 1),
            '[' => self.tag(),
            '$' => {
                let digits = run(&rest[1..], |c| c.is_ascii_digit());
                let kind = if (1..=9).contains(&digits) {
                    Kind::Nag
                } else {
                    Kind::Unknown
                };
                self.take(kind, 1 + digits);
            }
            '!' | '?' => {
                let length = run(rest, |c| matches!(c, '!' | '?'));
                let kind = if length <= 2 {
                    Kind::Suffix
                } else {
                    Kind::Mark
                };
                self.take(kind, length);
            }
            '‼' | '⁇' | '⁈' | '⁉' => self.take(Kind::Suffix, c.len_utf8()),
            _ if is_dot(c) => self.take(Kind::Number, run(rest, is_dot)),
            _ if c.is_alphanumeric() || c == '*' => self.word(c),
            _ if is_mark(c) => {
                let length = run(rest, is_mark);
                let kind = if &rest[..length] == "--" {
                    Kind::Null
                } else {
                    Kind::Mark
                };
                self.take(kind, length);
            }
            _ => self.take(Kind::Unknown, c.len_utf8()),
        }
    }

    fn word(&mut self, c: char) {
        let rest = self.rest();
        if let Some(result) = RESULTS.iter().find(|r| {
            rest.starts_with(**r)
                && (c == '*' || !rest[r.len()..].starts_with(char::is_alphanumeric))
        }) {
            return self.take(Kind::Result, result.len());
        }
        if let Some(length) = castling(rest).or_else(|| ordinary_move(rest)) {
            let whole = length + check_signs(&rest[length..]);
            let after = &rest[whole..];
            if !after.starts_with(char::is_alphanumeric) || word_mark(after).is_some() {
                return self.take(Kind::San, whole);
            }
        } else if c.is_ascii_digit() {
            let digits = run(rest, |c| c.is_ascii_digit());
            return self.take(Kind::Number, digits + run(&rest[digits..], is_dot));
        } else if (rest.starts_with("Z0") || rest.starts_with("z0"))
            && !rest[2..].starts_with(char::is_alphanumeric)
        {
            return self.take(Kind::Null, 2);
        } else if let Some(length) = word_mark(rest) {
            return self.take(Kind::Mark, length);
        }
        self.take(
            Kind::Unknown,
            run(rest, char::is_alphanumeric).max(c.len_utf8()),
        );
    }

    fn tag(&mut self) {
        let rest = self.rest();
        let inner = &rest[1..];
        let space = run(inner, char::is_whitespace);
        let name = run(&inner[space..], |c| {
            c.is_alphanumeric() || matches!(c, '_' | '+' | '#' | '=' | ':' | '-')
        });
        if name == 0 {
            return self.take(Kind::Unknown, 1);
        }
        let mut at = 1 + space + name;
        at += run(&rest[at..], char::is_whitespace);
        if rest[at..].starts_with('"') {
            let quoted = &rest[at + 1..];
            // A backslash before the closing quote is read as text when the tag would else not end.
            // That is found out once a line, so that a long line of tags is read in one go.
            let escaped = if self.at < self.plain_to {
                None
            } else {
                closing(quoted, true)
            };
            let end = escaped.or_else(|| {
                if self.at >= self.plain_to {
                    self.plain_to = self.at + at + 1 + line(quoted);
                }
                closing(quoted, false)
            });
            match end {
                Some(end) => self.take(Kind::Tag, at + 1 + end),
                None => self.unclosed_tag(rest, at + 1),
            }
        } else {
            let end = run(&rest[at..], |c| !matches!(c, ']' | '\n' | '\r'));
            if rest[at + end..].starts_with(']') {
                self.take(Kind::Tag, at + end + 1);
            } else {
                self.unclosed_tag(rest, at);
            }
        }
    }

    fn unclosed_tag(&mut self, rest: &str, at: usize) {
        let length = at + line(&rest[at..]);
        self.take(Kind::UnclosedTag, length);
    }
}

/// Offset past the `]` that closes a tag pair whose value has just been opened: a quote, white space,
/// `]`; `None` when the line ends before.
fn closing(quoted: &str, escapes: bool) -> Option<usize> {
    let bytes = quoted.as_bytes();
    let mut at = 0;
    while at < bytes.len() {
        match bytes[at] {
            b'\\' if escapes && matches!(bytes.get(at + 1), Some(b'"' | b'\\')) => at += 1,
            b'\n' | b'\r' => return None,
            b'"' => {
                let after = &quoted[at + 1..];
                let space = run(after, |c| c.is_whitespace() && !matches!(c, '\n' | '\r'));
                if after[space..].starts_with(']') {
                    return Some(at + 1 + space + 1);
                }
            }
            _ => {}
        }
        at += 1;
    }
    None
}

fn line(text: &str) -> usize {
    text.find(['\n', '\r']).unwrap_or(text.len())
}

/// Name and value of a tag pair token; the value without its escapes (standard, 7: strings).
#[must_use]
pub fn tag_pair(token: &str) -> (String, String) {
    let inner = token
        .strip_prefix('[')
        .map_or(token, |t| t.strip_suffix(']').unwrap_or(t))
        .trim();
    let name = run(inner, |c| !c.is_whitespace() && c != '"');
    let value = inner[name..].trim();
    let value = value
        .strip_prefix('"')
        .map_or(value, |v| v.strip_suffix('"').unwrap_or(v));
    let mut plain = String::with_capacity(value.len());
    let mut chars = value.chars().peekable();
    while let Some(c) = chars.next() {
        match chars.peek() {
            Some(next @ ('"' | '\\')) if c == '\\' => {
                plain.push(*next);
                chars.next();
            }
            _ => plain.push(c),
        }
    }
    (inner[..name].to_owned(), plain)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn tokens(text: &str) -> Vec<(Kind, &str)> {
        Tokens::read(text)
            .iter()
            .filter(|t| !matches!(t.kind, Kind::Space | Kind::NewLine))
            .map(|t| (t.kind, &text[t.start as usize..t.end as usize]))
            .collect()
    }

    #[test]
    fn the_tokens_cover_the_text() {
        let text = "\u{feff}[A \"b\"]\r\n\r\n1.e4 {x} (1.d4;y\n) $999 ∞ qqq } ]\u{0} *";
        let read = Tokens::read(text);
        let joined: String = read
            .iter()
            .map(|t| &text[t.start as usize..t.end as usize])
            .collect();
        assert_eq!(joined, text);
    }

    #[test]
    fn glued_numbers_marks_and_signs_come_apart() {
        assert_eq!(
            tokens("1.e4!?1...e5+-2.Nf3+!"),
            [
                (Kind::Number, "1."),
                (Kind::San, "e4"),
                (Kind::Suffix, "!?"),
                (Kind::Number, "1..."),
                (Kind::San, "e5"),
                (Kind::Mark, "+-"),
                (Kind::Number, "2."),
                (Kind::San, "Nf3+"),
                (Kind::Suffix, "!"),
            ]
        );
    }

    #[test]
    fn moves_as_real_files_spell_them_are_moves() {
        for text in [
            "O-O", "0-0", "o-o-o", "0-0-0+", "e8=Q", "e8Q", "e8=q#", "exd8(N)", "Nf3", "nf3",
            "NF3", "Ng1-f3", "e2e4", "R1xe4", "Qh4xe1", "bxc4", "b:c4", "B4", "Pe4", "E4", "Bb5++",
            "Rd8#",
        ] {
            assert_eq!(tokens(text), [(Kind::San, text)]);
        }
    }

    #[test]
    fn en_passant_and_check_words_are_marks() {
        assert_eq!(tokens("exd6ep"), [(Kind::San, "exd6"), (Kind::Mark, "ep")]);
        assert_eq!(tokens("1e4"), [(Kind::Number, "1"), (Kind::San, "e4")]);
        assert_eq!(
            tokens("exd6 e.p. N"),
            [(Kind::San, "exd6"), (Kind::Mark, "e.p."), (Kind::Mark, "N")]
        );
    }

    #[test]
    fn results_are_not_castling() {
        assert_eq!(
            tokens("1-0 0-1 1/2-1/2 * 0-0 ½-½"),
            [
                (Kind::Result, "1-0"),
                (Kind::Result, "0-1"),
                (Kind::Result, "1/2-1/2"),
                (Kind::Result, "*"),
                (Kind::San, "0-0"),
                (Kind::Result, "½-½"),
            ]
        );
    }

    #[test]
    fn an_escape_counts_only_in_the_first_column() {
        assert_eq!(
            tokens("%a b\r\n %c"),
            [(Kind::Escape, "%a b"), (Kind::Mark, "%"), (Kind::Mark, "c")]
                .map(|(k, t)| if t == "c" { (Kind::Unknown, t) } else { (k, t) })
        );
    }

    #[test]
    fn braces_do_not_nest_and_hide_semicolons() {
        assert_eq!(
            tokens("{a {b ; c} e4 ;d {e}\ne5"),
            [
                (Kind::Comment, "{a {b ; c}"),
                (Kind::San, "e4"),
                (Kind::LineComment, ";d {e}"),
                (Kind::San, "e5"),
            ]
        );
    }

    #[test]
    fn tag_values_keep_quotes_and_backslashes() {
        let read = |t: &str| {
            let all = tokens(t);
            assert_eq!(all.len(), 1, "{all:?}");
            assert_eq!(all[0].0, Kind::Tag);
            tag_pair(t)
        };
        assert_eq!(read(r#"[A "b \"c\" \\"]"#).1, r#"b "c" \"#);
        assert_eq!(read(r#"[A "b "c" d"]"#).1, r#"b "c" d"#);
        assert_eq!(read(r#"[A "c:\"]"#).1, r"c:\");
        assert_eq!(read(r#"[ A  "b" ]"#), ("A".into(), "b".into()));
        assert_eq!(
            tokens("[A \"b\ne4"),
            [(Kind::UnclosedTag, "[A \"b"), (Kind::San, "e4")]
        );
    }

    #[test]
    fn long_lines_of_tags_are_read_in_one_go() {
        for tag in [r#"[A "b"]"#, r#"[A "c:"]"#, "[A b]", r#"[A "b"#] {
            let text = tag.repeat(100_000);
            assert!(Tokens::read(&text).len() <= 100_001);
        }
    }

    #[test]
    fn several_tags_on_a_line_are_several_tokens() {
        assert_eq!(
            tokens("[A \"b\"][C \"d\"]1. e4"),
            [
                (Kind::Tag, "[A \"b\"]"),
                (Kind::Tag, "[C \"d\"]"),
                (Kind::Number, "1."),
                (Kind::San, "e4"),
            ]
        );
    }
}
