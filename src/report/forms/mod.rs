//! The forms an answer takes: text, page, Markdown, JSON, and a plan's calendar. A form sets what the
//! content says and adds nothing to it.

pub(crate) mod json;
pub(crate) mod calendar;
mod markdown;
mod page;
mod terminal;
