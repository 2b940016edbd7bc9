//! The profile as a JSON schema (draft 2020-12), for editors and for programs that write profiles.
//!
//! Made from the outline of the reader, so that the two cannot differ in a key, a range or a word.
//! What a schema cannot say stays with the reader: values that contradict each other, names used
//! twice, a number that is no number.

use serde_json::{Map, Value, json};

use crate::files::{Content, Outline};

use super::pretty;

/// Hours 1 to 12 and minutes 00 to 59.
const CLOCK: &str = "^0*(?:[1-9]|1[0-2]):[0-5][0-9]$";
/// Control characters and those that steer the layout, as inside of a class.
const HIDDEN: &str = r"\u0000-\u001f\u007f-\u009f\u061c\u200b\u200e\u200f\u2028-\u202e\u2060-\u2069\ufeff";

/// The schema of what `outline` allows.
pub fn schema(outline: &Outline) -> String {
    let mut schema = table(outline);
    schema.insert("$schema".into(), json!("https://json-schema.org/draft/2020-12/schema"));
    schema.insert("title".into(), json!("Profile of a pitcher for arsenalfit"));
    schema.insert(
        "description".into(),
        json!("`arsenalfit check` also finds values that contradict each other, which no schema can."),
    );
    pretty(&schema)
}

fn table(outline: &Outline) -> Map<String, Value> {
    let properties: Map<String, Value> =
        outline.entries.iter().map(|entry| (entry.key.to_owned(), content(&entry.content))).collect();
    let needed: Vec<&str> = outline.entries.iter().filter(|entry| entry.is_needed).map(|entry| entry.key).collect();
    let mut table = Map::new();
    table.insert("type".into(), json!("object"));
    table.insert("properties".into(), properties.into());
    table.insert("additionalProperties".into(), json!(false));
    if !needed.is_empty() {
        table.insert("required".into(), json!(needed));
    }
    table
}

fn content(content: &Content) -> Value {
    match content {
        Content::Number(range) => json!({ "type": "number", "minimum": range.start(), "maximum": range.end() }),
        Content::Whole(range) => json!({ "type": "integer", "minimum": range.start(), "maximum": range.end() }),
        Content::Flag => json!({ "type": "boolean" }),
        Content::Text { most } => json!({ "type": "string", "pattern": text_pattern(*most) }),
        Content::Word(words) => json!({ "type": "string", "enum": words }),
        Content::Clock => json!({ "type": "string", "pattern": CLOCK }),
        Content::Section(outline) => table(outline).into(),
        Content::Sections { most, each } => {
            json!({ "type": "array", "minItems": 1, "maxItems": most, "items": table(each) })
        }
    }
}

/// One line of 1 to `most` characters between spaces that do not count; a plain `maxLength` would
/// count them.
fn text_pattern(most: usize) -> String {
    let inner = most.saturating_sub(2);
    format!(r"^\s*[^\s{HIDDEN}](?:[^{HIDDEN}]{{0,{inner}}}[^\s{HIDDEN}])?\s*$")
}
