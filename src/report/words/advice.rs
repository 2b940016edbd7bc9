//! Verdicts, reasons, cautions and assumptions of an advice, in words.

use crate::athlete::eligibility::{Hesitation, YOUNGEST};
use crate::athlete::natural::NaturalShape;
use crate::athlete::profile::Level;
use crate::base::stats::Estimate;
use crate::decide::advice::{Advice, Candidate, Caution, Reason};
use crate::decide::draws::Part;
use crate::decide::new_pitch::Command;
use crate::decide::verdict::{Shortfall, Verdict};
use crate::learn::plan::limits::DayLimit;

use super::super::content::amount::{Amount, chance, inches, runs, share, speed};
use super::super::content::{Text, name, text};
use super::health::{self, GUIDELINES};
use super::season::over_a_season;

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
    let asked = format!("a {}", advice.family);
    match advice.verdict {
        Verdict::Add => format!("Add {asked}."),
        Verdict::Trial => format!("Try {asked} first, then decide."),
        Verdict::NotNow => format!("Do not add {asked} now."),
        Verdict::OtherPitch => {
            let better = advice.to_chase().map_or("another pitch".into(), |chase| format!("a {}", chase.target.family));
            format!("Not {asked}: {better} would do more.")
        }
    }
}

/// The heading over the shape of `target`.
pub(crate) fn shape_heading(advice: &Advice, target: &Candidate) -> String {
    let family = target.target.family;
    match advice.verdict {
        Verdict::NotNow => format!("The {family} such an arm would throw, not advised now"),
        Verdict::Add | Verdict::Trial | Verdict::OtherPitch => format!("The {family} to chase"),
    }
}

/// Which command a number counts.
pub(crate) fn command(command: Command) -> &'static str {
    match command {
        Command::Now => "with the command of its first months",
        Command::Mastered => "once mastered",
    }
}

/// How far a target lies from what such arms throw, in a word.
pub(crate) fn work(candidate: &Candidate) -> &'static str {
    match candidate.target.effort() {
        effort if effort < 1.0 => "ordinary",
        effort if effort < 2.0 => "a stretch",
        _ => "rare",
    }
}

/// The same in a sentence.
pub(crate) fn effort(candidate: &Candidate) -> Text {
    let as_far = NaturalShape::share_as_far(candidate.target.effort());
    let word = match work(candidate) {
        "ordinary" => "Ordinary for such an arm",
        "a stretch" => "A stretch for such an arm",
        _ => "Rare for such an arm",
    };
    text![word, ": ", share(as_far).places(0), " of them lie at least as far from the middle as the target does."]
}

fn season(gain: Estimate, level: Level) -> Amount {
    runs(over_a_season(gain, level)).places(1)
}

/// A reason of an advice about an athlete of `level`.
pub(crate) fn reason(reason: &Reason, level: Level) -> Text {
    match reason {
        Reason::Forbidden(bar) => health::reason(*bar),
        Reason::Unknown { family } => text![
            "no ",
            *family,
            " was thrown by any arm of the data this rests on: there is nothing to say what shape to chase or what it would be worth"
        ],
        Reason::Better { family, gain, chance: often } => text![
            "a ",
            *family,
            " saves ",
            season(*gain, level),
            " in a season, more than the pitch asked about in ",
            chance(*often),
            " simulations"
        ],
        Reason::Gain { family, gain, chance: often } => text![
            "the ",
            *family,
            " saves ",
            season(*gain, level),
            " in a season; it saves anything at all in ",
            chance(*often),
            " simulations of what is not known"
        ],
        Reason::Owned { pitch } => text![
            "the athlete throws one already, the ",
            name(pitch),
            ": the answer is what another shape of it would be worth"
        ],
        Reason::NeverThrown { family } => text![
            "in no count and against neither side does throwing a ",
            *family,
            " now and then save anything beside what is thrown already"
        ],
        Reason::Alike { pitch, speed_mph, movement_in, .. } => text![
            "it would stand only ",
            speed(*speed_mph),
            " and ",
            inches(*movement_in),
            " of movement from the ",
            name(pitch),
            ": to a hitter much of it is the same pitch"
        ],
        Reason::AtFirst { gain, mastered } => text![
            "with the looser command of its first months it is worth ",
            season(*gain, level),
            ", against ",
            runs(over_a_season(Estimate { value: *mastered, low: *mastered, high: *mastered }, level).value)
                .places(1)
                .bare(),
            " once mastered"
        ],
        Reason::Short(shortfall) => short(*shortfall, level),
        Reason::TryFirst(Hesitation::Young { age }) => {
            text!["at ", *age, " such a pitch is tried before it is added, whatever it would be worth"]
        }
        Reason::TryFirst(Hesitation::StiffHand { family }) => {
            text!["a hand that does not turn easily may not make a ", *family, ": that is for a trial to show"]
        }
        Reason::NothingElse => "no other pitch that is new to the athlete is clearly better; working on what is there \
                                costs nothing and is the answer that stands until shapes, command or hitters change"
            .into(),
    }
}

/// Why no more is said for a pitch.
fn short(shortfall: Shortfall, level: Level) -> Text {
    let all = |value: f64| runs(over_a_season(Estimate { value, low: value, high: value }, level).value).places(1);
    match shortfall {
        Shortfall::TooSmall { needed } => {
            text!["that is little: ", all(needed), " in a season would be needed for more"]
        }
        Shortfall::ReadingsDiffer { readings } => text![
            "two readings of the same hitters differ: by one it saves ",
            all(readings.low),
            " in a season, by the other ",
            all(readings.high)
        ],
        Shortfall::TooUnsure { needed } => {
            text!["from ", chance(needed), " simulations on it would be added without a trial"]
        }
    }
}

/// What is not known, in a few words.
pub(crate) fn part(part: Part) -> &'static str {
    match part {
        Part::Hitters => "how hitters see, swing and hit",
        Part::Terms => "how far the model\u{2019}s differences between pitches come true",
        Part::NewLevel => "what no model knows of a new pitch",
        Part::Measurement => "how well today\u{2019}s shapes are measured",
        Part::Command => "command",
        Part::LiftLaw => "the law from spin to movement",
        Part::Seams => "how much the seams help",
        Part::Landing => "the shape it ends up with",
        Part::Share => "how often it is thrown",
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
        Caution::MonthsOff(months) => text!["only ", months, " months off throwing in the last twelve: ", off],
        Caution::MonthsOffUnknown => text!["months off throwing are not given: ", off],
        Caution::Workload => {
            "throws spent on a new pitch count as workload; total workload and throwing while tired are \
                              the better supported risks, more than any one pitch"
                .into()
        }
        Caution::Seams => {
            "much of the movement is expected from the seams: the same grip can behave two or three ways, \
                           and a trial shows which"
                .into()
        }
        Caution::OneDay => "runs are a model\u{2019}s, fitted to one day of the top league: trust the order of the \
                            pitches more than the size of a number"
            .into(),
        Caution::LevelAssumed(level) => text![
            "hitters of this level (",
            level.name(),
            ") are taken as professional ones with coarser eyes and hands: an assumption, no open data stand behind it"
        ],
    }
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
