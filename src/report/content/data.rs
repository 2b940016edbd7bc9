//! An answer for machines, before it is written: values under stable keys, in a fixed order.

use serde::ser::{Serialize, SerializeMap, SerializeSeq, Serializer};

use crate::base::Range;
use crate::base::stats::Estimate;

use super::super::number::rounded;
use super::text::Text;

/// A value for machines. Numbers are rounded to what they are good for when they are made.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Data {
    Null,
    Flag(bool),
    Number(f64),
    Whole(u64),
    Words(String),
    List(Vec<Data>),
    Object(Vec<(&'static str, Data)>),
}

/// A number with so many decimals at most.
pub(crate) fn number(value: f64, places: usize) -> Data {
    Data::Number(rounded(value, places))
}

/// The same, or null.
pub(crate) fn maybe(known: Option<f64>, places: usize) -> Data {
    known.map_or(Data::Null, |value| number(value, places))
}

/// A list of what can be told of each.
pub(crate) fn list(items: impl IntoIterator<Item = impl Into<Data>>) -> Data {
    Data::List(items.into_iter().map(Into::into).collect())
}

impl Data {
    /// An object with one more key.
    pub(crate) fn with(self, key: &'static str, value: Self) -> Self {
        match self {
            Self::Object(mut entries) => {
                entries.push((key, value));
                Self::Object(entries)
            }
            other => other,
        }
    }
}

impl From<bool> for Data {
    fn from(flag: bool) -> Self {
        Self::Flag(flag)
    }
}

impl From<u32> for Data {
    fn from(count: u32) -> Self {
        Self::Whole(count.into())
    }
}

impl From<usize> for Data {
    fn from(count: usize) -> Self {
        Self::Whole(count as u64)
    }
}

impl From<&str> for Data {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

impl From<String> for Data {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl From<&String> for Data {
    fn from(words: &String) -> Self {
        Self::Words(words.clone())
    }
}

impl From<Text> for Data {
    fn from(text: Text) -> Self {
        Self::Words(text.to_string())
    }
}

impl From<&Text> for Data {
    fn from(text: &Text) -> Self {
        Self::Words(text.to_string())
    }
}

impl From<Estimate> for Data {
    fn from(Estimate { value, low, high }: Estimate) -> Self {
        Self::Object(vec![("value", number(value, 4)), ("low", number(low, 4)), ("high", number(high, 4))])
    }
}

impl From<Range> for Data {
    fn from(Range { low, high }: Range) -> Self {
        Self::Object(vec![("low", number(low, 1)), ("high", number(high, 1))])
    }
}

impl<T: Into<Self>> From<Option<T>> for Data {
    fn from(known: Option<T>) -> Self {
        known.map_or(Self::Null, Into::into)
    }
}

impl Serialize for Data {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Null => serializer.serialize_unit(),
            Self::Flag(flag) => serializer.serialize_bool(*flag),
            Self::Number(number) => serializer.serialize_f64(*number),
            Self::Whole(count) => serializer.serialize_u64(*count),
            Self::Words(words) => serializer.serialize_str(words),
            Self::List(items) => {
                let mut list = serializer.serialize_seq(Some(items.len()))?;
                items.iter().try_for_each(|item| list.serialize_element(item))?;
                list.end()
            }
            Self::Object(entries) => {
                let mut object = serializer.serialize_map(Some(entries.len()))?;
                entries.iter().try_for_each(|(key, value)| object.serialize_entry(key, value))?;
                object.end()
            }
        }
    }
}

/// An object from keys and values, in this order.
macro_rules! object {
    ($($key:literal: $value:expr),* $(,)?) => {
        $crate::report::content::data::Data::Object(vec![$(($key, $crate::report::content::data::Data::from($value))),*])
    };
}

pub(crate) use object;
