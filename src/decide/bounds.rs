//! stub
use crate::athlete::profile::Profile;
use crate::ball::Family;
use crate::former::mix::{Bounds as Inner, Group};
pub struct Bounds(Inner);
impl Bounds {
    pub fn of(profile: &Profile, families: impl Iterator<Item = Family>) -> Self {
        let families: Vec<Family> = families.collect();
        let group =
            |is: fn(Family) -> bool, bound: f64| Group { members: families.iter().map(|f| is(*f)).collect(), bound };
        Self(Inner {
            caps: vec![1.0; families.len()],
            fastballs: group(Family::is_fastball, profile.limits.fastball_floor),
            breaking: group(Family::is_breaking, profile.limits.breaking_cap),
        })
    }
    pub fn nearest(&self, w: Vec<f64>) -> Vec<f64> {
        self.0.nearest(w)
    }
}
