//! What pitches of a family usually show, counted again from the day it was counted on: active share, the seams' push,
//! spin and place; and whether the usual share predicts movement in games it was not counted on.

#[path = "common/league_day.rs"]
#[expect(dead_code, reason = "other tests use the rest of it")]
mod league_day;
#[path = "common/usual.rs"]
mod usual;

use arsenalfit::athlete::session::Throw;
use arsenalfit::ball::flight::Air;
use arsenalfit::ball::flight::inverse::release_point;
use arsenalfit::ball::{Against, Family, Ground, Usual, recipe};
use league_day::{FAMILIES, Row, mean, pitches};
use usual::{Found, Spun, found, share_of};

/// Games of the day.
const GAMES: u32 = 15;
/// How far movement along the push may be off on games left out.
const HELD_OUT: f64 = 0.05;
/// Half of the last digit of a table, and a little for what rounding of the lift law moves.
const SHARE_DIGIT: f64 = 0.006;
const TENTH: f64 = 0.06;

fn spun(day: &[(Throw, Row)]) -> Vec<Spun> {
    day.iter().filter_map(|(throw, row)| Spun::of(throw, row)).collect()
}

fn of(all: &[Spun], family: Family) -> Vec<&Spun> {
    all.iter().filter(|throw| throw.family == family).collect()
}

#[test]
fn the_table_of_usual_pitches_is_what_the_day_shows() {
    let day = pitches(Against::DragFree);
    let all = spun(&day);
    for family in FAMILIES {
        let Found { pitchers, share, share_sd, glove_side, up, across, rpm_per_mph } = found(&of(&all, family));
        let told = Usual::of(family).expect("a family of the day");
        let seams = told.seams;
        assert_eq!(usize::from(told.pitchers), pitchers, "{family}");
        let place =
            |axis: fn(&Throw) -> f64| mean(day.iter().filter(|(_, r)| r.family() == family).map(|(t, _)| axis(t)));
        for (what, told, counted, digit) in [
            ("active share", told.active_share.mean, share, SHARE_DIGIT),
            ("its spread", told.active_share.sd, share_sd, SHARE_DIGIT),
            ("seams to the glove side", seams.mean.glove_side_in, glove_side.mean, TENTH),
            ("their spread", seams.sd.glove_side_in, glove_side.sd, TENTH),
            ("seams up", seams.mean.up_in, up.mean, TENTH),
            ("their spread up", seams.sd.up_in, up.sd, TENTH),
            ("seams across", seams.across_in, across.mean, TENTH),
            ("their spread across", seams.across_sd_in, across.sd, TENTH),
            ("rpm per mph", told.rpm_per_mph, rpm_per_mph.mean, TENTH),
            ("place to the glove side", told.place.glove_side_in, place(|t| t.plate.or_usual().glove_side_in), TENTH),
            ("height", told.place.height_in, place(|t| t.plate.or_usual().height_in), TENTH),
        ] {
            assert!((told - counted).abs() < digit, "{family}, {what}: told {told}, counted {counted:.3}");
        }
    }
}

/// Each game's pitches with the share counted on the other games; over all of them together.
#[test]
fn movement_along_the_push_is_predicted_within_a_twentieth_on_games_left_out() {
    let all = spun(&pitches(Against::DragFree));
    for family in FAMILIES {
        let own = of(&all, family);
        let (mut predicted, mut measured) = (0.0, 0.0);
        for game in 1..=GAMES {
            let (left_out, others): (Vec<&Spun>, Vec<&Spun>) = own.iter().partition(|throw| throw.game == game);
            let share = share_of(&others);
            predicted += left_out.iter().map(|throw| throw.along_given(share)).sum::<f64>();
            measured += left_out.iter().map(|throw| throw.along_in).sum::<f64>();
        }
        let ratio = predicted / measured;
        assert!((ratio - 1.0).abs() < HELD_OUT, "{family}: {ratio:.3} of what was measured");
    }
}

/// The other way: from shape and rate alone, where does the spin push? Measured clocks, averaged over a family, against
/// recipes that know what seams usually add. An hour is 30 degrees; seams alone turn a sinker's push by 20.
#[test]
fn a_recipe_turns_the_spin_where_pitchers_turn_it() {
    let day = pitches(Against::DragFree);
    for family in FAMILIES {
        let seams = family.usual_seams();
        let measured = day.iter().filter(|(throw, row)| row.family() == family && throw.spin.clock.is_some());
        let off = measured.step_by(5).filter_map(|(throw, _)| {
            let ground = Ground { release: release_point(throw.release.or_ordinary()), air: Air::SEA_LEVEL };
            let recipe = recipe(throw.shape, throw.spin.rpm?, seams, ground);
            let length = recipe.spin_push.length();
            (length > 6.0).then_some(recipe.spin.clock.hours_to(throw.spin.clock?))
        });
        let off = mean(off);
        assert!(off.abs() < 0.5, "{family}: {off:.2} hours");
    }
}
