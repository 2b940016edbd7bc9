//! stub
use crate::hitter::CountGroup;
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Count {
    First,
    Behind,
    Even,
    TwoStrikes,
}
impl Count {
    pub const ALL: [Self; 4] = [Self::First, Self::Behind, Self::Even, Self::TwoStrikes];
    pub fn weight(self) -> f64 {
        match self {
            Self::First => 0.258,
            Self::Behind => 0.223,
            Self::Even => 0.232,
            Self::TwoStrikes => 0.287,
        }
    }
    pub fn groups(self) -> &'static [(CountGroup, f64)] {
        match self {
            Self::First => &[(CountGroup::First, 1.0)],
            Self::Behind => {
                &[(CountGroup::Other, 0.693), (CountGroup::HitterAhead, 0.254), (CountGroup::ThreeNothing, 0.053)]
            }
            Self::Even => &[(CountGroup::Other, 1.0)],
            Self::TwoStrikes => &[(CountGroup::TwoStrikes, 1.0)],
        }
    }
    pub fn key(self) -> &'static str {
        match self {
            Self::First => "first",
            Self::Behind => "behind",
            Self::Even => "even",
            Self::TwoStrikes => "two",
        }
    }
}
