//! The league day against what its source says of it, and the score program on files that are not so tidy.
//! Source: R package abdwr3edata (CC0), as told in `tests/data/README.md`.

use std::path::PathBuf;

use arsenalfit::base::geometry::Side;
use arsenalfit_lab::day::{Day, Outcome};
use arsenalfit_lab::evidence::Evidence;
use arsenalfit_lab::score::score;

/// Label, throws, release speed (mph), share of swings: counted when the day was prepared.
const COUNTED: [(&str, usize, f64, f64); 7] = [
    ("sinker", 643, 93.3, 0.42),
    ("cutter", 401, 89.0, 0.50),
    ("slider", 775, 85.1, 0.49),
    ("sweeper", 210, 82.6, 0.45),
    ("curveball", 292, 79.3, 0.38),
    ("changeup", 512, 85.9, 0.51),
    ("splitter", 135, 87.6, 0.44),
];

fn day() -> Day {
    Day::league().expect("the league day is kept with the tests")
}

#[test]
fn every_throw_of_the_day_is_measured_and_the_pitches_are_those_counted() {
    let day = day();
    assert_eq!((day.throws.len(), day.games()), (4418, 15));
    assert!(day.throws.iter().all(|throw| throw.measured.is_some() && throw.flight.is_some()));
    for (label, count, mph, swings) in COUNTED {
        let throws: Vec<_> = day.throws.iter().filter(|throw| throw.label == label).collect();
        let speed = throws.iter().filter_map(|throw| throw.measured).map(|throw| throw.shape.speed_mph).sum::<f64>();
        let swung = throws.iter().filter(|throw| throw.outcome.is_swing() == Some(true)).count();
        assert_eq!(throws.len(), count, "{label}");
        assert!((speed / count as f64 - mph).abs() < 0.06, "{label}");
        assert!((swung as f64 / count as f64 - swings).abs() < 0.01, "{label}");
    }
}

/// The file also holds the movement against gravity, worked out by its source from the same accelerations.
#[test]
fn movement_from_the_accelerations_is_the_movement_in_the_file() {
    let day = day();
    let text = std::fs::read_to_string(Day::league_path()).expect("the league day");
    let mut rows = csv::Reader::from_reader(text.as_bytes());
    let header = rows.headers().expect("a header").clone();
    let column = |name: &str| header.iter().position(|known| known == name).expect("a known column");
    let (up, glove) = (column("vertical_break_gravity_in"), column("glove_side_break_gravity_in"));
    for (row, throw) in rows.records().zip(&day.throws) {
        let row = row.expect("a row");
        let number = |place: usize| row[place].parse::<f64>().expect("a number");
        let movement = throw.flight.expect("a flight").movement_against_gravity();
        // The extension is rounded to a tenth of a foot, which is worth up to a twentieth of an inch.
        assert!((movement.up_in - number(up)).abs() < 0.1, "{} {}", movement.up_in, number(up));
        assert!((movement.glove_side_in - number(glove)).abs() < 0.1);
    }
}

#[test]
fn the_program_beats_constants_on_every_question_of_its_own_day() {
    let evidence = Evidence::league(&Day::league_path()).expect("the league day");
    let said = arsenalfit_lab::evidence::said(&evidence.meetings);
    let seen = evidence.meetings.iter().map(|meeting| meeting.seen);
    let losses = arsenalfit_lab::losses::Losses::of(said.into_iter().zip(seen)).means();
    // Boosted trees with every feature and the place, cross-validated by game on this day, reach these losses
    // (nats); what the program is worth on games it was not fitted to is told by `cross-validate`.
    for (loss, trees) in losses.into_iter().zip([0.496, 0.483, 0.168, 0.467]) {
        assert!(loss.expect("every question is answered") < trees, "{loss:?} against {trees}");
    }
}

fn scored(name: &str, change: impl Fn(usize, &str) -> String) -> (Vec<String>, String) {
    let text = std::fs::read_to_string(Day::league_path()).expect("the league day");
    let changed: Vec<String> = text.lines().take(200).enumerate().map(|(row, line)| change(row, line)).collect();
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::write(&path, changed.join("\r\n")).expect("a file of the test");
    let (mut chances, mut notes) = (Vec::new(), Vec::new());
    score(&path, &Day::league_path(), &mut chances, &mut notes).expect("a score");
    let chances = String::from_utf8(chances).expect("text");
    (chances.lines().map(str::to_owned).collect(), String::from_utf8(notes).expect("text"))
}

#[test]
fn a_row_comes_out_for_every_throw_whatever_is_missing() {
    let (chances, notes) = scored("untidy.csv", |row, line| match row % 5 {
        1 => line.replace("slider", "gyroball").replace("four-seam", ""),
        2 => line.split(',').map(|cell| if cell.contains('.') { "" } else { cell }).collect::<Vec<_>>().join(","),
        3 => line.replace(",right,", ",right,nobody knows,").replace(",same,", ",").replace(",opposite,", ","),
        _ => line.to_owned(),
    });
    assert_eq!(chances.len(), 200);
    for row in &chances[1..] {
        let numbers: Vec<f64> = row.split(',').map(|cell| cell.parse().expect("a number")).collect();
        assert!(numbers.len() == 4 && numbers.iter().all(|chance| (0.0..=1.0).contains(chance)), "{row}");
    }
    assert!(notes.contains("were answered with constants"), "{notes}");
}

#[test]
fn what_the_count_and_the_outcome_mean_is_read_from_words() {
    let day = day();
    let misses = day.throws.iter().filter(|throw| throw.outcome == Outcome::Miss).count();
    let opposite = day.throws.iter().filter(|throw| throw.side == Some(Side::Opposite)).count();
    assert_eq!(misses, 478 + 43, "swings and misses, and foul tips");
    assert!(opposite > 2000 && opposite < 2400, "{opposite}");
}
