//! Verdicts, reasons, cautions and assumptions of an advice, in words.

use crate::ball::{Family, Supination};
use crate::decide::advice::{Advice, Bar, Caution, Reason, Verdict};
use crate::decide::why::Assumption;
use crate::former::search::{Candidate, Command, TRIFLE};
use crate::learn::plan::limits::{DayLimit, YOUNGEST};

use super::super::content::amount::{chance, degrees, inches, runs, speed};
use super::super::content::{Text, name, text};
use super::health::{GUIDELINES, UNTIL_CLEARED, guideline};

/// The verdict for machines.
pub(crate) fn verdict_key(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Add => "add",
        Verdict::Trial => "trial",
        Verdict::NotNow => "not_now",
        Verdict::OtherPitch => "other_pitch",
    }
}

/// The verdict in a word or two, for a table.
pub(crate) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Add => "add",
        Verdict::Trial => "trial first",
        Verdict::NotNow => "not now",
        Verdict::OtherPitch => "another pitch",
    }
}

/// The verdict as a sentence.
pub(crate) fn headline(advice: &Advice) -> String {
    let asked = format!("a {}", advice.question.family);
    match advice.verdict {
        Verdict::Add => format!("Add {asked}."),
        Verdict::Trial => format!("Try {asked} first, then decide."),
        Verdict::NotNow => format!("Do not add {asked} now."),
        Verdict::OtherPitch => {
            let better = advice.target.as_ref().map_or("another pitch".into(), |t| format!("a {}", t.family));
            format!("Not {asked}: {better} would do more.")
        }
    }
}

/// The heading over the shape of `target`.
pub(crate) fn shape_heading(advice: &Advice, target: &Candidate) -> String {
    match advice.verdict {
        Verdict::NotNow => format!("The best {} in reach, not advised now", target.family),
        Verdict::Add | Verdict::Trial | Verdict::OtherPitch => format!("The {} to chase", target.family),
    }
}

/// Which command a number counts.
pub(crate) fn command(command: Command) -> &'static str {
    match command {
        Command::Now => "with the command of its first months",
        Command::Mastered => "once mastered",
    }
}

/// What is too small to matter.
pub(crate) fn too_small() -> String {
    format!("too small to matter (less than {TRIFLE})")
}

/// A reason of an advice that came to `verdict`.
pub(crate) fn reason(reason: &Reason, verdict: Verdict) -> Text {
    match reason {
        Reason::Gain { family, gain, chance: often } => text![
            "the best reachable ",
            *family,
            " saves ",
            runs(*gain),
            format!("; it saves more than what is too small to matter ({TRIFLE}) in "),
            chance(*often),
            " simulations of what is not known"
        ],
        Reason::AtFirst { gain, .. } if gain.high <= 0.0 => "with the looser command of its first months the best mix \
                                                             leaves it out: it has to be learnt before it pays"
            .into(),
        Reason::AtFirst { gain, mastered } => text![
            "with the looser command of its first months the same pitch is worth ",
            runs(*gain).bare(),
            ", against ",
            runs(*mastered).bare(),
            " once mastered: command is what it costs"
        ],
        Reason::OutOfReach { family, slot_deg, supination, seam_in } => {
            out_of_reach(*family, *slot_deg, *supination, *seam_in)
        }
        Reason::Seams { family, inches: needed, trusted } => text![
            "the ",
            *family,
            " needs ",
            inches(*needed),
            " from the seams, of at most ",
            inches(*trusted),
            " trusted; whether a grip gets that is for a trial to show"
        ],
        Reason::TooFewWorlds { needed, then } => {
            let then = if *then == Verdict::Add { "added without a trial" } else { "tried" };
            text!["from ", chance(*needed), " simulations on it would be ", then]
        }
        Reason::StiffHand { family } => {
            text!["a hand that does not turn easily may not make a ", *family, ": that is for a trial to show"]
        }
        Reason::Young(age) => {
            text!["at ", *age, " a breaking ball is tried before it is added, whatever it would be worth"]
        }
        Reason::Redundant { pitch, speed_mph, movement_in } => near(pitch, *speed_mph, *movement_in, verdict),
        Reason::Better { family, gain, chance: often } => text![
            "a ",
            *family,
            " saves ",
            runs(*gain),
            ", more than the pitch asked about in ",
            chance(*often),
            " simulations"
        ],
        Reason::NothingElse => "no other pitch that is new to the athlete is clearly better; working on what is there \
                                costs nothing and is the answer that stands until shapes, command or hitters change"
            .into(),
        Reason::Forbidden(bar) => forbidden(*bar),
    }
}

/// What is said of a near pitch must not contradict the gain: only where the new one is not worth
/// throwing are the two much the same to a hitter.
fn near(pitch: &str, speed_mph: f64, movement_in: f64, verdict: Verdict) -> Text {
    let stands =
        text!["it would stand ", speed(speed_mph), " and ", inches(movement_in), " of movement from the ", name(pitch)];
    stands.and(match verdict {
        Verdict::NotNow | Verdict::OtherPitch => ": much the same pitch to a hitter",
        Verdict::Add | Verdict::Trial => ": close, and what it gains counts that",
    })
}

fn out_of_reach(family: Family, slot_deg: f64, supination: Supination, seam_in: f64) -> Text {
    let hand = match supination {
        Supination::Easy => ", turning the hand easily",
        Supination::Ordinary => "",
        Supination::Hard => " and a hand that does not turn",
    };
    text![
        "no ",
        family,
        " is in reach: from a slot of ",
        degrees(slot_deg),
        hand,
        ", this spin with at most ",
        inches(seam_in),
        " of help from the seams does not make one; a lower slot or an easier turn of the hand would change this, but the \
         slot is not worth changing for a pitch"
    ]
}

fn forbidden(bar: Bar) -> Text {
    match bar {
        Bar::Pain => "pain is reported: stop throwing and see a physician, physical therapist or athletic trainer; \
                      nothing is added until a licensed professional clears it"
            .into(),
        Bar::Injury => format!("the athlete is coming back from an arm injury: {UNTIL_CLEARED}").into(),
        Bar::NoBreakingBall => "the profile says that no new breaking ball is to be thrown".into(),
        Bar::TooYoung(age) | Bar::BasicsFirst(age) => {
            text!["at ", age, " ", guideline(age), format!(" ({GUIDELINES})")]
        }
    }
}

/// An assumption in a few words.
pub(crate) fn assumption(assumption: Assumption) -> &'static str {
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

/// A caution of an advice.
pub(crate) fn caution(caution: Caution) -> Text {
    let off = "the guidelines ask for at least 4 a year, 2 to 3 of them in a row";
    match caution {
        Caution::PainStops => {
            "pain stops the work: see a physician, physical therapist or athletic trainer before throwing again".into()
        }
        Caution::AgeUnknown => "no age is given, so youth limits could not be checked: add age to [athlete]".into(),
        Caution::Youth(age) => youth(age),
        Caution::MonthsOff(months) => {
            text!["only ", months, " months off throwing in the last twelve: ", off]
        }
        Caution::MonthsOffUnknown => text!["months off throwing are not given: ", off],
        Caution::Workload => {
            "throws spent on a new pitch count as workload; total workload and throwing while tired are \
                              the better supported risks, more than any one pitch"
                .into()
        }
        Caution::SeamsAssumed => "help from the seams is an assumption: no published measurement in inches was found, \
                                  and the same grip can behave two or three ways"
            .into(),
        Caution::AtEdge { family, axes } => at_edge(family, axes),
        Caution::OneCalibration => {
            "runs are a model's; its hitters are fitted, within published ranges, to one season of \
                                    one pitcher: trust the order of the pitches more than the size of a number"
                .into()
        }
    }
}

fn at_edge(family: Family, axes: [bool; 3]) -> Text {
    let names = ["speed", "vertical break", "glove-side break"].into_iter().zip(axes);
    let said: Vec<&str> = names.filter(|(_, is)| *is).map(|(name, _)| name).collect();
    let listed = match said.split_last() {
        Some((last, [])) => format!("{last} to chase lies"),
        Some((last, before)) => format!("{} and {last} to chase lie", before.join(", ")),
        None => return Text::default(),
    };
    text![
        format!("the {listed} at an end of what goes by the name "),
        family,
        ": a little beyond may be worth as much or more, under another name"
    ]
}

/// Daily limits and rest by age.
fn youth(age: u8) -> Text {
    let limits = DayLimit::at_age(age).map_or_else(
        || format!("the published limits begin at {YOUNGEST}"),
        |limit| {
            let rest = limit.rest_after[3] + 1;
            format!("at most {} pitches a day and four days of rest after {rest} or more", limit.most)
        },
    );
    format!("at {age}: {limits}; new breaking balls are learnt slowly and away from games ({GUIDELINES})").into()
}
