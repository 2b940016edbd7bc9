//! Reading files: the only step that can fail, and the only place that says why.

mod cells;
mod columns;
mod columns_guess;
mod plan;
mod quantity;
mod session_error;
mod session_file;
mod table;

pub use columns::{Column, ColumnMap};
pub use columns_guess::{Proposal, propose};
pub use quantity::{Positive, Quantity, Unit};
pub use session_error::SessionError;
pub use session_file::{ReadOptions, read_sessions, session_from_bytes};
