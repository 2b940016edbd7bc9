//! An answer as Markdown, to print or to share. Texts from a file are escaped, so that a name
//! cannot become markup; pictures are replaced by their numbers.

use std::fmt::Write as _;

use super::super::content::{Answer, BEFORE, Part, Span, Step, Table, Text};

impl Answer {
    /// The answer as Markdown text.
    pub fn markdown(&self) -> String {
        let mut text = format!("# {}: {}\n", set(&self.who), set(&self.headline));
        if !self.before.is_empty() {
            paragraph(&mut text, &format!("\n## {BEFORE}\n"));
            bullets(&mut text, self.before.iter().map(set));
        }
        parts(&mut text, &self.lead);
        for section in &self.sections {
            // Writing to a string cannot fail.
            let _ = writeln!(text, "\n## {}", set(&section.heading));
            parts(&mut text, &section.parts);
        }
        text
    }
}

fn parts(out: &mut String, parts: &[Part]) {
    for part in parts {
        out.push('\n');
        match part {
            Part::Paragraph(text) => paragraph(out, &set(text)),
            Part::Bullets(sentences) => bullets(out, sentences.iter().map(set)),
            Part::Subheading(text) => paragraph(out, &format!("### {}", set(text))),
            Part::Table(table) => rows(out, table),
            Part::Facts(facts) => bullets(out, facts.iter().map(|(name, value)| format!("{name}: {}", set(value)))),
            Part::Picture(picture) => rows(out, &picture.table),
            Part::Steps(steps) => bullets(out, steps.iter().map(said)),
            Part::Lines(lines) => bullets(out, lines.iter().map(|line| escaped(line))),
        }
    }
}

fn paragraph(out: &mut String, text: &str) {
    out.push_str(text);
    out.push('\n');
}

fn bullets(out: &mut String, items: impl Iterator<Item = String>) {
    for item in items {
        paragraph(out, &format!("- {item}"));
    }
}

fn said(step: &Step) -> String {
    step.command.as_ref().map_or_else(String::new, |command| format!("`{command}`: ")) + &set(&step.purpose)
}

fn rows(out: &mut String, table: &Table) {
    let heads: Vec<String> = table.columns.iter().map(super::super::content::Column::head).collect();
    paragraph(out, &line(&heads));
    paragraph(out, &format!("|{}", "---|".repeat(heads.len())));
    for row in table.cells() {
        paragraph(out, &line(&row.iter().map(set).collect::<Vec<String>>()));
    }
}

fn line(cells: &[String]) -> String {
    format!("| {} |", cells.join(" | "))
}

/// A text with everything escaped in it that is not this program's own.
fn set(text: &Text) -> String {
    let span = |span: &Span| match span {
        Span::Name(name) => escaped(name),
        other => other.to_string(),
    };
    text.spans().iter().map(span).collect()
}

/// `text` with everything escaped that Markdown would read as markup.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        if c.is_ascii_punctuation() {
            out.push('\\');
        }
        out.push(if c.is_control() { ' ' } else { c });
    }
    out
}
