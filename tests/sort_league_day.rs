//! Sorting real throws of many arms with their labels unseen.
#![expect(clippy::print_stdout, reason = "figures for the notes, shown with --nocapture")]

use std::collections::BTreeMap;

use arsenalfit::athlete::session::Session;
use arsenalfit::ball::Family;
use arsenalfit::files::{ColumnMap, ReadOptions, session_from_bytes};
use arsenalfit::throws::{Assignment, Options, Sorted, sort};
use rayon::prelude::*;

const DAY: &str = include_str!("data/league_day.csv");
const ENOUGH: usize = 40;

fn sessions() -> Vec<(String, Session)> {
    let mut lines = DAY.lines();
    let header = lines.next().expect("a header");
    let mut by_pitcher: BTreeMap<&str, String> = BTreeMap::new();
    for line in lines {
        let pitcher = line.split(',').nth(1).expect("a pitcher");
        let text = by_pitcher.entry(pitcher).or_insert_with(|| format!("{header}\n"));
        text.push_str(line);
        text.push('\n');
    }
    let read = |(pitcher, text): (&str, String)| {
        let options = ReadOptions { map: ColumnMap::default(), hand: None, progress: &mut |_| {} };
        let session = session_from_bytes(pitcher, text.as_bytes(), options).expect("it is read");
        (pitcher.to_owned(), session)
    };
    by_pitcher.into_iter().filter(|(_, text)| text.lines().count() > ENOUGH).map(read).collect()
}

#[test]
fn x() {
    let start = std::time::Instant::now();
    let sessions = sessions();
    let sorted: Vec<(String, Session, Sorted)> = sessions
        .into_par_iter()
        .map(|(p, s)| {
            let r = sort(&s, Options::default());
            (p, s, r)
        })
        .collect();
    println!("{} {:?}", sorted.len(), start.elapsed());
    let rand: Vec<f64> = sorted.iter().map(|(_, _, s)| s.agreement.as_ref().map_or(0.0, |a| a.adjusted_rand)).collect();
    println!("mean rand {:.4}", rand.iter().sum::<f64>() / rand.len() as f64);
    let many: Vec<f64> = sorted
        .iter()
        .zip(&rand)
        .filter(|((_, s, _), _)| s.labels.iter().filter(|l| Family::from_name(l).is_some()).count() >= 5)
        .map(|(_, r)| *r)
        .collect();
    println!("five or more {} {:.4}", many.len(), many.iter().sum::<f64>() / many.len() as f64);
    let (mut right, mut all, mut gright, mut gall) = (0, 0, 0, 0);
    let mut confusion: BTreeMap<(String, String), usize> = BTreeMap::new();
    for ((p, session, sorted), rand) in sorted.iter().zip(&rand) {
        let mut note = String::new();
        for (index, group) in sorted.groups.iter().enumerate().filter(|(_, g)| g.throws >= 5) {
            let mut by: BTreeMap<&str, usize> = BTreeMap::new();
            for (throw, a) in session.throws.iter().zip(&sorted.assignments) {
                if let Assignment::Group { index: i, .. } = a
                    && *i == index
                {
                    let label = &session.labels[usize::from(throw.label.expect("labelled"))];
                    *by.entry(label).or_default() += 1;
                    let ok = Family::from_name(label).map(Family::one_name) == Some(group.naming.family.one_name());
                    right += usize::from(ok);
                    all += 1;
                    if !ok {
                        *confusion.entry((label.clone(), group.naming.family.name().to_owned())).or_default() += 1;
                    }
                }
            }
            let usual = by.iter().max_by_key(|(_, n)| **n).map(|(l, _)| *l).unwrap_or_default();
            let ok = Family::from_name(usual).map(Family::one_name) == Some(group.naming.family.one_name());
            gright += usize::from(ok);
            gall += 1;
            if !ok {
                note += &format!(
                    "    {usual} {:?} -> {} {:.2} ({:.1} {:.1} {:.1} {:.0})\n",
                    by,
                    group.naming.family,
                    group.naming.confidence,
                    group.speed_mph.value,
                    group.vertical_break_in.value,
                    group.glove_side_break_in.value,
                    group.spin_rpm.map_or(0.0, |s| s.value)
                );
            }
        }
        if !note.is_empty() || *rand < 0.9 {
            let g = &sorted.groups[0];
            println!(
                "pitcher {p}: rand {rand:.3} h {:.1} s {:.1} table {:?}\n   groups {}\n{note}",
                g.release_height_ft.map_or(0., |x| x.value),
                g.release_side_ft.map_or(0., |x| x.value),
                sorted.agreement.as_ref().map(|a| (&a.labels, &a.table)),
                sorted
                    .groups
                    .iter()
                    .map(|g| format!(
                        "{} {} ({:.1} {:.1} {:.1} {:.0})",
                        g.naming.family,
                        g.throws,
                        g.speed_mph.value,
                        g.vertical_break_in.value,
                        g.glove_side_break_in.value,
                        g.spin_rpm.map_or(0.0, |s| s.value)
                    ))
                    .collect::<Vec<_>>()
                    .join("; ")
            );
        }
    }
    println!("throws right {right}/{all} {:.4}; groups {gright}/{gall}", right as f64 / all as f64);
    println!("{confusion:?}");
}
