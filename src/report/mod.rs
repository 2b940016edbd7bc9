//! Results in words, tables and JSON. The only place that rounds a number or chooses a word.
//!
//! `words` turns reasons and cautions into sentences that every form of output shares;
//! [`terminal`] sets them in text of a given width, [`html`] in a self-contained page with pictures
//! (`charts`, drawn with `svg`), [`json`] writes the stable machine form.
//! Nothing here computes a result, reads a file or writes one.

mod ball;
mod calibration;
mod charts;
pub mod follow;
mod format;
pub mod html;
pub mod json;
mod learning;
mod second_look;
pub mod staff;
mod svg;
pub mod terminal;
mod words;

pub use calibration::{coverage, ensemble};
pub use second_look::second_look;
