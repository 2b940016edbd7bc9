//! An invented session as a file with our own column names.

use std::fmt::Write;

use super::shown_clock;
use arsenalfit::athlete::session::{Session, Throw};
use arsenalfit::base::geometry::Hand;
use arsenalfit::files::Quantity;

/// The session, or one day of it, as CSV text.
pub(crate) fn csv(session: &Session, day: Option<u16>) -> String {
    let headers: Vec<&str> = Quantity::ALL.iter().map(|quantity| quantity.header()).collect();
    let mut text = headers[..15].join(",") + "\n";
    for throw in session.throws.iter().filter(|throw| day.is_none_or(|day| throw.day == day)) {
        line(&mut text, session, throw);
    }
    text
}

fn line(text: &mut String, session: &Session, throw: &Throw) {
    let hand = session.hand.unwrap_or(Hand::Right);
    let number = |value: Option<f64>, digits: usize| value.map_or_else(String::new, |v| format!("{v:.digits$}"));
    let shape = throw.shape;
    let cells = [
        number(Some(shape.speed_mph), 1),
        number(Some(shape.vertical_break_in), 1),
        number(Some(shape.glove_side_break_in), 1),
        number(throw.spin.rpm, 0),
        number(throw.spin.active_fraction, 2),
        throw.spin.clock.map_or_else(String::new, |clock| shown_clock(clock, hand)),
        number(throw.release.height_ft, 2),
        number(throw.release.side_ft, 2),
        number(throw.release.extension_ft, 2),
        number(throw.plate.side_in, 1),
        number(throw.plate.height_in, 1),
        throw.label.map_or_else(String::new, |label| session.labels[usize::from(label)].clone()),
        throw.batter_side.map_or_else(String::new, |side| side.to_string()),
        throw.outcome.map_or_else(String::new, |outcome| outcome.name().to_owned()),
        session.days[usize::from(throw.day)].clone(),
    ];
    // Writing to a String cannot fail.
    let _ = writeln!(text, "{}", cells.join(","));
}
