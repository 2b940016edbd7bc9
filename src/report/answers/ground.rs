//! What an answer about throws stands on, and what trial and progress say alike about it.

use crate::athlete::eligibility::Reason;
use crate::athlete::profile::Profile;
use crate::athlete::session::Session;
use crate::ball::Shape;
use crate::learn::cues::Cue;
use crate::learn::target::Target;
use crate::learn::window::Window;

use super::super::content::amount::{Amount, movement, speed};
use super::super::content::data::{Data, list, number};
use super::super::content::{Section, Text, name, object};
use super::super::number::rounded;
use super::super::words::cues;
use super::super::words::health;
use super::super::words::rows::set_aside;
use super::about::assumed;

/// What an answer about throws is about.
#[derive(Debug, Clone, Copy)]
pub struct Ground<'a> {
    /// Who threw.
    pub profile: &'a Profile,
    /// Where the profile lies.
    pub file: &'a str,
    /// What is chased.
    pub target: &'a Target,
    /// What was read.
    pub session: &'a Session,
    /// Whether that was wished for in numbers, not found.
    pub is_wished: bool,
    /// What in health or age speaks against the work as such.
    pub bars: &'a [Reason],
}

impl Ground<'_> {
    /// What in health or age speaks against the work.
    pub(crate) fn bars(&self) -> Vec<Text> {
        self.bars.iter().map(|&bar| health::reason(bar)).collect()
    }

    /// The words of a command line that ask for the same target.
    pub(crate) fn target_words(&self) -> Vec<String> {
        let Target { family, shape, .. } = self.target;
        let numbers =
            [shape.speed_mph, shape.vertical_break_in, shape.glove_side_break_in].map(|n| rounded(n, 2).to_string());
        let wish = self.is_wished.then(|| ["--target".to_owned(), numbers.join(",")]);
        ["--family".to_owned(), family.name().to_owned()].into_iter().chain(wish.into_iter().flatten()).collect()
    }

    /// `cautions` and what was noted while reading.
    pub(crate) fn noted(&self, cautions: Vec<Text>) -> Vec<Text> {
        cautions.into_iter().chain(self.session.notes.iter().map(|note| name(note))).collect()
    }

    /// What the answer ends with: rows not used, what to keep in mind, what was assumed.
    pub(crate) fn ending(&self, cautions: Vec<Text>) -> [Section; 3] {
        let no_spin = self.target.spin.is_none().then_some(
            "no spin of this arm gives the target's shape by this project's reckoning, so its dot is not judged",
        );
        let doubts = self.noted(cautions).into_iter().chain(no_spin.map(Text::from));
        let rows = set_aside(self.session, &self.session.set_aside);
        [rows, Section::new("Keep in mind").bullets(doubts), assumed(self.profile)]
    }
}

/// Speed, vertical break and glove-side break of a window.
pub(crate) fn window_amounts(window: &Window) -> [Amount; 3] {
    let [mph, up, side] = window.ranges();
    [speed(mph), movement(up), movement(side)]
}

/// A target for machines.
pub(crate) fn target_data(target: &Target) -> Data {
    let (Shape { speed_mph, vertical_break_in, glove_side_break_in }, window) = (target.shape, target.window);
    object! {
        "family": target.family.name(),
        "speed_mph": number(speed_mph, 1),
        "vertical_break_in": number(vertical_break_in, 1),
        "glove_side_break_in": number(glove_side_break_in, 1),
        "window": window_data(window.ranges()),
    }
}

/// A window for machines: speed, vertical break, glove-side break.
pub(crate) fn window_data([mph, up, side]: [crate::base::Range; 3]) -> Data {
    object! { "speed_mph": mph, "vertical_break_in": up, "glove_side_break_in": side }
}

/// A cue for machines.
pub(crate) fn cue_data(cue: Cue) -> Data {
    let said = cues::advice(cue);
    object! { "says": said.says, "try": said.attempt, "must_not_cost": said.must_not_cost }
}

/// Cues for machines.
pub(crate) fn cues_data(cues: Vec<Cue>) -> Data {
    list(cues.into_iter().map(cue_data))
}
