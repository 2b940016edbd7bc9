//! Tables as they stand in DEVELOPERS.md.

/// A Markdown table.
pub fn table(header: &[&str], rows: impl IntoIterator<Item = Vec<String>>) -> String {
    let line = |cells: &[String]| format!("| {} |\n", cells.join(" | "));
    let header: Vec<String> = header.iter().map(|&cell| cell.to_owned()).collect();
    let rule = format!("|{}\n", "---|".repeat(header.len()));
    let rows: String = rows.into_iter().map(|row| line(&row)).collect();
    line(&header) + &rule + &rows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_has_a_header_a_rule_and_its_rows() {
        let found = table(&["a", "b"], [vec!["1".to_owned(), "2".to_owned()]]);
        assert_eq!(found, "| a | b |\n|---|---|\n| 1 | 2 |\n");
    }
}
