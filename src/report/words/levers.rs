//! Changes of an arsenal and what to keep in mind about each, in words.

use crate::athlete::eligibility::{Eligibility, Hesitation};
use crate::athlete::profile::Profile;
use crate::decide::levers::{Lever, What};

use super::super::content::amount::inches;
use super::super::content::{Text, name, text};

/// From how much of a movement on the seams are told as a caution, in.
const MUCH_FROM_SEAMS_IN: f64 = 4.0;

/// A change, for machines.
pub(crate) fn change_key(what: &What) -> &'static str {
    match what {
        What::Learn(_) => "learn",
        What::Reshape(..) => "reshape",
        What::Drop(_) => "drop",
        What::Faster => "one_mph_more",
        What::TighterCommand => "one_inch_tighter",
        What::UseAlone => "recommended_use",
    }
}

/// A change, as a row is called.
pub(crate) fn change(profile: &Profile, what: &What) -> Text {
    let called = |pitch: usize| name(&profile.pitches[pitch].name);
    match what {
        What::Learn(target) => text!["a new ", target.family],
        What::Reshape(pitch, _) => text![called(*pitch), " reshaped"],
        What::Drop(pitch) => text![called(*pitch), " dropped"],
        What::Faster => "1 mph more speed".into(),
        What::TighterCommand => "command 1 in tighter".into(),
        What::UseAlone => "recommended use".into(),
    }
}

/// What to keep in mind about a change.
pub(crate) fn cautions(profile: &Profile, lever: &Lever) -> Vec<Text> {
    match &lever.what {
        What::Learn(target) => {
            let seams = (target.seams_in() > MUCH_FROM_SEAMS_IN).then(|| {
                text![
                    inches(target.seams_in()),
                    " of its movement are expected from the seams, which not every \
                               hand gets"
                ]
            });
            let eligibility = Eligibility::of(profile, target.family);
            let first = eligibility.hesitations().iter().copied().map(hesitation);
            first.chain(seams).collect()
        }
        What::Reshape(..) => {
            vec!["a pitch that works is put at risk: keep the old shape until the new one is measured".into()]
        }
        What::Drop(_) => {
            vec![
                "reads better than it is and is never advised here: what a pitch does for the others over a game, and \
                  over many looks at the same ones, is not in the model"
                    .into(),
            ]
        }
        What::Faster => {
            vec![
                "more speed means more load on elbow and shoulder: it belongs in the hands of a qualified \
                  professional, and takes time"
                    .into(),
            ]
        }
        What::TighterCommand | What::UseAlone => Vec::new(),
    }
}

fn hesitation(hesitation: Hesitation) -> Text {
    match hesitation {
        Hesitation::Young { age } => text!["at ", age, " it is tried before it is added, whatever it is worth"],
        Hesitation::StiffHand { .. } => "the hand turns hard, and a breaking ball asks that of it".into(),
    }
}
