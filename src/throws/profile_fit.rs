//! What throws measured and a profile cannot hold: it is left out and told, so that a profile made from
//! throws is always one that can be read.
//!
//! Only keys that the throws have just set are taken away again; what the user wrote stays.

use toml_edit::{DocumentMut, Item, TableLike};

use crate::files::{Fault, InputError, profile_from_toml};

/// Keys of a pitch that may be missing.
const OF_A_PITCH: [&str; 5] = ["spin_rpm", "active_fraction", "spin_clock", "spread", "results"];

/// Takes out of `document` what its reader refuses and `old` did not say; a sentence for each.
pub(super) fn leave_out_what_does_not_fit(document: &mut DocumentMut, old: &DocumentMut) -> Vec<String> {
    let mut left_out = Vec::new();
    // A key that is gone may bring another fault to light, at most as many times as there are keys.
    for _ in 0..OF_A_PITCH.len() {
        let Err(InputError::Faulty { faults, .. }) = profile_from_toml(&document.to_string(), "") else { break };
        let before = left_out.len();
        for fault in &faults {
            left_out.extend(take_out(document, old, fault));
        }
        if left_out.len() == before {
            break;
        }
    }
    left_out
}

/// Takes out the key at fault, when it may go; what to say of it.
fn take_out(document: &mut DocumentMut, old: &DocumentMut, fault: &Fault) -> Option<String> {
    let path: Vec<&str> = fault.field.split('.').collect();
    let (section, key) = (*path.first()?, *path.get(1)?);
    let may_go = section == "release" || (section.starts_with("pitch[") && OF_A_PITCH.contains(&key));
    // Of results that do not add up none can be trusted; of a spread each number stands alone.
    let path = if key == "results" { &path[..3.min(path.len())] } else { &path[..] };
    if !may_go || is_said(old.as_table(), document.as_table(), path) {
        return None;
    }
    let (last, way) = path.split_last()?;
    let table = way.iter().try_fold(document.as_table_mut() as &mut dyn TableLike, |table, part| inner(table, part))?;
    table.remove(last)?;
    Some(format!("{} is left out: it is {}, and must be {}", fault.field, fault.found, fault.allowed))
}

/// Whether the old text says the same under this path, so that it is the user's own.
fn is_said(old: &dyn TableLike, new: &dyn TableLike, path: &[&str]) -> bool {
    fn at<'a>(table: &'a dyn TableLike, path: &[&str]) -> Option<&'a Item> {
        let (first, rest) = path.split_first()?;
        let (key, place) = parted(first);
        let item = table.get(key)?;
        match (place, rest) {
            (None, []) => Some(item),
            (None, rest) => at(item.as_table_like()?, rest),
            (Some(place), rest) => at(item.as_array_of_tables()?.get(place)?, rest),
        }
    }
    let text = |table| at(table, path).map(|item| item.to_string().trim().to_owned());
    text(old).is_some() && text(old) == text(new)
}

/// The table under one part of a path.
fn inner<'a>(table: &'a mut dyn TableLike, part: &str) -> Option<&'a mut dyn TableLike> {
    let (key, place) = parted(part);
    let item = table.get_mut(key)?;
    match place {
        None => item.as_table_like_mut(),
        Some(place) => item.as_array_of_tables_mut()?.get_mut(place).map(|table| table as &mut dyn TableLike),
    }
}

/// `pitch[2]` is the second of the list under `pitch`.
fn parted(part: &str) -> (&str, Option<usize>) {
    let listed = part.strip_suffix(']').and_then(|part| part.split_once('['));
    listed.map_or((part, None), |(key, number)| (key, Some(number.parse::<usize>().unwrap_or(1).saturating_sub(1))))
}
