//! A program that takes part: its command and its options.

use super::failure::MatchError;

/// A program that takes part.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Contestant {
    /// The command as it was given.
    pub command: String,
    /// The program and its arguments.
    pub words: Vec<String>,
    /// Options with their values, set in this order.
    pub options: Vec<(String, String)>,
}

impl Contestant {
    /// Takes a command line as a shell would cut it, and options written `NAME=VALUE`.
    ///
    /// # Errors
    /// [`MatchError::Setting`] when a quotation mark is not closed, nothing is given, or an option has no `=`.
    pub fn new(command: &str, options: &[String]) -> Result<Contestant, MatchError> {
        let words = split(command).ok_or_else(|| {
            MatchError::Setting(format!(
                "'{command}' has a quotation mark that is not closed"
            ))
        })?;
        if words.is_empty() {
            return Err(MatchError::Setting("a command is empty".to_owned()));
        }
        let options = options
            .iter()
            .map(|option| match option.split_once('=') {
                Some((name, value)) if !name.trim().is_empty() => {
                    Ok((name.trim().to_owned(), value.trim().to_owned()))
                }
                _ => Err(MatchError::Setting(format!(
                    "the option '{option}' is not written NAME=VALUE"
                ))),
            })
            .collect::<Result<_, _>>()?;
        Ok(Contestant {
            command: command.to_owned(),
            words,
            options,
        })
    }
}

/// Words as a POSIX shell parts them by blanks, quotation marks and backslashes; `None` when a mark is not closed.
fn split(text: &str) -> Option<Vec<String>> {
    let mut words = Vec::new();
    let mut word: Option<String> = None;
    let mut letters = text.chars();
    while let Some(letter) = letters.next() {
        match letter {
            '\'' => {
                let word = word.get_or_insert_default();
                loop {
                    match letters.next()? {
                        '\'' => break,
                        other => word.push(other),
                    }
                }
            }
            '"' => {
                let word = word.get_or_insert_default();
                loop {
                    match letters.next()? {
                        '"' => break,
                        '\\' => match letters.next()? {
                            escaped @ ('"' | '\\' | '$' | '`') => word.push(escaped),
                            other => word.extend(['\\', other]),
                        },
                        other => word.push(other),
                    }
                }
            }
            '\\' => word.get_or_insert_default().push(letters.next()?),
            blank if blank.is_whitespace() => words.extend(word.take()),
            other => word.get_or_insert_default().push(other),
        }
    }
    words.extend(word);
    Some(words)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_command_is_cut_as_by_a_shell() {
        let cut = |text| split(text).unwrap();
        assert_eq!(cut("a  b\tc"), ["a", "b", "c"]);
        assert_eq!(
            cut(r#"'a b' "c \" d" e\ f ''"#),
            ["a b", "c \" d", "e f", ""]
        );
        assert_eq!(split("'a"), None);
        assert_eq!(split("a\\"), None);
    }

    #[test]
    fn an_option_is_a_name_and_a_value() {
        let given = Contestant::new("a", &["Clear Hash=".to_owned(), "x=y=z".to_owned()]).unwrap();
        let pair = |name: &str, value: &str| (name.to_owned(), value.to_owned());
        assert_eq!(given.options, [pair("Clear Hash", ""), pair("x", "y=z")]);
        assert!(Contestant::new("a", &["x".to_owned()]).is_err());
        assert!(Contestant::new(" ", &[]).is_err());
    }
}
