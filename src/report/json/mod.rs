//! The machine form: stable keys, numbers rounded to what they are good for.
//!
//! One file a command, and the forms they share. Forms hold numbers, texts and lists only.

mod advise;
mod apart;
mod check;
mod compare;
mod dot;
mod plan;
mod progress;
mod roster;
mod schema;
mod shared;
mod sort;
mod trial;
mod usage;

pub use advise::advise;
pub use apart::apart;
pub use check::check;
pub use compare::compare;
pub use dot::{dot, dots};
pub use plan::{no_plan, plan};
pub use progress::progress;
pub use roster::roster;
pub use schema::schema;
pub use sort::sort;
pub use trial::trial;
pub use usage::usage;

use serde::Serialize;

/// Any serialisable form as indented JSON.
fn pretty(form: &impl Serialize) -> String {
    // Forms hold numbers, texts and lists only, so that writing them cannot fail.
    let mut text = serde_json::to_string_pretty(form).unwrap_or_default();
    text.push('\n');
    text
}

fn round(value: f64, places: usize) -> f64 {
    format!("{value:.places$}").parse().map_or(value, |rounded: f64| rounded + 0.0)
}
