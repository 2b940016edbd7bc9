//! Commands to give next, written so that a shell takes them as they stand.

use std::fmt;

use crate::files::visible;

/// This program.
const PROGRAM: &str = "arsenalfit";

/// A command line, word by word.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Command(Vec<String>);

impl Command {
    /// `arsenalfit` with these words behind it.
    pub(crate) fn arsenalfit<'w>(words: impl IntoIterator<Item = &'w str>) -> Self {
        Self(std::iter::once(PROGRAM).chain(words).map(str::to_owned).collect())
    }

    /// A word of a command line by itself, such as the name of a command.
    pub(crate) fn word(word: &str) -> Self {
        Self(vec![word.to_owned()])
    }

    /// Several words without the program's name before them.
    pub(crate) fn words<'w>(words: impl IntoIterator<Item = &'w str>) -> Self {
        Self(words.into_iter().map(str::to_owned).collect())
    }

    /// The question it asks: the word behind the program's name; nothing elsewhere.
    pub(crate) fn question(&self) -> &str {
        match self.0.as_slice() {
            [program, question, ..] if program == PROGRAM => question,
            _ => "",
        }
    }
}

impl fmt::Display for Command {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&command_line(&self.0))
    }
}

/// `words` as one line for a shell: each is quoted where it needs to be.
pub fn command_line<W: AsRef<str>>(words: &[W]) -> String {
    words.iter().map(|word| quoted(&visible(word.as_ref()))).collect::<Vec<_>>().join(" ")
}

/// Double quotes, which every shell knows, unless something inside would be read in them.
fn quoted(word: &str) -> String {
    let is_plain = |c: char| c.is_alphanumeric() || "_@%+=:,./-~".contains(c);
    if !word.is_empty() && word.chars().all(is_plain) {
        word.to_owned()
    } else if word.contains(['"', '$', '`', '\\', '!']) {
        format!("'{}'", word.replace('\'', r"'\''"))
    } else {
        format!("\"{word}\"")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_that_a_shell_would_split_or_read_is_quoted() {
        let line = |word: &str| command_line(&["check", word]);
        assert_eq!(line("profiles/a-b_1.toml"), "check profiles/a-b_1.toml");
        assert_eq!(line("my team/a b.toml"), "check \"my team/a b.toml\"");
        assert_eq!(line("a$b's.toml"), r"check 'a$b'\''s.toml'");
        assert_eq!(line("it's.toml"), "check \"it's.toml\"");
        assert_eq!(line("a;b&c.toml"), "check \"a;b&c.toml\"");
        assert_eq!(line(""), "check \"\"");
        assert!(!line("a\u{1b}[31m\nb").contains(char::is_control));
    }
}
