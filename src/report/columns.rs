//! The column map that `sort --explain-columns` proposes, as TOML with what each column was taken for
//! in comments above it.

use std::fmt::Write as _;

use crate::files::{Proposal, visible};

use super::content::command::command_line;

/// The proposed map for the file `name`.
pub fn column_map(name: &str, proposal: &Proposal) -> String {
    let mut text = format!("# A proposal for {}: check every line, above all signs and distances.\n", visible(name));
    for (header, example, taken_for) in &proposal.columns {
        // Writing to a string cannot fail.
        let _ = writeln!(text, "# {header} (such as {example}): {taken_for}");
    }
    for quantity in &proposal.missing {
        let _ = writeln!(text, "# no column was found for {}", quantity.key());
    }
    text.push('\n');
    text.push_str(&proposal.map.to_toml());
    let next = command_line(&["arsenalfit", "sort", name, "--columns", "columns.toml"]);
    let _ = writeln!(text, "\n# Save this as columns.toml, then: {next}");
    text
}
