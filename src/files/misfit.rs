//! Rows whose cells do not stand under the header's columns, and what made them so.
//!
//! Read as if they fitted, such rows would be other throws than were measured. A separator too many
//! at the end of a row is no misfit, and neither are cells missing under columns without a name.

use csv::ByteRecord;

use crate::athlete::session::{Reason, Slip};

/// The reason to set a row aside whose cells do not fit the header.
pub(super) fn misfit(record: &ByteRecord, header: &ByteRecord, separator: u8) -> Option<Reason> {
    let (cells, columns) = (record.len(), header.len());
    if cells == columns {
        return None;
    }
    let is_blank = |cell: &[u8]| cell.trim_ascii().is_empty();
    let named = header.iter().rposition(|name| !is_blank(name)).map_or(0, |last| last + 1);
    let fits = if cells > columns { record.iter().skip(columns).all(is_blank) } else { cells >= named };
    (!fits).then(|| Reason::Misfit { cells, columns, slip: slip(record, columns, separator) })
}

/// What most likely went wrong.
fn slip(record: &ByteRecord, columns: usize, separator: u8) -> Slip {
    if record.len() < columns {
        return Slip::CutShort;
    }
    let has_text = record.iter().any(|cell| cell.iter().any(u8::is_ascii_alphabetic));
    let goes_on = record.iter().any(|cell| cell.first() == Some(&b' ') && cell.iter().any(u8::is_ascii_alphabetic));
    let too_many = record.len() - columns;
    let may_be_numbers = separator == b',' && !goes_on && (too_many > 1 || !has_text);
    match () {
        () if may_be_numbers && split_numbers(record) >= too_many => Slip::DecimalCommas,
        () if has_text => Slip::SeparatorInText,
        () => Slip::TooManyCells,
    }
}

/// Pairs of neighbouring cells that look like one number, parted at its decimal comma.
fn split_numbers(record: &ByteRecord) -> usize {
    if record.iter().any(|cell| cell.contains(&b'.')) {
        return 0;
    }
    let is_whole = |cell: &[u8], most: usize| (1..=most).contains(&cell.len()) && cell.iter().all(u8::is_ascii_digit);
    let starts =
        |cell: &[u8]| is_whole(cell.trim_ascii().trim_ascii_start().strip_prefix(b"-").unwrap_or(cell.trim_ascii()), 4);
    let cells: Vec<&[u8]> = record.iter().collect();
    let (mut pairs, mut at) = (0, 0);
    while at + 1 < cells.len() {
        let is_pair = starts(cells[at]) && is_whole(cells[at + 1].trim_ascii(), 3);
        pairs += usize::from(is_pair);
        at += if is_pair { 2 } else { 1 };
    }
    pairs
}

#[cfg(test)]
mod tests {
    use super::*;

    fn of(row: &[&str], header: &[&str]) -> Option<Slip> {
        match misfit(&ByteRecord::from(row.to_vec()), &ByteRecord::from(header.to_vec()), b',') {
            Some(Reason::Misfit { slip, .. }) => Some(slip),
            _ => None,
        }
    }

    #[test]
    fn a_row_fits_when_nothing_in_it_can_stand_under_another_column() {
        let header = ["speed", "up", "side"];
        assert_eq!(of(&["90", "2", "3"], &header), None);
        assert_eq!(of(&["90", "2", "3", "", " "], &header), None, "separators at the end");
        assert_eq!(of(&["90", "2", "3"], &["speed", "up", "side", "", ""]), None, "columns without a name");
        assert_eq!(of(&["90", "2"], &header), Some(Slip::CutShort));
        assert_eq!(of(&["90", "5", "16", "2", "-7", "1"], &header), Some(Slip::DecimalCommas));
        assert_eq!(of(&["90.5", "2", "3", "two-seam", " light spike"], &header), Some(Slip::SeparatorInText));
        assert_eq!(of(&["90", "2", "3", "two-seam", " light spike"], &header), Some(Slip::SeparatorInText));
        assert_eq!(of(&["1", "90.5", "2.0", "3.0"], &header), Some(Slip::TooManyCells));
    }
}
