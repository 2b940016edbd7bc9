//! What stands behind arsenalfit's hitter: fits to real throws, scores on them, tables of how well it
//! holds. For developers; nothing here is part of the program.
//!
//! ```text
//! day          throws of a day of a league
//! league       what movement its pitches have, by speed and release
//! arsenals     what hitters know of each pitcher of that day
//! meetings     throws as hitters met them
//! losses       how well chances fit what happened
//! fit          a hitter fitted to meetings
//! evidence     a day with everything a command needs of it
//! constants    averages by pitch and side, the baseline
//! values       what outcomes are worth
//! score fitting calibration shrinkage laws    the commands
//! ```

pub mod markdown;
pub mod day;
pub mod league;
pub mod arsenals;
pub mod meetings;
pub mod losses;
pub mod fit;
pub mod evidence;
pub mod constants;
pub mod values;
pub mod score;
pub mod fitting;
pub mod calibration;
pub mod shrinkage;
pub mod laws;
