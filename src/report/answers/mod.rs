//! The answers, each built once from the values of the core: what people read and, beside it, what
//! machines read. A file of its own for each; `about`, `ground`, `mix` and `found` hold what several
//! share.

mod about;
mod advise;
mod advise_data;
mod apart;
mod card;
mod check;
mod compare;
mod compare_data;
mod compare_facts;
mod dot;
mod found;
mod ground;
mod levers;
mod mix;
mod plan;
mod plan_data;
mod plan_sheet;
mod plan_start;
mod progress;
mod progress_data;
mod rates;
mod roster;
mod sort;
mod trial;
mod trial_map;
mod usage;
mod usage_data;

pub use advise::{Advised, advise};
pub use apart::apart;
pub use check::check;
pub use compare::compare;
pub use dot::{Spun, dot_of_shape, dots};
pub use ground::Ground;
pub use levers::levers;
pub use plan::{no_plan, plan};
pub use plan_sheet::plan_sheet;
pub use plan_start::{NoPlan, Start};
pub use progress::{doubt, progress};
pub use roster::{Member, Roster, roster};
pub use sort::sort;
pub use trial::trial;
pub use usage::usage;
