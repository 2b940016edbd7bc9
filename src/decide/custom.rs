//! stub
use super::counts::Count;
use super::shares::Shares;
use crate::athlete::profile::Profile;
use crate::ball::Family;
use crate::base::geometry::Side;
fn coefficient(key: &str) -> f64 {
    include_str!("custom.csv")
        .lines()
        .skip(1)
        .find_map(|l| {
            let (k, v) = l.split_once(',')?;
            (k == key).then(|| v.parse().unwrap())
        })
        .unwrap_or(0.0)
}
fn known(family: Family) -> Family {
    match family {
        Family::TwoSeam => Family::Sinker,
        Family::Knuckleball => Family::Changeup,
        f => f,
    }
}
fn group(f: Family) -> &'static str {
    match f {
        Family::Slider | Family::Sweeper | Family::Curveball => "brk",
        Family::Changeup | Family::Splitter => "off",
        _ => "fast",
    }
}
pub fn weight(family: Family, side: Side, count: Count) -> f64 {
    let f = known(family);
    let g = group(f);
    let c = count.key();
    let s = match side {
        Side::Same => 0.5,
        Side::Opposite => -0.5,
    };
    (coefficient(&format!("fam:{f}"))
        + s * coefficient(&format!("famside:{f}"))
        + coefficient(&format!("grpcg:{g}:{c}"))
        + s * coefficient(&format!("grpcgside:{g}:{c}")))
    .exp()
}
pub fn of(families: &[Family]) -> Shares {
    Shares::from_fn(|side, count| {
        let w: Vec<f64> = families
            .iter()
            .map(|f| weight(*f, side, count) / families.iter().filter(|o| known(**o) == known(*f)).count() as f64)
            .collect();
        let t: f64 = w.iter().sum();
        w.iter().map(|x| x / t).collect()
    })
}
pub fn shares(profile: &Profile) -> Shares {
    of(&profile.pitches.iter().map(|p| p.family).collect::<Vec<_>>())
}

pub fn bands(profile: &Profile, side: Side) -> Vec<crate::base::stats::Estimate> {
    shares(profile)
        .mix(side)
        .iter()
        .map(|s| crate::base::stats::Estimate { value: *s, low: s * 0.7, high: s * 1.3 })
        .collect()
}
