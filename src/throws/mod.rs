//! From throws to pitches: what does this athlete throw, and how sure are we?
//!
//! 1. `screening`: throws that say nothing are set aside with a reason.
//! 2. `zero`: days measured from another zero are found from the throws alone.
//! 3. `choice`: how many pitches, and a first fit, on a sample (linfa).
//! 4. `polish`: groups and the zero of each day, fitted together.
//! 5. Every throw gets a group, or none; `summary`, `naming`, `findings` and `agreement`
//!    say what came out.
//!
//! Labels in the file are compared, never used. The same session and seed give the same answer on
//! any number of cores. Nothing here reads files or prints.

pub mod profile_text;
mod profile_fit;
mod agreement;
mod choice;
mod evidence;
mod findings;
mod mixture;
mod naming;
mod polish;
mod screening;
mod summary;
mod tally;
mod zero;

pub use agreement::{Agreement, Disagreement, adjusted_rand};
pub use choice::Candidate;
pub use findings::{Cause, DayFinding, PitchDrift, Treatment};
pub use naming::{Naming, SURE_NAME};
pub use summary::{Caution, Group, Spreads};

use rayon::prelude::*;

use crate::athlete::session::{Reason, Session, SetAside, Throw};
use choice::Care;
use mixture::{Look, MOST_GROUPS, Mixture, look_of};
use polish::{DayZero, Fit, polish};

/// Throws the mixture is fitted on at most; every throw is assigned.
const SAMPLE: usize = 2000;
/// Of those, for the first fit that only serves to bring the days onto one zero.
const FIRST_SAMPLE: usize = 500;
/// Throws handed to one task; fixed, so that the answer does not depend on the cores.
const CHUNK: usize = 8192;
/// Squared Mahalanobis distance beyond which a throw fits no group: one in a hundred thousand of a
/// normal group's own throws lies further (chi-squared, three degrees of freedom), some in ten
/// thousand of a real one's.
const GATE: f64 = 25.9;
/// Chance of its group from which a throw is clearly sorted.
pub const CLEAR: f64 = 0.95;
/// Share of a day elsewhere that must fit some group once it is re-zeroed.
const DAY_MUST_FIT: f64 = 0.7;
/// Most movement (in) any throw is believed to have: a side-force coefficient of 0.42 over a full
/// flight, more than the lift laws give the fastest measured spin together with the seams.
const MOST_MOVEMENT_IN: f64 = 38.0;

/// How to sort.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Options {
    /// Seed of the starts.
    pub seed: u64,
    /// The most pitches looked for, 1 to 8.
    pub most_pitches: usize,
}

impl Default for Options {
    fn default() -> Self {
        Self { seed: 1, most_pitches: MOST_GROUPS }
    }
}

/// Where one throw went.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Assignment {
    /// Into a pitch.
    Group {
        /// Index into [`Sorted::groups`].
        index: usize,
        /// Chance that this is its group, among all groups.
        chance: f64,
    },
    /// It fits no pitch.
    Unsorted,
    /// It is not used; [`Sorted::set_aside`] says why.
    SetAside,
}

/// The answer.
#[derive(Debug, Clone, PartialEq)]
pub struct Sorted {
    /// The pitches, hardest first.
    pub groups: Vec<Group>,
    /// Where each throw of the session went, in its order.
    pub assignments: Vec<Assignment>,
    /// Every row not used, from reading and from screening, in row order.
    pub set_aside: Vec<SetAside>,
    /// What was found about each day, in the session's order.
    pub days: Vec<DayFinding>,
    /// Pitches that moved on a day when the others did not.
    pub drifts: Vec<PitchDrift>,
    /// How each count of pitches did; the one with the lowest `icl` was chosen.
    pub candidates: Vec<Candidate>,
    /// The sort against the file's labels, when it has some.
    pub agreement: Option<Agreement>,
    /// Doubts.
    pub cautions: Vec<Caution>,
}

impl Sorted {
    /// Rows read: each is sorted, fits no pitch or is set aside, so that the three make this sum.
    pub fn rows(&self) -> usize {
        self.sorted() + self.unsorted() + self.set_aside.len()
    }

    /// Throws sorted into a pitch.
    pub fn sorted(&self) -> usize {
        self.groups.iter().map(|group| group.throws).sum()
    }

    /// Throws that fit no pitch.
    pub fn unsorted(&self) -> usize {
        self.assignments.iter().filter(|a| matches!(a, Assignment::Unsorted)).count()
    }
}

/// `session` without the throws that say nothing; each is set aside with its reason. Nobody looks for the zero of a
/// day here, so what was measured is judged as it stands.
pub fn screened(session: Session) -> Session {
    let mut reasons = screening::screen(&session);
    for (throw, reason) in session.throws.iter().zip(&mut reasons) {
        *reason = reason.take().or_else(|| too_much_movement(&look_of(throw.shape)));
    }
    let is_kept: Vec<bool> = reasons.iter().map(Option::is_none).collect();
    let set_aside = all_set_aside(&session, reasons);
    let kept = session.throws.iter().zip(is_kept).filter(|(_, is_kept)| *is_kept);
    let throws = kept.map(|(throw, _)| *throw).collect();
    Session { throws, set_aside, ..session }
}

/// Sorts a session into pitches.
pub fn sort(session: &Session, options: Options) -> Sorted {
    let mut reasons = screening::screen(session);
    let (fit, candidates) = fit(session, &reasons, options);
    let mut assignments = assign(session, &reasons, &fit);
    set_unreliable_days_aside(session, &fit, &mut assignments, &mut reasons);
    set_wild_movement_aside(session, &fit, &mut assignments, &mut reasons);
    let observed = findings::observe(session, &fit, &assignments);
    let groups = summary::summarise(session, &fit, &assignments, &observed);
    let agreement = agreement::compare(session, &assignments, groups.len());
    let mut sorted = Sorted {
        groups,
        set_aside: all_set_aside(session, reasons),
        assignments,
        days: observed.days,
        drifts: observed.drifts,
        candidates,
        agreement,
        cautions: Vec::new(),
    };
    sorted.cautions = summary::cautions(session, &sorted);
    sorted
}

fn fit(session: &Session, reasons: &[Option<Box<Reason>>], options: Options) -> (Fit, Vec<Candidate>) {
    let used: Vec<(Look, u16)> = session
        .throws
        .iter()
        .zip(reasons)
        .filter(|(_, reason)| reason.is_none())
        .map(|(throw, _)| (look_of(throw.shape), throw.day))
        .collect();
    let guess = zero::first_guess(&looks_by_day(&used, session.days.len()));
    let days: Vec<DayZero> = guess.into_iter().map(DayZero::guessed).collect();
    let sample = without_strays(zero::evenly(&used, SAMPLE), &days);
    let (small, care) =
        if days.len() < 2 { (sample.clone(), Care::Full) } else { (zero::evenly(&sample, FIRST_SAMPLE), Care::Quick) };
    let (first, candidates) = choice::choose(&corrected(&small, &days), options.most_pitches, options.seed, care);
    let Some(first) = first else {
        return (Fit { mixture: Mixture { parts: Vec::new() }, days, day_sd: [0.0; 2] }, candidates);
    };
    let mut fit = polish(&sample, first, days);
    if session.days.len() < 2 {
        return (fit, candidates);
    }
    // With every day on one zero the groups are tighter: choose once more.
    fit.part_far_days();
    let (second, candidates) =
        choice::choose(&corrected(&sample, &fit.days), options.most_pitches, options.seed, Care::Full);
    (polish(&sample, second.unwrap_or(fit.mixture), fit.days), candidates)
}

fn looks_by_day(used: &[(Look, u16)], days: usize) -> Vec<Vec<Look>> {
    let mut by_day = vec![Vec::new(); days];
    for (look, day) in used {
        by_day[usize::from(*day)].push(*look);
    }
    by_day
}

/// The throws of ordinary days on the common zero: what groups are learned from.
fn corrected(sample: &[(Look, u16)], days: &[DayZero]) -> Vec<Look> {
    let ordinary = sample.iter().filter(|(_, day)| !days[usize::from(*day)].elsewhere);
    ordinary.map(|(look, day)| days[usize::from(*day)].corrected(look)).collect()
}

/// The sample without throws that have fewer than two others near them: they would pull a group of
/// their own. They are still assigned, or found to fit nothing.
fn without_strays(sample: Vec<(Look, u16)>, days: &[DayZero]) -> Vec<(Look, u16)> {
    const NEAR: Look = [3.0, 6.0, 6.0];
    let looks: Vec<Look> = sample.iter().map(|(look, day)| days[usize::from(*day)].corrected(look)).collect();
    let near = |a: &Look, b: &Look| (0..3).map(|d| ((a[d] - b[d]) / NEAR[d]).powi(2)).sum::<f64>() < 1.0;
    let has_company = |look: &Look| looks.iter().filter(|other| near(look, other)).take(3).count() == 3;
    sample.into_iter().zip(&looks).filter(|(_, look)| has_company(look)).map(|(throw, _)| throw).collect()
}

/// The throw as the common zero would have measured it.
fn corrected_look(throw: &Throw, fit: &Fit) -> Look {
    fit.days[usize::from(throw.day)].corrected(&look_of(throw.shape))
}

fn assign(session: &Session, reasons: &[Option<Box<Reason>>], fit: &Fit) -> Vec<Assignment> {
    let one = |(throw, reason): (&Throw, &Option<Box<Reason>>)| match reason {
        Some(_) => Assignment::SetAside,
        None => assignment(&corrected_look(throw, fit), &fit.mixture),
    };
    let chunks = session.throws.par_chunks(CHUNK).zip(reasons.par_chunks(CHUNK));
    chunks.flat_map_iter(|(throws, reasons)| throws.iter().zip(reasons).map(one)).collect()
}

fn assignment(look: &Look, mixture: &Mixture) -> Assignment {
    if mixture.parts.is_empty() {
        return Assignment::Unsorted;
    }
    let (index, chance) = mixture.membership_for_sure(look).best();
    let fits = mixture.parts[index].distance_squared(look) <= GATE;
    if fits { Assignment::Group { index, chance } } else { Assignment::Unsorted }
}

/// A day from another zero that fits badly even when re-zeroed is not trusted at all.
fn set_unreliable_days_aside(
    session: &Session,
    fit: &Fit,
    assignments: &mut [Assignment],
    reasons: &mut [Option<Box<Reason>>],
) {
    let mut counts = vec![(0_usize, 0_usize); session.days.len()];
    for (throw, assignment) in session.throws.iter().zip(assignments.iter()) {
        let (fitting, all) = &mut counts[usize::from(throw.day)];
        *fitting += usize::from(matches!(assignment, Assignment::Group { .. }));
        *all += usize::from(!matches!(assignment, Assignment::SetAside));
    }
    let is_bad = |day: usize| {
        let (fitting, all) = counts[day];
        fit.days[day].elsewhere && (fitting as f64) < DAY_MUST_FIT * all as f64
    };
    for (index, throw) in session.throws.iter().enumerate() {
        let day = usize::from(throw.day);
        if is_bad(day) && reasons[index].is_none() {
            assignments[index] = Assignment::SetAside;
            reasons[index] = Some(Box::new(Reason::UnreliableDay { day: session.days[day].clone() }));
        }
    }
}

fn set_wild_movement_aside(
    session: &Session,
    fit: &Fit,
    assignments: &mut [Assignment],
    reasons: &mut [Option<Box<Reason>>],
) {
    for (index, throw) in session.throws.iter().enumerate() {
        if assignments[index] == Assignment::Unsorted
            && let Some(reason) = too_much_movement(&corrected_look(throw, fit))
        {
            assignments[index] = Assignment::SetAside;
            reasons[index] = Some(reason);
        }
    }
}

fn too_much_movement([_, vertical, glove_side]: &Look) -> Option<Box<Reason>> {
    let movement_in = vertical.hypot(*glove_side);
    let most_in = MOST_MOVEMENT_IN;
    (movement_in > most_in).then(|| Box::new(Reason::TooMuchMovement { movement_in, most_in }))
}

fn all_set_aside(session: &Session, reasons: Vec<Option<Box<Reason>>>) -> Vec<SetAside> {
    let screened = session.throws.iter().zip(reasons);
    let mut all = session.set_aside.clone();
    all.extend(
        screened.filter_map(|(throw, reason)| reason.map(|reason| SetAside { place: throw.place, reason: *reason })),
    );
    all.sort_by_key(|aside| aside.place);
    all
}
