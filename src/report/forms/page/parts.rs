//! The parts of a page: sections, lists, tables, figures and the spans of a text.

use maud::{Markup, PreEscaped, Render, html};

use super::super::super::content::{Part, Picture, Section, Span, Step, Table, Text};

/// A section of the page; `key` makes the ids in it unique.
pub(super) fn section(key: &str, section: &Section) -> Markup {
    let key = format!("{key}-");
    let has_words_only = section.parts.iter().all(|part| matches!(part, Part::Bullets(_) | Part::Steps(_)));
    let class = if section.is_card { Some("card") } else { has_words_only.then_some("words") };
    html! {
        section class=[class] {
            h2 { (flowing(&section.heading)) }
            (parts(&key, &section.parts))
        }
    }
}

/// Parts in order; pictures that follow each other stand beside each other where there is room.
pub(super) fn parts(key: &str, parts: &[Part]) -> Markup {
    let runs = parts.chunk_by(|a, b| matches!((a, b), (Part::Picture(_), Part::Picture(_))));
    html! {
        @for (run, group) in runs.enumerate() {
            @if let [Part::Picture(_), ..] = group {
                div.figures { @for (n, part) in group.iter().enumerate() { (one(&format!("{key}{run}{n}"), part)) } }
            } @else {
                @for part in group { (one(key, part)) }
            }
        }
    }
}

fn one(key: &str, part: &Part) -> Markup {
    match part {
        Part::Paragraph(text) => html! { p.note { (flowing(&text.as_sentence())) } },
        Part::Bullets(sentences) => list(sentences.iter().map(|sentence| flowing(&sentence.as_sentence()))),
        Part::Subheading(text) => html! { h3 { (flowing(text)) } },
        Part::Table(rows) => table("Numbers", rows),
        Part::Facts(facts) => facts_in_a_row(facts),
        Part::Picture(picture) => figure(key, picture),
        Part::Steps(steps) => list(steps.iter().map(step)),
        Part::Lines(lines) => html! { pre { @for line in lines { (line) "\n" } } },
    }
}

fn list(items: impl Iterator<Item = Markup>) -> Markup {
    html! { ul { @for item in items { li dir="auto" { (item) } } } }
}

/// On a page a step names the question; the whole command line belongs to the terminal.
fn step(step: &Step) -> Markup {
    let purpose = step.purpose.clone();
    match &step.command {
        Some(command) if !command.question().is_empty() => {
            html! { strong { (command.question()) } ": " (flowing(&purpose.and("."))) }
        }
        Some(command) => html! { code { (command) } ": " (flowing(&purpose.and("."))) },
        None => flowing(&purpose.as_sentence()),
    }
}

fn facts_in_a_row(facts: &[(&str, Text)]) -> Markup {
    html! { dl.facts { @for (name, value) in facts { div { dt { (name) } dd { (flowing(value)) } } } } }
}

/// A picture with its legend and, folded away, its numbers.
fn figure(key: &str, picture: &Picture) -> Markup {
    let title = picture.title.to_string();
    html! {
        figure {
            figcaption { (flowing(&picture.title)) }
            (PreEscaped(picture.drawing.finish(key, &title, &picture.description)))
            p.legend { (picture.legend) }
            details {
                summary { "The numbers" }
                (table(&format!("Numbers: {title}"), &picture.table))
            }
        }
    }
}

/// From so many columns on a table does not fit a phone: there each row is set as a block of its own.
const MANY: usize = 8;

fn table(label: &str, table: &Table) -> Markup {
    let many = if table.columns.len() >= MANY { " many" } else { "" };
    html! {
        div.scroll role="region" aria-label=(label) tabindex="0" {
            table class=(format!("words-{}{many}", table.words)) {
                thead { tr { @for column in &table.columns { th scope="col" { (column.head()) } } } }
                tbody { @for cells in table.cells() { (row(table, &cells, !many.is_empty())) } }
            }
        }
    }
}

/// A row; where it may be set as a block, each cell carries its column's head.
fn row(table: &Table, cells: &[Text], is_block: bool) -> Markup {
    html! {
        tr {
            @for (place, (column, cell)) in table.columns.iter().zip(cells).enumerate() {
                @if place == 0 {
                    th scope="row" { bdi { (cell) } }
                } @else {
                    td data-head=[is_block.then(|| column.head())] { (cell) }
                }
            }
        }
    }
}

/// A text in a line that may break: numbers and days hold together, names keep their direction.
pub(super) fn flowing(text: &Text) -> Markup {
    html! {
        @for span in text.spans() {
            @match span {
                Span::Words(words) => (words),
                Span::Name(name) => bdi { (name) },
                Span::Unbroken(word) => span.one { (word) },
                Span::Amount(amount) => { span.one { (amount.figures()) } (unit(amount.unit().name())) }
                Span::Command(command) => code { (command) },
            }
        }
    }
}

/// A unit behind its number; a short one stays on the number's line.
fn unit(name: &str) -> String {
    match name {
        "" | "%" => String::new(),
        short if !short.contains(' ') => format!("\u{a0}{short}"),
        long => format!(" {long}"),
    }
}

/// The plain text, as in a cell.
impl Render for Text {
    fn render_to(&self, buffer: &mut String) {
        self.to_string().render_to(buffer);
    }
}
