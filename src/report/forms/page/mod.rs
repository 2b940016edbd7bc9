//! An answer as one self-contained page: its own styles and drawings, nothing fetched, nothing that
//! runs. Every picture has its numbers in a table below it. Texts pass only through maud and the
//! drawing's own escaping, so they stay texts.

mod palette;
mod parts;

use maud::{DOCTYPE, PreEscaped, html};

use super::super::content::{Answer, BEFORE, Section, Text};

use parts::{flowing, parts, section};

/// Layout and type; colours are in [`palette`].
const STYLE: &str = include_str!("style.css");

/// What every page says about itself.
const FOOT: &str = "Made by arsenalfit, on this machine, from what the profile says. Runs are a model\u{2019}s: trust the order of \
                    the pitches more than the size of a number. Pain stops the work; a physician, physical therapist \
                    or athletic trainer decides.";

impl Answer {
    /// The answer as a page.
    pub fn page(&self) -> String {
        let headline = self.headline.as_sentence();
        html! {
            (DOCTYPE)
            html lang="en" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="generator" content="arsenalfit";
                    meta name="color-scheme" content="light dark";
                    title { (headline) " " (self.who) }
                    style { (PreEscaped(palette::style())) (PreEscaped(STYLE)) }
                }
                body {
                    main {
                        header {
                            @if !self.who.is_empty() { p.who { (flowing(&self.who)) } }
                            h1 { (flowing(&headline)) }
                            @if !self.about.is_empty() { p.below { (flowing(&self.about)) } }
                        }
                        @if !self.before.is_empty() { (section("before", &before_anything(&self.before))) }
                        (parts("lead", &self.lead))
                        @for (place, group) in groups(&self.sections).into_iter().enumerate() {
                            @if let [one] = group { (section(&format!("s{place}"), one)) } @else {
                                div.figures { @for (n, one) in group.iter().enumerate() { (section(&format!("s{place}-{n}"), one)) } }
                            }
                        }
                    }
                    footer { p { (FOOT) } }
                }
            }
        }
        .into_string()
    }
}

fn before_anything(bars: &[Text]) -> Section {
    Section::new(BEFORE).bullets(bars.iter().cloned())
}

/// Sections that stand beside each other.
fn groups(sections: &[Section]) -> Vec<&[Section]> {
    sections.chunk_by(|_, next| next.is_beside).collect()
}
