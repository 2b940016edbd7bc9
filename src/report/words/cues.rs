//! What each cue says: what the numbers mean, what to try, and what trying it must not cost. Common
//! practice without a published source, in this project's own words. None of it treats pain: pain is
//! for a licensed professional.

use crate::learn::cues::Cue;

/// Where every cue comes from, as shown beside it.
pub(crate) const SOURCE: &str = "common practice, no published source";

/// A cue in words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Advice {
    /// What the numbers say.
    pub(crate) says: &'static str,
    /// What to try.
    pub(crate) attempt: &'static str,
    /// What trying it must not cost.
    pub(crate) must_not_cost: &'static str,
}

/// What `cue` says.
pub(crate) fn advice(cue: Cue) -> Advice {
    let [says, attempt, must_not_cost] = match cue {
        Cue::DotTooCentral | Cue::DotTooFarOut | Cue::DotTurned | Cue::DotWandering | Cue::Wobble => dot(cue),
        Cue::SpinRightNoSweep | Cue::TooMuchDepth | Cue::TooMuchRide | Cue::TooSlow => shape(cue),
        Cue::SlotDropping | Cue::FastballSlower | Cue::FastballShapeChanged => cost(cue),
        Cue::ReleaseMoved | Cue::ExtensionShorter => release(cue),
        Cue::CommandNotComing | Cue::ShapeDrifted | Cue::ShapeArrived => arrival(cue),
    };
    Advice { says, attempt, must_not_cost }
}

fn dot(cue: Cue) -> [&'static str; 3] {
    match cue {
        Cue::DotTooCentral => [
            "the spin pole points too much along the flight: much of the spin is bullet spin and moves nothing",
            "feel the fingers pass the side of the ball later, hand beside it rather than in front of it; a grip with \
             the middle finger along the inside seam",
            "speed of the fastball and the height of the slot",
        ],
        Cue::DotTooFarOut => [
            "nearly all of the spin is across the flight, more than the target asks",
            "let the hand come a little more around the front of the ball, as if passing it like a spiral",
            "total spin",
        ],
        Cue::DotTurned => [
            "the spin pushes along another clock direction than the target asks",
            "turn the grip on the ball by the width of a seam in the direction that is missing and throw five, before \
             changing anything in the arm",
            "the slot: the ball turns in the hand, the arm does not",
        ],
        Cue::DotWandering => [
            "the dot shows in another place on every throw: the release differs from throw to throw",
            "back to easy throws with the marked ball, one grip only, until eight of ten look alike; a lighter spike or \
             none",
            "time: no effort is added before the spin is clean",
        ],
        _ => [
            "the ball wobbles: a finger leaves it late or off the middle",
            "index finger lifted or lightly spiked so that the middle finger alone leaves last; dry hands; the same \
             seam under the same finger every time",
            "skin and nails: a sore finger ends the work for the day",
        ],
    }
}

fn shape(cue: Cue) -> [&'static str; 3] {
    match cue {
        Cue::SpinRightNoSweep => [
            "the spin is as wanted and the sweep is missing: the seams are not helping",
            "turn the ball in the grip by a quarter so that other seams lead, ten throws each way, and keep the one that \
             moves more",
            "the spin that was right",
        ],
        Cue::TooMuchDepth => [
            "the ball drops more than the window allows: the hand comes over the top of it",
            "think of throwing the side of the ball past the catcher on the glove side; hand beside the ball, not above \
             it",
            "the height of the slot: it is the hand that turns, not the arm that drops",
        ],
        Cue::TooMuchRide => [
            "the ball stays up more than the window allows: the fingers are still behind it",
            "start with the hand already turned a little, palm toward the head, and leave it there",
            "speed",
        ],
        _ => [
            "the new pitch is slower than the window: the arm is guiding it",
            "a fastball before every new pitch and the same arm on both; look at the target, not at the spin",
            "the fastball's own speed and the arm's freshness",
        ],
    }
}

fn cost(cue: Cue) -> [&'static str; 3] {
    match cue {
        Cue::SlotDropping => [
            "the arm comes lower than in the profile: the sweep may be bought with the arm instead of the hand",
            "stop the new pitch for this day and throw fastballs to the usual release; film from the front; come back \
             with fewer throws at less effort",
            "comfort of shoulder and elbow: with pain, stop and see a licensed professional",
        ],
        Cue::FastballSlower => [
            "the fastball is slower: a tired arm, or the new hand position leaking into it; whether the new pitch costs \
             it is not proven by the numbers",
            "rest first, then fastballs alone; count every throw of the last two weeks; bring the new pitch back at half \
             the number",
            "rest days: with pain or lasting loss, stop and see a licensed professional",
        ],
        _ => [
            "the fastball moves otherwise than it did: its grip or hand has moved toward the new pitch",
            "ten fastballs with the old grip checked before each; new pitch only after three fastballs that move as \
             before",
            "the fastball's ride",
        ],
    }
}

fn release(cue: Cue) -> [&'static str; 3] {
    match cue {
        Cue::ReleaseMoved => [
            "the ball leaves the hand elsewhere than it did, and a hitter can see that",
            "check the place on the rubber and the stride first, the arm last; alternate fastball and new pitch to one \
             target",
            "speed and command of the fastball",
        ],
        _ => [
            "the ball is let go farther from the plate: often a tired or careful delivery",
            "fewer throws and a day more of rest; then look at the stride before anything in the arm",
            "freshness: with pain, stop and see a licensed professional",
        ],
    }
}

fn arrival(cue: Cue) -> [&'static str; 3] {
    match cue {
        Cue::CommandNotComing => [
            "the new pitch scatters as widely as at the beginning",
            "one target only, the middle of the plate, and let it move from there; start it at one fixed thing behind \
             the plate; ten throws, then a fastball",
            "shape: do not slow the arm to aim",
        ],
        Cue::ShapeDrifted => [
            "the shape was in the window and has left it",
            "look at the dot before the arm: same grip, same seams, same ball? then the cue for the dot or the drop",
            "throws: two short sessions tell more than one long one",
        ],
        _ => [
            "the shape is in the window at this effort",
            "go on to the next gate of the plan: game effort, then command, then hitters",
            "the pace of the plan: one gate at a time",
        ],
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_cues_say_the_same_and_pain_is_only_ever_for_a_licensed_professional() {
        for (place, cue) in Cue::ALL.into_iter().enumerate() {
            let Advice { says, attempt, must_not_cost } = advice(cue);
            let text = format!("{says} {attempt} {must_not_cost}");
            assert!(!text.contains("pain") || text.contains("stop and see a licensed professional"), "{cue:?}");
            assert!(Cue::ALL[..place].iter().all(|other| advice(*other) != advice(cue)), "{cue:?}");
        }
    }
}
