//! Pictures drawn from the model, one file each.
//!
//! A picture comes with its words (title, description) and the table of the numbers behind it, so
//! that nobody needs eyes to read it. Every pitch has a mark of its own shape, so nobody needs
//! colour either. All are drawn about 360 units wide: a phone shows them whole with readable
//! letters, a sheet of paper shows two beside each other.

mod aims;
mod ball;
mod band;
mod calendar;
mod characters;
mod forks;
mod labels;
mod map_ground;
mod marks;
mod ranges;
mod scale;
mod shape_map;
mod shares;
mod sheet;
mod slots;
mod usage;

pub(crate) use aims::{AimedPitch, Plate, aims};
pub(crate) use ball::faces;
pub(crate) use band::{Band, Moved, band};
pub(crate) use calendar::{Week, calendar};
pub(crate) use forks::forks;
pub(crate) use map_ground::HALF;
pub(crate) use marks::{Ink, inks};
pub(crate) use ranges::{Axis, RangeRow, ranges, ranges_on};
pub(crate) use shape_map::{MapPitch, MapTarget, ShapeMap};
pub(crate) use shares::{ShareRow, shares};
pub(crate) use slots::slots;
pub(crate) use usage::{Change, usage_change};
