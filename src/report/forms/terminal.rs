//! An answer as text for a terminal of a given width. Emphasis is bold only, so that nothing depends
//! on colour; whoever writes the text strips it where it is not wanted.

use std::fmt::Write as _;

use anstyle::Style;
use comfy_table::{Cell, CellAlignment, ContentArrangement, LineStyle, Table as Grid, TableStyle};

use super::super::content::{Answer, BEFORE, InText, Part, Picture, Step, Table, Text};

/// Narrowest and widest text set, in columns.
const WIDTHS: (u16, u16) = (60, 120);

/// No frames: one rule under the heading of a table.
const RULED: TableStyle = TableStyle::new().header_separator(LineStyle::none().fill('-').junction('-'));

impl Answer {
    /// The answer as text, `width` columns wide.
    pub fn text(&self, width: u16) -> String {
        let mut sheet = Sheet { width: width.clamp(WIDTHS.0, WIDTHS.1), text: String::new() };
        let about = if self.about.is_empty() { self.about.clone() } else { Text::from(", ").and(self.about.clone()) };
        if !self.who.is_empty() {
            sheet.bold(&self.who.clone().and(about));
            sheet.text.push('\n');
        }
        if !self.before.is_empty() {
            sheet.bold(&BEFORE.into());
            self.before.iter().for_each(|bar| sheet.wrapped(bar, "- ", "  "));
            sheet.text.push('\n');
        }
        sheet.bold(&self.headline);
        sheet.parts(&self.lead);
        for section in self.sections.iter().filter(|section| section.parts.iter().any(is_said)) {
            sheet.text.push('\n');
            sheet.bold(&section.heading);
            sheet.parts(&section.parts);
        }
        sheet.text
    }
}

/// Whether a part can be said in letters.
fn is_said(part: &Part) -> bool {
    !matches!(part, Part::Picture(picture) if picture.in_text == InText::Nothing)
}

/// Whether an empty line stands between two parts.
fn stand_apart(one: &Part, next: &Part) -> bool {
    let is_grid = |part: &Part| matches!(part, Part::Table(_) | Part::Picture(_));
    let is_drawn =
        |part: &Part| matches!(part, Part::Picture(picture) if matches!(picture.in_text, InText::Characters(_)));
    match one {
        Part::Bullets(_) => !matches!(next, Part::Bullets(_)),
        Part::Facts(_) => true,
        one => is_drawn(next) || (is_grid(one) && is_grid(next)),
    }
}

/// A text being set.
struct Sheet {
    width: u16,
    text: String,
}

impl Sheet {
    fn parts(&mut self, parts: &[Part]) {
        let said: Vec<&Part> = parts.iter().filter(|part| is_said(part)).collect();
        for (place, part) in said.iter().enumerate() {
            if place > 0 && stand_apart(said[place - 1], part) {
                self.text.push('\n');
            }
            self.part(part);
        }
    }

    fn part(&mut self, part: &Part) {
        match part {
            Part::Paragraph(text) => self.wrapped(text, "", ""),
            Part::Bullets(sentences) => sentences.iter().for_each(|sentence| self.wrapped(sentence, "- ", "  ")),
            Part::Subheading(text) => self.bold(text),
            Part::Table(table) => self.table(table),
            Part::Facts(facts) => self.facts(facts),
            Part::Picture(picture) => self.picture(picture),
            Part::Steps(steps) => steps.iter().for_each(|step| self.step(step)),
            Part::Lines(lines) => lines.iter().for_each(|line| self.line(line)),
        }
    }

    fn line(&mut self, line: &str) {
        self.text.push_str(line);
        self.text.push('\n');
    }

    fn bold(&mut self, text: &Text) {
        let bold = Style::new().bold();
        for line in textwrap::wrap(&text.to_string(), usize::from(self.width)) {
            // Writing to a string cannot fail.
            let _ = writeln!(self.text, "{bold}{line}{bold:#}");
        }
    }

    fn wrapped(&mut self, text: &Text, first: &str, later: &str) {
        let options = textwrap::Options::new(usize::from(self.width)).initial_indent(first).subsequent_indent(later);
        self.line(&textwrap::fill(&text.to_string(), options));
    }

    /// The command stays on one line, however long, to be copied.
    fn step(&mut self, step: &Step) {
        match &step.command {
            Some(command) => {
                self.line(&format!("- `{command}`"));
                self.wrapped(&step.purpose, "  ", "  ");
            }
            None => self.wrapped(&step.purpose, "- ", "  "),
        }
    }

    fn facts(&mut self, facts: &[(&str, Text)]) {
        let widest = facts.iter().map(|(name, _)| name.chars().count()).max().unwrap_or(0);
        for (name, value) in facts {
            self.wrapped(value, &format!("{name:widest$}  "), &" ".repeat(widest + 2));
        }
    }

    fn picture(&mut self, picture: &Picture) {
        match &picture.in_text {
            InText::Nothing => {}
            InText::Table => self.table(&picture.table),
            InText::Characters(drawing) => self.text.push_str(drawing),
        }
    }

    /// Columns of words to the left, the others to the right.
    fn table(&mut self, table: &Table) {
        let cell = |text: String, column: usize| {
            let alignment = if column < table.words { CellAlignment::Left } else { CellAlignment::Right };
            Cell::new(text).set_alignment(alignment)
        };
        let mut grid = Grid::new();
        grid.load_style(RULED).set_content_arrangement(ContentArrangement::Dynamic).set_width(self.width);
        grid.set_header(table.columns.iter().enumerate().map(|(i, column)| cell(column.head(), i)));
        grid.column_iter_mut().for_each(|column| {
            column.set_padding((0, 2));
        });
        for row in table.cells() {
            grid.add_row(row.iter().enumerate().map(|(i, text)| cell(text.to_string(), i)));
        }
        grid.lines().for_each(|line| self.line(line.trim_end()));
    }
}
