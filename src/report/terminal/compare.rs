//! The page of `compare`.

use crate::decide::compare::{Arm, Comparison};

use super::super::format::{percent, plain, signed};
use super::super::{staff, words};
use super::Page;
use crate::base::geometry::Side;

/// Two athletes beside each other.
pub fn compare(comparison: &Comparison, width: u16) -> String {
    let mut page = Page::new(width);
    let [one, other] = [&comparison.arms[0], &comparison.arms[1]];
    page.heading_line(&format!("{} and {}", staff::name(one), staff::name(other)));
    page.bars(staff::health_of_both(comparison));
    page.heading(&staff::headline(comparison));
    page.list(
        comparison.arms.iter().map(|arm| staff::worth_sentence(comparison, arm)).chain(staff::chance(comparison)),
    );
    page.heading("Why they differ");
    page.list(staff::reasons(comparison));
    page.heading("Side by side, both as right-handers");
    page.table(&["", staff::name(one), staff::name(other)], staff::facts(comparison));
    for arm in &comparison.arms {
        shapes(&mut page, arm);
    }
    page.heading("Next");
    page.list(staff::after_compare(comparison));
    page.heading("How to read this");
    page.list([
        format!("worth: runs saved per 100 pitches, {}, with the 90 % interval", words::command(comparison.command)),
        "why: one thing of the other\u{2019}s is put in the place of his own and the pitch is searched again; the \
         changes need not add up"
            .into(),
    ]);
    page.finish()
}

fn shapes(page: &mut Page, arm: &Arm) {
    page.heading(&format!("What {} throws, and his best mix", staff::name(arm)));
    let share = |side: Side, index: usize| percent(arm.usage.on(side).pitches[index].share);
    let rows = arm.profile.pitches.iter().enumerate().map(|(index, pitch)| {
        vec![
            pitch.name.clone(),
            plain(pitch.shape.speed_mph, 1),
            signed(pitch.shape.vertical_break_in, 1),
            signed(pitch.shape.glove_side_break_in, 1),
            share(Side::Same, index),
            share(Side::Opposite, index),
        ]
    });
    page.table(&["pitch", "mph", "vertical, in", "glove side, in", "same side", "opposite"], rows.collect());
}
