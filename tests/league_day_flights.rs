//! The flight model against every pitch of a real day: movement counted both ways, places, speeds and times.

#[path = "common/constant_acceleration.rs"]
mod constant_acceleration;
#[path = "common/league_day.rs"]
#[expect(dead_code, reason = "other tests use the rest of it")]
mod league_day;

use arsenalfit::athlete::session::Throw as Measured;
use arsenalfit::ball::flight::inverse::{release_point, throw_of_shape};
use arsenalfit::ball::flight::{Air, Throw, Trajectory};
use arsenalfit::ball::{Against, Family};
use arsenalfit::base::Movement;
use arsenalfit::base::geometry::{RUBBER_Y, Vec3};
use arsenalfit::base::units::{FOOT, MILLISECOND, MPH, kelvin_from_celsius};
use constant_acceleration::Path;
use league_day::{FAMILIES, Row, mean, pitches};

/// Mean difference in movement allowed for a family, in.
const MOVEMENT_IN: f64 = 0.25;
/// Mean distance from the measured place allowed for a family, in.
const PLACE_IN: f64 = 0.5;
/// Mean difference in speed at the plate allowed over all and for a family, mph: a pitch loses 7 to 8 on its way, drag
/// differs by 9 % between families, and one coefficient serves all.
const PLATE_SPEED_MPH: (f64, f64) = (0.2, 0.7);
/// Mean difference in time of flight allowed over all and for a family, ms.
const TIME_MS: (f64, f64) = (1.0, 2.5);

/// Standard pressure, 25 degrees C and half humid: the air of the games is not in the data, and this is summer's.
fn summer_air() -> Air {
    Air::moist(101_325.0, kelvin_from_celsius(25.0), 0.5)
}

/// Counts of the data's own description; the day's labels of five four-seams are doubtful there.
#[test]
fn every_pitch_of_the_day_is_read() {
    let day = pitches(Against::DragFree);
    assert_eq!(day.len(), 4418);
    let count = |family: Family| day.iter().filter(|(_, row)| row.family() == family).count();
    assert_eq!(FAMILIES.map(count), [1450, 643, 401, 775, 210, 292, 512, 135]);
    assert!(day.iter().all(|(throw, _)| throw.outcome.is_some() && throw.batter_side.is_some()));
    assert_eq!(day.iter().filter(|(throw, _)| throw.spin.clock.is_none()).count(), 14, "no spin was read");
    let backspin = mean(of(&day, Family::FourSeam).filter_map(|(throw, _)| throw.spin.clock.map(|c| c.push().1)));
    assert!(backspin > 0.7, "four-seams push up: {backspin}");
}

fn of(day: &[(Measured, Row)], family: Family) -> impl Iterator<Item = &(Measured, Row)> {
    day.iter().filter(move |(_, row)| row.family() == family)
}

/// Both counts stand in the file; the program reads the one against gravity and must find the other. With each pitch's
/// own place, as the reader does, and with the family's usual one, as a profile's pitch is converted.
#[test]
fn movement_against_gravity_becomes_movement_without_drag_for_every_family() {
    let day = pitches(Against::Gravity);
    for family in FAMILIES {
        let usual = |throw: &Measured| {
            let (release, place) = (release_point(throw.release.or_ordinary()), throw.plate.or_usual());
            let read = Against::Gravity.reading(throw.shape, release, place, Air::SEA_LEVEL);
            Against::Gravity.drag_free(read, release, family.usual_place(), Air::SEA_LEVEL).movement()
        };
        for converted in [&|throw: &Measured| throw.shape.movement(), &usual as &dyn Fn(&Measured) -> Movement] {
            let off = |axis: fn(Movement) -> f64| {
                mean(of(&day, family).map(|(throw, row)| axis(converted(throw) - row.movement())))
            };
            let (side, up) = (off(|m| m.glove_side_in), off(|m| m.up_in));
            let told = format!("{family}: {side:.2} to the glove side, {up:.2} up");
            assert!(side.abs() < MOVEMENT_IN && up.abs() < MOVEMENT_IN, "{told}");
        }
    }
}

#[test]
fn a_shape_read_either_way_and_back_is_itself() {
    for (throw, _) in pitches(Against::DragFree).iter().step_by(40) {
        let (release, place) = (release_point(throw.release.or_ordinary()), throw.plate.or_usual());
        let read = Against::Gravity.reading(throw.shape, release, place, Air::SEA_LEVEL);
        let higher = read.vertical_break_in - throw.shape.vertical_break_in;
        assert!((0.0..4.5).contains(&higher), "drag holds a ball up: {higher}");
        let back = Against::Gravity.drag_free(read, release, place, Air::SEA_LEVEL);
        assert!(back.movement_distance_in(throw.shape) < 0.01, "{back:?} from {:?}", throw.shape);
        assert_eq!(Against::DragFree.drag_free(read, release, place, Air::SEA_LEVEL), read);
    }
}

/// The flight of a measured pitch from its release, and the path that was stored of it.
fn flown(throw: &Measured, row: &Row) -> (Trajectory, Path) {
    let release = release_point(throw.release.or_ordinary());
    let (stored, acceleration) = row.kinematics();
    let path = Path::new(stored, acceleration, release.y / FOOT);
    let shaped = throw_of_shape(throw.shape, release, throw.plate.or_usual(), summer_air());
    let direction = path.velocity * FOOT + lost_to_one_acceleration(&shaped, path.time);
    (Throw { velocity: direction.unit() * throw.shape.speed(), ..shaped }.fly(), path)
}

/// A stored path has one acceleration. A real one changes, at a rate j all but steady; the parabola nearest to it over
/// a time T leaves the hand with a velocity that lacks 2/5 j (T/2)² (least squares; the residue of t³ is a Legendre
/// polynomial).
fn lost_to_one_acceleration(throw: &Throw, time: f64) -> Vec3 {
    let end = throw.fly().at(time).velocity;
    let rate = (throw.forces.acceleration(end) - throw.forces.acceleration(throw.velocity)) * (1.0 / time);
    rate * (0.4 * (time / 2.0).powi(2))
}

#[test]
fn flights_from_release_cross_the_plate_where_they_did() {
    let day = pitches(Against::DragFree);
    for family in FAMILIES {
        let miss = |(throw, row): &(Measured, Row)| {
            let (found, real) = (flown(throw, row).0.crossing().location(), throw.plate.or_usual());
            (found.glove_side_in - real.glove_side_in).hypot(found.height_in - real.height_in)
        };
        let miss = mean(of(&day, family).map(miss));
        assert!(miss < PLACE_IN, "{family}: {miss:.2} in off");
    }
}

#[test]
fn flights_from_release_arrive_when_and_as_fast_as_they_did() {
    let day = pitches(Against::DragFree);
    let off = |(throw, row): &(Measured, Row)| {
        let (flight, path) = flown(throw, row);
        let crossing = flight.crossing();
        let real = path.plate_velocity().norm() * FOOT;
        ((crossing.speed - real) / MPH, (crossing.time - path.time) / MILLISECOND)
    };
    let mut means = vec![("the day".to_owned(), PLATE_SPEED_MPH.0, TIME_MS.0, day.iter().map(off).collect::<Vec<_>>())];
    for family in FAMILIES {
        let all = of(&day, family).map(off).collect();
        means.push((family.to_string(), PLATE_SPEED_MPH.1, TIME_MS.1, all));
    }
    for (name, speed_mph, time_ms, all) in means {
        let (speed, time) = (mean(all.iter().map(|m| m.0)), mean(all.iter().map(|m| m.1)));
        assert!(speed.abs() < speed_mph && time.abs() < time_ms, "{name}: {speed:.2} mph, {time:.2} ms");
    }
}

/// Release speed and plate place of the stored path are those of the row: the reading of the nine numbers is right.
#[test]
fn the_stored_paths_agree_with_their_own_rows() {
    for (throw, row) in pitches(Against::DragFree) {
        let (stored, acceleration) = row.kinematics();
        let release = throw.release.or_ordinary();
        let path = Path::new(stored, acceleration, RUBBER_Y / FOOT - release.extension_ft);
        assert!((path.velocity.norm() * FOOT / MPH - throw.shape.speed_mph).abs() < 0.35, "{row:?}");
        let crosses = path.velocity * path.time + path.acceleration * (path.time * path.time / 2.0);
        let place = throw.plate.or_usual();
        let (x, z) = (crosses.x - release.side_ft, crosses.z + release.height_ft);
        assert!((12.0 * x - place.glove_side_in).abs() < 0.8, "{row:?}");
        assert!((12.0 * z - place.height_in).abs() < 0.6, "{row:?}");
        assert!(path.mean_velocity().y < -70.0, "toward the plate");
    }
}
