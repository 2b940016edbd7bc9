//! Rows of a file that are not used: how many of which kind, and the first of them with their reasons.

use std::collections::BTreeMap;

use crate::athlete::session::{Place, Session, SetAside};

use super::super::content::data::{Data, list};
use super::super::content::{Section, Text, name, object, say};

/// Rows told one by one; more are counted.
pub(crate) const MOST_LISTED: usize = 12;

/// What is not used, when anything is not.
pub(crate) fn set_aside(session: &Session, rows: &[SetAside]) -> Section {
    let section = Section::new("Rows set aside");
    if rows.is_empty() {
        return section;
    }
    let mut kinds: BTreeMap<&str, usize> = BTreeMap::new();
    for row in rows {
        *kinds.entry(row.reason.kind()).or_default() += 1;
    }
    let counted = kinds.iter().map(|(kind, count)| say!("{} {}", *count, *kind));
    let one = |row: &SetAside| say!("{}: {}", place(session, row.place), name(&row.reason.to_string()));
    first_of(section.paragraph(Text::joined(counted, ", ").and(".")), rows.iter().map(one))
}

/// The first of many sentences, and how many more there are.
pub(crate) fn first_of(section: Section, sentences: impl ExactSizeIterator<Item = Text>) -> Section {
    let all = sentences.len();
    let section = section.bullets(sentences.take(MOST_LISTED));
    if all > MOST_LISTED { section.paragraph(format!("... and {} more", all - MOST_LISTED)) } else { section }
}

/// `session.csv, row 13`.
pub(crate) fn place(session: &Session, place: Place) -> Text {
    say!("{}, row {}", name(&session.files[usize::from(place.file)]), place.row)
}

/// Every row not used, for machines.
pub(crate) fn set_aside_data(session: &Session, rows: &[SetAside]) -> Data {
    list(rows.iter().map(|row| {
        object! {
            "file": &session.files[usize::from(row.place.file)],
            "row": row.place.row,
            "reason": row.reason.to_string(),
        }
    }))
}
