//! One self-contained page: its own styles and drawings, nothing fetched, nothing that runs.
//!
//! A `Page` is the frame every answer is set in; each answer adds sections from the same words
//! and pictures that the terminal uses. Every picture has its numbers in a table below it. Texts
//! from a profile pass only through maud and the drawing's own escaping, so they stay text.

mod advise;
mod apart;
mod compare;
mod palette;
mod plan;
mod progress;
mod roster;
mod trial;
mod usage;

pub use advise::advise;
pub use apart::apart;
pub use compare::compare;
pub use plan::{no_plan, plan};
pub use progress::progress;
pub use roster::roster;
pub use trial::trial;
pub use usage::usage;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::athlete::profile::Profile;

use super::charts::{Ink, MapPitch, Picture, ShapeMap, Table, inks};

/// Layout and type; colours are in [`palette`].
const STYLE: &str = include_str!("style.css");

/// What every page says about itself.
const FOOT: &str = "Made by arsenalfit, on this machine, from what the profile says. Runs are a model\u{2019}s: trust the order of \
                    the pitches more than the size of a number. Pain stops the work; a physician, physical therapist \
                    or athletic trainer decides.";

/// A page being set.
#[derive(Debug)]
struct Page {
    title: String,
    body: Vec<Markup>,
}

impl Page {
    /// A page with a line that says who, a headline and a line below it.
    fn new(who: &str, headline: &str, below: &str) -> Self {
        let head = html! {
            header {
                p.who { bdi { (who) } }
                h1 { (headline) }
                p.below { (below) }
            }
        };
        Self { title: format!("{headline} {who}"), body: vec![head] }
    }

    /// A heading with sentences below it.
    fn list(&mut self, heading: &str, sentences: impl IntoIterator<Item = String>) {
        let sentences: Vec<String> = sentences.into_iter().collect();
        if sentences.is_empty() {
            return;
        }
        self.body.push(html! {
            section.words {
                h2 { (heading) }
                ul { @for sentence in sentences { li dir="auto" { (capital(&sentence)) } } }
            }
        });
    }

    /// Pictures beside each other where there is room. `key` makes their ids unique.
    fn pictures(&mut self, heading: &str, key: &str, pictures: impl IntoIterator<Item = Picture>) {
        let figures =
            pictures.into_iter().enumerate().map(|(index, picture)| figure(&format!("{key}{index}"), &picture));
        self.body.push(html! {
            section {
                h2 { (heading) }
                div.figures { @for figure in figures { (figure) } }
            }
        });
    }

    /// A picture with sentences beside it where there is room.
    fn beside(
        &mut self,
        heading: &str,
        (key, picture): (&str, &Picture),
        (words, sentences): (&str, impl Iterator<Item = String>),
    ) {
        self.body.push(html! {
            div.figures {
                section { h2 { (heading) } (figure(key, picture)) }
                section.words {
                    h2 { (words) }
                    ul { @for sentence in sentences { li dir="auto" { (capital(&sentence)) } } }
                }
            }
        });
    }

    /// A table in full view.
    fn table(&mut self, heading: &str, rows: &Table) {
        self.body.push(html! { section { h2 { (heading) } (table(heading, rows)) } });
    }

    /// Short facts in a row: a name and a value each.
    fn facts(&mut self, facts: impl IntoIterator<Item = (String, String)>) {
        self.body.push(html! {
            dl.facts { @for (name, value) in facts { div { dt { (name) } dd { (value) } } } }
        });
    }

    /// What was taken for granted.
    fn assumptions(&mut self, profile: &Profile) {
        self.list("Assumed, because the profile does not say", profile.assumptions.iter().cloned());
    }

    fn finish(self) -> String {
        html! {
            (DOCTYPE)
            html lang="en" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    meta name="generator" content="arsenalfit";
                    title { (self.title) }
                    style { (PreEscaped(palette::style())) (PreEscaped(STYLE)) }
                }
                body {
                    main { @for part in self.body { (part) } }
                    footer { p { (FOOT) } }
                }
            }
        }
        .into_string()
    }
}

/// A picture with its legend and, folded away, its numbers.
fn figure(key: &str, picture: &Picture) -> Markup {
    html! {
        figure {
            figcaption { (picture.title) }
            (PreEscaped(picture.drawing.finish(key, &picture.title, &picture.description)))
            p.legend { (picture.legend) }
            details {
                summary { "The numbers" }
                (table(&picture.title, &picture.table))
            }
        }
    }
}

fn table(name: &str, table: &Table) -> Markup {
    html! {
        div.scroll role="region" aria-label=(format!("Numbers: {name}")) tabindex="0" {
            table class=(format!("words-{}", table.words)) {
                thead { tr { @for name in &table.header { th scope="col" { (name) } } } }
                tbody {
                    @for row in &table.rows {
                        tr {
                            @for (column, cell) in row.iter().enumerate() {
                                @if column == 0 { th scope="row" { bdi { (cell) } } } @else { td { (cell) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A sentence with a capital letter and a full stop, as a page sets it.
fn capital(sentence: &str) -> String {
    let mut letters = sentence.chars();
    let first = letters.next().map(|c| c.to_uppercase().to_string()).unwrap_or_default();
    let stop = if sentence.ends_with(['.', '?', '!']) { "" } else { "." };
    format!("{first}{}{stop}", letters.as_str())
}

/// "throws right, 20 years, college".
fn about(profile: &Profile) -> String {
    let athlete = &profile.athlete;
    let age = athlete.age.map_or("age not given".into(), |age| format!("{age} years"));
    format!("throws {}, {age}, {}", athlete.throws, athlete.level.name())
}

/// The map of today's pitches alone.
fn todays_map<'p>(profile: &'p Profile, title: String, inks: &[Ink]) -> ShapeMap<'p> {
    let pitches = profile.pitches.iter().zip(inks);
    ShapeMap {
        title,
        hand: profile.athlete.throws,
        pitches: pitches
            .map(|(pitch, &ink)| MapPitch { name: &pitch.name, ink, shape: pitch.shape, spread: pitch.spread })
            .collect(),
        target: None,
        throws: Vec::new(),
    }
}

/// Marks of today's pitches.
fn todays_inks(profile: &Profile) -> Vec<Ink> {
    inks(profile.pitches.iter().map(|pitch| pitch.family))
}

fn todays_names(profile: &Profile) -> Vec<&str> {
    profile.pitches.iter().map(|pitch| pitch.name.as_str()).collect()
}
