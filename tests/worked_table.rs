//! A published table of worked pitches, from its own velocities and accelerations to its own printed digits.
//!
//! Data: `tests/data/worked_table.csv.gz`, 4,220 pitches of 2017 with worked aerodynamics; test data of the Python package
//! pybaseball (MIT). Velocity and acceleration count at 50 ft; a pitch is one constant acceleration. Its active spin
//! follows from its lift coefficient, so this is one implementation against another and no evidence for the law.

#[path = "common/constant_acceleration.rs"]
#[expect(dead_code, reason = "other tests use the rest of it")]
mod constant_acceleration;

use std::io::Read;

use arsenalfit::ball::spin::{LiftLaw, Spin};
use arsenalfit::base::geometry::{Clock, Vec3};
use arsenalfit::base::units::RPM;
use constant_acceleration::Path;
use serde::Deserialize;

/// Gravity, ft/s².
const GRAVITY: f64 = 32.174;
/// ρ A / 2m of the table's air and ball, 1/ft: what its drag coefficients imply, alike in all rows to six digits.
const PER_FOOT: f64 = 5.383e-3;
/// Radius of the table's ball, ft.
const RADIUS: f64 = 0.121;

#[derive(Deserialize)]
struct Row {
    release_y_ft: f64,
    time_of_flight_s: f64,
    vx: f64,
    vy: f64,
    vz: f64,
    ax: f64,
    ay: f64,
    az: f64,
    mean_speed_fps: f64,
    drag_fps2: f64,
    cd: f64,
    side_accel_fps2: f64,
    cl: f64,
    spin_factor: f64,
    active_rpm: f64,
    measured_rpm: f64,
    active_fraction: f64,
    push_clock_deg: f64,
    gyro_deg: Option<f64>,
}

/// What the table works out of a pitch.
struct Worked {
    time: f64,
    mean_speed: f64,
    drag: f64,
    drag_coefficient: f64,
    side: f64,
    lift_coefficient: f64,
    spin_factor: f64,
    active_rpm: f64,
    active_fraction: f64,
    push: Clock,
}

impl Row {
    fn worked(&self) -> Worked {
        let acceleration = Vec3::new(self.ax, self.ay, self.az);
        let path = Path::new(Vec3::new(self.vx, self.vy, self.vz), acceleration, self.release_y_ft);
        let mean_velocity = path.mean_velocity();
        let speed = mean_velocity.norm();
        let air = acceleration + Vec3::new(0.0, 0.0, GRAVITY);
        let drag = -air.dot(mean_velocity.unit());
        let side = air.transverse_to(mean_velocity.unit());
        let pressure = PER_FOOT * speed * speed;
        let lift_coefficient = side.norm() / pressure;
        let spin_factor = LiftLaw::Exponential.spin_parameter(lift_coefficient);
        let active_rpm = spin_factor * speed / RADIUS / RPM;
        let active_fraction = active_rpm / self.measured_rpm;
        Worked {
            time: path.time,
            mean_speed: speed,
            drag,
            drag_coefficient: drag / pressure,
            side: side.norm(),
            lift_coefficient,
            spin_factor,
            active_rpm,
            active_fraction,
            push: Clock::from_push(side.x, side.z),
        }
    }
}

fn rows() -> Vec<Row> {
    let mut text = String::new();
    let packed: &[u8] = include_bytes!("data/worked_table.csv.gz");
    flate2::read::GzDecoder::new(packed).read_to_string(&mut text).expect("packed text");
    csv::Reader::from_reader(text.as_bytes()).deserialize().collect::<Result<_, _>>().expect("complete rows")
}

/// Half of the last printed digit, and the same again where a figure rests on one the table has rounded (its constants
/// are known to four and to three digits): parts of a hundred thousand of the figure.
#[test]
fn the_worked_table_comes_out_of_its_own_kinematics() {
    let rows = rows();
    assert_eq!(rows.len(), 4220);
    for (index, row) in rows.iter().enumerate() {
        let worked = row.worked();
        for (what, found, printed, digit) in [
            ("time of flight", worked.time, row.time_of_flight_s, 1e-5),
            ("mean speed", worked.mean_speed, row.mean_speed_fps, 5.1e-6),
            ("drag", worked.drag, row.drag_fps2, 5.1e-6),
            ("drag coefficient", worked.drag_coefficient, row.cd, 5.1e-6 + 2e-5 * row.cd),
            ("side acceleration", worked.side, row.side_accel_fps2, 5.1e-6),
            ("lift coefficient", worked.lift_coefficient, row.cl, 5.1e-6 + 2e-5 * row.cl),
            ("spin factor", worked.spin_factor, row.spin_factor, 5.1e-6 + 3e-4 * row.spin_factor),
            ("active spin", worked.active_rpm, row.active_rpm, 0.02 + 3e-4 * row.active_rpm),
            ("active share", worked.active_fraction, row.active_fraction, 1e-5 + 3e-4 * row.active_fraction),
        ] {
            assert!((found - printed).abs() <= digit, "row {index}, {what}: {found}, printed {printed}");
        }
        // The table counts the direction of the push, in whole degrees, from six o'clock.
        let turned = (30.0 * worked.push.hours() + 180.0 - row.push_clock_deg + 180.0).rem_euclid(360.0) - 180.0;
        assert!(turned.abs() < 0.501, "row {index}: {} o'clock, printed {}", worked.push, row.push_clock_deg);
        if let Some(gyro) = row.gyro_deg {
            let printed = Spin { rpm: row.measured_rpm, active_fraction: row.active_fraction, clock: worked.push };
            assert!((printed.gyro_deg() - gyro).abs() < 0.501, "row {index}: {}, printed {gyro}", printed.gyro_deg());
        }
    }
}
