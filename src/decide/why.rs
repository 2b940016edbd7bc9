//! Which assumption the worth of a pitch leans on most.
//!
//! One thing at a time is moved from its best guess to the ends of its 90 % range, everything else
//! kept, plans and mixes too. The order of the table is the answer: it says where a measurement, a
//! bullpen or a second opinion would change the most.

use crate::ball::spin::LiftLaw;
use crate::decide::advice::Advice;
use crate::former::evaluate::{Draw, NewPitch, Stage, World};
use crate::former::hitter::Hitter;
use crate::former::search::{Candidate, TRIFLE};

/// One assumption and what it does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Lever {
    /// What is assumed.
    pub assumption: Assumption,
    /// Worth (runs saved per 100 pitches) at the end that lowers it most.
    pub worst: f64,
    /// Worth at the end that raises it most.
    pub best: f64,
}

/// What is assumed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Assumption {
    /// The law from spin to lift.
    LiftLaw,
    /// How much the seams help.
    Seams,
    /// Scatter of the new pitch about its target.
    NewCommand,
    /// Where the new pitch ends up: its speed.
    NewSpeed,
    /// Where the new pitch ends up: its breaks.
    NewBreaks,
    /// How finely hitters see.
    Eyes,
    /// How finely hitters hit.
    Hands,
    /// When hitters swing.
    Choice,
    /// What contact is worth.
    RunValues,
}

/// The answer of `--why`.
#[derive(Debug, Clone, PartialEq)]
pub struct Why {
    /// Every assumption, the one that matters most first.
    pub levers: Vec<Lever>,
    /// Sideways command scatter (in) of the new pitch above which it saves no more than a trifle;
    /// nothing when even twice the scatter leaves it worth more, or when it is a trifle now.
    pub command_limit_in: Option<f64>,
}

/// Ends of the ranges: about 90 % of what the draws use.
const COMMAND: (f64, f64) = (0.85, 1.18);
const SEAMS: (f64, f64) = (0.07, 1.26);
const SPEED_MPH: f64 = 1.6;
const BREAK_IN: f64 = 2.5;
const SENSES: (f64, f64) = (0.84, 1.19);
const MIDPOINT: f64 = 0.06;
const CONTACT: (f64, f64) = (0.85, 1.18);

/// What the worth of the pitch to chase leans on; nothing when there is no such pitch.
pub fn why(advice: &Advice) -> Option<Why> {
    let target = advice.target.as_ref()?;
    let trial = Trial::new(advice, target);
    let mut levers: Vec<Lever> = Assumption::ALL.map(|assumption| trial.lever(assumption)).to_vec();
    levers.sort_by(|a, b| (b.best - b.worst).total_cmp(&(a.best - a.worst)));
    Some(Why { levers, command_limit_in: trial.command_limit() })
}

impl Assumption {
    const ALL: [Self; 9] = [
        Self::LiftLaw,
        Self::Seams,
        Self::NewCommand,
        Self::NewSpeed,
        Self::NewBreaks,
        Self::Eyes,
        Self::Hands,
        Self::Choice,
        Self::RunValues,
    ];
}

/// The pitch to chase, ready to be judged in one changed world after another.
struct Trial<'a, 'p> {
    advice: &'a Advice<'p>,
    target: &'a Candidate,
    stage: Stage<'p>,
    pitch: NewPitch,
    nominal: Draw,
    /// Worth in the unchanged world, on the rough sums; only differences from it are used.
    base: f64,
}

impl<'a, 'p> Trial<'a, 'p> {
    fn new(advice: &'a Advice<'p>, target: &'a Candidate) -> Self {
        let stage = Stage::new(advice.profile);
        let pitch = target.pitch(&stage);
        let nominal = Draw::nominal(advice.profile.athlete.level, stage.pitches.len());
        let mut trial = Self { advice, target, stage, pitch, nominal, base: 0.0 };
        trial.base = trial.gain(&trial.nominal, &trial.pitch);
        trial
    }

    fn lever(&self, assumption: Assumption) -> Lever {
        let worths = self.ends(assumption).into_iter().map(|(draw, pitch)| self.worth(&draw, &pitch));
        let (worst, best) =
            worths.fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), worth| (low.min(worth), high.max(worth)));
        Lever { assumption, worst, best }
    }

    /// The worlds and pitches at the ends of an assumption's range.
    fn ends(&self, assumption: Assumption) -> Vec<(Draw, NewPitch)> {
        let draw = |change: &dyn Fn(&mut Draw)| {
            let mut draw = self.nominal.clone();
            change(&mut draw);
            (draw, self.pitch)
        };
        let hitter = |change: &dyn Fn(Hitter) -> Hitter| draw(&|draw: &mut Draw| draw.hitter = change(draw.hitter));
        match assumption {
            Assumption::LiftLaw => LiftLaw::ALL.map(|law| draw(&|draw: &mut Draw| draw.lift = law)).to_vec(),
            Assumption::Seams => [SEAMS.0, SEAMS.1].map(|help| draw(&|draw: &mut Draw| draw.seam = help)).to_vec(),
            Assumption::NewCommand => {
                [COMMAND.0, COMMAND.1].map(|factor| (self.nominal.clone(), self.scattered(factor))).to_vec()
            }
            Assumption::NewSpeed => {
                [-SPEED_MPH, SPEED_MPH].map(|off| draw(&|draw: &mut Draw| draw.new_offset[0] = off)).to_vec()
            }
            Assumption::NewBreaks => [(1, -BREAK_IN), (1, BREAK_IN), (2, -BREAK_IN), (2, BREAK_IN)]
                .map(|(axis, off)| draw(&|draw: &mut Draw| draw.new_offset[axis] = off))
                .to_vec(),
            Assumption::Eyes => [SENSES.0, SENSES.1].map(|f| hitter(&|h: Hitter| h.noisier(f, 1.0))).to_vec(),
            Assumption::Hands => [SENSES.0, SENSES.1].map(|f| hitter(&|h: Hitter| h.noisier(1.0, f))).to_vec(),
            Assumption::Choice => {
                [-MIDPOINT, MIDPOINT].map(|off| draw(&|draw: &mut Draw| draw.hitter.choice.midpoint += off)).to_vec()
            }
            Assumption::RunValues => [CONTACT.0, CONTACT.1]
                .map(|factor| draw(&|draw: &mut Draw| draw.hitter.runs.solid_contact *= factor))
                .to_vec(),
        }
    }

    /// The pitch with its command scatter scaled.
    fn scattered(&self, factor: f64) -> NewPitch {
        let mut pitch = self.pitch;
        pitch.thrown.spread.command_side_in *= factor;
        pitch.thrown.spread.command_height_in *= factor;
        pitch
    }

    /// Where the worth falls to a trifle as command loosens, by halving.
    fn command_limit(&self) -> Option<f64> {
        let worth = |factor: f64| self.worth(&self.nominal, &self.scattered(factor));
        let (mut kept, mut lost) = (1.0, 2.0);
        if worth(kept) <= TRIFLE || worth(lost) > TRIFLE {
            return None;
        }
        for _ in 0..12 {
            let middle = f64::midpoint(kept, lost);
            if worth(middle) > TRIFLE {
                kept = middle;
            } else {
                lost = middle;
            }
        }
        Some(self.pitch.thrown.spread.command_side_in * kept)
    }

    /// Worth in a changed world: what was shown, and the difference the change makes.
    fn worth(&self, draw: &Draw, pitch: &NewPitch) -> f64 {
        let shown = self.target.worth.overall.value;
        shown + self.gain(draw, pitch) - self.base
    }

    /// Runs saved per 100 pitches by the two mixes shown, own results left out.
    fn gain(&self, draw: &Draw, pitch: &NewPitch) -> f64 {
        let world = World::of(&self.stage, &self.advice.today, draw.clone());
        self.target.worth.gain_in(&self.stage, &world, pitch)
    }
}
