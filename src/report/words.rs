//! Verdicts, reasons and cautions as sentences, and the cells of an outlook.

use crate::ball::Family;
use crate::ball::Supination;
use crate::base::geometry::Side;
use crate::decide::advice::{Advice, Bar, Caution, Reason, Verdict, guideline};
use crate::decide::inspect::SpinSource;
use crate::decide::why::Assumption;
use crate::former::evaluate::PitchOutlook;
use crate::former::search::{Candidate, Command, TRIFLE};

use super::format::{in_hundred, percent, plain, rate, signed_range};

/// The verdict as it is written in JSON.
pub(super) fn verdict_key(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Add => "add",
        Verdict::Trial => "trial",
        Verdict::NotNow => "not_now",
        Verdict::OtherPitch => "other_pitch",
    }
}

/// The verdict as a headline.
pub(super) fn headline(advice: &Advice) -> String {
    let asked = with_article(advice.question.family);
    match advice.verdict {
        Verdict::Add => format!("Add {asked}."),
        Verdict::Trial => format!("Try {asked} first, then decide."),
        Verdict::NotNow => format!("Do not add {asked} now."),
        Verdict::OtherPitch => {
            let better = advice.target.as_ref().map_or("another pitch".into(), |t| with_article(t.family));
            format!("Not {asked}: {better} would do more.")
        }
    }
}

/// The heading over the shape of `target`.
pub(super) fn shape_heading(advice: &Advice, target: &Candidate) -> String {
    match advice.verdict {
        Verdict::NotNow => format!("The best {} in reach, not advised now", target.family),
        Verdict::Add | Verdict::Trial | Verdict::OtherPitch => format!("The {} to chase", target.family),
    }
}

/// What to do after reading the answer.
pub(super) fn next(advice: &Advice) -> Vec<String> {
    let hurt = advice.reasons.iter().any(|reason| matches!(reason, Reason::Forbidden(Bar::Pain | Bar::Injury)));
    match advice.verdict {
        Verdict::NotNow if hurt => Vec::new(),
        Verdict::NotNow => vec!["usage: what a better mix of the pitches he throws already would bring".into()],
        Verdict::Add | Verdict::Trial | Verdict::OtherPitch => vec![
            "trial: throw a few grips, mark them in a file, and see which makes this shape".into(),
            "plan: the off-season day by day; progress: whether the shape arrives and what pays for it".into(),
        ],
    }
}

/// Where a pitch's spin is known from.
pub(super) fn spin_source(source: SpinSource) -> &'static str {
    match source {
        SpinSource::Measured => "measured",
        SpinSource::UsualShare => "usual share",
        SpinSource::WorkedOut => "worked out",
    }
}

/// "same-side", as it stands before "hitters".
pub(super) fn side(side: Side) -> &'static str {
    match side {
        Side::Same => "same-side",
        Side::Opposite => "opposite-side",
    }
}

/// "a sweeper".
pub(super) fn with_article(family: Family) -> String {
    format!("a {family}")
}

/// Share, aim and the four chances of a pitch.
pub(super) fn outcome_cells(pitch: &PitchOutlook) -> Vec<String> {
    vec![
        percent(pitch.share),
        pitch.aim.name().into(),
        rate(pitch.swing_and_miss),
        rate(pitch.weak_contact),
        rate(pitch.solid_contact),
        rate(pitch.take),
    ]
}

/// Which command a number counts.
pub(super) fn command(command: Command) -> &'static str {
    match command {
        Command::Now => "with the command of its first months",
        Command::Mastered => "once mastered",
    }
}

/// A reason as one sentence.
pub(super) fn reason(reason: &Reason) -> String {
    match reason {
        Reason::Gain { family, gain, chance } => format!(
            "the best reachable {family} saves {} runs per 100 pitches; it saves more than a trifle ({TRIFLE}) in {} \
             worlds drawn from what is not known",
            signed_range(*gain, 2),
            in_hundred(*chance),
        ),
        Reason::AtFirst { gain, .. } if gain.high <= 0.0 => "with the looser command of its first months the best mix \
                                                             leaves it out: it has to be learnt before it pays"
            .into(),
        Reason::AtFirst { gain, mastered } => format!(
            "with the looser command of its first months the same pitch is worth {}, against {} once mastered: \
             command is what it costs",
            signed_range(*gain, 2),
            super::format::signed(*mastered, 2),
        ),
        Reason::OutOfReach { family, slot_deg, supination, seam_in } => {
            out_of_reach(*family, *slot_deg, *supination, *seam_in)
        }
        Reason::Seams { family, inches, trusted } => format!(
            "the {family} needs {} in from the seams, of at most {} in trusted; whether his grip gets that is for a \
             trial to show",
            plain(*inches, 1),
            plain(*trusted, 1),
        ),
        Reason::TooFewWorlds { needed, then } => {
            let then = if *then == Verdict::Add { "added without a trial" } else { "tried" };
            format!("from {} worlds on it would be {then}", in_hundred(*needed))
        }
        Reason::StiffHand { family } => format!(
            "a hand that does not turn easily may not make {}: that is for a trial to show",
            with_article(*family)
        ),
        Reason::Young(age) => {
            format!("at {age} a breaking ball is tried before it is added, whatever it would be worth")
        }
        Reason::Redundant { pitch, speed_mph, movement_in } => format!(
            "it would stand {} mph and {} in of movement from his {pitch}: much the same pitch to a hitter",
            plain(*speed_mph, 1),
            plain(*movement_in, 1),
        ),
        Reason::Better { family, gain, chance } => format!(
            "a {family} saves {} runs per 100 pitches, more than the pitch asked about in {} worlds",
            signed_range(*gain, 2),
            in_hundred(*chance),
        ),
        Reason::NothingElse => "no other pitch he does not throw yet is clearly better; working on what he has costs \
                                nothing and is the answer that stands until his shapes, his command or his hitters change"
            .into(),
        Reason::Forbidden(bar) => forbidden(*bar),
    }
}

fn out_of_reach(family: Family, slot_deg: f64, supination: Supination, seam_in: f64) -> String {
    let hand = match supination {
        Supination::Easy => ", turning the hand easily",
        Supination::Ordinary => "",
        Supination::Hard => " and a hand that does not turn",
    };
    format!(
        "no {family} is in reach: from a slot of {} degrees{hand}, his spin with at most {} in of help from the seams \
         does not make one; a lower slot or an easier turn of the hand would change this, but the slot is not worth \
         changing for a pitch",
        plain(slot_deg, 0),
        plain(seam_in, 1),
    )
}

fn forbidden(bar: Bar) -> String {
    match bar {
        Bar::Pain => "pain is reported: stop throwing and see a physician, physical therapist or athletic trainer; \
                      nothing is added until a licensed professional clears it"
            .into(),
        Bar::Injury => {
            "he is coming back from an arm injury: nothing new until a licensed professional clears it".into()
        }
        Bar::NoBreakingBall => "the profile says that no new breaking ball is to be thrown".into(),
        Bar::TooYoung(age) | Bar::BasicsFirst(age) => format!(
            "at {age} {} (guidelines of USA Baseball and Major League Baseball, copy of about 2015; the governing \
             body's current page decides)",
            guideline(age)
        ),
    }
}

/// An assumption in a few words.
pub(super) fn assumption(assumption: Assumption) -> &'static str {
    match assumption {
        Assumption::LiftLaw => "the law from spin to movement",
        Assumption::Seams => "how much the seams help",
        Assumption::NewCommand => "command of the new pitch",
        Assumption::NewSpeed => "the speed it ends up with",
        Assumption::NewBreaks => "the breaks it ends up with",
        Assumption::Eyes => "how finely hitters see",
        Assumption::Hands => "how finely hitters hit",
        Assumption::Choice => "when hitters swing",
        Assumption::RunValues => "what solid contact is worth",
    }
}

/// A caution as one sentence.
pub(super) fn caution(caution: Caution) -> String {
    match caution {
        Caution::PainStops => {
            "pain stops the work: see a physician, physical therapist or athletic trainer before throwing again".into()
        }
        Caution::AgeUnknown => "no age is given, so youth limits could not be checked: add age to [athlete]".into(),
        Caution::Youth(age) => youth(age),
        Caution::MonthsOff(months) => format!(
            "only {months} months off throwing in the last twelve: the guidelines ask for at least 4 a year, 2 to 3 of \
             them in a row"
        ),
        Caution::MonthsOffUnknown => {
            "months off throwing are not given: the guidelines ask for at least 4 a year, 2 to 3 of them in a row"
                .into()
        }
        Caution::Workload => {
            "throws spent on a new pitch count as workload; total workload and throwing while tired are \
                              the better supported risks, more than any one pitch"
                .into()
        }
        Caution::SeamsAssumed => {
            "help from the seams is an assumption: no published measurement in inches was found, and \
                                  the same grip can behave two or three ways"
                .into()
        }
        Caution::AtEdge { family, axes } => format!(
            "the {} to chase {} at an end of what goes by the name {family}: a little beyond may be worth as much or \
             more, under another name",
            axis_names(axes),
            if axes.iter().filter(|&&is| is).count() > 1 { "lie" } else { "lies" },
        ),
        Caution::OneCalibration => {
            "runs are a model's; its hitters are fitted, within published ranges, to one season of \
                                    one pitcher: trust the order of the pitches more than the size of a number"
                .into()
        }
    }
}

/// "speed and glove-side break".
fn axis_names(axes: [bool; 3]) -> String {
    let names = ["speed", "vertical break", "glove-side break"].into_iter().zip(axes);
    let said: Vec<&str> = names.filter(|(_, is)| *is).map(|(name, _)| name).collect();
    match said.split_last() {
        Some((last, [])) => (*last).to_owned(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
        None => String::new(),
    }
}

/// Daily limits and rest by age: guidelines of USA Baseball and Major League Baseball, copy of
/// about 2015.
fn youth(age: u8) -> String {
    let daily = match age {
        0..=8 => 50,
        9..=10 => 75,
        11..=12 => 85,
        13..=16 => 95,
        _ => 105,
    };
    let rest = if age <= 14 { "66" } else { "76" };
    format!(
        "at {age}: at most {daily} pitches a day and four days of rest after {rest} or more; new breaking balls are \
         learnt slowly and away from games (guidelines of USA Baseball and Major League Baseball, copy of about 2015); \
         local rules and the governing body's current page decide"
    )
}
