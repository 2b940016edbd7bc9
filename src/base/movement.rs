//! Movement of a ball, places at the plate, and ranges: the small values that bare pairs of numbers
//! would leave in doubt. All in inches, in the hand-free frame (glove side and up are positive).

/// How far a ball moves on its way, inches; against what is told where it is measured.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Movement {
    /// To the glove side (+) or the arm side (-).
    pub glove_side_in: f64,
    /// Up (+) or down (-).
    pub up_in: f64,
}

impl Movement {
    /// Length, inches.
    pub fn length(self) -> f64 {
        self.glove_side_in.hypot(self.up_in)
    }

    /// Distance to `other`, inches.
    pub fn distance(self, other: Self) -> f64 {
        (self - other).length()
    }
}

impl std::ops::Add for Movement {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self { glove_side_in: self.glove_side_in + other.glove_side_in, up_in: self.up_in + other.up_in }
    }
}

impl std::ops::Sub for Movement {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        self + other * -1.0
    }
}

impl std::ops::Mul<f64> for Movement {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self { glove_side_in: self.glove_side_in * factor, up_in: self.up_in * factor }
    }
}

/// A place in the plane of the front of the plate.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Location {
    /// Inches to the pitcher's glove side of the middle of the plate.
    pub glove_side_in: f64,
    /// Inches above the ground.
    pub height_in: f64,
}

/// Two ends, the lower first.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Range {
    /// The lower end.
    pub low: f64,
    /// The upper end.
    pub high: f64,
}

impl Range {
    /// From `low` to `high`, in whichever order they come.
    pub fn new(low: f64, high: f64) -> Self {
        Self { low: low.min(high), high: low.max(high) }
    }

    /// `half` to either side of `middle`.
    pub fn about(middle: f64, half: f64) -> Self {
        Self::new(middle - half, middle + half)
    }

    /// Whether `value` lies in it, ends included.
    pub fn holds(self, value: f64) -> bool {
        (self.low..=self.high).contains(&value)
    }

    /// The middle.
    pub fn middle(self) -> f64 {
        f64::midpoint(self.low, self.high)
    }

    /// From end to end.
    pub fn width(self) -> f64 {
        self.high - self.low
    }

    /// The nearest value in it.
    pub fn nearest(self, value: f64) -> f64 {
        value.clamp(self.low, self.high)
    }
}
