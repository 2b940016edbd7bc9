//! The ball with its mark, for `dot` and wherever a recipe is shown.

use crate::athlete::profile::Profile;
use crate::ball::spin::{Dot, Spin};
use crate::base::geometry::Hand;
use crate::base::stats::Estimate;
use crate::former::search::reach::Recipe;

use super::super::ball::side_by_side;
use super::super::format::{percent, plain, signed};
use super::Page;

/// One pitch of a profile and its mark.
pub fn dot(profile: &Profile, name: &str, spin: Spin, measured: bool, width: u16) -> String {
    let mut page = Page::new(width);
    page.heading_line(&format!("{}: {name}", profile.athlete.name));
    if !measured {
        page.paragraph(
            "The spin is not fully measured: what is missing is worked out from the shape, as if the seams did nothing.",
        );
    }
    spin_lines(&mut page, spin, profile.athlete.throws);
    page.finish()
}

/// A wished-for shape, how it must spin and where its mark shows; `active_rpm` is the active spin that
/// would do, over the published lift laws.
pub fn recipe(recipe: &Recipe, active_rpm: Estimate, hand: Hand, width: u16) -> String {
    let mut page = Page::new(width);
    let shape = recipe.shape;
    page.heading_line(&format!(
        "{} mph, vertical break {} in, glove-side break {} in, throws {hand}",
        plain(shape.speed_mph, 1),
        signed(shape.vertical_break_in, 1),
        signed(shape.glove_side_break_in, 1),
    ));
    spin_lines(&mut page, recipe.spin, hand);
    page.paragraph(&format!(
        "Active spin that would do with no help from the seams: {} rpm ({} to {} over three published lift laws), so \
         {} to {} of {} rpm.",
        plain(active_rpm.value, 0),
        plain(active_rpm.low, 0),
        plain(active_rpm.high, 0),
        percent(active_rpm.low / recipe.spin.rpm),
        percent((active_rpm.high / recipe.spin.rpm).min(1.0)),
        plain(recipe.spin.rpm, 0),
    ));
    page.finish()
}

fn spin_lines(page: &mut Page, spin: Spin, hand: Hand) {
    page.paragraph(&format!(
        "{} rpm, pushing toward {} (as the pitcher sees it), {} active, gyro angle {} degrees",
        plain(spin.rpm, 0),
        spin.clock.for_hand(hand),
        percent(spin.active_fraction),
        plain(spin.gyro_deg(), 0),
    ));
    page.verbatim("\n");
    page.verbatim(&faces(spin, hand));
}

/// The two faces and where the mark stands on each.
pub(super) fn faces(spin: Spin, hand: Hand) -> String {
    let dots = spin.dot();
    let shown = |dot: Dot| Dot { clock: dot.clock.for_hand(hand), ..dot };
    let (thrower, partner) = (shown(dots.thrower), shown(dots.partner));
    let place = |who: &str, dot: &Dot| {
        format!("{who} sees it at {}, {} of the way from the middle to the rim\n", dot.clock, percent(dot.radius))
    };
    let mut text = side_by_side(("the thrower sees", &thrower), ("the partner sees", &partner));
    text.push_str(&place("thrower", &thrower));
    text.push_str(&place("partner", &partner));
    text
}
