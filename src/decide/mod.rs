//! The answers: how pitches are used, whether a new one belongs, who gains most.

pub mod inspect;
pub mod advice;
pub mod why;
pub mod coverage;
pub mod compare;
pub mod roster;

pub mod aims;
pub mod chase;
pub mod counts;
pub mod custom;
pub mod draws;
pub mod facing;
pub mod model;
pub mod new_pitch;
pub mod offering;
pub mod own_results;
pub mod places;
pub mod runs;
pub mod share_choice;
pub mod shares;
pub mod verdict;
pub mod worth;
pub mod apart;
pub mod bounds;
pub mod leaning;
pub mod levers;
pub mod new_advice;
pub mod new_compare;
pub mod new_roster;
pub mod new_usage;
pub mod outlook;
pub mod new_why;
