//! Where the ball leaves the hand, and how the hand turns.

/// Where the ball leaves the hand.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Release {
    /// Arm angle above horizontal.
    pub slot_deg: f64,
    /// Height above the plate's level.
    pub height_ft: f64,
    /// Distance from the middle line to the arm side.
    pub side_ft: f64,
    /// Distance in front of the rubber.
    pub extension_ft: f64,
    /// How easily he turns the hand around the outside of the ball.
    pub supination: Supination,
}

impl Release {
    /// An ordinary arm's, where nothing was measured: a three-quarter slot. Common practice, no published source; the
    /// 4,418 pitches of one day of the top league left the hand 5.8 ft high, 1.9 ft to the side and, of grown and
    /// tall men, 6.5 ft in front of the rubber (R package abdwr3edata, CC0).
    pub const ORDINARY: Self =
        Self { slot_deg: 45.0, height_ft: 5.8, side_ft: 2.0, extension_ft: 6.0, supination: Supination::Ordinary };
}

/// How easily an athlete turns the hand around the outside of the ball (palm toward the head).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Supination {
    /// Cuts the ball without trying.
    Easy,
    /// Neither.
    Ordinary,
    /// Stays behind the ball whatever he tries.
    Hard,
}

impl Supination {
    /// Every grade, in order.
    pub const ALL: [Self; 3] = [Self::Easy, Self::Ordinary, Self::Hard];

    /// As written in a profile.
    pub fn name(self) -> &'static str {
        match self {
            Self::Easy => "easy",
            Self::Ordinary => "ordinary",
            Self::Hard => "hard",
        }
    }
}
