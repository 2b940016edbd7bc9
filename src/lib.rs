//! arsenalfit decides whether a new pitch belongs in a pitcher's arsenal, which shape to chase and
//! how to use it.
//!
//! ```text
//! base      numbers, directions, doubt
//! ball      families and shapes; how a ball spins and flies, and back from a shape
//! athlete   what an athlete is and throws, and what was measured of it
//! files     files into throws and profiles: all that can fail
//! throws    throws into pitches, pitches into a profile
//! hitter    who hits it
//! decide    how pitches are used, whether a new one belongs, who gains most
//! learn     the follow-through: grips, outings, dates
//! report    answers into words, tables, pages and JSON
//! cli       the command line
//! ```
//!
//! A room uses only those above it (a test reads the `use` lines). Everything between `files` and
//! `report` does no I/O, cannot fail and gives the same answer for the same seed. Inside, every
//! athlete is right-handed and every number is SI; names that carry a unit are customary.
//!
//! ```
//! use std::num::NonZeroUsize;
//!
//! use arsenalfit::ball::Family;
//! use arsenalfit::decide::advice::Advice;
//! use arsenalfit::decide::model::Model;
//! use arsenalfit::decide::new_pitch::Command;
//! use arsenalfit::decide::verdict::Verdict;
//! use arsenalfit::files::profile_from_toml;
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
//! let model = Model::new(&profile, NonZeroUsize::new(16).expect("not zero"), 1);
//! let advice = Advice::of(&model, Family::Changeup, Command::Mastered);
//! assert_ne!(advice.verdict, Verdict::Add, "the changeup is there already");
//! ```

pub mod base;
pub mod ball;
pub mod athlete;
pub mod files;
pub mod throws;
pub mod hitter;
pub mod decide;
pub mod learn;
pub mod report;
pub mod cli;
