//! Pitches thrown in a season, so that small differences can be told in whole runs.

use crate::athlete::profile::Level;
use crate::base::stats::Estimate;

/// Pitches of a pitcher's season at this level. Common practice, no published source: a professional who pitches often
/// throws about 2,500; the shorter seasons of the others scale it down.
pub(crate) fn season_pitches(level: Level) -> u32 {
    match level {
        Level::Professional => 2500,
        Level::College => 1500,
        Level::HighSchool => 1000,
        Level::Youth => 600,
    }
}

/// Runs over a season from runs per 100 pitches.
pub(crate) fn over_a_season(per_100: Estimate, level: Level) -> Estimate {
    per_100.map(|runs| runs * f64::from(season_pitches(level)) / 100.0)
}

/// "a season of 1,500 pitches".
pub(crate) fn a_season(level: Level) -> String {
    let pitches = season_pitches(level);
    let counted =
        if pitches < 1000 { pitches.to_string() } else { format!("{},{:03}", pitches / 1000, pitches % 1000) };
    format!("a season of {counted} pitches")
}
