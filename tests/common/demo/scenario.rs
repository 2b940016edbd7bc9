//! The invented athletes: what they throw, on which days, and what went wrong.

use rand::{Rng, SeedableRng};
use rand_xoshiro::Xoshiro256Plus;

use super::{DemoDay, DemoPitch, csv, normal, session};
use arsenalfit::athlete::session::Session;
use arsenalfit::ball::Family;
use arsenalfit::ball::spin::Spin;
use arsenalfit::base::geometry::{Clock, Hand};

/// Who throws what, when.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Scenario {
    /// Seed of every throw.
    pub(crate) seed: u64,
    /// Throwing hand.
    pub(crate) hand: Hand,
    /// The true pitches.
    pub(crate) pitches: Vec<DemoPitch>,
    /// The days.
    pub(crate) days: Vec<DemoDay>,
}

/// A plausible pitch of each family, right-hander, three-quarter slot. Our own invention.
pub(crate) fn catalogue() -> Vec<DemoPitch> {
    let make = |family, mph, rpm, active_fraction, hours, seams| {
        DemoPitch::new(family, mph, Spin { rpm, active_fraction, clock: Clock::from_hours(hours) }, seams)
    };
    vec![
        make(Family::FourSeam, 93.0, 2250.0, 0.88, 0.7, [0.0, 0.0]),
        make(Family::Sinker, 92.0, 2100.0, 0.80, 1.9, [-0.01, -0.04]),
        make(Family::Cutter, 88.5, 2400.0, 0.32, 11.7, [0.01, 0.0]),
        make(Family::Slider, 85.0, 2400.0, 0.18, 10.2, [0.0, 0.0]),
        make(Family::Sweeper, 81.0, 2650.0, 0.45, 9.0, [0.03, 0.0]),
        make(Family::Curveball, 78.0, 2600.0, 0.65, 6.6, [0.0, 0.0]),
        make(Family::Changeup, 84.5, 1700.0, 0.80, 1.8, [-0.01, -0.03]),
    ]
}

/// Separation (in joint spreads) from which two pitches of a random scenario overlap at most
/// moderately: about one throw in a hundred could be either.
const MODERATE: f64 = 4.5;

impl Scenario {
    /// A random athlete with two to five pitches, three days and one day in four on another zero.
    pub(crate) fn random(seed: u64) -> Self {
        let mut rng = Xoshiro256Plus::seed_from_u64(seed ^ 0x5eed);
        let count = rng.gen_range(2..=5);
        let pitches = random_pitches(&mut rng, count);
        let mut days: Vec<DemoDay> = (1..=4).map(|day| ordinary_day(&mut rng, format!("day {day}"))).collect();
        if rng.gen_bool(0.5) {
            let sign = if rng.gen_bool(0.5) { 1.0 } else { -1.0 };
            days[3].zero_in[0] += sign * rng.gen_range(9.0..18.0);
        }
        let hand = if rng.gen_bool(0.3) { Hand::Left } else { Hand::Right };
        Self { seed, hand, pitches, days }
    }
}

fn ordinary_day(rng: &mut Xoshiro256Plus, name: String) -> DemoDay {
    DemoDay { name, throws: rng.gen_range(70..130), zero_in: [0.7 * normal(rng), 0.7 * normal(rng)] }
}

/// The four-seam and others from the catalogue, varied, until all are told apart.
fn random_pitches(rng: &mut Xoshiro256Plus, count: usize) -> Vec<DemoPitch> {
    let catalogue = catalogue();
    let mut pitches = vec![varied(rng, catalogue[0])];
    pitches[0].share = 2.0;
    while pitches.len() < count {
        let which = rng.gen_range(1..catalogue.len());
        let next = varied(rng, catalogue[which]);
        let is_new = pitches.iter().all(|p| p.family != next.family && p.separation(&next) > MODERATE);
        if is_new {
            pitches.push(next);
        }
    }
    pitches
}

fn varied(rng: &mut Xoshiro256Plus, pitch: DemoPitch) -> DemoPitch {
    let mut pitch = pitch;
    pitch.shape.speed_mph += 1.0 * normal(rng);
    pitch.shape.vertical_break_in += 1.5 * normal(rng);
    pitch.shape.glove_side_break_in += 1.5 * normal(rng);
    pitch.sd = [rng.gen_range(0.8..1.4), rng.gen_range(1.6..2.4), rng.gen_range(1.6..2.4)];
    pitch.share = rng.gen_range(0.25..1.2);
    pitch
}

/// The scenario of `demo-data/`: an invented left-hander, three sessions over six weeks; the unit
/// was set up anew before the third.
pub(crate) fn six_weeks() -> Scenario {
    let wanted = [(Family::FourSeam, 1.0), (Family::Slider, 0.45), (Family::Curveball, 0.3), (Family::Changeup, 0.15)];
    let catalogue = catalogue();
    let pitches = wanted.iter().filter_map(|&(family, share)| {
        catalogue.iter().find(|pitch| pitch.family == family).map(|&pitch| DemoPitch { share, ..pitch })
    });
    let day = |name: &str, throws, zero_in| DemoDay { name: name.to_owned(), throws, zero_in };
    Scenario {
        seed: 20_310_203,
        hand: Hand::Left,
        pitches: pitches.collect(),
        days: vec![
            day("2031-02-03", 95, [0.4, -0.3]),
            day("2031-02-24", 110, [-0.5, 0.4]),
            day("2031-03-17", 90, [-13.0, 1.5]),
        ],
    }
}

/// The three files of `demo-data/` with their faults: (file name, text).
///
/// First session: two impossible readings, a row exported twice, a lob. Second: a run of sliders
/// labelled curveball. Third: another zero.
pub(crate) fn six_weeks_files() -> Vec<(String, String)> {
    let scenario = six_weeks();
    let mut whole = session(&scenario);
    mislabel(&mut whole, "2031-02-24", Family::Slider, Family::Curveball, 9);
    let lines = |day: usize| csv(&whole, Some(u16::try_from(day).unwrap_or(0)));
    (0..scenario.days.len())
        .map(|day| {
            let text = if day == 0 { with_glitches(&lines(day)) } else { lines(day) };
            (format!("session-{}.csv", scenario.days[day].name), text)
        })
        .collect()
}

/// Gives the first throws of a pitch on a day another label.
fn mislabel(session: &mut Session, day: &str, from: Family, to: Family, run: usize) {
    let find = |family: Family| session.labels.iter().position(|label| label == family.name());
    let (Some(from), Some(to)) = (find(from), find(to)) else { return };
    let wanted = session.days.iter().position(|name| name == day);
    let of_day = session.throws.iter_mut().filter(|throw| Some(usize::from(throw.day)) == wanted);
    for throw in of_day.filter(|throw| throw.label.map(usize::from) == Some(from)).take(run) {
        throw.label = u16::try_from(to).ok();
    }
}

fn with_glitches(text: &str) -> String {
    let mut lines: Vec<String> = text.lines().map(str::to_owned).collect();
    let spoil = |line: &str, cell: usize, value: &str| {
        let mut cells: Vec<&str> = line.split(',').collect();
        cells[cell] = value;
        cells.join(",")
    };
    lines[12] = spoil(&lines[12], 1, "412.0");
    lines[31] = spoil(&lines[31], 0, "931");
    lines[55] = spoil(&lines[55], 0, "52.3");
    let twice = lines[40].clone();
    lines.insert(41, twice);
    lines.join("\n") + "\n"
}
