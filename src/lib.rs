//! arsenalfit decides whether a new pitch belongs in a pitcher's arsenal, which shape to chase and
//! how to use it.
//!
//! ```text
//! units geometry stats                          numbers, directions, doubt
//!   -> pitch profile                            what an athlete is and throws
//!   -> spin flight                              how a ball spins and flies, and back from a shape
//!   -> session input                            files into throws and profiles: all that can fail
//!   -> sorting profile_text demo                throws into pitches, pitches into a profile
//!   -> eyes hitter mix                          who hits it, and the best mix against him
//!   -> calibrate                                the hitter fitted to real pitches (for developers)
//!   -> evaluate search                          an arsenal judged; the best reachable shape
//!   -> separation sight usage inspect advice
//!      why coverage compare roster               the answers
//!   -> target slot trial progress cues plan     the follow-through: grips, outings, dates
//!   -> report                                   answers into words, tables, pages and JSON
//!   -> cli                                      the command line
//! ```
//!
//! A module uses only those above it (a test reads the `use` lines). Everything between `input` and
//! `report` does no I/O, cannot fail and gives the same answer for the same seed. Inside, every
//! athlete is right-handed and every number is SI; names that carry a unit are customary.
//!
//! ```
//! use arsenalfit::advice::{Question, Verdict, advise};
//! use arsenalfit::input::profile_from_toml;
//!
//! let text = r#"
//!     [athlete]
//!     name = "Invented Example"
//!     throws = "right"
//!     age = 20
//!     [[pitch]]
//!     name = "four-seam"
//!     family = "four-seam"
//!     speed_mph = 91
//!     vertical_break_in = 16
//!     glove_side_break_in = -7
//!     [[pitch]]
//!     name = "changeup"
//!     family = "changeup"
//!     speed_mph = 83
//!     vertical_break_in = 6
//!     glove_side_break_in = -14
//! "#;
//! let profile = profile_from_toml(text, "example.toml").expect("a valid profile");
//! let advice = advise(&profile, Question { draws: 16, ..Question::DEFAULT });
//! assert_ne!(advice.verdict, Verdict::NotNow, "two pitches leave room for a third");
//! ```

pub mod units;
pub mod geometry;
pub mod stats;

pub mod pitch;
pub mod profile;

pub mod spin;
pub mod flight;

pub mod session;
pub mod input;
pub mod sorting;
pub mod profile_text;
pub mod demo;

pub mod eyes;
pub mod hitter;
pub mod mix;

pub mod calibrate;

pub mod evaluate;
pub mod search;

pub mod separation;
pub mod sight;
pub mod usage;
pub mod inspect;
pub mod advice;
pub mod why;
pub mod coverage;
pub mod compare;
pub mod roster;

pub mod target;
pub mod slot;
pub mod trial;
pub mod progress;
pub mod cues;
pub mod plan;

pub mod report;
pub mod cli;
