//! Text for a terminal of a given width. Emphasis is bold only, so that nothing depends on colour;
//! whoever writes the text strips it where it is not wanted.

mod advise;
mod apart;
mod check;
mod compare;
mod dot;
mod plan;
mod progress;
mod sort;
mod roster;
mod trial;
mod usage;

pub use advise::advise;
pub use apart::apart;
pub use check::check;
pub use compare::compare;
pub use dot::{dot, recipe};
pub use plan::{no_plan, plan};
pub use progress::progress;
pub use roster::roster;
pub(super) use roster::{HEADER as ROSTER_HEADER, rows as roster_rows};
pub use sort::{columns, sort};
pub use trial::trial;
pub use usage::usage;

use std::fmt::Write as _;

use anstyle::Style;
use comfy_table::{Cell, CellAlignment, ContentArrangement, LineStyle, Table, TableStyle};

use crate::athlete::profile::Profile;

/// Narrowest and widest text set, in columns.
const WIDTHS: (u16, u16) = (60, 120);

/// No frames: one rule under the heading of a table.
const RULED: TableStyle = TableStyle::new().header_separator(LineStyle::none().fill('-').junction('-'));

/// A text being set.
#[derive(Debug)]
pub(super) struct Page {
    width: u16,
    text: String,
}

impl Page {
    fn new(width: u16) -> Self {
        Self { width: width.clamp(WIDTHS.0, WIDTHS.1), text: String::new() }
    }

    /// Who it is about.
    fn title(&mut self, profile: &Profile) {
        let athlete = &profile.athlete;
        let age = athlete.age.map_or(String::from("age not given"), |age| format!("{age} years"));
        let line = format!("{}, throws {}, {age}, {}", athlete.name, athlete.throws, athlete.level.name());
        self.heading_line(&line);
    }

    /// A heading after an empty line.
    fn heading(&mut self, text: &str) {
        self.text.push('\n');
        self.heading_line(text);
    }

    fn heading_line(&mut self, text: &str) {
        let bold = Style::new().bold();
        for line in textwrap::wrap(text, usize::from(self.width)) {
            // Writing to a string cannot fail.
            let _ = writeln!(self.text, "{bold}{line}{bold:#}");
        }
    }

    /// A paragraph.
    fn paragraph(&mut self, text: &str) {
        for line in textwrap::wrap(text, usize::from(self.width)) {
            self.text.push_str(&line);
            self.text.push('\n');
        }
    }

    /// A list of sentences, each on its own dash.
    fn list(&mut self, items: impl IntoIterator<Item = String>) {
        for item in items {
            let options = textwrap::Options::new(usize::from(self.width)).initial_indent("- ").subsequent_indent("  ");
            self.text.push_str(&textwrap::fill(&item, options));
            self.text.push('\n');
        }
    }

    /// A table: the first column to the left, the others to the right.
    fn table(&mut self, header: &[&str], rows: Vec<Vec<String>>) {
        let mut table = Table::new();
        table
            .load_style(RULED)
            .set_content_arrangement(ContentArrangement::Dynamic)
            .set_width(self.width)
            .set_header(header.iter().enumerate().map(|(i, text)| cell(text, i)));
        for column in table.column_iter_mut() {
            column.set_padding((0, 2));
        }
        for row in rows {
            table.add_row(row.iter().enumerate().map(|(i, text)| cell(text, i)));
        }
        for line in table.lines() {
            self.text.push_str(line.trim_end());
            self.text.push('\n');
        }
    }

    /// Text as it is.
    fn verbatim(&mut self, text: &str) {
        self.text.push_str(text);
    }

    /// A command to give next and what it is for. The command stays on one line, however long, to be copied.
    fn next_command(&mut self, command: &str, purpose: &str) {
        self.heading("Next");
        // Writing to a string cannot fail.
        let _ = writeln!(self.text, "- `{command}`");
        let options = textwrap::Options::new(usize::from(self.width)).initial_indent("  ").subsequent_indent("  ");
        self.text.push_str(&textwrap::fill(purpose, options));
        self.text.push('\n');
    }

    /// Sentences under a heading; nothing when there are none.
    fn section(&mut self, heading: &str, sentences: impl IntoIterator<Item = String>) {
        let mut sentences = sentences.into_iter().peekable();
        if sentences.peek().is_some() {
            self.heading(heading);
            self.list(sentences);
        }
    }

    /// What speaks against throwing at all, in health or age.
    fn bars(&mut self, bars: impl IntoIterator<Item = String>) {
        self.section("Before anything else", bars);
    }

    /// What was taken for granted.
    fn assumptions(&mut self, profile: &Profile) {
        self.section("Assumed, because the profile does not say", profile.assumptions.iter().cloned());
    }

    fn finish(self) -> String {
        self.text
    }
}

fn cell(text: &str, column: usize) -> Cell {
    let alignment = if column == 0 { CellAlignment::Left } else { CellAlignment::Right };
    Cell::new(text).set_alignment(alignment)
}
