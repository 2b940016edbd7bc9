//! An answer and its sections.

use super::command::Command;
use super::data::Data;
use super::picture::Picture;
use super::table::Table;
use super::text::Text;

/// What one command answers. Make one with a function of [`crate::report::answers`].
#[derive(Debug, Clone)]
pub struct Answer {
    /// Who it is about.
    pub(crate) who: Text,
    /// What else is said beside the name.
    pub(crate) about: Text,
    /// What in health or age stands before anything else.
    pub(crate) before: Vec<Text>,
    /// The answer in one sentence.
    pub(crate) headline: Text,
    /// What stands right under the headline.
    pub(crate) lead: Vec<Part>,
    /// Everything else, most important first.
    pub(crate) sections: Vec<Section>,
    /// The same for machines.
    pub(crate) machine: Machine,
}

/// What machines read.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Machine {
    /// One value.
    One(Data),
    /// A value a line.
    Lines(Vec<Data>),
}

impl Answer {
    /// An answer about `who`.
    pub(crate) fn new(who: impl Into<Text>, about: impl Into<Text>, headline: impl Into<Text>) -> Self {
        Self {
            who: who.into(),
            about: about.into(),
            before: Vec::new(),
            headline: headline.into(),
            lead: Vec::new(),
            sections: Vec::new(),
            machine: Machine::One(Data::Null),
        }
    }

    /// With what stands before anything else.
    pub(crate) fn before(self, bars: Vec<Text>) -> Self {
        Self { before: bars, ..self }
    }

    /// With sentences right under the headline.
    pub(crate) fn lead(mut self, sentences: Vec<Text>) -> Self {
        self.lead.extend((!sentences.is_empty()).then_some(Part::Bullets(sentences)));
        self
    }

    /// With a paragraph right under the headline.
    pub(crate) fn lead_paragraph(mut self, paragraph: impl Into<Text>) -> Self {
        self.lead.push(Part::Paragraph(paragraph.into()));
        self
    }

    /// With short facts right under the headline, each a name and a value.
    pub(crate) fn facts(mut self, facts: Vec<(&'static str, Text)>) -> Self {
        self.lead.extend((!facts.is_empty()).then_some(Part::Facts(facts)));
        self
    }

    /// With a further section; one that says nothing is left out.
    pub(crate) fn with(mut self, section: impl Into<Option<Section>>) -> Self {
        self.sections.extend(section.into().filter(|section| !section.parts.is_empty()));
        self
    }

    /// With further sections.
    pub(crate) fn with_all(self, sections: impl IntoIterator<Item = Section>) -> Self {
        sections.into_iter().fold(self, Self::with)
    }

    /// With its form for machines.
    pub(crate) fn machine(self, value: Data) -> Self {
        Self { machine: Machine::One(value), ..self }
    }

    /// With several values for machines, one a line.
    pub(crate) fn machine_lines(self, values: Vec<Data>) -> Self {
        Self { machine: Machine::Lines(values), ..self }
    }
}

/// The heading over what stands before anything else.
pub(crate) const BEFORE: &str = "Before anything else";

/// Parts under a heading.
#[derive(Debug, Clone)]
pub(crate) struct Section {
    pub(crate) heading: Text,
    pub(crate) parts: Vec<Part>,
    /// Whether it may stand beside the section before it where there is room.
    pub(crate) is_beside: bool,
    /// Whether it is printed on a sheet of its own, to be cut out and carried.
    pub(crate) is_card: bool,
}

/// A part of a section.
#[derive(Debug, Clone)]
pub(crate) enum Part {
    /// Sentences that belong together.
    Paragraph(Text),
    /// A list of sentences.
    Bullets(Vec<Text>),
    /// A heading inside a section.
    Subheading(Text),
    /// A table in full view.
    Table(Table),
    /// Names and values.
    Facts(Vec<(&'static str, Text)>),
    /// A picture.
    Picture(Box<Picture>),
    /// What to ask or do next.
    Steps(Vec<Step>),
    /// Lines as they stand in a file.
    Lines(Vec<String>),
}

/// Something to do next: with a command, or in words alone.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Step {
    pub(crate) command: Option<Command>,
    pub(crate) purpose: Text,
}

impl Step {
    /// A command to give, and what it is for.
    pub(crate) fn ask(command: Command, purpose: impl Into<Text>) -> Self {
        Self { command: Some(command), purpose: purpose.into() }
    }

    /// Something to do away from the program.
    pub(crate) fn act(purpose: impl Into<Text>) -> Self {
        Self { command: None, purpose: purpose.into() }
    }
}

impl Section {
    /// A section without parts.
    pub(crate) fn new(heading: impl Into<Text>) -> Self {
        Self { heading: heading.into(), parts: Vec::new(), is_beside: false, is_card: false }
    }

    /// What to do next.
    pub(crate) fn next(steps: Vec<Step>) -> Self {
        let section = Self::new("Next");
        if steps.is_empty() { section } else { section.part(Part::Steps(steps)) }
    }

    /// With a list of sentences, when there are any.
    pub(crate) fn bullets(self, sentences: impl IntoIterator<Item = impl Into<Text>>) -> Self {
        let sentences: Vec<Text> = sentences.into_iter().map(Into::into).collect();
        if sentences.is_empty() { self } else { self.part(Part::Bullets(sentences)) }
    }

    /// With a paragraph.
    pub(crate) fn paragraph(self, text: impl Into<Text>) -> Self {
        self.part(Part::Paragraph(text.into()))
    }

    /// With a heading inside.
    pub(crate) fn subheading(self, text: impl Into<Text>) -> Self {
        self.part(Part::Subheading(text.into()))
    }

    /// With a table, when it has rows.
    pub(crate) fn table(self, table: Table) -> Self {
        if table.rows.is_empty() { self } else { self.part(Part::Table(table)) }
    }

    /// With a picture.
    pub(crate) fn picture(self, picture: Picture) -> Self {
        self.part(Part::Picture(Box::new(picture)))
    }

    /// With pictures.
    pub(crate) fn pictures(self, pictures: impl IntoIterator<Item = Picture>) -> Self {
        pictures.into_iter().fold(self, Self::picture)
    }

    /// With lines as they stand in a file, when there are any.
    pub(crate) fn lines(self, lines: Vec<String>) -> Self {
        if lines.is_empty() { self } else { self.part(Part::Lines(lines)) }
    }

    /// Allowed to stand beside the section before it.
    pub(crate) fn beside(self) -> Self {
        Self { is_beside: true, ..self }
    }

    /// Printed on a sheet of its own.
    pub(crate) fn card(self) -> Self {
        Self { is_card: true, ..self }
    }

    fn part(mut self, part: Part) -> Self {
        self.parts.push(part);
        self
    }
}
