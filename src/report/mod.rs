//! Answers in words, tables and pictures: the only place that rounds a number or chooses a word.
//!
//! [`answers`] builds an [`Answer`] from the values of the core, once; `words` says what single values
//! mean; `charts` draws. `forms` sets an answer as text, as a self-contained page, as Markdown or as
//! JSON. Nothing here computes a result, reads a file or writes one.

pub mod answers;
mod charts;
mod columns;
mod content;
mod forms;
mod number;
mod schema;
mod svg;
mod words;

pub use columns::column_map;
pub use content::Answer;
pub use content::command::command_line;
pub use forms::calendar::calendar;
pub use schema::schema;
