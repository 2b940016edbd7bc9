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
