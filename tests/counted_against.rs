//! What movement is counted against: told in a profile, of one pitch or in a column map; assumed aloud when it is not;
//! doubted when a four-seam's numbers look like the other kind.

#[path = "common/league_day.rs"]
#[expect(dead_code, reason = "other tests use the rest of it")]
mod league_day;

use arsenalfit::athlete::profile::Profile;
use arsenalfit::ball::{Against, Family};
use arsenalfit::decide::inspect::{Found, second_looks};
use arsenalfit::files::{ColumnMap, ReadOptions, profile_from_toml, propose, session_from_bytes};
use league_day::{mean, pitches};

/// Distance within which two shapes are one, in.
const SAME_IN: f64 = 1e-9;

fn profile(athlete: &str, four_seam: &str, throws: &str) -> Profile {
    let text = format!(
        "[athlete]\nname = \"Invented\"\nthrows = \"{throws}\"\n{athlete}\n\
         [[pitch]]\nname = \"four-seam\"\nfamily = \"four-seam\"\nspeed_mph = 93\nvertical_break_in = 16.4\n\
         glove_side_break_in = -8.4\n{four_seam}\n\
         [[pitch]]\nname = \"slider\"\nfamily = \"slider\"\nspeed_mph = 84\nvertical_break_in = 1.6\n\
         glove_side_break_in = 3.2\n"
    );
    profile_from_toml(&text, "invented.toml").unwrap_or_else(|error| panic!("{error}"))
}

fn assumes_it(profile: &Profile) -> bool {
    profile.assumptions.iter().any(|sentence| sentence.contains("movement counted against the same throw"))
}

#[test]
fn a_profile_tells_it_for_all_pitches_and_a_pitch_for_itself() {
    let plain = profile("", "", "right");
    let told = profile("against = \"drag-free\"", "", "right");
    let gravity = profile("against = \"gravity\"", "", "right");
    let mixed = profile("against = \"gravity\"", "against = \"drag-free\"", "right");
    assert!(assumes_it(&plain), "{:?}", plain.assumptions);
    assert!(![&told, &gravity, &mixed].into_iter().any(assumes_it));
    for index in 0..2 {
        let apart = |a: &Profile, b: &Profile| a.pitches[index].shape.movement() - b.pitches[index].shape.movement();
        assert!(apart(&plain, &told).length() < SAME_IN);
        let shared = apart(&plain, &gravity);
        assert!((1.0..3.0).contains(&shared.up_in), "drag holds a ball up: {shared:?}");
        assert!((-2.0..-0.3).contains(&shared.glove_side_in), "and to the arm side: {shared:?}");
    }
    assert_eq!(mixed.pitches[0].shape, plain.pitches[0].shape);
    assert_eq!(mixed.pitches[1].shape, gravity.pitches[1].shape);
}

#[test]
fn a_left_handers_movement_is_converted_as_a_right_handers() {
    let [right, left] = ["right", "left"].map(|hand| profile("against = \"gravity\"", "", hand));
    assert_eq!(right.pitches[0].shape, left.pitches[0].shape);
}

#[test]
fn a_session_says_aloud_what_it_assumes_and_a_map_tells_it() {
    let rows = "speed_mph,vertical_break_in,glove_side_break_in\n92,16,-8\n".as_bytes();
    let read = |map: &str| {
        let map = ColumnMap::from_toml(map, "columns.toml").expect("a map");
        session_from_bytes("throws.csv", rows, ReadOptions { map, hand: None, progress: &mut |_| {} }).expect("throws")
    };
    let (plain, told, gravity) = (read(""), read("against = \"drag-free\""), read("against = \"gravity\""));
    assert!(plain.notes.iter().any(|note| note.contains("against is not told")), "{:?}", plain.notes);
    assert!(told.notes.is_empty() && gravity.notes.is_empty());
    assert_eq!(plain.throws[0].shape, told.throws[0].shape);
    let up = told.throws[0].shape.vertical_break_in - gravity.throws[0].shape.vertical_break_in;
    assert!((1.0..3.0).contains(&up), "{up}");
    assert!(ColumnMap::from_toml("against = \"gravty\"", "columns.toml").is_err());
}

#[test]
fn a_proposed_map_says_what_to_ask_and_reads_back() {
    for (header, against) in [("vertical_break_gravity_in", Against::Gravity), ("vertical_break_in", Against::DragFree)]
    {
        let rows = format!("speed_mph,{header},glove_side_break_in\n92,16,-8\n");
        let text = propose("throws.csv", rows.as_bytes()).expect("a proposal").map.to_toml();
        assert!(text.contains("ask the unit's maker") && text.contains("2 in higher"), "{text}");
        assert_eq!(ColumnMap::from_toml(&text, "columns.toml").expect("it reads").against, Some(against), "{text}");
    }
}

/// Four-seams of pitchers of the league's day, read as what they are and as what they are not. That which is told: the
/// hint comes for a third of those that are the other kind and seldom for the rest (counted in the module's own words).
#[test]
fn check_doubts_four_seams_that_look_like_the_other_kind() {
    let (free, gravity) = (pitches(Against::DragFree), pitches(Against::Gravity));
    let is_doubted = |of: &dyn Fn(usize) -> (f64, f64), rows: &[usize]| {
        let (up, side) = (mean(rows.iter().map(|&i| of(i).0)), mean(rows.iter().map(|&i| of(i).1)));
        let release = |read: &dyn Fn(usize) -> Option<f64>| mean(rows.iter().filter_map(|&i| read(i)));
        let height = release(&|i| free[i].0.release.height_ft);
        let side_ft = release(&|i| free[i].0.release.side_ft);
        let text = format!(
            "[athlete]\nname = \"Real\"\nthrows = \"right\"\n[release]\nheight_ft = {height}\nside_ft = {side_ft}\n\
             [[pitch]]\nname = \"x\"\nfamily = \"four-seam\"\nspeed_mph = 93\nvertical_break_in = {up}\n\
             glove_side_break_in = {}\n",
            side.min(2.0)
        );
        let profile = profile_from_toml(&text, "real.toml").unwrap_or_else(|error| panic!("{error}"));
        second_looks(&profile).iter().any(|look| matches!(look.found, Found::Counted { .. }))
    };
    let pitchers: std::collections::BTreeSet<u32> = free.iter().map(|(_, row)| row.pitcher).collect();
    let (mut right, mut wrong, mut all) = (0, 0, 0);
    for pitcher in pitchers {
        let is_own = |&i: &usize| free[i].1.pitcher == pitcher && free[i].1.family() == Family::FourSeam;
        let rows: Vec<usize> = (0..free.len()).filter(is_own).collect();
        if rows.len() < 5 {
            continue;
        }
        all += 1;
        let as_free = |i: usize| (free[i].1.vertical_break_in, free[i].1.glove_side_break_in);
        let as_gravity = |i: usize| {
            let (release, place) = (gravity[i].0.release, gravity[i].0.plate);
            let point = arsenalfit::ball::flight::inverse::release_point(release.or_ordinary());
            let air = arsenalfit::ball::flight::Air::SEA_LEVEL;
            let read = Against::Gravity.reading(gravity[i].0.shape, point, place.or_usual(), air);
            (read.vertical_break_in, read.glove_side_break_in)
        };
        wrong += u32::from(is_doubted(&as_free, &rows));
        right += u32::from(is_doubted(&as_gravity, &rows));
    }
    let (right, wrong) = (f64::from(right) / f64::from(all), f64::from(wrong) / f64::from(all));
    assert!(all == 83 && (0.25..0.45).contains(&right), "{right} of the {all} that are the other kind");
    assert!(wrong < 0.1, "{wrong} of the {all} that are not");
}
