//! What an answer says, before it takes a form.
//!
//! An [`Answer`] is a headline and sections of sentences, tables, facts, pictures and next steps. It
//! is built once, in `answers/`, and set as text, as a page, as Markdown or for machines; no form
//! adds or rewords anything.

pub(crate) mod amount;
pub(crate) mod command;
mod answer;
pub(crate) mod data;
mod picture;
pub(crate) mod table;
pub(crate) mod text;

pub(crate) use amount::Unit;
pub use answer::Answer;
pub(crate) use answer::{BEFORE, Machine, Part, Section, Step};
pub(crate) use command::Command;
pub(crate) use data::object;
pub(crate) use picture::{InText, Picture};
pub(crate) use table::{Column, Table, columns};
pub(crate) use text::{Span, Text, name, row, say, text};
