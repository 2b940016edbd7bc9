//! Sentences made of typed spans: words, names from a file, amounts, days, commands.
//!
//! A form of output decides how each kind of span is set; what it says is the same everywhere.

use std::fmt;

use crate::ball::Family;
use crate::base::geometry::Clock;

use super::amount::{Amount, Unit};
use super::command::Command;

/// A piece of a sentence.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Span {
    /// Words of this program.
    Words(String),
    /// Text of somebody else's, on one line.
    Name(String),
    /// What must not be broken over two lines, such as a day.
    Unbroken(String),
    /// A number with its unit.
    Amount(Amount),
    /// A command to give.
    Command(Command),
}

/// A sentence, a heading or a cell.
#[derive(Debug, Clone, Default, PartialEq)]
pub(crate) struct Text(Vec<Span>);

impl Text {
    /// The same with more at its end.
    #[must_use]
    pub(crate) fn and(mut self, more: impl Into<Self>) -> Self {
        self.0.extend(more.into().0);
        self
    }

    /// The pieces in order.
    pub(crate) fn spans(&self) -> &[Span] {
        &self.0
    }

    /// Whether it says nothing.
    pub(crate) fn is_empty(&self) -> bool {
        self.0.iter().all(|span| matches!(span, Span::Words(words) if words.is_empty()))
    }

    /// As a cell of a column whose head names `unit`.
    pub(crate) fn in_column(&self, unit: Unit) -> Self {
        let bare = |span: &Span| match span {
            Span::Amount(amount) if amount.unit() == unit && unit != Unit::None => Span::Amount(amount.bare()),
            other => other.clone(),
        };
        Self(self.0.iter().map(bare).collect())
    }

    /// As a sentence of its own: a capital letter at its head and a stop at its end.
    pub(crate) fn as_sentence(&self) -> Self {
        let mut spans = self.0.clone();
        if let Some(Span::Words(words)) = spans.first_mut() {
            *words = capital(words);
        }
        let ends = self.to_string().ends_with(['.', '?', '!', ':']);
        Self(spans).and(if ends || self.is_empty() { "" } else { "." })
    }

    /// Several in one, with `between` between any two.
    pub(crate) fn joined(texts: impl IntoIterator<Item = Self>, between: &str) -> Self {
        let join = |all: Self, one: Self| all.and(between).and(one);
        texts.into_iter().reduce(join).unwrap_or_default()
    }
}

/// `sentence` with each hole `{}` filled in turn.
pub(crate) fn filled(sentence: &str, pieces: impl IntoIterator<Item = Text>) -> Text {
    let mut words = sentence.split("{}");
    let first = Text::from(words.next().unwrap_or_default());
    words.zip(pieces).fold(first, |said, (after, piece)| said.and(piece).and(after))
}

/// How many holes a sentence has.
pub(crate) const fn holes(sentence: &str) -> usize {
    let (bytes, mut place, mut count) = (sentence.as_bytes(), 1, 0);
    while place < bytes.len() {
        if bytes[place - 1] == b'{' && bytes[place] == b'}' {
            count += 1;
        }
        place += 1;
    }
    count
}

fn capital(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    first + letters.as_str()
}

/// Text of somebody else's, as one printable line.
pub(crate) fn name(text: &str) -> Text {
    Text(vec![Span::Name(text.chars().map(|c| if c.is_control() { ' ' } else { c }).collect())])
}

impl fmt::Display for Text {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|span| write!(f, "{span}"))
    }
}

impl fmt::Display for Span {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Words(text) | Self::Name(text) | Self::Unbroken(text) => f.write_str(text),
            Self::Amount(amount) => {
                f.write_str(&amount.figures())?;
                let unit = amount.unit().name();
                if unit.is_empty() || unit == "%" { Ok(()) } else { write!(f, " {unit}") }
            }
            Self::Command(command) => write!(f, "`{command}`"),
        }
    }
}

impl From<&str> for Text {
    fn from(words: &str) -> Self {
        words.to_owned().into()
    }
}

impl From<String> for Text {
    fn from(words: String) -> Self {
        Self(vec![Span::Words(words)])
    }
}

impl From<Amount> for Text {
    fn from(amount: Amount) -> Self {
        Self(vec![Span::Amount(amount)])
    }
}

impl From<Command> for Text {
    fn from(command: Command) -> Self {
        Self(vec![Span::Command(command)])
    }
}

impl From<Family> for Text {
    fn from(family: Family) -> Self {
        family.name().into()
    }
}

impl From<Clock> for Text {
    fn from(clock: Clock) -> Self {
        Self(vec![Span::Unbroken(clock.to_string())])
    }
}

impl From<jiff::civil::Date> for Text {
    fn from(day: jiff::civil::Date) -> Self {
        Self(vec![Span::Unbroken(day.to_string())])
    }
}

impl<T: Into<Self>> From<Option<T>> for Text {
    /// A dash for what is not known.
    fn from(known: Option<T>) -> Self {
        known.map_or_else(|| "-".into(), Into::into)
    }
}

macro_rules! from_counts {
    ($($count:ty),*) => { $(
        impl From<$count> for Text {
            fn from(count: $count) -> Self {
                count.to_string().into()
            }
        }
    )* };
}
from_counts!(u8, u32, usize);

/// A [`Text`] from pieces: words, amounts, names, families, days, counts, commands, other texts.
macro_rules! text {
    ($($piece:expr),* $(,)?) => { $crate::report::content::text::Text::default()$(.and($piece))* };
}

/// A [`Text`] from a sentence with holes `{}` and the pieces that fill them, as many as there are holes.
macro_rules! say {
    ($sentence:literal $(, $piece:expr)+ $(,)?) => {{
        const _: () = assert!(
            $crate::report::content::text::holes($sentence) == [$(stringify!($piece)),+].len(),
            "as many pieces as holes"
        );
        $crate::report::content::text::filled($sentence, [$($crate::report::content::text::Text::from($piece)),+])
    }};
}

/// A row of a table from its cells.
macro_rules! row {
    ($($cell:expr),* $(,)?) => { vec![$($crate::report::content::text::Text::from($cell)),*] };
}

pub(crate) use {row, say, text};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::content::amount::{movement, speed};

    #[test]
    fn a_sentence_says_units_and_a_cell_under_a_unit_does_not() {
        let said = say!("the {} at {}, {}", Family::Sweeper, speed(79.5), movement(-2.0));
        assert_eq!(said.to_string(), "the sweeper at 79.5 mph, -2.0 in");
        assert_eq!(said.as_sentence().to_string(), "The sweeper at 79.5 mph, -2.0 in.");
        assert_eq!(Text::from(speed(79.5)).in_column(Unit::Mph).to_string(), "79.5");
        assert_eq!(Text::from(speed(79.5)).in_column(Unit::None).to_string(), "79.5 mph");
    }
}
