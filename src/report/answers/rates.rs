//! What pitches bring in use: the rates coaches speak of, as cells of a table and for machines.

use crate::athlete::profile::Profile;
use crate::base::geometry::Side;
use crate::base::stats::Estimate;
use crate::decide::counts::Count;
use crate::decide::outlook::{PitchOutlook, SideOutlook};
use crate::hitter::Zone;

use super::super::content::amount::rate;
use super::super::content::data::{Data, list, number};
use super::super::content::{Text, object, row};
use super::super::number::rounded_shares;
use super::super::words::places::place;

/// What the columns of [`rate_cells`] count.
pub(crate) const RATES: [&str; 4] = [
    "rates are per 100 of that pitch thrown, \u{b1} half the 90 % interval; two of them are not: chase counts swings per \
     100 thrown off the zone, miss/swing counts misses per 100 swings",
    "strike: called, missed or hit",
    "weak: hit, but not hard on a good line; solid: hit hard on a good line",
    "take: not swung at",
];

/// Shares in whole percent that sum to 100.
pub(crate) fn whole_percent(shares: impl IntoIterator<Item = f64>) -> Vec<f64> {
    rounded_shares(&shares.into_iter().collect::<Vec<f64>>(), 100.0)
}

/// Strike, chase, miss per swing, and the four things that can come of a pitch.
pub(crate) fn rate_cells(pitch: &PitchOutlook) -> Vec<Text> {
    let rates = &pitch.rates;
    row![
        rate(rates.strike),
        rate(rates.chase),
        rate(rates.miss_per_swing),
        rate(rates.swing_and_miss),
        rate(rates.weak_contact),
        rate(rates.solid_contact),
        rate(rates.take),
    ]
}

/// Where a pitch goes against `side`, early and with two strikes.
pub(crate) fn aim_words(side: Side, pitch: &PitchOutlook) -> [String; 2] {
    [pitch.spots.early, pitch.spots.two_strikes].map(|spot| place(spot.aim, Zone::TYPICAL, side))
}

/// Pitches in use for machines: each with its share among `shares` and the band of what is customary.
pub(crate) fn use_data(profile: &Profile, side: Side, outlook: &SideOutlook, custom: &[Estimate]) -> Data {
    let shares = rounded_shares(&outlook.pitches.iter().map(|pitch| pitch.share).collect::<Vec<f64>>(), 1000.0);
    let by_count = Count::ALL.map(|count| in_count(outlook, count, 1000.0));
    let pitches = profile.pitches.iter().zip(&outlook.pitches).zip(custom).enumerate();
    let pitches = list(pitches.map(|(index, ((owned, pitch), band))| {
        let [aim, aim_two_strikes] = aim_words(side, pitch);
        let [first, behind, even, two_strikes] = by_count.each_ref().map(|shares| number(shares[index], 3));
        let rates = &pitch.rates;
        object! {
            "pitch": &owned.name,
            "share": number(shares[index], 3),
            "share_low": number(band.low, 3),
            "share_high": number(band.high, 3),
            "by_count": object! { "first": first, "behind": behind, "even": even, "two_strikes": two_strikes },
            "aim": aim,
            "aim_two_strikes": aim_two_strikes,
            "strike": rates.strike,
            "chase": rates.chase,
            "miss_per_swing": rates.miss_per_swing,
            "swing_and_miss": rates.swing_and_miss,
            "weak_contact": rates.weak_contact,
            "solid_contact": rates.solid_contact,
            "take": rates.take,
            "runs_per_100": rates.runs_per_100,
        }
    }));
    object! { "runs_per_100": outlook.runs_per_100, "pitches": pitches }
}

/// Shares in one state of the count, rounded so that they sum to one; in parts of `whole`.
pub(crate) fn in_count(outlook: &SideOutlook, count: Count, whole: f64) -> Vec<f64> {
    let shares: Vec<f64> = outlook.pitches.iter().map(|pitch| pitch.by_count[count as usize]).collect();
    rounded_shares(&shares, whole)
}
