//! Sessions as the watch needs them: days in order, and which throw was which pitch.
//!
//! A label decides where there is one; a throw without a usable label is given to the nearest
//! shape, and how many were is said. When the profile already holds the new pitch (as after `sort
//! --write`), its throws are the new pitch's, and that is said. Days written as `2026-11-25` are put in date order; when any
//! day is written otherwise, the order of reading is kept and said.

use jiff::civil::Date;

use crate::athlete::profile::{Pitch, Profile};
use crate::athlete::session::{Session, Throw};
use crate::ball::Shape;
use crate::files::{family_of_word, is_same_name};
use crate::learn::target::Target;

use super::caution::Caution;

/// One day's throws.
#[derive(Debug, Clone, PartialEq)]
pub struct Outing {
    /// The day, as written.
    pub day: String,
    /// The fastballs.
    pub fastballs: Vec<Throw>,
    /// The throws of the new pitch.
    pub new_pitches: Vec<Throw>,
    /// How many throws were anything else.
    pub others: u32,
}

/// Farther from every known shape than this many standard deviations is none of them.
const STRANGE: f64 = 5.0;

/// The days of `session`, in date order. `label` is what the new pitch is called in the files;
/// the target's family is understood as well.
pub fn outings(
    session: &Session,
    profile: &Profile,
    target: &Target,
    label: Option<&str>,
) -> (Vec<Outing>, Vec<Caution>) {
    let order = day_order(&session.days);
    let mut outings: Vec<Outing> = session.days.iter().map(|day| Outing::empty(day)).collect();
    let roles = Roles::new(session, profile, target, label);
    let mut guessed = 0;
    for throw in &session.throws {
        let (role, by_shape) = roles.of(throw);
        guessed += u32::from(by_shape);
        if let Some(outing) = outings.get_mut(usize::from(throw.day)) {
            outing.add(role, *throw);
        }
    }
    let undated = order.is_none().then_some(Caution::DaysNotDated);
    let places = order.unwrap_or_else(|| (0..outings.len()).collect());
    let ordered = places.into_iter().map(|place| outings[place].clone()).filter(|outing| !outing.is_empty()).collect();
    let guesses = (guessed > 0).then_some(Caution::GivenToNearestShape { throws: guessed });
    let own = roles.is_in_profile.then_some(Caution::AlreadyInProfile { family: target.family });
    (ordered, undated.into_iter().chain(own).chain(guesses).collect())
}

/// The places of the days in date order; nothing when some day is no date.
fn day_order(days: &[String]) -> Option<Vec<usize>> {
    let dates: Vec<Date> = days.iter().map(|day| day.trim().parse().ok()).collect::<Option<_>>()?;
    let mut places: Vec<usize> = (0..days.len()).collect();
    places.sort_by_key(|&place| dates[place]);
    Some(places)
}

impl Outing {
    fn empty(day: &str) -> Self {
        Self { day: day.to_owned(), fastballs: Vec::new(), new_pitches: Vec::new(), others: 0 }
    }

    fn is_empty(&self) -> bool {
        self.fastballs.is_empty() && self.new_pitches.is_empty() && self.others == 0
    }

    fn add(&mut self, role: Role, throw: Throw) {
        match role {
            Role::Fastball => self.fastballs.push(throw),
            Role::NewPitch => self.new_pitches.push(throw),
            Role::Other => self.others += 1,
        }
    }
}

/// What a throw is to the watch.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Role {
    Fastball,
    NewPitch,
    Other,
}

/// What a label is known to name.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Meaning {
    NewPitch,
    /// A pitch of the profile, by its place.
    Own(usize),
    Unknown,
}

/// What labels are read against.
struct Names<'a> {
    profile: &'a Profile,
    target: &'a Target,
    label: Option<&'a str>,
    fastball: Option<&'a Pitch>,
}

impl Names<'_> {
    /// A label names the new pitch when it is the one asked for; else a pitch of the profile by its
    /// name or, in the trade's words, by its family; else the new pitch by its family.
    fn meaning(&self, written: &str) -> Meaning {
        if self.label.is_some_and(|label| is_same_name(label, written)) {
            return Meaning::NewPitch;
        }
        let pitches = &self.profile.pitches;
        let meant = family_of_word(written);
        let is_of = |pitch: &Pitch| meant.is_some_and(|meant| meant.value == pitch.family);
        // "Fastball" is the one he throws, whatever it is.
        let is_main = |pitch: &Pitch| {
            let is_any = meant.is_some_and(|meant| meant.is_open && meant.value.is_fastball());
            is_any && self.fastball.is_some_and(|main| main.name == pitch.name)
        };
        let own = (pitches.iter().position(|pitch| is_same_name(&pitch.name, written)))
            .or_else(|| pitches.iter().position(is_main))
            .or_else(|| pitches.iter().position(is_of));
        match own {
            Some(place) => Meaning::Own(place),
            None if meant.is_some_and(|meant| meant.value == self.target.family) => Meaning::NewPitch,
            None => Meaning::Unknown,
        }
    }
}

struct Roles {
    /// For each label of the session, what it is known to be.
    labels: Vec<Option<Role>>,
    /// Whether a pitch of the profile is taken as the new one.
    is_in_profile: bool,
    /// Known shapes with their scatter.
    shapes: Vec<(Role, [f64; 3], [f64; 3])>,
}

impl Roles {
    fn new(session: &Session, profile: &Profile, target: &Target, label: Option<&str>) -> Self {
        let names = Names { profile, target, label, fastball: fastball(profile) };
        let meanings: Vec<Meaning> = session.labels.iter().map(|written| names.meaning(written)).collect();
        let is_named = meanings.contains(&Meaning::NewPitch);
        let role_of = |pitch: &Pitch| match names.fastball {
            Some(main) if main.name == pitch.name => Role::Fastball,
            // Where no other label names it, the pitch of its family in the profile is the new pitch.
            _ if !is_named && pitch.family == target.family => Role::NewPitch,
            _ => Role::Other,
        };
        let role = |meaning: &Meaning| match meaning {
            Meaning::NewPitch => Some(Role::NewPitch),
            Meaning::Own(place) => profile.pitches.get(*place).map(role_of),
            Meaning::Unknown => None,
        };
        let scatter =
            |pitch: &Pitch| [pitch.spread.speed_mph, pitch.spread.vertical_break_in, pitch.spread.glove_side_break_in];
        let known = profile.pitches.iter().map(|pitch| (role_of(pitch), pitch.shape.numbers(), scatter(pitch)));
        let wanted = (Role::NewPitch, target.shape.numbers(), target.scatter());
        Self {
            labels: meanings.iter().map(role).collect(),
            is_in_profile: profile.pitches.iter().any(|pitch| role_of(pitch) == Role::NewPitch),
            shapes: known.chain([wanted]).collect(),
        }
    }

    /// What `throw` is, and whether its shape had to decide.
    fn of(&self, throw: &Throw) -> (Role, bool) {
        let labelled = throw.label.and_then(|label| *self.labels.get(usize::from(label))?);
        labelled.map_or_else(|| (self.nearest(throw.shape), true), |role| (role, false))
    }

    fn nearest(&self, shape: Shape) -> Role {
        let place = shape.numbers();
        let far = |mean: &[f64; 3], sd: &[f64; 3]| -> f64 {
            (0..3).map(|axis| ((place[axis] - mean[axis]) / sd[axis]).powi(2)).sum::<f64>().sqrt()
        };
        let distances = self.shapes.iter().map(|(role, mean, sd)| (*role, far(mean, sd)));
        let nearest = distances.min_by(|a, b| a.1.total_cmp(&b.1));
        nearest.filter(|&(_, distance)| distance <= STRANGE).map_or(Role::Other, |(role, _)| role)
    }
}

/// The fastball that is watched: the fastest of the fastball families.
pub(super) fn fastball(profile: &Profile) -> Option<&Pitch> {
    let fastballs = profile.pitches.iter().filter(|pitch| pitch.family.is_fastball());
    fastballs.max_by(|a, b| a.shape.speed_mph.total_cmp(&b.shape.speed_mph))
}
