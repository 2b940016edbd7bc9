//! What is wrong with a file, and how it is shown.
//!
//! Every message has the same grammar: "`field` is *found*", "must be *allowed*", and a hint with
//! the cure. A [`Fault`] is shown with a picture of its line (by `annotate-snippets`); what has no
//! line to show, such as a wrong flag, is [`Told`] in the same words. Nothing decides here what
//! counts as a fault.

use std::fmt;
use std::ops::Range;

use annotate_snippets::{AnnotationKind, Element, Group, Level, Origin, Renderer, Snippet};

use super::session_error::SessionError;

/// Faults shown of one file; a hopeless file should not scroll the first fault away.
const MAX_SHOWN: usize = 30;

/// Why a file could not be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum InputError {
    /// The file could not be read at all.
    Unreadable {
        /// The file's name as given.
        origin: String,
        /// What stood in the way, completing "cannot read *file*:".
        problem: String,
        /// How to mend it.
        hint: String,
    },
    /// The machine has no more to give for reading it.
    Exhausted {
        /// The file's name as given.
        origin: String,
        /// What there is no more of.
        what: &'static str,
    },
    /// The text was read, and these things in it are wrong.
    Faulty {
        /// The file's name as given.
        origin: String,
        /// The whole text; spans count its bytes.
        text: String,
        /// Every fault found, in file order; at least one.
        faults: Vec<Fault>,
    },
    /// The throws were read, and the file as a whole cannot be used.
    Unusable(SessionError),
}

/// An error with nothing to picture.
#[derive(Debug, Default)]
pub struct Told<'a> {
    /// What is wrong, with the value found.
    pub problem: &'a str,
    /// The file and, when known, the line.
    pub place: Option<(&'a str, Option<u32>)>,
    /// What is allowed, completing "must be"; empty when there is no such list.
    pub allowed: &'a str,
    /// How to mend it; empty when that goes without saying.
    pub hint: &'a str,
}

/// One thing wrong in a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The bytes it stands at.
    pub span: Range<usize>,
    /// The field, such as `pitch[2].speed_mph`; list entries count from 1.
    pub field: String,
    /// What was found, completing "*field* is".
    pub found: String,
    /// What is allowed, completing "must be".
    pub allowed: String,
    /// How to mend it.
    pub hint: Option<String>,
}

impl InputError {
    /// The full message, with a picture of every faulty line; `color` adds terminal colours.
    pub fn render(&self, color: bool) -> String {
        let renderer = if color { Renderer::styled() } else { Renderer::plain() };
        match self {
            Self::Unreadable { origin, problem, hint } => {
                let problem = format!("cannot read {origin}: {problem}");
                Told { problem: &problem, hint, ..Told::default() }.render(color)
            }
            Self::Exhausted { origin, what } => {
                let problem = format!("cannot read {origin}: the machine has no more {what}");
                Told { problem: &problem, hint: "close other programs and try again", ..Told::default() }.render(color)
            }
            Self::Unusable(error) => error.render(color),
            Self::Faulty { origin, text, faults } => {
                let shown = faults.iter().take(MAX_SHOWN).map(|fault| fault.render(&renderer, origin, text));
                let mut parts: Vec<String> = shown.collect();
                if faults.len() > MAX_SHOWN {
                    parts.push(format!("{} more faults are not shown", faults.len() - MAX_SHOWN));
                }
                parts.join("\n\n")
            }
        }
    }
}

impl fmt::Display for InputError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.render(false))
    }
}

impl std::error::Error for InputError {}

impl From<SessionError> for InputError {
    fn from(error: SessionError) -> Self {
        Self::Unusable(error)
    }
}

impl Told<'_> {
    /// The message as text; `color` adds terminal colours.
    pub fn render(&self, color: bool) -> String {
        let renderer = if color { Renderer::styled() } else { Renderer::plain() };
        let mut elements: Vec<Element> = Vec::new();
        if let Some((file, line)) = self.place {
            let origin = Origin::path(visible(file));
            elements.push(line.map_or(origin.clone(), |line| origin.line(line as usize)).into());
        }
        if !self.allowed.is_empty() {
            let allowed = visible(&format!("must be {}", self.allowed));
            elements.push(Level::NOTE.no_name().message(allowed).into());
        }
        elements.extend(Some(self.hint).filter(|hint| !hint.is_empty()).map(|hint| hint_line(hint).into()));
        let title = Level::ERROR.primary_title(visible(self.problem));
        renderer.render(&[Group::with_title(title).elements(elements)])
    }
}

impl Fault {
    /// The same fault with a hint.
    #[must_use]
    pub fn with_hint(self, hint: impl Into<String>) -> Self {
        Self { hint: Some(hint.into()), ..self }
    }

    fn render(&self, renderer: &Renderer, origin: &str, text: &str) -> String {
        let excerpt = Excerpt::around(text, &self.span);
        let label = visible(&format!("must be {}", self.allowed));
        let snippet = Snippet::source(excerpt.line)
            .line_start(excerpt.number)
            .path(visible(origin))
            .annotation(AnnotationKind::Primary.span(excerpt.marked).label(label));
        let title = visible(&format!("{} is {}", self.field, self.found));
        let group = Level::ERROR.primary_title(title).element(snippet);
        renderer.render(&[group.elements(self.hint.as_deref().map(hint_line))])
    }
}

fn hint_line(hint: &str) -> annotate_snippets::Message<'static> {
    Level::HELP.with_name("hint").message(visible(hint))
}

/// The one line a fault is shown on.
struct Excerpt {
    number: usize,
    line: String,
    marked: Range<usize>,
}

impl Excerpt {
    /// The line on which `span` begins; what reaches beyond that line is not marked.
    fn around(text: &str, span: &Range<usize>) -> Self {
        let start = text.floor_char_boundary(span.start.min(text.len()));
        let line_start = text[..start].rfind('\n').map_or(0, |newline| newline + 1);
        let line_end = text[start..].find('\n').map_or(text.len(), |newline| start + newline);
        let end = text.floor_char_boundary(span.end.clamp(start, line_end));
        let before = visible(&text[line_start..start]);
        let marked = visible(&text[start..end]);
        let after = visible(&text[end..line_end]);
        Self {
            number: 1 + text[..line_start].matches('\n').count(),
            marked: before.len()..before.len() + marked.len(),
            line: before + &marked + &after,
        }
    }
}

/// The text with everything replaced that could move the cursor, colour or reorder a terminal line.
pub fn visible(text: &str) -> String {
    let shown = |c: char| if is_hidden(c) && c != '\t' { char::REPLACEMENT_CHARACTER } else { c };
    text.chars().filter(|&c| c != '\r').map(shown).collect()
}

/// Control characters, and the invisible ones that change how a line is laid out. The two joiners
/// (U+200C, U+200D) only shape letters, and Persian and many Indian names need them.
pub(super) fn is_hidden(c: char) -> bool {
    let steers_layout = matches!(
        c,
        '\u{61c}' | '\u{200b}' | '\u{200e}' | '\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{2069}' | '\u{feff}'
    );
    c.is_control() || steers_layout
}

#[cfg(test)]
mod tests {
    use super::*;

    fn faulty(text: &str, span: Range<usize>) -> InputError {
        let fault = Fault { span, field: "x".into(), found: "1".into(), allowed: "2".into(), hint: None };
        InputError::Faulty { origin: "a\u{1b}[31m.toml".into(), text: text.into(), faults: vec![fault] }
    }

    #[test]
    fn nothing_a_file_holds_can_steer_the_terminal() {
        let text = "a = \"\u{1b}[2J\u{9b}31m\u{202e}\"\r\n";
        let shown = faulty(text, 4..text.len()).render(false);
        assert!(shown.chars().all(|c| c == '\n' || !is_hidden(c)), "{shown:?}");
    }

    #[test]
    fn a_span_beyond_the_text_or_inside_a_letter_is_still_shown() {
        for span in [0..0, 5..5, 90..99, 1..2, 3..90] {
            let shown = faulty("é = 1\nb = 2", span).render(false);
            assert!(shown.contains("must be 2"), "{shown}");
        }
        assert!(faulty("", 0..0).render(true).contains(".toml:1:1"));
    }

    #[test]
    fn a_hopeless_file_is_cut_short_and_says_so() {
        let fault = Fault { span: 0..1, field: "x".into(), found: "1".into(), allowed: "2".into(), hint: None };
        let error = InputError::Faulty { origin: "f".into(), text: "x".into(), faults: vec![fault; MAX_SHOWN + 7] };
        assert!(error.to_string().ends_with("7 more faults are not shown"));
    }
}
