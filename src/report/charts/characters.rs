//! A ball with its mark, drawn in characters.

use crate::ball::spin::Dot;
use crate::base::units::DEGREE;

/// Radius of the face in rows; columns are half as wide.
const RADIUS: i32 = 5;

/// The face with its mark, one string a row, all of one width. The rim is dotted, `+` marks the
/// middle and `@` the mark; the hours of the clock stand outside at 12, 3, 6 and 9.
pub(crate) fn face(dot: &Dot) -> Vec<String> {
    let angle = dot.clock.hours() * 30.0 * DEGREE;
    // The mark stays inside the rim that is drawn.
    let reach = dot.radius.min(1.0) * f64::from(RADIUS - 1);
    let mark = (round(2.0 * reach * angle.sin()), round(-reach * angle.cos()));
    let mut rows = vec![centred("12")];
    for row in -RADIUS..=RADIUS {
        let line: String = (-2 * RADIUS..=2 * RADIUS).map(|column| cell(column, row, mark)).collect();
        let (left, right) = if row == 0 { ("9 ", " 3") } else { ("  ", "  ") };
        rows.push(format!("{left}{line}{right}"));
    }
    rows.push(centred("6"));
    rows
}

fn cell(column: i32, row: i32, mark: (i32, i32)) -> char {
    let distance = (f64::from(column) / 2.0).hypot(f64::from(row));
    if (column, row) == mark {
        '@'
    } else if (column, row) == (0, 0) {
        '+'
    } else if (distance - f64::from(RADIUS)).abs() < 0.35 {
        '.'
    } else {
        ' '
    }
}

#[expect(clippy::cast_possible_truncation, reason = "at most twice the radius of the drawing")]
fn round(value: f64) -> i32 {
    value.round() as i32
}

fn centred(text: &str) -> String {
    let width = usize::try_from(4 * RADIUS + 5).unwrap_or(0);
    format!("{text:^width$}")
}

/// Two faces side by side under their titles.
pub(crate) fn side_by_side(left: (&str, &Dot), right: (&str, &Dot)) -> String {
    let (a, b) = (face(left.1), face(right.1));
    let width = a[0].chars().count();
    let titles = format!("{:^width$}    {:^width$}", left.0, right.0);
    let mut text = format!("{}\n", titles.trim_end());
    for (one, other) in a.iter().zip(&b) {
        text.push_str(format!("{one}    {other}").trim_end());
        text.push('\n');
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::base::geometry::Clock;

    #[test]
    fn the_mark_stands_where_its_clock_and_radius_say() {
        let low_right = face(&Dot { clock: Clock::from_hours(4.5), radius: 0.8 });
        let row = low_right.iter().position(|line| line.contains('@'));
        let column = low_right.iter().find_map(|line| line.find('@'));
        assert!(row > Some(6), "below the middle: {low_right:#?}");
        assert!(column > Some(12), "right of the middle: {low_right:#?}");
        let widths: Vec<usize> = low_right.iter().map(|line| line.chars().count()).collect();
        assert!(widths.iter().all(|&width| width == widths[0]), "{widths:?}");
    }
}
